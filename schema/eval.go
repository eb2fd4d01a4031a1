package schema

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"fettle/schema/model"
	"fettle/schema/text"
)

// The evaluator. It walks the parser's own tree and works values out itself, because a
// dimension must keep its limits, a reference must stay one until its slot is known, and a
// figure must be read from the digits that were typed.

// read works a slot out, once. Slots that need each other are told of as a circle.
func (r *reader) read(s *slot) val {
	switch s.state {
	case wasRead:
		return s.got
	case beingRead:
		return r.circle(s)
	}
	if len(r.stack) >= 500 {
		r.say(slipTooLong, s.at, "this is worked out from more than 500 figures, one from another")
		s.state, s.got = wasRead, wrongVal
		return s.got
	}
	s.state = beingRead
	r.stack = append(r.stack, s)
	got := r.fit(r.eval(s.expr, s.of), s)
	r.stack = r.stack[:len(r.stack)-1]
	s.state = wasRead
	s.got = got
	return got
}

// circle says that a slot is worked out from itself.
func (r *reader) circle(s *slot) val {
	var names []string
	from := 0
	for i, x := range r.stack {
		if x == s {
			from = i
		}
	}
	ring := r.stack[from:]
	for _, x := range ring {
		names = append(names, x.path())
	}
	names = append(names, s.path())
	r.say(slipCircle, placeOf(s.expr.Range()), "this goes round in a circle: "+names[0]+" needs "+someLinks(names[1:]))
	for _, x := range ring {
		x.got = wrongVal
	}
	return wrongVal
}

// someLinks joins the links of a circle, leaving out the middle of a long one.
func someLinks(names []string) string {
	const few = 8
	if len(names) > few {
		names = append(append(names[:few/2:few/2], "…"), names[len(names)-few/2:]...)
	}
	return strings.Join(names, ", which needs ")
}

func (r *reader) eval(e hclsyntax.Expression, in *node) val {
	at := placeOf(e.Range())
	var v val
	switch e := e.(type) {
	case *hclsyntax.LiteralValueExpr:
		v = r.literal(e, at)
	case *hclsyntax.TemplateExpr:
		v = r.template(e.Parts, in, at)
	case *hclsyntax.TemplateWrapExpr:
		v = r.template([]hclsyntax.Expression{e.Wrapped}, in, at)
	case *hclsyntax.ParenthesesExpr:
		v = r.eval(e.Expression, in)
	case *hclsyntax.ScopeTraversalExpr:
		v = r.traverse(e.Traversal, in, at)
	case *hclsyntax.RelativeTraversalExpr:
		v = r.further(r.eval(e.Source, in), e.Traversal, in, at)
	case *hclsyntax.IndexExpr:
		v = r.index(e, in, at)
	case *hclsyntax.UnaryOpExpr:
		v = r.unary(e, in, at)
	case *hclsyntax.BinaryOpExpr:
		v = r.binary(e, in, at)
	case *hclsyntax.ConditionalExpr:
		v = r.choice(e, in)
	case *hclsyntax.TupleConsExpr:
		v = r.tuple(e, in)
	case *hclsyntax.ObjectConsExpr:
		v = val{v: model.Value{Kind: model.Object}, object: &object{e, in}, weight: len(e.Items)}
	case *hclsyntax.FunctionCallExpr:
		v = r.call(e, in, at)
	default:
		r.say(slipNotLanguage, at, "this way of writing a value is not part of the language")
		return wrongVal
	}
	v.v.At = at
	if v.weight > most {
		r.say(slipTooLong, at, fmt.Sprintf("this comes to more than %d values", most))
		return wrongVal
	}
	return v
}

func (r *reader) literal(e *hclsyntax.LiteralValueExpr, at text.Place) val {
	switch {
	case e.Val.IsNull():
		r.say(slipWrongValue, at, "what is not known is left out, and not written as null")
		return wrongVal
	case e.Val.Type() == cty.Bool:
		return yesNo(e.Val.True(), at)
	case e.Val.Type() == cty.String:
		return textVal(e.Val.AsString(), at)
	}
	typed := string(r.bytes(at))
	x, err := strconv.ParseFloat(typed, 64)
	if err != nil || math.IsInf(x, 0) || x == 0 && strings.ContainsAny(mantissa(typed), "123456789") {
		r.say(slipNotAFigure, at, shown(typed)+" is not a figure that can be reckoned with")
		return wrongVal
	}
	v := figure(x, 0, at)
	v.src = typed
	return v
}

