package rules

import (
	"fmt"
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "wheels-cut-other-lead",
	Title: "the change wheels that are written do not cut the lead, or are not there",
	Why: `The wheels between spindle and lead screw make the lead and nothing else does. One wheel wrong, or two the wrong way round, and
the thread is another, which shows when the nut does not go on. A first pass that only scratches, measured over many
threads, tells it in time.`,
	Rows: []string{"D18", "H12"},
	Source: []string{"driver/driven = lead cut / lead of the screw: reckon/screwcut",
		"what a thread bears: as for thread-cannot-be-cut; a worm: three pitches in mesh and a play of 0.04 modules, common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleOwnTrain("[40, 30]"),
	Sound:     exampleOwnTrain("[40, 60]"),
	OnTurn:    wheelsCutOtherLead,
})

// exampleOwnTrain cuts a pitch of 2 mm on a lead screw of 3 mm with the wheels given.
func exampleOwnTrain(wheels string) string {
	return replaced(exampleThread("M16x2"), "tool  = threading_tool.metric", "tool   = threading_tool.metric\n      wheels = "+wheels)
}

func wheelsCutOtherLead(k *eval.Turn, a *Ask) {
	m, said := k.Lathe(), k.Step.Step.Wheels
	if c := k.Choice.Tool.Cutter; !said.Is() || m == nil || k.Hold.Unplayed != "" || c == nil || c.Kind != "threading_tool" {
		return
	}
	if there, ok := Need(a, m.Wheels); ok {
		if w, wants, has := lackingWheel(said.V, there); wants > has {
			f := a.Say(m.Path()+".wheels+"+k.Spot.String(), said.At, "the train wants %d of %s teeth, and %s has %d", wants, figure(w), m.Path(), has)
			f.Also = []finding.Note{{Place: m.Wheels.At, Says: "its wheels"}}
		}
	}
	_, ok := Need(a, m.LeadScrew)
	_, ok2 := Need(a, m.FixedTrain)
	if !ok || !ok2 {
		return
	}
	for _, t := range k.Step.Makes {
		if t.Form == nil || !oneOf(t.Form.Feature.Kind, "thread", "worm") {
			continue
		}
		bears := k.NearLead(t.Form)
		lead, err := eval.LeadOf(t.Form, k.Choice.Tool.Thread.Pitch)
		if t.Form.Feature.Kind == "worm" {
			bears = mostOff
			_, lead, err = eval.WormLead(t.Form.Feature)
		}
		if err != nil {
			continue
		}
		train, err := k.GivenTrain()
		says := ""
		switch {
		case err != nil:
			says = err.Error()
		case math.Abs(train.PPM) > bears:
			says = fmt.Sprintf("the wheels %s cut a lead of %s mm, and that of %s is %s mm", train, figure(round(train.Lead)), t.Form.Name(), figure(round(lead.MM())))
		default:
			a.Clear(finding.Margin{Has: round(math.Abs(train.PPM)), Wants: round(bears), Unit: "ppm", Less: true}, "the lead of "+t.Form.Name()+" by "+train.String())
			continue
		}
		a.Say(k.Spot.Part+"."+t.Form.Name()+".wheels", said.At, "%s", says)
	}
}

// lackingWheel is the first of the wheels of a train of which it wants more than there are.
func lackingWheel(train, there []float64) (wheel float64, wants, has int) {
	for i, w := range train {
		wants, has = 0, 0
		for _, x := range train[:i+1] {
			if x == w {
				wants++
			}
		}
		for _, x := range there {
			if x == w {
				has++
			}
		}
		if has < wants {
			return w, wants, has
		}
	}
	return 0, 0, 0
}
