package schema

import (
	"fmt"
	"slices"
	"strings"
)

// formKind is a way in which a value may be written.
type formKind uint8

const (
	formNone       formKind = iota
	formLength              // a length; a bare number is in the folder's unit
	formDimension           // a length with limits
	formAngle               // degrees
	formNumber              // a pure number
	formWhole               // a whole number
	formText                // any text
	formYesNo               // true or false
	formSizes               // a set of sizes
	formSpeeds              // rev/min: a list, or { from, to }
	formThread              // a thread designation
	formTaper               // a taper designation
	formMaterial            // a handbook entry
	formPlace               // a place on a face
	formFeed                // a rate of feed
	formObject              // { … }
	formList                // [ … ] of the form Of
	formRef                 // a reference to one of RefKinds; none: to anything
	formWord                // one of the words OneOf
	formFigure              // one of the figures OneOf: "90"
	formExpression          // a condition, or anything that can be worked out
)

// form is one way of writing a value. An attribute that takes several has several.
type form struct {
	Kind     formKind
	OneOf    []string // of formWord and formFigure
	Of       *form    // of formList; a list of several forms has them in Others too
	Others   []form   // further forms of a member of a list
	RefKinds []string // of formRef: kinds, or "shop item", "cutter", "instrument", "feature", "face"
}

var formNames = map[string]formKind{
	"length": formLength, "dimension": formDimension, "angle": formAngle, "number": formNumber,
	"whole": formWhole, "text": formText, "yes/no": formYesNo, "sizes": formSizes, "speeds": formSpeeds,
	"thread": formThread, "taper": formTaper, "material": formMaterial, "place": formPlace,
	"feed": formFeed, "object": formObject, "expression": formExpression,
}

func (f form) same(o form) bool {
	if f.Kind != o.Kind || !slices.Equal(f.OneOf, o.OneOf) || !slices.Equal(f.RefKinds, o.RefKinds) {
		return false
	}
	if (f.Of == nil) != (o.Of == nil) || (f.Of != nil && !f.Of.same(*o.Of)) {
		return false
	}
	return slices.EqualFunc(f.Others, o.Others, form.same)
}

// takes says whether a block of a kind may stand where this reference, or list of them, is wanted. A face
// is wanted where a feature stands for its surface, its rim or its axis, so any feature does.
func (f form) takes(k *kind) bool {
	if f.Kind == formList {
		return f.Of.takes(k)
	}
	if f.Kind != formRef || len(f.RefKinds) == 0 {
		return f.Kind == formRef
	}
	for _, w := range f.RefKinds {
		switch w {
		case "shop item":
			if k.Where == "shop" {
				return true
			}
		case "feature", "face":
			if k.Where == "feature" {
				return true
			}
		case "cutter":
			if slices.Contains(cutterKinds, k.Name) {
				return true
			}
		case "instrument":
			if slices.Contains(instrumentKinds, k.Name) || slices.Contains(settingKinds, k.Name) {
				return true
			}
		default:
			if k.Name == w {
				return true
			}
		}
	}
	return false
}

// The grammar of the value column:
//
//	value  = one { ("," | "or") one }
//	one    = "list of" one            a list; "or" goes on within it after "list of one of …"
//	       | "list"                   a list of the form before it
//	       | "one of" word { word }   quoted words, or bare figures
//	       | quoted { quoted }        the same without "one of"
//	       | "reference" [ "to" kind { "or" kind } ]
//	       | "places"                 a list of place
//	       | NAME                     a key of formNames
type formReader struct {
	toks []string
	done []form
}

// readForms reads a value of the table.
func readForms(value string) ([]form, error) {
	r := &formReader{toks: formTokens(value)}
	for {
		f, err := r.one()
		if err != nil {
			return nil, fmt.Errorf("value %q: %w", value, err)
		}
		r.done = append(r.done, f)
		if len(r.toks) == 0 {
			return r.done, nil
		}
		if !r.eat(",") && !r.eat("or") {
			return nil, fmt.Errorf("value %q: %q is not understood", value, r.toks[0])
		}
	}
}

// formTokens splits into words, quoted words with their quotes, and commas.
func formTokens(s string) []string {
	var out []string
	for s = strings.TrimSpace(s); s != ""; s = strings.TrimSpace(s) {
		n := 1
		switch {
		case s[0] == ',':
		case s[0] == '"':
			if i := strings.IndexByte(s[1:], '"'); i >= 0 {
				n = i + 2
			} else {
				n = len(s)
			}
		default:
			if n = strings.IndexAny(s, " ,"); n < 0 {
				n = len(s)
			}
		}
		out = append(out, s[:n])
		s = s[n:]
	}
	return out
}

func (r *formReader) peek(n int) string {
	if n < len(r.toks) {
		return r.toks[n]
	}
	return ""
}

func (r *formReader) eat(words ...string) bool {
	for i, w := range words {
		if r.peek(i) != w {
			return false
		}
	}
	r.toks = r.toks[len(words):]
	return true
}

func (r *formReader) one() (form, error) {
	switch {
	case r.eat("list", "of"):
		return r.listOf()
	case r.eat("list"):
		if len(r.done) == 0 {
			return form{}, fmt.Errorf("a list of what?")
		}
		of := r.done[len(r.done)-1]
		return form{Kind: formList, Of: &of}, nil
	case r.eat("one", "of"), strings.HasPrefix(r.peek(0), `"`):
		return r.words()
	case r.eat("reference"):
		return r.reference(), nil
	case r.eat("places"):
		return form{Kind: formList, Of: &form{Kind: formPlace}}, nil
	}
	k, ok := formNames[r.peek(0)]
	if !ok {
		return form{}, fmt.Errorf("%q is no form of a value", r.peek(0))
	}
	r.toks = r.toks[1:]
	return form{Kind: k}, nil
}

func (r *formReader) listOf() (form, error) {
	of, err := r.one()
	f := form{Kind: formList, Of: &of}
	for err == nil && of.Kind == formWord && r.eat("or") {
		var other form
		if other, err = r.one(); err == nil {
			f.Others = append(f.Others, other)
		}
	}
	return f, err
}

func (r *formReader) words() (form, error) {
	f := form{Kind: formWord}
	for {
		t := r.peek(0)
		switch {
		case strings.HasPrefix(t, `"`) && len(t) > 2 && strings.HasSuffix(t, `"`):
			f.OneOf = append(f.OneOf, t[1:len(t)-1])
		case t != "" && t[0] >= '0' && t[0] <= '9':
			f.Kind = formFigure
			f.OneOf = append(f.OneOf, t)
		case len(f.OneOf) == 0:
			return f, fmt.Errorf("%q is no word of a choice", t)
		default:
			return f, nil
		}
		r.toks = r.toks[1:]
	}
}

func (r *formReader) reference() form {
	f := form{Kind: formRef}
	if !r.eat("to") {
		return f
	}
	for {
		if r.eat("shop", "item") {
			f.RefKinds = append(f.RefKinds, "shop item")
		} else {
			f.RefKinds = append(f.RefKinds, r.peek(0))
			r.toks = r.toks[min(1, len(r.toks)):]
		}
		// "or list of …", "or one of …", "or text": another form, not another kind
		next := r.peek(1)
		if _, isForm := formNames[next]; r.peek(0) != "or" || isForm || next == "list" || next == "one" || next == "reference" || strings.HasPrefix(next, `"`) {
			return f
		}
		r.eat("or")
	}
}
