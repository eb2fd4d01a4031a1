package rules

import (
	"math"
	"strconv"

	"fettle/eval"
	"fettle/eval/reckon/dial"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "figures-do-not-fit",
	Title: "the figures of a scale touch each other, or there is no room beside the lines",
	Why: `Figures stand beside their lines, and each wants the width of its punch for every digit. On a small dial the tens of a hundred
lines run into each other. Fewer figures, smaller punches, a larger dial.`,
	Rows:      []string{"H15"},
	Source:    []string{"arc, or way, from figure to figure against digits times width: geometry; reckon/dial", "width of a figure over its height: common practice"},
	Limits:    []string{"figure_width"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleDial(20, `figures = { every = 5, step = 50, height = 3 }`),
	Sound:     exampleDial(20, `figures = { every = 10, step = 1, height = 2 }`),
	OnPart:    figuresDoNotFit,
})

// exampleDial is a collar of a diameter with 50 lines on its right half, more written into its scale.
func exampleDial(diameter float64, more string) string {
	return `recipe "example" {
  units = "mm"
}

part "dial" {
  material = "brass"
  diameter = ` + figure(diameter) + `
  length   = 40

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "rim" {
    from     = 30
    diameter = ` + figure(diameter) + `
  }

  graduations "scale" {
    on    = outside.rim
    count = 50
    lines = { "1" = 3, "5" = 4, "10" = 5 }
    from  = "right"
    ` + more + `
  }

  setup "divide" {
    hold    = dividing_head.own
    carries = chuck.three
    end     = "left"
    grip    = 15

    operation {
      makes = graduations.scale
    }
  }
}

dividing_plate "own" {
  circles = [15, 16, 17, 18, 19, 20]
}

dividing_head "own" {
  ratio         = 40
  plates        = [dividing_plate.own]
  direct        = [24]
  centre_height = 80
  nose          = "M39x4"
  stands_up     = false
  differential  = { wheels = [] }
}
`
}

func figuresDoNotFit(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		if f.Scale == nil || !f.Feature.Figures.Said || f.Feature.Figures.Every.V < 1 {
			continue
		}
		height, width, ok := punched(p, f, a)
		if !ok {
			continue
		}
		figuresOf(p, f, height, width, a)
	}
}

// punched is the size of the figures: as written, else of the smallest punches that are here; the
// width as the punches say, else by the limit of judgement.
func punched(p *eval.PartTrace, f *eval.Form, a *Ask) (height, width float64, ok bool) {
	want, said := f.Feature.Figures.Height.Get()
	for _, n := range p.Part.Build.Shop.Punches {
		h, known := n.Height.Get()
		if !known || !n.Here() || said && math.Abs(h-want) > 0.005 || ok && h >= height {
			continue
		}
		height, width, ok = h, n.Width.Or(a.Limit("figure_width")*h), true
	}
	switch {
	case ok:
		return height, width, true
	case said:
		return want, a.Limit("figure_width") * want, true
	}
	a.Lack(model.Lack{Fact: f.Feature.Path() + ".figures.height", At: f.Feature.Item.At})
	return 0, 0, false
}

func figuresOf(p *eval.PartTrace, f *eval.Form, height, width float64, a *Ask) {
	s, g := f.Scale, &f.Feature.Figures
	if s.Ruled != nil {
		straightFigures(p, f, height, width, a)
		return
	}
	radius := s.Radius
	if s.End {
		radius -= s.Longest() + height
	}
	digits := digitsOf(f)
	room, err := dial.Figures(2*radius, max(1, s.Numbers(f.Feature)), digits, width, 0, s.Count)
	if err != nil {
		return
	}
	spacing := 2 * math.Pi * radius * s.Over / 360 * float64(g.Every.V) / float64(s.Count)
	if spacing < room.Needs-1e-9 {
		m := a.Say(p.Part.Label+"."+f.Name()+".figures", placeOf(f, "figures"),
			"the figures of %s stand %s mm apart on %s, and up to %d digits %s wide want %s: they touch", f.Name(), figure(round(spacing)), mm(round(2*radius)), digits, mm(round(width)), mm(round(room.Needs)))
		m.Margin = Room(round(spacing), round(room.Needs))
		return
	}
	if on := p.Part.SurfaceWidth(f); !s.End && on < s.Longest()+height-0.0005 {
		m := a.Say(p.Part.Label+"."+f.Name()+".room", placeOf(f, "figures"),
			"%s carries lines of %s and figures %s high on a rim %s wide: there is no room beside the lines", f.Name(), mm(s.Longest()), mm(height), mm(round(on)))
		m.Margin = Room(round(on), round(s.Longest()+height))
		return
	}
	a.Clear(Room(round(spacing), round(room.Needs)), "the figures of "+f.Name())
}

// digitsOf is how many digits the longest figure of a scale has.
func digitsOf(f *eval.Form) int {
	g := &f.Feature.Figures
	digits := 1
	for i := range f.Scale.Numbers(f.Feature) {
		v := g.First.V + float64(i)*g.Step.Or(float64(g.Every.V))
		digits = max(digits, len(strconv.FormatFloat(v, 'f', -1, 64)))
	}
	return digits
}

// straightFigures holds the figures of a straight scale against the way between them, and the lines and
// figures together against the width of the face.
func straightFigures(p *eval.PartTrace, f *eval.Form, height, width float64, a *Ask) {
	s := f.Scale
	digits := digitsOf(f)
	spacing, needs := s.Ruled.Spacing*float64(f.Feature.Figures.Every.V), float64(digits)*width
	if spacing < needs-1e-9 {
		m := a.Say(p.Part.Label+"."+f.Name()+".figures", placeOf(f, "figures"),
			"the figures of %s stand %s mm apart, and up to %d digits %s wide want %s: they touch", f.Name(), figure(round(spacing)), digits, mm(round(width)), mm(round(needs)))
		m.Margin = Room(round(spacing), round(needs))
		return
	}
	if on := s.Ruled.Wide; on < s.Longest()+height-0.0005 {
		m := a.Say(p.Part.Label+"."+f.Name()+".room", placeOf(f, "figures"),
			"%s carries lines of %s and figures %s high on a face %s wide: there is no room beside the lines", f.Name(), mm(s.Longest()), mm(height), mm(round(on)))
		m.Margin = Room(round(on), round(s.Longest()+height))
		return
	}
	a.Clear(Room(round(spacing), round(needs)), "the figures of "+f.Name())
}
