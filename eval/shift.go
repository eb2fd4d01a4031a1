package eval

import (
	"math"

	"fettle/schema/model"
	"fettle/schema/text"
)

// A shift moves clamps, packing or support while the piece stays where it is: the holding goes on with the
// other things in it. It is a holding of its own in the trace, that knows which it came from.

// Shift moves clamps and packing of a holding as a step says; the piece keeps its place.
func (pl *Player) Shift(h *Holding, before *State, st *Step) *Holding {
	key := before.Key.With(h.Key[0], h.Key[1], itemDigest(st.Step.Item), digest("shift", st.Spot.Step))
	if n, ok := pl.holds[key]; ok {
		return n
	}
	pl.Moments++
	n := *h
	n.Spot, n.Before, n.Key, n.Shifted, n.Upright = st.Spot, before, key, h.Root(), nil
	n.views, n.states, n.wholes, n.steps = nil, nil, nil, nil
	n.Work = shifted(h.Work, st)
	n.Piece = before.Piece.Placed(h.Pose)
	for i := range 3 {
		n.Lo[i], n.Hi[i] = n.Piece.Extent(i, -1), n.Piece.Extent(i, 1)
	}
	if h.Unplayed == "" {
		n.restand(st)
	}
	pl.holds[key] = &n
	return &n
}

// restand stands the clamps where they are now.
func (h *Holding) restand(st *Step) {
	if h.Choice.Clamps == nil || h.Choice.Vise != nil || len(st.Step.Clamps) == 0 {
		return
	}
	name := "the clamp on "
	var rest []Obstacle
	for _, o := range h.Obstacles {
		if o.Item != h.Choice.Clamps.Item || len(o.Name) < len(name) || o.Name[:len(name)] != name {
			rest = append(rest, o)
		}
	}
	h.Obstacles, h.Lacks, h.Tips = rest, nil, nil
	for i := range h.Work.SetUp.Clamps {
		h.clamp(&h.Work.SetUp.Clamps[i])
	}
}

// NewPacking says whether a shift has put packing under the piece since it was put up.
func (h *Holding) NewPacking() bool {
	was, is := h.Root().Work.SetUp.Packing, h.Work.SetUp.Packing
	return h.Shifted != nil && len(is) > 0 && (len(was) == 0 || &was[0] != &is[0])
}

// Packed says how the packing of a shift goes under the piece where this stands: its place, how far it is too
// high for the room there (below 0: too low), mm, and whether anything bears the piece afterwards.
type Packed struct {
	Place  text.Place
	Over   float64
	Leaves bool // all of it is too low, and nothing else keeps the piece up
}

// Repacked says so of every piece of packing of a shift whose height is written.
func (h *Holding) Repacked() (out []Packed) {
	root := h.Root()
	if !h.NewPacking() || h.Unplayed != "" {
		return nil
	}
	plain := h.Choice.Vise != nil || h.Vee != nil || h.Choice.Lean.By != 0 || h.Choice.Divided != nil
	stands := root.Lo[2] - math.Max(root.rise(), h.Choice.Free) // what packing lies on
	bears := h.Choice.Vise != nil || h.Choice.Plate != nil || len(h.Work.SetUp.Jacks.V) > 0
	for i := range h.Work.SetUp.Packing {
		p := &h.Work.SetUp.Packing[i]
		high, ok := p.Under.Get()
		if !ok {
			bears = true // nobody says how high it is
			continue
		}
		room := h.Choice.Packing
		if !plain {
			room = h.Lo[2] - stands
			if pos, ok := p.At.Get(); ok {
				v, ok := h.under(pos)
				if !ok {
					bears = true
					continue
				}
				if foot, metal := h.footUnder(square(v, 0)); metal {
					room = foot - stands
				}
			}
		}
		bears = bears || high >= room-model.Grain
		out = append(out, Packed{Place: p.Under.At, Over: high - room})
	}
	for i := range out {
		out[i].Leaves = !bears
	}
	return out
}

// shifted is the work of a holding with the things in it as a step leaves them.
func shifted(w *Work, st *Step) *Work {
	u, n := *w.SetUp, *w
	if len(st.Step.Clamps) > 0 {
		u.Clamps = st.Step.Clamps
	}
	if len(st.Step.Packing) > 0 {
		u.Packing = st.Step.Packing
	}
	if st.Step.Moved.Said {
		u.Support = st.Step.Moved
	}
	n.SetUp = &u
	return &n
}

// Root is the holding that shifts began from: itself where nothing was moved.
func (h *Holding) Root() *Holding {
	if h != nil && h.Shifted != nil {
		return h.Shifted
	}
	return h
}

// ShiftChuck moves the support of a holding on a lathe as a step says; the work keeps its place in what
// holds it.
func (pl *Player) ShiftChuck(h *Chucking, before *State, st *Step) *Chucking {
	c := h.Choice
	if st.Step.Moved.Said {
		c.Support = h.Part.SupportOf(st.Step.Moved)
	}
	if !c.Centres && c.Faceplate == nil && h.Unplayed == "" {
		c.Gripped, c.Grip, c.Out = true, h.Held, 0
	}
	w := shifted(h.Work, st)
	w.Spot.Step = st.Spot.Step // its key is another than that of a holding from the start
	n := pl.Chuck(h.Part, before, w, c)
	n.Spot, n.Shifted = st.Spot, h.Root()
	return n
}

// Root is the holding that shifts began from: itself where nothing was moved.
func (h *Chucking) Root() *Chucking {
	if h != nil && h.Shifted != nil {
		return h.Shifted
	}
	return h
}

// SupportOf reads what holds the other end or the middle of turned work; nil where nothing does.
func (p *Part) SupportOf(s model.Support) *Supported {
	if !s.Said || s.By.V.Text == "none" {
		return nil
	}
	out := &Supported{}
	if r := s.By.V; r.Item != nil {
		out.Item = r.Item
		out.Centre, _ = model.Find(p.Build.Shop.Centres, r.Item)
		out.Steady, _ = model.Find(p.Build.Shop.Steadies, r.Item)
	}
	if at, ok := s.At.Get(); ok {
		out.At, out.Middle = p.Axial(at)
	}
	return out
}
