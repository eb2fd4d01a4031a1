package schema

import (
	"fmt"
	"math"
	"sort"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/drawing"
	"fettle/schema/model"
	"fettle/schema/text"
)

// function is one function of the language.
type function struct {
	least, most int    // how many values it takes; most 0: as many as are there
	usage       string // how it is written
	do          func(r *reader, a []arg, at text.Place, in *node) val
}

// arg is one value given to a function.
type arg struct {
	x, power float64
	at       text.Place
}

var functions = map[string]function{
	"inch":   {1, 1, "inch(3/8)", func(r *reader, a []arg, at text.Place, _ *node) val { return r.unitOf("inch", a[0], 25.4, at) }},
	"mm":     {1, 1, "mm(12)", func(r *reader, a []arg, at text.Place, _ *node) val { return r.unitOf("mm", a[0], 1, at) }},
	"thou":   {1, 1, "thou(5)", func(r *reader, a []arg, at text.Place, _ *node) val { return r.unitOf("thou", a[0], 0.0254, at) }},
	"abs":    {1, 1, "abs(x)", func(r *reader, a []arg, at text.Place, _ *node) val { return figure(math.Abs(a[0].x), a[0].power, at) }},
	"sqrt":   {1, 1, "sqrt(x)", (*reader).root},
	"sin":    {1, 1, "sin(30)", func(r *reader, a []arg, at text.Place, _ *node) val { return r.ofAngle("sin", a[0], at) }},
	"cos":    {1, 1, "cos(30)", func(r *reader, a []arg, at text.Place, _ *node) val { return r.ofAngle("cos", a[0], at) }},
	"tan":    {1, 1, "tan(30)", func(r *reader, a []arg, at text.Place, _ *node) val { return r.ofAngle("tan", a[0], at) }},
	"min":    {1, 0, "min(a, b)", func(r *reader, a []arg, at text.Place, in *node) val { return r.extreme(a, at, in, -1) }},
	"max":    {1, 0, "max(a, b)", func(r *reader, a []arg, at text.Place, in *node) val { return r.extreme(a, at, in, 1) }},
	"round":  {1, 2, "round(x) or round(x, 2) for two decimals", (*reader).round},
	"series": {3, 3, "series(from, to, step)", (*reader).series},
}

func functionNames() []string {
	out := []string{"set"}
	for n := range functions {
		out = append(out, n)
	}
	sort.Strings(out)
	return out
}

func (r *reader) call(e *hclsyntax.FunctionCallExpr, in *node, at text.Place) val {
	if e.Name == "set" {
		return r.usualSet(e, in, at)
	}
	f, ok := functions[e.Name]
	if !ok {
		says := fmt.Sprintf("no function is called %s", quoted(e.Name))
		if n := r.near(e.Name, functionNames()); n != "" {
			says += "; the nearest is " + n
		} else {
			says += "; there are " + all(functionNames())
		}
		r.say(slipUnknownName, placeOf(e.NameRange), says)
		return wrongVal
	}
	if n := len(e.Args); n < f.least || f.most > 0 && n > f.most {
		r.say(slipWrongValue, at, fmt.Sprintf("%s is written %s", e.Name, f.usage))
		return wrongVal
	}
	args := make([]arg, 0, len(e.Args))
	worst := known
	for _, x := range e.Args {
		n, power, state := r.number(x, in)
		worst = max(worst, state)
		args = append(args, arg{n, power, placeOf(x.Range())})
	}
	if worst != known {
		return val{state: worst}
	}
	return f.do(r, args, at, in)
}

// unitOf says the unit of a bare figure.
func (r *reader) unitOf(name string, a arg, mm float64, at text.Place) val {
	if a.power != 0 {
		r.say(slipWrongValue, a.at, fmt.Sprintf("%s says the unit of a bare figure; this is a length already", name))
		return wrongVal
	}
	return r.finite(a.x*mm, 1, at)
}

func (r *reader) root(a []arg, at text.Place, _ *node) val {
	if a[0].x < 0 {
		r.say(slipNotAFigure, a[0].at, fmt.Sprintf("this comes to %s, and a figure below nought has no square root", model.Figure(a[0].x)))
		return wrongVal
	}
	return figure(math.Sqrt(a[0].x), a[0].power/2, at)
}

