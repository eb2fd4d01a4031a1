package eval

import (
	"strings"

	"fettle/schema/finding"
	"fettle/schema/model"
)

// Condition is one thing that ISO 1101 has a drawing ask of a surface: a form, or a relation to
// a datum.
type Condition struct {
	Target Target
	Word   string               // as it is written: "flat", "square", "runout"
	Within model.Known[float64] // width or diameter of the zone, or the full swing, mm
	To     []model.Ref          // its datums in their order; none of a form
	Whole  bool                 // of a run-out: over the whole surface, not at one place
}

// Datum names the first datum, as the part that it is asked of does in its own blocks.
func (c *Condition) Datum(own string) string {
	return strings.TrimPrefix(c.To[0].Path(), "part."+own+".")
}

// OfForm says whether a condition is asked of the surface by itself, without a datum.
func (c *Condition) OfForm() bool { return len(c.To) == 0 }

// Conditions lists what ISO 1101 asks of a part: of its own faces, then of its features, in the
// order written. One whose zone came to no value is left out: it is told of where it was read.
func (p *Part) Conditions() (out []Condition) {
	for _, f := range p.Faces {
		if t, ok := p.ruledFace(f.Item); ok {
			out = append(out, asked(t, &f.Relations)...)
		}
	}
	for _, f := range p.Forms {
		out = append(out, asked(Target{Form: f}, &f.Feature.Relations)...)
	}
	return out
}

// ruledFace is the face of the part's own that a block of conditions is about.
func (p *Part) ruledFace(i *model.Item) (Target, bool) {
	if i.Label == "outside" {
		return Target{Outside: true}, p.Round
	}
	f, ok := model.ParseFace(i.Label)
	return Target{Face: f}, ok
}

func asked(t Target, r *model.Relations) (out []Condition) {
	put := func(word string, within model.Known[float64], to ...model.Ref) {
		if within.Is() {
			out = append(out, Condition{Target: t, Word: word, Within: within, To: to})
		}
	}
	put("flat", r.Flatness)
	put("round", r.Roundness)
	put("straight", r.Straightness)
	for _, one := range []struct {
		word string
		model.ToFace
	}{{"square", r.SquareTo}, {"parallel", r.ParallelTo}, {"concentric", r.Concentric}, {"symmetric", r.Symmetric}} {
		if one.Said && one.To.Is() {
			put(one.word, one.Within, one.To.V)
		}
	}
	if z := r.RunoutTo; z.Said && z.To.Is() {
		put("runout", z.Within, z.To.V)
		if z.Over.V == "whole length" && len(out) > 0 {
			out[len(out)-1].Whole = true
		}
	}
	if z := r.PositionIn; z.Said && len(z.To.V) > 0 {
		put("position", z.Within, z.To.V...)
	}
	return out
}

// Surface is one surface of which a finish is asked.
type Surface struct {
	Target Target
	Finish model.Known[string]
	Own    bool // it says so itself; else the part says it of all
}

// Surfaces lists the surfaces of which a finish is asked: those that say their own, and where the
// part says one, all others that the drawing has.
func (p *Part) Surfaces() (out []Surface) {
	said := map[string]bool{}
	put := func(t Target, k model.Known[string], own bool) {
		if k.Is() && !said[t.Name()] {
			said[t.Name()] = true
			out = append(out, Surface{t, k, own})
		}
	}
	for _, f := range p.Faces {
		if t, ok := p.ruledFace(f.Item); ok {
			put(t, f.SurfaceIs, true)
		}
	}
	for _, f := range p.Forms {
		put(Target{Form: f}, f.Feature.SurfaceIs, true)
	}
	for _, f := range model.Faces {
		if !p.Round || f.Axis() == 0 {
			put(Target{Face: f}, p.Finish, false)
		}
	}
	if p.Round {
		put(Target{Outside: true}, p.Finish, false)
	}
	for _, f := range p.Forms {
		if !onSurfaceOnly(f.Feature.Kind) {
			put(Target{Form: f}, p.Finish, false)
		}
	}
	return out
}

