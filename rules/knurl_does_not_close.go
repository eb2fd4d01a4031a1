package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "knurl-does-not-close",
	Title: "no whole number of ridges goes round the work",
	Why: `A knurling wheel prints its own pitch. Where the way round is not near a whole number of pitches it does not fall into its own
marks the second time round and cuts them double. A few hundredths off the diameter before knurling, or a wheel of another
pitch, puts it right; wheels pressed in hard often find a number by themselves.`,
	Rows:      []string{"F13"},
	Source:    []string{"pi times the diameter over the pitch: geometry", "a quarter of a pitch as the border, half-way to the worst: our own"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleKnurl("15.75"),
	Sound:     exampleKnurl("15.92"),
	OnTurn:    knurlDoesNotClose,
})

// exampleKnurl knurls the end of a piece with wheels of 1 mm.
func exampleKnurl(d string) string {
	return exampleTurned(`
  outside "waist" {
    from     = 40
    diameter = `+d+`
  }

  knurl "grip" {
    on    = outside.waist
    pitch = 1
  }
`, inThree, `
    operation {
      makes = outside.waist
    }
    operation {
      makes = knurl.grip
    }`)
}

// ridgeOff is how far from a whole number of ridges a knurl may be, in ridges.
const ridgeOff = 0.25

func knurlDoesNotClose(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.By != "knurling" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Feature.Kind != "knurl" || w.Wrong != "" || !(w.R0 > 0) {
			continue
		}
		pitches := []float64{f.Feature.Pitch.V}
		if !f.Feature.Pitch.Is() {
			s, ok := Need(a, c.Pitch)
			if !ok {
				continue
			}
			lo, hi, _ := s.Range()
			pitches = s.Within(lo, hi, 20)
		}
		d := 2 * w.R0
		best, off := 0.0, math.Inf(1)
		for _, p := range pitches {
			n := math.Pi * d / p
			if by := math.Abs(n - math.Round(n)); p > 0 && by < off {
				best, off = p, by
			}
		}
		if best == 0 {
			continue
		}
		if off <= ridgeOff+1e-9 {
			a.Clear(Bound(round(off), ridgeOff, "ridges"), f.Name()+" round "+k.Part.Label)
			continue
		}
		n := math.Pi * d / best
		says := a.Say(k.Spot.Part+"."+f.Name()+".pitch", k.Place("makes"), "%s ridges of %s mm go round %s at %s mm; %s mm gives %s, %s mm gives %s",
			hundredth(n), figure(best), f.Name(), figure(round(d)), figure(round(math.Floor(n)*best/math.Pi)), figure(math.Floor(n)), figure(round(math.Ceil(n)*best/math.Pi)), figure(math.Ceil(n)))
		says.Margin = Bound(round(off), ridgeOff, "ridges")
	}
}
