package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/fatih/color"

	"fettle/schema/finding"
	"fettle/schema/model"
)

// Pen says how text is drawn.
type Pen struct{ Colour bool }

func (p Pen) level(l finding.Level) string {
	word := strings.ToUpper(l.String())
	if !p.Colour {
		return word
	}
	c := color.New(color.Bold, map[finding.Level]color.Attribute{finding.Danger: color.FgRed, finding.Stop: color.FgMagenta,
		finding.Scrap: color.FgYellow, finding.Advice: color.FgCyan}[l])
	c.EnableColor()
	return c.Sprint(word)
}

func (p Pen) strong(s string) string {
	if !p.Colour {
		return s
	}
	c := color.New(color.Bold)
	c.EnableColor()
	return c.Sprint(s)
}

// page writes lines and keeps none of the errors: a broken pipe ends the process by itself.
type page struct {
	w   io.Writer
	pen Pen
}

func (p page) line(indent int, s string) {
	fmt.Fprintf(p.w, "%s%s\n", strings.Repeat(" ", indent), s)
}

func (p page) para(indent int, s string) {
	for _, l := range wrap(safe(s), wide-indent) {
		p.line(indent, l)
	}
}

// hang writes a paragraph behind a word, its further lines under the first.
func (p page) hang(indent int, head, s string, under int) {
	for i, l := range wrap(safe(s), wide-under) {
		if i == 0 {
			pad := max(under-indent-len([]rune(head)), 1)
			p.line(indent, head+strings.Repeat(" ", pad)+l)
			continue
		}
		p.line(under, l)
	}
}

// Text writes the report of one recipe against one shop, in 80 columns.
func Text(w io.Writer, c *Checked, pen Pen) {
	p := page{w, pen}
	p.head(c)
	p.findings(c)
	if c.Result == nil {
		return
	}
	p.questions(c)
	p.chosen(c)
	p.tightest(c)
	p.unknown(c)
	p.unplayed(c)
}

func (p page) head(c *Checked) {
	title := c.Recipe
	if c.Build != nil && c.Build.Recipe.Item != nil {
		name := c.Build.Recipe.Title
		if name == "" {
			name = c.Build.Recipe.Item.Label
		}
		title = name + " (" + c.Recipe + ")"
	}
	p.line(0, p.pen.strong(safe(title)))
	switch {
	case !c.Read:
		p.line(0, "not judged: a file could not be read")
		return
	case c.Build.Shop.Label == "" && len(c.Build.Shop.All) > 0:
		p.line(0, "against no shop but the things that the recipe itself brings")
	case c.Build.Shop.Label == "" && c.Shop == "":
		p.line(0, "against no shop: nothing is known of machines and tools")
	default:
		shop := c.Build.Shop.Title
		if shop == "" {
			shop = c.Build.Shop.Label
		}
		p.para(0, "against "+shop+" ("+c.Shop+")")
	}
	parts, setups, ops := c.Counts()
	asked, open := c.verdicts()
	says := fmt.Sprintf("%s, %s, %s made on paper; %s put",
		plural(parts, "part", "parts"), plural(setups, "holding", "holdings"), plural(ops, "operation", "operations"),
		plural(asked, "question", "questions"))
	if open > 0 {
		says += fmt.Sprintf(", %d of them open for want of a fact", open)
	}
	p.para(0, says)
	p.para(0, tally(c))
}

// tally says in a line how many findings there are of each level.
func tally(c *Checked) string {
	count := map[finding.Level]int{}
	for _, f := range c.Findings {
		count[f.Level]++
	}
	if len(c.Findings) == 0 {
		return "Nothing was found against it. What was asked is all that was checked."
	}
	var words []string
	for l := finding.Danger; l >= finding.Advice; l-- {
		if count[l] > 0 {
			words = append(words, fmt.Sprintf("%d %s", count[l], l))
		}
	}
	return "Found: " + strings.Join(words, ", ")
}

func (p page) findings(c *Checked) {
	part := "\x00"
	for i := range c.Findings {
		f := &c.Findings[i]
		label := ""
		if len(f.Spots) > 0 {
			label = f.Spots[0].Part
		}
		if label != part {
			part = label
			p.line(0, "")
			if label != "" {
				p.line(0, p.pen.strong("Part "+short(safe(label))))
			}
		} else {
			p.line(0, "")
		}
		p.finding(c, f)
	}
}

func where(s finding.Spot) string {
	var w []string
	for _, x := range []string{s.SetUp, s.Step} {
		if x != "" {
			w = append(w, x)
		}
	}
	return strings.Join(w, " › ")
}

// whole is a spot from the part down.
func whole(s finding.Spot) string {
	w := where(s)
	switch {
	case w != "" && s.Part != "":
		return s.Part + " › " + w
	case s.Part == "":
		return w
	}
	return s.Part
}

const indent = 2 // of the head of a finding
const body = 4   // of what it says

