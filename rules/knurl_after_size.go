package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "knurl-after-size",
	Title: "a knurl is pressed in after a surface was finished to close limits",
	Why: `Knurling wheels are pressed in with a great force. The ridges stand out by some hundredths to a tenth of a millimetre, and
the work is pushed over in the chuck: what was finished before may no longer have its size or run true. Knurl first, then
finish the rest.`,
	Rows:      []string{"F13"},
	Source:    []string{"growth of 0.02 to 0.10 mm, and the order: common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleKnurlAfter(true),
	Sound:     exampleKnurlAfter(false),
	OnTurn:    knurlAfterSize,
})

// exampleKnurlAfter makes a fit and a knurl in one holding, the fit first or last.
func exampleKnurlAfter(after bool) string {
	fit, knurl := "\n    operation {\n      makes = outside.fit\n    }", "\n    operation {\n      makes = knurl.grip\n    }"
	if !after {
		fit, knurl = knurl, fit
	}
	return exampleTurned(`
  outside "waist" {
    from     = 30
    to       = 45
    diameter = 18.46
  }

  outside "fit" {
    from     = 45
    diameter = "14 h7"
  }

  knurl "grip" {
    on    = outside.waist
    pitch = 1
  }
`, inThree, `
    operation {
      makes = outside.waist
    }`+fit+knurl)
}

func knurlAfterSize(k *eval.Turn, a *Ask) {
	if k.Choice.By != "knurling" || k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		if f := w.Target.Form; f == nil || f.Feature.Kind != "knurl" || w.Wrong != "" {
			continue
		}
		found := false
		for _, z := range k.Hold.Outside(k.Before.Profile) {
			if z.Form == nil {
				continue
			}
			d := z.Form.Feature.Diameter.V
			if d.Tol.Kind != drawing.Class && d.Tol.Kind != drawing.Deviations || found {
				continue
			}
			found = true
			says := "%s is knurled after %s was finished to %s: the pressure pushes the work over; knurl first, then finish"
			if z.Form == w.Target.Form.Lathe.On {
				says = "%s raises ridges of some hundredths on %s, which was finished to %s"
			}
			a.Say(k.Spot.Part+"."+w.Target.Name()+"+"+z.Form.Name(), k.Place("makes"), says, w.Target.Name(), z.Form.Name(), d.Written)
		}
		if !found {
			a.Clear(finding.Margin{}, "")
		}
	}
}
