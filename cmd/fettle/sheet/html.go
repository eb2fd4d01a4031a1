package sheet

import (
	"fmt"
	"html"
	"math"
	"strings"

	"fettle/cmd/fettle/report"
)

// style is all the dress of a sheet: black on white, for paper and for a phone. Colour adds
// nothing that is not said in words.
const style = `
body{font:11pt/1.35 sans-serif;color:#000;background:#fff;margin:1em auto;max-width:190mm;padding:0 .6em;overflow-wrap:anywhere}
h1{font-size:17pt;border-bottom:.6mm solid #000;margin:.2em 0 .5em}
h2{font-size:13pt;margin:1em 0 .4em}
table{border-collapse:collapse;width:100%;margin:.4em 0}tr{break-inside:avoid}
td,th{border:.2mm solid #777;padding:.15em .4em;text-align:left;vertical-align:top}
th{border-bottom:.5mm solid #000;overflow-wrap:normal}
td{overflow-wrap:break-word}
figure{margin:.6em 0;break-inside:avoid;overflow-x:auto}
figure svg{width:100%;height:auto;display:block}
figure.small{display:inline-block;width:32%;margin:.3em .3%}
figure.true svg{width:auto;max-width:100%}
figcaption{font-size:9.5pt}
.caution{border:.6mm solid #000;padding:.3em .6em;margin:.5em 0;break-inside:avoid}
.loud{border-left:1.2mm solid #000;padding-left:.5em;font-weight:bold;break-inside:avoid}
.step{border-top:.3mm solid #000;padding:.35em 0;break-inside:avoid}
.step label{font-weight:bold;display:block}
.step input[type=checkbox]{width:5mm;height:5mm;vertical-align:-1mm;margin:0 .5em 0 0}
.step dl{display:grid;grid-template-columns:7em 1fr;margin:.15em 0 0 1em;gap:0 .6em}
.step dt{color:#333}.step dd{margin:0}
.beside{display:flex;flex-wrap:wrap;align-items:flex-start;column-gap:4mm;border-top:.3mm solid #000;break-inside:avoid}.beside .words{flex:1 1 66mm;min-width:0;max-width:100%}.beside td:first-child{white-space:nowrap}.beside .step{border:0}.beside figure{flex:0 1 auto;max-width:100%}
.facts{display:flex;flex-wrap:wrap;margin:.3em 0;border:.2mm solid #777;border-width:.2mm 0}.facts div{display:flex;gap:.6em;width:50%;box-sizing:border-box;padding:.06em .4em}.facts .long{width:100%;order:1}.facts dt{flex:0 0 8.5em;color:#333}.facts dd{margin:0;min-width:0}
.made{display:block;margin:.3em 0 0 2em}
.made input{font:inherit;width:9em;border:.3mm solid #000;padding:.15em}
.bar{border:.3mm solid #000;height:3mm;max-width:60mm;margin:.1em 0 .5em}
.bar i{display:block;height:100%;background:#555}
.contents{list-style:none;padding:0;margin:.4em 0}.contents ul{padding-left:1.2em;columns:2;column-gap:8mm}.contents li{break-inside:avoid}
.contents a{color:#000;line-height:1.65}.contents .set{list-style:circle}.contents .op{margin-left:1em;list-style:none}
@media (max-width:120mm){.facts div{width:100%}.contents ul{columns:1}.contents a{line-height:2.1}table{display:block;overflow-x:auto}figure svg{min-width:150mm}figure.small{width:49%}figure.small svg{min-width:0}figure.true svg{min-width:0;max-width:none;zoom:.8}.step dt{font-size:9pt}.made{margin-left:1em}}
@media print{body{font-size:9.5pt;line-height:1.25}td,th{padding:.08em .4em}.contents{display:none}.step:has(+figure),.step:has(+table){break-after:avoid}.start{break-inside:avoid}h2+p,p:has(+table),p:has(+.bar){break-after:avoid}figure{overflow:visible}figure svg{max-height:105mm}figure.true svg{max-height:none;max-width:none}body{margin:0;padding:0 .3mm;max-width:none}.part{break-before:page}h2{break-after:avoid}}
@page{margin:12mm}
`

// HTML writes the page as one file that needs nothing else: no script, no network.
func (p *Page) HTML() string {
	var b strings.Builder
	b.WriteString("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n")
	fmt.Fprintf(&b, "<meta name=\"fettle-digest\" content=\"%s\">\n<title>%s</title>\n<style>%s</style>\n</head>\n<body>\n<section>\n", p.Stamp.Digest, esc(p.Title), style+foot(p.Stamp))
	p.body(&b)
	b.WriteString("</section>\n</body>\n</html>\n")
	return b.String()
}

// foot is what stands at the foot of every printed leaf, so that leaves of two sheets are not mixed up.
func foot(s Stamp) string {
	return "@page{@bottom-right{content:\"" + s.Digest + ", page \" counter(page);font:8pt sans-serif}}\n"
}

