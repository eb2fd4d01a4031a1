package eval

import (
	"fettle/eval/solid"
	"fettle/schema/model"
)

// A part that is not turned, clamped or in a vise on a rotary table that lies flat with the middle of a bolt circle
// over the table's own. The table turns piece and clamps together, so that tool, piece and clamps
// stand to each other at every place as if the spindle went there: places are played where they
// are, and only the machine's own travel is less.

// onRotary lifts the piece onto the table and stands its face in the tool's way; it gives the new
// height of the seat above the machine's table.
func (h *Holding) onRotary(d *Divided, rise float64) float64 {
	height := d.Table.Height
	up := height.Or(far)
	h.Seat = model.Map(height, func(t float64) float64 { return t + d.Blocks + rise })
	h.rotaryFace(d, up+d.Blocks)
	return up + d.Blocks + rise
}

// rotaryFace stands the face of the table in the tool's way, at a height.
func (h *Holding) rotaryFace(d *Divided, up float64) {
	mid := h.Pose.Point(h.turnedAbout())
	least, most := model.Grain, far
	if w, ok := d.Table.Diameter.Get(); ok {
		least, most = w/2, w/2
	}
	face := func(r float64) solid.Shape {
		return solid.Cylinder(solid.Vec{mid[0], mid[1], -far}, solid.Vec{mid[0], mid[1], up}, r)
	}
	h.obstacle("the face of "+d.Item().Path(), d.Item(), face(least), face(most), d.Table.Diameter.Missing())
}

// underVise is how high the foot of a vise stands above the machine's table: on that, or on a rotary
// table and its blocks.
func (c *HoldChoice) underVise() model.Known[float64] {
	if c.Divided == nil || c.Divided.Table == nil {
		return model.Sure(0.0)
	}
	return model.Map(c.Divided.Table.Height, func(t float64) float64 { return t + c.Divided.Blocks })
}

// turnedAbout is the place of the part over the table's middle: that of the first circle that the
// set-up makes, else the middle of the part.
func (h *Holding) turnedAbout() solid.Vec {
	for _, st := range h.Work.Steps {
		for _, t := range st.Makes {
			if t.Form != nil && len(t.Form.Copies) > 0 {
				return t.Form.Centre
			}
			if t.Form != nil && t.Form.Way != nil {
				if mids := t.Form.Middles(); len(mids) > 0 {
					return mids[0]
				}
			}
			if t.Form != nil && t.Form.Rounded() {
				return t.Form.About.At
			}
			if t.Form == nil || !t.Form.circled() {
				continue
			}
			q := h.Part
			if q.Drawn != nil {
				q = q.Drawn
			}
			if v, known := q.locate(t.Form.Into.Face, t.Form.Feature.At.V[0]); known[0] || known[1] || known[2] {
				if q != h.Part {
					v[0] = q.Low[0] + q.High()[0] - v[0]
				}
				return v
			}
		}
	}
	return h.Part.Low.Add(h.Part.High()).Times(0.5)
}
