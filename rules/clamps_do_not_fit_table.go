package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "clamps-do-not-fit-table",
	Title: "tee nuts, studs or heel blocks do not fit the slots or the height of the work",
	Why: `A tee nut that is wider than the slot does not go in, one whose foot is narrower than the slot pulls out of it, and a stud
reaches only so high. Nuts of the right width, longer studs, or another block under the heel are simple to make.`,
	Rows:      []string{"B17"},
	Source:    []string{"look-up: slots, studs and heights as the shop declares them", "foot of a tee nut: ISO 299, from memory"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOwnClamps("  slot   = 14\n", "tee_slots = 12"),
	Sound:     exampleOwnClamps("  slot   = 12\n", "tee_slots = 12"),
	OnHold:    clampsDoNotFitTable,
	OnChuck:   clampsDoNotFitPlate,
})

// exampleOwnClamps clamps a block of 20 mm to the table of a mill of its own.
func exampleOwnClamps(clamps, table string) string {
	s := replaced(exampleClamped(35), "    hold   = clamps.set\n", "    machine = mill.own\n    hold   = clamps.own\n")
	return s + `
clamps "own" {
` + clamps + `  reach  = 40
  stands = 20
}

mill "own" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [100, 200, 350, 600, 1000, 1800]
  travel        = [300, 140, 200]
  nose_to_table = [40, 300]
  throat        = 150
  quill         = 40
  nose_diameter = 50
  ` + table + `
}
`
}

// slotPlay is by how much a nut or stud may be written wider than the slot and still be meant for
// it, mm: nominal sizes.
const slotPlay = 0.3

func clampsDoNotFitTable(h *eval.Holding, a *Ask) {
	c, m := h.Choice.Clamps, h.Choice.Machine
	if c == nil || m == nil || h.Choice.Divided != nil {
		return // of a rotary table's slots nothing is declared
	}
	slot := m.TeeSlots.Width
	if m.TeeSlots.Bare.Is() {
		slot = m.TeeSlots.Bare
	}
	if h.Choice.Plate == nil && (c.Slot.Is() || slot.Is()) { // of a plate's slots nothing is declared; both silent: a set that came with its mill
		nutsInSlot(h, c, m, slot, a)
	}
	clampsReachUp(h, c, a)
}

func nutsInSlot(h *eval.Holding, c *model.Clamps, m *model.Machine, slot model.Known[float64], a *Ask) {
	nut, ok := Need(a, c.Slot)
	wide, ok2 := Need(a, slot)
	if !ok || !ok2 {
		return
	}
	says := ""
	foot, _, _, iso := handbook.TeeSlot(nut)
	switch {
	case nut > wide+slotPlay:
		says = "they do not go in"
	case iso && foot <= wide:
		says = "their feet, of " + mm(foot) + ", are drawn out through it"
	case c.Studs.Is() && c.Studs.V.Diameter > wide+slotPlay:
		says = "its studs, " + c.Studs.V.String() + ", do not pass"
	}
	if says == "" {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(c.Path()+".slot+"+m.Path(), h.Place("hold"), "the tee nuts of %s are for slots of %s, and the slots of %s are %s wide: %s", c.Path(), mm(nut), m.Path(), mm(wide), says)
	f.Also = []finding.Note{{Place: c.Slot.At, Says: "what the nuts fit"}, {Place: slot.At, Says: "the slots of the table"}}
}

// clampsReachUp compares the height of what each clamp presses on with what the set can clamp.
func clampsReachUp(h *eval.Holding, c *model.Clamps, a *Ask) {
	span, ok := c.Height.Get()
	if !ok || len(span) != 2 {
		return // straps with loose studs take what height there is a stud for
	}
	for _, b := range h.Bearings() {
		at, over := round(b.At[2]), "above the table"
		if b.Against {
			at, over = round(h.Hi[1]-b.At[1]), "off the upright of "+h.Choice.Plate.Path()
		}
		if at >= span[0]-0.0005 && at <= span[1]+0.0005 {
			a.Clear(Bound(at, span[1], "mm"), "the height of the work under "+c.Path())
			continue
		}
		f := a.Say(c.Path()+".height+"+h.Work.SetUp.Path(), b.Place, "the clamp presses %s %s, and %s clamps from %s to %s mm", mm(at), over, c.Path(), figure(span[0]), figure(span[1]))
		f.Margin = Bound(at, span[1], "mm")
		f.Also = []finding.Note{{Place: c.Height.At, Says: "the heights that it clamps"}}
		return
	}
}

// clampsDoNotFitPlate asks whether the studs of the clamps that are named, else of any that are here, pass the
// slots of a faceplate.
func clampsDoNotFitPlate(h *eval.Chucking, a *Ask) {
	p := h.Choice.Faceplate
	if p == nil || !p.Slots.Is() {
		return
	}
	var thick *model.Clamps
	named := false
	for _, c := range h.Part.Build.Shop.Clamps {
		named = named || h.Work.SetUp.Names(c.Item)
	}
	for _, c := range h.Part.Build.Shop.Clamps {
		switch {
		case !c.Here(), named && !h.Work.SetUp.Names(c.Item):
		case !c.Studs.Is() || c.Studs.V.Diameter <= p.Slots.V+slotPlay:
			return
		default:
			thick = c
		}
	}
	if thick == nil {
		return
	}
	f := a.Say(p.Path()+".slots+"+thick.Path(), h.Place("hold"), "the slots of %s are %s wide, and the studs of %s are %s: bolts that pass are wanted", p.Path(), mm(p.Slots.V), thick.Path(), thick.Studs.V)
	f.Also = []finding.Note{{Place: p.Slots.At, Says: "its slots"}, {Place: thick.Studs.At, Says: "the studs"}}
}
