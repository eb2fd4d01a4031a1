package order

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"fettle/eval/reckon/cover"
	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

// cents brings a printed cost to whole hundredths.
func cents(t testing.TB, s string) int64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return int64(math.Round(x * 100))
}

// cases reads the jobs, in hundredths of the printed costs.
func cases(t testing.TB) map[string]Job {
	index := map[string]int64{}
	operations := printed.Rows(t, "order_operations.tsv", 8)
	for _, r := range operations {
		if r[1] == "machine" || r[1] == "tool" {
			index[r[0]+r[2]] = cents(t, r[6])
		}
	}
	jobs := map[string]Job{}
	for _, r := range operations {
		if r[1] == "machine" || r[1] == "tool" {
			continue
		}
		o := Operation{Name: r[1], After: strings.Fields(r[5])}
		costs := strings.Fields(r[6])
		for n, machine := range strings.Fields(r[2]) {
			for _, tool := range strings.Fields(r[3]) {
				for _, side := range strings.Fields(r[4]) {
					cost := index[r[0]+machine] + index[r[0]+tool]
					if len(costs) > 0 {
						cost = cents(t, costs[n])
					}
					o.Ways = append(o.Ways, Way{machine, tool, side, cost})
				}
			}
		}
		j := jobs[r[0]]
		j.Operations = append(j.Operations, o)
		jobs[r[0]] = j
	}
	for _, r := range printed.Rows(t, "order.tsv", 5) {
		if r[0] == "charge" {
			f := strings.Fields(r[3])
			j := jobs[r[1]]
			j.Charge = Charge{cents(t, f[0]), cents(t, f[1]), cents(t, f[2])}
			jobs[r[1]] = j
		}
	}
	return jobs
}

// variant changes a job as a row says.
func variant(t *testing.T, j Job, machine map[string]int64, given string) Job {
	for part := range strings.SplitSeq(given, "; ") {
		f := strings.Fields(part)
		switch {
		case part == "as given" || part == "":
		case part == "no tool costs":
			j = recost(j, func(w Way) Way { w.Cost = machine[w.Machine]; return w })
			j.Charge.Tool = 0
		case f[0] == "charge":
			j.Charge = Charge{cents(t, f[1]), cents(t, f[2]), cents(t, f[3])}
		case f[0] == "without":
			for _, name := range f[1:] {
				j = Without(j, thing(name))
			}
		case f[1] == "on":
			j = recost(j, func(w Way) Way { return w })
			i := slices.IndexFunc(j.Operations, func(o Operation) bool { return o.Name == f[0] })
			var ways []Way
			for _, w := range j.Operations[i].Ways {
				for _, m := range f[2:] { // alike ways are taken once
					ways = append(ways, Way{m, w.Tool, w.Side, w.Cost - machine[w.Machine] + machine[m]})
				}
			}
			j.Operations[i].Ways = ways
		default:
			t.Fatalf("no such variant: %q", part)
		}
	}
	return j
}

func recost(j Job, f func(Way) Way) Job {
	out := Job{Charge: j.Charge}
	for _, o := range j.Operations {
		ways := slices.Clone(o.Ways)
		for i := range ways {
			ways[i] = f(ways[i])
		}
		out.Operations = append(out.Operations, Operation{o.Name, ways, o.After})
	}
	return out
}

func thing(name string) Thing {
	if name[0] == 'm' {
		return Thing{Machine, name}
	}
	return Thing{Tool, name}
}

