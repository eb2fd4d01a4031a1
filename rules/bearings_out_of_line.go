package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "bearings-out-of-line",
	Title: "two bearings bored in two parts before they are joined may not line up",
	Why: `Each bearing and each pin hole may lie off its place by what its drawing allows. Pinned together, the two bores are out of
line by the sum, and a shaft has half of either play to take it up: beyond that it binds or does not go in. Bore both when the
parts are joined, in one step; or put the shaft in, line the parts up on it, and drill for the pins then.`,
	Rows:      []string{"F7"},
	Source:    []string{"sum of the position errors of both bearings and of a pair of pin holes along one axis against half of either play and the play of the pins"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleBearings("±0.05", ""),
	Sound:     exampleBearings("±0.05", exampleLineBored("bearing")),
	OnBuild:   bearingsOutOfLine,
})

// exampleBearings is two cheeks on two pins with a shaft through both.
func exampleBearings(tol, work string) string {
	cheek := func(name string) string {
		return `
part "` + name + `" {
  material = "mild steel"
  length   = 60
  width    = 30
  height   = 10

  hole "bearing" {
    into     = "top"
    at       = { left = "30 ` + tol + `", front = "15 ` + tol + `" }
    diameter = "8 H7"
  }

  hole "one" {
    into     = "top"
    at       = { left = "8 ±0.002", front = "15 ±0.002" }
    diameter = "4 H7"
  }

  hole "two" {
    into     = "top"
    at       = { left = "52 ±0.002", front = "15 ±0.002" }
    diameter = "4 H7"
  }
}
`
	}
	fit := func(name, hole, shaft, wants string) string {
		return `
fit "` + name + `" {
  hole  = ` + hole + `
  shaft = ` + shaft + `
  wants = "` + wants + `"
}
`
	}
	s := `recipe "example" {
  units = "mm"
}
` + cheek("near") + cheek("far") + `
part "shaft" {
  material = "silver steel"
  diameter = "8 g6"
  length   = 60
}
`
	for _, pin := range []string{"one", "two"} {
		s += `
part "pin ` + pin + `" {
  bought   = true
  diameter = "4 m6"
  length   = 20
}
` + fit(pin+" near", "part.near.hole."+pin+".diameter", `part["pin `+pin+`"].diameter`, "H7/m6") +
			fit(pin+" far", "part.far.hole."+pin+".diameter", `part["pin `+pin+`"].diameter`, "H7/m6")
	}
	return s + fit("near", "part.near.hole.bearing.diameter", "part.shaft.diameter", "H7/g6") +
		fit("far", "part.far.hole.bearing.diameter", "part.shaft.diameter", "H7/g6") + work
}

// exampleLineBored bores or drills what is named in both cheeks in one step.
func exampleLineBored(what string) string {
	return `
assembly "pair" {
  of = [part.near, part.far]

  place {
    part    = part.far
    touches = [part.far.face.top, part.near.face.bottom]
    at      = [0, 0, -10]
  }

  setup "line" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 8

    operation {
      makes = [part.near.hole.` + what + `, part.far.hole.` + what + `]
    }
  }
}
`
}

func bearingsOutOfLine(t *eval.Trace, a *Ask) {
	for _, l := range t.Lines() {
		if l.OneGo {
			a.Clear(finding.Margin{}, "")
			continue
		}
		most, ok := Need(a, l.Most)
		free, ok2 := Need(a, l.Free)
		pins, ok3 := Need(a, l.PinPlay)
		if !ok || !ok2 || !ok3 {
			continue
		}
		if most <= free+pins+1e-6 {
			a.Clear(Bound(round(most), round(free+pins), "mm"), "the line of "+l.One.Name()+" and "+l.Two.Name())
			continue
		}
		f := a.Say(l.One.Name()+"+"+l.Two.Name(), l.One.Form.Feature.Item.At, "%s and %s are bored before their parts are %s, and by their limits may lie %s off one line; %s: bore both when the parts are joined%s",
			l.One.Name(), l.Two.Name(), heldBy(l), mm(round(most)), roomInLine(l, round(free+pins)), elseLined(l))
		f.Margin = Bound(round(most), round(free+pins), "mm")
		f.Also = []finding.Note{{Place: l.Two.Form.Feature.Item.At, Says: "the other bearing"}}
		if l.Shaft != nil {
			f.Spots = []finding.Spot{{SetUp: l.Item.Kind + " " + l.Item.Label}}
		} else {
			f.Spots = []finding.Spot{{Part: l.One.Part.Label}}
		}
	}
}

func heldBy(l eval.Lined) string {
	if l.On != "" {
		return "put on " + l.On
	}
	return "pinned together"
}

// roomInLine says how much off their line two holes may lie.
func roomInLine(l eval.Lined, free float64) string {
	has := "the drawing wants them concentric, which leaves " + mm(free)
	if l.Shaft != nil {
		has = l.Shaft.Path() + " has " + mm(free) + " in them"
	}
	if l.On == "" {
		has += ", counting what the pins leave"
	}
	return has
}

// elseLined is the other way to a line.
func elseLined(l eval.Lined) string {
	switch {
	case l.On != "":
		return ", or bore both parts in one holding against one stop, or shim the lower one"
	case l.Shaft != nil:
		return ", or pin them with the shaft in place"
	}
	return ", or pin them with a bar through both"
}

// plainHole names the hole of a fit.
func plainHole(f *eval.FitJoint) string { return f.Hole.Part.Path() + "." + f.Hole.Form.Name() }
