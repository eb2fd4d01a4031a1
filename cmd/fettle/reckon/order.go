package reckon

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fettle/eval/reckon/order"
)

var _ = enter(Subject{
	Name:  "order",
	Title: "order of operations with the fewest changes; what a lost tool does",
	Words: []Want{{Name: "OPERATIONS", Kind: Text, Needed: true, Rest: true,
		Says: `parted by semicolons, each with its ways, MACHINE/TOOL/SIDE=COST, and what must come before: "face: mill/fly cutter/top; drill: mill/drill/top or press/drill/top after face"`}},
	Flags: []Want{
		{Name: "machine-change", Kind: Whole, Least: 0, Most: 1e9, Says: "cost of going to another machine (left out: 1)"},
		{Name: "tool-change", Kind: Whole, Least: 0, Most: 1e9, Says: "cost of another tool (left out: 1)"},
		{Name: "set-up", Kind: Whole, Least: 0, Most: 1e9, Says: "cost of another set-up (left out: 1)"},
		{Name: "lost", Kind: Texts, Says: "machines, tools or sides that are not to be had"},
		{Name: "fewest", Kind: YesNo, Says: "the fewest set-ups, whatever they cost"},
		{Name: "what-if", Kind: YesNo, Says: "what losing each machine and tool would do"},
	},
	Examples: [][]string{{"drill: mill/drill or press/drill; ream: press/reamer"},
		{"top: mill/cutter/up; back: mill/cutter/down", "--what-if"}},
	No:     "there is no order, for a reason that is given",
	Answer: answerOrder,
})

// planned is a job to be put in order.
type planned struct {
	reply
	job  order.Job
	lost []order.Thing
}

func answerOrder(a Ask) (Answer, error) {
	q := planned{reply: reply{Ask: a}}
	if err := q.read(); err != nil {
		return Answer{}, err
	}
	q.job.Charge = order.Charge{Machine: 1, Tool: 1, Setup: 1}
	for name, to := range map[string]*int64{"machine-change": &q.job.Charge.Machine, "tool-change": &q.job.Charge.Tool, "set-up": &q.job.Charge.Setup} {
		if n, ok := a.Whole(name); ok {
			*to = int64(n)
		}
	}
	for _, name := range a.Texts("lost") {
		for _, k := range []order.Kind{order.Machine, order.Tool, order.Side} {
			q.lost = append(q.lost, order.Thing{Kind: k, Name: name})
		}
	}
	left := order.Without(q.job, q.lost...)
	best := order.Best
	if a.Yes("fewest") {
		best = order.FewestSetups
	}
	p, err := best(left)
	var no *order.Impossible
	switch {
	case errors.As(err, &no):
		return q.impossible(), nil
	case err != nil:
		return Answer{}, err
	}
	q.plan(p)
	if a.Yes("what-if") {
		if err := q.whatIf(left); err != nil {
			return Answer{}, err
		}
	}
	return q.out, nil
}

// read takes the operations apart: "NAME: MACHINE/TOOL/SIDE=COST or … after NAME, NAME".
func (q *planned) read() error {
	list, err := items(q.Text("OPERATIONS"), ";", "operation")
	if err != nil {
		return err
	}
	for _, it := range list {
		name, rest, ok := strings.Cut(it, ":")
		op := order.Operation{Name: strings.TrimSpace(name)}
		if !ok || op.Name == "" {
			return fmt.Errorf("%s has no name and colon before its ways: write face: mill/cutter/top", quoted(it))
		}
		rest, after, _ := strings.Cut(" "+rest+" ", " after ")
		for _, w := range strings.Split(rest, " or ") {
			way, err := readWay(w)
			if err != nil {
				return err
			}
			op.Ways = append(op.Ways, way)
		}
		for _, b := range strings.Split(after, ",") {
			if b = strings.TrimSpace(b); b != "" {
				op.After = append(op.After, b)
			}
		}
		q.job.Operations = append(q.job.Operations, op)
	}
	return nil
}

