package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// houseRules asks the shop's own rules about a cut: those that look at operations. They are
// asked with what was chosen where the recipe leaves it open.
func (r *Runner) houseRules(k *eval.Cut) []Verdict {
	var vs []Verdict
	for _, h := range r.Build.House {
		if h.LooksAt.V != "operation" || h.When == nil || k.Step.Kind != "operation" {
			continue
		}
		vs = append(vs, r.house(h, k))
	}
	return vs
}

func (r *Runner) house(h *model.HouseRule, k *eval.Cut) Verdict {
	level, ok := finding.ParseLevel(h.Level.V)
	if !ok {
		level = finding.Advice
	}
	rule := &Rule{Name: "house_rule " + h.Label, Level: level, Judgement: finding.Thumb}
	return r.ask(rule, k.Spot, func(a *Ask) {
		answer, lacks := h.When.Eval(func(path []string) model.Value { return asDecided(k, path) })
		switch answer {
		case model.Yes:
			f := a.Say(h.Item.Path(), k.Place(), "%s", h.Says.V)
			f.Also = []finding.Note{{Place: h.Item.At, Says: "the house rule " + h.Label + because(h)}}
		case model.NotKnown:
			a.Lack(lacks...)
		default:
			a.Clear(finding.Margin{}, "")
		}
	})
}

// because is the reason that a house rule gives for itself.
func because(h *model.HouseRule) string {
	if a := h.Item.Attr("because"); a != nil && a.Value.Text != "" {
		return ": " + a.Value.Text
	}
	return ""
}

// asDecided gives an attribute of an operation as the dry run took it.
func asDecided(k *eval.Cut, path []string) model.Value {
	if len(path) == 0 {
		return model.Value{}
	}
	text := func(s string) model.Value { return model.Value{Kind: model.Text, Text: s} }
	c := &k.Choice
	if len(path) == 1 {
		switch path[0] {
		case "cutting":
			if climbs, _ := k.Climbs(); climbs {
				return text("climb")
			}
			return text("conventional")
		case "spindle":
			if c.Reverse {
				return text("reverse")
			}
			return text("forward")
		case "by":
			return text(c.By)
		case "speed":
			if c.Speed > 0 || c.ByHand {
				return model.Value{Kind: model.Number, Num: c.Speed}
			}
		}
	}
	if path[0] == "tool" && len(path) == 2 && c.Tool.Cutter != nil {
		if path[1] == "diameter" && c.Tool.Size > 0 {
			return model.Value{Kind: model.Number, Num: c.Tool.Size}
		}
		return ofItem(c.Tool.Cutter.Item, path[1:])
	}
	if k.Step.Step != nil {
		return ofItem(k.Step.Step.Item, path)
	}
	return model.Value{}
}

func ofItem(i *model.Item, path []string) model.Value {
	name := path[0]
	for _, p := range path[1:] {
		name += "." + p
	}
	if a := i.Attr(name); a != nil {
		return a.Value
	}
	return model.Value{}
}
