package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/reckon/bar"
	"fettle/schema/model"
)

// cutMap says what to saw from which bar: for each bar of the shop that parts are made from, of
// those lengths that are there.
func (m *maker) cutMap(parts []*eval.PartTrace) {
	var from []*model.Stock
	pieces := map[*model.Stock][]bar.Piece{}
	kerfs := map[*model.Stock]float64{} // the widest cut that any of its pieces leaves the bar with
	for _, t := range parts {
		b := &t.Part.Blank
		s := b.Stock
		if t.Start == nil || t.Part.Joined() || s == nil || s.Sheet.Said || s.Casting.Said || !s.Lengths.Is() {
			continue
		}
		if !slices.Contains(from, s) {
			from = append(from, s)
		}
		kerf, _ := t.Severs()
		kerfs[s] = max(kerfs[s], kerf)
		pieces[s] = append(pieces[s], bar.Piece{Name: t.Part.Label, Length: t.Part.RawLength(), Count: t.Part.Part.Quantity.Or(1)})
	}
	var bars []sketch.Sawn
	var rows [][]string
	var without, spare, none []string
	number := 0
	for _, s := range from {
		job := bar.Job{Bars: rack(s.Lengths.V), Pieces: pieces[s], Saw: bar.Saw{Kerf: kerfs[s], EndIsFace: true}}
		p, err := bar.Plans(job)
		if err != nil {
			without = append(without, s.Item.Path()+": "+sentence(err.Error()))
			continue
		}
		for i, x := range job.Pieces {
			if more(job, p, i) {
				spare = append(spare, x.Name)
			} else {
				none = append(none, x.Name)
			}
		}
		b, r := sawn(s, job, p, number)
		bars, rows, number = append(bars, b...), append(rows, r...), number+len(job.Pieces)
	}
	if len(from) == 0 {
		return
	}
	m.page.heading(2, "cutmap", "What to saw from what")
	m.page.para("With " + m.cutWords(from, kerfs) + "; what stays in a chuck is not counted.")
	for _, w := range without {
		m.page.para(w)
	}
	if m.w.Pictures && len(bars) > 0 {
		d := sketch.Bars("What to saw from what", bars)
		m.page.add(Block{Kind: Picture, SVG: d.SVG(), Words: "The bars to one scale; hatched is what remains"})
	}
	m.page.table([]string{"bar", "pieces, from one end on", "left over"}, rows)
	if words := spares(spare, none); words != "" {
		m.page.para(words)
	}
}

// more says whether one piece more of a kind comes out of the bars as well, should one be spoilt: out of
// what is left over as they are sawn now, or sawn in another way.
func more(job bar.Job, now bar.Plan, kind int) bool {
	want, rest := job.Pieces[kind].Length, 0.0
	for _, b := range job.Bars {
		rest += b.Length * float64(b.Count)
	}
	for _, c := range now.Cuts {
		if len(c.Pieces) > 0 && c.Left >= want {
			return true
		}
		if len(c.Pieces) > 0 {
			rest -= c.Length - c.Left
		}
	}
	if rest < want {
		return false
	}
	job.Pieces = slices.Clone(job.Pieces)
	job.Pieces[kind].Count++
	_, err := bar.Plans(job)
	return err == nil
}

// spares says of which parts there is metal for a piece more, one at a time.
func spares(some, none []string) string {
	switch {
	case len(none) == 0 && len(some) == 0:
		return ""
	case len(none) == 0:
		return "Should a piece be spoilt: of every part here one more comes out of what is left over."
	case len(some) == 0:
		return "Should a piece be spoilt: of none of these parts does one more come out of what is left over."
	}
	return "Should a piece be spoilt: one more comes out of what is left over of " + strings.Join(some, ", ") + "; none of " + strings.Join(none, ", ") + "."
}

// cutWords says what is counted for each cut; of bars with pieces that are parted off, the parting tool.
func (m *maker) cutWords(from []*model.Stock, kerfs map[*model.Stock]float64) string {
	usual := eval.KerfOf(m.c.Build)
	says := model.Figure(usual) + " mm for each cut of the saw"
	var parted []string
	for _, s := range from {
		if kerfs[s] != usual {
			parted = append(parted, s.Item.Path()+" "+model.Figure(kerfs[s])+" mm")
		}
	}
	if len(parted) > 0 {
		says += ", and the parting tool's width where pieces are parted off (" + strings.Join(parted, ", ") + ")"
	}
	return says
}

// rack counts equal lengths, the longest first.
func rack(lengths []float64) (out []bar.Bar) {
	all := slices.Clone(lengths)
	slices.SortFunc(all, func(a, b float64) int { return cmp.Compare(b, a) })
	for _, l := range all {
		if n := len(out); n > 0 && out[n-1].Length == l {
			out[n-1].Count++
			continue
		}
		out = append(out, bar.Bar{Name: model.Figure(l) + " mm", Length: l, Count: 1})
	}
	return out
}

// sawn is a plan as it is drawn and as rows of a table; its pieces are numbered from after a number on.
func sawn(s *model.Stock, job bar.Job, p bar.Plan, after int) (bars []sketch.Sawn, rows [][]string) {
	length, number := map[string]float64{}, map[string]string{}
	for i, x := range job.Pieces {
		length[x.Name], number[x.Name] = x.Length, fmt.Sprint(after+i+1)
	}
	for _, c := range p.Cuts {
		if len(c.Pieces) == 0 {
			continue
		}
		b := sketch.Sawn{Name: s.Item.Path() + ", " + model.Figure(c.Length) + " mm", Length: c.Length, Kerf: job.Saw.Kerf}
		var words []string
		for _, x := range c.Pieces {
			b.Pieces = append(b.Pieces, sketch.SawnPiece{Number: number[x], Length: length[x]})
			words = append(words, fmt.Sprintf("%s: %s, %s mm", number[x], x, model.Figure(length[x])))
		}
		bars = append(bars, b)
		rows = append(rows, []string{b.Name, strings.Join(words, "; "), model.Figure(c.Left) + " mm"})
	}
	return bars, rows
}
