package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "bush-closes-when-pressed",
	Title: "the bore of a bush is finished before it is pressed in, and closes by more than its limits",
	Why: `What a bush is too large for its hole shows up again inside: the bore closes by most of the interference, and the
shaft that fitted does not go in. Leave the bore undersize and ream or bore it in place, in an assembly of both parts; or
glue the bush in; or make the bore larger by what it will close.`,
	Rows: []string{"D22"},
	Source: []string{"thick rings of two metals (Lamé), bracketed by the metal round the hole and the spread of stiffness, at the most interference within the limits; roughness pressed flat is not counted",
		"a metal that is not known: 0.55 to 0.86 of the interference in six worked cases, 0.7 to 1 in the guess of the trade",
		"0.001 to 0.002 in, common in clock plates"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleBush(""),
	Sound:     exampleBush("joined"),
	OnJoint:   bushClosesWhenPressed,
})

// exampleBush is a bush pressed in a plate, its bore finished before or once joined.
func exampleBush(when string) string {
	ream := `
    operation {
      makes = bore.way
    }
`
	before, after := ream, ""
	if when == "joined" {
		before = `
    operation {
      makes  = bore.way
      leaves = 0.3
    }
`
		after = `
assembly "plate and bush" {
  of        = [part.plate, part.bush]
  joined_by = [fit.bush]

  setup "ream" {
    hold = vise.small
    up   = "top"
    jaws = "back"
` + ream + `  }
}
`
	}
	return `recipe "example" {
  units = "mm"
}

part "plate" {
  material = "mild steel"
  length   = 40
  width    = 30
  height   = 12

  hole "seat" {
    into     = "top"
    at       = { left = 20, front = 15 }
    diameter = "12 H7"
  }
}

part "bush" {
  material = "bronze"
  diameter = "12 s6"
  length   = 12

  bore "way" {
    into     = "right"
    diameter = "8 H7"
  }

  setup "turn" {
    end = "left"
` + before + `  }
}
` + after + `
fit "bush" {
  hole  = part.plate.hole.seat.diameter
  shaft = part.bush.diameter
  wants = "H7/s6"
}
`
}

func bushClosesWhenPressed(j *eval.Joint, a *Ask) {
	f := j.Fit
	if f == nil {
		return
	}
	b, ok := f.Bushed(j.Trace)
	if !ok {
		return
	}
	pressed, ok := Need(a, f.Pressed())
	if !ok || !pressed {
		return
	}
	if !b.Early {
		a.Clear(finding.Margin{}, "")
		return
	}
	bore, ok := Need(a, b.Bore.Limits)
	by, ok2 := Need(a, b.Closes)
	if !ok || !ok2 {
		return
	}
	room := bore.Width()
	switch {
	case by.Lo > room+model.Same:
		m := a.Say(b.Bore.Path+"+"+j.Item.Path(), b.Bore.Form.Feature.Item.At, "%s is %s over its hole at most, and its bore closes by %s to %s of that when it is pressed in; the bore is finished before, and its limits leave %s",
			f.Shaft.Path, mm(round(-f.Play.V.Lo)), figure(round(by.Lo)), mm(round(by.Hi)), mm(round(room)))
		m.Margin = Bound(round(by.Lo), round(room), "mm")
		m.Also = []finding.Note{{Place: j.Item.At, Says: "pressed by this fit"}}
	case by.Hi > room+model.Same:
		a.Lack(model.Lack{Fact: b.Bore.Path + " (how far it closes when pressed in)", At: b.Bore.At})
	default:
		a.Clear(Bound(round(by.Hi), round(room), "mm"), "the bore of "+f.Shaft.Part.Path()+" as it is pressed in")
	}
}
