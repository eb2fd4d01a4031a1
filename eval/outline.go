package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// outline shapes the edge of sheet or plate, or an opening in it, through its whole thickness.
func (p *Part) outline(f *Form) {
	m := f.Feature
	into := model.Known[model.Ref]{V: model.Ref{Face: model.Top}}
	if m.Into.Is() {
		into = m.Into
	}
	pl, ok := p.PlaneOf(into.V)
	if !ok {
		f.Wrong = "the face it is drawn on is not a flat face of this part"
		return
	}
	if !m.Points.Is() {
		f.lack(m.Points.Missing())
		return
	}
	f.Into, f.Dir, f.Through = pl, Normal(pl.Face).Times(-1), true
	f.Depth = model.Sure(p.far(pl))
	a, b := across(pl.Face)
	f.Way = &OutlineWay{Opening: m.Opening.V}
	for _, pos := range m.Points.V {
		v, known := p.locate(pl.Face, pos)
		if !known[a] || !known[b] {
			f.Wrong = "one of its points fixes only one of the two co-ordinates on that face"
			return
		}
		v[pl.Face.Axis()] = pl.At
		f.Way.Corners = append(f.Way.Corners, v)
	}
	for _, c := range m.Arcs {
		if !c.From.Is() || !c.Radius.Is() {
			f.lack(c.From.Missing())
			f.lack(c.Radius.Missing())
			return
		}
		f.Way.Arcs = append(f.Way.Arcs, solid.OutlineArc{From: c.From.V - 1, Radius: c.Radius.V})
	}
	p.drawOutline(f)
}

// drawOutline makes edges, room and removals of an outline from its corners on the face that it goes into.
func (p *Part) drawOutline(f *Form) {
	pl := f.Into
	a, _ := across(pl.Face)
	var origin, u solid.Vec
	origin[pl.Face.Axis()], u[a] = pl.At, 1
	fr := solid.On(origin, u, Normal(pl.Face))
	flat := func(v solid.Vec) [2]float64 { return [2]float64{fr.U.Dot(v), fr.V.Dot(v)} }
	var points [][2]float64
	for _, v := range f.Way.Corners {
		points = append(points, flat(v))
	}
	arcs := f.Way.Arcs
	over := p.outwardLater()
	f.Way.Frame, f.Way.Edges = fr, outlineEdges(points, arcs)
	var err error
	p.outlineRoom(f)
	if f.Way.Opening {
		f.Trim, err = fr.Opening(points, arcs, f.Depth.V+over, over, f.Name())
	} else {
		lo, hi := flat(p.Low), flat(p.High())
		for i := range 2 {
			lo[i], hi[i] = min(lo[i], hi[i])-over, max(lo[i], hi[i])+over
		}
		f.Trim, err = fr.Outline(points, arcs, lo, hi, f.Depth.V+over, over, f.Name())
	}
	if err != nil {
		f.Wrong = err.Error()
	}
}

// outwardLater is more than any metal over a face: the raw piece is not settled when forms are.
func (p *Part) outwardLater() float64 { return p.Size[0] + p.Size[1] + p.Size[2] }

// trim cuts along an outline: by hand with saw and file, or round it with a mill.
func (k *Cut) trim(t Target) {
	fs := k.Part.change(k.After, t.Form)
	w := Working{Target: t, Entry: t.Form.Into, Took: t.Form.Trim, Depth: t.Form.Depth.V, Through: true, Final: true}
	w.Facing = k.Hold.Pose.Dir(Normal(t.Form.Into.Face))[2] > 0.5
	if fs.Finished {
		fs.Twice = true
	}
	fs.Begun, fs.Finished, fs.Through, fs.ByProcess, fs.By = true, true, true, k.Choice.By, k.Spot
	w.Deep = w.Depth
	switch {
	case k.Step.Work.Kind == "bench" || k.Choice.ByHand:
	case k.Choice.By != "milling":
		w.Wrong = "an outline is milled, or cut and filed at the bench"
	case w.Facing:
		w.Wrong = k.outlineWrong(t.Form)
		if r := k.Stack.Diameter.Or(0) / 2; r > 0 && w.Wrong == "" {
			w.Moves, w.Run, w.Wrong = k.outlineMoves(t.Form, r)
		}
	}
	if w.Wrong != "" {
		w.Facing = false
	}
	k.took(w)
	k.edgesTrimmed()
}

// edgesTrimmed notes which of the part's own faces an outline has brought the metal down to.
func (k *Cut) edgesTrimmed() {
	for _, f := range model.Faces {
		fs := &k.After.Faces[f]
		if fs.Done || math.Abs(k.After.Piece.Extent(f.Axis(), f.Sign())-k.Part.FaceAt(f)) > model.Grain || math.Abs(fs.At-k.Part.FaceAt(f)) < model.Grain {
			continue
		}
		fs.At, fs.Done, fs.Skin, fs.Times, fs.By = k.Part.FaceAt(f), true, "", fs.Times+1, k.Spot
	}
}
