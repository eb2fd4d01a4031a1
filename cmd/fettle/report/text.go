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
	fmt.Fprintln(p.w, strings.TrimRight(strings.Repeat(" ", indent)+s, " "))
}

// title writes a heading at the margin.
func (p page) title(s string) {
	for _, l := range wrap(Safe(s), wide) {
		p.line(0, p.pen.strong(l))
	}
}

func (p page) para(indent int, s string) {
	for _, l := range wrap(Safe(s), wide-indent) {
		p.line(indent, l)
	}
}

// hang writes a paragraph behind a word, its further lines under the first. A word that
// leaves no room beside it has a line to itself.
func (p page) hang(indent int, head, s string, under int) {
	if indent+len([]rune(head)) >= under {
		p.line(indent, short(head))
		head = ""
	}
	for i, l := range wrap(Safe(s), wide-under) {
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
	p.accepted(c)
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
	p.title(title)
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
	says := plural(parts, "part", "parts") + ", " + plural(setups, "holding", "holdings") + ", " + plural(ops, "operation", "operations")
	if n := len(c.Result.Unplayed); n > 0 {
		says += fmt.Sprintf("; %s not made on paper (see the end)", plural(n, "place", "places"))
	} else {
		says += " made on paper"
	}
	says += "; " + plural(asked, "question", "questions") + " put"
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
	excused := ""
	if c.Result != nil && c.Result.Excused > 0 {
		excused = "; " + plural(c.Result.Excused, "finding", "findings") + " accepted by concession"
	}
	if len(c.Findings) == 0 {
		if c.Result != nil && len(c.Result.Unplayed) > 0 {
			return "Nothing was found against what was made on paper" + excused + ". What was not made on paper is not checked."
		}
		return "Nothing was found against it" + excused + ". What was asked is all that was checked."
	}
	var words []string
	for l := finding.Danger; l >= finding.Advice; l-- {
		if count[l] > 0 {
			words = append(words, fmt.Sprintf("%d %s", count[l], l))
		}
	}
	return "Found: " + strings.Join(words, ", ") + excused
}

// findings go by part, in the order of the work within each; what is no part's comes first.
func (p page) findings(c *Checked) {
	var labels []string
	of := map[string][]*finding.Finding{}
	for i := range c.Findings {
		f := &c.Findings[i]
		l := partOf(f)
		if of[l] == nil {
			labels = append(labels, l)
		}
		of[l] = append(of[l], f)
	}
	slices.SortStableFunc(labels, func(a, b string) int { return c.turn(a) - c.turn(b) })
	for _, l := range labels {
		p.line(0, "")
		switch {
		case l != "":
			p.title("Part " + l)
		case len(labels) > 1:
			p.title("The files and the build as a whole")
		}
		for i, f := range of[l] {
			if i > 0 {
				p.line(0, "")
			}
			p.finding(c, f)
		}
	}
}

func partOf(f *finding.Finding) string {
	if len(f.Spots) == 0 {
		return ""
	}
	return f.Spots[0].Part
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
		head += "  " + Safe(where(f.Spots[0]))
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
			if s.Part == f.Spots[0].Part && where(s) != "" {
				more = append(more, where(s))
			} else {
				more = append(more, whole(s))
			}
		}
		p.para(body, "The same stops "+strings.Join(more, "; ")+".")
	}
	for _, r := range f.Remedies {
		p.para(body, "Tried on paper, and it cures this: "+stopped(r.Title))
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
	shown := Safe(strings.TrimLeft(string(line[:from]), " \t")) + "»" + Safe(string(line[from:to])) + "«" +
		Safe(strings.TrimRight(string(line[to:]), " \t\r"))
	if r := []rune(shown); len(r) > 200 {
		shown = string(r[:200]) + "…"
	}
	p.line(body, fmt.Sprintf("%s line %d", Safe(m.File), m.Line))
	p.line(body+2, shown)
}

func (p page) questions(c *Checked) {
	if len(c.Result.Questions) == 0 {
		return
	}
	p.line(0, "")
	p.title("To ask at the machine")
	for _, q := range c.Result.Questions {
		p.para(2, whole(q.Spot))
		p.para(4, upper(q.Asks))
		if len(q.For) > 0 {
			p.para(4, "It could be settled here with "+strings.Join(q.For, ", ")+".")
		}
	}
}

func (p page) tightest(c *Checked) {
	if len(c.Result.Tightest) == 0 {
		return
	}
	p.line(0, "")
	p.title("Tightest of what passes")
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
	p.title("Worth measuring next, by how many questions it would settle")
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
	p.title("Not made on paper, so not judged")
	for _, u := range c.Result.Unplayed {
		p.para(2, whole(u.Spot)+": "+u.Why)
	}
}

func (p page) accepted(c *Checked) {
	if len(c.Result.Accepted) == 0 {
		return
	}
	p.line(0, "")
	p.title("Accepted by concession")
	for _, a := range c.Result.Accepted {
		p.para(2, whole(a.Spot)+": "+a.Rule+": "+a.Words())
	}
}
