package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "first-cut-in-skin",
	Title: "the first cut stays within a hard or scaly skin",
	Why: `Scale and the chilled skin of a casting are harder than the metal below, and full of sand. A tool that rubs in it is blunt at
once. The first cut goes below it in one pass, its tip in clean metal.`,
	Rows:      []string{"G2"},
	Source:    []string{"depth of the skin as declared of the stock, else the handbook's: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleSkin("0.3"),
	Sound:     exampleSkin("1.5"),
	OnTurn:    firstCutInSkin,
	OnCut:     firstCutInSkinMilled,
})

// exampleSkin turns cast bar of 25 mm with a first cut so deep.
func exampleSkin(cut string) string {
	return replaced(exampleTurned(`
  outside "waist" {
    from     = 40
    diameter = 16
  }
`, inThree, `
    operation {
      makes = outside.waist
      cut   = `+cut+`
    }`), "over = { left = 1, right = 1, outside = 1 }", "stock = stock.own") + `
stock "own" {
  material = "mild steel"
  round    = 25
  lengths  = [300]
  skin     = "cast"
}
`
}

func firstCutInSkin(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		skin := k.Skin(&w)
		deep, ok := skinDepth(k.Part, skin)
		if w.Inside || w.Wrong != "" || k.By(w.Target) != "turning" || !ok || w.Off <= 0 {
			continue
		}
		// Where no cut is written all that comes off may come off at once: how it is shared out is
		// the turner's, and no question.
		takes := w.Off
		if cut := k.Step.Step.Cut; cut.Is() {
			takes = math.Min(takes, cut.V)
		}
		if takes >= deep-0.0005 {
			a.Clear(Room(round(takes), deep), "the first cut of "+w.Target.Name()+" below the skin, all of it at most")
			continue
		}
		f := a.Say(k.Spot.Part+"."+w.Target.Name()+".skin", k.Place("cut", "makes"), "the first cut of %s takes %s mm, and the %s skin is %s mm deep", w.Target.Name(), figure(round(takes)), skin, figure(deep))
		f.Margin = Room(round(takes), deep)
	}
}

// firstCutInSkinMilled looks at faces on a mill. A cutter that goes in from the side works below the skin from
// its first tooth on, and only what it leaves on the face counts.
func firstCutInSkinMilled(k *eval.Cut, a *Ask) {
	if k.Hold.Unplayed != "" || k.Unplayed != "" || k.Choice.By != "milling" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Face
		if w.Wrong != "" || w.Target.Form != nil || f == model.NoFace || w.Target.Outside {
			continue
		}
		was, is := k.Before.Faces[f], k.After.Faces[f]
		deep, ok := skinDepth(k.Part, was.Skin)
		takes := math.Abs(was.At - is.At)
		if !ok || takes < 0.0005 {
			continue
		}
		if k.Step.Step != nil && k.Step.Step.Cut.Is() && k.Hold.Choice.Up == f {
			takes = math.Min(takes, k.Step.Step.Cut.V)
		}
		if takes >= deep-0.0005 {
			a.Clear(Room(round(takes), deep), "the first cut of "+w.Target.Name()+" below the skin, all of it at most")
			continue
		}
		m := a.Say(k.Spot.Part+"."+w.Target.Name()+".skin", k.Place("cut", "makes"), "the first cut of %s takes %s mm, and the %s skin is %s mm deep", w.Target.Name(), figure(round(takes)), was.Skin, figure(deep))
		m.Margin = Room(round(takes), deep)
	}
}

// skinDepth is how deep a hard skin goes, mm: as declared of the stock, else as the handbook has it. False of
// skins that are not hard.
func skinDepth(p *eval.Part, skin string) (float64, bool) {
	if skin != "black" && skin != "cast" {
		return 0, false
	}
	_, deep, ok := handbook.Skin(skin)
	if s := p.Blank.Stock; s != nil && s.SkinDepth.Is() {
		deep, ok = s.SkinDepth.V, true
	}
	return deep, ok && deep > 0
}
