package schema

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"fettle/schema/model"
)

// What is fitted may still be nothing that can be: a length below nought, a day in a
// thirteenth month, a list with a member too few.

// most100m is the longest length that a workshop knows, in mm.
const most100m = 100_000.0

// mayBeNegative lists the lengths and figures that may lie below nought.
var mayBeNegative = []string{"along", "wants", "gap", "set_over", "on_table", "shifted", "tilts", "at", "from", "to", "clearance", "first", "step", "temperature", "start", "size", "by", "axis", "NAME", "angle", "to_axis", "zero_at", "top_slide"}

// mustBeAbove lists the lengths that are nothing if they are nought.
var mustBeAbove = []string{"diameter", "width", "length", "height", "thickness", "jaw_width", "jaw_depth", "opening", "seat",
	"pcd", "hexagon", "square", "round", "module", "diametral_pitch", "ratio", "centres", "overall"}

// inRange says whether every figure of a value can be what the attribute means.
func (f *fitter) inRange(out *val) bool {
	return f.within(&out.v, f.attr.last()) && f.counted(&out.v) && f.day(&out.v)
}

// fixedLists are the lists of figures whose members have places of their own, by how many
// they are. Those that the table calls "least, most" have two, the smaller first.
var fixedLists = map[string]int{
	"mill.table": 2, "mill.travel": 3, "drill_press.table": 2, "power_saw.opening": 2, "vise.body": 2,
	"surface_plate.size": 2, "angle_plate.size": 3, "caliper.inside": 2, "dial_indicator.range": 2,
	"dial_test_indicator.range": 2, "steel_rule.range": 2, "stock.casting.size": 3, "any_setup.on_table": 2,
	"vise_setup.packing.size": 2, "clamped_setup.packing.size": 2,
}

func leastAndMost(a *attr) bool {
	return strings.Contains(a.Meaning, "least, most") || strings.Contains(a.Meaning, "least and most") || strings.Contains(a.Meaning, "lowest (")
}

// membersOfList is how many members a list of figures must have; 0: as many as there are.
func membersOfList(a *attr) int {
	if leastAndMost(a) {
		return 2
	}
	return fixedLists[a.Kind+"."+a.Name]
}

// counted says whether a list whose members have places of their own has all of them.
func (f *fitter) counted(v *model.Value) bool {
	if v.Kind != model.List {
		return true
	}
	rises := leastAndMost(f.attr)
	want := membersOfList(f.attr)
	switch {
	case want == 0:
		return true
	case len(v.List) != want:
		f.r.say(slipWrongValue, v.At, fmt.Sprintf("%s wants a list of %d figures; here are %d. It is: %s", f.attr.last(), want, len(v.List), f.attr.Meaning))
		return false
	case rises && v.List[0].Num > v.List[1].Num:
		f.r.say(slipWrongValue, v.At, fmt.Sprintf("the first of the two is the larger one; %s is: %s", f.attr.last(), f.attr.Meaning))
		return false
	}
	return true
}

// day says whether a text that is to be a day is one (ISO 8601, year-month-day).
func (f *fitter) day(v *model.Value) bool {
	if v.Kind != model.Text || !strings.Contains(f.attr.Meaning, "year-month-day") {
		return true
	}
	if _, err := time.Parse(time.DateOnly, v.Text); err != nil {
		f.r.say(slipWrongValue, v.At, fmt.Sprintf("%s wants a day written year-month-day, such as \"2026-11-25\"; this is %s", f.attr.last(), quoted(v.Text)))
		return false
	}
	return true
}

func (f *fitter) within(v *model.Value, name string) bool {
	switch v.Kind {
	case model.Number:
		return f.figureWithin(v, v.Num, name)
	case model.SizeOf:
		return f.figureWithin(v, v.Size.Nominal, name)
	case model.List:
		for i := range v.List {
			if !f.within(&v.List[i], name) {
				return false
			}
		}
	case model.Set:
		lo, hi, ok := v.Sizes.Range()
		return !ok || f.figureWithin(v, lo, name) && f.figureWithin(v, hi, name)
	}
	return true
}

func (f *fitter) figureWithin(v *model.Value, x float64, name string) bool {
	says := ""
	u := f.attr.Unit
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		says = "this is not a figure that can be reckoned with"
	case u == "mm" && math.Abs(x) > most100m:
		says = fmt.Sprintf("%s of %s m is longer than any workshop knows", name, trimmedFigure(x/1000))
	case u == "deg" && math.Abs(x) > 360:
		says = fmt.Sprintf("%s of %s degrees is more than a full turn", name, trimmedFigure(x))
	case u != "mm" && math.Abs(x) > 1e9:
		says = fmt.Sprintf("%s of %s is more than any workshop knows", name, trimmedFigure(x))
	case x < 0 && !slices.Contains(mayBeNegative, name):
		says = fmt.Sprintf("%s cannot be below nought", name)
	case x == 0 && slices.Contains(mustBeAbove, name):
		says = fmt.Sprintf("%s cannot be nought", name)
	case f.wantsWhole() && x < 1 && !slices.Contains(mayBeNegative, name):
		says = fmt.Sprintf("%s is at least 1", name)
	default:
		return true
	}
	f.r.say(slipOutOfRange, v.At, says)
	return false
}

func (f *fitter) wantsWhole() bool {
	for _, x := range f.attr.Forms {
		if x.Kind != formWhole && !(x.Kind == formList && x.Of != nil && x.Of.Kind == formWhole) {
			return false
		}
	}
	return len(f.attr.Forms) > 0
}

func trimmedFigure(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
