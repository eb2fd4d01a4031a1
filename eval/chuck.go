package eval

import (
	"math"
	"strings"

	"fettle/schema/finding"
	"fettle/schema/model"
)

// A piece held to be turned is reckoned with along the lathe's axis: place 0 is the face of
// the jaws, or of what holds the work there, and places grow towards the tailstock. Metal at
// places below 0 is in the jaws and behind them.

// ChuckChoice is every decision about one holding on a lathe.
type ChuckChoice struct {
	Machine    *model.Machine
	Chuck      *model.Chuck
	Collets    *model.Collets
	Collet     float64 // nominal size of the collet
	Mandrel    *model.Mandrel
	Faceplate  *model.Faceplate
	AnglePlate *model.AnglePlate // on the faceplate
	Centres    bool              // between centres
	Driver     *model.Carrier
	End        model.Face // the end that is held, towards the headstock
	Out        float64    // jaw face to the free end of the metal; not counted where Gripped
	Grip       float64    // held end of the metal to the jaw face, where Gripped
	Gripped    bool
	Deeper     bool  // Out leaves a tool's holder less than its room, for the sake of the grip
	On         *Form // the surface gripped, as written
	Reversed   bool  // jaws turned round
	Support    *Supported
	Bush       *model.SplitBush
	Between    string // "copper", or another word for what lies between jaws and work
	Nut        *model.Nut
	Soft       bool
	Bored      float64 // soft jaws: bored to; 0 not written
	NotPlayed  string
}

// Supported is what holds the other end or the middle of the work.
type Supported struct {
	Centre *model.Centre
	Steady *model.Steady
	Item   *model.Item // what it is, where it is neither
	Middle bool        // at a place along the work, not at its free end
	At     float64     // that place, in the part's frame
}

// Words spells the choice out, for keys and for the eye.
func (c *ChuckChoice) Words() string {
	var b strings.Builder
	put := func(s string) { b.WriteString(s); b.WriteByte('|') }
	item := func(i *model.Item) {
		put(i.Path())
	}
	for _, i := range []*model.Item{itemOf(c.Machine), itemOf(c.Chuck), itemOf(c.Collets), itemOf(c.Mandrel), itemOf(c.Faceplate), itemOf(c.AnglePlate), itemOf(c.Bush), itemOf(c.Nut), itemOf(c.Driver)} {
		item(i)
	}
	if c.Support != nil {
		put("support")
		item(itemOf(c.Support.Centre))
		item(itemOf(c.Support.Steady))
		item(c.Support.Item)
		put(model.Figure(c.Support.At))
	}
	if c.On != nil {
		put(c.On.Name())
	}
	put(c.End.String())
	put(c.Between)
	for _, x := range []float64{c.Collet, c.Out, c.Grip, c.Bored} {
		put(model.Figure(x))
	}
	for _, yes := range []bool{c.Centres, c.Gripped, c.Reversed, c.Soft, c.Support != nil && c.Support.Middle} {
		if yes {
			put("y")
		} else {
			put("n")
		}
	}
	put(c.NotPlayed)
	return b.String()
}

func itemOf[T any, P interface {
	*T
	Block() *model.Item
}](p P) *model.Item {
	if p == nil {
		return nil
	}
	return p.Block()
}

// Holder is the block of what holds the piece; nil for work between centres.
func (c *ChuckChoice) Holder() *model.Item {
	for _, i := range []*model.Item{itemOf(c.Chuck), itemOf(c.Collets), itemOf(c.Mandrel), itemOf(c.Faceplate)} {
		if i != nil {
			return i
		}
	}
	return nil
}

// HeldBy names what holds the piece: "chuck.three", "collets.er25[8]", "centres".
func (c *ChuckChoice) HeldBy() string {
	switch i := c.Holder(); {
	case c.Centres:
		return "centres"
	case i == nil:
		return "nothing"
	case c.Collets != nil:
		return i.Member(c.Collet)
	default:
		return i.Path()
	}
}

// Chucking is the moment when the piece has been put up on a lathe and nothing is cut yet.
type Chucking struct {
	Spot   finding.Spot
	Work   *Work
	Part   *Part
	Choice ChuckChoice
	Before *State
	Key    Key

	About Axis    // the line that it turns about; Before is the piece in its frame
	Jaw   float64 // place of the jaw face in the part's frame
	Sign  float64 // +1: the end with the lower place is held, so that the lathe's axis runs as the part's; -1: turned round
	Free  float64 // jaw face to the free end of the metal
	Held  float64 // metal behind the jaw face: along the axis to its other end

	// What is gripped from outside; of a mandrel the bore.
	JawLength model.Known[float64] // of the jaws, or what grips, along the axis
	Contact   float64              // length of the surface that the jaws touch
	Touches   Profile              // the zones touched
	Gripped   float64              // diameter gripped
	JawsAt    []float64            // of work that the jaws do not hold round its middle: how far each stands from the axis
	Inside    bool                 // the jaws open in a bore; Gripped is its diameter, and nothing is touched outside
	Step      bool                 // the jaws touch only part of what lies between them: it is not of one size

	Shifted *Chucking // the holding of the start, where the support was moved since; else nil

	own   *State            // Before, in the part's own frame
	views map[*State]*State // states as they are seen in the frame of the line that turns

	// Unplayed says in a sentence why this holding is not made on paper; "" if it is.
	Unplayed string
	alike    *Holding // as asHold gave it
}