func readWay(words string) (w order.Way, err error) {
	words, cost, priced := strings.Cut(strings.TrimSpace(words), "=")
	if priced {
		w.Cost, err = strconv.ParseInt(strings.TrimSpace(cost), 10, 64)
		if err != nil || w.Cost < 0 || w.Cost > order.MostCost {
			return w, fmt.Errorf("%s is no cost: a whole number from 0 to %d", quoted(cost), order.MostCost)
		}
	}
	parts := strings.Split(words, "/")
	if len(parts) > 3 || strings.TrimSpace(parts[0]) == "" {
		return w, fmt.Errorf("%s is no way: write MACHINE/TOOL/SIDE, such as mill/drill/top", quoted(words))
	}
	for i, to := range []*string{&w.Machine, &w.Tool, &w.Side} {
		if i < len(parts) {
			*to = strings.TrimSpace(parts[i])
		}
	}
	return w, nil
}

func (q *planned) plan(p order.Plan) {
	q.say("%s, %s and %s, at a cost of %d.", counted(p.Setups, "set-up"), counted(p.ToolChanges, "tool change"), counted(p.MachineChanges, "machine change"), p.Cost)
	switch {
	case q.Yes("fewest") && p.Proved:
		q.say("No order has fewer set-ups and, with as few, fewer tool changes.")
	case p.Proved:
		q.say("No order costs less.")
	default:
		q.say("No order costs less than %d; whether one lies between was not settled.", p.Bound)
	}
	t := Table{Title: "In this order", Head: []Column{right(""), left("operation"), left("machine"), left("tool"), left("side"), right("cost")}, Most: 60}
	for i, s := range p.Steps {
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), s.Operation, s.Machine, s.Tool, s.Side, strconv.FormatInt(s.Cost, 10)})
	}
	q.out.Tables = append(q.out.Tables, t)
	c := q.job.Charge
	q.step("Between one operation and the next count: another machine %d, another machine or tool %d, another machine or side %d; what applies is added up.", c.Machine, c.Tool, c.Setup)
	q.sources()
	q.value("cost", float64(p.Cost), "", "worked out")
	q.value("set-ups", float64(p.Setups), "", "worked out")
	q.value("tool changes", float64(p.ToolChanges), "", "worked out")
	q.value("machine changes", float64(p.MachineChanges), "", "worked out")
}

func (q *planned) sources() {
	q.out.Sources = []string{"exact search over sets of operations done; checked against the published cases of process planning in the tests"}
}

func (q *planned) whatIf(j order.Job) error {
	losses, err := order.WhatIf(j)
	if err != nil {
		return err
	}
	t := Table{Title: "Without one thing", Head: []Column{left("without"), right("costs more"), left("cannot be done")}, Most: 60}
	for _, l := range losses {
		more := strconv.FormatInt(l.More, 10)
		if len(l.Blocked) > 0 {
			more = "-"
		}
		t.Rows = append(t.Rows, []string{l.Thing.String(), more, strings.Join(l.Blocked, ", ")})
	}
	q.out.Tables = append(q.out.Tables, t)
	return nil
}

// impossible says why there is no order.
func (q *planned) impossible() Answer {
	q.out.No = true
	r := order.Explain(q.job, q.lost)
	for _, ring := range r.Cycles {
		q.say("There is no order: %s must each come after the one before it, and the first after the last.", strings.Join(ring, ", "))
	}
	for _, b := range r.Blocked {
		var ways []string
		for _, lost := range b.Lost {
			var names []string
			for _, t := range lost {
				names = append(names, t.String())
			}
			ways = append(ways, strings.Join(names, " and "))
		}
		if len(ways) == 0 {
			q.say("%s has no way at all.", b.Operation)
			continue
		}
		q.say("%s cannot be done: each of its ways takes what is lost (%s).", b.Operation, strings.Join(slices.Compact(ways), "; or "))
	}
	if len(r.Regain) > 0 {
		var names []string
		for _, t := range r.Regain {
			names = append(names, t.String())
		}
		q.say("To have back %s would be enough.", strings.Join(names, " and "))
	}
	q.sources()
	return q.out
}
