package schema

import (
	"math"
	"strconv"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/drawing"
	"fettle/schema/model"
	"fettle/schema/text"
)

// val is what an expression came to while it is being read: a model value, with what a
// model value need not know.
//
// power says how a figure grows with the unit of length: 1 a length in mm, 2 an area in
// mm², 0 a bare figure. A bare figure where a length is wanted is in the unit of the folder
// it is written in; one that is a length already is never scaled again.
type val struct {
	state  knowing
	v      model.Value
	power  float64
	src    string  // digits of a plain figure as they were typed
	list   []val   // of a List
	object *object // of an Object
	ref    *target // of a RefTo
	weight int     // members in it, counted all the way down
}

type knowing uint8

const (
	known   knowing = iota
	lacking         // not known: nobody has said it
	wrong           // a finding has been made; whatever depends on it stays quiet
)

// object is an object that is not read yet: its members are read when their slot is known.
type object struct {
	expr *hclsyntax.ObjectConsExpr
	in   *node
}

var (
	wrongVal   = val{state: wrong}
	lackingVal = val{state: lacking}
)

// most is how many members a value may have, counted all the way down.
const most = 10_000

// longestText is how many bytes a text may come to.
const longestText = 4000

func figure(x, power float64, at text.Place) val {
	return val{v: model.Value{Kind: model.Number, Num: x, At: at}, power: power}
}

func textVal(s string, at text.Place) val {
	return val{v: model.Value{Kind: model.Text, Text: s, At: at}}
}

func yesNo(b bool, at text.Place) val {
	return val{v: model.Value{Kind: model.YesNo, Yes: b, At: at}}
}

// figureOf takes the figure out of a value: of a dimension its nominal, of a text what is
// written in it. False: it is none.
func (v val) figureOf(u drawing.Unit) (x, power float64, ok bool) {
	switch v.v.Kind {
	case model.Number:
		return v.v.Num, v.power, true
	case model.SizeOf:
		return v.v.Size.Nominal, 1, true
	case model.Text:
		if s, err := drawing.ParseSize(v.v.Text, u); err == nil {
			return s.Nominal, 1, true
		}
		if a, err := drawing.ParseAngle(v.v.Text); err == nil {
			return a, 0, true
		}
	case model.Set:
		if v.v.Sizes.Single && len(v.v.Sizes.List) == 1 {
			x := v.v.Sizes.List[0].Size
			return x, v.power, true
		}
	}
	return 0, 0, false
}

// what names the kind of a value in a sentence.
func (v val) what() string {
	switch v.v.Kind {
	case model.Number:
		switch {
		case v.src != "":
			return shown(v.src)
		case v.power == 0 || v.power == 1:
			return "a figure"
		case v.power == 2:
			return "an area"
		}
		return "neither a length nor a plain figure"
	case model.Text:
		return "the text " + quoted(v.v.Text)
	case model.YesNo:
		return "true or false"
	case model.SizeOf:
		return "a dimension"
	case model.List:
		return "a list"
	case model.Object:
		return "an object"
	case model.Set:
		return "a set of sizes"
	case model.ThreadOf:
		return "a thread"
	case model.TaperOf:
		return "a taper"
	case model.FeedOf:
		return "a feed"
	case model.PositionOf:
		return "a place"
	case model.MaterialOf:
		return "a material"
	case model.RefTo:
		return "a reference"
	}
	return "nothing"
}

// sameFigure says whether two figures are equal as far as reckoning with float64 goes: to
// one part in a thousand million.
func sameFigure(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-9*max(math.Abs(a), math.Abs(b))
}

// inUnits prints a figure for use within a text, in the unit of the folder, so that it
// reads back as what it is.
func inUnits(x, power float64, u drawing.Unit) string {
	x = math.Round(x/math.Pow(u.MM(), power)*1e9) / 1e9
	return strconv.FormatFloat(x, 'f', -1, 64)
}
