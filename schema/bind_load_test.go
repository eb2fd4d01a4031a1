package schema

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"fettle/schema/model"
	"fettle/schema/text"
)

// Every attribute of the table, in every form that the table gives it, is written into a
// recipe or a shop of its own file, read, and looked for in the item and in the struct. So
// the table, the reader of values and the binding are held to mean the same.

// rowCase is one attribute written in one way.
type rowCase struct {
	name string // of its file
	kind *kind
	attr *attr
	form form
	src  string
}

// rowWriter writes values, and notes what they refer to.
type rowWriter struct {
	local bool     // within a part: features are named without it
	needs []string // features that the part must have
}

// value writes a value in a form; false where the form is written only as a member of another.
func (w *rowWriter) value(a *attr, f form) string {
	switch f.Kind {
	case formLength:
		return "12"
	case formDimension:
		return `"8 ±0.1"`
	case formAngle:
		return "45"
	case formNumber, formWhole:
		return "3"
	case formText:
		return w.text(a)
	case formYesNo, formExpression:
		return "true"
	case formSizes:
		return "[2, 3, 4]"
	case formSpeeds:
		return "{ from = 50, to = 500 }"
	case formThread:
		return `"M6x0.75 LH"`
	case formTaper:
		return `"MT2"`
	case formMaterial:
		return `"brass"`
	case formPlace:
		return "{ left = 8 }"
	case formFeed:
		return `"0.1 mm/rev"`
	case formWord:
		return fmt.Sprintf("%q", f.OneOf[len(f.OneOf)-1])
	case formFigure:
		return f.OneOf[len(f.OneOf)-1]
	case formRef:
		return w.reference(a, f)
	case formList:
		n := 1 // members; of some lists each has its own place
		if f.Of.Kind == formLength || f.Of.Kind == formAngle || f.Of.Kind == formWhole {
			n = max(1, membersOfList(a))
		}
		return "[" + strings.Repeat(w.value(a, *f.Of)+", ", n-1) + w.value(a, *f.Of) + "]"
	case formObject:
		return w.object(a)
	}
	return ""
}

// text writes words that mean something where they must.
func (w *rowWriter) text(a *attr) string {
	if a.Kind == "made" && a.Name == "on" {
		return `"2026-01-31"`
	}
	for _, c := range []struct{ names, says string }{
		{"as_of until", "2026-01-31"}, {"limits", "H7"}, {"class", "6H"}, {"general", "ISO 2768-m"}, {"lead_screw", "8 tpi"},
		{"size", "M5x25"}, {"wants", "H7/g6"}, {"shop", "../supply"}, {"looks_at", "operation"}, {"finish", "Ra 1.6"},
		{"starts from into side up jaws end against back on at along towards seen_from feet x y z beside between behind", "left"},
		{"system", "ER25"}, {"temperature", "straw"}, {"set", "M88/1"}, {"material", "brass"},
	} {
		if slices.Contains(strings.Fields(c.names), a.last()) {
			return fmt.Sprintf("%q", c.says)
		}
	}
	return `"words"`
}

func (w *rowWriter) object(a *attr) string {
	var in []string
	switch {
	case a.Kind == "recipe" && a.Name == "general":
		in = []string{`".xx" = 0.01`}
	case a.Kind == "graduations" && a.Name == "lines":
		in = []string{`"1" = 3`, `"5" = 4.5`}
	default:
		for _, m := range a.Members {
			in = append(in, m.last()+" = "+w.value(m, m.Forms[0]))
		}
	}
	return "{ " + strings.Join(in, ", ") + " }"
}

func (w *rowWriter) reference(a *attr, f form) string {
	if len(f.RefKinds) == 0 {
		return w.anything(a)
	}
	switch f.RefKinds[0] {
	case "shop item":
		return "vise.x"
	case "cutter":
		return "end_mill.x"
	case "instrument":
		return "caliper.x"
	case "feature":
		return w.feature("hole")
	case "face":
		if w.local {
			return "face.top"
		}
		return w.feature("hole")
	}
	k := theTable().byName[f.RefKinds[0]]
	switch k.Where {
	case "feature":
		return w.feature(k.Name)
	case "part":
		return "part.x"
	}
	return k.Name + ".x"
}

