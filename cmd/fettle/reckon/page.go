package reckon

import (
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"fettle/cmd/fettle/report"
)

// wide is how many columns a page has.
const wide = 80

// page collects lines.
type page struct{ lines []string }

func (p *page) line(s string) { p.lines = append(p.lines, strings.TrimRight(s, " ")) }

func (p *page) write(w io.Writer) {
	for _, l := range p.lines {
		fmt.Fprintln(w, l)
	}
}

// gap leaves an empty line, but not at the top.
func (p *page) gap() {
	if len(p.lines) > 0 {
		p.line("")
	}
}

// figureAndUnit is what a line is not broken between; joint stands for the blank there while a
// text is folded. Safe leaves no such sign in a text.
var figureAndUnit = regexp.MustCompile(`([0-9]) (in\b|°C|%|µm|MPa|N\b)`)

const joint = "\ue000"

// fold breaks a text into lines; a word that is longer than a line is broken too.
func fold(s string, columns int) []string {
	var out []string
	for _, l := range report.Wrap(figureAndUnit.ReplaceAllString(report.Safe(s), "$1"+joint+"$2"), columns) {
		r := []rune(strings.ReplaceAll(l, joint, " "))
		for len(r) > columns {
			out, r = append(out, string(r[:columns])), r[columns:]
		}
		out = append(out, string(r))
	}
	return out
}

// para writes a text behind a head, its further lines under the first.
func (p *page) para(indent int, head, s string) {
	under := indent + utf8.RuneCountInString(head)
	for i, l := range fold(s, wide-under) {
		if i > 0 {
			head = strings.Repeat(" ", utf8.RuneCountInString(head))
		}
		p.line(strings.Repeat(" ", indent) + head + l)
	}
}

// hang writes a text in a column beside a word, or below a word that leaves no room.
func (p *page) hang(indent int, head, s string, column int) {
	if indent+utf8.RuneCountInString(head)+2 > column {
		p.para(indent, "", head)
		head = ""
	}
	p.para(indent, head+strings.Repeat(" ", column-indent-utf8.RuneCountInString(head)), s)
}

// text writes an answer as one page of 80 columns.
func (a Answer) text(w io.Writer, all bool, note string) {
	p := &page{}
	for _, s := range a.Says {
		p.para(0, "", s)
	}
	for _, t := range a.Tables {
		p.gap()
		p.table(t, all)
	}
	if len(a.Steps) > 0 {
		p.gap()
		p.line("Step by step:")
		for i, s := range a.Steps {
			p.para(2, fmt.Sprintf("%d. ", i+1), s)
		}
	}
	if len(a.Sources)+len(a.Caution)+len(note) > 0 {
		p.gap()
	}
	for _, s := range a.Sources {
		p.para(0, "Source: ", s)
	}
	if a.Caution != "" {
		p.para(0, "Caution: ", a.Caution)
	}
	if note != "" {
		p.para(0, "Note: ", note)
	}
	p.write(w)
}

// table writes rows in columns. Where they are too wide, the widest column is folded until
// they are not.
func (p *page) table(t Table, all bool) {
	if t.Title != "" {
		p.para(0, "", t.Title+":")
	}
	rows := t.Rows
	cut := 0
	if t.Most > 0 && !all && len(rows) > t.Most {
		cut = len(rows) - t.Most
		from := min(max(t.Around-t.Most/2, 0), cut)
		rows = rows[from : from+t.Most]
	}
	widths := t.widths(rows)
	var head []string
	for _, c := range t.Head {
		head = append(head, c.Name)
	}
	for _, r := range append([][]string{head}, rows...) {
		p.row(t.Head, widths, r)
	}
	if cut > 0 {
		p.line(fmt.Sprintf("  (%d of %d rows are not shown; --all shows them)", cut, len(t.Rows)))
	}
}

const between = 2 // blanks before each column

func (t Table) widths(rows [][]string) []int {
	widths := make([]int, len(t.Head))
	total := 0
	for i, c := range t.Head {
		widths[i] = utf8.RuneCountInString(report.Safe(c.Name))
		for _, r := range rows {
			if i < len(r) {
				widths[i] = min(max(widths[i], utf8.RuneCountInString(report.Safe(r[i]))), wide)
			}
		}
		total += widths[i] + between
	}
	for ; total > wide && len(widths) > 0; total-- {
		w := 0
		for i := range widths {
			if widths[i] > widths[w] {
				w = i
			}
		}
		if widths[w] <= 1 {
			break
		}
		widths[w]--
	}
	return widths
}

func (p *page) row(head []Column, widths []int, cells []string) {
	folded := make([][]string, len(head))
	tall := 1
	for i := range head {
		if i < len(cells) && cells[i] != "" {
			folded[i] = fold(cells[i], widths[i])
			tall = max(tall, len(folded[i]))
		}
	}
	for n := range tall {
		line := ""
		for i, c := range head {
			s := ""
			if n < len(folded[i]) {
				s = folded[i][n]
			}
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(s))
			line += strings.Repeat(" ", between)
			if c.Right {
				line += pad + s
			} else {
				line += s + pad
			}
		}
		p.line(line)
	}
}
