package reckon

import (
	"fmt"
	"math"
	"math/big"

	"fettle/eval/reckon/screwcut"
	"fettle/schema/model"
)

// best answers with the first train, its error and its half-nuts.
func (q *screwed) best() error {
	t := q.found.Trains[0]
	idler := ""
	if t.Pairs == 1 {
		idler = ", with any idler that reaches between them"
		if t.Idler > 0 {
			idler = fmt.Sprintf(", with a wheel of %d as idler between them", t.Idler)
		}
	}
	q.say("%s on a lead screw of %s: %s, drivers above%s.", capital(q.thread()), q.lathe.Screw, t, idler)
	if t.Exact {
		q.say("That is exact.")
	} else {
		over := t.Over(q.long)
		q.say("It cuts a lead of %s mm, %s parts in a million too %s: %s mm in %s mm of thread.", round(t.Lead, 6), round(math.Abs(t.PPM), 1), longShort(t.PPM), round(math.Abs(over), 5), millimetres(q.long))
		if q.form > 0 {
			q.say("Screwed into a true thread of that length it takes %s mm of the play on pitch diameter: hold that against the tolerance.", round(screwcut.TooTight(over, q.form), 4))
		}
	}
	n, err := screwcut.HalfNuts(t, q.lathe.Screw)
	if err != nil {
		return err
	}
	q.nuts(n)
	q.out.Values = append(q.out.Values, word("train", t.String(), "worked out"))
	q.value("lead cut", t.Lead, "mm", "worked out")
	q.value("error", t.PPM, "ppm", "worked out")
	q.value("error over --engaged", t.Over(q.long), "mm", "worked out")
	q.value("trains found", float64(q.found.Found), "", "worked out")
	return nil
}

func longShort(ppm float64) string {
	if ppm < 0 {
		return "short"
	}
	return "long"
}

// nuts says what may be done with the half-nuts.
func (q *screwed) nuts(n screwcut.Nuts) {
	if n.Anywhere {
		q.say("The half-nuts may be opened after each pass and closed anywhere.")
		q.out.Values = append(q.out.Values, word("half-nuts", "opened", "worked out"))
		return
	}
	dials, _ := q.Wholes("dial")
	for _, teeth := range dials {
		if marks := n.Marks(teeth); marks > 0 {
			q.say("The half-nuts may be opened with the chasing dial of %d teeth: close them at any of %s round it, %s of the lead screw apart.", teeth, counted(marks, "place"), counted(n.Screw, "turn"))
			q.out.Values = append(q.out.Values, word("half-nuts", "opened, by the dial", "worked out"))
			return
		}
	}
	q.shut = true
	dial := ""
	if len(dials) > 0 {
		dial = ", and no dial of --dial tells when"
	}
	q.say("Keep the half-nuts shut and reverse the lathe between passes: they find the groove again only every %d turns of the lead screw%s.", n.Screw, dial)
	if n.Way <= 500 {
		q.say("Or stop everything, open them, wind the carriage back by exactly %s mm or a whole number of times that, and close them before anything turns.", round(n.Way, 4))
	}
	q.out.Values = append(q.out.Values, word("half-nuts", "kept shut", "worked out"))
}

// hand says how the screw must turn.
func (q *screwed) hand() {
	t := q.found.Trains[0]
	if t.Pairs == 3 {
		q.say("Three pairs turn the lead screw the other way than one pair with an idler or two pairs do: set the tumbler the other way, or put an idler in.")
	}
	if !q.left {
		return
	}
	how := "at the tumbler, or with one idler more"
	if v, ok := q.says("lead_screw_reverses"); ok && !v.Yes {
		how = "with one idler more, for this lathe has no tumbler"
	}
	q.say("Left hand: run the spindle forward and reverse the lead screw, %s; start at the headstock end and cut towards the tailstock.", how)
}

// says gives what the lathe of the shop says.
func (q *screwed) says(attr string) (model.Value, bool) {
	if q.item == nil {
		return model.Value{}, false
	}
	return Member(q.item, attr)
}

// eachStart says how the starts are found.
func (q *screwed) eachStart() {
	if q.starts < 2 {
		return
	}
	t := q.found.Trains[0]
	q.say("To the next start: move the top slide, set along the axis, on by the pitch of %s mm.", millimetres(q.pitch.MM()))
	if teeth, ok := screwcut.StartTeeth(t.Driver[0], q.lathe.Head, q.starts); ok {
		q.say("Or mark the first wheel of %d where it meshes, part the wheels, turn the spindle until it has gone on by %d teeth, and mesh them again.", t.Driver[0], teeth)
	} else {
		q.say("Parting the wheels does not find it here: a start is no whole number of teeth of the first wheel of %d.", t.Driver[0])
	}
	if n, err := screwcut.HalfNuts(t, q.lathe.Screw); err == nil {
		if turns, ok := n.NextStart(q.starts); ok {
			q.say("Closing the half-nuts %s of the lead screw later comes to another start too.", counted(turns, "turn"))
		}
	}
}

