package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "boring-bar-too-slender",
	Title: "the boring bar stands out too far for its thickness",
	Why: `A bar is as springy as the cube of what stands out. Beyond some four diameters a steel bar chatters and bores a bell mouth.
A thicker bar, a larger pilot hole, a reamer, or boring from both ends does better.`,
	Rows:      []string{"A18"},
	Source:    []string{"four diameters of a steel bar: Walter, boring bars; six of a carbide one: makers' pages (they differ, 6 to 10)"},
	Limits:    []string{"slender_steel_bar", "slender_carbide_bar"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     deepBore("36"),
	Sound:     deepBore("30"),
	OnCut:     barInHeadTooSlender,
	OnTurn:    boringBarTooSlender,
})

// deepBore bores so deep with a bar of 8 mm.
func deepBore(deep string) string {
	s := replaced(exampleBored("11"), "from     = 40\n    diameter = 14", "from     = { right = "+deep+" }\n    diameter = 14")
	return replaced(s, "depth    = 20", "depth    = 40")
}

func boringBarTooSlender(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if !oneOf(k.Choice.By, "boring", "planing") || c == nil || c.Kind != "boring_bar" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong == "" {
			slenderBar(a, c, w.Target, w.X1-w.X0, k.Place("tool", "makes"))
		}
	}
}

// barInHeadTooSlender asks the same of a bar in a boring head. It stands out at
// least as far as the bore is deep.
func barInHeadTooSlender(k *eval.Cut, a *Ask) {
	if !k.BoresWithHead() || k.Hold.Unplayed != "" || k.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong != "" || !w.Facing {
			continue
		}
		slenderBar(a, k.Choice.Tool.Cutter, w.Target, w.Depth, k.Place("tool", "makes"))
	}
}

func slenderBar(a *Ask, c *model.Cutter, made eval.Target, depth float64, at text.Place) {
	limit, name := a.Limit("slender_steel_bar"), "slender_steel_bar"
	if c.Of.V == "carbide" {
		limit, name = a.Limit("slender_carbide_bar"), "slender_carbide_bar"
	}
	d, ok := Need(a, c.Diameter)
	thick, single := d.Nearest(0)
	if !ok || !single || thick <= 0 {
		return
	}
	ratio := depth / thick
	if ratio <= limit+1e-6 {
		a.Clear(Bound(ratio, limit, "diameters"), c.Path()+" in "+made.Name())
		return
	}
	f := a.Say(c.Path()+"+"+made.Name(), at, "%s is %s thick and stands at least %s mm out to bore %s: %s diameters; usually %s at most (%s)",
		c.Path(), mm(thick), figure(round(depth)), made.Name(), tenthUp(ratio), figure(limit), name)
	f.Margin = Bound(ratio, limit, "diameters")
}
