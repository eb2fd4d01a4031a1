package sheet

import (
	"fmt"
	"strings"

	"fettle/cmd/fettle/report"
)

// Markdown writes the page without pictures, for a write-up.
func (p *Page) Markdown() string {
	var b strings.Builder
	for i := range p.Blocks {
		p.Blocks[i].markdown(&b)
	}
	return b.String()
}

// marks are the signs that have a meaning in Markdown or HTML; a text of someone else's keeps
// none of it.
var marks = strings.NewReplacer("\\", "\\\\", "`", "\\`", "*", "\\*", "_", "\\_", "[", "\\[", "]", "\\]", "<", "&lt;", ">", "&gt;",
	"#", "\\#", "|", "\\|", "&", "&amp;", "~", "\\~", "!", "\\!")

func md(s string) string { return marks.Replace(report.Safe(s)) }

func (k *Block) markdown(b *strings.Builder) {
	switch k.Kind {
	case Heading:
		fmt.Fprintf(b, "%s %s\n\n", strings.Repeat("#", k.Level), md(k.Words))
	case Para, Margin:
		if k.Loud {
			fmt.Fprintf(b, "**%s**\n\n", md(k.Words))
			return
		}
		fmt.Fprintf(b, "%s\n\n", md(k.Words))
	case Caution:
		fmt.Fprintf(b, "> **Caution.** %s\n\n", md(k.Words))
	case Table, Facts:
		head := k.Head
		if head == nil {
			head = make([]string, len(k.Rows[0]))
		}
		row(b, head)
		b.WriteString(strings.Repeat("|---", len(head)) + "|\n")
		for _, r := range k.Rows {
			row(b, r)
		}
		b.WriteString("\n")
	case Contents:
		k.listed(b)
	case Tick:
		fmt.Fprintf(b, "- [ ] **%s**\n", md(k.Words))
		for _, r := range k.Rows {
			fmt.Fprintf(b, "  - %s: %s\n", md(r[0]), md(r[1]))
		}
		for _, box := range k.boxes() {
			fmt.Fprintf(b, "  - %s: ………… %s\n", md(box), md(k.unit()))
		}
		b.WriteString("\n")
	}
}

func row(b *strings.Builder, cells []string) {
	for _, c := range cells {
		b.WriteString("| " + md(c) + " ")
	}
	b.WriteString("|\n")
}