// body writes the blocks. Head and first operation of a set-up are kept on one leaf, and a drawing
// stands beside the words and tables of its operation where there is room.
func (p *Page) body(b *strings.Builder) {
	box := 0
	for i := 0; i < len(p.Blocks); i++ {
		head := p.Blocks[i].Kind == Heading && i+1 < len(p.Blocks) && p.Blocks[i+1].Kind == Facts
		if head {
			b.WriteString("<div class=\"start\">\n")
			p.Blocks[i].html(b, &box)
			p.Blocks[i+1].html(b, &box)
			for i += 2; i < len(p.Blocks) && (p.Blocks[i].Kind == Para || p.Blocks[i].Kind == Caution); i++ {
				p.Blocks[i].html(b, &box)
			}
		}
		if n := p.drawn(i); n > 0 {
			b.WriteString("<div class=\"beside\">\n<div class=\"words\">\n")
			for ; n > 0; n-- {
				p.Blocks[i].html(b, &box)
				i++
			}
			b.WriteString("</div>\n")
			p.Blocks[i].html(b, &box)
			b.WriteString("</div>\n")
		} else if !head || i < len(p.Blocks) && (p.Blocks[i].Kind == Tick || p.Blocks[i].Kind == Picture) {
			p.Blocks[i].html(b, &box)
		} else {
			i--
		}
		if head {
			b.WriteString("</div>\n")
		}
	}
}

// drawn says how many blocks from one on, an operation and its tables, stand before a drawing of it; 0:
// there is none.
func (p *Page) drawn(from int) int {
	for i := from; i < len(p.Blocks); i++ {
		switch k := &p.Blocks[i]; {
		case k.Kind == Picture && k.True && i > from:
			return i - from
		case (k.Kind == Tick) != (i == from), k.Kind != Tick && k.Kind != Table:
			return 0
		}
	}
	return 0
}

// esc makes a text fit to stand in the page: what does not print, or turns the direction of
// writing, is shown by its number.
func esc(s string) string { return html.EscapeString(report.Safe(s)) }

func (k *Block) html(b *strings.Builder, box *int) {
	switch k.Kind {
	case Heading:
		id := ""
		if k.ID != "" {
			id = fmt.Sprintf(" id=\"%s\"", esc(k.ID))
		}
		fmt.Fprintf(b, "<h%d%s>%s</h%d>\n", k.Level, id, esc(k.Words), k.Level)
	case Para:
		class := ""
		if k.Loud {
			class = " class=\"loud\""
		}
		fmt.Fprintf(b, "<p%s>%s</p>\n", class, esc(k.Words))
	case Caution:
		fmt.Fprintf(b, "<p class=\"caution\">⚠ %s</p>\n", esc(k.Words))
	case Table:
		k.table(b)
	case Facts:
		k.facts(b)
	case Tick:
		k.tick(b, box)
	case Margin:
		fmt.Fprintf(b, "<p>%s</p>\n<div class=\"bar\"><i style=\"width:%.0f%%\"></i></div>\n", esc(k.Words), 100*width(k.Share))
	case Picture:
		class := ""
		if k.Small {
			class = " class=\"small\""
		}
		if k.True {
			class = " class=\"true\""
		}
		says := ""
		if k.Words != "" {
			says = "<figcaption>" + esc(k.Words) + "</figcaption>"
		}
		fmt.Fprintf(b, "<figure%s>%s%s</figure>\n", class, k.SVG, says)
	case Contents:
		k.contents(b)
	case Part:
		fmt.Fprintf(b, "</section>\n<section class=\"part\"")
		if k.ID != "" {
			fmt.Fprintf(b, " id=\"%s\"", esc(k.ID))
		}
		b.WriteString(">\n")
	}
}

// width is how long the bar of a margin is: all of it where half as much again is left over.
func width(share float64) float64 {
	if math.IsNaN(share) {
		return 0
	}
	return min(max(share/0.5, 0), 1)
}

func (k *Block) table(b *strings.Builder) {
	b.WriteString("<table>\n")
	if k.Head != nil {
		b.WriteString("<thead><tr>")
		for _, h := range k.Head {
			fmt.Fprintf(b, "<th>%s</th>", esc(h))
		}
		b.WriteString("</tr></thead>\n")
	}
	for _, r := range k.Rows {
		b.WriteString("<tr>")
		for _, c := range r {
			fmt.Fprintf(b, "<td>%s</td>", esc(c))
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</table>\n")
}

// halfLine is how many letters a fact has at most to stand with another in one line.
const halfLine = 34

func (k *Block) facts(b *strings.Builder) {
	b.WriteString("<dl class=\"facts\">\n")
	for _, r := range k.Rows {
		class := ""
		if len([]rune(r[1])) > halfLine {
			class = " class=\"long\""
		}
		fmt.Fprintf(b, "<div%s><dt>%s</dt><dd>%s</dd></div>\n", class, esc(r[0]), esc(r[1]))
	}
	b.WriteString("</dl>\n")
}

func (k *Block) tick(b *strings.Builder, box *int) {
	*box++
	id := ""
	if k.ID != "" {
		id = fmt.Sprintf(" id=\"%s\"", esc(k.ID))
	}
	fmt.Fprintf(b, "<div class=\"step\"%s><label><input type=\"checkbox\" id=\"tick-%d\">%s</label>", id, *box, esc(k.Words))
	if len(k.Rows) > 0 {
		b.WriteString("<dl>")
		for _, r := range k.Rows {
			fmt.Fprintf(b, "<dt>%s</dt><dd>%s</dd>", esc(r[0]), esc(r[1]))
		}
		b.WriteString("</dl>")
	}
	for i, label := range k.boxes() {
		n := ""
		if i > 0 {
			n = fmt.Sprintf("-%d", i+1)
		}
		fmt.Fprintf(b, "<span class=\"made\">%s: <input type=\"text\" inputmode=\"decimal\" id=\"made-%d%s\" aria-label=\"%s\"> %s</span>", esc(label), *box, n, esc(label), esc(k.unit()))
	}
	b.WriteString("</div>\n")
}
