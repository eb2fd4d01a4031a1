package rules

import (
	"fmt"
	"strings"

	"fettle/eval"
	"fettle/eval/reckon/dividing"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "no-circle-for-it",
	Title: "no circle of holes that is here divides by so many",
	Why: `The crank makes the head's ratio by the number of turns for one division. In lowest terms a/b, that wants a circle whose
holes are a multiple of b; a prime number above the largest circle has none. A direct plate, the dial of a rotary table, a train
from the spindle to the plate, or a plate to make are the ways out: the error of a plate shrinks by the ratio.`,
	Rows:      []string{"H1", "H2"},
	Source:    []string{"arithmetic of plain, direct and differential indexing: Practical Treatise on Milling and Milling Machines; Machinery's Handbook", "direct plates have 60 holes at most: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleWheel("", "", "", ""), "count  = 60", "count  = 61"),
	Sound:     exampleWheel("", "", "", ""),
	OnCut:     noCircleForIt,
	OnTurn:    noCircleToTurn,
})

func noCircleForIt(k *eval.Cut, a *Ask) {
	if d, ok := k.Hold.Divider(); ok && k.Hold.Unplayed == "" && !(len(k.Step.Makes) > 0 && k.Freely(k.Step.Makes[0].Form)) {
		divides(k.Step, d, k.Hold.Choice.Divided, k.Place("index", "makes"), a)
	}
}

func noCircleToTurn(k *eval.Turn, a *Ask) {
	if d, ok := k.Hold.Divider(); ok && k.Hold.Unplayed == "" {
		divides(k.Step, d, nil, k.Place("index", "makes"), a)
	}
}

func divides(st *eval.Step, d eval.Divider, on *eval.Divided, at text.Place, a *Ask) {
	all, wrong := st.Divisions()
	if wrong != "" {
		a.Say(st.Work.SetUp.Path()+".index", at, "this cannot be divided: %s", wrong)
		return
	}
	plate, circle := st.Written()
	for _, dv := range all {
		switch {
		case d.Dial:
			a.Clear(finding.Margin{}, "") // set by degrees, each read from the first place
		case on != nil && on.Table != nil:
			a.Lack(d.Lacks...)
			if len(d.Lacks) == 0 {
				a.Lack(on.Table.Dial.Division.Missing()...)
			}
		default:
			d := d.For(dv)
			only := d.Only(plate, circle)
			ways := only.Ways(dv.Job)
			if len(ways) > 0 && ways[0].Method != dividing.Compound {
				a.Clear(finding.Margin{}, "")
				continue
			}
			if (plate != "" || circle > 0) && len(only.Head.Plates) > 0 && len(only.Head.Plates[0].Faces[0]) == 0 {
				continue // the circle is not on the plate: told of on its own
			}
			noWay(d, only, on, dv, ways, plate != "" || circle > 0, at, a)
		}
	}
}

// noWay tells of a division that nothing known makes exactly, or asks for what could.
func noWay(d, only eval.Divider, on *eval.Divided, dv eval.Division, ways []dividing.Setting, written bool, at text.Place, a *Ask) {
	if !written && wayLacks(d, on, dv, ways, a) {
		return
	}
	if written && len(d.Lacks) > 0 && len(only.Head.Plates) == 0 {
		a.Lack(d.Lacks...)
		return
	}
	if d.Direct {
		a.Say(d.Item.Path()+fmt.Sprint(dv.Job.Step.Den), at, "%s cannot be divided with the wheel of %s teeth on the spindle of %s: %d teeth or a multiple would do",
			dv.Says(), inCounts(d.Head.Direct), d.Item.Path(), dv.Job.Step.Den)
		return
	}
	s, err := dividing.Serve(d.Head, dv.Job, dividing.MostHoles)
	if err != nil {
		return
	}
	a.Say(d.Item.Path()+"+"+dv.Says(), at, "%s (%s to 1) cannot make %s with %s: one is %s turns of the crank, which wants %s%s",
		d.Item.Path(), ratioWords(d.Head.Ratio), dv.Says(), platesOf(only), s.Turns, servedBy(s)+inUse(dv), otherwise(d, only, dv))
}

