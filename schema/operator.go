package schema

import (
	"fmt"
	"math"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/model"
	"fettle/schema/text"
)

// Operators: sums and products with their units, comparisons, and what follows when one side
// is not known.

func (r *reader) unary(e *hclsyntax.UnaryOpExpr, in *node, at text.Place) val {
	if e.Op == hclsyntax.OpLogicalNot {
		b, state := r.truth(e.Val, in)
		if state != known {
			return val{state: state}
		}
		return yesNo(!b, at)
	}
	v := r.value(r.eval(e.Val, in), in)
	if v.state != known {
		return val{state: v.state}
	}
	x, power, ok := v.figureOf(in.home.unit)
	if !ok {
		r.say(slipWrongValue, placeOf(e.Val.Range()), "a minus needs a figure after it; this is "+v.what())
		return wrongVal
	}
	out := figure(-x, power, at)
	if v.src != "" {
		out.src = "-" + v.src
	}
	return out
}

func (r *reader) truth(e hclsyntax.Expression, in *node) (bool, knowing) {
	v := r.value(r.eval(e, in), in)
	if v.state != known {
		return false, v.state
	}
	if v.v.Kind != model.YesNo {
		r.say(slipWrongValue, placeOf(e.Range()), "true or false is wanted here; this is "+v.what())
		return false, wrong
	}
	return v.v.Yes, known
}

func (r *reader) binary(e *hclsyntax.BinaryOpExpr, in *node, at text.Place) val {
	switch e.Op {
	case hclsyntax.OpLogicalAnd, hclsyntax.OpLogicalOr:
		return r.andOr(e, in, at)
	case hclsyntax.OpEqual, hclsyntax.OpNotEqual:
		return r.equal(e, in, at)
	}
	a, pa, sa := r.number(e.LHS, in)
	b, pb, sb := r.number(e.RHS, in)
	if s := max(sa, sb); s != known {
		return val{state: s}
	}
	mm := in.home.unit.MM()
	switch e.Op {
	case hclsyntax.OpMultiply:
		return r.finite(a*b, pa+pb, at)
	case hclsyntax.OpDivide, hclsyntax.OpModulo:
		if b == 0 {
			r.say(slipNought, placeOf(e.RHS.Range()), "this is nought, and nothing can be divided by it")
			return wrongVal
		}
		if e.Op == hclsyntax.OpDivide {
			return r.finite(a/b, pa-pb, at)
		}
	}
	// the rest compare like with like: a bare figure beside a length is in the folder's unit
	if pa != pb {
		switch {
		case pa == 0:
			a, pa = a*math.Pow(mm, pb), pb
		case pb == 0:
			b = b * math.Pow(mm, pa)
		default:
			r.say(slipWrongValue, at, "a length and an area cannot be added or compared")
			return wrongVal
		}
	}
	switch e.Op {
	case hclsyntax.OpAdd:
		return r.finite(a+b, pa, at)
	case hclsyntax.OpSubtract:
		return r.finite(a-b, pa, at)
	case hclsyntax.OpModulo:
		return r.finite(math.Mod(a, b), pa, at)
	case hclsyntax.OpLessThan:
		return yesNo(a < b && !sameFigure(a, b), at)
	case hclsyntax.OpLessThanOrEqual:
		return yesNo(a < b || sameFigure(a, b), at)
	case hclsyntax.OpGreaterThan:
		return yesNo(a > b && !sameFigure(a, b), at)
	case hclsyntax.OpGreaterThanOrEqual:
		return yesNo(a > b || sameFigure(a, b), at)
	}
	r.say(slipNotLanguage, at, "this sign is not part of the language")
	return wrongVal
}

// finite gives a figure, or says that it is none.
func (r *reader) finite(x, power float64, at text.Place) val {
	if math.IsInf(x, 0) || math.IsNaN(x) {
		r.say(slipNotAFigure, at, "this comes to no figure that can be reckoned with")
		return wrongVal
	}
	return figure(x, power, at)
}

// andOr settles what it can from one side where the other is not known.
func (r *reader) andOr(e *hclsyntax.BinaryOpExpr, in *node, at text.Place) val {
	decides := e.Op == hclsyntax.OpLogicalOr // the answer that one side alone settles
	a, sa := r.truth(e.LHS, in)
	if sa == known && a == decides {
		return yesNo(decides, at)
	}
	b, sb := r.truth(e.RHS, in)
	switch {
	case sa == wrong || sb == wrong:
		return wrongVal
	case sb == known && b == decides:
		return yesNo(decides, at)
	case sa == lacking || sb == lacking:
		return lackingVal
	}
	return yesNo(!decides, at)
}

func (r *reader) equal(e *hclsyntax.BinaryOpExpr, in *node, at text.Place) val {
	a, b := r.eval(e.LHS, in), r.eval(e.RHS, in)
	if s := max(a.state, b.state); s != known {
		return val{state: s}
	}
	same, state := false, known
	if a.v.Kind == model.RefTo && b.v.Kind == model.RefTo && a.v.Ref.Sub == "" && b.v.Ref.Sub == "" {
		same = a.v.Ref.Path() == b.v.Ref.Path()
	} else if same, state = r.alike(r.value(a, in), r.value(b, in), in); state == wrong {
		r.say(slipWrongValue, at, fmt.Sprintf("these two can never be equal: one is %s, the other %s", r.value(a, in).what(), r.value(b, in).what()))
	}
	if state != known {
		return val{state: state}
	}
	return yesNo(same == (e.Op == hclsyntax.OpEqual), at)
}

// alike compares two values of any kind; wrong where they can never be equal.
func (r *reader) alike(a, b val, in *node) (bool, knowing) {
	if s := max(a.state, b.state); s != known {
		return false, s
	}
	switch {
	case a.v.Kind == model.YesNo && b.v.Kind == model.YesNo:
		return a.v.Yes == b.v.Yes, known
	case a.v.Kind == model.Text && b.v.Kind == model.Text:
		return a.v.Text == b.v.Text, known
	case a.v.Kind == model.ThreadOf && b.v.Kind == model.ThreadOf:
		return a.v.Thread.Same(b.v.Thread), known
	case a.v.Kind == model.TaperOf && b.v.Kind == model.TaperOf:
		return a.v.Taper.Same(b.v.Taper), known
	}
	x, px, okx := a.figureOf(in.home.unit)
	y, py, oky := b.figureOf(in.home.unit)
	if !okx || !oky {
		return false, wrong
	}
	mm := in.home.unit.MM()
	if px == 0 {
		x *= math.Pow(mm, py)
	} else if py == 0 {
		y *= math.Pow(mm, px)
	}
	return sameFigure(x, y), known
}
