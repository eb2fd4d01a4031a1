package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "screw-head-too-large",
	Title: "the head of the screw does not go into its counterbore",
	Why: `The counterbore is narrower than the head, so the head stands on its rim. The usual counterbore leaves about a tenth of the
head round it.`,
	Rows: []string{"D29"},
	Source: []string{"heads of cap screws with hexagon socket, M3 to M12, 1.5 diameters or the next half millimetre: ISO 4762 (from memory)",
		"head_diameter of the shop's own screws goes before it"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleCounterbore("8"),
	Sound:     exampleCounterbore("9.5"),
	OnJoint:   screwHeadTooLarge,
})

// exampleCounterbore is a plate held by M5 cap screws in counterbores so wide.
func exampleCounterbore(wide string) string {
	return replaced(exampleScrewedDown("M5x16", "5.5", "12", "16", "12"), "diameter = 5.5",
		"diameter = 5.5\n    counterbore = { diameter = "+wide+", depth = 5.5 }")
}

func screwHeadTooLarge(j *eval.Joint, a *Ask) {
	s := j.Screw
	if s == nil || len(s.Passes) == 0 || s.Passes[0].Form == nil {
		return
	}
	f := s.Passes[0].Form
	if !f.Feature.Counterbore.Said || s.Model.Head.Is() && !s.UnderHead() {
		return
	}
	wide, ok := Need(a, f.Feature.Counterbore.Diameter)
	head, ok2 := Need(a, j.Head())
	if !ok || !ok2 {
		return
	}
	if wide.Nominal < head-0.0005 {
		m := a.Say(j.Item.Path()+"+"+f.Name()+".counterbore", placeIn(j, "head"), "the head of %s is %s across; the counterbore of %s is %s", s.Model.Size.V, mm(head), f.Name(), mm(wide.Nominal))
		m.Margin = Room(wide.Nominal, head)
		m.Also = []finding.Note{{Place: f.Feature.Item.At, Says: f.Name()}}
		return
	}
	a.Clear(Room(wide.Nominal, head), "the counterbore of "+f.Name()+" for the head of its screw")
}
