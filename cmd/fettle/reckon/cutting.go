package reckon

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/eval/reckon/cutting"
	"fettle/schema"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Subject{
	Name:  "cutting",
	Title: "speed, feed, time, force, torque and power of a cut; its finish",
	Words: []Want{{Name: "PROCESS", Kind: OneOf, Of: []string{"turning", "milling", "drilling", "reaming", "tapping", "slitting", "parting"}, Needed: true, Says: "what is done"}},
	Flags: []Want{
		{Name: "material", Kind: Text, Needed: true, Says: "metal that is cut, as in mild steel, brass, 6082"},
		{Name: "diameter", Kind: Length, Least: 0.1, Most: 1000, Says: "of the work when turning or parting, else of the cutter"},
		{Name: "thread", Kind: Text, Says: "of tapping, in place of --diameter: M6"},
		{Name: "hole", Kind: Length, Least: 0.1, Most: 100, Says: "of tapping: the hole (left out: the tables' drill)"},
		{Name: "tool", Kind: OneOf, Of: []string{"HSS", "carbide"}, Says: "what cuts (left out: HSS)"},
		{Name: "speeds", Kind: Wholes, Least: 1, Most: 100000, Says: "rev/min that the machine has (left out: the shop's machine)"},
		{Name: "speed", Kind: Number, Least: 0.1, Most: 2000, Says: "m/min wanted at the edge (left out: the tables' pick)"},
		{Name: "feed", Kind: Length, Least: 0.001, Most: 5, Says: "a turn; milling and slitting: a tooth"},
		{Name: "teeth", Kind: Whole, Least: 1, Most: 300, Says: "of the cutter"},
		{Name: "depth", Kind: Length, Least: 0.001, Most: 200, Says: "of cut; milling: along the cutter"},
		{Name: "width", Kind: Length, Least: 0.001, Most: 500, Says: "of cut; milling: across the cutter"},
		{Name: "length", Kind: Length, Least: 0.01, Most: 10000, Says: "that is fed, for the time"},
		{Name: "nose", Kind: Length, Least: 0.01, Most: 50, Says: "radius of a turning tool's nose, for the finish"},
		{Name: "grade", Kind: Whole, Least: 1, Most: 18, Says: "of ISO 286 that is wanted: whether the process usually reaches it"},
		{Name: "ra", Kind: Number, Least: 0.01, Most: 100, Says: "roughness Ra that is wanted, micrometres: whether the process usually reaches it"},
		{Name: "share", Kind: Number, Least: 0.1, Most: 1, Says: "of the motor's power that reaches the spindle (left out: 0.75)"},
	},
	Examples: [][]string{{"turning", "--material", "brass", "--diameter", "20", "--depth", "1"},
		{"drilling", "--material", "6082", "--diameter", "6", "--length", "15"},
		{"tapping", "--material", "mild steel", "--thread", "M6"},
		{"milling", "--material", "6082", "--diameter", "10", "--teeth", "4"}},
	No:     "even the slowest speed of the machine is too fast for the tables",
	Answer: answerCutting,
})

// cutPage is a cut as it was asked for.
type cutPage struct {
	Ask
	process, tool string
	metal         model.Material
	diameter      float64
	revs, feed    float64 // 0: not known; feed a turn or a tooth
	perTooth      bool
	out           Answer
}

// the row of the tables of speeds, and of feeds, for a process.
var (
	speedRow = map[string]string{"slitting": "slitting_saw", "tapping": "tapping_machine"}
	feedRow  = map[string]string{"slitting": "slitting_saw", "turning": "turning_finish", "milling": "milling_end"}
)

func answerCutting(a Ask) (Answer, error) {
	c := cutPage{Ask: a, process: a.Text("PROCESS"), tool: "HSS"}
	if t := a.Text("tool"); t != "" {
		c.tool = t
	}
	var ok bool
	if c.metal, ok = handbook.Material(a.Text("material")); !ok {
		if near := schema.Near(a.Text("material"), handbook.MaterialNames()); near != "" {
			return Answer{}, fmt.Errorf("--material %s is not in the handbook; %s is near", quoted(a.Text("material")), near)
		}
		return Answer{}, fmt.Errorf("--material %s is not in the handbook: name it as in brass, mild steel, 6082 or cast iron", quoted(a.Text("material")))
	}
	c.perTooth = c.process == "milling" || c.process == "slitting"
	thread, err := c.size()
	if err != nil {
		return Answer{}, err
	}
	if err := c.turns(); err != nil {
		return Answer{}, err
	}
	if err := cmpErr(c.feeds(thread), c.time(thread), c.forces(thread), c.finish()); err != nil {
		return Answer{}, err
	}
	c.reaches()
	c.out.Caution = "Speeds, feeds and forces are starting points out of tables that differ: the marks on the tool and the manual of the machine go first. " +
		"A worn edge pushes harder. Wear eye protection; never measure, brush or reach in while it turns."
	return c.out, nil
}