func (p page) finding(c *Checked, f *finding.Finding) {
	head := p.pen.level(f.Level)
	if len(f.Spots) > 0 && where(f.Spots[0]) != "" {
		head += "  " + safe(where(f.Spots[0]))
	}
	p.line(indent, head)
	says := f.Says
	if f.Judgement == finding.Thumb && !strings.Contains(says, "usually") && !strings.HasPrefix(f.Rule, "house_rule ") {
		says = "usually a trouble: " + says
	}
	p.para(body, stopped(upper(says)))
	if m := f.Margin; m.Unit != "" && m.Wants != 0 {
		word := "at least"
		if m.Less {
			word = "at most"
		}
		p.para(body, fmt.Sprintf("Has %s %s, wants %s %s %s.", model.Figure(m.Has), m.Unit, word, model.Figure(m.Wants), m.Unit))
	}
	if f.Judgement == finding.Thumb {
		if ls := limitsFor(f); len(ls) > 0 {
			p.para(body, "A rule of thumb: the shop may set "+strings.Join(ls, " or ")+" in rules_of_thumb.")
		}
	}
	p.source(c, f)
	for _, n := range f.Also {
		m := c.Build.Sources.Mark(n.Place)
		if m.Line > 0 {
			p.para(body, fmt.Sprintf("See %s line %d: %s.", m.File, m.Line, n.Says))
		}
	}
	if len(f.Spots) > 1 {
		var more []string
		for _, s := range f.Spots[1:] {
			more = append(more, where(s))
		}
		p.para(body, "The same stops "+strings.Join(more, "; ")+".")
	}
	if caution := cautionOf(f.Rule); caution != "" && f.Level == finding.Danger {
		p.para(body, "Caution: "+caution)
	}
	p.line(body, "["+f.Rule+"]")
}

// stopped ends a sentence that does not end by itself.
func stopped(s string) string {
	if strings.HasSuffix(s, "?") || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "!") {
		return s
	}
	return s + "."
}

func upper(s string) string {
	// A sentence that begins with a path keeps it as it is written.
	word, _, _ := strings.Cut(s, " ")
	if s == "" || strings.ContainsAny(word, "._[") {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// source shows the line of the file, with what the finding is about between pointers.
func (p page) source(c *Checked, f *finding.Finding) {
	m := c.Build.Sources.Mark(f.Place)
	if m.Line == 0 {
		return
	}
	line := []rune(c.Build.Sources.Line(m.File, m.Line))
	from := min(max(m.Column-1, 0), len(line))
	to := min(from+m.Length, len(line))
	shown := safe(strings.TrimLeft(string(line[:from]), " \t")) + "»" + safe(string(line[from:to])) + "«" +
		safe(strings.TrimRight(string(line[to:]), " \t\r"))
	if r := []rune(shown); len(r) > 200 {
		shown = string(r[:200]) + "…"
	}
	p.line(body, fmt.Sprintf("%s line %d", safe(m.File), m.Line))
	p.line(body+2, shown)
}

func (p page) questions(c *Checked) {
	if len(c.Result.Questions) == 0 {
		return
	}
	p.line(0, "")
	p.line(0, p.pen.strong("To ask at the machine"))
	for _, q := range c.Result.Questions {
		p.para(2, whole(q.Spot))
		p.para(4, upper(q.Asks))
		if len(q.For) > 0 {
			p.para(4, "It could be settled here with "+strings.Join(q.For, ", ")+".")
		}
	}
}

func (p page) chosen(c *Checked) {
	if len(c.Chosen) == 0 {
		return
	}
	p.line(0, "")
	p.line(0, p.pen.strong("Chosen, where the recipe leaves it open"))
	for i := 0; i < len(c.Chosen); {
		spot := c.Chosen[i].Spot
		var words []string
		for ; i < len(c.Chosen) && c.Chosen[i].Spot == spot; i++ {
			words = append(words, c.Chosen[i].What+" "+c.Chosen[i].Item)
		}
		p.para(2, whole(spot))
		p.para(4, strings.Join(words, "; "))
	}
	p.line(2, "Why")
	var order []string
	why := map[string][]string{}
	for _, ch := range c.Chosen {
		if why[ch.Why] == nil {
			order = append(order, ch.Why)
		}
		if !slices.Contains(why[ch.Why], ch.What) {
			why[ch.Why] = append(why[ch.Why], ch.What)
		}
	}
	for _, w := range order {
		p.para(4, strings.Join(why[w], ", ")+": "+w)
	}
}

func (p page) tightest(c *Checked) {
	if len(c.Result.Tightest) == 0 {
		return
	}
	p.line(0, "")
	p.line(0, p.pen.strong("Tightest of what passes"))
	for _, t := range c.Result.Tightest {
		m := t.Margin
		left := m.Has - m.Wants
		word := "wants"
		if m.Less {
			left, word = -left, "may be"
		}
		p.para(2, fmt.Sprintf("%s %s to spare: %s", model.Figure(left), m.Unit, t.What))
		p.para(4, fmt.Sprintf("has %s, %s %s %s; %s [%s]", model.Figure(m.Has), word, model.Figure(m.Wants), m.Unit, whole(t.Spot), t.Rule))
	}
}

const mostUnknown = 10

func (p page) unknown(c *Checked) {
	us := c.Result.Unknown
	if len(us) == 0 {
		return
	}
	p.line(0, "")
	p.line(0, p.pen.strong("Worth measuring next, by how many questions it would settle"))
	for i, u := range us {
		if i == mostUnknown {
			p.line(2, fmt.Sprintf("and %d more", len(us)-mostUnknown))
			break
		}
		p.hang(2, fmt.Sprintf("%4d", u.Settles), u.Fact, 8)
	}
}

func (p page) unplayed(c *Checked) {
	if len(c.Result.Unplayed) == 0 {
		return
	}
	p.line(0, "")
	p.line(0, p.pen.strong("Not made on paper, so not judged"))
	for _, u := range c.Result.Unplayed {
		p.para(2, whole(u.Spot)+": "+u.Why)
	}
}
