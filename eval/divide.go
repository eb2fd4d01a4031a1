package eval

import (
	"fmt"
	"math"

	"fettle/eval/reckon/dividing"
	"fettle/schema/model"
)

// How an operation divides: what is to be divided, what it could be done with, and every setting
// that does it, best first. The arithmetic is reckon/dividing's.

// Division is one thing that an operation divides.
type Division struct {
	Target Target
	Job    dividing.Job
	Count  int     // equal divisions of the whole circle; 0: an angle
	Angle  float64 // degrees, where Count is 0
}

// Says names what is divided: "60 divisions", "steps of 22.5 deg".
func (d Division) Says() string {
	if d.Count > 0 {
		return fmt.Sprintf("%d divisions", d.Count)
	}
	return "steps of " + model.Figure(d.Angle) + " deg"
}

// Divisions lists what a step divides: as its index says, else what its features ask for. A
// feature that looks one way alone asks for nothing. Wrong is what of the index is out of range.
func (st *Step) Divisions() (out []Division, wrong string) {
	if st.Step == nil {
		return nil, ""
	}
	for _, t := range st.Makes {
		all, why := st.divisions(t)
		if why != "" {
			return nil, why
		}
		out = append(out, all...)
	}
	return out, ""
}

func (st *Step) divisions(t Target) ([]Division, string) {
	in := &st.Step.Index
	switch {
	case in.Count.Is():
		return equal(t, in.Count.V)
	case in.Bare.Is():
		if in.Bare.V != math.Trunc(in.Bare.V) {
			return nil, "index = " + model.Figure(in.Bare.V) + " is no whole number of divisions"
		}
		return equal(t, int(in.Bare.V))
	case in.Angles.Is():
		return turns(t, in.Angles.V)
	}
	if t.Form != nil && t.Form.Scale != nil && t.Form.Scale.Ruled != nil {
		return nil, ""
	}
	if t.Form == nil || t.Form.Wrong != "" || len(t.Form.Lacks) > 0 || len(t.Form.Spins) < 2 && t.Form.Tooth == nil && t.Form.Scale == nil && !t.Form.circled() {
		return nil, ""
	}
	n, over, spaces := t.Form.asked()
	switch {
	case n == 0:
		return turns(t, t.Form.Spins)
	case over > 360-1e-9:
		return equal(t, n)
	}
	step := degrees(over).Over(dividing.Of(int64(spaces), 1))
	j, err := dividing.Angle(step, n)
	if err != nil {
		return nil, err.Error()
	}
	return []Division{{Target: t, Job: j, Angle: over / float64(spaces)}}, ""
}

// asked gives how many places a feature has, the arc, and how many spaces divide it; 0 where its
// places are written one by one.
func (f *Form) asked() (n int, over float64, spaces int) {
	m := f.Feature
	switch {
	case f.Tooth != nil:
		return f.Tooth.Count, 360, f.Tooth.Count
	case f.Scale != nil && f.Scale.Ruled != nil:
		return 0, 0, 0
	case f.Scale != nil:
		return len(f.Spins), f.Scale.Over, f.Scale.Count
	case m.Kind == "flats":
		return m.Count.Or(2), 360, m.Count.Or(2)
	case m.Around.Said && m.Around.Count.Is():
		n = m.Around.Count.V
		return n, m.Around.Over.Or(360), max(1, n-1)
	}
	return 0, 0, 0
}

// circled says whether a feature stands several times round a circle: of a turned part about its
// own axis, of another about the middle of the table that it is clamped on.
func (f *Form) circled() bool {
	if len(f.Copies) > 1 {
		return true
	}
	if !f.Feature.Around.Said || len(f.Mouths) < 2 {
		return false
	}
	if !f.Into.Face.Turned() || f.Feature.At.Is() && len(f.Feature.At.V) != 1 {
		return f.Feature.Kind == "hole" && len(f.Feature.At.V) == 1
	}
	for _, pos := range f.Feature.At.V {
		for _, s := range pos.Short {
			if s.Nominal != 0 {
				return false
			}
		}
		if len(pos.Coords) > 0 {
			return false
		}
	}
	return true
}

