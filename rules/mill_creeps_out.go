package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "mill-creeps-out",
	Title: "a large cutter cutting its full width in a plain collet, to a close depth",
	Why: `A plain collet holds by friction, and the helix of an end mill pulls it out a little at a time under a heavy
cut: the floor comes out lower at the end than at the beginning. A side-lock holder, a clean dry shank and a last light
cut for the floor are the ways out.`,
	Rows: []string{"B10"},
	Source: []string{"users' measured pull-out of one collet spreads sixfold with how it is cleaned and tightened: not seen in print",
		"the limits: own"},
	Limits:    []string{"creep_diameter", "creep_limits"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     exampleCreep(16, `"4 ±0.03"`),
	Sound:     exampleCreep(6, `"4 ±0.03"`),
	OnCut:     millCreepsOut,
})

// exampleCreep mills a slot as wide as the cutter, to a depth.
func exampleCreep(d float64, depth string) string {
	s := replaced(exampleSlot("holder = [collet_chuck.er, collets.er[10]]"), "width = 6", "width = "+figure(d))
	s = replaced(s, "depth = 4", "depth = "+depth)
	return replaced(s, "slot_drill.two[6]", "end_mill.four["+figure(d)+"]")
}

func millCreepsOut(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.By != "milling" || !oneOf(c.Kind, "end_mill", "slot_drill") {
		return
	}
	if k.Choice.Tool.Size < a.Limit("creep_diameter")-0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || !w.Facing || !w.Final || f.Feature.Kind != "slot" || w.Entry.Face != f.Into.Face || f.Through ||
			k.Choice.Tool.Size < f.Width-0.5 || !f.Feature.Depth.Is() {
			continue
		}
		creepsIn(k, a, f)
	}
}

func creepsIn(k *eval.Cut, a *Ask, f *eval.Form) {
	plain, lacks := plainCollet(k)
	if plain == model.No {
		a.Clear(finding.Margin{}, "")
		return
	}
	lim, ok := Need(a, eval.LimitsOf(f.Feature.Depth.V.Size, k.Part.Build.Recipe.General, f.Feature.Item, "depth"))
	if !ok {
		return
	}
	most := a.Limit("creep_limits")
	if lim.Width() >= most-0.0005 {
		a.Clear(Room(round(lim.Width()), most), "the limits of the depth of "+f.Name())
		return
	}
	if plain == model.NotKnown {
		a.Lack(lacks...)
		return
	}
	m := a.Say(lastMount(k)+"+"+k.ToolPath(), k.Place("holder", "tool"),
		"%s of %s cuts its full width in %s, which holds it by friction alone, and the depth of %s has limits %s apart: usually it creeps out; leave 0.2 mm on the floor for a last cut",
		k.ToolPath(), mm(k.Choice.Tool.Size), lastMount(k), f.Name(), mm(round(lim.Width())))
	m.Margin = Room(round(lim.Width()), most)
}

// plainCollet says whether the tool is held by the friction of a collet alone.
func plainCollet(k *eval.Cut) (model.Answer, []model.Lack) {
	n := len(k.Choice.Mounts)
	if n == 0 || k.Choice.Mounts[n-1].Collets == nil {
		return model.No, nil
	}
	system := k.Choice.Mounts[n-1].Collets.System.V
	if h := k.Stack.Holder; h != nil {
		switch holds, ok := h.HoldsAgainstPull.Get(); {
		case ok && holds:
			return model.No, nil
		case !ok && !strings.HasPrefix(system, "ER"):
			return model.NotKnown, h.HoldsAgainstPull.Missing()
		}
	}
	return model.Yes, nil
}
