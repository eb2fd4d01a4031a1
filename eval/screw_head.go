package eval

import (
	"math"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Head is the diameter of a screw's head, over the corners of a hexagon: of the shop's own screws of that
// thread and head, else of the standard.
func (j *Joint) Head() model.Known[float64] {
	s := j.Screw
	if !s.Model.Head.Is() {
		return model.Lacking[float64](s.Model.Head.Missing())
	}
	if d, ok := headAcross(j.Trace.Build, s.Model, s.Thread.V).Get(); ok {
		return d
	}
	return model.Known[float64]{Of: s.Model.Item, Attr: "head (its diameter)", At: s.Model.Item.At}
}

// headAcross is the diameter of a head, where the shop or the standard says it.
func headAcross(b *model.Build, s *model.ScrewJoint, th drawing.Thread) (out model.Known[model.Known[float64]]) {
	for _, x := range owned(b, s, th) {
		if x.Head.V == s.Head.V && x.HeadDiameter.Is() {
			return model.Sure(x.HeadDiameter)
		}
	}
	if th.Series != "M" {
		return out
	}
	if h, ok := handbook.HeadFor(s.Head.V, th.Diameter, drivenBy(b, s, th)); ok {
		return model.Sure(model.Known[float64]{V: h.Diameter, From: model.Handbook})
	}
	if key, across, ok := handbook.Driver(s.Head.V, th.Diameter); ok && key == "spanner" {
		return model.Sure(model.Known[float64]{V: across * 2 / math.Sqrt(3), From: model.Handbook})
	}
	return out
}

// Owned lists the shop's screws of the thread of a joint whose head may be the one it wants.
func (j *Joint) Owned() []*model.Screws {
	return owned(j.Trace.Build, j.Screw.Model, j.Screw.Thread.V)
}

func owned(b *model.Build, s *model.ScrewJoint, th drawing.Thread) []*model.Screws {
	var out []*model.Screws
	for _, x := range b.Shop.Screws {
		has, ok := x.Thread.Get()
		if full, found := handbook.FillThread(has); found {
			has = full
		}
		if ok && has.Fits(th) && (!s.Head.Is() || !x.Head.Is() || x.Head.V == s.Head.V) {
			out = append(out, x)
		}
	}
	return out
}

// drivenBy is what the shop says that its screws of that thread and head are driven with; "" where it does not, or of two ways.
func drivenBy(b *model.Build, s *model.ScrewJoint, th drawing.Thread) string {
	out := ""
	for _, x := range owned(b, s, th) {
		switch {
		case !x.Driver.Is() || x.Head.V != s.Head.V:
		case out != "" && x.Driver.V != out:
			return ""
		default:
			out = x.Driver.V
		}
	}
	return out
}

// standardMouth fills in the counterbore or the countersink of a clearance hole by the head that stands in it.
func (p *Part) standardMouth(m *model.Feature) {
	if !m.Counterbore.Said && !m.Countersink.Said {
		return
	}
	s, th, ok := p.headIn(m)
	if !ok {
		return
	}
	h, ok := handbook.HeadFor(s.Head.V, th.Diameter, drivenBy(p.Build, s, th))
	if !ok {
		return
	}
	across, _ := headAcross(p.Build, s, th).Get()
	// A head of the shop's own that is wider than the standard's counterbore is not of that standard.
	if b := &m.Counterbore; b.Said && h.Bore > 0 && across.V <= h.Bore {
		if blank(b.Diameter) {
			b.Diameter = chosenSize(h.Bore, handbook.CounterboreLimits)
		}
		if blank(b.Depth) {
			b.Depth = chosenSize(h.Deep, "")
		}
	}
	if c := &m.Countersink; c.Said && h.Angle > 0 {
		if blank(c.Diameter) {
			c.Diameter = chosenSize(across.V, "")
		}
		if blank(c.Angle) {
			c.Angle = model.Known[float64]{V: h.Angle, From: model.Chosen}
		}
	}
}

// headIn is the metric screw whose head stands in the mouth of a hole: the one that passes that hole first. False where there
// is none, where two differ in thread or head, and where a washer lies under a head: that wants a wider counterbore.
func (p *Part) headIn(m *model.Feature) (s *model.ScrewJoint, th drawing.Thread, ok bool) {
	for _, x := range p.Build.Screwed {
		if len(x.Through.V) == 0 || x.Through.V[0].Item != m.Item || x.Through.V[0].Part() != p.Part.Item {
			continue
		}
		var one Screwed
		one.Model = x
		one.read(x.Size)
		switch {
		case !one.Thread.Is() || one.Thread.V.Series != "M" || !x.Head.Is(), x.Washer.Is(), x.Named.Is(), one.sprung():
			return nil, th, false
		case s != nil && (th.Diameter != one.Thread.V.Diameter || s.Head.V != x.Head.V):
			return nil, th, false
		}
		s, th = x, one.Thread.V
	}
	return s, th, s != nil
}
