package reckon

import (
	"fmt"
	"math"
	"strings"

	"fettle/eval/reckon/balance"
)

var _ = enter(Subject{
	Name:  "balance",
	Title: "pull of work that turns off its middle; counterweight; speed limit",
	Flags: []Want{
		{Name: "masses", Kind: Texts, Says: "each kg, mm from the axis of turning, degrees from a mark (left out: 0): '1.5 30 0,0.4 60 180'"},
		{Name: "disc", Kind: Length, Least: 1, Most: 1e4, Says: "outside of a round piece that turns off its middle, in place of --masses"},
		{Name: "thick", Kind: Length, Least: 0.1, Most: 1e4, Says: "thickness of the disc"},
		{Name: "hole", Kind: Length, Least: 0, Most: 1e4, Says: "through the middle of the disc (left out: none)"},
		{Name: "offset", Kind: Length, Least: 0.001, Most: 1e4, Says: "of the disc's middle from the axis"},
		{Name: "material", Kind: Text, Says: "metal of the disc"},
		{Name: "revs", Kind: Number, Least: 0.1, Most: 1e5, Says: "speed, rev/min"},
		{Name: "lathe", Kind: Number, Least: 0.1, Most: 1e5, Says: "mass of the machine, kg: at which speed does the pull reach a share of its weight? (left out: the shop's lathe)"},
		{Name: "share", Kind: Number, Least: 0.0001, Most: 1000, Says: "of its weight, % (left out: the shop's out_of_balance, else 5, a habit and no standard's)"},
		{Name: "counter", Kind: Length, Least: 1, Most: 1e4, Says: "how far from the axis a counterweight can sit"},
		{Name: "weight", Kind: Number, Least: 0.0001, Most: 1e5, Says: "a counterweight that is there, kg"},
		{Name: "turning", Kind: Number, Least: 0.001, Most: 1e5, Says: "mass of all that turns, kg: how fast its middle sways, with --revs"},
	},
	Examples: [][]string{{"--masses", "1.5 30", "--revs", "300", "--counter", "70"}, {"--disc", "80", "--thick", "25", "--offset", "5", "--material", "EN8", "--revs", "90"}},
	No:       "at --revs the pull is above the share of the machine's weight",
	Answer:   answerBalance,
})

const balanceCaution = "Work and weights that fly off kill: bolt each so that it cannot slide, turn the spindle by hand once round, begin at the slowest speed, and stand out of the plane of turning. Never exceed the speed marked on chuck or faceplate, and follow the machine's manual. A counterweight in another plane leaves a tipping pull that was not worked out."

// swung is a moment as it was asked for.
type swung struct {
	talk
	m balance.Moment
}

func answerBalance(a Ask) (Answer, error) {
	q := swung{talk: talk{Ask: a}}
	for _, part := range []func() error{q.moment, q.pull, q.limit, q.counter, q.sway} {
		if err := part(); err != nil {
			return Answer{}, err
		}
	}
	q.source("pull = mass x distance x (2 pi n / 60)²: plain mechanics; weight by the standard fall of 9.80665 m/s²")
	q.out.Caution = balanceCaution
	return q.out, nil
}

func (q *swung) moment() error {
	listed := q.Texts("masses")
	disc, isDisc := q.Length("disc")
	var masses []balance.Mass
	var err error
	switch {
	case (len(listed) > 0) == isDisc:
		return fmt.Errorf("balance wants --masses, or --disc with --thick, --offset and --material, one of them")
	case isDisc:
		masses, err = q.disc(disc)
	default:
		masses, err = readMasses(listed)
	}
	if err != nil {
		return err
	}
	if q.m, err = balance.Sum(masses...); err != nil {
		return err
	}
	for _, m := range masses {
		q.step("%s kg x %s mm = %s kg mm, at %s degrees.", round(m.Kilograms, 4), millimetres(m.Radius), round(m.Kilograms*m.Radius, 3), round(m.Angle, 1))
	}
	if q.m.Size == 0 {
		q.say("The masses balance: there is no moment left.")
	} else {
		q.say("Out of balance by %s kg mm, the heavy side at %s degrees from the mark.", round(q.m.Size, 3), round(q.m.Angle, 1))
	}
	q.value("moment", q.m.Size, "kg mm", "worked out")
	q.value("heavy side", q.m.Angle, "degrees", "worked out")
	return nil
}

// readMasses reads "1.5 30 90": kg, mm, degrees.
func readMasses(listed []string) (out []balance.Mass, err error) {
	if len(listed) > 100 {
		return nil, fmt.Errorf("--masses wants 1 to 100 masses, not %d", len(listed))
	}
	for _, one := range listed {
		w := strings.Fields(one)
		if len(w) < 2 || len(w) > 3 {
			return nil, fmt.Errorf("--masses %s: each wants kg, mm from the axis and perhaps degrees with blanks between, as in 1.5 30 90", quoted(one))
		}
		var x [3]float64
		for n, word := range w {
			v, err := pure(word)
			if err != nil {
				return nil, fmt.Errorf("--masses %s: %s is no number", quoted(one), quoted(word))
			}
			x[n], _ = v.Float64()
		}
		out = append(out, balance.Mass{Kilograms: x[0], Radius: x[1], Angle: x[2]})
	}
	return out, nil
}

