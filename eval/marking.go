package eval

import "fettle/schema/finding"

// Marking is the moment when lines are scribed, holes punched or figures stamped. It takes no metal.
type Marking struct {
	Spot finding.Spot
	Step *Step
	Hold *Holding // as the piece is held then; nil on a lathe
}

// Marked is the last marking out of a form before a step, in the order written; false where none is.
func (p *Part) Marked(f *Form, before *Step) (*Step, bool) {
	var last *Step
	for _, st := range p.Steps() {
		if st == before {
			break
		}
		if st.Kind != "mark" || st.Step == nil || st.Step.StampedFigures.Is() {
			continue
		}
		for _, r := range st.Step.Out.V {
			if f != nil && r.Item == f.Feature.Item {
				last = st
			}
		}
	}
	return last, last != nil
}