func (c *cutPage) say(format string, args ...any) {
	c.out.Says = append(c.out.Says, fmt.Sprintf(format, args...))
}
func (c *cutPage) step(format string, args ...any) {
	c.out.Steps = append(c.out.Steps, fmt.Sprintf(format, args...))
}
func (c *cutPage) value(name string, x float64, unit, from string) {
	c.out.Values = append(c.out.Values, figure(name, x, unit, from))
}
func (c *cutPage) source(s string) {
	if !slices.Contains(c.out.Sources, s) {
		c.out.Sources = append(c.out.Sources, s)
	}
}

// size takes the diameter, from the thread when tapping.
func (c *cutPage) size() (t drawing.Thread, err error) {
	words := c.Text("thread")
	var ok bool
	c.diameter, ok = c.Length("diameter")
	switch {
	case c.process == "tapping" && words == "":
		return t, fmt.Errorf("tapping wants --thread, as in M6 or 1/4-20 UNC")
	case c.process != "tapping" && words != "":
		return t, fmt.Errorf("--thread is of tapping, not of %s", c.process)
	case c.process != "tapping" && !ok:
		return t, fmt.Errorf("%s wants --diameter, of the %s", c.process, map[bool]string{true: "work", false: "cutter"}[c.process == "turning" || c.process == "parting"])
	case c.process != "tapping":
		return t, nil
	}
	if t, err = drawing.ParseThread(words); err != nil {
		return t, err
	}
	t, _ = handbook.FillThread(t)
	if t.Diameter < 0.5 || t.Pitch <= 0 || t.Diameter > 100 {
		return t, fmt.Errorf("%s is not in the tables: write its diameter and pitch, up to 100 mm", quoted(words))
	}
	c.diameter = t.Diameter
	return t, nil
}

// turns picks the speed of the spindle.
func (c *cutPage) turns() error {
	process := c.process
	if r := speedRow[process]; r != "" {
		process = r
	}
	row, known := handbook.Speed(process, c.tool, c.metal.Group)
	v, given := c.Number("speed")
	from := "--speed"
	if !given {
		if v, from = row.Pick, "the tables' pick"; !known {
			c.say("The tables have no speed for %s of %s with %s: say --speed.", c.process, c.metal.Name, c.tool)
			return nil
		}
	}
	want := cutting.Revs(v, c.diameter)
	c.step("Turns: 1000 x %s / (pi x %s) = %s rev/min.", plain(v), millimetres(c.diameter), round(want, 0))
	s, owner, err := c.machine()
	if err != nil {
		return err
	}
	pick, ok := cutting.Pick(s, v, c.diameter, 0)
	switch {
	case !ok:
		c.revs = want
		c.say("%s %s with %s at %s m/min: turn at %s rev/min.", capital(c.process), c.metal.Name, c.tool, plain(v), round(want, 0))
	case pick.TooFast:
		c.revs, c.out.No = pick.Revs, true
		c.say("Even the slowest of %s, %s rev/min, is too fast: %s m/min at the edge where %s is wanted.", owner, round(pick.Revs, 0), round(pick.Speed, 1), plain(v))
	default:
		c.revs = pick.Revs
		c.say("%s %s with %s: turn at %s rev/min, of %s; that is %s m/min at the edge, where %s is wanted at most.", capital(c.process), c.metal.Name, c.tool, round(pick.Revs, 0), owner, round(pick.Speed, 1), plain(v))
	}
	c.value("turns", c.revs, "rev/min", map[bool]string{true: owner, false: "worked out"}[ok])
	c.value("speed at the edge", cutting.Speed(c.revs, c.diameter), "m/min", "worked out")
	c.value("speed wanted", v, "m/min", from)
	if lo, hi, n := printedSpread(process, c.tool, c.metal.Group); n > 0 {
		c.say("Printed speeds for it run from %s to %s m/min (%d printed); those of large machines are the high ones.", round(lo, 1), round(hi, 1), n)
		c.value("speed printed, least", lo, "m/min", "the tables")
		c.value("speed printed, most", hi, "m/min", "the tables")
	}
	if !given {
		c.source("speed: the handbook's cautious pick among the printed ones")
	}
	return nil
}

