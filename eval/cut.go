package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Cut is the moment of one operation: the tool as it stands in the spindle, the way it
// takes, and the piece before and after.
type Cut struct {
	Spot   finding.Spot
	Step   *Step
	Hold   *Holding
	Part   *Part
	Choice CutChoice
	Before *State
	After  *State
	Stack  Stack
	Works  []Working
	Near   []Near // how close each part of the stack comes to each thing, worst first per pair
	Key    Key
	level  bool   // played in the frame of a level spindle
	whole  *State // before it, in the frame of the whole, where the holding is seen from a part
	left   *State
	// Unplayed says in a sentence why this operation is not made on paper; "" if it is.
	Unplayed  string
	gapsAsked int
}

// Working is the making of one target.
type Working struct {
	Target Target
	By     string       // its own process, where the operation faces and turns; "" on a mill
	Moves  []solid.Move // of the stack's height 0, in the machine's frame
	Took   []solid.Removal
	Entry  Plane // the face that the tool comes in by
	Facing bool  // that face looks at the tool
	// Of holes.
	Diameter float64 // made by this operation
	Depth    float64 // full diameter, from the face the feature goes into
	Point    float64 // length of the tip below full diameter
	Through  bool
	Below    float64 // how far the tip passes the far face
	Had      float64 // diameter of the hole before
	HadDepth float64
	Passed   float64 // of a hole in an assembly: what the tool goes through before it comes to it
	// Of straight cuts.
	Deep  float64     // height of metal along the tool's side
	Level bool        // of a sawn slit: its plane is level
	Reach float64     // of a saw: depth from its rim at the end of the cut
	Run   float64     // length of the cut
	Final bool        // brings the target to its finished size
	Wrong string      // why the target cannot be made so; "" if it can
	Turn  *solid.Pose // the piece turned about its axis for it: part's frame to the frame of the moves before the holding's pose; nil where it is not
}

// Near is how close one part of the stack comes to one thing. Sure is the gap with what is
// certainly there, Worst with all that could be; they differ only by facts that lack.
type Near struct {
	Body, Thing string
	BodyItem    *model.Item
	ThingItem   *model.Item
	Piece       bool // the thing is the piece itself
	Sure, Worst float64
	Lift, Aside float64 // least moves that clear, where Sure is below 0
	At          solid.Vec
	Lacks       []model.Lack
}

// Make carries out one operation as the choice says.
func (pl *Player) Make(h *Holding, before *State, st *Step, c CutChoice) *Cut {
	var item *model.Item
	if st.Step != nil {
		item = st.Step.Item
	}
	key := before.Key.With(h.Key[0], h.Key[1], itemDigest(item), digest(c.Words(), st.Spot.Step))
	if k, ok := pl.cuts[key]; ok {
		return k
	}
	pl.Moments++
	k := &Cut{Spot: st.Spot, Step: st, Hold: h, Part: h.Part, Choice: c, Before: before, Key: key}
	if h.Seen != nil {
		k.whole = h.wholes[before.Key]
	}
	k.play()
	pl.Gaps += k.gapsAsked
	pl.cuts[key] = k
	return k
}

func (k *Cut) play() {
	if k.LevelSpindle() && k.Hold.Unplayed == "" {
		k.playLevel()
		return
	}
	k.playUpright()
}

// playUpright plays an operation in the frame of the holding, the spindle upright.
func (k *Cut) playUpright() {
	k.After = k.Before.next(k.Spot, k.Key)
	if k.Hold.Unplayed != "" {
		k.Unplayed = k.Hold.Unplayed
	}
	k.stackUp(0)
	for _, t := range k.Step.Makes {
		k.work(t)
		k.ownBurrs(t)
	}
	if k.Part.Joined() {
		k.Part.hideBurrs(k.After, &k.Spot)
		k.passes()
	}
	k.aslant()
	if k.Unplayed != "" {
		return
	}
	placed := k.After.Piece.Standing(k.Hold.Pose)
	if !k.settleOut(placed) {
		k.gaps(placed)
	}
}

func (c *CutChoice) machine(h *Holding) *model.Machine { return h.Choice.Machine }

// stackUp builds the stack with the tool standing out by out; 0: as chosen, or not known.
func (k *Cut) stackUp(out float64) {
	s := &Stack{}
	c := &k.Choice
	t := c.Tool
	if t.Cutter == nil {
		k.Stack = *s
		return
	}
	if out == 0 {
		out = c.Out
	}
	if c.boresWithHead() && out == 0 {
		s.Out = t.Cutter.Reach
	} else if out > 0 {
		s.Out = model.Sure(out)
	} else {
		s.Out = model.Known[float64]{Of: t.Cutter.Item, Attr: "overall", At: t.Cutter.At}
	}
	arbor := (*model.Holder)(nil)
	for _, m := range c.Mounts {
		if m.Holder != nil && m.Holder.Kind == "arbor" {
			arbor = m.Holder
		}
	}
	if arbor != nil {
		s.arborStack(t, arbor)
	} else {
		s.shankStack(t, c.Mounts)
		k.swung(s)
	}
	if !c.ByHand {
		s.links(k.Hold.Choice.Machine, c)
	}
	s.spindle(k.Hold.Choice.Machine)
	k.Stack = *s
}

