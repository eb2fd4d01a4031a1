package schema

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// The readers of this file take what an expression came to and give what a field holds;
// false where the value is of another kind, which decoding has reported already. Each
// stands beside the forms of the table that it reads.

func asNumber(v *model.Value) (float64, bool) {
	switch v.Kind {
	case model.Number:
		return v.Num, true
	case model.SizeOf:
		return v.Size.Nominal, true
	}
	return 0, false
}

func asWhole(v *model.Value) (int, bool) {
	if v.Kind != model.Number || v.Num != math.Trunc(v.Num) || math.Abs(v.Num) > 1e9 {
		return 0, false
	}
	return int(v.Num), true
}

func asYesNo(v *model.Value) (bool, bool) { return v.Yes, v.Kind == model.YesNo }

func asText(v *model.Value) (string, bool) { return v.Text, v.Kind == model.Text }

func asSize(v *model.Value) (drawing.Size, bool) {
	switch v.Kind {
	case model.SizeOf:
		return v.Size, true
	case model.Number:
		return drawing.PlainSize(v.Num, model.Figure(v.Num), drawing.Millimetre), true
	}
	return drawing.Size{}, false
}

func asThread(v *model.Value) (drawing.Thread, bool) { return v.Thread, v.Kind == model.ThreadOf }

func asTaper(v *model.Value) (drawing.Taper, bool) { return v.Taper, v.Kind == model.TaperOf }

func asFeed(v *model.Value) (drawing.Feed, bool) { return v.Feed, v.Kind == model.FeedOf }

func asMaterial(v *model.Value) (model.Material, bool) { return v.Material, v.Kind == model.MaterialOf }

func asPosition(v *model.Value) (model.Position, bool) { return v.Position, v.Kind == model.PositionOf }

// asRef reads a reference, a face by its name, or a bare word such as "hand".
func asRef(v *model.Value) (model.Ref, bool) {
	switch v.Kind {
	case model.RefTo:
		return v.Ref, true
	case model.Text:
		face, _ := model.ParseFace(v.Text)
		return model.Ref{At: v.At, Text: v.Text, Face: face}, true
	case model.List:
		if len(v.List) == 1 {
			return asRef(&v.List[0])
		}
	}
	return model.Ref{}, false
}

func asShank(v *model.Value) (model.Shank, bool) {
	switch v.Kind {
	case model.TaperOf:
		return model.Shank{Taper: v.Taper}, true
	case model.Text:
		return model.Shank{Text: v.Text}, true
	}
	n, ok := asNumber(v)
	return model.Shank{Diameter: n}, ok
}

func asTail(v *model.Value) (model.Tail, bool) {
	switch v.Kind {
	case model.ThreadOf:
		return model.Tail{Thread: v.Thread}, true
	case model.Text:
		return model.Tail{Word: v.Text}, true
	}
	return model.Tail{}, false
}

func asNose(v *model.Value) (model.Nose, bool) {
	switch v.Kind {
	case model.ThreadOf:
		return model.Nose{Thread: v.Thread}, true
	case model.TaperOf:
		return model.Nose{Taper: v.Taper}, true
	case model.Text:
		return model.Nose{Word: v.Text}, true
	}
	return model.Nose{}, false
}

// asLeadScrew reads the lead of a lead screw: a length, or threads to the inch ("8 tpi").
func asLeadScrew(v *model.Value) (model.LeadScrew, bool) {
	if v.Kind == model.Text {
		figure, ok := strings.CutSuffix(strings.ToLower(strings.TrimSpace(v.Text)), "tpi")
		tpi, err := strconv.ParseFloat(strings.TrimSpace(figure), 64)
		if !ok || err != nil || !(tpi > 0) || tpi > 1000 {
			return model.LeadScrew{}, false
		}
		return model.LeadScrew{Lead: 25.4 / tpi, Inch: true, TPI: tpi}, true
	}
	n, ok := asNumber(v)
	return model.LeadScrew{Lead: n}, ok && n > 0
}

func asLead(v *model.Value) (model.Lead, bool) {
	switch v.Kind {
	case model.Text:
		return model.Lead{Word: v.Text}, true
	case model.Number:
		return model.Lead{Threads: v.Num}, true
	}
	return model.Lead{}, false
}

// listOf reads a list member by member; one value alone is a list of one. A member that
// is not understood makes the list not known: part of a list would be taken for the whole.
func listOf[T any](one func(*model.Value) (T, bool)) func(*model.Value) ([]T, bool) {
	return func(v *model.Value) ([]T, bool) {
		if v.Kind != model.List {
			x, ok := one(v)
			return []T{x}, ok
		}
		out := make([]T, 0, len(v.List))
		for n := range v.List {
			x, ok := one(&v.List[n])
			if !ok {
				return nil, false
			}
			out = append(out, x)
		}
		return out, true
	}
}

