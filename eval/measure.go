package eval

import (
	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Measurement is the moment when a size is taken.
type Measurement struct {
	Spot   finding.Spot
	Step   *Step
	Hold   *Holding // nil at the bench
	Part   *Part
	State  *State
	With   *model.Instrument // nil where none was found
	Pinned bool              // the instrument is written down
	// What is measured.
	Name   string // "height", "hole.pillar.diameter", "face.left to hole.pillar"
	Size   drawing.Size
	Limits model.Known[Limits]
	Inside bool           // a bore or a gap; otherwise over the outside
	Depth  bool           // a depth from a face
	Angle  bool           // an angle: Size and Limits are in degrees
	Runs   bool           // the swing of a surface as it turns
	Tried  bool           // a mate or a thread gauge is tried: there is no size
	Thread drawing.Thread // that a gauge tries; else none
	Faces  [2]model.Face  // of an outside size: the faces it is taken over
	Form   *Form
	Deep   float64 // how deep in the piece the size lies
	Clear  model.Known[Spare]
	Wrong  string // why it cannot be worked out what is measured; "" if it can
	Key    Key
}

// Spare is a place for an anvil on two opposite faces.
type Spare struct {
	Burrs []Burr // those that lie under the anvil wherever it is put; none: there is a clear place
	At    solid.Vec
	Found bool
}

// Measure plays one measurement with an instrument.
func (pl *Player) Measure(p *Part, h *Holding, s *State, st *Step, with *model.Instrument) *Measurement {
	key := s.Key.With(itemDigest(st.Step.Item), digest("measure", st.Spot.Step))
	if with != nil {
		key = key.With(itemDigest(with.Item))
	}
	m := &Measurement{Spot: st.Spot, Step: st, Hold: h, Part: p, State: s, With: with}
	if with != nil && with.Kind == "telescopic_gauge" {
		for _, i := range m.micrometers() {
			key = key.With(itemDigest(i.Item))
		}
	}
	if m, ok := pl.measures[key]; ok {
		return m
	}
	pl.Moments++
	m.Key = key
	m.Pinned = len(st.Step.With.V) > 0
	m.what()
	if m.Wrong == "" && m.Faces[0] != model.NoFace && with != nil {
		m.Clear = m.spare()
	}
	pl.measures[key] = m
	return m
}

var faceOf = map[string]model.Face{"length": model.Right, "width": model.Back, "height": model.Top, "thickness": model.Top}

// what works out from the step what is measured.
func (m *Measurement) what() {
	ms := m.Step.Step.Measured
	switch {
	case m.asTurned():
	case ms.Of.Is():
		m.one(m.spelled(ms.Of.V))
	case ms.From.Is() && ms.To.Is():
		m.between(ms.From.V, ms.To.V)
	default:
		m.Wrong = "what it measures is not a size of this part"
	}
}

func (m *Measurement) one(r model.Ref) {
	if r.Item == m.Part.Item && r.Sub != "" {
		f, ok := faceOf[r.Sub]
		if across, round := m.Part.acrossSize(r.Sub); round {
			m.Name = r.Sub
			m.sized(across, m.Part.Item, r.Sub)
			return
		}
		if !ok {
			m.Wrong = r.Sub + " is not measured on paper yet"
			return
		}
		if b := m.Part.Bent; b != nil && (f.Axis() == 2 || len(m.Part.Folded.Along[f.Axis()].Sheet.Folds) > 0) {
			m.Wrong = r.Sub + " of sheet that is folded is not measured on paper yet"
			return
		}
		size, attr := m.Part.FaceSize(f)
		m.Name, m.Faces = attr, [2]model.Face{f.Opposite(), f}
		m.sized(size, m.Part.Item, attr)
		return
	}
	f := m.Part.FormOf(r.Item)
	if f == nil {
		m.Wrong = "what it measures is not a size of this part"
		return
	}
	m.Form, m.Name = f, f.Name()+"."+r.Sub
	if r.OfThread() {
		m.threadTried(f)
		return
	}
	m.Deep = f.Depth.Or(0)
	switch r.Sub {
	case "diameter", "":
		m.Inside, m.Name = f.Lathe == nil || f.Lathe.Inside, f.Name()+".diameter"
		m.known(f.Feature.Diameter.Is())
		m.sized(f.Feature.Diameter.V, f.Feature.Item, "diameter")
	case "width":
		m.Inside = f.Feature.Kind != "step"
		m.known(f.Feature.Width.Is())
		m.sized(f.Feature.Width.V, f.Feature.Item, "width")
	case "over_rollers":
		o := f.Feature.OverRollers
		m.Inside = f.Feature.Sort.V != "tongue"
		m.Name = f.Name() + " over rollers of " + model.Figure(o.Rollers.V)
		if m.Inside {
			m.Name = f.Name() + " between rollers of " + model.Figure(o.Rollers.V)
		}
		m.known(o.Size.Is())
		m.sized(o.Size.V, f.Feature.Item, "over_rollers.size")
	case "depth":
		m.Depth = true
		m.known(f.Feature.Depth.Is() && !f.Feature.Depth.V.Through)
		m.sized(f.Feature.Depth.V.Size, f.Feature.Item, "depth")
	default:
		m.other(f, r.Sub)
	}
}

// known notes that nobody can say how large it is where the drawing does not.
func (m *Measurement) known(is bool) {
	if !is {
		m.Wrong = "the drawing does not say how large " + m.Name + " is"
	}
}

// sized sets the size and its limits, or the working size where the face or hole is not
// yet at its finished one.
func (m *Measurement) sized(s drawing.Size, of *model.Item, attr string) {
	m.Size = s
	m.Limits = LimitsOf(s, m.Part.Build.Recipe.General, of, attr)
}

// spare looks for a place on both faces where an anvil of the instrument rests on metal
// and on no burr. The anvil's middle may be anywhere on the faces, but not nearer to a burr
// than its radius, nor where a hole lies under its middle.
func (m *Measurement) spare() model.Known[Spare] {
	anvil := m.anvil()
	if !anvil.Is() {
		return model.Lacking[Spare](anvil.Missing())
	}
	r := anvil.V / 2
	f := m.Faces[1]
	a, b := across(f)
	flat := func(v solid.Vec) [2]float64 { return [2]float64{v[a], v[b]} }
	lo := [2]float64{m.State.Faces[model.FaceOn(a, -1)].At, m.State.Faces[model.FaceOn(b, -1)].At}
	hi := [2]float64{m.State.Faces[model.FaceOn(a, 1)].At, m.State.Faces[model.FaceOn(b, 1)].At}
	var taken []solid.Flat
	var under []Burr
	for _, bu := range m.State.Burrs {
		if bu.On != m.Faces[0] && bu.On != m.Faces[1] {
			continue
		}
		under = append(under, *bu)
		taken = append(taken, solid.Flat{A: flat(bu.A), B: flat(bu.B), R: bu.R + r})
	}
	taken = append(taken, m.openings(a, b)...)
	at, _, ok := solid.RoomiestPlace(lo, hi, taken)
	if ok {
		var v solid.Vec
		v[a], v[b], v[f.Axis()] = at[0], at[1], m.State.Faces[f].At
		return model.Sure(Spare{Found: true, At: v})
	}
	if len(under) == 0 {
		return model.Sure(Spare{Found: true})
	}
	return model.Sure(Spare{Burrs: under})
}

// openings are the mouths of features on the two faces: an anvil's middle must not stand
// over one.
func (m *Measurement) openings(a, b int) []solid.Flat {
	var out []solid.Flat
	for i, f := range m.Part.Forms {
		if !m.State.Features[i].Begun {
			continue
		}
		for _, mouth := range f.Mouths {
			if f.Into.Face.Axis() == m.Faces[1].Axis() {
				c := [2]float64{mouth[a], mouth[b]}
				out = append(out, solid.Flat{A: c, B: c, R: m.State.Features[i].Diameter / 2})
			}
		}
		if len(f.Mouths) == 0 && (f.Open[m.Faces[0]] || f.Open[m.Faces[1]]) {
			lo, hi := [2]float64{f.Lo[a], f.Lo[b]}, [2]float64{f.Hi[a], f.Hi[b]}
			out = append(out, solid.Flat{Lo: lo, Hi: hi, Box: true})
		}
	}
	return out
}

// anvil is how wide a flat the instrument needs: the anvil of a micrometer. The jaws of a
// caliper find room beside a burr as their width is not told; they are taken as 3 mm.
// Common practice.
func (m *Measurement) anvil() model.Known[float64] {
	if f := m.With.AnvilForm.V; m.With.Kind == "micrometer" && (f == "ball" || f == "point") {
		return model.Sure(2 * model.Grain) // it touches at a point, whatever its shank
	}
	if m.With.Kind == "micrometer" {
		return m.With.Anvil
	}
	return model.Sure(3.0)
}

// EdgeDistance is how far in from the nearest edge of the faces the written place lies; 0
// where none is written, since a place at the edge will do.
func (m *Measurement) EdgeDistance() float64 {
	at, ok := m.Step.Step.At.Get()
	if !ok || m.Faces[1] == model.NoFace {
		return 0
	}
	f := m.Faces[1]
	v, known := m.Part.locate(f, at)
	a, b := across(f)
	if !known[a] || !known[b] {
		return 0
	}
	best := -1.0
	for _, i := range [2]int{a, b} {
		for _, d := range [2]float64{v[i] - m.State.Faces[model.FaceOn(i, -1)].At, m.State.Faces[model.FaceOn(i, 1)].At - v[i]} {
			if best < 0 || d < best {
				best = d
			}
		}
	}
	return max(best, 0)
}

// Covers names what lies on a face of the piece in a holding, all over it; "" where a hand
// and an anvil get at some of it.
func (h *Holding) Covers(f model.Face) string {
	n := h.Pose.Dir(Normal(f))
	switch {
	case n[2] < -0.5:
		switch {
		case h.Vee != nil && h.Vee.Looks == "up":
			return h.Vee.Block.Path()
		case h.Choice.Height > 0:
			return "the parallels"
		case h.Choice.Packing > 0:
			return "the packing"
		case h.Choice.Vise != nil:
			return "the bed of " + h.Choice.Vise.Path()
		}
		return "the table"
	case n[1] > 0.5 && h.OnPlate.Is() && h.OnPlate.V.Grip >= h.Hi[2]-h.Lo[2]-model.Grain:
		return h.Choice.Plate.Path()
	case n[1] > 0.5 && h.Fixed.Is() && h.Fixed.V.Grip >= h.Hi[2]-h.Lo[2]-model.Grain:
		return "the fixed jaw"
	case n[1] < -0.5 && h.Moving.Is() && h.Moving.V.Grip >= h.Hi[2]-h.Lo[2]-model.Grain:
		return "the moving jaw"
	}
	return ""
}

// TakenOff is how much metal was turned to chips in this holding before the measurement, or since the
// work was let cool in it, over what is left. A bar that the piece is still one with counts as left.
func (m *Measurement) TakenOff() float64 {
	cold := map[string]bool{}
	for _, st := range m.Step.Work.Steps {
		if st == m.Step {
			break
		}
		if st.Step != nil && st.Step.Cold.V {
			cold[st.Spot.Step] = true
		}
	}
	first := m.State
	for first.Prev != nil && first.Last.SetUp == m.Spot.SetUp && first.Last.Part == m.Spot.Part {
		cooled := cold[first.Last.Step]
		if first = first.Prev; cooled {
			break
		}
	}
	left := m.State.Piece.Volume()
	if first == m.State || !(left > 0) {
		return 0
	}
	return max(0, first.Piece.Volume()-left) / left
}