func TestPublished(t *testing.T) {
	jobs := cases(t)
	machine := map[string]map[string]int64{}
	for _, r := range printed.Rows(t, "order_operations.tsv", 8) {
		if machine[r[0]] == nil {
			machine[r[0]] = map[string]int64{}
		}
		if r[1] == "machine" {
			machine[r[0]][r[2]] = cents(t, r[6])
		}
	}
	written, losses := map[string][]Step{}, map[string]map[string]Loss{}
	for name, j := range jobs {
		all, err := WhatIf(j)
		if err != nil {
			t.Fatal(err)
		}
		losses[name] = map[string]Loss{}
		for _, l := range all {
			losses[name][l.Thing.Name] = l
		}
	}
	counts := map[string]int{}
	rows := printed.Rows(t, "order.tsv", 5)
	for _, r := range rows {
		if r[0] == "plan" {
			written[r[1]] = steps(t, jobs[r[1]], r[2])
		}
	}
	for _, r := range rows {
		counts[r[0]]++
		j, want := variant(t, jobs[r[1]], machine[r[1]], optional(r[0], r[2])), r[3]
		switch r[0] {
		case "charge":
		case "best":
			p, err := Best(j)
			if err != nil || !p.Proved || p.Cost != cents(t, want) || p.Bound != p.Cost {
				t.Errorf("%s %s: %d, bound %d, proved %v (%v), printed %s in %s", r[1], r[2], p.Cost, p.Bound, p.Proved, err, want, r[4])
			}
			sound(t, j, p)
		case "plan":
			p := Price(j, written[r[1]])
			if got := fmt.Sprint(p.Setups, p.ToolChanges, p.MachineChanges); p.Cost != cents(t, strings.Fields(want)[0]) || got != strings.Join(strings.Fields(want)[1:], " ") {
				t.Errorf("%s: the plan costs %d with %s, printed %s in %s", r[1], p.Cost, got, want, r[4])
			}
			sound(t, j, p)
		case "setups":
			p, err := FewestSetups(j)
			if got := fmt.Sprint(p.Setups, p.ToolChanges); err != nil || !p.Proved || got != want {
				t.Errorf("%s %s: %s (%v), printed %s in %s", r[1], r[2], got, err, want, r[4])
			}
			sound(t, j, p)
		case "least":
			if got := leastOf(t, j, r[2]); got != want {
				t.Errorf("%s: least of %s %s, printed %s in %s", r[1], r[2], got, want, r[4])
			}
		case "lost":
			l, there := losses[r[1]][r[2]]
			got := "blocks " + strings.Join(l.Blocked, " ")
			if len(l.Blocked) == 0 {
				got = strconv.FormatFloat(float64(l.Plan.Cost)/100, 'f', -1, 64)
			}
			if !there || got != want || len(l.Blocked) == 0 && !l.Plan.Proved {
				t.Errorf("%s without %s: %s, printed %s in %s", r[1], r[2], got, want, r[4])
			}
			if regain := Explain(j, []Thing{l.Thing}).Regain; len(l.Blocked) > 0 && !slices.Equal(regain, []Thing{l.Thing}) {
				t.Errorf("%s without %s: to regain %v", r[1], r[2], regain)
			}
		case "fault":
			f, err := Check(j, spoilt(written[r[1]], r[2]))
			if got := said(f); err != nil || got != want {
				t.Errorf("%s %s: %q (%v), printed %q in %s", r[1], r[2], got, err, want, r[4])
			}
		case "moves":
			m, err := Moves(j, spoilt(written[r[1]], r[2]))
			if err != nil || strconv.Itoa(len(m)) != want {
				t.Errorf("%s %s: %v (%v), printed %s in %s", r[1], r[2], m, err, want, r[4])
			}
		default:
			t.Errorf("no check for %q", r[0])
		}
	}
	for what, n := range map[string]int{"charge": 3, "best": 12, "plan": 3, "setups": 4, "least": 6, "lost": 39, "fault": 18, "moves": 3} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

func optional(what, given string) string {
	if what == "best" || what == "setups" {
		return given
	}
	return ""
}

// sound says whether a plan keeps all rules of its job.
func sound(t *testing.T, j Job, p Plan) {
	t.Helper()
	if f, err := Check(j, p.Steps); err != nil || len(f) > 0 {
		t.Errorf("the plan has faults: %s (%v)", said(f), err)
	}
	if again := Price(j, p.Steps); again.Cost != p.Cost {
		t.Errorf("the plan says %d and adds up to %d", p.Cost, again.Cost)
	}
}

func steps(t *testing.T, j Job, s string) (out []Step) {
	for _, w := range strings.Fields(s) {
		f := strings.Split(w, "/")
		step := Step{f[0], Way{f[1], f[2], f[3], 0}}
		if step.Cost = costOf(j, step); step.Cost < 0 {
			t.Fatalf("%s is no way of its operation", w)
		}
		out = append(out, step)
	}
	return out
}

// leastOf gives the least number of machines or tools that still allow everything when
// all other things are there, and how many there are.
func leastOf(t *testing.T, j Job, kind string) string {
	var needs []cover.Need
	all := 0
	for _, th := range things(j) {
		if th.Kind.String() == kind {
			all++
		}
	}
	for _, o := range j.Operations {
		n := cover.Need{Name: o.Name}
		for _, w := range o.Ways {
			n.Ways = append(n.Ways, []string{map[string]string{"tool": w.Tool, "machine": w.Machine}[kind]})
		}
		needs = append(needs, n)
	}
	a, err := cover.Least(needs, nil, nil)
	if err != nil || !a.Proved {
		t.Error(err, a)
	}
	return fmt.Sprint(len(a.Get), " ", all)
}

func spoilt(plan []Step, how string) []Step {
	out := slices.Clone(plan)
	f := strings.Fields(how)
	at := slices.IndexFunc(out, func(s Step) bool { return s.Operation == f[1] })
	s := out[at]
	switch f[0] {
	case "move":
		out = slices.Delete(out, at, at+1)
		to := slices.IndexFunc(out, func(s Step) bool { return s.Operation == f[3] })
		return slices.Insert(out, to, s)
	case "delete":
		return slices.Delete(out, at, at+1)
	case "repeat":
		return append(out, s)
	case "tool":
		out[at].Tool = f[2]
	case "machine":
		out[at].Machine = f[2]
	case "side":
		out[at].Side = f[2]
	}
	return out
}

// said writes faults the way the table does.
func said(faults []Fault) string {
	var out []string
	for _, f := range faults {
		what := map[FaultKind]string{TooEarly: "early", WrongMachine: "machine", WrongTool: "tool", WrongSide: "side", NotTogether: "together", Missing: "missing", Twice: "twice", Unknown: "unknown"}[f.Kind]
		switch f.Kind {
		case TooEarly:
			if len(out) > 0 {
				what = ""
			}
			out = append(out, strings.TrimSpace(what+" "+f.Before+">"+f.Operation))
		case WrongMachine, WrongTool, WrongSide:
			out = append(out, what+" "+strings.Join(f.Allowed, " "))
		default:
			out = append(out, what+" "+f.Operation)
		}
	}
	return strings.Join(out, " ")
}

// Case E2 of the explanations: with t2, t3 and t4 gone from case 2, three operations stand
// still; one tool, t2, cures all three.
func TestOneCause(t *testing.T) {
	j := cases(t)["02"]
	r := Explain(j, []Thing{{Tool, "t2"}})
	if len(r.Blocked) != 1 || r.Blocked[0].Operation != "o4" || !slices.Equal(r.Regain, []Thing{{Tool, "t2"}}) {
		t.Errorf("without t2: %+v", r)
	}
	r = Explain(j, []Thing{{Tool, "t2"}, {Tool, "t3"}, {Tool, "t4"}})
	var names []string
	for _, b := range r.Blocked {
		names = append(names, b.Operation)
	}
	if !slices.Equal(names, []string{"o4", "o8", "o12"}) || !slices.Equal(r.Regain, []Thing{{Tool, "t2"}}) || len(r.Cycles) != 0 {
		t.Errorf("without t2, t3 and t4: %+v", r)
	}
}

// A ring of "must come after" is reported as its shortest form, once for each knot, and
// what merely hangs on it is not named.
func TestRings(t *testing.T) {
	way := []Way{{Machine: "mill"}}
	j := Job{Operations: []Operation{
		{"a", way, []string{"b"}}, {"b", way, []string{"c"}}, {"c", way, []string{"a", "b"}},
		{"d", way, []string{"a"}}, {"e", way, []string{"e"}},
	}}
	if got := fmt.Sprint(Explain(j, nil).Cycles); got != "[[b c] [e]]" {
		t.Errorf("rings: %s", got)
	}
	if _, err := Best(j); err == nil || !strings.Contains(err.Error(), "[b c]") {
		t.Errorf("%v", err)
	}
	if _, err := Moves(j, nil); err == nil {
		t.Error("moves in a ring")
	}
}

func TestRefused(t *testing.T) {
	way := []Way{{Machine: "mill"}}
	many := Job{}
	for i := range MostOperations + 1 {
		many.Operations = append(many.Operations, Operation{Name: strconv.Itoa(i), Ways: way})
	}
	for name, j := range map[string]Job{
		"two alike":   {Operations: []Operation{{"a", way, nil}, {"a", way, nil}}},
		"unknown":     {Operations: []Operation{{"a", way, []string{"b"}}}},
		"no way":      {Operations: []Operation{{"a", nil, nil}}},
		"negative":    {Operations: []Operation{{"a", []Way{{Cost: -1}}, nil}}},
		"charge":      {Operations: []Operation{{"a", way, nil}}, Charge: Charge{Tool: MostCost + 1}},
		"many":        many,
		"costs a lot": {Operations: []Operation{{"a", []Way{{Cost: MostCost + 1}}, nil}}},
	} {
		if p, err := Best(j); err == nil {
			t.Errorf("%s: %+v", name, p)
		}
		if p, err := FewestSetups(j); err == nil {
			t.Errorf("%s: %+v", name, p)
		}
	}
	if p, err := Best(Job{}); err != nil || !p.Proved || len(p.Steps) != 0 || p.Setups != 0 {
		t.Errorf("nothing to do: %+v (%v)", p, err)
	}
}

// job draws a small job without rings.
func job(t *rapid.T, most int) Job {
	j := Job{Charge: Charge{
		int64(rapid.IntRange(0, 30).Draw(t, "machine")), int64(rapid.IntRange(0, 9).Draw(t, "tool")), int64(rapid.IntRange(0, 20).Draw(t, "set-up"))}}
	for i := range rapid.IntRange(1, most).Draw(t, "operations") {
		o := Operation{Name: strconv.Itoa(i)}
		for range rapid.IntRange(1, 3).Draw(t, "ways") {
			o.Ways = append(o.Ways, Way{
				rapid.SampledFrom([]string{"lathe", "mill"}).Draw(t, "on"), rapid.SampledFrom([]string{"1", "2", "3"}).Draw(t, "with"),
				rapid.SampledFrom([]string{"top", "end", "back"}).Draw(t, "from"), int64(rapid.IntRange(0, 12).Draw(t, "cost"))})
		}
		for k := range i {
			if rapid.IntRange(0, 3).Draw(t, "after") == 0 {
				o.After = append(o.After, strconv.Itoa(k))
			}
		}
		j.Operations = append(j.Operations, o)
	}
	return j
}

// The best order of a small job is the best of all orders in all ways, tried one by one.
func TestAllOrders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := job(t, 5)
		p, err := Best(j)
		if err != nil || !p.Proved {
			t.Fatal(err, p)
		}
		f, err := FewestSetups(j)
		if err != nil || !f.Proved {
			t.Fatal(err, f)
		}
		best, setups, changes := int64(math.MaxInt64), math.MaxInt, math.MaxInt
		every(j, nil, func(s []Step) {
			q := Price(j, s)
			best = min(best, q.Cost)
			if q.Setups < setups || q.Setups == setups && q.ToolChanges < changes {
				setups, changes = q.Setups, q.ToolChanges
			}
		})
		if p.Cost != best || f.Setups != setups || f.ToolChanges != changes {
			t.Fatalf("%+v: %d, all orders %d; %d %d, all orders %d %d", j, p.Cost, best, f.Setups, f.ToolChanges, setups, changes)
		}
		for _, q := range []Plan{p, f} {
			if faults, err := Check(j, q.Steps); err != nil || len(faults) > 0 || Price(j, q.Steps).Cost != q.Cost {
				t.Fatalf("%+v %v", faults, err)
			}
		}
	})
}