// Worked is how a surface came to be as it is.
type Worked struct {
	By    string // the process
	Tool  string // kind of its tool; "" by hand, or none was found
	Spot  finding.Spot
	Cut   *Cut      // on a mill, a drilling machine or at a bench
	Chuck *Chucking // on a lathe
}

// Held is the block of the set-up that the surface was worked in.
func (w *Worked) Held() *model.SetUp {
	if w.Chuck != nil {
		return w.Chuck.Work.SetUp
	}
	return w.Cut.Hold.Work.SetUp
}

// AtBench says whether it was worked by hand.
func (w *Worked) AtBench() bool { return w.Cut != nil && w.Cut.Hold.Work.Kind == "bench" }

// Together says whether two surfaces were worked in one holding.
func (w *Worked) Together(o *Worked) bool {
	if w.Chuck != nil || o.Chuck != nil {
		return w.Chuck == o.Chuck
	}
	return w.Cut.Hold == o.Cut.Hold
}

// follows are the processes that go where the hole or surface already is: they leave it rounder
// or smoother, and where it was.
func follows(by string) bool {
	switch by {
	case "reaming", "tapping", "threading", "polishing", "lapping", "countersinking", "counterboring", "knurling":
		return true
	}
	return false
}

// LastWorked says of each thing that was made, by its name, how it was worked last; with placed
// set, how it came by its place: what a reamer or a lap does leaves that as it was.
func (t *PartTrace) LastWorked(placed bool) map[string]*Worked {
	out := map[string]*Worked{}
	put := func(t Target, w Worked) {
		centre := t.Form != nil && t.Form.Feature.Kind == "centre_hole"
		switch started := w.By == "spotting" || w.By == "centring"; {
		case t.Sub != "", w.By == "scribing", started && !centre:
			return
		case placed && follows(w.By) && out[t.Name()] != nil:
			return
		}
		out[t.Name()] = &w
	}
	for _, m := range t.Moments {
		switch {
		case m.Cut != nil:
			w := Worked{By: m.Cut.Choice.By, Spot: m.Cut.Spot, Cut: m.Cut}
			if c := m.Cut.Choice.Tool.Cutter; c != nil {
				w.Tool = c.Kind
			}
			for _, made := range m.Cut.Step.Makes {
				put(made, w)
			}
		case m.Turn != nil:
			w := Worked{Spot: m.Turn.Spot, Chuck: m.Turn.Hold}
			if c := m.Turn.Choice.Tool.Cutter; c != nil {
				w.Tool = c.Kind
			}
			for _, made := range m.Turn.Works {
				if made.Wrong == "" {
					w.By = m.Turn.By(made.Target)
					put(made.Target, w)
				}
			}
		}
	}
	return out
}

// Datum is the surface of this part that a reference of a condition names. False where it is none.
func (p *Part) Datum(r model.Ref) (Target, bool) {
	if r.Face != model.NoFace {
		return Target{Face: r.Face}, true
	}
	if r.Item != nil && r.Item.Kind == "face" {
		return p.ruledFace(r.Item)
	}
	t, ok := p.target(r)
	t.Ref, t.Sub = model.Ref{}, ""
	return t, ok
}

// Spread is the size over which a condition of form is asked for, mm: the longer side of a flat
// surface, the diameter of one that is to be round, the length along its axis of one that is to be
// straight or true all along. False where the drawing does not say it.
func (p *Part) Spread(c *Condition) (float64, bool) {
	f := c.Target.Form
	switch {
	case f == nil && c.Target.Outside && c.Word == "round":
		return 2 * p.Radius(), true
	case f == nil && c.Target.Outside:
		return p.Size[0], true
	case f == nil:
		a, b := across(c.Target.Face)
		return max(p.Size[a], p.Size[b]), true
	case f.Wrong != "" || len(f.Lacks) > 0:
		return 0, false
	case c.Word == "round" && f.Lathe != nil:
		return 2 * max(f.Lathe.R0, f.Lathe.R1), true
	case c.Word == "round":
		return f.Diameter.Get()
	case f.Lathe != nil:
		return f.Lathe.X1 - f.Lathe.X0, true
	case len(f.Mouths) > 0:
		return f.Depth.Get()
	}
	d := f.Hi.Sub(f.Lo)
	return max(d[0], d[1], d[2]), true
}
