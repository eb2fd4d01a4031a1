package eval

import (
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// HoldChoice is every decision about one holding. The dry run decides nothing itself.
type HoldChoice struct {
	Machine   *model.Machine
	Vise      *model.Vise
	Clamps    *model.Clamps     // clamped to the table
	Plate     *model.AnglePlate // with one face on its upright, clamped to that
	Soft      *model.SoftJaws   // on the vise in place of its own jaws
	SoftHigh  float64           // height of their gripping face above the bed; 0: not known
	Free      float64           // of work on an angle plate: lowest metal above what the plate stands on; 0: not free
	Divided   *Divided          // on a dividing head or rotary table
	ByHand    bool
	Up, Back  model.Face // face that looks up; face on the fixed jaw, or towards the column
	Pair      *model.Parallels
	Height    float64    // of the pair under the piece; 0: on the bed
	Packing   float64    // height of packing under the piece
	Step      float64    // height above the bed of the step of soft jaws that the piece sits on; 0 none
	RoundBar  float64    // diameter at the moving jaw; 0 none
	Along     float64    // left jaw end to the left-most metal; not counted where Centred
	Centred   bool       // middles together
	Lean      Lean       // of the piece, or of all that holds it
	Vee       *Veed      // the vee block that the work lies in; else nil
	MovedJaw  model.Face // face on the moving jaw, where it is not the opposite one
	NotPlayed string     // why this holding cannot be made on paper
}

// Words spells the choice out, for keys and for the eye.
func (h *HoldChoice) Words() string {
	var b strings.Builder
	put := func(s string) { b.WriteString(s); b.WriteByte('|') }
	item := func(i *model.Item) {
		if i != nil {
			put(i.Path())
		} else {
			put("-")
		}
	}
	if h.Machine != nil {
		item(h.Machine.Item)
	}
	if h.Vise != nil {
		item(h.Vise.Item)
	}
	if h.Clamps != nil {
		item(h.Clamps.Item)
	}
	if h.ByHand {
		put("hand")
	}
	if h.Divided != nil {
		put(h.Divided.Words())
	}
	put(h.Up.String())
	put(h.Back.String())
	put(h.MovedJaw.String())
	if h.Pair != nil {
		item(h.Pair.Item)
	}
	for _, x := range []float64{h.Height, h.Packing, h.RoundBar, h.Along, h.Step} {
		put(model.Figure(x))
	}
	if h.Centred {
		put("centred")
	}
	if h.Soft != nil {
		item(h.Soft.Item)
		put(model.Figure(h.SoftHigh))
	}
	if h.Plate != nil {
		item(h.Plate.Item)
		put(model.Figure(h.Free))
	}
	if h.Vee != nil {
		put(h.Vee.Words())
	}
	if h.Lean.By != 0 {
		put(h.Lean.Words())
	}
	return b.String()
}

// Pick is one tool out of a block that may hold a set.
type Pick struct {
	Cutter *model.Cutter
	Size   float64        // the member; diameter of the cut
	Thread drawing.Thread // of a tap
	Lead   model.Lead     // of a tap
	Name   string         // of a member with a name
}

// Path names the tool: "drill.jobbers[7.8]".
func (t Pick) Path() string {
	if t.Cutter == nil {
		return ""
	}
	switch {
	case t.Thread.Series != "":
		return t.Cutter.Path() + `["` + t.Thread.String() + `"]`
	case t.Name != "":
		return t.Cutter.Path() + `["` + t.Name + `"]`
	case t.Cutter.Diameter.Is() && t.Cutter.Diameter.V.Single, t.Size == 0:
		return t.Cutter.Path()
	}
	return t.Cutter.Item.Member(t.Size)
}

// Mount is one thing between spindle and tool.
type Mount struct {
	Holder  *model.Holder
	Collets *model.Collets
	Collet  float64 // nominal size of the collet
	Sleeve  *model.Sleeve
}

// Item is the block of the thing.
func (m Mount) Item() *model.Item {
	switch {
	case m.Holder != nil:
		return m.Holder.Item
	case m.Collets != nil:
		return m.Collets.Item
	case m.Sleeve != nil:
		return m.Sleeve.Item
	}
	return nil
}

// Path names the thing: "collets.er25[8]".
func (m Mount) Path() string {
	if i := m.Item(); i != nil {
		if m.Collets != nil {
			return i.Member(m.Collet)
		}
		return i.Path()
	}
	return ""
}

// CutChoice is every decision about one operation.
type CutChoice struct {
	By      string // "drilling", "reaming", "milling", "sawing", …
	Tool    Pick
	Mounts  []Mount // from the spindle outwards
	Out     float64 // tip of the tool to the face of its holder; 0: worked out
	Speed   float64 // rev/min; 0: not chosen, for want of facts
	Reverse bool
	Turned  bool // mounted turned over
	Climb   bool
	From    model.Face // side that the tool enters; NoFace: as the feature says
	ByHand  bool       // turned by hand under the spindle, or by hand
	NoTool  string     // why there is no tool; the moment is played as if done
	Index   []string   // how the piece is turned on, in words: one for each thing that is divided
}

// Words spells the choice out, for keys.
func (c *CutChoice) Words() string {
	var b strings.Builder
	put := func(s string) { b.WriteString(s); b.WriteByte('|') }
	put(c.By)
	put(c.Tool.Path())
	put(c.Tool.Lead.Word)
	for _, m := range c.Mounts {
		put(m.Path())
	}
	put(model.Figure(c.Out))
	put(model.Figure(c.Speed))
	put(c.From.String())
	for _, f := range []bool{c.Reverse, c.Turned, c.Climb, c.ByHand} {
		if f {
			put("y")
		} else {
			put("n")
		}
	}
	put(c.NoTool)
	for _, s := range c.Index {
		put(s)
	}
	return b.String()
}

// NoMachineHere is why a holding is not made on paper where the shop has nothing to do it on.
const NoMachineHere = "no machine that is here can do it"