func (r *reader) ofAngle(name string, a arg, at text.Place) val {
	if a.power != 0 {
		r.say(slipWrongValue, a.at, fmt.Sprintf("%s takes an angle in degrees; this is a length", name))
		return wrongVal
	}
	deg := math.Mod(a.x, 360)
	s, c := math.Sincos(deg * math.Pi / 180)
	switch deg { // exactly, where a right angle makes it so
	case 0, 180, -180:
		s = 0
	case 90, 270, -90, -270:
		c = 0
	}
	switch name {
	case "sin":
		return figure(s, 0, at)
	case "cos":
		return figure(c, 0, at)
	}
	if c == 0 {
		r.say(slipNotAFigure, a.at, "an angle of 90 degrees has no tangent")
		return wrongVal
	}
	return figure(s/c, 0, at)
}

// alikeArgs brings figures to one power: bare ones beside lengths are in the folder's unit.
func (r *reader) alikeArgs(a []arg, at text.Place, in *node) (power float64, ok bool) {
	for _, x := range a {
		if x.power != 0 {
			if power != 0 && x.power != power {
				r.say(slipWrongValue, at, "lengths and areas cannot be mixed here")
				return 0, false
			}
			power = x.power
		}
	}
	for i := range a {
		if a[i].power == 0 {
			a[i].x *= math.Pow(in.home.unit.MM(), power)
		}
	}
	return power, true
}

func (r *reader) extreme(a []arg, at text.Place, in *node, sign float64) val {
	power, ok := r.alikeArgs(a, at, in)
	if !ok {
		return wrongVal
	}
	best := a[0].x
	for _, x := range a {
		if (x.x-best)*sign > 0 {
			best = x.x
		}
	}
	return figure(best, power, at)
}

// round rounds in the folder's unit, half away from nought.
func (r *reader) round(a []arg, at text.Place, in *node) val {
	places := 0.0
	if len(a) > 1 {
		places = a[1].x
		if a[1].power != 0 || places != math.Trunc(places) || places < 0 || places > 9 {
			r.say(slipWrongValue, a[1].at, "how many decimals: a whole number from 0 to 9")
			return wrongVal
		}
	}
	unit := math.Pow(in.home.unit.MM(), a[0].power)
	scale := math.Pow(10, places)
	return r.finite(math.Round(a[0].x/unit*scale)/scale*unit, a[0].power, at)
}

// series is sizes in equal steps. It is kept as three figures and never spelled out.
func (r *reader) series(a []arg, at text.Place, in *node) val {
	power, ok := r.alikeArgs(a, at, in)
	if !ok {
		return wrongVal
	}
	from, to, by := a[0].x, a[1].x, a[2].x
	switch {
	case !(by > 0):
		r.say(slipOutOfRange, a[2].at, "the step of a series is more than nought")
		return wrongVal
	case to < from:
		r.say(slipOutOfRange, at, "a series is written series(from, to, step) and goes upwards")
		return wrongVal
	}
	v := val{v: model.Value{Kind: model.Set, At: at}, power: power}
	v.v.Sizes.Series = []model.Series{{From: from, To: to, By: by}}
	return v
}

// usualSet is a set of sizes that the trade sells by a name.
func (r *reader) usualSet(e *hclsyntax.FunctionCallExpr, in *node, at text.Place) val {
	if len(e.Args) != 1 {
		r.say(slipWrongValue, at, `set is written set("number drills")`)
		return wrongVal
	}
	name := r.value(r.eval(e.Args[0], in), in)
	if name.state != known {
		return val{state: name.state}
	}
	here := placeOf(e.Args[0].Range())
	if name.v.Kind != model.Text {
		r.say(slipWrongValue, here, `set takes the name of a usual set, such as "number drills"; this is `+name.what())
		return wrongVal
	}
	s, ok := setNamed(name.v.Text)
	if !ok {
		says := fmt.Sprintf("no usual set is called %s", quoted(name.v.Text))
		if n := r.near(name.v.Text, setNames()); n != "" {
			says += "; the nearest is " + quoted(n)
		} else {
			says += "; there are " + quotedAll(setNames())
		}
		r.say(slipUnknownName, here, says)
		return wrongVal
	}
	return val{v: model.Value{Kind: model.Set, Sizes: s, At: at}, power: 1}
}

func quotedAll(ws []string) string {
	var out []string
	for _, w := range ws {
		out = append(out, quoted(w))
	}
	return all(out)
}

// bareSize is a figure as a size, in the unit of the folder unless it is a length already.
func bareSize(v val, u drawing.Unit) drawing.Size {
	if v.power == 0 {
		return drawing.PlainSize(v.v.Num*u.MM(), v.src, u)
	}
	s := drawing.PlainSize(v.v.Num, "", u)
	return s
}