func equal(t Target, n int) ([]Division, string) {
	j, err := dividing.Divisions(n)
	if err != nil {
		return nil, err.Error()
	}
	return []Division{{Target: t, Job: j, Count: n}}, ""
}

// turns are the moves between angles that are written one by one; equal ones count once.
func turns(t Target, angles []float64) (out []Division, wrong string) {
	seen := map[dividing.Fraction]bool{}
	for i := 1; i < len(angles); i++ {
		by := math.Mod(angles[i]-angles[i-1]+720, 360)
		if by < 1e-9 {
			continue
		}
		j, err := dividing.Angle(degrees(by), 2)
		if err != nil {
			return nil, err.Error()
		}
		if !seen[j.Step] {
			seen[j.Step] = true
			out = append(out, Division{Target: t, Job: j, Angle: by})
		}
	}
	return out, ""
}

// degrees is an angle as it was written: a whole number of thousandths of a second within
// 0.001 of one, else its first six decimals.
func degrees(deg float64) dividing.Fraction {
	const ms = 3_600_000
	if n := math.Round(deg * ms); math.Abs(n-deg*ms) < 1e-3 {
		return dividing.Of(int64(n), ms)
	}
	return dividing.Of(int64(math.Round(deg*1e6)), 1e6)
}

// Divider is what a piece is turned on with.
type Divider struct {
	Item   *model.Item
	Head   dividing.Head
	Rotary dividing.Rotary // set by the dial of its handle, where Dial
	Dial   bool
	Direct bool // only a wheel or plate on the spindle: Head has no ratio
	Lacks  []model.Lack
}

// Divider gives what the holding divides with; false where it does not stand on such a thing.
func (h *Holding) Divider() (Divider, bool) {
	d := h.Choice.Divided
	if d == nil {
		return Divider{}, false
	}
	if d.Table != nil {
		return d.byDial(), true
	}
	out := Divider{Item: d.Head.Item}
	out.Head.Direct = wholes(d.Head.Direct.V)
	if d.Head.Ratio.Is() {
		out.Head.Ratio = ratio(d.Head.Ratio.V)
	} else {
		out.Head.Ratio, out.Direct = dividing.Of(1, 1), true
		out.Lacks = append(out.Lacks, d.Head.Ratio.Missing()...)
	}
	shop := &h.Part.Build.Shop
	for _, r := range d.Head.Plates.V {
		if p, ok := model.Find(shop.Plates, r.Item); ok && p.Here() {
			out.plate(p)
		}
	}
	if !d.Head.Plates.Is() {
		out.Lacks = append(out.Lacks, d.Head.Plates.Missing()...)
	}
	if d.Head.Differential.Said {
		out.Head.Gear.Wheels = wholes(d.Head.Differential.Wheels.V)
	}
	out.Head.Gear.Axis = dividing.Level
	if d.Upright {
		out.Head.Gear.Axis = dividing.Tilted
	}
	return out, true
}

// plate adds a plate. The shop does not tell its sides apart.
func (d *Divider) plate(p *model.DividingPlate) {
	if c := wholes(p.Circles.V); len(c) > 0 {
		d.Head.Plates = append(d.Head.Plates, dividing.Plate{Name: p.Path(), Faces: [][]int{c}, Mixed: true})
	} else {
		d.Lacks = append(d.Lacks, p.Circles.Missing()...)
	}
}

// byDial is a rotary table.
func (d *Divided) byDial() Divider {
	t := d.Table
	out := Divider{Item: t.Item}
	if !t.Ratio.Is() || !t.Dial.Division.Is() {
		out.Lacks = append(t.Ratio.Missing(), t.Dial.Division.Missing()...)
		return out
	}
	r, err := dividing.Lined(ratio(t.Ratio.V), degrees(t.Dial.Division.V))
	out.Rotary, out.Dial = r, err == nil
	return out
}

