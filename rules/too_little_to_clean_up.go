package rules

import (
	"math"
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "too-little-to-clean-up",
	Title: "there is less metal over a raw face than usually cleans it up",
	Why: `Under a sawn, rolled or cast skin the metal is not flat. A face that is to be machined all over
wants enough over it for the cutter to come under the deepest place; a sawn end also for the slope of the saw cut.`,
	Rows:      []string{"G1", "G2"},
	Source:    []string{"a cut that runs out of square wants its skew besides: geometry; of the saw alone, no less than that", "drawn to 0.5, hot-rolled 1 to 3, cast 2 to 3, sawn ends 1 to 2 mm a face: common practice"},
	Limits:    []string{"clean_up_drawn", "clean_up_black", "clean_up_cast", "clean_up_sawn"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleCleanUp(0.6),
	Sound:     exampleCleanUp(1),
	OnPart:    tooLittleToCleanUp,
})

// exampleCleanUp mills a sawn end with so much metal over it.
func exampleCleanUp(over float64) string {
	s := replaced(exampleHole(), "left = 0, right = 0", "left = 0, right = "+figure(over))
	s = replaced(s, "over = {", "skin = { right = \"sawn\" }\n    over = {")
	return s[:len(s)-2] + `
  setup "end" {
    hold  = vise.small
    up    = "right"
    jaws  = "back"

    operation {
      makes = face.right
    }
  }
}
`
}

func tooLittleToCleanUp(p *eval.PartTrace, a *Ask) {
	if p.Start == nil {
		return
	}
	short := map[string]bool{} // sides for which the stock does not reach at all
	for _, n := range p.Part.StockNeeds() {
		short[n.Side] = n.Known && n.Has < n.Needs-0.0005
	}
	var thin []thinFaces
	var none []string // faces to be made with nothing over them, whatever their skin
	noneAt := text.Place{}
	for _, f := range model.Faces {
		over, ok := p.Part.Blank.Over[f].Get()
		if !ok || !p.Part.Machined(f) || f == p.Part.Blank.Bar {
			continue
		}
		if !p.Part.Blank.Skin[f].Is() && over < 0.0005 {
			if at, said := overWritten(p.Part, f); said || !short[[3]string{"length", "width", "height"}[f.Axis()]] {
				none = append(none, f.String())
				noneAt = at
			}
			continue
		}
		skin, ok := Need(a, p.Part.Blank.Skin[f])
		if !ok || skin == "ground" {
			continue
		}
		want := a.Limit("clean_up_" + skin)
		if skin == "sawn" {
			stock, saw := p.Part.SawnAslant(f)
			want = math.Max(want+stock, saw)
		}
		if over >= want-0.0005 {
			a.Clear(Room(over, want), "metal over the "+f.String()+" face of "+p.Part.Label)
			continue
		}
		at, said := overWritten(p.Part, f)
		if !said && short[[3]string{"length", "width", "height"}[f.Axis()]] {
			continue // the stock itself is to blame, and that is said
		}
		thin = addThin(thin, thinFaces{over: over, want: want, skin: skin, at: at, faces: []string{f.String()}})
	}
	if len(none) > 0 {
		of := map[bool]string{true: "faces", false: "face"}[len(none) > 1]
		m := a.Say(p.Part.Label+".blank.over."+strings.Join(none, "+"), noneAt, "nothing is over the %s %s of %s, and a step is to make %s: there is no metal to cut",
			inWords(none), of, p.Part.Label, map[bool]string{true: "them", false: "it"}[len(none) > 1])
		m.Margin = Room(0, a.Limit("clean_up_drawn"))
	}
	for _, t := range thin {
		of, are := "face", "is"
		if len(t.faces) > 1 {
			of, are = "faces", "are"
		}
		m := a.Say(p.Part.Label+".blank.over."+strings.Join(t.faces, "+"), t.at,
			"%s over the %s %s of %s, which %s %s; usually %s at least is wanted to clean %s up (clean_up_%s%s)",
			mm(t.over), inWords(t.faces), of, p.Part.Label, are, t.skin, mm(round(t.want)), map[bool]string{true: "them", false: "it"}[len(t.faces) > 1], t.skin, aslant(t.want > a.Limit("clean_up_"+t.skin)+0.0005))
		m.Margin = Room(t.over, t.want)
	}
}

// aslant says that what is wanted is more for a cut that runs out of square.
func aslant(more bool) string {
	if more {
		return "; a cut that runs out of square over the section wants more"
	}
	return ""
}

// thinFaces are faces with the same too little over them, written at the same place.
type thinFaces struct {
	over, want float64
	skin       string
	at         text.Place
	faces      []string
}

func addThin(all []thinFaces, t thinFaces) []thinFaces {
	for i := range all {
		if o := &all[i]; o.over == t.over && o.skin == t.skin && o.at == t.at {
			o.faces = append(o.faces, t.faces...)
			return all
		}
	}
	return append(all, t)
}

// overWritten is where the metal over a face is written, or the block that could say it.
func overWritten(p *eval.Part, f model.Face) (text.Place, bool) {
	b := p.Part.Blank
	if b == nil {
		return p.At, false
	}
	if k := b.Over.On(f); k.Said() {
		return k.At, true
	}
	return b.Item.At, false
}
