package eval

import "fettle/schema/model"

// An operation that names several tools uses them in turn: a centre drill, drills and a reamer on a hole, a
// slot drill before the cutter that widens the foot of a tee slot. It is played as one step for each
// of them, at the same things. What is written of the size afterwards, and of the process, is said of the
// last. Taps of one set, and tools that each do the whole by themselves, are not used in turn here: the
// first of them that passes is taken.

// inTurn gives a step for each of the tools that are used in turn; the step itself where there is one.
func (p *Part) inTurn(st *Step) []*Step {
	own := st.Step
	if own == nil || st.Kind != "operation" || len(own.Tool.V) < 2 || !takesInTurn(st) {
		return []*Step{st}
	}
	var groups [][]model.Ref
	for i, r := range own.Tool.V {
		if r.Item == nil {
			return []*Step{st}
		}
		if i > 0 && r.Item.Kind == "tap" && own.Tool.V[i-1].Item.Kind == "tap" {
			groups[len(groups)-1] = append(groups[len(groups)-1], r)
			continue
		}
		groups = append(groups, []model.Ref{r})
	}
	var out []*Step
	for i, g := range groups {
		one := *own
		one.Tool.V = g
		next := *st
		next.Step = &one
		if len(groups) > 1 {
			next.Spot.Step += " with " + g[0].Path()
		}
		if i < len(groups)-1 {
			one.To, one.Leaves, one.By = model.Known[model.Depth]{}, model.Known[float64]{}, model.Known[string]{}
		}
		next.Makes = madeBy(st.Makes, g[0].Item.Kind)
		out = append(out, &next)
	}
	return out
}

// takesInTurn says whether all that a step makes is of the kinds that want several tools, one after another.
func takesInTurn(st *Step) bool {
	for _, t := range st.Makes {
		if t.Form == nil {
			return false
		}
		switch t.Form.Feature.Kind {
		case "hole", "bore", "tee_slot", "dovetail":
		default:
			return false
		}
	}
	return len(st.Makes) > 0
}

// partBy is the part of a hole that a tool makes; other tools make the hole itself.
var partBy = map[string]string{"tap": "thread", "countersink": "countersink", "counterbore": "counterbore"}

// madeBy is what of the things made one of several tools makes: a tap the thread, a drill before it the hole.
func madeBy(makes []Target, kind string) []Target {
	var out []Target
	seen := map[*Form]bool{}
	for _, t := range makes {
		switch {
		case t.Sub == partBy[kind]:
		case t.Sub == "thread" && partBy[kind] == "":
			t.Sub = ""
		default:
			continue
		}
		if partBy[kind] == "" && seen[t.Form] {
			continue
		}
		seen[t.Form] = true
		out = append(out, t)
	}
	if len(out) == 0 {
		return makes
	}
	return out
}
