package sheet

import (
	"fmt"
	"strconv"
	"strings"
)

// Every part, set-up and operation of a sheet has an id, by which the list on the front page leads
// to it, and by which others may name it.

// slug makes an id of words: what is no letter of the plain alphabet and no digit becomes a stroke.
func slug(words string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(words) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
		if b.Len() >= 60 {
			break
		}
	}
	return strings.TrimSuffix(b.String(), "-")
}

// mark gives the last block an id made of words, another than all before it.
func (m *maker) mark(words string) {
	if m.ids == nil {
		m.ids = map[string]bool{}
	}
	id := slug(words)
	for n := 2; id == "" || m.ids[id]; n++ {
		id = strings.TrimPrefix(slug(words)+"-"+strconv.Itoa(n), "-")
	}
	m.ids[id] = true
	m.page.Blocks[len(m.page.Blocks)-1].ID = id
}

// contents fills the list on the front page with what comes after it.
func (m *maker) contents() {
	p := m.page
	var list *Block
	part := ""
	for i := range p.Blocks {
		b := &p.Blocks[i]
		switch {
		case b.Kind == Contents:
			list = b
		case list == nil:
		case b.Kind == Part:
			part = b.ID
		case b.Kind == Heading && b.Level == 1 && part != "":
			list.Rows = append(list.Rows, []string{b.Words, part, "part"})
		case b.ID == "":
		case b.Kind == Heading && m.ids[b.ID]:
			list.Rows = append(list.Rows, []string{b.Words, b.ID, "set"})
		case b.Kind == Heading:
			list.Rows = append(list.Rows, []string{b.Words, b.ID, "part"})
		case b.Kind == Tick && part != "":
			list.Rows = append(list.Rows, []string{b.Words, b.ID, "op"})
		}
	}
}

// contents writes the list: of each part a fold with its set-ups and operations, open where there is
// but one part.
func (k *Block) contents(b *strings.Builder) {
	if len(k.Rows) == 0 {
		return
	}
	parts := 0
	for _, r := range k.Rows {
		if r[2] == "part" && strings.HasPrefix(r[1], "part-") {
			parts++
		}
	}
	link := func(r []string) string { return fmt.Sprintf("<a href=\"#%s\">%s</a>", esc(r[1]), esc(r[0])) }
	b.WriteString("<ul class=\"contents\">\n")
	for i := 0; i < len(k.Rows); {
		r := k.Rows[i]
		end := i + 1
		for end < len(k.Rows) && k.Rows[end][2] != "part" {
			end++
		}
		if end == i+1 {
			fmt.Fprintf(b, "<li>%s</li>\n", link(r))
			i = end
			continue
		}
		open := ""
		if parts == 1 {
			open = " open"
		}
		fmt.Fprintf(b, "<li><details%s><summary>%s</summary><ul>\n", open, link(r))
		for _, x := range k.Rows[i+1 : end] {
			fmt.Fprintf(b, "<li class=\"%s\">%s</li>\n", x[2], link(x))
		}
		b.WriteString("</ul></details></li>\n")
		i = end
	}
	b.WriteString("</ul>\n")
}

// listed writes the list for those who have no links.
func (k *Block) listed(b *strings.Builder) {
	for _, r := range k.Rows {
		in := map[string]string{"set": "  ", "op": "    "}[r[2]]
		fmt.Fprintf(b, "%s- %s\n", in, md(r[0]))
	}
	b.WriteString("\n")
}
