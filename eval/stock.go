package eval

import (
	"math"

	"fettle/schema/handbook"
	"fettle/schema/model"
)

// SideNeed is what the raw piece must measure along one side of the bar, and what there is.
type SideNeed struct {
	Lacks []model.Lack // where what there is is not known
	Side  string       // "length", "width", "height"; "corners" of round bar, "flats" of hexagon
	Needs float64
	Has   float64
	Known bool
}

// StockNeeds compares the raw piece with the section of its stock and the longest piece
// that is here: along the bar, across it, through it. Round stock is compared by the
// circle round the corners.
func (p *Part) StockNeeds() []SideNeed {
	if p.Flat != nil {
		return p.Flat.Part.StockNeeds()
	}
	b := &p.Blank
	if b.Stock == nil {
		return nil
	}
	if p.Round {
		return p.roundNeeds()
	}
	names := [3]string{"length", "width", "height"}
	need := func(axis int) float64 { return p.Size[axis] + b.Over[2*axis+1].V + b.Over[2*axis+2].V }
	if c := b.Stock.Casting; c.Said {
		var out []SideNeed
		for axis, has := range c.Size.V {
			if len(c.Size.V) == 3 {
				out = append(out, SideNeed{nil, names[axis], need(axis), has, true})
			}
		}
		return out
	}
	var out []SideNeed
	if b.Stock.Sheet.Said {
		return p.sheetNeeds(need(0), need(1), need(2))
	}
	longest, known := 0.0, b.Stock.Lengths.Is()
	for _, l := range b.Stock.Lengths.V {
		longest = max(longest, l)
	}
	out = append(out, SideNeed{b.Stock.Lengths.Missing(), names[b.Lies[0]], need(b.Lies[0]), longest, known})
	w, t, sized := Section(b.Stock)
	switch {
	case !sized:
	case b.Stock.Round.Is():
		out = append(out, SideNeed{nil, "corners", math.Hypot(p.Size[b.Lies[1]], p.Size[b.Lies[2]]), w.Nominal, true})
	case b.Stock.Hexagon.Is():
		out = append(out, SideNeed{nil, "flats", acrossFlats(p.Size[b.Lies[1]], p.Size[b.Lies[2]]), w.Nominal, true})
	default:
		out = append(out, SideNeed{nil, names[b.Lies[1]], need(b.Lies[1]), w.Nominal, true},
			SideNeed{nil, names[b.Lies[2]], need(b.Lies[2]), t.Nominal, true})
	}
	return out
}

// OutOfSheet says whether a part of sheet can be cut out of a sheet here whose sizes are all known, and the
// section of that, mm².
func (p *Part) OutOfSheet(s *model.Stock) (section float64, goes bool) {
	t, ok := s.Sheet.Thickness.Get()
	if !p.Part.Thickness.Is() || !ok || !s.Sheet.Width.Is() || !s.Lengths.Is() || math.Abs(t.Nominal-p.Size[2]) > model.Grain {
		return 0, false
	}
	q := *p
	q.Flat, q.Blank.Stock = nil, s
	for _, n := range q.sheetNeeds(p.Size[0], p.Size[1], p.Size[2]) {
		if n.Needs > n.Has+model.Grain {
			return 0, false
		}
	}
	return s.Sheet.Width.V * t.Nominal, true
}

// sheetNeeds compares what is cut out of sheet with it: along and across, whichever way round it goes in, and
// its thickness. No kerf is counted.
func (p *Part) sheetNeeds(length, width, thick float64) []SideNeed {
	s := p.Blank.Stock
	longest := 0.0
	for _, l := range s.Lengths.V {
		longest = max(longest, l)
	}
	long := SideNeed{s.Lengths.Missing(), "length", length, longest, s.Lengths.Is()}
	wide := SideNeed{s.Sheet.Width.Missing(), "width", width, s.Sheet.Width.V, s.Sheet.Width.Is()}
	over := func(a, b SideNeed) float64 {
		sum := 0.0
		for _, n := range []SideNeed{a, b} {
			if n.Known {
				sum += max(0, n.Needs-n.Has-model.Grain)
			}
		}
		return sum
	}
	l, w := long, wide
	l.Lacks, l.Has, l.Known, w.Lacks, w.Has, w.Known = wide.Lacks, wide.Has, wide.Known, long.Lacks, long.Has, long.Known
	if over(l, w) < over(long, wide) {
		long, wide = l, w
	}
	return []SideNeed{long, wide, {s.Sheet.Thickness.Missing(), "height", thick, s.Sheet.Thickness.V.Nominal, s.Sheet.Thickness.Is()}}
}

