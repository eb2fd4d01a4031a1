package eval

import (
	"math"
	"strconv"
	"strings"

	"fettle/eval/reckon/taper"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// GaugeStack is slip gauges of one set, wrung together.
type GaugeStack struct {
	Set    *model.SlipGauges
	Unit   drawing.Unit
	Blocks []float64 // in that unit, the largest first
	Height float64   // of all, mm
	Off    float64   // Height less what was wanted, mm
}

// Words says what is wrung together, of which set, and how far it is off if that is more than 0.00005 mm.
func (g *GaugeStack) Words() string {
	var of []string
	for _, b := range g.Blocks {
		of = append(of, strconv.FormatFloat(math.Round(b*1e5)/1e5, 'f', -1, 64))
	}
	s := strings.Join(of, " + ")
	if g.Unit == drawing.Inch {
		s += " in"
	}
	s += " of " + g.Set.Path()
	switch off := math.Round(math.Abs(g.Off)*1e4) / 1e4; {
	case off == 0:
		return s
	case g.Off > 0:
		return s + ", " + strconv.FormatFloat(off, 'f', -1, 64) + " mm high"
	default:
		return s + ", " + strconv.FormatFloat(off, 'f', -1, 64) + " mm low"
	}
}

// GaugeBlocks are the blocks of a set that lists its sizes itself.
func GaugeBlocks(sizes model.Sizes) (out taper.Blocks) {
	for _, mm := range sizes.Within(0.001, 1000, taper.MostBlocks) {
		out = append(out, int64(math.Round(mm*taper.Grain)))
	}
	return out
}

// StackOf builds the stack that comes nearest to a height, mm, of the slip gauges that are here; of sets
// that come as near the one with fewer blocks. A height is sought to 0.001 mm, of inch sets to 0.0001 in:
// finer costs blocks, and says nothing with a bar or a micrometer. Gauges are taken as true (ISO 3650 lets
// them be 0.0005 mm off at most up to 10 mm in any grade of the workshop, from memory). False where none
// are here, or none of them makes any stack.
func StackOf(shop *model.Shop, height float64) (best GaugeStack, ok bool) {
	for _, g := range shop.SlipGauges {
		if !g.AtHand() {
			continue
		}
		out, made := stackOf(g, height)
		less := math.Abs(out.Off) - math.Abs(best.Off)
		if made && (!ok || less < -1e-9 || less < 1e-9 && len(out.Blocks) < len(best.Blocks)) {
			best, ok = out, true
		}
	}
	return best, ok
}

// stackOf is the stack of one set that comes nearest.
func stackOf(g *model.SlipGauges, height float64) (out GaugeStack, ok bool) {
	blocks, unit, known := blocksOf(g)
	if !known {
		return out, false
	}
	step := 0.001
	if unit == drawing.Inch {
		step = 0.0001
	}
	s, err := blocks.Build(int64(math.Round(math.Round(height/unit.MM()/step)*step*taper.Grain)), [2]int64{})
	if err != nil {
		return out, false
	}
	out = GaugeStack{Set: g, Unit: unit, Height: float64(s.Height) / taper.Grain * unit.MM()}
	out.Off = out.Height - height
	for _, b := range s.Blocks {
		out.Blocks = append(out.Blocks, float64(b)/taper.Grain)
	}
	return out, true
}

// blocksOf are the blocks of a set of slip gauges, and the unit that they are counted in.
func blocksOf(g *model.SlipGauges) (taper.Blocks, drawing.Unit, bool) {
	if g.Sizes.Is() {
		b := GaugeBlocks(g.Sizes.V)
		return b, drawing.Millimetre, len(b) > 0
	}
	set, ok := handbook.SlipSet(g.Named.V)
	return set.Sizes, set.Unit, ok
}

// SineSet is a tilt that is set by a sine bar: what stands under one of its rollers, and how close that comes.
type SineSet struct {
	Bar     *model.SineBar
	Angle   float64              // degrees
	Wants   float64              // height of the stack, mm
	Stack   GaugeStack           // that comes nearest
	Made    bool                 // there is such a stack; else no slip gauges are here that make one
	Certain float64              // how far the angle is off by the stack alone, degrees
	Off     model.Known[float64] // and at worst with the error of the bar's centres
	Across  float64              // longest side of the part square to the axis that it leans about, mm
}

// SineSet works out how a tilt is set by a sine bar; false where none is named, or nothing leans.
func (h *Holding) SineSet() (s SineSet, ok bool) {
	by := h.Work.SetUp.Tilt.SetBy
	s.Bar, ok = model.Find(h.Part.Build.Shop.SineBars, by.V.Item)
	if !ok || !by.Is() || h.Choice.Lean.By == 0 || !s.Bar.Centres.Is() {
		return s, false
	}
	s.Angle = math.Abs(h.Choice.Lean.By)
	bar := taper.Bar{Centres: s.Bar.Centres.V}
	high, err := bar.Stack(s.Angle)
	if err != nil {
		return s, false
	}
	s.Wants, s.Across = high, h.across()
	if s.Stack, s.Made = StackOf(&h.Part.Build.Shop, high); !s.Made {
		return s, true
	}
	off := math.Abs(s.Stack.Off)
	s.Certain, err = bar.Off(s.Angle, off)
	if err != nil {
		return s, false
	}
	s.Off = model.Map(s.Bar.Error, func(e float64) float64 {
		bar.Error = min(e, bar.Centres)
		worst, _ := bar.Off(s.Angle, off)
		return worst
	})
	return s, true
}

// across is the longest side of the part square to the axis that it leans about.
func (h *Holding) across() (long float64) {
	for a := range 3 {
		var along [3]float64
		along[a] = 1
		if math.Abs(h.Pose.Dir(along)[h.Choice.Lean.About]) < 1-1e-6 {
			long = max(long, h.Part.Size[a])
		}
	}
	return long
}

// AngleLimit is how far the lean of a holding may be off.
type AngleLimit struct {
	Most float64 // degrees, either way
	What string  // "the set-up", "hole.oil"
	Why  string  // what says so
}

// AngleLimits lists what says how far a lean may be off: what the set-up is to be true to, over the part's length, unless
// it is set true with something else as well; and the general tolerance of angles for holes that lean, by their depth, the
// shorter side (ISO 2768-1).
func (h *Holding) AngleLimits() (out []AngleLimit) {
	by := h.Work.SetUp.SetBy
	if w, ok := h.Work.SetUp.Within.Get(); ok && h.across() > 0 && (!by.Is() || by.V.Item == h.Work.SetUp.Tilt.SetBy.V.Item) {
		out = append(out, AngleLimit{math.Atan(w/h.across()) * 180 / math.Pi, "the set-up", model.Figure(w) + " mm over " + model.Figure(h.across()) + " mm"})
	}
	class := h.Part.Build.Recipe.General.Class
	for _, st := range h.Work.Steps {
		for _, t := range st.Makes {
			if t.Form == nil || !t.Form.tilted() || !t.Form.Depth.Is() {
				continue
			}
			if half, ok := handbook.GeneralAngle(class, t.Form.Depth.V); ok && class != "" {
				out = append(out, AngleLimit{half, t.Form.Name(), "ISO 2768-" + class})
			}
		}
	}
	return out
}
