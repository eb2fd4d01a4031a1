package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// noToolToTurn is the part of no-tool-for-it that looks at operations on a lathe.
func noToolToTurn(k *eval.Turn, a *Ask) {
	if k.Hold.Choice.NotPlayed == eval.NoMachineHere {
		noLathe(k, a)
		return
	}
	if k.Hold.Unplayed != "" || k.Choice.ByHand && k.Choice.NoTool == "" || len(k.Step.Makes) == 0 {
		return
	}
	switch {
	case k.Choice.Tool.Cutter != nil:
		a.Clear(finding.Margin{}, "")
		return
	case k.Choice.NoTool != "none":
		a.Lack(model.Lack{Fact: "a shop with tools (" + k.Choice.NoTool + ")"})
		return
	}
	t := k.Step.Makes[0]
	if f := t.Form; f != nil && (f.Wrong != "" || len(f.Lacks) > 0) {
		a.Lack(f.Lacks...)
		return
	}
	wants, near := turningWants(k, t)
	says := fmt.Sprintf("no %s is here to make %s by %s", wants, t.Name(), k.Choice.By)
	if near != "" {
		says += "; the nearest is " + near
	}
	a.Say("tool for "+k.Choice.By+"+"+wants, k.Place("makes", "tool"), "%s", says)
}

// noLathe says once of a part that it is turned and the shop has no lathe.
func noLathe(k *eval.Turn, a *Ask) {
	f := a.Say("lathe+"+k.Part.Label, k.Part.At, "%s is turned, and no lathe is here", k.Part.Label)
	for _, m := range k.Part.Build.Shop.Machines {
		if m.Kind == "lathe" && !m.Here() {
			f.Also = append(f.Also, finding.Note{Place: m.State.At, Says: fmt.Sprintf("%s, its state %q", m.Path(), m.State.V)})
		}
	}
}

// turningWants words the tool that is lacking on a lathe, and the nearest thing there is.
func turningWants(k *eval.Turn, t eval.Target) (wants, near string) {
	shop, f := &k.Part.Build.Shop, t.Form
	switch by := k.Choice.By; {
	case by == "drilling" && f != nil:
		d := k.WantedDiameter(f)
		return "drill of " + mm(d), nearest(shop, "drill", d)
	case by == "reaming" && f != nil:
		return "reamer of " + mm(f.Diameter.V), nearest(shop, "reamer", f.Diameter.V)
	case by == "tapping" && f != nil:
		return "tap " + f.Feature.Thread.Size.V.String(), ""
	case by == "engraving":
		return "pointed tool", ""
	case by == "threading" && f != nil && f.Feature.Kind == "worm":
		return "threading tool", ""
	case by == "threading" && f != nil:
		return "threading tool or die for " + f.Feature.ThreadSize.V.String(), ""
	case by == "boring":
		return "boring bar", ""
	case by == "parting", by == "grooving":
		return "parting tool", ""
	case by == "knurling" && f != nil && f.Feature.Pitch.Is():
		return "knurling tool of pitch " + mm(f.Feature.Pitch.V), nearestKnurl(shop, f.Feature.Pitch.V)
	case by == "knurling":
		return "knurling tool", ""
	case by == "centring", by == "spotting":
		return "centre drill", ""
	}
	return "turning tool", ""
}

// nearestKnurl names the knurling tool here whose pitch comes closest, with that pitch.
func nearestKnurl(shop *model.Shop, pitch float64) string {
	best, path := 0.0, ""
	for _, c := range shop.Cutters {
		if n, ok := c.Pitch.V.Nearest(pitch); ok && c.Kind == "knurling_tool" && c.Here() && (path == "" || abs(n-pitch) < abs(best-pitch)) {
			best, path = n, c.Path()
		}
	}
	if path == "" {
		return ""
	}
	return path + ", pitch " + mm(round(best))
}
