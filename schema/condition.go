package schema

import (
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/model"
	"fettle/schema/text"
)

// Conditions. `when` of a house rule is an expression over the thing that the rule looks
// at: `operation.cutting == "climb"`. It is compiled once, to a tree that knows nothing of
// HCL, and asked of each thing in turn. A fact that is missing makes what hangs on it not
// known; `x == null` asks whether a fact is missing.

// condition is a compiled `when`.
type condition struct{ root *term }

type term struct {
	op   string // "path", "value", "null", "not", "minus", "and", "or", "==", "!=", "<", "<=", ">", ">="; "+", "-", "*", "/"
	path []string
	fact string
	unit bool // of a path: a length in mm
	v    model.Value
	bare bool // of a figure: a bare one, in the unit of the folder
	a, b *term
	mm   float64 // of a bare figure: mm in the folder's unit
	at   text.Place
}

// condition compiles the `when` of a house rule; nil after a finding.
func (r *reader) condition(s *slot) model.Expr {
	thing := ""
	if l := s.of.named["looks_at"]; l != nil {
		thing = r.read(l).v.Text
	}
	t := r.term(s.expr, s.of, thing)
	if t == nil || !r.answers(t) {
		return nil
	}
	return condition{t}
}

// answers says whether a condition can come out as yes or no.
func (r *reader) answers(t *term) bool {
	switch {
	case t.op == "value" && t.v.Kind != model.YesNo, t.op == "null", slices.Contains([]string{"minus", "+", "-", "*", "/"}, t.op):
		r.say(slipWrongValue, t.at, "when wants a condition such as operation.cutting == \"climb\"; this is no question that yes or no answers")
		return false
	}
	return true
}

func (r *reader) term(e hclsyntax.Expression, in *node, thing string) *term {
	at := placeOf(e.Range())
	switch e := e.(type) {
	case *hclsyntax.ParenthesesExpr:
		return r.term(e.Expression, in, thing)
	case *hclsyntax.LiteralValueExpr:
		if e.Val.IsNull() {
			return &term{op: "null", at: at}
		}
	case *hclsyntax.ScopeTraversalExpr:
		if e.Traversal.RootName() == thing {
			return r.pathTerm(e.Traversal, thing, at)
		}
	case *hclsyntax.UnaryOpExpr:
		a := r.term(e.Val, in, thing)
		if a == nil {
			return nil
		}
		if e.Op == hclsyntax.OpLogicalNot {
			return &term{op: "not", a: a, at: at}
		}
		return &term{op: "minus", a: a, at: at}
	case *hclsyntax.BinaryOpExpr:
		op := conditionOps[e.Op]
		a, b := r.term(e.LHS, in, thing), r.term(e.RHS, in, thing)
		if op == "" {
			r.say(slipNotLanguage, at, "this sign is not part of a condition")
			return nil
		}
		if a == nil || b == nil {
			return nil
		}
		return &term{op: op, a: a, b: b, at: at}
	}
	v := r.value(r.eval(e, in), in)
	if v.state != known {
		return nil
	}
	return &term{op: "value", v: v.v, bare: v.power == 0, mm: in.home.unit.MM(), at: at}
}

var conditionOps = map[*hclsyntax.Operation]string{
	hclsyntax.OpLogicalAnd: "and", hclsyntax.OpLogicalOr: "or", hclsyntax.OpEqual: "==", hclsyntax.OpNotEqual: "!=",
	hclsyntax.OpLessThan: "<", hclsyntax.OpLessThanOrEqual: "<=", hclsyntax.OpGreaterThan: ">", hclsyntax.OpGreaterThanOrEqual: ">=",
	hclsyntax.OpAdd: "+", hclsyntax.OpSubtract: "-", hclsyntax.OpMultiply: "*", hclsyntax.OpDivide: "/",
}

func (r *reader) pathTerm(t hcl.Traversal, thing string, at text.Place) *term {
	out := &term{op: "path", fact: thing, at: at}
	for _, s := range t[1:] {
		a, ok := s.(hcl.TraverseAttr)
		if !ok {
			r.say(slipNotLanguage, at, "a condition asks for facts by name, such as "+thing+".speed")
			return nil
		}
		out.path = append(out.path, a.Name)
		out.fact += "." + a.Name
	}
	if len(out.path) == 0 {
		r.say(slipWrongValue, at, "a condition asks for a fact of it, such as "+thing+".speed")
		return nil
	}
	k := theTable().byName[thing]
	if k == nil {
		return out
	}
	row, ok := k.attr(out.path[0])
	if !ok {
		says := thing + " has no " + quoted(out.path[0])
		if n := r.near(out.path[0], k.words()); n != "" {
			says += "; the nearest is " + n
		}
		r.say(slipUnknownWord, at, says)
		return nil
	}
	out.path[0] = row.Name
	out.unit = row.Unit == "mm" || len(out.path) > 1 && lengthNamed(out.path[len(out.path)-1])
	return out
}