// anything writes a reference where the table names no kind.
func (w *rowWriter) anything(a *attr) string {
	switch a.last() {
	case "hole", "shaft", "path", "of", "size":
		return w.feature("hole") + ".diameter"
	case "tool":
		return "end_mill.x"
	case "holder":
		return "arbor.x"
	case "carries":
		return "chuck.x"
	case "parallels":
		return "parallels.x"
	case "at":
		return "part.x"
	}
	return w.feature("hole")
}

func (w *rowWriter) feature(k string) string {
	if !w.local {
		return "part.x." + k + ".x"
	}
	if !slices.Contains(w.needs, k) {
		w.needs = append(w.needs, k)
	}
	return k + ".x"
}

// rowCases writes each row in each of its forms.
func rowCases() []rowCase {
	var out []rowCase
	for _, k := range theTable().kinds {
		if k.Label == sharedRows || k.Where == "header" && k.Name == "shop" {
			continue
		}
		for _, a := range k.attrs() {
			for n, f := range a.Forms {
				c := rowCase{name: fmt.Sprintf("%s-%s-%d.hcl", k.Name, a.Name, n), kind: k, attr: a, form: f}
				c.src = c.write()
				out = append(out, c)
			}
		}
	}
	return out
}

// write gives the file of a case: the block, and around it what it must stand in.
func (c *rowCase) write() string {
	w := rowWriter{local: slices.Contains([]string{"part", "feature", "setup", "step"}, c.kind.Where)}
	label := ""
	if c.kind.Label == labelWanted {
		label = ` "t"`
		if len(parentsOf(c.kind)) > 0 && parentsOf(c.kind)[0] == "recipe" {
			label = fmt.Sprintf(" %q", c.name)
		}
		if c.kind.Name == "face" {
			label = ` "top"`
		}
	}
	body := fmt.Sprintf("%s%s {\n  %s = %s\n}\n", c.kind.Name, label, c.attr.Name, w.value(c.attr, c.form))
	switch c.kind.Where {
	case "step":
		body = "setup \"s\" {\n" + body + "}\n"
	case "build":
		if c.kind.Name == "place" {
			return fmt.Sprintf("assembly %q {\n%s}\n", c.name, body)
		}
	}
	if !w.local || c.kind.Name == "part" {
		if c.kind.Name == "part" {
			body = strings.TrimSuffix(body, "}\n") + w.features() + "}\n"
		}
		return body
	}
	return fmt.Sprintf("part %q {\n%s%s}\n", c.name, w.features(), body)
}

func (w *rowWriter) features() string {
	var b strings.Builder
	for _, k := range w.needs {
		fmt.Fprintf(&b, "%s \"x\" {}\n", k)
	}
	return b.String()
}

// rowsFolder holds all cases, and one of each kind to refer to.
func rowsFolder(cases []rowCase) text.Archive {
	var recipe, part, shop strings.Builder
	for _, k := range theTable().kinds {
		switch {
		case k.Label == sharedRows || k.Label == labelNone:
		case k.Where == "shop":
			fmt.Fprintf(&shop, "%s \"x\" {}\n", k.Name)
		case k.Where == "feature" && k.Name == "hole":
			part.WriteString("hole \"x\" { diameter = 8 }\n")
		case k.Where == "feature" && k.Name != "face":
			fmt.Fprintf(&part, "%s \"x\" {}\n", k.Name)
		}
	}
	fmt.Fprintf(&recipe, "recipe \"r\" {\n units = \"mm\"\n}\npart \"x\" {\n length = 30\n%s}\n", part.String())
	folder := text.Archive{
		"recipe/head.hcl": []byte(recipe.String()),
		"supply/head.hcl": []byte("shop \"s\" {\n units = \"mm\"\n}\n" + shop.String()),
	}
	for _, c := range cases {
		if c.kind.Where == "header" {
			continue
		}
		in := "recipe/"
		if c.kind.Where == "shop" {
			in = "supply/"
		}
		folder[in+c.name] = []byte(c.src)
	}
	return folder
}

