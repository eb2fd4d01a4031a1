// Package order puts operations in an order. Each operation can be done in one or more
// ways, a way being a machine, a tool and a side from which the work is reached; some must
// come after others; changing the machine, the tool or the set-up costs something. Asked
// for are the best order, the order with the fewest set-ups, what a lost tool or machine
// does, what is wrong with an order someone wrote, and why there is none.
//
// Costs are whole numbers in a unit of the caller's choosing (pence, seconds, hundredths of
// a minute), so that sums are exact.
//
// Where a function gives an error, it names the figure, the name or the list that is out of range.
package order

import (
	"fmt"
	"slices"
)

// Way is one way of doing an operation. Any of the names may be empty.
type Way struct {
	Machine, Tool, Side string
	Cost                int64 // of the operation done this way, 0 to MostCost
}

// Operation is one piece of work, done once.
type Operation struct {
	Name  string
	Ways  []Way
	After []string // operations that must be done before it
}

// Charge is what changes between one operation and the next cost, each 0 to MostCost. The
// machine changes when the next operation is on another one; the tool, when the machine or
// the tool is another; the set-up, when the machine or the side is another. What applies is
// added up. The first machine, tool and set-up are not charged. (These definitions are
// those of the published cases in the tests.)
type Charge struct{ Machine, Tool, Setup int64 }

// Job is what is to be put in order: up to MostOperations operations, each named once, of up to
// MostWays ways, and costs and charges from 0 to MostCost.
type Job struct {
	Operations []Operation
	Charge     Charge
}

// The sizes taken.
const (
	MostOperations = 128
	MostWays       = 200 // of one operation
	MostCost       = 1_000_000_000
)

// Step is an operation done in one of its ways.
type Step struct {
	Operation string
	Way
}

// Plan is an order of work.
type Plan struct {
	Steps  []Step
	Cost   int64
	Bound  int64 // no order costs less
	Proved bool  // Cost is the least there is

	Setups         int // runs on one machine from one side
	ToolChanges    int
	MachineChanges int
}

// Impossible is the error of a job that has no order.
type Impossible struct{ Reason Reason }

// Error says the first of what stands in the way.
func (e *Impossible) Error() string {
	if len(e.Reason.Cycles) > 0 {
		return fmt.Sprintf("each of these must come after the one before it, round and round: %v", e.Reason.Cycles[0])
	}
	if len(e.Reason.Blocked) == 0 {
		return "there is no order"
	}
	return fmt.Sprintf("%s cannot be done in any way", e.Reason.Blocked[0].Operation)
}

// Best gives the cheapest order; Proved says whether it is certain, and Bound what no order costs
// less than. A job that has none gets an error of type *Impossible; one that is out of range an
// error that names the figure or the operation. No operations at all have an empty order.
func Best(j Job) (Plan, error) {
	c, err := compile(j)
	if err != nil {
		return Plan{}, err
	}
	steps, bound, proved := c.solve()
	p := Price(j, steps)
	p.Bound, p.Proved = bound, proved
	return p, nil
}

// FewestSetups gives the order with the fewest set-ups, and of those one with the fewest tool
// changes. Its Cost is that of the job's own charges; Bound and Proved are about the number of
// set-ups and tool changes, and Bound is left at 0 unless Proved. Errors as of Best.
func FewestSetups(j Job) (Plan, error) {
	bare := Job{Charge: Charge{Setup: int64(len(j.Operations) + 1), Tool: 1}}
	for _, o := range j.Operations {
		ways := slices.Clone(o.Ways)
		for i := range ways {
			ways[i].Cost = 0
		}
		bare.Operations = append(bare.Operations, Operation{o.Name, ways, o.After})
	}
	if _, err := compile(j); err != nil {
		return Plan{}, err
	}
	found, err := Best(bare)
	if err != nil {
		return Plan{}, err
	}
	for i, s := range found.Steps {
		found.Steps[i].Cost = costOf(j, s)
	}
	p := Price(j, found.Steps)
	if p.Proved = found.Proved; p.Proved {
		p.Bound = p.Cost
	}
	return p, nil
}

// costOf finds the cost of a step among the ways of its operation.
func costOf(j Job, s Step) int64 {
	cost := int64(-1)
	for _, o := range j.Operations {
		for _, w := range o.Ways {
			if o.Name == s.Operation && w.Machine == s.Machine && w.Tool == s.Tool && w.Side == s.Side && (cost < 0 || w.Cost < cost) {
				cost = w.Cost
			}
		}
	}
	return cost
}

// Price adds up what an order costs and counts its changes, right or wrong. The cost of a step is
// the one written in it; costs and charges are not asked for their range, and sums beyond 64 bits
// mean nothing.
func Price(j Job, steps []Step) Plan {
	p := Plan{Steps: steps}
	for i, s := range steps {
		p.Cost += s.Cost
		if i == 0 {
			p.Setups = 1
			continue
		}
		machine := s.Machine != steps[i-1].Machine
		if machine {
			p.MachineChanges++
			p.Cost += j.Charge.Machine
		}
		if machine || s.Tool != steps[i-1].Tool {
			p.ToolChanges++
			p.Cost += j.Charge.Tool
		}
		if machine || s.Side != steps[i-1].Side {
			p.Setups++
			p.Cost += j.Charge.Setup
		}
	}
	return p
}
