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
table{border-collapse:collapse;width:100%;margin:.4em 0}
td,th{border:.2mm solid #777;padding:.15em .4em;text-align:left;vertical-align:top}
th{border-bottom:.5mm solid #000;overflow-wrap:normal}
td:first-child{overflow-wrap:break-word}
figure{margin:.6em 0;break-inside:avoid;overflow-x:auto}
figure svg{width:100%;height:auto;display:block}
figure.small{display:inline-block;width:32%;margin:.3em .3%}
figure.true svg{width:auto;max-width:100%}
figcaption{font-size:9.5pt}
.caution{border:.6mm solid #000;padding:.3em .6em;margin:.5em 0;break-inside:avoid}
.step{border-top:.3mm solid #000;padding:.35em 0;break-inside:avoid}
.step label{font-weight:bold;display:block}
.step input[type=checkbox]{width:5mm;height:5mm;vertical-align:-1mm;margin:0 .5em 0 0}
.step dl{display:grid;grid-template-columns:9em 1fr;margin:.15em 0 0 2em;gap:0 .6em}
.step dt{color:#333}.step dd{margin:0}
.beside{display:flex;flex-wrap:wrap;align-items:flex-start;border-top:.3mm solid #000;break-inside:avoid}.beside .step{flex:1 1 66mm;border:0}.beside .step dl{grid-template-columns:7em 1fr;margin-left:1em}.beside figure{flex:0 1 auto;max-width:100%}
.made{display:block;margin:.3em 0 0 2em}
.made input{font:inherit;width:9em;border:.3mm solid #000;padding:.15em}
.bar{border:.3mm solid #000;height:3mm;max-width:60mm;margin:.1em 0 .5em}
.bar i{display:block;height:100%;background:#555}
.contents{list-style:none;padding:0;margin:.4em 0}.contents ul{padding-left:1.2em;columns:2;column-gap:8mm}.contents li{break-inside:avoid}
.contents a{color:#000;display:inline-block;padding:.12em 0}.contents .set{list-style:circle}.contents .op{margin-left:1em;list-style:none}
.stamp{font-size:9pt;border-top:.3mm solid #000;margin-top:1.5em;padding-top:.3em}
@media (max-width:120mm){.contents ul{columns:1}.contents a{padding:.35em 0}table{display:block;overflow-x:auto}figure svg{min-width:150mm}figure.small{width:49%}figure.small svg{min-width:0}figure.true svg{min-width:0;max-width:none;zoom:.8}.step dl{grid-template-columns:1fr;margin-left:1em}.step dt{font-size:9pt}.made{margin-left:1em}}
@media print{body{font-size:9.5pt;line-height:1.25}td,th{padding:.08em .4em}.contents{display:none}.step:has(+figure),.step:has(+table){break-after:avoid}h2+table{break-inside:avoid}figure{overflow:visible}figure svg{max-height:105mm}figure.true svg{max-height:none;max-width:none}body{margin:0;max-width:none}.part{break-before:page}h2{break-after:avoid}}
@page{margin:12mm}
`

// HTML writes the page as one file that needs nothing else: no script, no network.
func (p *Page) HTML() string {
	var b strings.Builder
	b.WriteString("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n")
	fmt.Fprintf(&b, "<meta name=\"fettle-digest\" content=\"%s\">\n<title>%s</title>\n<style>%s</style>\n</head>\n<body>\n<section>\n", p.Stamp.Digest, esc(p.Title), style)
	box := 0
	for i := range p.Blocks {
		k := &p.Blocks[i]
		if k.Kind == Picture && k.True && i > 0 && p.Blocks[i-1].Kind == Tick {
			k.html(&b, &box)
			b.WriteString("</div>\n")
			continue
		}
		if k.Kind == Tick && i+1 < len(p.Blocks) && p.Blocks[i+1].Kind == Picture && p.Blocks[i+1].True {
			b.WriteString("<div class=\"beside\">\n") // the drawing stands beside the words where there is room
		}
		k.html(&b, &box)
	}
	on := "…………………"
	if p.Stamp.On != "" {
		on = p.Stamp.On
	}
	fmt.Fprintf(&b, "</section>\n<p class=\"stamp\">Made on %s from files with the digest %s.</p>\n</body>\n</html>\n", esc(on), p.Stamp.Digest)
	return b.String()
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
		fmt.Fprintf(b, "<p>%s</p>\n", esc(k.Words))
	case Caution:
		fmt.Fprintf(b, "<p class=\"caution\">⚠ %s</p>\n", esc(k.Words))
	case Table:
		k.table(b)
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
		fmt.Fprintf(b, "<figure%s>%s<figcaption>%s</figcaption></figure>\n", class, k.SVG, esc(k.Words))
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
		b.WriteString("<tr>")
		for _, h := range k.Head {
			fmt.Fprintf(b, "<th>%s</th>", esc(h))
		}
		b.WriteString("</tr>\n")
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
	if k.Box != "" {
		fmt.Fprintf(b, "<span class=\"made\">%s: <input type=\"text\" inputmode=\"decimal\" id=\"made-%d\" aria-label=\"%s\"> mm</span>", esc(k.Box), *box, esc(k.Box))
	}
	b.WriteString("</div>\n")
}
