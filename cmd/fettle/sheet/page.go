package sheet

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/cmd/fettle/report"
	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/rules"
	"fettle/schema/beside"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Wanted says what goes on a sheet.
type Wanted struct {
	Part     string // one part alone; "" all
	On       string // the day, year-month-day; "" is left blank
	Pictures bool
}

// before is how every sheet begins.
const before = "This sheet says what was checked on paper, and never that something is safe. The manual of the machine, local codes and licensed practice come first. " +
	"Look at every set-up with your own eyes, and turn the spindle once by hand before you switch on."

// Make puts on a page all that is known of a checked recipe. The error says what there is
// instead of the part that was asked for.
func Make(c *report.Checked, w Wanted) (*Page, error) {
	if c.Result == nil {
		return nil, errors.New("the recipe could not be read; fettle check " + c.Recipe + " says why")
	}
	t := c.Result.Trace
	m := &maker{c: c, w: w, page: &Page{Title: name(c), Stamp: stampOf(c.Build, w.On)}}
	var parts []*eval.PartTrace
	var names []string
	for _, p := range t.Makings() {
		names = append(names, p.Part.Label)
		if w.Part == "" || w.Part == p.Part.Label {
			parts = append(parts, p)
		}
	}
	if len(parts) == 0 {
		return nil, fmt.Errorf("there is no part %q; there are %s", w.Part, strings.Join(names, ", "))
	}
	m.front(parts)
	for _, p := range parts {
		if err := m.part(p); err != nil {
			return nil, err
		}
	}
	m.end()
	m.contents()
	if err := m.draw(); err != nil {
		return nil, err
	}
	return m.page, nil
}

// later is a drawing still to be made, for the empty block that holds its place.
type later struct {
	draw func() ([]Block, error)
	done []Block
	err  error
}

// later holds a place on the page for what is drawn when all else stands there.
func (m *maker) later(draw func() ([]Block, error)) {
	m.page.add(Block{Kind: Later})
	m.drawings = append(m.drawings, later{draw: draw})
}

// draw makes the drawings, several at a time, and puts them where they belong. The error is that of the
// first that could not be made.
func (m *maker) draw() error {
	beside.Do(len(m.drawings), func(i int) {
		d := &m.drawings[i]
		d.done, d.err = d.draw()
	})
	var all []Block
	next := 0
	for _, b := range m.page.Blocks {
		if b.Kind != Later {
			all = append(all, b)
			continue
		}
		d := &m.drawings[next]
		if d.err != nil {
			return d.err
		}
		all, next = append(all, d.done...), next+1
	}
	m.page.Blocks = all
	return nil
}

type maker struct {
	c    *report.Checked
	w    Wanted
	page *Page
	ids  map[string]bool // of parts, set-ups and operations
	// What is drawn in the end, in the order of the page.
	drawings []later
}

func name(c *report.Checked) string {
	r := &c.Build.Recipe
	switch {
	case r.Title != "":
		return r.Title
	case r.Item != nil:
		return r.Item.Label
	}
	return c.Recipe
}

// front is the first page: what stands in the way, what is made from what, and what to lay out.
func (m *maker) front(parts []*eval.PartTrace) {
	p := m.page
	p.heading(1, "top", p.Title)
	on := "…………………"
	if p.Stamp.On != "" {
		on = p.Stamp.On
	}
	p.para("Made on " + on + " from files with the digest " + p.Stamp.Digest + ".")
	shop := m.c.Build.Shop.Title
	if shop == "" {
		shop = m.c.Build.Shop.Label
	}
	if shop == "" {
		shop = "no shop: nothing is known of machines and tools"
	}
	p.para("The work is made on paper with " + shop + "." + asOf(&m.c.Build.Shop))
	if n := remark(m.c.Build.Recipe.Item); n != "" {
		p.para(sentence(n))
	}
	p.add(Block{Kind: Caution, Words: before})
	if m.w.Pictures {
		p.para("Each operation is drawn as the piece is before its cut: on a mill with the tool where it comes nearest to something, on a lathe with the way of the tip.")
	}
	m.dangers()
	var rows [][]string
	for _, t := range parts {
		rows = append(rows, []string{t.Part.Label, title(t), quantity(t.Part), material(t.Part), m.verdict(t)})
	}
	p.heading(2, "parts", "Parts")
	p.table([]string{"part", "title", "pieces", "material", "what was found"}, rows)
	if m.w.Pictures {
		m.isometric(parts)
	}
	p.add(Block{Kind: Contents})
	m.stock(parts)
	m.cutMap(parts)
	m.tray(parts)
}

func (m *maker) isometric(parts []*eval.PartTrace) {
	for _, t := range parts {
		if t.End == nil {
			continue
		}
		m.later(func() ([]Block, error) {
			d, err := sketch.Alone(title(t), t.End.Piece)
			if err != nil {
				return nil, nil
			}
			return []Block{{Kind: Picture, SVG: d.SVG(), Words: t.Part.Label, Small: true}}, nil
		})
	}
}