// Divider gives what a lathe divides with: the wheel on its spindle with a detent.
func (h *Chucking) Divider() (Divider, bool) {
	m := h.Choice.Machine
	if m == nil {
		return Divider{}, false
	}
	out := Divider{Item: m.Item, Direct: true, Lacks: m.DividingWheel.Missing()}
	out.Head.Ratio = dividing.Of(1, 1)
	if z, ok := m.DividingWheel.Get(); ok && z > 0 {
		out.Head.Direct = []int{z}
	}
	return out, true
}

func ratio(x float64) dividing.Fraction {
	return dividing.Of(int64(math.Round(x*1000)), 1000)
}

func wholes(xs []float64) (out []int) {
	for _, x := range xs {
		if x == math.Trunc(x) && x >= 2 && x <= dividing.MostHoles {
			out = append(out, int(x))
		}
	}
	return out
}

// Only keeps the plate and the circle that are written of an index; "" and 0 keep all.
func (d Divider) Only(plate string, circle int) Divider {
	var kept []dividing.Plate
	for _, p := range d.Head.Plates {
		if plate != "" && p.Name != plate {
			continue
		}
		face := p.Faces[0]
		if circle > 0 {
			face = nil
			for _, c := range p.Faces[0] {
				if c == circle {
					face = []int{c}
				}
			}
		}
		kept = append(kept, dividing.Plate{Name: p.Name, Faces: [][]int{face}, Mixed: true})
	}
	d.Head.Plates = kept
	if plate != "" || circle > 0 {
		d.Head.Direct, d.Head.Gear.Wheels = nil, nil
	}
	return d
}

// For is the divider with what is free for a division: while a train turns the piece along a helix, its
// wheels are in use and the worm is in mesh, so that neither a differential nor a direct plate serves.
func (d Divider) For(v Division) Divider {
	if v.Helical() {
		d.Head.Direct, d.Head.Gear.Wheels = nil, nil
	}
	return d
}

// Helical says whether what is divided is cut on a helix.
func (v Division) Helical() bool {
	return v.Target.Form != nil && v.Target.Form.Tooth != nil && v.Target.Form.Tooth.Lead > 0
}

// Ways lists the exact settings for a job, best first: plain, direct, then differential, then
// compound, which wants two circles on one side of a plate and a plate that can be moved on.
func (d Divider) Ways(j dividing.Job) []dividing.Setting {
	all, err := dividing.Settings(d.Head, j)
	if err != nil {
		return nil
	}
	var plain, compound []dividing.Setting
	for _, s := range all {
		switch {
		case s.Method == dividing.Compound && !d.Direct:
			compound = append(compound, s)
		case s.Method == dividing.Direct || s.Method == dividing.Plain && !d.Direct:
			plain = append(plain, s)
		}
	}
	if len(plain) == 0 && !d.Direct && len(d.Head.Gear.Wheels) > 0 {
		if g, err := dividing.Gears(d.Head, j); err == nil {
			plain = g.Settings
		}
	}
	return append(plain, compound...)
}

// Written gives the plate's path and the circle that an index names.
func (st *Step) Written() (plate string, circle int) {
	if st.Step == nil {
		return "", 0
	}
	in := &st.Step.Index
	if in.Plate.Is() && in.Plate.V.Item != nil {
		plate = in.Plate.V.Item.Path()
	}
	return plate, in.Circle.V
}

// Places is how many places a target has round the axis, and whether they divide the whole circle;
// 0 where it has one alone, or they are written one by one.
func (t Target) Places() (n int, full bool) {
	if t.Form == nil || t.Form.Wrong != "" || len(t.Form.Lacks) > 0 {
		return 0, false
	}
	n, over, _ := t.Form.asked()
	return n, over > 360-1e-9
}