// inUse says that a helix leaves plain indexing alone.
func inUse(dv eval.Division) string {
	if dv.Helical() {
		return " (its wheels turn the piece along the helix, and do not divide at the same time)"
	}
	return ""
}

// wayLacks asks for what is not known and could make the division after all.
func wayLacks(d eval.Divider, on *eval.Divided, dv eval.Division, ways []dividing.Setting, a *Ask) bool {
	before := len(a.v.Lacks)
	a.Lack(d.Lacks...)
	if on != nil && on.Head != nil && !dv.Helical() {
		h := on.Head
		if !h.Direct.Is() && dv.Job.Step.Den <= mostDirect {
			a.Lack(h.Direct.Missing()...)
		}
		switch {
		case on.Upright:
			if upright(d, dv) {
				return true // told of on its own
			}
		case !h.Differential.Said:
			a.Lack(model.Lack{Fact: h.Path() + ".differential", At: h.At})
		case !h.Differential.Wheels.Is():
			a.Lack(h.Differential.Wheels.Missing()...)
		}
	}
	if len(ways) > 0 {
		w := ways[0]
		a.Lack(model.Lack{Fact: fmt.Sprintf("whether the circles of %d and %d stand on one side of %s", w.Crank.Circle, w.Back.Circle, w.Plate), At: on.Head.At})
	}
	return len(a.v.Lacks) > before
}

// mostDirect is the most holes of a direct plate; common practice.
const mostDirect = 60

func ratioWords(r dividing.Fraction) string { return figure(r.Float()) }

func inCounts(n []int) string {
	var out []string
	for _, x := range n {
		out = append(out, fmt.Sprint(x))
	}
	return inWords(out)
}

func platesOf(d eval.Divider) string {
	var out []string
	for _, p := range d.Head.Plates {
		c := append([]int(nil), p.Faces[0]...)
		switch len(c) {
		case 0:
		case 1:
			out = append(out, fmt.Sprintf("the circle of %d of %s", c[0], p.Name))
		default:
			out = append(out, fmt.Sprintf("the circles %s of %s", inCounts(c), p.Name))
		}
	}
	if len(d.Head.Direct) > 0 {
		out = append(out, fmt.Sprintf("%s direct", inCounts(d.Head.Direct)))
	}
	if len(out) == 0 {
		return "nothing"
	}
	return inWords(out)
}

// servedBy lists the first few circles that would do.
func servedBy(s dividing.Service) string {
	if len(s.Sizes) == 0 {
		return fmt.Sprintf("a circle of %d holes", s.Least)
	}
	var out []string
	for _, c := range s.Sizes[:min(3, len(s.Sizes))] {
		out = append(out, fmt.Sprint(c))
	}
	return "a circle of " + strings.Join(out, ", ") + " holes" + map[bool]string{true: " or another multiple"}[len(s.Sizes) > 3]
}

// otherwise names the plate and circle of the head that serve, where the written one does not, else
// the nearest setting with its error.
func otherwise(d, only eval.Divider, dv eval.Division) string {
	if ways := d.Ways(dv.Job); len(ways) > 0 && ways[0].Method != dividing.Compound {
		return "; " + eval.SettingWords(ways[0]) + " would do"
	}
	n, err := dividing.Near(only.Head, dv.Job)
	if err != nil || n.Single.Method == 0 || n.Single.Exact() {
		return ""
	}
	says := fmt.Sprintf("; the nearest, %s, is %s deg off at each", eval.SettingWords(n.Single), degreesOff(n.Single.PerSpace))
	if n.Single.AtClosing.Valid() {
		says += fmt.Sprintf(" and %s deg when it comes round", degreesOff(n.Single.AtClosing))
	}
	return says
}

// degreesOff prints a part of the circle in degrees, to four figures after the point.
func degreesOff(f dividing.Fraction) string {
	return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.4f", dividing.Degrees(f.Abs())), "0"), ".")
}

// upright says whether the head's wheels would divide it with its axis level, and only so.
func upright(d eval.Divider, dv eval.Division) bool {
	level := d
	level.Head.Gear.Axis = dividing.Level
	ways := level.Ways(dv.Job)
	return len(ways) > 0 && ways[0].Method == dividing.Differential
}
