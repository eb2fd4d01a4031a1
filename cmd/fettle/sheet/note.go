package sheet

import (
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// putting adds rows of label and value; what says nothing is left out.
func putting(rows *[][]string) func(what, words string) {
	return func(what, words string) {
		if words != "" && words != "-" {
			*rows = append(*rows, []string{what, words})
		}
	}
}

// remark is what the author wrote to be printed beside a thing; "" nothing.
func remark(i *model.Item) string {
	if i == nil {
		return ""
	}
	if a := i.Attr("note"); a != nil && a.Value.Kind == model.Text {
		return a.Value.Text
	}
	return ""
}

// notes puts the notes of a step and of the features that it makes.
func (m *maker) notes(st *eval.Step, put func(a, b string)) {
	if st.Step != nil {
		put("note", remark(st.Step.Item))
	}
	said := map[*model.Item]bool{}
	for _, t := range st.Makes {
		if t.Form != nil && !said[t.Form.Feature.Item] {
			said[t.Form.Feature.Item] = true
			put("of "+t.Form.Name(), remark(t.Form.Feature.Item))
		}
	}
}

// paths names what references stand for; what belongs to the part or assembly of a label without that in front.
func paths(rs []model.Ref, own string) string {
	var out []string
	for _, r := range rs {
		s := r.Path()
		for _, kind := range []string{"part.", "assembly."} {
			s = strings.TrimPrefix(s, kind+own+".")
		}
		out = append(out, s)
	}
	return strings.Join(out, ", ")
}

// joints names joints, each with its note.
func joints(rs []model.Ref, own string) string {
	var out []string
	for _, r := range rs {
		s := paths([]model.Ref{r}, own)
		if n := remark(r.Item); n != "" {
			s += " (" + n + ")"
		}
		out = append(out, s)
	}
	return strings.Join(out, ", ")
}

// said gives a value back in words, as it was written but for its layout.
func said(v model.Value, own string) string {
	switch v.Kind {
	case model.Number:
		return model.Figure(v.Num)
	case model.Text:
		return v.Text
	case model.YesNo:
		if v.Yes {
			return "yes"
		}
		return "no"
	case model.SizeOf:
		return written(v.Size)
	case model.RefTo:
		return paths([]model.Ref{v.Ref}, own)
	case model.List:
		var out []string
		for _, x := range v.List {
			out = append(out, said(x, own))
		}
		return strings.Join(out, ", ")
	case model.Object:
		var out []string
		for _, a := range v.Object {
			out = append(out, a.Word+" "+said(a.Value, own))
		}
		return strings.Join(out, ", ")
	case model.PositionOf:
		var out []string
		for _, x := range v.Position.Short {
			out = append(out, written(x))
		}
		for _, c := range v.Position.Coords {
			out = append(out, written(c.Size)+" from "+paths([]model.Ref{c.Datum}, own))
		}
		return strings.Join(out, ", ")
	}
	return ""
}
