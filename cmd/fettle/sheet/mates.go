package sheet

import (
	"fmt"
	"strings"

	"fettle/eval"
	"fettle/eval/reckon/chain"
	"fettle/schema/model"
)

// mates puts on the page the sizes of a part that decide how it goes together with others: for
// each fit, mesh, stack and screw its chain of sizes with their limits, and what comes of them.
func (m *maker) mates(t *eval.PartTrace) {
	p := t.Part
	var rows [][]string
	for _, j := range m.c.Result.Trace.Joints {
		if j.Unplayed != "" {
			continue
		}
		switch {
		case j.Fit != nil && (j.Fit.Hole.Part == p || j.Fit.Shaft.Part == p):
			rows = append(rows, fitRow(j))
		case j.Mesh != nil && (j.Mesh.Wheel.Part == p || j.Mesh.Pinion.Part == p):
			rows = append(rows, meshRow(j))
		case j.Stack != nil && j.Stack.Why == "" && j.Stack.Chain.Is() && links(j.Stack.Chain.V, p.Label):
			rows = append(rows, stackRow(j))
		case j.Screw != nil && screws(j.Screw, p):
			rows = append(rows, screwRow(j))
		}
	}
	if len(rows) > 0 {
		m.page.para("The sizes that decide how it goes together with other parts, and what comes of them:")
		m.page.table([]string{"joint", "sizes, mm", "comes out, mm", "wanted, mm"}, rows)
	}
}

func span(l model.Known[eval.Limits]) string {
	if !l.Is() {
		return "not known"
	}
	return model.Figure(l.V.Lo) + " to " + model.Figure(l.V.Hi)
}

func sized(d *eval.Dimension) string {
	words := strings.TrimPrefix(d.Path, "part.")
	if d.Size.Is() {
		words += " " + written(d.Size.V)
	}
	if d.Limits.Is() {
		words += " (" + span(d.Limits) + ")"
	}
	if d.Made != nil {
		words += ", as measured"
	}
	return words
}

func fitRow(j *eval.Joint) []string {
	f := j.Fit
	comes := "not known"
	if l := f.Play; l.Is() {
		switch {
		case l.V.Lo >= 0:
			comes = "clearance " + span(l)
		case l.V.Hi <= 0:
			comes = "interference " + model.Figure(-l.V.Hi) + " to " + model.Figure(-l.V.Lo)
		default:
			comes = "interference " + model.Figure(-l.V.Lo) + " to clearance " + model.Figure(l.V.Hi)
		}
	}
	if pin, ok := f.Pin(j.Trace); ok && pin.Pins.Sort.V == "taper" {
		comes = "opened by a reamer of 1:50 until the pin stands a little out"
	}
	wants := f.Class
	if wants == "" && f.Wants.Is() {
		wants = span(f.Wants)
	}
	return []string{j.Item.Path(), sized(&f.Shaft) + " in " + sized(&f.Hole), comes, wants}
}

func meshRow(j *eval.Joint) []string {
	o := j.Mesh
	comes := ""
	if o.Standard.Is() && o.Rack {
		comes = "axis " + model.Figure(tidy(o.Standard.V)) + " from the pitch line of the rack, " + model.Figure(tidy(o.Standard.V-o.Addendum)) + " from its tips"
	} else if o.Standard.Is() {
		comes = "axes " + model.Figure(o.Standard.V) + " apart at the pitch circles"
	}
	if o.At.Is() {
		comes += "; as drawn " + span(o.At)
	}
	wants := ""
	if o.Play.Is() {
		wants = "backlash " + span(o.Play)
	}
	return []string{j.Item.Path(), strings.TrimPrefix(o.Wheel.Name, "part.") + " with " + strings.TrimPrefix(o.Pinion.Name, "part."), strings.TrimPrefix(comes, "; "), wants}
}

func stackRow(j *eval.Joint) []string {
	var words []string
	for _, l := range j.Stack.Chain.V {
		sign := "+"
		if l.Ratio < 0 {
			sign = "−"
		}
		words = append(words, fmt.Sprintf("%s %s %s (%s to %s)", sign, strings.TrimPrefix(l.Name, "part."), model.Figure(l.Size),
			model.Figure(l.Size+l.Lower), model.Figure(l.Size+l.Upper)))
	}
	return []string{j.Item.Path(), strings.Join(words, " "), span(j.Stack.Gap(false)), span(j.Stack.Wants)}
}

func screwRow(j *eval.Joint) []string {
	s := j.Screw
	words := "screw"
	if s.Thread.Is() {
		words = s.Thread.V.Written
	}
	if s.Length > 0 {
		words += " × " + model.Figure(s.Length)
	}
	var comes []string
	if s.Stack.Is() {
		comes = append(comes, "passes "+model.Figure(s.Stack.V))
	}
	if s.Has.Is() {
		comes = append(comes, "full thread "+model.Figure(s.Has.V))
	}
	if l, ok := s.Model.Locked.Get(); ok {
		words += ", locked by " + l
	}
	wants := ""
	if least, ok := s.Wanted(); ok {
		wants = "thread in use " + model.Figure(least) + " at least"
	}
	return []string{j.Item.Path(), words, strings.Join(comes, ", "), wants}
}

// links says whether a chain has a size of a part.
func links(c []chain.Link, part string) bool {
	for _, l := range c {
		if strings.HasPrefix(l.Name, "part."+part+".") {
			return true
		}
	}
	return false
}

func screws(s *eval.Screwed, p *eval.Part) bool {
	for i := range s.Passes {
		if s.Passes[i].Part == p {
			return true
		}
	}
	return s.Part == p
}