// printedSpread gives the least and the most of the printed speeds.
func printedSpread(process, tool, group string) (lo, hi float64, n int) {
	lo = math.Inf(1)
	rows := handbook.PrintedSpeeds(process, tool, group)
	for _, r := range rows {
		lo, hi = math.Min(lo, r.Least), math.Max(hi, r.Most)
	}
	return lo, hi, len(rows)
}

// machine gives the speeds at hand and whose they are; none is no error.
func (c *cutPage) machine() (model.Speeds, string, error) {
	if list, ok := c.Wholes("speeds"); ok {
		var s model.Speeds
		for _, n := range list {
			s.List = append(s.List, float64(n))
		}
		slices.Sort(s.List)
		return s, "--speeds", nil
	}
	shop, ok := c.Shop()
	if !ok {
		return model.Speeds{}, "", nil
	}
	kinds := []string{"mill", "drill_press"}
	if c.process == "turning" || c.process == "parting" {
		kinds = []string{"lathe"}
	} else if c.process == "milling" || c.process == "slitting" {
		kinds = kinds[:1]
	}
	var names []string
	var s model.Speeds
	for _, i := range c.Things(kinds...) {
		for _, m := range shop.Machines {
			if m.Item == i {
				if v, ok := m.Speeds.Get(); ok {
					s, names = v, append(names, i.Path())
				}
			}
		}
	}
	if len(names) > 1 {
		return s, "", fmt.Errorf("the shop has %s: pick one with --with %s, or say --speeds", and(names), names[0])
	}
	return s, strings.Join(names, ""), nil
}

// feeds says what is printed, and takes the one given.
func (c *cutPage) feeds(t drawing.Thread) error {
	var given bool
	c.feed, given = c.Length("feed")
	if c.process == "tapping" {
		if given {
			return fmt.Errorf("--feed: a tap feeds by its pitch, %s mm a turn", millimetres(t.Pitch))
		}
		c.feed = t.Pitch
		return nil
	}
	process := c.process
	if r := feedRow[process]; r != "" {
		process = r
	}
	f, err := cutting.FeedFor(process, c.tool, c.metal.Group, c.diameter)
	if err != nil {
		return err
	}
	each := map[bool]string{true: "a tooth", false: "a turn"}[c.perTooth]
	if f.None() {
		c.say("No feed is printed here for it.")
		return nil
	}
	kind := map[string]string{"turning": " for a finishing cut"}[c.process]
	c.say("Printed feeds for it%s run from %s to %s mm %s.", kind, round(f.Lo, 3), round(f.Hi, 3), each)
	c.value("feed printed, least", f.Lo, "mm", "the tables")
	c.value("feed printed, most", f.Hi, "mm", "the tables")
	if !given {
		c.feed = f.Lo + (f.Hi-f.Lo)/4
		c.say("Reckoned with %s mm %s, a quarter of the way up; --feed says another.", round(c.feed, 3), each)
		c.value("feed taken", c.feed, "mm", "worked out")
	}
	for _, s := range f.Says {
		c.source("feed: " + s.Source)
		if len(c.out.Sources) > 3 {
			break
		}
	}
	return nil
}

// time works out the rate and the time.
func (c *cutPage) time(t drawing.Thread) error {
	if c.feed <= 0 || c.revs <= 0 {
		return nil
	}
	feed := drawing.Feed{Kind: drawing.PerTurn, Rate: c.feed}
	teeth, ok := c.Whole("teeth")
	if c.perTooth {
		if !ok {
			return fmt.Errorf("%s wants --teeth, of the cutter", c.process)
		}
		feed.Kind = drawing.PerTooth
		c.step("Feed: %s x %s x %d = %s mm/min.", round(c.feed, 4), round(c.revs, 1), teeth, round(c.feed*c.revs*float64(teeth), 1))
	} else {
		c.step("Feed: %s x %s = %s mm/min.", round(c.feed, 4), round(c.revs, 1), round(c.feed*c.revs, 1))
	}
	rate, _ := cutting.PerMinute(feed, c.revs, teeth)
	c.value("feed rate", rate, "mm/min", "worked out")
	length, ok := c.Length("length")
	if !ok {
		c.say("That feeds %s mm a minute.", round(rate, 1))
		return nil
	}
	minutes, _ := cutting.Minutes(length, rate)
	c.say("That feeds %s mm a minute; %s takes %s min.", round(rate, 1), c.Says(length), round(minutes, 2))
	c.step("Time: %s / %s = %s min.", millimetres(length), round(rate, 1), round(minutes, 3))
	c.value("time", minutes, "min", "worked out")
	return nil
}
