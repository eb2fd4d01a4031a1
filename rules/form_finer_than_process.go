package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "form-finer-than-process",
	Title: "a surface is to be flatter, rounder or straighter than its process makes it",
	Why: `What a process holds of a size it holds of a form as well, only better: a slide wanders and a spindle wobbles by a share of what
the size comes out by. A form much finer than that wants scraping, lapping or grinding, or the drawing asks for too much.`,
	Rows: []string{"E1", "E2"},
	Source: []string{"grades of ISO 286 that a process holds at best: as for limits of size",
		"a quarter of that grade for the form: own limit; by the envelope of ISO 8015 a form can never be worse than the limits of the size",
		"flat within 0.02 mm by filing: common practice"},
	Limits:    []string{"form_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleFlat("0.003"),
	Sound:     exampleFlat("0.02"),
	OnPart:    formFinerThanProcess,
})

// exampleFlat mills the top of a block that is to be flat within a figure.
func exampleFlat(within string) string {
	s := replaced(exampleHole(), "top = 0,", "top = 1,")
	s = replaced(s, "makes = hole.pin", "makes = face.top\n    }\n    operation {\n      makes = hole.pin")
	return replaced(s, "  setup \"drill\"", "  face \"top\" {\n    flat = "+within+"\n  }\n\n  setup \"drill\"")
}

// byFile is how flat a surface comes by a file, mm: the better end of 0.02 to 0.05, common practice.
const byFile = 0.02

func formFinerThanProcess(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	var at map[string]*eval.Worked
	for _, c := range p.Part.Conditions() {
		if !c.OfForm() && !c.Whole {
			continue
		}
		if at == nil {
			at = p.LastWorked(false)
		}
		w := at[c.Target.Name()]
		if w == nil {
			continue
		}
		least, of, ok := formOf(p, &c, w, a)
		if !ok {
			continue
		}
		if c.Within.V >= least-0.0005 {
			a.Clear(Room(c.Within.V, least), "the form of "+c.Target.Name()+" by "+w.By)
			continue
		}
		f := a.Say(p.Part.Label+"."+c.Target.Name()+"."+c.Word, c.Within.At, "%s is to be %s within %s, and is left by %s, which usually makes it so within %s at best%s",
			c.Target.Name(), formWords(&c), mm(c.Within.V), w.By, mm(round(least)), of)
		f.Margin, f.Spots[0] = Room(c.Within.V, least), w.Spot
	}
}

func formWords(c *eval.Condition) string {
	if c.Whole {
		return "true over its whole length"
	}
	return c.Word
}

// formOf is the form that a process usually makes at best, mm, and what it was worked out from. False
// where no table says: what is lapped, scraped or ground goes to nothing that is tabled.
func formOf(p *eval.PartTrace, c *eval.Condition, w *eval.Worked, a *Ask) (least float64, of string, ok bool) {
	if w.By == "filing" {
		return byFile, "", c.Word == "flat" || c.Word == "straight"
	}
	grade, ok := bestGrade[w.By]
	if !ok && w.By == "facing" {
		grade, ok = bestGrade["turning"]
	}
	size, known := p.Part.Spread(c)
	if !ok || !known {
		return 0, "", false
	}
	um, ok := handbook.ISO286().Grade(size, grade)
	if !ok {
		return 0, "", false
	}
	share := a.Limit("form_share")
	return share * um / 1000, " (" + figure(share) + " of grade " + figure(float64(grade)) + " on " + model.Figure(round(size)) + " mm, form_share)", true
}