func mantissa(digits string) string {
	m, _, _ := strings.Cut(strings.ToLower(digits), "e")
	return m
}

// template puts a text together from its pieces.
func (r *reader) template(parts []hclsyntax.Expression, in *node, at text.Place) val {
	var b strings.Builder
	worst := known
	for _, p := range parts {
		if l, ok := p.(*hclsyntax.LiteralValueExpr); ok && !l.Val.IsNull() && l.Val.Type() == cty.String {
			b.WriteString(l.Val.AsString())
			continue
		}
		v := r.value(r.eval(p, in), in)
		worst = max(worst, v.state)
		if v.state != known {
			continue
		}
		if v.v.Kind == model.Text {
			b.WriteString(v.v.Text)
		} else if x, power, ok := v.figureOf(in.home.unit); ok {
			b.WriteString(inUnits(x, power, in.home.unit))
		} else {
			r.say(slipWrongValue, placeOf(p.Range()), "only a figure or a text can stand inside a text; this is "+v.what())
			worst = wrong
		}
		if b.Len() > longestText {
			r.say(slipTooLong, at, fmt.Sprintf("this text comes to more than %d letters", longestText))
			return wrongVal
		}
	}
	if worst != known {
		return val{state: worst}
	}
	return textVal(b.String(), at)
}

func (r *reader) tuple(e *hclsyntax.TupleConsExpr, in *node) val {
	v := val{v: model.Value{Kind: model.List}, list: make([]val, 0, len(e.Exprs))}
	for _, x := range e.Exprs {
		m := r.eval(x, in)
		v.weight += 1 + m.weight
		v.list = append(v.list, m)
	}
	return v
}

func (r *reader) choice(e *hclsyntax.ConditionalExpr, in *node) val {
	c := r.value(r.eval(e.Condition, in), in)
	switch {
	case c.state != known:
		return val{state: c.state}
	case c.v.Kind != model.YesNo:
		r.say(slipWrongValue, placeOf(e.Condition.Range()), "before the ? something that is true or false is wanted; this is "+c.what())
		return wrongVal
	case c.v.Yes:
		return r.eval(e.TrueResult, in)
	}
	return r.eval(e.FalseResult, in)
}

// value turns a reference to something written into what is written there.
func (r *reader) value(v val, in *node) val {
	if v.state == known && v.v.Kind == model.RefTo {
		return r.deref(v)
	}
	return v
}

// number works an expression out and takes its figure.
func (r *reader) number(e hclsyntax.Expression, in *node) (x, power float64, state knowing) {
	v := r.value(r.eval(e, in), in)
	if v.state != known {
		return 0, 0, v.state
	}
	x, power, ok := v.figureOf(in.home.unit)
	if !ok {
		r.say(slipWrongValue, placeOf(e.Range()), "a figure is wanted to reckon with; this is "+v.what())
		return 0, 0, wrong
	}
	return x, power, known
}

// index reads kind.label[which]: a member of a set, picked by any expression.
func (r *reader) index(e *hclsyntax.IndexExpr, in *node, at text.Place) val {
	c := r.eval(e.Collection, in)
	if c.state != known {
		return val{state: c.state}
	}
	k := r.value(r.eval(e.Key, in), in)
	if k.state != known {
		return val{state: k.state}
	}
	return r.pick(c, k, placeOf(e.Key.Range()), at, in)
}

// further reads what stands behind a value that was picked: drill.jobbers[inch(1/4)].diameter.
func (r *reader) further(v val, t hcl.Traversal, in *node, at text.Place) val {
	if v.state != known {
		return val{state: v.state}
	}
	if v.v.Kind != model.RefTo {
		r.say(slipWrongValue, at, fmt.Sprintf("nothing can be read from %s", v.what()))
		return wrongVal
	}
	return r.walk(v.ref, stepsOf(t), at, in)
}
