package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "turned-away-before",
	Title: "the metal that it is to be made of is gone already",
	Why: `What an earlier step turned smaller, bored larger or parted off does not come back. The drawing or the order of the steps
is wrong; on paper it costs nothing yet.`,
	Rows:      []string{"C10", "I6"},
	Source:    []string{"order of work as written; geometry of the half section"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     turnedTwice("14", "16"),
	Sound:     turnedTwice("16", "14"),
	OnTurn:    turnedAwayBefore,
})

// turnedTwice turns the end to one diameter and then its foremost half to another.
func turnedTwice(first, second string) string {
	return exampleTurned(`
  outside "one" {
    from     = 40
    to       = 60
    diameter = `+first+`
  }

  outside "two" {
    from     = 50
    to       = 60
    diameter = `+second+`
  }
`, inThree, `
    operation {
      makes = outside.one
    }
    operation {
      makes = outside.two
    }`)
}

func turnedAwayBefore(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if w.Wrong != "" || f == nil || f.Lathe == nil || f.Feature.Kind == "centre_hole" || k.Choice.By == "spotting" || k.Choice.By == "centring" {
			continue
		}
		there := k.Before.Profile.Between(w.X0, w.X1)
		if len(there) == 0 {
			a.Say(w.Target.Name(), k.Place("makes"), "no metal is left for %s: the piece goes from %s", w.Target.Name(), ends(k.Before.Profile))
			continue
		}
		if f.Lathe.Inside || f.Feature.Kind == "groove" || f.Feature.Kind == "chamfer" || f.Feature.Kind == "radius" {
			continue
		}
		short := shortOf(there, &w)
		if short == nil {
			a.Clear(finding.Margin{}, "")
			continue
		}
		if short.Uneven {
			a.Say(w.Target.Name()+"+round", k.Place("makes"), "%s is to be %s mm round the line that turns, and from %s to %s mm along the axis the metal reaches only %s mm from that line on its thin side: it does not come out round",
				w.Target.Name(), figure(round(2*max(w.R0, w.R1))), figure(round(short.X0)), figure(round(short.X1)), figure(round(short.Whole())))
			continue
		}
		says := a.Say(w.Target.Name()+"+"+short.By.Step, k.Place("makes"), "%s is to be %s mm, and from %s to %s mm along the axis the piece is %s mm already",
			w.Target.Name(), figure(round(2*max(w.R0, w.R1))), figure(round(short.X0)), figure(round(short.X1)), figure(round(2*short.Least())))
		if short.By.Step != "" {
			says.Says += ", since " + short.By.Step
		}
	}
}

// shortOf is the first stretch, not of a groove, that is smaller than a feature is to be.
func shortOf(there eval.Profile, w *eval.Turning) *eval.Zone {
	for i := range there {
		z := &there[i]
		if z.Spoilt == "grooved" || z.X1-z.X0 < 0.01 || !z.Straight() {
			continue
		}
		if z.Most() < min(w.R0, w.R1)-0.002 || z.Uneven && z.Whole() < min(w.R0, w.R1)-0.002 {
			return z
		}
	}
	return nil
}

func ends(p eval.Profile) string {
	lo, hi, ok := p.Ends()
	if !ok {
		return "nothing"
	}
	return figure(round(lo)) + " to " + figure(round(hi)) + " mm along its axis"
}