// Each row, written in each of its forms, is read without a finding of its own, comes to a
// value, and is written, not filled in, in the struct that has a field for it.
func TestEveryRowIsReadAndBound(t *testing.T) {
	cases := rowCases()
	if len(cases) < 1200 {
		t.Errorf("%d cases", len(cases))
	}
	fields := 0
	for some := range slices.Chunk(cases, 50) { // a reading stops at 500 findings
		fields += readRows(t, some)
	}
	if fields < 500 {
		t.Errorf("%d fields were looked at", fields)
	}
}

func readRows(t *testing.T, cases []rowCase) (fields int) {
	b, finds, err := Load(rowsFolder(cases), "recipe", "supply")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range finds {
		if f.Rule == slipNotGiven || f.Rule == slipOneTooMany {
			continue // each block says one thing only
		}
		t.Errorf("%s: %s: %s\n%s", f.Place.File, f.Rule, f.Says, b.Sources.Bytes(f.Place.File))
	}
	items := itemsByFile(b)
	for _, c := range cases {
		if c.kind.Where == "header" || c.kind.Name == "given" {
			continue
		}
		i := items[c.name+" "+c.kind.Name]
		if i == nil {
			if c.kind.Name != "rules_of_thumb" { // they are in Thumbs
				t.Errorf("%s: no item", c.name)
			}
			continue
		}
		a := i.Attr(c.attr.Name)
		if a == nil || a.Value.Kind == model.NoValue {
			t.Errorf("%s came to nothing:\n%s", c.name, c.src)
			continue
		}
		fields += c.bound(t, i)
	}
	return fields
}

// itemsByFile finds the items of a build by the file's base name and the kind.
func itemsByFile(b *model.Build) map[string]*model.Item {
	out := map[string]*model.Item{}
	var walk func(i *model.Item)
	walk = func(i *model.Item) {
		key := i.At.File[strings.IndexByte(i.At.File, '/')+1:] + " " + i.Kind
		if i.Label != "x" && out[key] == nil {
			out[key] = i
		}
		for _, in := range i.Items {
			walk(in)
		}
	}
	for _, i := range b.Shop.All {
		walk(i)
	}
	for _, p := range b.Parts {
		walk(p.Item)
	}
	for _, i := range b.Joints {
		walk(i)
	}
	for _, m := range b.Made {
		walk(m.Item)
	}
	for _, c := range b.Excused {
		walk(c.Item)
	}
	for _, h := range b.House {
		walk(h.Item)
	}
	return out
}

// bound looks for the attribute in each struct that its kind is bound to, and gives how
// many fields it filled.
func (c *rowCase) bound(t *testing.T, i *model.Item) int {
	filled := 0
	for _, s := range structKinds {
		if !slices.Contains(s.kinds, c.kind.Name) {
			continue
		}
		v := reflect.New(s.of).Elem()
		p := planOf(s.of, c.kind)
		p.fill(v, source{item: i, attrs: i.Attrs, here: true})
		filled += c.reaches(t, v, p)
	}
	return filled
}

// reaches looks through the fields that the attribute, written in this form, must fill.
func (c *rowCase) reaches(t *testing.T, v reflect.Value, p *plan) int {
	filled := 0
	for _, fp := range p.fields {
		switch {
		case fp.how == fillEmbedded:
			filled += c.reaches(t, v.Field(fp.at), fp.within)
			continue
		case fp.attr == nil || fp.attr.Name != c.attr.Name:
			continue
		case fp.how == fillKnown && !fp.filler.fits(c.form):
			continue
		}
		filled++
		if !anyWritten(v.Field(fp.at)) {
			t.Errorf("%s does not reach %s.%s:\n%s", c.name, v.Type().Name(), v.Type().Field(fp.at).Name, c.src)
		}
	}
	return filled
}

// anyWritten says whether a field, or one within it, holds a value from the file.
func anyWritten(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Slice:
		for n := range v.Len() {
			if anyWritten(v.Index(n)) {
				return true
			}
		}
	case reflect.Struct:
		if from := v.FieldByName("From"); from.IsValid() && from.Type() == reflect.TypeFor[model.Origin]() {
			return from.Interface().(model.Origin) == model.Written
		}
		for n := range v.NumField() {
			if anyWritten(v.Field(n)) {
				return true
			}
		}
	}
	return false
}