// lengthNamed says whether an attribute of that name is a length wherever it stands.
func lengthNamed(name string) bool {
	for _, k := range theTable().kinds {
		if a, ok := k.attr(name); ok && a.Unit == "mm" {
			return true
		}
	}
	return false
}

// Eval asks the condition of one thing.
func (c condition) Eval(look func(path []string) model.Value) (model.Answer, []model.Lack) {
	e := asking{look: look}
	v, known := e.eval(c.root)
	if !known {
		return model.NotKnown, e.lacks
	}
	if v.Kind == model.YesNo && v.Yes {
		return model.Yes, nil
	}
	return model.No, nil
}

// asking is one condition being asked.
type asking struct {
	look  func(path []string) model.Value
	lacks []model.Lack
}

func truth(b bool) (model.Value, bool) { return model.Value{Kind: model.YesNo, Yes: b}, true }

func (e *asking) eval(t *term) (model.Value, bool) {
	switch t.op {
	case "value":
		return t.v, true
	case "path":
		v := e.look(t.path)
		if v.Kind == model.NoValue {
			e.lacks = append(e.lacks, model.Lack{Fact: t.fact, At: t.at})
			return v, false
		}
		return v, true
	case "null":
		return model.Value{}, true
	case "not":
		v, known := e.eval(t.a)
		return model.Value{Kind: model.YesNo, Yes: !v.Yes}, known
	case "minus":
		x, known := e.figure(t.a, nil)
		return model.Value{Kind: model.Number, Num: -x}, known
	case "and", "or":
		return e.andOr(t)
	case "==", "!=":
		return e.equal(t)
	}
	a, ka := e.figure(t.a, t.b)
	b, kb := e.figure(t.b, t.a)
	if !ka || !kb {
		return model.Value{}, false
	}
	return reckon(t.op, a, b)
}

func reckon(op string, a, b float64) (model.Value, bool) {
	num := func(x float64) (model.Value, bool) { return model.Value{Kind: model.Number, Num: x}, true }
	same := sameFigure(a, b)
	switch op {
	case "<":
		return truth(a < b && !same)
	case "<=":
		return truth(a < b || same)
	case ">":
		return truth(a > b && !same)
	case ">=":
		return truth(a > b || same)
	case "+":
		return num(a + b)
	case "-":
		return num(a - b)
	case "*":
		return num(a * b)
	case "/":
		if b == 0 {
			return model.Value{}, false
		}
		return num(a / b)
	}
	return model.Value{}, false
}

// andOr is settled by one side where that side is enough, whatever the other is.
func (e *asking) andOr(t *term) (model.Value, bool) {
	before := len(e.lacks)
	a, ka := e.eval(t.a)
	b, kb := e.eval(t.b)
	enough := t.op == "or"
	if ka && a.Yes == enough || kb && b.Yes == enough {
		e.lacks = e.lacks[:before]
		return truth(enough)
	}
	if !ka || !kb {
		return model.Value{}, false
	}
	return truth(!enough)
}

func (e *asking) equal(t *term) (model.Value, bool) {
	for _, side := range [2][2]*term{{t.a, t.b}, {t.b, t.a}} {
		if side[0].op == "null" {
			before := len(e.lacks)
			_, known := e.eval(side[1])
			e.lacks = e.lacks[:before]
			return truth(known != (t.op == "=="))
		}
	}
	a, ka := e.eval(t.a)
	b, kb := e.eval(t.b)
	if !ka || !kb {
		return model.Value{}, false
	}
	same := false
	switch {
	case a.Kind == model.Text || b.Kind == model.Text:
		same = a.Kind == b.Kind && a.Text == b.Text
	case a.Kind == model.YesNo || b.Kind == model.YesNo:
		same = a.Kind == b.Kind && a.Yes == b.Yes
	case a.Kind == model.RefTo || b.Kind == model.RefTo:
		same = a.Kind == b.Kind && a.Ref.Path() == b.Ref.Path()
	default:
		x, kx := e.figure(t.a, t.b)
		y, ky := e.figure(t.b, t.a)
		if !kx || !ky {
			return model.Value{}, false
		}
		same = sameFigure(x, y)
	}
	return truth(same == (t.op == "=="))
}

// figure takes the figure out of a term; a bare figure beside a length is in the unit of
// the folder that the rule is written in.
func (e *asking) figure(t, beside *term) (float64, bool) {
	v, known := e.eval(t)
	if !known {
		return 0, false
	}
	x := v.Num
	switch v.Kind {
	case model.SizeOf:
		x = v.Size.Nominal
	case model.Set:
		if !v.Sizes.Single || len(v.Sizes.List) != 1 {
			return 0, false
		}
		x = v.Sizes.List[0].Size
	case model.Number:
	default:
		return 0, false
	}
	if t.op == "value" && t.bare && beside != nil && beside.op == "path" && beside.unit {
		x *= t.mm
	}
	return x, true
}
