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

func (k *Block) contents(b *strings.Builder) {
	if len(k.Rows) == 0 {
		return
	}
	b.WriteString("<ul class=\"contents\">\n")
	for _, r := range k.Rows {
		fmt.Fprintf(b, "<li class=\"%s\"><a href=\"#%s\">%s</a></li>\n", r[2], esc(r[1]), esc(r[0]))
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