// table lists the trains.
func (q *screwed) table() error {
	t := Table{Head: []Column{left("wheels"), right("cuts mm"), right("error ppm"), right("over " + millimetres(q.long) + " mm"), left("half-nuts")}, Most: 12}
	for _, x := range q.found.Trains {
		n, err := screwcut.HalfNuts(x, q.lathe.Screw)
		if err != nil {
			return err
		}
		nuts := fmt.Sprintf("every %d turns", n.Screw)
		if n.Anywhere {
			nuts = "anywhere"
		}
		ppm, over := "exact", ""
		if !x.Exact {
			ppm, over = fmt.Sprintf("%+.1f", x.PPM), fmt.Sprintf("%+.5f", x.Over(q.long))
		}
		t.Rows = append(t.Rows, []string{x.String(), round(x.Lead, 6), ppm, over, nuts})
	}
	all := fmt.Sprintf("%s found", counted(q.found.Found, "train"))
	if q.found.More {
		all = fmt.Sprintf("more than %d trains found", screwcut.MostTrains)
	}
	t.Title = all + ", the best first"
	q.out.Tables = append(q.out.Tables, t)
	return nil
}

// meshing is the rule that wheels stand by.
func (q *screwed) meshing() string {
	m := q.lathe.Mesh
	if m.Measured() {
		return fmt.Sprintf("two that mesh must have 2 + %s / %s = %s teeth more than the wheel beside either", millimetres(m.Boss), millimetres(m.Module), round(2+m.Boss/m.Module, 2))
	}
	return fmt.Sprintf("two that mesh must have %d teeth more than the wheel beside either", m.Spare)
}

func (q *screwed) steps() {
	ratio := screwcut.Ratio(q.lathe, q.want.Lead)
	head := ""
	if f := q.lathe.Head; f.Den > 0 && f.Num != f.Den {
		head = fmt.Sprintf(" / %s turns of the first stud", f)
	}
	words := ratio.RatString()
	if len(words) > 24 {
		words = ratio.FloatString(9)
	}
	q.step("Drivers over driven wheels = lead / lead of the screw%s = %s / %s = %s.", head, mmOf(q.want.Lead), mmOf(q.lathe.Screw), words)
	if len(q.found.Trains) > 0 {
		t := q.found.Trains[0]
		p, d := int64(1), int64(1)
		for n := range t.Pairs {
			p, d = p*int64(t.Driver[n]), d*int64(t.Driven[n])
		}
		q.step("%s = %s; turns of the lead screw for one of the spindle: %s.", t, big.NewRat(p, d).RatString(), t.Turn)
	}
	if q.want.Pairs > 1 {
		q.step("Meshing: %s.", q.meshing())
		if q.found.Blocked > 0 {
			q.step("%s of wheels that would be right cannot be put up by that.", capital(counted(q.found.Blocked, "set")))
		}
	}
	q.out.Sources = append(q.out.Sources, "F. D. Jones, Turning and Boring, 1914: ratio of the wheels; an idler changes the direction alone")
	if !q.lathe.Mesh.Measured() && q.want.Pairs > 1 {
		q.out.Sources = append(q.out.Sources, "common practice, from memory: teeth to spare; --module and --boss put the real figures in its place")
	}
}

func mmOf(p screwcut.Pitch) string { return round(p.MM(), 6) + " mm" }

func (q *screwed) caution() {
	q.out.Caution = "Switch the lathe off and make sure that it cannot start before the wheels are touched; put the guard back, and turn the spindle once by hand. Follow the lathe's manual."
	if !q.shut {
		return
	}
	nose, known := q.says("nose")
	locked, _ := q.says("nose_lock")
	switch {
	case known && nose.Kind == model.ThreadOf && locked.Yes, known && nose.Kind != model.ThreadOf:
	case known:
		q.out.Caution += " The chuck of this lathe is screwed on and not locked: when the spindle is run or braked in reverse it can unscrew and come off. Lock it, hold the work otherwise, or turn the spindle by hand."
	default:
		q.out.Caution += " When the spindle is run or braked in reverse a screwed-on chuck can unscrew and come off: lock it, or turn the spindle by hand."
	}
}