func (q *swung) disc(outside float64) ([]balance.Mass, error) {
	thick, ok1 := q.Length("thick")
	offset, ok2 := q.Length("offset")
	m, ok3, err := q.metal("material")
	if err != nil {
		return nil, err
	}
	if !ok1 || !ok2 || !ok3 {
		return nil, fmt.Errorf("--disc wants --thick, --offset and --material")
	}
	hole, _ := q.Length("hole")
	kg, err := balance.Disc(outside, hole, thick, m.Density)
	if err != nil {
		return nil, err
	}
	q.step("Mass of the disc: pi / 4 x (%s² - %s²) x %s x %s / 10^9 = %s kg.", millimetres(outside), millimetres(hole), millimetres(thick), plain(m.Density), round(kg, 4))
	q.source("density of " + m.Name + ": the handbook's table of materials")
	q.value("mass", kg, "kg", "worked out")
	return []balance.Mass{{Kilograms: kg, Radius: offset}}, nil
}

func (q *swung) pull() error {
	revs, ok := q.Number("revs")
	if !ok || q.m.Size == 0 {
		return nil
	}
	f, err := balance.Force(q.m, revs)
	if err != nil {
		return err
	}
	q.say("At %s rev/min it pulls with %s N, as the weight of %s kg does.", plain(revs), three(f), three(f/balance.G))
	q.step("Pull = %s / 1000 x (2 pi x %s / 60)² = %s N.", round(q.m.Size, 3), plain(revs), three(f))
	q.value("pull", f, "N", "worked out")
	return nil
}

func (q *swung) limit() error {
	machine, ok, err := q.ExactFrom("lathe", "weight", "lathe")
	if err != nil || !ok {
		return err
	}
	kg, _ := machine.V.Float64()
	if machine.Item != nil {
		q.say("The machine is %s: %s kg.", machine.From, plain(kg))
	}
	share, ok := q.Number("share")
	if !ok {
		share = balance.UsualShare * 100
		if own, said := q.Thumb("out_of_balance"); said {
			share = own * 100
		}
		q.source(plain(share) + " % of the machine's weight: a limit of judgement (rules_of_thumb, out_of_balance); 5 % is common practice")
	}
	force, err := balance.Weight(kg, share/100)
	if err != nil {
		return err
	}
	most, ok, err := balance.SpeedAt(q.m, force)
	if err != nil || !ok {
		return err
	}
	q.say("%s %% of the weight of %s kg, %s N, is reached at %s rev/min.", plain(share), plain(kg), three(force), round(math.Floor(most), 0))
	q.step("60 / (2 pi) x sqrt(%s x 1000 / %s) = %s rev/min.", three(force), round(q.m.Size, 3), round(most, 1))
	q.value("speed at that share", most, "rev/min", "worked out")
	if revs, ok := q.Number("revs"); ok {
		if revs > most {
			q.out.No = true
			q.say("%s rev/min is above that: balance it, or run slower.", plain(revs))
		} else {
			q.say("%s rev/min is not above that.", plain(revs))
		}
	}
	return nil
}

func (q *swung) counter() error {
	if at, ok := q.Length("counter"); ok {
		c, err := balance.Counterweight(q.m, at)
		if err != nil {
			return err
		}
		q.counterweight(c, "Balance it with %s kg at %s mm from the axis, %s degrees from the mark.")
		q.step("Counterweight = moment / distance = %s / %s = %s kg.", round(q.m.Size, 3), millimetres(at), round(c.Kilograms, 4))
	}
	kg, ok := q.Number("weight")
	if !ok {
		return nil
	}
	c, err := balance.CounterRadius(q.m, kg)
	if err != nil {
		return err
	}
	q.counterweight(c, "The weight of %s kg balances it at %s mm from the axis, %s degrees from the mark.")
	q.step("Distance = moment / mass = %s / %s = %s mm.", round(q.m.Size, 3), round(kg, 4), millimetres(c.Radius))
	return nil
}

func (q *swung) counterweight(c balance.Mass, form string) {
	if q.m.Size == 0 {
		return
	}
	q.say(form, round(c.Kilograms, 3), round(c.Radius, 2), round(c.Angle, 1))
	q.value("counterweight", c.Kilograms, "kg", "worked out")
	q.value("counterweight at", c.Radius, "mm", "worked out")
	q.value("counterweight side", c.Angle, "degrees", "worked out")
}

func (q *swung) sway() error {
	kg, ok := q.Number("turning")
	revs, ok2 := q.Number("revs")
	if !ok {
		return nil
	}
	if !ok2 {
		return fmt.Errorf("--turning wants --revs")
	}
	s, err := balance.Sway(q.m, kg, revs)
	if err != nil {
		return err
	}
	q.say("The middle of %s kg sways at %s mm/s: a balance grade of G %s or coarser.", plain(kg), three(s), three(s))
	q.source("grades of balance, mm/s: from memory, ISO 21940-11")
	q.value("sway", s, "mm/s", "worked out")
	return nil
}
