package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:      "made-twice",
	Title:     "a step makes again what was finished before",
	Why:       `Either a step was meant for something else, or the earlier one should have left metal. At the machine the second visit finds nothing to cut, or cuts a finished surface once more.`,
	Rows:      []string{"F2"},
	Source:    []string{"order of work as written"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     replaced(exampleHole(), "      makes = hole.pin\n    }\n", "      makes = hole.pin\n    }\n    operation {\n      makes = hole.pin\n    }\n"),
	Sound:     exampleReam("7.8"),
	OnCut:     madeTwice,
	OnTurn:    asCut(madeTwice),
})

func madeTwice(k *eval.Cut, a *Ask) {
	for _, w := range k.Works {
		t := w.Target
		if t.Form == nil {
			if s := k.Before.Faces[t.Face]; s.Done && s.Times > 0 {
				a.Say(k.Spot.Part+".face."+t.Face.String(), k.Place("makes"), "the %s face was finished before, by %s; what is this step to take off?", t.Face, s.By.Step)
				continue
			}
			a.Clear(finding.Margin{}, "")
			continue
		}
		if face, ok := k.Part.JointFace(t); ok {
			if s := k.Before.Faces[face]; s.Done && s.Times > 0 {
				a.Say(k.Spot.Part+"."+t.Name(), k.Place("makes"), "%s was finished before, by %s; what is this step to take off?", t.Name(), s.By.Step)
				continue
			}
			a.Clear(finding.Margin{}, "")
			continue
		}
		s := k.Part.Feature(k.Before, t.Form)
		done, by := s.Finished, s.By.Step
		switch t.Sub {
		case "thread":
			done, by = s.Threaded, "an earlier step"
		case "counterbore":
			done, by = s.Bored, "an earlier step"
		case "countersink":
			done, by = s.Sunk, "an earlier step"
		}
		if c := k.Choice.Tool.Cutter; c != nil && c.Kind == "reamer" && c.Taper.Is() && t.Sub == "" {
			a.Clear(finding.Margin{}, "") // opens to a taper pin what the drill left straight
			continue
		}
		if done && k.Choice.By != "spotting" {
			a.Say(k.Spot.Part+"."+t.Name(), k.Place("makes"), "%s was finished before, by %s; what is this step to take off?", t.Name(), by)
			continue
		}
		a.Clear(finding.Margin{}, "")
	}
}