var (
	asTexts     = listOf(asText)
	asRefs      = listOf(asRef)
	asThreads   = listOf(asThread)
	asLeads     = listOf(asLead)
	asPositions = listOf(asPosition)
	asNumbers   = listOf(asNumber)
)

// asSizes reads a set of sizes, or one size.
func asSizes(v *model.Value) (model.Sizes, bool) {
	switch v.Kind {
	case model.Set:
		return v.Sizes, true
	case model.List:
		ns, ok := asNumbers(v)
		s := model.Sizes{}
		for _, n := range ns {
			s.List = append(s.List, model.Member{Size: n})
		}
		return s, ok
	}
	n, ok := asNumber(v)
	return model.Sizes{Single: true, List: []model.Member{{Size: n}}}, ok
}

// asSpeeds reads the speeds of a spindle: a list, a set, one speed, or { from, to }.
func asSpeeds(v *model.Value) (model.Speeds, bool) {
	switch v.Kind {
	case model.Object:
		from, okFrom := member(v, "from", asNumber)
		to, okTo := member(v, "to", asNumber)
		return model.Speeds{From: from, To: to, Stepless: true}, okFrom && okTo && from <= to
	case model.Set:
		const most = 1000 // steps of a series: more are as good as stepless, and are not spelled out
		lo, hi, ok := v.Sizes.Range()
		for _, s := range v.Sizes.Series {
			if s.By > 0 && (s.To-s.From)/s.By > most {
				return model.Speeds{From: lo, To: hi, Stepless: true}, ok
			}
		}
		return model.Speeds{List: v.Sizes.Within(lo, hi, most+1)}, ok
	}
	list, ok := asNumbers(v)
	slices.Sort(list)
	return model.Speeds{List: list}, ok
}

// asDepth reads a depth: a length, a dimension, "through", or { from, size }.
func asDepth(v *model.Value) (model.Depth, bool) {
	switch v.Kind {
	case model.Text:
		return model.Depth{Through: true}, v.Text == "through"
	case model.Object:
		from, okFrom := member(v, "from", asRef)
		size, okSize := member(v, "size", asSize)
		return model.Depth{From: from, Size: size}, okFrom && okSize
	}
	size, ok := asSize(v)
	return model.Depth{Size: size}, ok
}

// member reads a member of an object, by the last word of its name.
func member[T any](v *model.Value, name string, read func(*model.Value) (T, bool)) (T, bool) {
	if m := memberOf(v.Object, name); m != nil {
		return read(&m.Value)
	}
	var none T
	return none, false
}

func memberOf(attrs []model.Attr, name string) *model.Attr {
	for n := range attrs {
		w := attrs[n].Name
		if w == name || strings.HasSuffix(w, "."+name) {
			return &attrs[n]
		}
	}
	return nil
}

// standing gives the value that leaving an attribute out stands for, where the table has a
// plain one: a figure, yes or no, a quoted word, or a word of the attribute's own choice.
// A gloss may follow a comma or a colon ("0, towards top"). Where a condition hangs on it
// ("0; taper: half its included angle") it is for the dry run to say, as is all that is
// "chosen" or from the handbook.
func standing(a *attr) (model.Value, model.Origin) {
	plain := a.LeftOut
	if strings.Contains(plain, ";") || strings.Contains(plain, " unless ") {
		return model.Value{}, model.Unknown
	}
	from := model.Standing
	if strings.HasSuffix(plain, ", listed as chosen") {
		from = model.Chosen
	}
	if i := strings.IndexAny(plain, ",:"); i >= 0 {
		plain = plain[:i]
	}
	if plain == "none" || plain == "not known" {
		return model.Value{}, model.Unknown
	}
	for _, f := range a.Forms {
		if v, ok := f.literal(plain); ok {
			return v, from
		}
	}
	return model.Value{}, model.Unknown
}

// literal reads a plain value of the table in one form. Lengths are mm, angles degrees.
func (f form) literal(s string) (model.Value, bool) {
	switch f.Kind {
	case formLength, formDimension, formAngle, formNumber, formWhole:
		n, err := strconv.ParseFloat(s, 64)
		return model.Value{Kind: model.Number, Num: n}, err == nil
	case formYesNo:
		yes := s == "yes" || s == "true"
		return model.Value{Kind: model.YesNo, Yes: yes}, yes || s == "no" || s == "false"
	case formText:
		inner, ok := strings.CutPrefix(s, `"`)
		inner, end := strings.CutSuffix(inner, `"`)
		return model.Value{Kind: model.Text, Text: inner}, ok && end
	case formWord:
		w := strings.Trim(s, `"`)
		return model.Value{Kind: model.Text, Text: w}, slices.Contains(f.OneOf, w)
	case formFigure:
		n, err := strconv.ParseFloat(s, 64)
		return model.Value{Kind: model.Number, Num: n}, err == nil && slices.Contains(f.OneOf, s)
	}
	return model.Value{}, false
}