// work makes one target and changes the state.
func (k *Cut) work(t Target) {
	if k.fanned(t) || k.turnsTo(t) {
		return
	}
	switch {
	case t.Form == nil && t.Face != model.NoFace:
		k.face(t)
	case t.Form == nil:
		return
	case t.Form.Wrong != "" || len(t.Form.Lacks) > 0:
		return
	case t.Form.Rack != nil:
		k.racked(t)
	case t.Form.Scale != nil:
		k.graduated(t)
	case t.Form.KeyBore != nil:
		k.keyInBore(t)
	case t.Form.EndRing != nil && k.Step.Work.Kind == "setup":
		k.ringMilled(t)
	case t.Form.Tooth != nil && k.toothed(t):
		k.After.Profile = k.After.Profile.toothed(t.Form, k.Spot)
	case k.Part.Round && t.Form.Of == nil && k.spun(t):
		return
	case k.boredHere(t):
	case t.Form.Lathe != nil:
		k.roundOtherwise(t)
	case t.Form.Kind() == "hole":
		k.hole(t)
	case k.jointFaced(t):
	case t.Form.Feature.Kind == "slit", t.Form.Feature.Kind == "split":
		k.slit(t)
	case t.Form.Feature.Kind == "chamfer", t.Form.Feature.Kind == "radius":
		k.breakEdge(t)
	case t.Form.Seat != nil && k.seated(t):
	case t.Form.Trim != nil:
		k.trim(t)
	case t.Form.Under != nil:
		k.undercut(t)
	default:
		k.straight(t)
	}
}

// took removes metal and records the working.
func (k *Cut) took(w Working) {
	k.spread(&w)
	k.Works = append(k.Works, w)
	if len(w.Took) > 0 {
		k.After.Piece = k.After.Piece.Cut(w.Took...)
	}
}

// beyond is how far removals reach past the blank, so that no skin is left.
const beyond = 1.0

// outward is how far the metal could reach beyond the finished envelope on any side.
func (p *Part) outward() float64 {
	most := 0.0
	for _, f := range model.Faces {
		if f == p.Blank.Bar {
			continue
		}
		at := p.Blank.Lo[f.Axis()]
		if f.Sign() > 0 {
			at = p.Blank.Hi[f.Axis()]
		}
		most = max(most, (at-p.FaceAt(f))*f.Sign())
	}
	return most + beyond
}

// gaps works out how close every part of the stack comes to everything that stands there.
func (k *Cut) gaps(placed *solid.Piece) {
	pairs := len(k.Stack.Bodies) * (len(k.Hold.Obstacles) + 1)
	if cap(k.Near) < pairs {
		k.Near = make([]Near, 0, pairs)
	}
	k.Near = k.Near[:0]
	for bi := range k.Stack.Bodies {
		b := &k.Stack.Bodies[bi]
		for oi := range k.Hold.Obstacles {
			k.obstacleGap(b, &k.Hold.Obstacles[oi])
		}
		if !b.Cuts {
			k.pieceGap(b, placed)
		}
	}
}

func (k *Cut) obstacleGap(b *Body, o *Obstacle) {
	if o.Name == "the table" && !k.Hold.Seat.Is() {
		return
	}
	n := Near{Body: b.Name, Thing: o.Name, BodyItem: b.Item, ThingItem: o.Item, Sure: math.Inf(1), Worst: math.Inf(1)}
	for _, m := range k.ways() {
		g := solid.Gap(b.Least, m, o.Least)
		k.gapsAsked++
		worst := math.Max(g.Gap, o.Hole.room(b.Least, m, o.Hole.Least))
		g.Gap = math.Max(g.Gap, o.Hole.room(b.Least, m, o.Hole.Most))
		if g.Gap < n.Sure {
			n.Sure, n.Lift, n.Aside, n.At = g.Gap, g.Up, g.Aside, g.At
		}
		if len(b.Lacks) > 0 || !o.Same {
			worst = math.Max(solid.Gap(b.Most, m, o.Most).Gap, o.Hole.room(b.Most, m, o.Hole.Least))
		}
		n.Worst = min(n.Worst, worst)
	}
	if math.IsInf(n.Sure, 1) {
		return
	}
	n.settle()
	if n.Worst < n.Sure {
		n.Lacks = append(append([]model.Lack{}, b.Lacks...), o.Lacks...)
	}
	k.Near = append(k.Near, n)
}

// ways lists the moves of the tool once each: where the work is divided, they are the same at every place.
func (k *Cut) ways() (out []solid.Move) {
	seen := map[solid.Move]bool{}
	for _, w := range k.Works {
		for _, m := range w.Moves {
			if !seen[m] {
				seen[m] = true
				out = append(out, m)
			}
		}
	}
	return out
}

// settle brings gaps to the grain: what touches within it neither meets nor is apart, and
// the last digits of a sum must not decide.
func (n *Near) settle() {
	n.Sure = math.Round(n.Sure/model.Grain) * model.Grain
	n.Worst = math.Round(n.Worst/model.Grain) * model.Grain
}

func (k *Cut) pieceGap(b *Body, piece *solid.Piece) {
	n := Near{Body: b.Name, Thing: "the piece", BodyItem: b.Item, Piece: true, Sure: math.Inf(1), Worst: math.Inf(1)}
	for _, w := range k.Works {
		if w.Turn != nil && k.Hold.Choice.Divided != nil {
			piece = k.After.Piece.Placed(*w.Turn).Placed(k.Hold.Pose)
		}
		for _, m := range w.Moves {
			g := piece.Gap(b.Least, m)
			k.gapsAsked++
			if g.Gap < n.Sure {
				n.Sure, n.Lift, n.Aside, n.At = g.Gap, g.Up, g.Aside, g.At
			}
			worst := g.Gap
			if len(b.Lacks) > 0 {
				worst = piece.Gap(b.Most, m).Gap
			}
			n.Worst = min(n.Worst, worst)
		}
	}
	if math.IsInf(n.Sure, 1) {
		return
	}
	n.settle()
	if n.Worst < n.Sure {
		n.Lacks = b.Lacks
	}
	k.Near = append(k.Near, n)
}
