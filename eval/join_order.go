package eval

import (
	"sort"

	"fettle/schema/model"
)

// What must come before what, over all parts: the set-ups of a part in their order, those of
// an assembly after those of its parts, `after`, a hole spotted through another part's hole, a
// mate that is tried on, a part that holds another or cuts it.

// Waits says why one stretch of work comes after another.
type Waits struct {
	First, Then *model.SetUp
	Why         string // "after", "the order of part.a", "spotted through part.a.hole.x"
}

// waits lists every reason, in the order of the files.
func (t *Trace) waits() []Waits { return t.order }

// inOrder works out what comes before what.
func (t *Trace) inOrder() {
	t.order = t.reasons()
	t.then = map[*model.SetUp][]Waits{}
	for _, w := range t.order {
		t.then[w.First] = append(t.then[w.First], w)
	}
}

func (t *Trace) reasons() []Waits {
	var out []Waits
	add := func(first, then *model.SetUp, why string) {
		if first != nil && then != nil && first != then {
			out = append(out, Waits{first, then, why})
		}
	}
	each := func(of *model.Item, work []*model.SetUp) {
		for i, s := range work {
			if i > 0 {
				add(work[i-1], s, "the order of "+of.Path())
			}
			for _, r := range s.After.V {
				add(t.lastOf(r.Item), s, "after = "+r.Path())
			}
			for _, st := range s.Steps {
				for _, r := range [2]model.Ref{st.Located.V, st.Tries.V} {
					if up := r.Part(); up != nil && up != of {
						add(t.MakerOf(r.Item), s, "it needs "+r.Path())
					}
				}
			}
			for _, r := range t.uses(s) {
				add(t.lastOf(r), s, "it needs "+r.Path())
			}
		}
	}
	for _, p := range t.Build.Parts {
		each(p.Item, p.Work)
	}
	for _, a := range t.Build.Assemblies {
		if len(a.Work) > 0 {
			for _, r := range a.Of.V {
				add(t.lastBefore(r.Item, a), a.Work[0], "the order of "+a.Path())
			}
		}
		each(a.Item, a.Work)
	}
	return out
}

// lastBefore is the last stretch of work of a part or assembly before it is joined in another: what is
// written to come after that comes later.
func (t *Trace) lastBefore(i *model.Item, a *model.Assembly) *model.SetUp {
	for _, p := range t.Build.Parts {
		if p.Item != i {
			continue
		}
		var last *model.SetUp
		for _, s := range p.Work {
			for _, r := range s.After.V {
				if r.Item != nil && (r.Item == a.Item || r.Item.Up("assembly") == a.Item) {
					return last
				}
			}
			last = s
		}
		return last
	}
	return t.lastOf(i)
}

// lastOf is the last stretch of work of a part or assembly, or the set-up itself.
func (t *Trace) lastOf(i *model.Item) *model.SetUp {
	last := func(ws []*model.SetUp) *model.SetUp {
		if len(ws) == 0 {
			return nil
		}
		return ws[len(ws)-1]
	}
	for _, p := range t.Build.Parts {
		if p.Item == i {
			return last(p.Work)
		}
		for _, s := range p.Work {
			if s.Item == i {
				return s
			}
		}
	}
	for _, a := range t.Build.Assemblies {
		if a.Item == i {
			return last(a.Work)
		}
		for _, s := range a.Work {
			if s.Item == i {
				return s
			}
		}
	}
	return nil
}

// MakerOf is the last stretch of work that makes a feature, in its part or in an assembly; of a
// part its last one.
func (t *Trace) MakerOf(i *model.Item) *model.SetUp {
	if i.Kind == "part" {
		return t.lastOf(i)
	}
	return t.makerIn(t.partOf(i.Up("part")), i)
}

// makerIn is the same of a feature in one part: its own, or the mirrored one that shares it.
func (t *Trace) makerIn(p *Part, i *model.Item) *model.SetUp {
	if p == nil {
		return nil
	}
	var out *model.SetUp
	for _, s := range t.work(p) {
		for _, st := range s.Steps {
			for _, r := range st.Makes.V {
				if r.Item == i && (r.Sub == "" || out == nil) {
					out = s
				}
			}
		}
		for _, r := range s.Makes.V {
			if r.Item == i {
				out = s
			}
		}
	}
	return out
}

