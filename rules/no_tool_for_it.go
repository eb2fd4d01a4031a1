package rules

import (
	"fmt"
	"strings"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "no-tool-for-it",
	Title: "nothing in the shop makes it",
	Why: `Most lost afternoons begin here: the drill, tap, saw, cutter or machine that the work takes for granted is
not there. What is nearest is named; another size, another way or a tool to make may do.`,
	Rows:      []string{"B15", "D4", "D14", "B4"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleHole(), "diameter = 6", "diameter = 6.25"),
	Sound:     exampleHole(),
	OnCut:     noToolForIt,
	OnTurn:    noToolToTurn,
})

func noToolForIt(k *eval.Cut, a *Ask) {
	if k.Step.Work.Kind != "setup" || k.Choice.ByHand || len(k.Works) == 0 && len(k.Step.Makes) == 0 {
		return
	}
	shop := &k.Part.Build.Shop
	if k.Hold.Choice.NotPlayed == eval.NoMachineHere {
		noMachine(k, shop, a)
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
	if len(k.Step.Makes) == 0 {
		return
	}
	t := k.Step.Makes[0]
	if lacks := lacksOf(k, t); len(lacks) > 0 {
		a.Lack(lacks...)
		return
	}
	if lacks := unsized(k, shop); len(lacks) > 0 {
		a.Lack(lacks...)
		return
	}
	wants, near := wanted(k, t, shop)
	says := fmt.Sprintf("no %s is here to make %s by %s", wants, t.Name(), k.Choice.By)
	if near != "" {
		says += "; the nearest is " + near
	}
	a.Say("tool for "+k.Choice.By+"+"+wants, k.Place("makes", "tool"), "%s", says)
}

// noMachine tells of work for which the shop has no mill. With a lathe nothing is told: much
// can be milled on one, which is not made on paper yet.
func noMachine(k *eval.Cut, shop *model.Shop, a *Ask) {
	want := "mill"
	if k.Step.Work.OnlyHoles() {
		want = "mill or drill press"
	}
	var also []finding.Note
	for _, m := range shop.Machines {
		switch {
		case m.Here() && m.Kind == "lathe":
			return
		case !m.Here() && strings.Contains(want, plainWord(m.Kind)):
			also = append(also, finding.Note{Place: m.State.At, Says: fmt.Sprintf("%s, its state %q", m.Path(), m.State.V)})
		}
	}
	f := a.Say("machine+"+want, k.Place("machine", "makes"), "%s wants a %s, and none is here", k.Part.Label, want)
	f.Also = also
}

// unsized lists the sizes nobody has declared of the tools that do this kind of work: one of
// them may be the one that is wanted.
func unsized(k *eval.Cut, shop *model.Shop) []model.Lack {
	kinds := map[string][]string{
		"drilling": {"drill"}, "reaming": {"reamer"}, "tapping": {"tap"}, "sawing": {"slitting_saw"}, "counterboring": {"counterbore"},
		"milling": {"end_mill", "slot_drill"},
	}[k.Choice.By]
	var out []model.Lack
	for _, c := range shop.Cutters {
		if !c.Here() || !oneOf(c.Kind, kinds...) {
			continue
		}
		if c.Kind == "tap" {
			out = append(out, c.Threads.Missing()...)
			continue
		}
		out = append(out, c.Diameter.Missing()...)
		if c.Kind == "slitting_saw" {
			out = append(out, c.Width.Missing()...)
		}
	}
	return out
}

// lacksOf says what is not known of the feature that no tool was found for: without it,
// nobody can say which tool is wanted.
func lacksOf(k *eval.Cut, t eval.Target) []model.Lack {
	f := t.Form
	if f == nil {
		return nil
	}
	out := append([]model.Lack{}, f.Lacks...)
	switch k.Choice.By {
	case "drilling", "reaming":
		out = append(out, f.Diameter.Missing()...)
	case "tapping":
		out = append(out, f.Feature.Thread.Size.Missing()...)
	case "counterboring":
		out = append(out, f.Feature.Counterbore.Diameter.Missing()...)
	}
	return out
}

// wanted words the tool that is lacking, and the nearest thing there is.
func wanted(k *eval.Cut, t eval.Target, shop *model.Shop) (wants, near string) {
	size := func(kind string, d float64) (string, string) {
		return fmt.Sprintf("%s of %s", plainWord(kind), mm(d)), nearest(shop, kind, d)
	}
	f := t.Form
	switch {
	case k.Choice.By == "drilling" && f != nil:
		return size("drill", k.WantedDiameter(f))
	case k.Choice.By == "reaming" && f != nil:
		return size("reamer", f.Diameter.V)
	case k.Choice.By == "tapping" && f != nil:
		return "tap " + f.Feature.Thread.Size.V.String(), ""
	case k.Choice.By == "sawing" && f != nil:
		return "saw " + mm(f.Width) + " wide", nearestSaw(shop, f.Width)
	case k.Choice.By == "counterboring" && f != nil:
		return size("counterbore", f.Feature.Counterbore.Diameter.V.Nominal)
	case f != nil && f.Tooth != nil && f.Tooth.Throat != nil && k.Choice.By == "milling" && k.Part.Begun(k.Before, f):
		return fmt.Sprintf("hob or tap of the pitch of its worm, %s mm,", figure(round(f.Tooth.Throat.Drive.Pitch))), ""
	case f != nil && f.Rack != nil && f.Rack.Involute && k.Choice.By == "milling":
		return fmt.Sprintf("gear cutter of module %.4g mm, %s deg that goes on to the rack", f.Rack.Gear.Module, figure(f.Rack.Gear.Pressure)), ""
	case f != nil && f.Tooth != nil && f.Tooth.Form == "cycloidal" && k.Choice.By == "milling":
		return fmt.Sprintf("gear cutter of module %.4g mm, cycloidal, for %d teeth", f.Tooth.Module, f.Tooth.Count), ""
	case f != nil && f.Tooth != nil && f.Tooth.Involute && k.Choice.By == "milling" && f.Tooth.Virtual() != f.Tooth.Count:
		return fmt.Sprintf("gear cutter of module %.4g mm, %s deg for %d teeth (%d that lean)", f.Tooth.Wheel.Module, figure(f.Tooth.Wheel.Pressure), f.Tooth.Virtual(), f.Tooth.Count), ""
	case f != nil && f.Tooth != nil && f.Tooth.Involute && k.Choice.By == "milling":
		return fmt.Sprintf("gear cutter of module %.4g mm, %s deg for %d teeth", f.Tooth.Wheel.Module, figure(f.Tooth.Wheel.Pressure), f.Tooth.Count), ""
	case f != nil && k.Choice.By == "milling" && f.Tooth != nil && f.Tooth.Section != nil:
		return "angle cutter of that gap, or fly cutter ground to it,", "" // no cutter with an upright side makes it
	case k.Choice.By == "boring":
		return "boring bar", ""
	case k.Choice.By == "engraving":
		return "pointed tool", ""
	case k.Choice.By == "countersinking":
		return "countersink of that angle and size", ""
	case k.Choice.By == "spotting", k.Choice.By == "centring":
		return "centre drill", ""
	case k.Choice.By == "threading":
		return "die or thread chaser of that size", ""
	case f == nil, f.Feature.Kind == "outside":
		return "milling cutter", ""
	}
	most := f.Width
	if c, ok := f.Feature.Corner.Get(); ok && c > 0 && f.Feature.Kind == "pocket" {
		most = min(most, 2*c)
	}
	return "end mill or slot drill of " + mm(most) + " or less", nearest(shop, "end_mill", most)
}

func plainWord(kind string) string { return strings.ReplaceAll(kind, "_", " ") }

// nearest names the member closest to a size among the tools of a kind that are here.
func nearest(shop *model.Shop, kind string, d float64) string {
	best, path := 0.0, ""
	for _, c := range shop.Cutters {
		if n, ok := c.Diameter.V.Nearest(d); ok && c.Kind == kind && c.Here() && (path == "" || abs(n-d) < abs(best-d)) {
			name := nameIn(c, n)
			best, path = n, eval.Pick{Cutter: c, Size: n, Name: name}.Path()
			if name != "" || c.Unit == drawing.Inch {
				path += " of " + mm(n)
			}
		}
	}
	return path
}

func nameIn(c *model.Cutter, d float64) string {
	if n := c.Diameter.V.Name(d); n != figure(d) {
		return n
	}
	return ""
}

func nearestSaw(shop *model.Shop, w float64) string {
	best, path := 0.0, ""
	for _, c := range shop.Cutters {
		if n, ok := c.Width.Get(); ok && c.Kind == "slitting_saw" && c.Here() && (path == "" || abs(n-w) < abs(best-w)) {
			best, path = n, c.Path()
		}
	}
	if path == "" {
		return ""
	}
	return path + ", " + mm(best) + " wide"
}
