package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "squareness-finer-than-machine",
	Title: "a face or hole is to be squarer than the fixed jaw, or the spindle, stands",
	Why: `A face that is milled with its neighbour on the fixed jaw is as square to it as that jaw stands to the bed. A hole goes in along
the spindle, and is as square as that stands to the table. Both are last measured by the owner. Shim the jaw, set the head
again, or set the piece true by square or indicator and say to what.`,
	Rows: []string{"E2", "E5", "E15"},
	Source: []string{"what the owner states: error of the vise over its jaw's depth, out_of_square of the mill in 100 mm; in proportion to length: geometry",
		"twice the stated error: our own limit, to be set by the shop"},
	Limits:    []string{"repeat_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Deaf:      Mounting | Tool,
	Trips:     exampleSquareTo("0.03", "0.02", "0.01"),
	Sound:     exampleSquareTo("0.03", "0.01", "0.01"),
	OnCut:     squarenessFinerThanMachine,
})

// exampleSquareTo mills a top face that is to be square to the back within so much, in a vise that
// is out by so much over its jaw, and drills a hole.
func exampleSquareTo(within, vise, mill string) string {
	s := replaced(examplePlaced("±0.5", "0.01", "0.01"), "top = 0,", "top = 1,")
	s = replaced(s, "  setup \"drill\"", "  face \"top\" {\n    square = { to = face.back, within = "+within+" }\n  }\n\n  setup \"drill\"")
	s = replaced(s, "    operation {\n", "    operation {\n      makes = face.top\n    }\n    operation {\n")
	s = replaced(s, "repeats       = 0.01\n}\n\nvise", "out_of_square = "+mill+"\n}\n\nvise")
	return replaced(s, "repeats       = 0.01", "error         = "+vise)
}

func squarenessFinerThanMachine(k *eval.Cut, a *Ask) {
	if k.Unplayed != "" || k.Hold.Upright != nil || k.Hold.Choice.Divided != nil || k.LevelSpindle() || k.Choice.Tool.Cutter == nil {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		if !w.Final || w.Wrong != "" || w.Target.Sub != "" {
			continue
		}
		switch f := w.Target.Form; {
		case f == nil:
			squareFace(k, w.Target.Face, a)
		case len(f.Mouths) > 0 && looksUp(k.Hold) == f.Into.Face:
			squareHole(k, f, w.Depth, a)
		}
	}
}

// looksUp is the face of the piece that the spindle comes down on, and atJaw the one on the fixed jaw.
func looksUp(h *eval.Holding) model.Face { return h.FaceTo([3]float64{0, 0, 1}) }
func atJaw(h *eval.Holding) model.Face   { return h.FaceTo([3]float64{0, 1, 0}) }

// squareFace asks of a face that looks up and is to be square to the one on the fixed jaw.
func squareFace(k *eval.Cut, face model.Face, a *Ask) {
	v := k.Hold.Choice.Vise
	r, label := relationsOf(k.Part, face)
	if v == nil || r == nil || !r.SquareTo.Within.Is() || looksUp(k.Hold) != face || atJaw(k.Hold).Axis() != r.SquareTo.To.V.Face.Axis() {
		return
	}
	want := r.SquareTo.Within
	over := k.Hold.Hi[1] - k.Hold.Lo[1]
	if set, ok := k.Hold.Work.SetUp.Within.Get(); ok {
		squareBy(label, want, set, "the set-up has it true within "+mm(set), k.Place("within"), a, nil)
		return
	}
	out, ok := Need(a, v.Error)
	deep, ok2 := Need(a, v.JawDepth)
	if !ok || !ok2 || deep <= 0 {
		return
	}
	off := out * over / deep
	squareBy(label, want, off, "the fixed jaw of "+v.Path()+" is out by "+mm(out)+" over its "+mm(deep)+", "+mm(round(off))+" over the "+mm(round(over))+" of that face", k.Place("hold"), a,
		[]finding.Note{{Place: v.Error.At, Says: "how far the jaw is out"}})
}

// squareHole asks of a hole that goes down from a face and is to be square to it, or to the one below.
func squareHole(k *eval.Cut, f *eval.Form, depth float64, a *Ask) {
	m, r := k.Hold.Choice.Machine, &f.Feature.SquareTo
	if m == nil || m.Kind != "mill" || !r.Within.Is() || r.To.V.Face == model.NoFace || r.To.V.Face.Axis() != f.Into.Face.Axis() {
		return
	}
	out, ok := Need(a, m.OutOfSquare)
	if !ok {
		return
	}
	off := abs(out) * depth / 100
	squareBy(f.Name(), r.Within, off, "the spindle of "+m.Path()+" is out of square by "+mm(out)+" in 100 mm, "+mm(round(off))+" over the "+mm(round(depth))+" of its depth", k.Place("makes"), a,
		[]finding.Note{{Place: m.OutOfSquare.At, Says: "how far the spindle is out of square"}})
}

// relationsOf is what a part says of one of its own faces; nil where it says nothing.
func relationsOf(p *eval.Part, face model.Face) (*model.Relations, string) {
	if p.Part == nil {
		return nil, ""
	}
	for _, f := range p.Faces {
		if f.Label == face.String() {
			return &f.Relations, "face." + f.Label
		}
	}
	return nil, ""
}

func squareBy(name string, want model.Known[float64], off float64, why string, at text.Place, a *Ask, notes []finding.Note) {
	share := a.Limit("repeat_share")
	has, wants := round(want.V), round(share*off)
	if has >= wants-0.0005 {
		a.Clear(Room(has, wants), "the squareness of "+name)
		return
	}
	f := a.Say(name+".square", at, "%s is to be square within %s, and %s: usually there is room for %s times that (repeat_share)", name, mm(want.V), why, figure(share))
	f.Margin, f.Also = Room(has, wants), append(notes, finding.Note{Place: want.At, Says: "how square it is to be"})
}
