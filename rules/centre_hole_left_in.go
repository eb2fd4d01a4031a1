package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "centre-hole-left-in",
	Title: "a centre hole that is to go stays in the finished part, or one that is to stay is cut away",
	Why: `A centre hole that may not be seen is drilled in a stub that is cut off when all else is done; without metal for the stub its
pilot stays in the part. One that is to stay must be drilled in the finished end, or deep enough to last the facing.`,
	Rows:      []string{"C17"},
	Source:    []string{"depth of form A two and a half times its pilot: common practice; arithmetic on the metal over the end"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleStub("1"),
	Sound:     exampleStub("6"),
	OnPart:    centreHoleLeftIn,
})

// exampleStub drills a centre hole that is to go in a raw end with so much metal over it.
func exampleStub(over string) string {
	s := replaced(exampleTurned(`
  centre_hole "end" {
    into  = "right"
    size  = 2
    stays = false
  }
`, inThree, `    operation {
      makes = centre_hole.end
    }
    operation {
      makes = face.right
    }`), "right = 1", "right = "+over)
	return s
}

func centreHoleLeftIn(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	for _, c := range p.CentresLeft() {
		stays, ok := c.Form.Feature.Stays.Get()
		if !ok {
			continue
		}
		at := c.Form.Feature.Stays.At
		switch {
		case !stays && c.Over < c.Deep-0.0005:
			f := a.Say(p.Part.Label+"."+c.Form.Name()+".stays", at, "%s is not to stay on the finished part, and goes %s deep from an end that lies %s beyond the finished one: %s of it stay; leave %s over there",
				c.Form.Name(), mm(round(c.Deep)), mm(round(c.Over)), mm(round(c.Deep-c.Over)), mm(round(c.Deep)))
			f.Margin, f.Spots[0] = Room(round(c.Over), round(c.Deep)), c.Turn.Spot
		case !stays:
			a.Clear(Room(round(c.Over), round(c.Deep)), "the stub of "+c.Form.Name())
		case c.Over >= c.Cone-0.0005:
			f := a.Say(p.Part.Label+"."+c.Form.Name()+".stays", at, "%s is to stay on the finished part; its seat is %s deep, and %s are cut off that end after it is drilled",
				c.Form.Name(), mm(round(c.Cone)), mm(round(c.Over)))
			f.Margin, f.Spots[0] = Bound(round(c.Over), round(c.Cone), "mm"), c.Turn.Spot
		default:
			a.Clear(Bound(round(c.Over), round(c.Cone), "mm"), "the seat of "+c.Form.Name())
		}
	}
}
