package rules

import (
	"fmt"
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "taper-longer-than-slide",
	Title: "a taper is longer than the top slide travels",
	Why: `A taper turned with the top slide is as long as the slide goes, measured along the slope. A longer one wants the tailstock
set over (between centres only), a taper attachment, or is turned in two bites that never quite meet.`,
	Rows:      []string{"A20"},
	Source:    []string{"geometry: length along the slope against the travel"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleTaper("140", "60"),
	Sound:     exampleTaper("80", "30"),
	OnTurn:    taperLongerThanSlide,
})

// exampleTaper turns a taper from a place to the right end of a piece.
func exampleTaper(length, from string) string {
	return replaced(exampleTurned(`
  outside "cone" {
    from     = `+from+`
    diameter = 20
  }

  taper "nose" {
    on    = outside.cone
    angle = 6
    large_end = "left"
  }
`, inThree, `
    operation {
      makes = outside.cone
    }
    operation {
      makes = taper.nose
    }`), "length   = 60", "length   = "+length)
}

func taperLongerThanSlide(k *eval.Turn, a *Ask) {
	m := k.Lathe()
	if m == nil || k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Feature.Kind != "taper" || w.Wrong != "" {
			continue
		}
		if s := k.Hold.Work.SetUp.SetOver; s.Is() && s.V != 0 || attachment(k, f, &w) {
			a.Clear(finding.Margin{}, "")
			continue
		}
		way := round(w.TaperWay())
		travel, ok := Need(a, m.TopSlide.Travel)
		if !ok {
			continue
		}
		if way <= travel+0.0005 {
			a.Clear(Bound(way, travel, "mm"), "the way of the top slide for "+f.Name())
			continue
		}
		says := a.Say(m.Path()+".top_slide+"+f.Name(), k.Place("makes"), "%s is %s mm long along its slope, and the top slide of %s travels %s%s", f.Name(), figure(way), m.Path(), mm(travel), otherWays(k, f, &w))
		says.Margin = Bound(way, travel, "mm")
	}
}

// otherWays says why the lathe's taper attachment does not serve, and between centres by how much the
// tailstock set over would.
func otherWays(k *eval.Turn, f *eval.Form, w *eval.Turning) string {
	m := k.Lathe()
	if t := m.TaperAttachment; t.Said && t.Length.Is() && t.Angle.Is() {
		return fmt.Sprintf("; its taper attachment takes %s mm and %s degrees, and it is %s mm along the axis and %s degrees", figure(t.Length.V), figure(t.Angle.V), figure(round(w.X1-w.X0)), figure(round(2*f.Half*180/math.Pi)))
	}
	over, ok := m.Tailstock.SetOver.Get()
	if want := k.Hold.Between() * math.Tan(f.Half); k.Hold.Choice.Centres && !w.Inside && ok && want <= over {
		return "; the tailstock set over by " + mm(round(want)) + " turns it"
	}
	return ""
}

// attachment says whether the lathe's taper attachment turns it.
func attachment(k *eval.Turn, f *eval.Form, w *eval.Turning) bool {
	t := k.Lathe().TaperAttachment
	return t.Said && t.Length.Is() && t.Angle.Is() && w.X1-w.X0 <= t.Length.V && 2*f.Half*180/math.Pi <= t.Angle.V
}
