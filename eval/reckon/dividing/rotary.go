package dividing

import (
	"fmt"
	"iter"
)

// Rotary is a rotary table that is set by the dial of its handle.
type Rotary struct {
	Ratio Fraction // turns of the handle for one turn of the table, 1 to MostRatio
	Line  Fraction // what one line of the dial, or of its vernier, turns the table by, part of the circle
}

// Lined gives a table of a ratio, 1 to MostRatio, of which a line of the dial stands for an angle
// in degrees. A turn of the handle must be a whole number of lines, 1 to 100,000; an error for
// others.
func Lined(ratio, degrees Fraction) (Rotary, error) {
	r := Rotary{ratio, degrees.Over(Of(360, 1))}
	if err := (Head{Ratio: ratio}).check(); err != nil {
		return Rotary{}, err
	}
	lines := r.lines()
	if !lines.Valid() || lines.Den != 1 || lines.Num < 1 || lines.Num > 100_000 {
		return Rotary{}, fmt.Errorf("a line of %s deg on the dial of a table of %s to 1: a turn of the handle is %s deg, which must be 1 to 100000 whole lines",
			degrees, ratio, Of(360, 1).Over(ratio))
	}
	return r, nil
}

// lines gives the lines of one turn of the handle.
func (r Rotary) lines() Fraction { return Of(1, 1).Over(r.Ratio).Over(r.Line) }

// Dial is where the handle stands: whole turns from the first place, and the dial's reading.
type Dial struct {
	Turns int64
	Exact Fraction // reading that would be right, part of the circle of the work, below one turn of the handle
	Lines int64    // nearest reading in lines; where that is a full turn Turns has it, and this is 0
}

// Reading is one line of the table of dial readings.
type Reading struct {
	Position
	Dial Dial
}

// DialStep is one move on the dial. All exact.
type DialStep struct {
	Dial
	PerSpace  Fraction // what the rounded move turns by less what is wanted, part of the circle
	AtClosing Fraction // after all moves, each rounded alike; no number for an angle
	AtMost    Fraction // what no place is off by more than if each is read from the first place
}

// Step gives the move of a job on the dial, rounded to a line, and both errors, part of the
// circle. An error for a table that Lined would refuse, and for what is no job.
func (r Rotary) Step(j Job) (DialStep, error) {
	if err := r.check(); err != nil {
		return DialStep{}, err
	}
	if err := j.check(); err != nil {
		return DialStep{}, err
	}
	way := j.Step.Over(r.Line)
	s := DialStep{Dial: r.dial(j.Step), AtMost: Of(way.Den/2, way.Den).Times(r.Line)}
	s.PerSpace = Of(way.Round(), 1).Times(r.Line).Minus(j.Step)
	if j.Whole {
		s.AtClosing = s.PerSpace.Times(Of(int64(j.Places), 1))
	}
	return s, nil
}

func (r Rotary) check() error {
	_, err := Lined(r.Ratio, r.Line.Times(Of(360, 1)))
	return err
}

// dial gives turns and reading for a way of the table.
func (r Rotary) dial(way Fraction) Dial {
	turns, rest := way.Times(r.Ratio).Whole()
	d := Dial{Turns: turns, Exact: rest.Over(r.Ratio)}
	d.Lines = d.Exact.Over(r.Line).Round()
	if full := r.lines().Num; d.Lines >= full {
		d.Turns, d.Lines = d.Turns+1, d.Lines-full
	}
	return d
}

// Table goes through every place of a job, each read from the first place. Errors do not add up.
// The last line of equal divisions is the coming back to the first place. It has no line for a
// table that Lined would refuse, or for what is no job.
func (r Rotary) Table(j Job) iter.Seq[Reading] {
	return func(yield func(Reading) bool) {
		if r.check() != nil {
			return
		}
		for p := range j.lines(func(p Position) Position { return p }) {
			way := j.Step.Times(Of(int64(p.Move), 1))
			d := r.dial(way)
			p.Turns = d.Turns
			p.Error = Of(d.Turns, 1).Over(r.Ratio).Plus(Of(d.Lines, 1).Times(r.Line)).Minus(way)
			if !yield(Reading{p, d}) {
				return
			}
		}
	}
}
