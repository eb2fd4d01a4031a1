package schema

import (
	"fmt"
	"slices"
	"strings"

	"fettle/schema/model"
)

// complain says what an attribute wants.
func (f *fitter) complain(v val) { f.complainOf(v, f.attr.Forms) }

func (f *fitter) complainOf(v val, forms []form) {
	at := v.v.At
	name := f.attr.last()
	if v.v.Kind == model.RefTo {
		f.complainOfRef(v, forms)
		return
	}
	if v.v.Kind == model.Text {
		var choice []string
		for _, x := range forms {
			if x.Kind == formWord {
				choice = append(choice, x.OneOf...)
			}
			if x.Kind == formList && x.Of != nil && x.Of.Kind == formWord {
				choice = append(choice, x.Of.OneOf...)
			}
		}
		if n := f.r.near(v.v.Text, choice); n != "" {
			f.r.say(slipWrongValue, at, fmt.Sprintf("%s is not one of the words for %s; the nearest is %s", quoted(v.v.Text), name, quoted(n)))
			return
		}
		if f.why != "" && parsedForms(forms) == 1 {
			f.r.say(slipWrongValue, at, f.reason(v.v.Text, name, forms))
			return
		}
	}
	f.r.say(slipWrongValue, at, fmt.Sprintf("%s wants %s; this is %s", name, wanted(forms), v.what()))
}

// reason says what the reader of the notation made of a text. Where that names examples
// itself, what is wanted need not be said again.
func (f *fitter) reason(typed, name string, forms []form) string {
	why := bareReason(f.why)
	if strings.Contains(why, "such as") && !strings.HasPrefix(why, `"`) {
		return quoted(typed) + " is " + why
	}
	return fmt.Sprintf("%s wants %s; %s", name, wanted(forms), why)
}

// bareReason takes off the text that a reader of notation puts before what it says of it.
func bareReason(why string) string {
	if i := strings.Index(why, `": `); strings.HasPrefix(why, `"`) && i > 0 {
		return why[i+len(`": `):]
	}
	return why
}

// parsedForms counts the forms that are read from notation.
func parsedForms(forms []form) int {
	n := 0
	for _, x := range forms {
		switch x.Kind {
		case formLength, formDimension, formAngle, formThread, formTaper, formFeed, formSizes:
			n++
		}
	}
	return n
}

// complainOfRef says that a reference leads to something of another kind.
func (f *fitter) complainOfRef(v val, forms []form) {
	t := v.ref
	leads := "a face"
	switch {
	case t.kind != nil && t.attr:
		leads = "the " + plain(lastWord(t.sub)) + " of " + article(plain(t.kind.Name))
	case t.kind != nil:
		leads = article(plain(t.kind.Name))
	}
	f.r.say(slipWrongThing, v.v.At, fmt.Sprintf("%s wants %s; %s is %s", f.attr.last(), wanted(forms), shown(v.v.Ref.Text), leads))
}

func lastWord(dotted string) string { return dotted[strings.LastIndexByte(dotted, '.')+1:] }

// wanted lists the forms that an attribute takes, with an example of each.
func wanted(forms []form) string {
	var out []string
	for _, x := range forms {
		if w := wantedForm(x); !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return either(out)
}

func wantedForm(x form) string {
	switch x.Kind {
	case formLength:
		return `a length such as 12 or "3/8 in"`
	case formDimension:
		return `a dimension such as 8, "8 H7" or "30 ±0.1"`
	case formAngle:
		return `an angle in degrees such as 45 or "22 deg 30'"`
	case formNumber:
		return "a number such as 40"
	case formWhole:
		return "a whole number such as 4"
	case formText:
		return "a text in quotes"
	case formYesNo:
		return "true or false"
	case formSizes:
		return "a size or a set of sizes such as [2, 3, 4] or series(1, 13, 0.5)"
	case formSpeeds:
		return "speeds such as [120, 400, 900] or { from = 60, to = 2000 }"
	case formThread:
		return `a thread such as "M6" or "1/4-20 UNC"`
	case formTaper:
		return `a taper such as "MT2" or "1:10"`
	case formMaterial:
		return `a material such as "brass" or "CW614N"`
	case formPlace:
		return "a place such as [8, 12.5] or { left = 8, front = 12.5 }"
	case formFeed:
		return `a feed such as "0.1 mm/rev"`
	case formObject:
		return "an object { name = value }"
	case formWord:
		if len(x.OneOf) == 1 {
			return quoted(x.OneOf[0])
		}
		return "one of " + strings.ReplaceAll(quotedAll(x.OneOf), " and ", " or ")
	case formFigure:
		return either(x.OneOf)
	case formList:
		return wantedList(x)
	case formRef:
		return wantedRef(x)
	}
	return "a value"
}

func wantedList(x form) string {
	if x.Of == nil {
		return "a list"
	}
	switch x.Of.Kind {
	case formLength:
		return "a list of lengths such as [8, 12]"
	case formDimension:
		return "a list of dimensions"
	case formAngle:
		return "a list of angles such as [0, 90]"
	case formNumber, formWhole:
		return "a list of numbers such as [15, 16]"
	case formThread:
		return `a list of threads such as ["M6", "M8"]`
	case formText:
		return `a list of texts such as ["base", "cap"]`
	case formPlace:
		return "a list of places such as [[8, 12], [22, 12]]"
	case formObject:
		return "a list of objects { name = value }"
	case formWord:
		return "a list of words out of " + strings.ReplaceAll(quotedAll(x.Of.OneOf), " and ", ", ")
	case formRef:
		return "a list of references such as [" + exampleRef(x.Of.RefKinds) + "]"
	}
	return "a list"
}

func wantedRef(x form) string {
	if len(x.RefKinds) == 0 {
		return "a reference such as hole.pillar"
	}
	var kinds []string
	for _, k := range x.RefKinds {
		switch k {
		case "shop item":
			kinds = append(kinds, "a thing of the shop")
		default:
			kinds = append(kinds, article(plain(k)))
		}
	}
	return either(kinds) + " by reference, such as " + exampleRef(x.RefKinds)
}

func exampleRef(kinds []string) string {
	if len(kinds) == 0 {
		return "hole.pillar"
	}
	switch kinds[0] {
	case "shop item":
		return "vise.small"
	case "feature":
		return "hole.pillar"
	case "face":
		return "face.top"
	case "cutter":
		return "end_mill.long"
	case "instrument":
		return "micrometer.first"
	}
	return kinds[0] + ".name"
}
