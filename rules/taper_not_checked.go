package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "taper-not-checked",
	Title: "a taper that must fit is turned, and nothing here tells whether it does",
	Why: `A slide set by its own scale is seldom within a quarter of a degree, and a taper that fits at one end only holds nothing. It is
tried in the socket that it is for, with blue; or over a sine bar or two rods with slip gauges, or with a protractor. Where a part of the build
is its mate, the hole is turned first and the plug is fitted to it.`,
	Rows:      []string{"E12"},
	Source:    []string{"look-up in build and shop; the hole first, and blue: common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleStandardTaper("MT1", ""),
	Sound:     exampleStandardTaper("MT2", ""),
	OnPart:    taperNotChecked,
})

// exampleStandardTaper turns a standard taper in the shop of the examples.
func exampleStandardTaper(size, more string) string {
	return exampleTurned(`
  outside "shank" {
    from     = 30
    diameter = 18
  }

  taper "shank" {
    on        = outside.shank
    size      = "`+size+`"
    large_end = "left"
`+more+`  }
`, inThree, `
    operation {
      makes = outside.shank
    }
    operation {
      makes = taper.shank
    }`)
}

func taperNotChecked(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	for _, f := range p.Part.Forms {
		m := f.Feature
		if m.Kind != "taper" || f.Lathe == nil || f.Wrong != "" {
			continue
		}
		if !m.TaperSize.Is() && !(m.Small.V.Tol.Own() && m.Large.V.Tol.Own()) {
			continue // nothing says how close its angle is to be
		}
		if m.Mates.Is() || isMate(p.Part.Build, m.Item) {
			a.Clear(finding.Margin{}, "")
			continue
		}
		s := &p.Part.Build.Shop
		if measuresAngles(s) || m.TaperSize.Is() && goesWith(s, m.TaperSize.V, f.Lathe.Inside) {
			a.Clear(finding.Margin{}, "")
			continue
		}
		if len(s.Instruments) == 0 && len(s.Machines) == 0 {
			a.Lack(model.Lack{Fact: "what tapers are tried with here (the shop names no instrument)"})
			continue
		}
		what, try := f.Name(), "socket"
		if m.TaperSize.Is() {
			what += ", " + m.TaperSize.V.String() + ","
		}
		if f.Lathe.Inside {
			try = "plug"
		}
		a.Say(p.Part.Label+"."+f.Name()+"+check", m.Item.At, "nothing here tells whether %s has its angle: no %s of that taper, no slip gauges for a sine bar or for rods, and no protractor is here, and it names no mate to be blued with",
			what, try)
	}
}

// isMate says whether a taper of the build is fitted to this one.
func isMate(b *model.Build, i *model.Item) bool {
	for _, p := range b.Parts {
		for _, f := range p.Features {
			if f.Kind == "taper" && f.Mates.Is() && f.Mates.V.Item == i {
				return true
			}
		}
	}
	return false
}

// measuresAngles says whether the shop has what angles are measured with: a protractor, or slip gauges, which
// serve with a sine bar as well as with two rods and a micrometer.
func measuresAngles(s *model.Shop) bool {
	for _, x := range s.SlipGauges {
		if x.Here() {
			return true
		}
	}
	for _, x := range s.Instruments {
		if x.Kind == "protractor" && x.Here() {
			return true
		}
	}
	return false
}

// goesWith says whether something here has a socket of a taper, for an outside one, or a shank of it.
func goesWith(s *model.Shop, t drawing.Taper, inside bool) bool {
	same := func(k model.Known[drawing.Taper]) bool { return k.Is() && k.V.Same(t) }
	shank := func(k model.Known[model.Shank]) bool { return k.Is() && k.V.Taper.Same(t) }
	for _, x := range s.Sleeves {
		if x.Here() && (inside && same(x.Outside) || !inside && same(x.Inside)) {
			return true
		}
	}
	if !inside {
		for _, x := range s.Machines {
			if x.Here() && (same(x.Taper) || same(x.Tailstock.Taper)) {
				return true
			}
		}
		return false
	}
	for _, x := range s.Holders {
		if x.Here() && shank(x.Shank) {
			return true
		}
	}
	for _, x := range s.Cutters {
		if x.Here() && shank(x.Shank) {
			return true
		}
	}
	return false
}
