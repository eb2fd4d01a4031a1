package report

import (
	"fmt"
	"io"
	"strings"

	"fettle/rules"
	"fettle/schema"
	"fettle/schema/model"
)

// Why explains a rule of the catalogue.
func Why(w io.Writer, r *rules.Rule) {
	p := page{w: w}
	p.line(0, r.Name)
	p.para(2, upper(r.Title)+".")
	p.line(0, "")
	p.para(2, strings.ReplaceAll(r.Why, "\n", " "))
	p.line(0, "")
	p.para(2, fmt.Sprintf("Level: %s. It rests on: %s.", r.Level, r.Judgement))
	p.para(2, "Rows of the list of traps: "+strings.Join(r.Rows, ", ")+".")
	limits := schema.StandingLimits()
	for _, l := range r.Limits {
		p.para(2, fmt.Sprintf("Limit: %s = %s, unless the shop's rules_of_thumb says otherwise.", l, model.Figure(limits[l].V)))
	}
	for _, s := range r.Source {
		p.para(2, "Source: "+s+".")
	}
	if r.Caution != "" {
		p.para(2, "Caution: "+r.Caution)
	}
	p.quote("A recipe that trips it, in the shop of the examples:", strings.Split(strings.TrimRight(r.Trips, "\n"), "\n"))
	out, in := differ(r.Trips, r.Sound), differ(r.Sound, r.Trips)
	if len(out) > 0 {
		p.quote("Put right, these lines go:", out)
	}
	if len(in) > 0 {
		p.quote("Put right, these lines stand in it:", in)
	}
}

func (p page) quote(head string, lines []string) {
	p.line(0, "")
	p.line(0, head)
	p.line(0, "")
	for _, l := range lines {
		p.line(4, l)
	}
}

// differ lists the lines of a that b lacks, in order; a line that stands in a more often than
// in b is listed as often as it is over.
func differ(a, b string) []string {
	have := map[string]int{}
	for _, l := range strings.Split(b, "\n") {
		have[l]++
	}
	var out []string
	for _, l := range strings.Split(a, "\n") {
		if have[l] > 0 {
			have[l]--
			continue
		}
		if strings.TrimSpace(l) != "" {
			out = append(out, l)
		}
	}
	return out
}

// WhySlip explains a rule about how recipes and shops are written.
func WhySlip(w io.Writer, s schema.Slip) {
	p := page{w: w}
	p.line(0, s.Name)
	p.para(2, upper(s.Title)+".")
	p.line(0, "")
	p.para(2, s.Why)
	p.line(0, "")
	p.para(2, fmt.Sprintf("Level: %s. It rests on: fact.", s.Level))
}

// WhyNotice explains a finding about concessions, or about fettle itself.
func WhyNotice(w io.Writer, n rules.Notice) {
	p := page{w: w}
	p.line(0, n.Name)
	p.para(2, upper(n.Title)+".")
	p.line(0, "")
	p.para(2, n.Why)
}
