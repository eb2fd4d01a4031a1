package reckon

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"fettle/schema"
	"fettle/schema/handbook"
)

// What the subjects of press, heat, balance and rigid have in common: metals of the handbook,
// and figures of which only a band is known.

// metal reads a flag that names a metal; known is false where it was not given.
func (a Ask) metal(flag string) (m handbook.Elastic, known bool, err error) {
	name := a.Text(flag)
	if name == "" {
		return handbook.Elastic{}, false, nil
	}
	if m, ok := handbook.ElasticOf(name); ok {
		return m, true, nil
	}
	if near := schema.Near(name, handbook.MaterialNames()); near != "" {
		return handbook.Elastic{}, false, fmt.Errorf("--%s %s is not in the handbook; %s is near", flag, quoted(name), near)
	}
	return handbook.Elastic{}, false, fmt.Errorf("--%s %s is not in the handbook: name it as in brass, mild steel, 6082 or cast iron", flag, quoted(name))
}

// over takes a figure of a metal from a flag of its own, where that was given.
func (a Ask) over(b *handbook.Band, flag string, unit float64) {
	if x, ok := a.Number(flag); ok {
		*b = handbook.One(x * unit)
	}
}

// pairOf reads one or two lengths, the least first.
func (a Ask) pairOf(flag string) (handbook.Band, bool, error) {
	l, ok := a.Lengths(flag)
	if !ok {
		return handbook.Band{}, false, nil
	}
	if len(l) > 2 || l[0] > l[len(l)-1] {
		return handbook.Band{}, false, fmt.Errorf("--%s wants one length, or the least and the greatest with a comma between, not %s", flag, quoted(a.Written(flag)))
	}
	return handbook.Band{Lo: l[0], Hi: l[len(l)-1]}, true, nil
}

// spread writes a band: "97 to 103", one figure where both ends read alike.
func spread(b handbook.Band, write func(float64) string) string {
	lo, hi := write(b.Lo), write(b.Hi)
	if lo == hi {
		return lo
	}
	return lo + " to " + hi
}

// three writes a figure to three figures that count, without a power of ten.
func three(x float64) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return "0"
	}
	r, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 3, 64), 64)
	return plain(r)
}

// thirds is spread of three.
func thirds(b handbook.Band) string { return spread(b, three) }

// micro writes mm as micrometres.
func micro(b handbook.Band) string { return thirds(b.Times(1000)) }

// percents writes a share as a band of per cent.
func percents(b handbook.Band) string { return thirds(b.Times(100)) + " %" }

// degrees writes a temperature.
func degrees(x float64) string { return round(x, 0) }

// talk gathers an answer.
type talk struct {
	Ask
	out Answer
}

func (q *talk) say(format string, args ...any) {
	q.out.Says = append(q.out.Says, fmt.Sprintf(format, args...))
}
func (q *talk) step(format string, args ...any) {
	q.out.Steps = append(q.out.Steps, fmt.Sprintf(format, args...))
}
func (q *talk) source(s string) {
	if s != "" && !slices.Contains(q.out.Sources, s) {
		q.out.Sources = append(q.out.Sources, s)
	}
}

// value enters a figure; band its least and most.
func (q *talk) value(name string, x float64, unit, from string) {
	q.out.Values = append(q.out.Values, figure(name, x, unit, from))
}
func (q *talk) band(name string, b handbook.Band, unit, from string) {
	q.value(name+", least", b.Lo, unit, from)
	q.value(name+", most", b.Hi, unit, from)
}

// about is the source of a metal's figures.
func about(m handbook.Elastic) string {
	if m.Name == "" {
		return ""
	}
	return m.Name + ": " + m.Source
}