func every(j Job, done []Step, f func([]Step)) {
	if len(done) == len(j.Operations) {
		f(done)
		return
	}
	has := func(name string) bool {
		return slices.ContainsFunc(done, func(s Step) bool { return s.Operation == name })
	}
	for _, o := range j.Operations {
		if has(o.Name) || slices.ContainsFunc(o.After, func(a string) bool { return !has(a) }) {
			continue
		}
		for _, w := range o.Ways {
			every(j, append(slices.Clone(done), Step{o.Name, w}), f)
		}
	}
}

// Another way, another tool or one rule less never makes the best order dearer; losing a
// thing never makes it cheaper.
func TestMoreIsNeverWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := job(t, 9)
		p, _ := Best(j)
		losses, err := WhatIf(j)
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range losses {
			if len(l.Blocked) == 0 && l.More < 0 {
				t.Fatalf("%v lost: %d less", l.Thing, l.More)
			}
		}
		i := rapid.IntRange(0, len(j.Operations)-1).Draw(t, "which")
		j.Operations[i].After = nil
		if q, _ := Best(j); q.Cost > p.Cost {
			t.Fatalf("%d with a rule, %d without", p.Cost, q.Cost)
		}
	})
}

// The fewest moves: no smaller number of operations can be taken out so that the rest is in
// order, and with those given out it is.
func TestFewestMoves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := job(t, 7)
		var order []Step
		for _, o := range rapid.Permutation(j.Operations).Draw(t, "order") {
			order = append(order, Step{o.Name, o.Ways[0]})
		}
		moved, err := Moves(j, order)
		if err != nil {
			t.Fatal(err)
		}
		right := func(out func(name string) bool) bool {
			rest := slices.DeleteFunc(slices.Clone(order), func(s Step) bool { return out(s.Operation) })
			f, _ := Check(j, rest)
			return !slices.ContainsFunc(f, func(f Fault) bool { return f.Kind == TooEarly })
		}
		if !right(func(n string) bool { return slices.Contains(moved, n) }) {
			t.Fatalf("%v out, and the rest is not in order", moved)
		}
		for bits := range 1 << len(order) {
			n := 0
			for b := bits; b != 0; b &= b - 1 {
				n++
			}
			if n < len(moved) && right(func(name string) bool { i, _ := strconv.Atoi(name); return bits&(1<<i) != 0 }) {
				t.Fatalf("%v moved, and %b is enough", moved, bits)
			}
		}
	})
}