// roundNeeds is the same for a turned part: along the bar, and across it. Bar of the part's own
// section is compared across its flats; a part that is not round must fill out of round bar.
func (p *Part) roundNeeds() []SideNeed {
	b := &p.Blank
	longest := 0.0
	for _, l := range b.Stock.Lengths.V {
		longest = max(longest, l)
	}
	out := []SideNeed{{b.Stock.Lengths.Missing(), "length", p.RawLength(), longest, b.Stock.Lengths.Is()}}
	over := 0.0
	if b.Model != nil {
		over = 2 * b.Model.Over.Outside.V
	}
	switch s := b.Stock; {
	case s.Round.Is() && p.flats() > 0:
		out = append(out, SideNeed{nil, "corners", 2 * p.Radius(), s.Round.V.Nominal, true})
	case s.Round.Is():
		out = append(out, SideNeed{nil, "diameter", p.Across + over, s.Round.V.Nominal, true})
	case s.Tube.Outside.Is():
		out = append(out, SideNeed{nil, "diameter", p.Across + over, s.Tube.Outside.V.Nominal, true})
	case s.Hexagon.Is():
		out = append(out, SideNeed{nil, "diameter", p.acrossIn(6) + over, s.Hexagon.V.Nominal, true})
	case s.Square.Is():
		out = append(out, SideNeed{nil, "diameter", p.acrossIn(4) + over, s.Square.V.Nominal, true})
	}
	return out
}

// acrossIn is what bar with so many flats must measure across them to hold the part.
func (p *Part) acrossIn(flats int) float64 {
	if p.flats() == 0 || p.flats() == flats {
		return p.Across
	}
	return 2 * p.Radius()
}

// RawLength is how much of the bar one piece takes up, its kerf not counted.
func (p *Part) RawLength() float64 {
	b := &p.Blank
	if p.Round {
		return p.Size[0] + b.Over[model.Left].V + b.Over[model.Right].V
	}
	axis := b.Lies[0]
	return b.Hi[axis] - b.Lo[axis]
}

// Machined says whether any step of the part makes one of its faces.
func (p *Part) Machined(f model.Face) bool {
	for _, w := range p.Work {
		for _, st := range w.Steps {
			for _, t := range st.Makes {
				if t.Form == nil && t.Face == f && !st.polishes() {
					return true
				}
			}
		}
	}
	return false
}

// polishes says whether a step only brightens what is there: no metal is left for it.
func (s *Step) polishes() bool {
	by := s.Work.SetUp.By.V
	if s.Step != nil {
		by = s.Step.By.Or(by)
	}
	return by == "polishing"
}

// BarAcross is how thick a bar is over its corners, where a turned part comes out of it; false
// where it does not. Tube and flat bar are not thought of.
func (p *Part) BarAcross(s *model.Stock) (float64, bool) {
	longest := 0.0
	for _, l := range s.Lengths.V {
		longest = max(longest, l)
	}
	if s.Lengths.Is() && longest < p.Size[0]-model.Grain {
		return 0, false
	}
	over := 0.0
	if b := p.Part.Blank; b != nil && b.Over.Outside.Is() {
		// What is written must be there, no less and no more.
		over = 2 * b.Over.Outside.V
		if d, _, ok := Section(s); ok && !near(d.Nominal, p.Across+over) {
			return 0, false
		}
	}
	if p.makesOutside() && over == 0 {
		over = model.Grain // it is to be turned: something must come off
	}
	switch {
	case s.Round.Is() && p.flats() == 0: // a part named by its flats is of such bar
		return s.Round.V.Nominal, s.Round.V.Nominal >= 2*p.Radius()+over-model.Same
	case s.Hexagon.Is() && (p.flats() == 6 || p.flats() == 0):
		return s.Hexagon.V.Nominal * 2 / math.Sqrt(3), s.Hexagon.V.Nominal >= p.acrossIn(6)+over-model.Same
	case s.Square.Is() && (p.flats() == 4 || p.flats() == 0):
		return s.Square.V.Nominal * math.Sqrt2, s.Square.V.Nominal >= p.acrossIn(4)+over-model.Same
	}
	return 0, false
}

// KerfOf is the kerf of the saw that bars are cut with: of a saw of the shop, else usual for
// a hand hacksaw.
func KerfOf(b *model.Build) float64 {
	for _, i := range b.Shop.All {
		if i.Kind == "power_saw" || i.Kind == "hacksaw" {
			if k := i.Attr("kerf"); k != nil && k.Value.Kind == model.Number {
				return k.Value.Num
			}
		}
	}
	usual, _, _, ok := handbook.Kerf("hacksaw")
	if !ok {
		return 1
	}
	return usual
}

// Severs is how much of the bar is turned to chips where a piece of this part leaves it, in mm: the
// width of the parting tool for a piece that is worked at the end of the bar and parted there, else
// the kerf of the saw.
func (t *PartTrace) Severs() (kerf float64, parted bool) {
	bar := t.Part.Blank.Bar
	for _, m := range t.Moments {
		if bar == model.NoFace || m.Turn == nil || m.Turn.Choice.By != "parting" {
			continue
		}
		for _, w := range m.Turn.Works {
			if w.Wrong == "" && w.Width > 0 {
				return w.Width, true
			}
		}
	}
	return KerfOf(t.Part.Build), false
}
