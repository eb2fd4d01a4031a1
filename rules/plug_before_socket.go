package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "plug-before-socket",
	Title: "a taper plug is finished before the socket that it is fitted to",
	Why: `A plug is tried in its socket with blue, and the slide set over by a hair until the blue rubs off from end to end. That can be
done with the plug still in the chuck. A bored socket shows nothing of where it bears. Turn the hole first, and the plug to fit it.`,
	Rows:      []string{"F5"},
	Source:    []string{"order of work as written: after, and the order of the set-ups; the hole first, then the plug with blue: common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     examplePlug("part.plug", ""),
	Sound:     examplePlug("", "part.socket"),
	OnBuild:   plugBeforeSocket,
})

// examplePlug is a plug and its socket, either after the other.
func examplePlug(socket, plug string) string {
	after := func(what string) string {
		if what == "" {
			return ""
		}
		return "    after = [" + what + "]\n"
	}
	return `recipe "example" {
  units = "mm"
}

part "plug" {
  material = "mild steel"
  length   = 60
  diameter = 25

  outside "cone" {
    from     = 40
    diameter = 16
  }

  taper "cone" {
    on    = outside.cone
    size  = "1:10"
    mates = part.socket.taper.cone
  }

  setup "turn" {
    hold  = chuck.three
    end   = "left"
` + after(plug) + `    makes = [outside.cone, taper.cone]
  }
}

part "socket" {
  material = "mild steel"
  length   = 20
  diameter = 25

  bore "cone" {
    into     = "right"
    diameter = 14
  }

  taper "cone" {
    on   = bore.cone
    size = "1:10"
  }

  setup "bore" {
    hold  = chuck.three
    end   = "left"
` + after(socket) + `    makes = [bore.cone, taper.cone]
  }
}
`
}

func plugBeforeSocket(t *eval.Trace, a *Ask) {
	for _, p := range t.Parts {
		for _, f := range p.Part.Forms {
			m := f.Feature
			if m.Kind != "taper" || !m.Mates.Is() || m.Mates.V.Item == nil || f.Lathe == nil {
				continue
			}
			plug, socket := m.Item, m.Mates.V.Item
			if f.Lathe.Inside {
				plug, socket = socket, plug
			}
			first, then := t.MakerOf(plug), t.MakerOf(socket)
			switch {
			case t.Before(first, then):
				say := a.Say(plug.Path()+"+"+socket.Path(), plug.At, "%s is finished in %s, before %s, its mate: make the hole first, and fit the plug to it with blue before it leaves the chuck",
					plug.Path(), first.Path(), socket.Path())
				say.Also = []finding.Note{{Place: then.At, Says: "the socket"}}
			case t.Before(then, first):
				a.Clear(finding.Margin{}, "")
			}
		}
	}
}