func BenchmarkPublished(b *testing.B) {
	for name, j := range cases(b) {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if p, err := Best(j); err != nil || !p.Proved {
					b.Fatal(err, p)
				}
			}
		})
	}
}

// workshop is a job of a size that a workshop has: features on five sides, each rough and
// finish or drill and ream, with a datum side first. The jobs are drawn from fixed seeds.
func workshop(n int, seed uint64) Job {
	r := rand.New(rand.NewPCG(seed, 1))
	j := Job{Charge: Charge{Machine: 300, Tool: 20, Setup: 120}}
	sides := []string{"top", "bottom", "front", "back", "left"}
	for i := 0; i < n; i++ {
		o := Operation{Name: strconv.Itoa(i)}
		for _, side := range sides[r.IntN(4):][:1+r.IntN(2)] {
			for k := range 1 + r.IntN(3) {
				cost := int64(10 + r.IntN(40))
				o.Ways = append(o.Ways, Way{"mill", "m" + strconv.Itoa((i+k)%12), side, cost})
				if r.IntN(3) == 0 {
					o.Ways = append(o.Ways, Way{"drill press", "m" + strconv.Itoa((i+k)%12), side, cost - 5})
				}
			}
		}
		if i > 0 && r.IntN(3) > 0 {
			o.After = append(o.After, strconv.Itoa(r.IntN(i)))
		}
		j.Operations = append(j.Operations, o)
	}
	return j
}

// At the size of a workshop the answer is either proved or has a bound that is not above it.
// The steps are right in any case. The time taken is logged and not judged, since it depends
// on what else the machine does.
func TestWorkshop(t *testing.T) {
	for _, n := range []int{15, 20, 30, 40, 60, 128} {
		for seed := range uint64(2) {
			j := workshop(n, seed)
			start := time.Now()
			p, err := Best(j)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%d operations: %d, bound %d, proved %v, %v", n, p.Cost, p.Bound, p.Proved, time.Since(start))
			sound(t, j, p)
			if p.Bound > p.Cost || p.Proved != (p.Bound == p.Cost) {
				t.Errorf("%d operations: %d with the bound %d, proved %v", n, p.Cost, p.Bound, p.Proved)
			}
			if n <= 20 && !p.Proved {
				t.Errorf("%d operations: not proved", n)
			}
		}
	}
}
