package eval

import (
	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Player plays work and remembers every moment of the stretch of work in hand: the same moment
// asked for again, for another candidate, is taken over. When a stretch is settled, the moments
// of candidates that lost are let go.
type Player struct {
	Moments int // played so far, not counting those taken over: the unit of effort
	Gaps    int // distances of a tool's parts from obstacles and the piece worked out so far
	Memory
}

// Memory is what a player remembers. Moments in one holding are never asked for in another, so that
// whoever tries several may begin each with an empty one and go on with that of the best.
type Memory struct {
	holds    map[Key]*Holding
	chucks   map[Key]*Chucking
	turns    map[Key]*Turn
	cuts     map[Key]*Cut
	measures map[Key]*Measurement
}

// NewMemory is an empty one.
func NewMemory() Memory {
	return Memory{holds: map[Key]*Holding{}, chucks: map[Key]*Chucking{}, turns: map[Key]*Turn{}, cuts: map[Key]*Cut{}, measures: map[Key]*Measurement{}}
}

// NewPlayer gives a player with nothing to remember.
func NewPlayer() *Player { return &Player{Memory: NewMemory()} }

// Decider makes every choice that a recipe leaves open. The dry run asks it in the order
// of the work.
type Decider interface {
	// Blank chooses the stock that a piece is cut from; nil where none is known.
	Blank(p *Part) *model.Stock
	Hold(p *Part, before *State, w *Work) HoldChoice
	// Chuck chooses how a piece is held on a lathe; false where the work is not lathe work.
	Chuck(p *Part, before *State, w *Work) (ChuckChoice, bool)
	Turn(h *Chucking, before *State, st *Step) TurnChoice
	Cut(h *Holding, before *State, st *Step) CutChoice
	With(p *Part, h *Holding, s *State, st *Step) *model.Instrument
	// Source is what a heat is made with; nil where nothing is.
	Source(h *Heating) *model.HeatSource
	// Settled says that a stretch of work is done, and which moments it came to: no moment of
	// it is asked for again.
	Settled(ms []Moment)
}

// Trace is everything that a dry run recorded.
type Trace struct {
	Build  *model.Build
	Parts  []*PartTrace
	Joints []*Joint
	// Assembled are the assemblies that are made on paper, in the order in which they are made.
	Assembled []*PartTrace
	// Heatings are those of the assemblies, in the order written.
	Heatings []*Heating
	Moments  int
	Gaps     int
	apart    map[*model.Assembly]string // why an assembly is not made on paper; "" if it is
	order    []Waits                    // what must come before what
	then     map[*model.SetUp][]Waits
}

// PartTrace is the making of one part.
type PartTrace struct {
	Part    *Part
	Start   *State
	End     *State
	Moments []Moment // in the order of the work
	flat    *State   // of the same, before it is first folded
	Lies    *Part    // of sheet with bends: the part as it lies at the end, flat or folded; else nil
	next    int      // the stretch of work that it comes to next: some wait for an assembly
}

// Moment is one thing that happened: exactly one of its fields is set.
type Moment struct {
	Hold    *Holding
	Cut     *Cut
	Chuck   *Chucking
	Turn    *Turn
	Measure *Measurement
	Deburr  *Deburr
	Heat    *Heating
	Mark    *Marking
}

// Together lays the makings of all parts of a build side by side, in the order written: what
// waits for what, joints, and the heats of assemblies. Its Moments and Gaps are those of the last alone.
func (pl *Player) Together(b *model.Build, parts []*PartTrace, d Decider) *Trace {
	t := &Trace{Build: b, Parts: parts}
	t.inOrder()
	pl.assemble(t, d)
	t.join()
	t.Moments, t.Gaps = pl.Moments, pl.Gaps
	return t
}

// Part makes one part as the decider says. Nothing of the making of another part is read, so that
// parts may be made side by side, each by a player of its own.
func (pl *Player) Part(b *model.Build, m *model.Part, d Decider) *PartTrace {
	p := Ready(b, m)
	t := &PartTrace{Part: p}
	if p.Unplayed != "" {
		return t
	}
	q := p // as it lies in the work in hand
	if p.Apart != nil {
		q = p.Apart
	} else {
		q = p.flatOr(q)
	}
	stock := d.Blank(q)
	if p.Blank.Stock = stock; stock != nil && p.Apart == nil { // its condition says how tight it is bent
		q = p.flatOr(p)
	}
	q.blank(stock)
	p.Blank = q.Blank
	if len(p.Blank.Lacks) > 0 {
		p.Unplayed = "how much metal the raw piece has is not known"
		return t
	}
	t.Start = q.start()
	state := t.Start
	if p.Flat != nil {
		t.Lies = q
	}
	if p.Apart == nil {
		t.End = state
		pl.goOn(t, nil, d)
		return t
	}
	t.next = len(p.Work)
	for i := range p.Work {
		from := len(t.Moments)
		switch {
		case q.closes(state, q.Work[i]):
			q, state = p, q.closeUp(state)
		case q == p && p.opens(q.Work[i]):
			q, state = p.Apart, p.Apart.takeApart(state)
		}
		state = pl.stretch(t, q, q.Work[i], state, d)
		pl.forget()
		d.Settled(t.Moments[from:])
	}
	if q.Joint != nil {
		state = q.closeUp(state)
	}
	t.End = state
	return t
}

// LetGo forgets an operation that was tried and lost.
func (m *Memory) LetGo(k Key) {
	delete(m.cuts, k)
	delete(m.turns, k)
}

// forget lets go of the moments played so far. Those that were chosen stand in the trace, and
// no later stretch of work begins from the state that they began from.
func (pl *Player) forget() {
	clear(pl.holds)
	clear(pl.chucks)
	clear(pl.turns)
	clear(pl.cuts)
	clear(pl.measures)
}

// isBought is why a part that is bought ready is not made on paper.
const isBought = "it is bought"

// Bought says whether a part is bought ready: nothing of it is made.
func (p *Part) Bought() bool { return p.Unplayed == isBought }

// OnlyBought says whether a part is bought and nothing is done to it by itself.
func (p *Part) OnlyBought() bool { return p.Bought() && len(p.Part.Work) == 0 }

// Ready makes a part ready for the dry run: envelope, forms, and the work spelled out.
func Ready(b *model.Build, m *model.Part) *Part {
	m = asBoughtSize(b, bounded(m))
	p := &Part{Part: m, Build: b}
	sizes := partSizes(m)
	switch {
	case m.Bought.Yes.V || m.Bought.As.Is():
		p.Unplayed = isBought
	case m.MirrorOf.Is():
		o, why := other(b, m)
		if o == nil {
			p.Unplayed = why
			break
		}
		m = handed(m, o)
		p.Part = m
		p.Drawn = Ready(b, asDrawnThere(m))
		sizes = partSizes(m)
	}
	if p.Unplayed == "" && p.turnedEnvelope() {
		if p.Unplayed == "" {
			p.forms()
			if m.MirrorOf.Is() {
				p.mirror()
			}
			p.spell()
		}
		return p
	}
	for i, s := range sizes {
		if !s.Is() && p.Unplayed == "" {
			p.Unplayed = "its " + [3]string{"length", "width", "height"}[i] + " is not known"
		}
		p.Sized[i], p.Size[i] = s.V, s.V.Nominal
		if s.Is() && !(s.V.Nominal > 0) && p.Unplayed == "" {
			p.Unplayed = "one of its outer sizes is not above nought"
		}
	}
	if p.Unplayed != "" {
		return p
	}
	p.forms()
	if m.MirrorOf.Is() {
		p.mirror()
	}
	p.spell()
	p.openUp()
	return p
}

func partSizes(m *model.Part) [3]model.Known[drawing.Size] {
	if m.Thickness.Is() {
		return [3]model.Known[drawing.Size]{m.Length, m.Width, m.Thickness}
	}
	return [3]model.Known[drawing.Size]{m.Length, m.Width, m.Height}
}

func (pl *Player) stretch(t *PartTrace, p *Part, w *Work, state *State, d Decider) *State {
	if w.Kind == "heat" {
		if w.Unplayed != "" {
			return state
		}
		h := pl.heat(p, w, state, d)
		pl.Moments++
		t.Moments = append(t.Moments, Moment{Heat: h})
		return h.After
	}
	if one, ok := p.alone(state, w); ok {
		end := pl.inHolding(t, p, w, one, d)
		return end.together(state, one, goneFace(state, one))
	}
	return pl.inHolding(t, p, w, state, d)
}

// goneFace is the face that a piece alone has not got.
func goneFace(whole, alone *State) model.Face {
	for _, f := range model.Faces {
		if whole.Faces[f] != alone.Faces[f] {
			return f
		}
	}
	return model.NoFace
}

// inHolding plays the steps of one stretch of work.
func (pl *Player) inHolding(t *PartTrace, p *Part, w *Work, state *State, d Decider) *State {
	var h *Holding
	if w.Kind == "setup" {
		if c, ok := d.Chuck(p, state, w); ok {
			return pl.onLathe(t, p, w, state, d, c)
		}
		h = pl.Hold(p, state, w, d.Hold(p, state, w))
		t.Moments = append(t.Moments, Moment{Hold: h})
	} else {
		h = bench(p, state, w)
	}
	for _, st := range w.Steps {
		if st.Kind == "shift" && w.Kind == "setup" {
			h = pl.Shift(h, state, st)
			t.Moments = append(t.Moments, Moment{Hold: h})
			continue
		}
		state = pl.step(t, p, h, w, st, state, d)
	}
	if w.Kind == "bench" {
		own := p
		if p.Joined() {
			own = nil
		}
		more, left := bonds(w.SetUp, w.Spot, own, p.Leaves()), apartAgain(state.Treated, w.SetUp)
		if len(more) > 0 || len(left) < len(state.Treated) {
			state = state.next(w.Spot, state.Key.With(itemDigest(w.SetUp.Item)))
			state.Treated = append(append([]Treatment{}, left...), more...)
		}
	}
	if w.Facing != model.NoFace && len(state.Burrs) > 0 {
		// The trade's way of squaring a block has a file run over the edges after each holding.
		state = state.next(state.Last, state.Key.With(digest("edges filed")))
		state.Burrs = nil
	}
	return state
}

// onLathe plays the steps of one holding on a lathe.
func (pl *Player) onLathe(t *PartTrace, p *Part, w *Work, state *State, d Decider, c ChuckChoice) *State {
	h := pl.Chuck(p, state, w, c)
	t.Moments = append(t.Moments, Moment{Chuck: h})
	for _, st := range w.Steps {
		if st.Kind == "shift" {
			h = pl.ShiftChuck(h, state, st)
			t.Moments = append(t.Moments, Moment{Chuck: h})
			continue
		}
		if st.Kind != "operation" {
			state = pl.step(t, p, nil, w, st, state, d)
			continue
		}
		k := pl.Turn(h, state, st, d.Turn(h, state, st))
		t.Moments = append(t.Moments, Moment{Turn: k})
		state = k.Left
	}
	return state
}

// bench is a holding of no machine: what is done there is done by hand.
func bench(p *Part, before *State, w *Work) *Holding {
	return &Holding{Spot: w.Spot, Work: w, Part: p, Before: before, Piece: before.Piece,
		Pose: solid.Attitude(solid.Vec{0, 0, 1}, solid.Vec{0, 1, 0}), Key: before.Key.With(itemDigest(w.SetUp.Item))}
}

func (pl *Player) step(t *PartTrace, p *Part, h *Holding, w *Work, st *Step, state *State, d Decider) *State {
	switch st.Kind {
	case "operation":
		h, state, st = h.ForStep(state, st)
		k := pl.Make(h, state, st, d.Cut(h, state, st))
		t.Moments = append(t.Moments, Moment{Cut: k})
		return k.Left()
	case "deburr":
		hold := h
		if w.Kind == "bench" {
			hold = nil
		}
		db := pl.deburr(p, hold, state, st)
		t.Moments = append(t.Moments, Moment{Deburr: db})
		return db.After
	case "measure":
		hold := h
		if w.Kind == "bench" {
			hold = nil
		}
		m := pl.Measure(p, hold, state, st, d.With(p, hold, state, st))
		t.Moments = append(t.Moments, Moment{Measure: m})
	case "mark":
		t.Moments = append(t.Moments, Moment{Mark: &Marking{Spot: st.Spot, Step: st, Hold: h}})
	}
	return state
}