// uses lists the parts of this build that a set-up holds with or cuts with: things of a shop
// that are made as one.
func (t *Trace) uses(s *model.SetUp) []*model.Item {
	var out []*model.Item
	see := func(rs ...model.Ref) {
		for _, r := range rs {
			if r.Item == nil {
				continue
			}
			if a := r.Item.Attr("made_as"); a != nil && a.Value.Ref.Item != nil {
				out = append(out, a.Value.Ref.Item)
			}
		}
	}
	see(s.Hold.V...)
	see(s.Tool.V...)
	see(s.Holder.V...)
	see(s.Carries.V...)
	see(s.Between.V, s.Driver.V, s.Support.By.V)
	for _, st := range s.Steps {
		see(st.Tool.V...)
		see(st.Holder.V...)
		see(st.With.V...)
	}
	return out
}

// Rings lists the rings of waiting, each with its reasons in turn, the shortest first. Each
// set-up stands in one ring at most.
func (t *Trace) Rings() [][]Waits {
	all := t.waits()
	left := stuck(all)
	next := map[*model.SetUp][]Waits{}
	for _, w := range all {
		if left[w.First] && left[w.Then] {
			next[w.First] = append(next[w.First], w)
		}
	}
	var out [][]Waits
	ringed := map[*model.SetUp]bool{}
	for _, w := range all {
		if !left[w.First] || !left[w.Then] || ringed[w.First] || ringed[w.Then] {
			continue
		}
		if back := way(next, w.Then, w.First); back != nil {
			ring := append([]Waits{w}, back...)
			for _, x := range ring {
				ringed[x.First] = true
			}
			out = append(out, ring)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return len(out[i]) < len(out[j]) })
	return out
}

// stuck are the set-ups that remain when all are done that wait for nothing, and again: those in
// rings and those that come after one.
func stuck(all []Waits) map[*model.SetUp]bool {
	left := map[*model.SetUp]bool{}
	in := map[*model.SetUp]int{}
	next := map[*model.SetUp][]*model.SetUp{}
	for _, w := range all {
		left[w.First], left[w.Then] = true, true
		in[w.Then]++
		next[w.First] = append(next[w.First], w.Then)
	}
	var free []*model.SetUp
	for s := range left {
		if in[s] == 0 {
			free = append(free, s)
		}
	}
	for ; len(free) > 0; free = free[1:] {
		delete(left, free[0])
		for _, s := range next[free[0]] {
			if in[s]--; in[s] == 0 {
				free = append(free, s)
			}
		}
	}
	return left
}

// way finds the fewest steps that lead from one set-up to another.
func way(next map[*model.SetUp][]Waits, from, to *model.SetUp) []Waits {
	came := map[*model.SetUp]*Waits{from: nil}
	for queue := []*model.SetUp{from}; len(queue) > 0; queue = queue[1:] {
		s := queue[0]
		if s == to {
			var out []Waits
			for w := came[s]; w != nil; w = came[w.First] {
				out = append([]Waits{*w}, out...)
			}
			return out
		}
		for i := range next[s] {
			w := &next[s][i]
			if _, ok := came[w.Then]; !ok {
				came[w.Then] = w
				queue = append(queue, w.Then)
			}
		}
	}
	return nil
}

// Before says whether one stretch of work must come before another, by what is written.
func (t *Trace) Before(first, then *model.SetUp) bool {
	if first == nil || then == nil || first == then {
		return false
	}
	return len(way(t.then, first, then)) > 0
}

// Maker is the stretch of work that brings a dimension's feature to its size; nil where none
// does.
func (t *Trace) Maker(d *Dimension) *model.SetUp {
	if d.Form == nil {
		return nil
	}
	if d.Part != nil {
		return t.makerIn(d.Part, d.Of)
	}
	return t.MakerOf(d.Of)
}

// FixedTool says by what process the last step of a hole is done, and whether that is one whose
// tool cuts one size: reaming, or drilling. The tools of the dry run count.
func (t *Trace) FixedTool(d *Dimension) (by string, fixed bool) {
	for _, p := range t.Parts {
		if p.Part != d.Part {
			continue
		}
		for _, m := range p.Moments {
			var st *Step
			how := ""
			switch {
			case m.Cut != nil:
				st, how = m.Cut.Step, m.Cut.Choice.By
			case m.Turn != nil:
				st, how = m.Turn.Step, m.Turn.Choice.By
			default:
				continue
			}
			for _, k := range st.Makes {
				if k.Form == d.Form && d.Form != nil && k.Sub == "" {
					by = how
				}
			}
		}
	}
	return by, by == "reaming" || by == "drilling"
}

// Ordered says whether anything written orders work of one part after that of another.
func (t *Trace) Ordered() bool {
	for _, w := range t.waits() {
		if w.First.Item.Up("part", "assembly") != w.Then.Item.Up("part", "assembly") {
			return true
		}
	}
	return false
}
