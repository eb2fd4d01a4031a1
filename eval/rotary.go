package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/handbook"
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
	if rise == 0 && h.Choice.Plate == nil {
		h.Sunk = math.Min(h.spigot(d), up+d.Blocks)
		rise = -h.Sunk
	}
	h.Seat = model.Map(height, func(t float64) float64 { return t + d.Blocks + rise })
	if rise == 0 && h.maySink(d) {
		h.Seat = model.Lacking[float64](d.Table.Bore.Missing(), d.Table.Diameter.Missing())
	}
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
	h.obstacle("the face of "+d.Item().Path(), d.Item(), face(least), face(most), d.Table.Diameter.Missing(), d.Table.Bore.Missing())
	hole := Hole{At: [2]float64{mid[0], mid[1]}}
	if b, ok := tableBore(d.Table).Get(); ok {
		hole.Least, hole.Most = b/2, b/2
	} else {
		hole.Most = d.Table.Diameter.Or(far) / 2 / boreShare
	}
	h.Obstacles[len(h.Obstacles)-1].Hole = hole
}

// tableBore is the hole through the middle of a rotary table, mm; of a taper its small end.
func tableBore(t *model.RotaryTable) model.Known[float64] {
	s, ok := t.Bore.Get()
	if !ok {
		return model.Lacking[float64](t.Bore.Missing())
	}
	if row, ok := handbook.TaperSize(s.Taper); ok && s.Taper.Series != "" {
		if row.Small > 0 {
			return model.Sure(row.Small)
		}
		return model.Known[float64]{Of: t.Item, Attr: "bore (the small end of its taper)", At: t.Bore.At}
	}
	return model.Sure(s.Diameter)
}

// boreShare is how many times wider a rotary table is than its bore, at the least: common practice.
const boreShare = 3

// spigot is how far work that lies on a rotary table hangs into its bore.
func (h *Holding) spigot(d *Divided) float64 {
	bore, ok := tableBore(d.Table).Get()
	if !ok || !(bore > 0) {
		return 0
	}
	return h.spigotIn(bore)
}

// maySink says whether it could hang into the bore of a table whose bore is not known.
func (h *Holding) maySink(d *Divided) bool {
	return d != nil && d.Table != nil && !tableBore(d.Table).Is() && h.spigotIn(d.Table.Diameter.Or(far)/boreShare) > 0
}

// spigotIn is how far work hangs into a bore under the middle that it is turned about: what stands lowest goes
// in, if all that is wider than the bore stands higher.
func (h *Holding) spigotIn(bore float64) float64 {
	low, high := h.Pose.Point(h.turnedAbout()), h.Pose.Point(h.turnedAbout())
	low[2], high[2] = h.Lo[2]-1, h.Hi[2]+1
	wider := h.Piece.Cut(solid.Removal{Take: solid.Cylinder(low, high, bore/2+model.Grain/2)}).Extent(2, -1)
	if math.IsNaN(wider) || wider < h.Lo[2]+model.Grain {
		return 0
	}
	return wider - h.Lo[2]
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
