package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "shank-does-not-fit",
	Title: "a shank or taper does not go into what is to hold it",
	Why: `A collet holds its nominal size and closes a little below it: half a millimetre or one for the ER
kind, next to nothing for collets that go straight into a spindle. It never holds a shank above its size, and a
6 mm shank in a 1/4 inch collet is held by a line. A taper goes only into a socket of its own kind.`,
	Rows: []string{"B11", "B4"},
	Source: []string{"closing of ER collets: makers' and users' tables; finger collets hold their nominal size only: users' reports",
		"Morse and Jacobs tapers: printed tables"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Holding,
	Trips:     exampleHole(`tool = drill.jobbers[6]`, `holder = [collet_chuck.er, collets.er[8]]`),
	Sound:     exampleHole(`tool = drill.jobbers[6]`, `holder = [collet_chuck.er, collets.er[6]]`),
	OnCut:     shankDoesNotFit,
	OnTurn: func(k *eval.Turn, a *Ask) {
		if k.InTailstock() {
			shankDoesNotFit(k.AsCut(), a)
		}
	},
})

// joints looks at every link of some kinds and lets say word what does not fit.
func joints(k *eval.Cut, a *Ask, kinds []string, say func(l eval.Link)) {
	if k.Choice.Tool.Cutter == nil || k.Hold.Unplayed != "" {
		return
	}
	for _, l := range k.Stack.Links {
		if !oneOf(l.Kind, kinds...) {
			continue
		}
		switch {
		case len(l.Lacks) > 0:
			a.Lack(l.Lacks...)
		case l.Fits == model.No:
			say(l)
		default:
			a.Clear(finding.Margin{}, "")
		}
	}
}

func oneOf(s string, words ...string) bool {
	for _, w := range words {
		if s == w {
			return true
		}
	}
	return false
}

func shankDoesNotFit(k *eval.Cut, a *Ask) {
	joints(k, a, []string{"shank", "taper", "collet"}, func(l eval.Link) {
		upper := pathOf(l.Upper)
		switch l.Kind {
		case "taper":
			if l.Why != "" {
				a.Say(upper+"+"+k.ToolPath(), k.Place("holder", "tool"), "%s has %s, and %s takes %s: %s", k.ToolPath(), l.Has, upper, l.Takes, l.Why)
				return
			}
			a.Say(upper+"+"+pathOf(l.Lower), k.Place("holder", "tool"), "%s takes %s, and %s has %s: it needs a sleeve between them, or another holder",
				upper, l.Takes, pathOf(l.Lower), l.Has)
		case "collet":
			a.Say(upper+"+"+pathOf(l.Lower), k.Place("holder"), "%s takes collets of the system %s, and %s are %s", upper, l.Takes, pathOf(l.Lower), l.Has)
		default:
			a.Say(upper+"+"+k.ToolPath(), k.Place("holder", "tool"), "%s holds %s, and %s has %s", lastMount(k), l.Takes, k.ToolPath(), l.Has)
		}
	})
}

// lastMount names what holds the tool: "collets.er[6]".
func lastMount(k *eval.Cut) string {
	if n := len(k.Choice.Mounts); n > 0 {
		return k.Choice.Mounts[n-1].Path()
	}
	return "the spindle"
}
