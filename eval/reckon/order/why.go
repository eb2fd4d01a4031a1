package order

import (
	"slices"

	"fettle/eval/reckon/cover"
)

// Kind is what sort of thing can be lost.
type Kind uint8

const (
	Machine Kind = iota + 1
	Tool
	Side
)

// String names the kind, "thing" for what is none of the three.
func (k Kind) String() string { return [...]string{"thing", "machine", "tool", "side"}[min(k, 3)] }

// Thing is a machine, a tool or a side from which the work can be reached.
type Thing struct {
	Kind Kind
	Name string
}

// String says the kind and the name: "tool reamer".
func (t Thing) String() string { return t.Kind.String() + " " + t.Name }

// Reason is why a job has no order. It holds the whole of it and nothing that does not
// matter: whatever is put right leaves the others standing.
type Reason struct {
	Cycles  [][]string // operations each of which must come after the one before it, the first after the last
	Blocked []Block
	Regain  []Thing // the fewest lost things that would free all that lost things block
}

// Block is an operation that cannot be done.
type Block struct {
	Operation string
	Lost      [][]Thing // for each way, what is lost of it; empty where there never was a way
}

// Possible says that there is nothing in the way.
func (r Reason) Possible() bool { return len(r.Cycles) == 0 && len(r.Blocked) == 0 }

// Explain says why a job has no order once some things are lost; its Reason is empty if there is
// one. Of operations that must each come after the other it gives a shortest ring, one for each
// knot of them. Names that must come before and do not occur are passed over: Best refuses them.
// Any job is taken; of more operations than Best takes, Regain may be left empty.
func Explain(j Job, lost []Thing) Reason {
	r := Reason{Cycles: rings(j)}
	var needs []cover.Need
	named := map[string]Thing{}
	for _, o := range j.Operations {
		b, can := Block{Operation: o.Name}, false
		need := cover.Need{Name: o.Name}
		for _, w := range o.Ways {
			gone := goneOf(w, lost)
			can = can || len(gone) == 0
			b.Lost = append(b.Lost, gone)
			var way []string
			for _, t := range gone {
				way = append(way, t.String())
				named[t.String()] = t
			}
			need.Ways = append(need.Ways, way)
		}
		if !can {
			r.Blocked = append(r.Blocked, b)
			needs = append(needs, need)
		}
	}
	if a, err := cover.Least(needs, nil, nil); err == nil {
		for _, name := range a.Get {
			r.Regain = append(r.Regain, named[name])
		}
	}
	return r
}

func goneOf(w Way, lost []Thing) (out []Thing) {
	for _, t := range []Thing{{Machine, w.Machine}, {Tool, w.Tool}, {Side, w.Side}} {
		if slices.Contains(lost, t) {
			out = append(out, t)
		}
	}
	return out
}

// rings gives a shortest ring of "must come after" for each knot of operations.
func rings(j Job) (out [][]string) {
	index := map[string]int{}
	for i, o := range j.Operations {
		index[o.Name] = i
	}
	var best = map[int][]int{} // by the first operation of the knot
	reach := reaches(j, index)
	for i := range j.Operations {
		if !reach[i][i] {
			continue
		}
		knot := i
		for k := range j.Operations {
			if reach[i][k] && reach[k][i] {
				knot = min(knot, k)
			}
		}
		if ring := shortest(j, index, i); best[knot] == nil || len(ring) < len(best[knot]) {
			best[knot] = ring
		}
	}
	for i := range j.Operations {
		if ring, ok := best[i]; ok {
			var names []string
			for _, k := range ring {
				names = append(names, j.Operations[k].Name)
			}
			out = append(out, names)
		}
	}
	return out
}

func reaches(j Job, index map[string]int) [][]bool {
	out := make([][]bool, len(j.Operations))
	for i, o := range j.Operations {
		out[i] = make([]bool, len(j.Operations))
		for _, a := range o.After {
			if k, ok := index[a]; ok {
				out[i][k] = true
			}
		}
	}
	for k := range out {
		for i := range out {
			if !out[i][k] {
				continue
			}
			for l := range out {
				out[i][l] = out[i][l] || out[k][l]
			}
		}
	}
	return out
}

// shortest gives a shortest ring through an operation that is on one: from it to what must
// come after it, and so on back to it.
func shortest(j Job, index map[string]int, start int) []int {
	from := map[int]int{}
	queue := []int{start}
	for len(queue) > 0 {
		i := queue[0]
		queue = queue[1:]
		for _, a := range j.Operations[i].After {
			k, ok := index[a]
			if !ok {
				continue
			}
			if k == start { // i must come after start: walk back to it
				ring := []int{start}
				for ; i != start; i = from[i] {
					ring = append(ring, i)
				}
				return ring
			}
			if _, seen := from[k]; !seen {
				from[k] = i
				queue = append(queue, k)
			}
		}
	}
	return []int{start}
}

// Without is a job with things lost: the ways that take them are gone. Whether it still has an
// order is not asked.
func Without(j Job, lost ...Thing) Job {
	out := Job{Charge: j.Charge}
	for _, o := range j.Operations {
		var ways []Way
		for _, w := range o.Ways {
			if len(goneOf(w, lost)) == 0 {
				ways = append(ways, w)
			}
		}
		out.Operations = append(out.Operations, Operation{o.Name, ways, o.After})
	}
	return out
}

// Loss is what losing one thing does.
type Loss struct {
	Thing   Thing
	Blocked []string // operations with no way left; where there are any there is no plan
	Plan    Plan     // the best order without it
	More    int64    // what that costs more than the best order with everything
}

// WhatIf loses each machine and each tool of a job in turn, in order of first appearance, and
// gives the best order without it. A thing that the best order does not use changes nothing.
// Errors as of Best, for the job with everything there.
func WhatIf(j Job) ([]Loss, error) {
	whole, err := Best(j)
	if err != nil {
		return nil, err
	}
	var out []Loss
	for _, t := range things(j) {
		loss := Loss{Thing: t, Plan: whole}
		for _, b := range Explain(j, []Thing{t}).Blocked {
			loss.Blocked = append(loss.Blocked, b.Operation)
		}
		used := slices.ContainsFunc(whole.Steps, func(s Step) bool { return len(goneOf(s.Way, []Thing{t})) > 0 })
		switch {
		case len(loss.Blocked) > 0:
			loss.Plan = Plan{}
		case used || !whole.Proved:
			if loss.Plan, err = Best(Without(j, t)); err != nil {
				return nil, err
			}
			loss.More = loss.Plan.Cost - whole.Cost
		}
		out = append(out, loss)
	}
	return out, nil
}

func things(j Job) (out []Thing) {
	for _, kind := range []Kind{Machine, Tool} {
		for _, o := range j.Operations {
			for _, w := range o.Ways {
				t := Thing{kind, w.Machine}
				if kind == Tool {
					t.Name = w.Tool
				}
				if t.Name != "" && !slices.Contains(out, t) {
					out = append(out, t)
				}
			}
		}
	}
	return out
}
