package sheet

import (
	"math"
	"strconv"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// tool stands the tool of an operation on a lathe where it has come to at its end: a drill with its
// chuck in the tailstock, the blade of a parting tool; of other tools the tip alone is known.
func (t *turned) tool() {
	k := t.k
	for i := range k.Works {
		w := &k.Works[i]
		if w.Wrong != "" {
			continue
		}
		switch {
		case k.InTailstock() && w.Depth > 0:
			t.inTailstock(w)
			return
		case w.Width > 0 && !w.Inside:
			t.blade(w)
		}
		t.toJaws(w)
	}
}

// inTailstock stands a drill, reamer or tap at its deepest, and its holder where enough of the shank
// is left in it; how far it stands out is for the one who puts it in.
func (t *turned) inTailstock(w *eval.Turning) {
	like := t.k.AsCut()
	r := like.Stack.Diameter.Or(2*w.R0) / 2
	tip, full := w.U0-w.Point, w.U0
	const far = 400.0
	end := tip + far
	if l, ok := like.Stack.Overall.Get(); ok {
		end = max(tip+l-3*r, full+1)
	}
	p := &t.s.Panes[elevation]
	put := func(name string, shape solid.Shape) {
		t.s.Things = append(t.s.Things, sketch.Thing{Name: name, Tool: true, In: []int{elevation}, Shape: shape})
	}
	at := func(x float64) solid.Vec { return solid.Vec{x, 0, 0} }
	if w.Point > 0 {
		least := 0.0
		if t.k.Choice.By != "drilling" && t.k.Choice.By != "spotting" && t.k.Choice.By != "centring" {
			least = 0.85 * r
		}
		put("", solid.Cone(at(tip), at(full), least, r))
	}
	put(t.k.Choice.Tool.Path(), solid.Cylinder(at(full), at(end), r))
	top := t.s.Hi[0] + toolShown
	reach(p, solid.Vec{min(end, top), r, 0})
	reach(p, solid.Vec{min(end, top), -r, 0})
	if b := like.Stack.Holder; b != nil && end < top {
		n := b.Diameter
		if !n.Is() {
			n = b.Nose
		}
		if d, ok := n.Get(); ok {
			put(b.Path(), solid.Cylinder(at(end), at(end+b.Out.Or(far)), d/2))
			reach(p, solid.Vec{end + 8, 0, 0})
		}
	}
	if tip > 0.05 {
		t.gauge(0, tip)
	} else {
		reach(p, solid.Vec{tip - 2, 0, 0})
	}
}

// blade stands the blade of a parting or grooving tool at the end of its cut.
func (t *turned) blade(w *eval.Turning) {
	r := min(w.R0, w.R1)
	far := -t.shown
	if l, ok := t.k.Choice.Tool.Reach().Get(); ok {
		far = max(far, -r-l)
	}
	t.s.Things = append(t.s.Things, sketch.Thing{Name: t.k.Choice.Tool.Path(), Tool: true, In: []int{elevation},
		Shape: solid.Box(solid.Vec{w.U0, far, -2}, solid.Vec{w.U0 + w.Width, -r, 2})})
}

// room is how near a cut on a lathe, or what holds its tool, comes to what turns with the work.
type room eval.JawRoom

// what names the two things between which a room lies.
var what = map[eval.JawRoomOf]string{eval.CutToJaws: "the cut into the jaws", eval.BladeToJaws: "to the jaws", eval.PostToJaws: "post to jaws", eval.ToolToPlate: "to the faceplate", eval.ToolToFoot: "to the foot"}

// roomOf is the room that the rule about tools and jaws looks at; false where nothing is known, or
// where the post passes outside of the jaws, or may for all that is known.
func roomOf(k *eval.Turn, w *eval.Turning) (room, bool) {
	r, ok := k.JawRoom(w)
	if !ok || k.Choice.Post == nil || len(r.Lacks) > 0 {
		return room{}, false
	}
	if r.Of == eval.PostToJaws && r.Room < 0 {
		if out, known := r.Outside.Get(); !known || out >= k.Part.Build.Thumbs["room"].Or(1)-0.0005 {
			return room{}, false
		}
	}
	return room(r), true
}

// words are the figure of a room, as a label or, with the names, as a line.
func (r room) words() string {
	if r.Room < -0.0005 {
		return "CLASH by " + sketch.Figure(-r.Room) + ": " + strings.Replace(what[r.Of], " to ", " into ", 1)
	}
	return sketch.Figure(math.Round(r.Room*100)/100) + " " + what[r.Of]
}

// line is the same in the lines of an operation.
func (r room) line(k *eval.Turn) string {
	if r.Room < -0.0005 {
		return r.words()
	}
	tool := k.Choice.Tool.Path()
	if r.Of == eval.PostToJaws {
		tool = k.Choice.Post.Path()
	}
	on := "the jaws of " + k.Hold.Choice.HeldBy()
	if k.Hold.Choice.Faceplate != nil {
		on = k.Hold.Choice.HeldBy()
	}
	if r.Of == eval.ToolToFoot {
		on = "the end of the foot of " + k.Hold.Choice.AnglePlate.Path()
	}
	return tool + " to " + on + ": " + length(r.Room)
}

// toJaws draws how near the cut, or what holds its tool, comes to what turns with the work.
func (t *turned) toJaws(w *eval.Turning) {
	k, h := t.k, t.h
	if p := k.Choice.Post; p != nil && h.Choice.Chuck != nil && !w.Inside && k.Choice.Tool.Cutter != nil && k.Choice.Tool.Cutter.Kind != "parting_tool" {
		t.lack(p.LeftOfEdge.Missing())
	}
	r, ok := roomOf(k, w)
	if !ok || r.Room > closeMost {
		return
	}
	p := &t.s.Panes[elevation]
	y := -max(h.Gripped/2, min(w.R0, w.R1)) - 4
	if r.Of == eval.PostToJaws {
		t.post(w, r.To)
	}
	if r.Room < -0.0005 {
		at := solid.Vec{0, y, 0}
		p.Passes = append(p.Passes, sketch.Passage{A: at, B: at, Meets: true, Words: r.words()})
	} else {
		p.Passes = append(p.Passes, sketch.Passage{A: solid.Vec{r.From, y, 0}, B: solid.Vec{r.To, y, 0}, Words: r.words()})
	}
	reach(p, solid.Vec{0, y - 2, 0})
}

// post stands the left side of a tool post beside the work at the end of the cut.
func (t *turned) post(w *eval.Turning, left float64) {
	y := -max(w.Had, t.h.Gripped/2) - 3
	t.s.Things = append(t.s.Things, sketch.Thing{Name: t.k.Choice.Post.Path() + ", its left side", In: []int{elevation},
		Shape: solid.Box(solid.Vec{left, -t.shown - 20, -2}, solid.Vec{w.U0 + t.k.Choice.Post.LeftOfEdge.V, y, 2})})
}

// tips draws the ways of the tip, on the operator's side of the axis, and what they leave.
func (t *turned) tips() {
	p := &t.s.Panes[elevation]
	n := 0
	for i := range t.k.Works {
		w := &t.k.Works[i]
		if w.Wrong != "" || w.U0 == w.U1 && w.R0 == w.R1 && w.R0 == w.Had {
			continue
		}
		n++
		a, b := wayOf(t.k, w)
		way := sketch.Way{From: a, To: b}
		if len(t.k.Works) > 1 {
			way.Number = strconv.Itoa(n)
		}
		p.Ways = append(p.Ways, way)
		reach(p, a)
		reach(p, b)
		t.shown = max(t.shown, -a[1]+1, -b[1]+1)
		if words := leaves(t.k, w); words != "" {
			p.Tags = append(p.Tags, sketch.Tag{At: a.Add(b).Times(0.5), Words: words})
		}
		if t.k.Choice.Post != nil && w.U0 > 0.05 && w.U0 < t.s.Piece.Extent(0, 1)-0.05 && !t.passed(w.U0) {
			t.gauge(0, w.U0)
		}
	}
}

// passed says whether a length from the jaw face stands there already, as the room to the jaws.
func (t *turned) passed(u float64) bool {
	for _, p := range t.s.Panes[elevation].Passes {
		if !p.Meets && math.Abs(p.B[0]-u) < 0.005 {
			return true
		}
	}
	return false
}

// wayOf is where the tip goes: along the work from the tailstock's end, or straight in to it.
func wayOf(k *eval.Turn, w *eval.Turning) (a, b solid.Vec) {
	r0, r1 := w.R0, w.R1
	if k.Hold.Sign < 0 { // R0 stands at the part's lower place, which is the lathe's farther one
		r0, r1 = r1, r0
	}
	a, b = solid.Vec{w.U1, -r1, 0}, solid.Vec{w.U0, -r0, 0}
	switch {
	case k.Choice.By == "facing":
		return solid.Vec{w.U0, -w.Had, 0}, solid.Vec{w.U0, 0, 0}
	case k.InTailstock() && w.Depth > 0:
		return solid.Vec{w.U1, 0, 0}, solid.Vec{w.U0 - w.Point, 0, 0}
	case k.Choice.By == "parting":
		return solid.Vec{w.U0, -w.Had - 2, 0}, solid.Vec{w.U0, -min(r0, r1), 0}
	case k.Choice.By == "grooving":
		return solid.Vec{w.U0, -w.Had - 2, 0}, solid.Vec{w.U0, -min(r0, r1), 0}
	case math.Abs(w.U1-w.U0) < 1e-9:
		a[1] = -w.Had
	}
	return a, b
}

// leaves says what a way leaves.
func leaves(k *eval.Turn, w *eval.Turning) string {
	switch {
	case k.Choice.By == "facing", k.Choice.By == "parting", k.InTailstock():
		return ""
	case w.R0 == w.R1 && w.R0 > 0:
		return "tip, leaves ⌀" + model.Figure(2*w.R0)
	case w.R0 != w.R1:
		return "tip, leaves ⌀" + model.Figure(2*min(w.R0, w.R1)) + " to ⌀" + model.Figure(2*max(w.R0, w.R1))
	}
	return ""
}
