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

// leastFigure is below what any workshop can tell from nought, in any unit that the table has.
const leastFigure = 1e-9

// mayBeNegative lists the lengths and figures that may lie below nought.
var mayBeNegative = []string{"along", "wants", "set_over", "on_table", "shifted", "at", "from", "to", "clearance", "first", "step",
	"temperature", "start", "by", "axis", "NAME", "to_axis", "zero_at", "top_slide",
	"dividing_head.tilts", "bend.angle", "groove.angle", "outline.arcs.radius", "teeth.notch.angle", "teeth.helix", "hole.depth.size", "slot.depth.size", "pocket.depth.size", "step.depth.size"}

// neverNegative lists those whose word may lie below nought elsewhere.
var neverNegative = []string{"lathe.tailstock.set_over", "vise_setup.soft.step", "outside.eccentric.by", "bore.eccentric.by",
	"operation.to", "speeds.from", "speeds.to", "outline.arcs.from"}

// mustBeAbove lists the lengths and figures that are nothing if they are nought. One of which
// the table says what "0:" means may be nought all the same.
var mustBeAbove = []string{"diameter", "width", "length", "height", "thickness", "jaw_width", "jaw_depth", "opening", "seat",
	"pcd", "hexagon", "square", "round", "module", "diametral_pitch", "ratio", "centres", "overall",
	"depth", "speed", "max_speed", "speeds", "speeds.from", "speeds.to", "flute_length", "shank", "bore", "swing", "swing_over_slide",
	"reach", "pitch", "kerf", "wire", "throat", "quill", "power", "force", "mass", "weight", "lengths", "heights", "sizes", "dies", "spacers",
	"outside", "wall", "head_diameter", "nose_diameter", "neck", "body", "collar", "anvil", "pitch_diameter", "spacing", "division",
	"turn", "lead_screw", "travel", "jaw_length", "jaw_thickness", "jaw_out", "slot", "slots", "vee", "nose_to_tailstock",
	"between_centres", "centre_height", "large", "outer", "largest_drill", "least_bore", "pilot", "grip", "tool_out", "foot_width",
	"foot_height", "line_width", "across", "stands", "bored", "cut", "rollers", "fixed_train", "point", "soak", "radius",
	"reads_to", "readout", "hottest", "shoulder", "headstock", "pressure_angle", "engaged", "tee_slots", "deep", "figures.step", "set",
	"chamfer.size", "radius.size", "centre_hole.size", "square.size", "operation.to", "operation.to.size", "dovetail.over_rollers.size",
	"v_block.angle", "countersink.angle", "dovetail_cutter.angle", "angle_cutter.angle", "threading_tool.angle",
	"hole.countersink.angle", "dovetail.angle", "chamfer.angle", "taper.angle"}

// mayBeNought lists those whose word must be above nought elsewhere.
var mayBeNought = []string{"over.outside", "leaves.outside", "around.over", "packing.size", "face.around.over", "clamps.height"}

// among says whether an attribute is in a list, by its word or by its path.
func (a *attr) among(list []string) bool {
	name := a.Name
	for {
		if slices.Contains(list, name) {
			return true
		}
		_, rest, dotted := strings.Cut(name, ".")
		if !dotted {
			return slices.Contains(list, a.Kind+"."+a.Name)
		}
		name = rest
	}
}

func (a *attr) maybeNegative() bool { return a.among(mayBeNegative) && !a.among(neverNegative) }

func (a *attr) aboveNought() bool {
	return a.among(mustBeAbove) && !a.among(mayBeNought) && !strings.Contains(a.Meaning, "0:")
}

// inRange says whether every figure of a value can be what the attribute means.
func (f *fitter) inRange(out *val) bool {
	return f.saysSomething(&out.v) && f.within(&out.v, f.attr.last()) && f.counted(&out.v) && f.day(&out.v)
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
	case want == 0, len(v.List) == 1 && strings.Contains(f.attr.Meaning, "the least alone"):
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

// saysSomething says whether a text or list is not empty. An empty list of what a shop has says
// that it has none; in a recipe it says nothing, and neither does an empty text anywhere.
func (f *fitter) saysSomething(v *model.Value) bool {
	switch {
	case v.Kind == model.Text && strings.TrimSpace(v.Text) == "" && f.attr.Name != "note",
		v.Kind == model.MaterialOf && strings.TrimSpace(v.Material.Written) == "",
		v.Kind == model.RefTo && v.Ref.Item == nil && v.Ref.Face == model.NoFace && strings.TrimSpace(v.Ref.Text) == "":
		f.r.say(slipWrongValue, v.At, fmt.Sprintf("%s is an empty text: leave it out, or say what it is", f.attr.last()))
	case v.Kind == model.List && len(v.List) == 0 && (f.in.kind.Where != "shop" || f.figures()):
		f.r.say(slipWrongValue, v.At, fmt.Sprintf("%s is an empty list: leave it out, or say what is in it", f.attr.last()))
	case v.Kind == model.List:
		for i := range v.List {
			if !f.saysSomething(&v.List[i]) {
				return false
			}
		}
		return true
	default:
		return true
	}
	return false
}

// figures says whether an attribute takes speeds or a list of lengths or numbers: of these a
// machine or tool has some, or nobody knows.
func (f *fitter) figures() bool {
	return slices.ContainsFunc(f.attr.Forms, func(x form) bool {
		if x.Kind == formList {
			x = *x.Of
		}
		return x.Kind == formSpeeds || x.Kind == formLength || x.Kind == formNumber
	})
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
	case model.PositionOf:
		return f.placeWithin(v, name)
	}
	return true
}

// placeWithin looks at each distance of a place; angles come with them.
func (f *fitter) placeWithin(v *model.Value, name string) bool {
	for _, s := range v.Position.Short {
		if !f.figureWithin(v, s.Nominal, name) {
			return false
		}
	}
	for _, c := range v.Position.Coords {
		at := model.Value{At: c.At}
		if c.Datum.Text != "" {
			name = shown(c.Datum.Text)
		}
		if !f.figureWithin(&at, c.Size.Nominal, name) {
			return false
		}
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
	case x < 0 && !f.attr.maybeNegative():
		says = fmt.Sprintf("%s cannot be below nought", name)
	case x == 0 && f.attr.aboveNought():
		says = fmt.Sprintf("%s cannot be nought", name)
	case x != 0 && math.Abs(x) < leastFigure:
		says = fmt.Sprintf("%s of %s is less than any workshop can tell from nought", name, trimmedFigure(x))
	case f.wantsWhole() && x < 1 && !f.attr.maybeNegative():
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