// Chuck puts the piece up on a lathe as the choice says.
func (pl *Player) Chuck(p *Part, before *State, w *Work, c ChuckChoice) *Chucking {
	key := before.Key.With(itemDigest(w.SetUp.Item), digest("lathe", c.Words(), w.Spot.Step))
	if h, ok := pl.chucks[key]; ok {
		return h
	}
	pl.Moments++
	h := &Chucking{Spot: w.Spot, Work: w, Part: p, Choice: c, Key: key}
	h.About = h.line()
	h.own, h.Before = before, h.seen(before)
	h.play()
	pl.chucks[key] = h
	return h
}

func (h *Chucking) play() {
	c := &h.Choice
	h.Sign = 1
	if c.End.Sign() < 0 {
		h.Sign = 1
	} else {
		h.Sign = -1
	}
	lo, hi, ok := h.Before.Profile.Ends()
	switch {
	case c.NotPlayed != "":
		h.Unplayed = c.NotPlayed
	case h.Work.Unplayed != "":
		h.Unplayed = h.Work.Unplayed
	case !ok:
		h.Unplayed = "nothing is left of the piece"
	case h.offPlate() != "":
		h.Unplayed = h.offPlate()
	case c.End == model.NoFace || c.End.Axis() != h.About.Along:
		h.Unplayed = "which end is held is not settled"
	}
	if h.Unplayed != "" {
		return
	}
	free, held := hi, lo
	if h.Sign < 0 {
		free, held = lo, hi
	}
	switch {
	case c.Centres, c.Faceplate != nil:
		h.Jaw = held
	case c.Gripped:
		h.Jaw = held + h.Sign*c.Grip
	default:
		h.Jaw = free - h.Sign*c.Out
	}
	h.Free, h.Held = h.At(free), -h.At(held)
	h.grip()
}

// At is where a place of the part lies along the lathe's axis.
func (h *Chucking) At(x float64) float64 { return (x - h.Jaw) * h.Sign }

// InPart is where a place along the lathe's axis lies in the part.
func (h *Chucking) InPart(u float64) float64 { return h.Jaw + h.Sign*u }

// Within gives what of a piece lies between two places of the lathe's axis, in the part's frame.
func (h *Chucking) Within(p Profile, u0, u1 float64) Profile {
	a, b := h.InPart(u0), h.InPart(u1)
	return p.Between(math.Min(a, b), math.Max(a, b))
}

// grip finds what the jaws touch: the largest diameter that lies between them.
func (h *Chucking) grip() {
	c := &h.Choice
	switch {
	case c.Chuck != nil:
		h.JawLength = c.Chuck.JawLength
	case c.Collets != nil:
		h.JawLength = model.Known[float64]{Of: c.Collets.Item, Attr: "system", At: c.Collets.At}
	case c.Mandrel != nil:
		h.JawLength = c.Mandrel.Length
	}
	if c.Centres || c.Faceplate != nil {
		return
	}
	between := h.Within(h.Before.Profile, -h.JawLength.Or(h.Held), 0)
	if c.Mandrel != nil {
		h.Touches = between
		h.gripInside(between)
		return
	}
	if h.Inside = h.opensIn(); h.Inside {
		h.gripInside(between)
		return
	}
	most := between.Most()
	h.Gripped = 2 * most
	for _, z := range between {
		if z.Least() > most-model.Grain {
			h.Touches = append(h.Touches, z)
		}
	}
	if len(h.Touches) == 0 { // a cone alone: its thick end touches
		for _, z := range between {
			if z.Most() > most-model.Grain {
				h.Touches = append(h.Touches, z)
			}
		}
	}
	h.Contact = lengthOf(h.Touches)
	if n := flatsOf(h.Touches); c.Chuck != nil && n > 0 && c.Chuck.Jaws.Or(0) > 0 && n%c.Chuck.Jaws.V == 0 {
		h.Gripped *= math.Cos(math.Pi / float64(n)) // each jaw lies on a flat
	}
	h.jaws()
	h.Step = h.Contact < lengthOf(between)-model.Grain
}

// flatsOf is how many flats work has where it is touched; 0 of round work, or where nothing is touched.
func flatsOf(p Profile) int {
	if len(p) == 0 {
		return 0
	}
	return p[0].Flats
}

func lengthOf(p Profile) float64 {
	l := 0.0
	for _, z := range p {
		l += z.X1 - z.X0
	}
	return l
}

// OutsideFree says whether the whole outside of the piece is free, since what holds it lies in its
// bore or at its face: jaws that open, or a mandrel.
func (h *Chucking) OutsideFree() bool { return h.Inside || h.Choice.Mandrel != nil }

// Outside gives the metal whose outside is free, in the part's frame: that in front of the jaws.
func (h *Chucking) Outside(p Profile) Profile {
	if h.OutsideFree() {
		return p
	}
	return h.Within(p, 0, math.Inf(1))
}
