package eval

import (
	"math"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// ParseScrew takes "M5x25" or "2 BA x 1/2 in" apart. False where it has no thread. A figure
// behind the last x is a length, save where thread and figure are a pitch of the tables.
func ParseScrew(s string, bare drawing.Unit) (th drawing.Thread, length model.Known[float64], ok bool) {
	for _, sign := range [...]string{"×", "X", "*"} {
		s = strings.ReplaceAll(s, sign, "x")
	}
	if t, err := drawing.ParseThread(s); err == nil {
		if full, known := handbook.FillThread(t); known {
			return full, length, true
		}
		th, ok = t, true
	}
	if i := strings.LastIndex(s, "x"); i > 0 {
		t, err := drawing.ParseThread(strings.TrimSpace(s[:i]))
		l, err2 := drawing.ParseLength(strings.TrimSpace(s[i+1:]), bare)
		if err == nil && err2 == nil && l > 0 {
			full, _ := handbook.FillThread(t)
			return full, model.Known[float64]{V: l, From: model.Written}, full.Diameter > 0
		}
	}
	return th, length, ok && th.Diameter > 0
}

// passed settles one thing that a screw goes through.
func (t *Trace) passed(r model.Ref, first bool) Passed {
	o := Passed{Thick: model.Known[float64]{Of: r.Item, Attr: "thickness where the screw passes", At: r.At}}
	if r.Item == nil {
		return o
	}
	o.Part = t.partOf(r.Part())
	if o.Part == nil {
		return o
	}
	if r.Item == o.Part.Part.Item {
		switch {
		case o.Part.Part.Thickness.Is():
			o.Thick = model.Sure(o.Part.Part.Thickness.V.Nominal)
		case o.Part.Round:
			o.Thick = model.Sure(o.Part.Size[0])
		}
		return o
	}
	o.Form = o.Part.FormOf(r.Item)
	if o.Form == nil || o.Form.Wrong != "" || o.Form.Feature.Kind != "hole" && o.Form.Feature.Kind != "bore" {
		o.Form = nil
		return o
	}
	f := o.Form
	o.Hole = f.Feature
	o.Diameter = t.dimension(model.Ref{At: r.At, Item: r.Item, Sub: "diameter"}).Limits
	if !o.Diameter.Is() && f.Diameter.Is() {
		o.Diameter = model.Sure(Limits{f.Diameter.V, f.Diameter.V})
	}
	o.Thick = o.Part.clampedAt(f, first)
	return o
}

// clampedAt is how much of a part lies between the head, or the part before, and the next one
// round a clearance hole. Only the first part has the head in it: there a counterbore shortens
// the way. A part whose faces round the hole are cut away by other features is not known: what
// it rests on there is not said.
func (p *Part) clampedAt(f *Form, first bool) model.Known[float64] {
	lack := model.Known[float64]{Of: f.Feature.Item, Attr: "clamped length", At: f.Feature.Item.At}
	axis := f.Into.Face.Axis()
	if !f.Through || f.Into.Face == model.NoFace || len(f.Lacks) > 0 || !near(f.Into.At, p.FaceAt(f.Into.Face)) {
		return lack
	}
	thick := p.Size[axis]
	for _, g := range p.Forms {
		switch {
		case g == f:
		case g.Later && !onSurfaceOnly(g.Feature.Kind):
			return lack
		case g.Wrong != "":
		case g.Lathe != nil && !g.Lathe.Inside && !p.Own(g.About):
			return lack
		case g.Lathe != nil && !g.Lathe.Inside:
			less, ok := turnedAway(f, g)
			if !ok {
				return lack
			}
			thick -= less
		case p.cutsRim(f, g, axis):
			return lack
		}
	}
	cb := f.Feature.Counterbore
	switch {
	case cb.Said && !cb.Depth.Is():
		return model.Lacking[float64](cb.Depth.Missing())
	case cb.Said && first:
		thick -= cb.Depth.V.Nominal
	}
	return model.Sure(thick)
}

// onSurfaceOnly says that features of a kind leave the faces that parts rest on.
func onSurfaceOnly(kind string) bool {
	switch kind {
	case "teeth", "worm", "graduations", "knurl", "thread":
		return true
	}
	return false
}

// turnedAway is how much of the length of a hole along the axis of a turned part a turned
// outside takes away: all of its stretch where it lies within the hole's circle. False where
// its edge runs through the hole.
func turnedAway(f, g *Form) (less float64, ok bool) {
	l := g.Lathe
	r := f.Diameter.V / 2
	for _, m := range f.Mouths {
		out := math.Hypot(m[1], m[2])
		switch most, least := max(l.R0, l.R1), min(l.R0, l.R1); {
		case f.Into.Face.Axis() != 0:
			return 0, false
		case least >= out+r-model.Grain:
		case most <= out-r+model.Grain:
			less = l.X1 - l.X0
		default:
			return 0, false
		}
	}
	return less, true
}

// cutsRim says whether another feature reaches a hole's rim, so that the faces round it may not
// be those of the envelope. Chamfers do not count.
func (p *Part) cutsRim(f, g *Form, axis int) bool {
	switch g.Feature.Kind {
	case "chamfer", "radius", "slit", "thread", "centre_hole", "knurl", "graduations":
		return false
	}
	r := f.Diameter.V / 2
	m := f.Mouths
	for _, at := range m {
		in := true
		for i := range 3 {
			if i != axis && (at[i]+r < g.Lo[i] || at[i]-r > g.Hi[i]) {
				in = false
			}
		}
		if len(g.Mouths) > 0 && g.Dir != [3]float64{} && math.Abs(g.Dir[axis]) > 0.5 {
			in = false
			for _, c := range g.Mouths {
				d := c.Sub(at)
				d[axis] = 0
				in = in || d.Len() < r+g.Diameter.Or(0)/2
			}
		} else if len(g.Mouths) > 0 {
			in = false // a hole across lies within the part and leaves its faces
		}
		if in && (g.Hi != g.Lo || len(g.Mouths) > 0) {
			return true
		}
	}
	return false
}