// dangers lists what can hurt someone before anything else.
func (m *maker) dangers() {
	for i := range m.c.Findings {
		f := &m.c.Findings[i]
		if f.Level == finding.Danger && m.concerns(f) {
			m.finding(f, nil)
		}
	}
}

func (m *maker) concerns(f *finding.Finding) bool {
	if m.w.Part == "" || len(f.Spots) == 0 {
		return true
	}
	return slices.ContainsFunc(f.Spots, func(s finding.Spot) bool { return s.Part == m.w.Part })
}

// finding puts a finding on the page. At a place of the work it need not be told where it is, but where the
// words are those of another place that it was found at first.
func (m *maker) finding(f *finding.Finding, here *finding.Spot) {
	where := ""
	switch {
	case len(f.Spots) == 0:
	case here == nil:
		where = f.Spots[0].String() + ": "
	case f.Spots[0] != *here && (f.Spots[0].Part != here.Part || f.Spots[0].SetUp != here.SetUp):
		where = "as at " + f.Spots[0].String() + ": "
	}
	b := Block{Kind: Para, Loud: true, Words: strings.ToUpper(f.Level.String()) + "  " + where + sentence(f.Says) + " [" + f.Rule + "]"}
	m.page.add(b)
	if r := rules.Find(f.Rule); r != nil && r.Caution != "" && f.Level == finding.Danger {
		m.page.add(Block{Kind: Caution, Words: r.Caution})
	}
}

func sentence(s string) string {
	if s == "" || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

func quantity(p *eval.Part) string { return fmt.Sprint(p.Part.Quantity.Or(1)) }

func material(p *eval.Part) string {
	if p.Joined() {
		var all []string
		for _, leaf := range p.Leaves() {
			if s := material(leaf); !slices.Contains(all, s) {
				all = append(all, s)
			}
		}
		return strings.Join(all, ", ")
	}
	if !p.Part.Material.Is() {
		return "not known"
	}
	return p.Part.Material.V.Written
}

// verdict counts what was found of a part.
func (m *maker) verdict(t *eval.PartTrace) string {
	count := map[finding.Level]int{}
	for i := range m.c.Findings {
		for _, s := range m.c.Findings[i].Spots {
			if s.Part == t.Part.Label {
				count[m.c.Findings[i].Level]++
				break
			}
		}
	}
	var words []string
	for l := finding.Danger; l >= finding.Advice; l-- {
		if count[l] > 0 {
			words = append(words, fmt.Sprintf("%d %s", count[l], l))
		}
	}
	switch {
	case t.Part.OnlyBought() && len(words) == 0:
		return "bought"
	case t.End == nil && !t.Part.OnlyBought():
		return "not made on paper: " + t.Part.Unplayed
	case len(words) == 0:
		return "nothing against what was asked"
	}
	return strings.Join(words, ", ")
}

// stock lists the raw pieces.
func (m *maker) stock(parts []*eval.PartTrace) {
	var rows [][]string
	for _, t := range parts {
		if t.Start == nil || t.Part.Joined() {
			continue
		}
		b := &t.Part.Blank
		from := "not named"
		if b.Stock != nil {
			from = b.Stock.Item.Path()
		}
		size := [3]string{}
		for i := range 3 {
			size[i] = model.Figure(b.Hi[i] - b.Lo[i])
		}
		say := strings.Join(size[:], " × ") + " mm"
		if b.Round {
			say = section(b, size[1]) + " × " + size[0] + " mm"
		}
		if b.Bar != model.NoFace {
			say = section(b, size[1]) + " mm, still one with the bar"
		}
		rows = append(rows, []string{t.Part.Label, from, say, quantity(t.Part)})
	}
	m.page.heading(2, "stock", "Stock")
	m.page.table([]string{"part", "from", "raw piece", "pieces"}, rows)
}

// section is the section of a bar: round, or across the flats of one that is not.
func section(b *eval.Blank, across string) string {
	if len(b.Profile) == 0 || b.Profile[0].Flats == 0 {
		return "⌀" + across
	}
	z := b.Profile[0]
	flats := model.Figure(tidy(2 * z.Out0 * math.Cos(math.Pi/float64(z.Flats))))
	if z.Flats == 6 {
		return "hexagon " + flats
	}
	return "square " + flats
}

// end is what belongs to the whole build.
func (m *maker) end() {
	p := m.page
	if u := m.c.Result.Unplayed; len(u) > 0 {
		p.heading(2, "unplayed", "Not made on paper, so not checked")
		var rows [][]string
		for _, x := range u {
			rows = append(rows, []string{x.Spot.String(), x.Why})
		}
		p.table([]string{"where", "why"}, rows)
	}
	if len(m.c.Result.Tightest) > 0 {
		p.heading(2, "tight", "Tightest of what passes")
		for _, t := range m.c.Result.Tightest {
			g := t.Margin
			word := "at least"
			if g.Less {
				word = "at most"
			}
			p.add(Block{Kind: Margin, Share: g.Share(), Words: fmt.Sprintf("%s: has %s %s, wants %s %s (%s; %s)",
				t.What, model.Figure(g.Has), g.Unit, word, model.Figure(g.Wants), t.Spot, t.Rule)})
		}
	}
}
