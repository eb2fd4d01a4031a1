package reckon

import (
	"fmt"
	"math"

	"fettle/eval/reckon/cutting"
	"fettle/eval/reckon/hold"
	"fettle/schema/handbook"
)

func (h *holdPage) strap() error {
	a, b := h.length("to-work"), h.length("to-heel")
	torque, ok := h.Number("torque")
	if !ok {
		return fmt.Errorf("strap wants --torque, N m on the nut")
	}
	d := h.length("stud")
	pull := cutting.ClampLoad(torque*1000, 0.2, d)
	work, heel, err := hold.Strap(pull, a, b)
	if err != nil {
		return err
	}
	n, ok := h.Whole("clamps")
	if !ok {
		n = 1
	}
	mu := h.or("friction", 0.15)
	one, err := hold.Resist(work, mu, n, false)
	both, err2 := hold.Resist(work, mu, n, true)
	if err := cmpErr(err, err2); err != nil {
		return err
	}
	h.say("The stud pulls with %s N; the strap presses with %s N on the work and %s N on the heel.", round(pull, 0), round(work, 0), round(heel, 0))
	h.say("By friction alone a push along the table of %s N is resisted by %s, or of %s N where the table under each resists as well; put the cut against a stop and do not rely on it.", round(one, 0), map[bool]string{true: "one clamp", false: fmt.Sprintf("%d clamps", n)}[n == 1], round(both, 0))
	if a > b {
		h.say("The stud is nearer to the heel than to the work: most of its pull is lost on the heel. A third of the way from the work is usual.")
	}
	h.step("Pull of the stud: %s / (0.2 x %s) = %s N.", plain(torque*1000), millimetres(d), round(pull, 0))
	h.step("On the work: %s x %s / (%s + %s) = %s N.", round(pull, 0), millimetres(b), millimetres(a), millimetres(b), round(work, 0))
	h.step("Friction: %s x %s x %d = %s N.", plain(mu), round(work, 0), n, round(one, 0))
	for _, s := range handbook.Straps() {
		if math.Abs(s.Diameter-d) < 0.06 && torque > s.Torque*1.05 {
			h.say("The table stops at %s N m for a stud of %s: that is a third of the yield of a clean dry stud.", plain(s.Torque), s.Stud)
		}
	}
	h.value("pull of the stud", pull, "N", "worked out, K 0.2")
	h.value("force on the work", work, "N", "worked out")
	h.value("force on the heel", heel, "N", "worked out")
	h.value("friction", one, "N", "worked out")
	h.source("a workholding maker's pages on clamping force: dry studs, K 0.2, and friction", "stud about a third of the strap from the work, heel 1 to 3 mm high: textbook on milling; a hobby author's pages")
	return nil
}

func (h *holdPage) slot() error {
	depth := h.length("depth")
	at, ok := h.Length("at")
	if !ok {
		at = depth
	}
	f := h.or("force", 0)
	c, err := hold.Slot(f, at, depth, h.length("thick"), h.length("length"), h.or("elastic", 207)*1000)
	if err != nil {
		return err
	}
	h.say("The slot closes by %s at its mouth while it is clamped, and by twice %s at the height of the jaws; a cut along it then leaves the slot that much wider when it is let go.", h.Says(c.Width), h.Says(c.Jaw))
	h.say("Clamp outside of it, or fill it with a key of its own width.")
	h.step("Each side is a beam: I = %s x %s^3 / 12; at the jaw %s x %s^3 / (3 E I) = %s mm; at the mouth %s mm.", millimetres(h.length("length")), millimetres(h.length("thick")), plain(f), millimetres(at), round(c.Jaw, 5), round(c.Mouth, 5))
	h.value("closes at the mouth", c.Width, "mm", "worked out")
	h.value("each side at the jaw", c.Jaw, "mm", "worked out")
	h.source("beam theory; a root that gives and shear make it more")
	return nil
}

func (h *holdPage) ring() error {
	n, ok := h.Whole("jaws")
	if !ok {
		n = 3
	}
	f := h.or("force", 0)
	outside, bore, long, e := h.length("outside"), h.length("bore"), h.length("length"), h.or("elastic", 207)*1000
	p, thick, err := hold.Ring(n, f, outside, bore, long, e)
	if err != nil {
		return err
	}
	least, err := hold.RingForce(n, 0.005, outside, bore, long, e)
	if err != nil {
		return err
	}
	h.say("A bore made true in %d jaws at %s N each is out of round by %s on radius when it is let go.", n, plain(f), h.Says(p.Lobing))
	h.say("For 0.005 mm the force on each jaw may be %s N only.", round(math.Floor(least), 0))
	if n == 3 {
		h.say("Six jaws leave a third as much at the same force in all.")
	}
	if p.Odd {
		h.say("An instrument that measures across two points does not show it: use a plug or a gauge with three feet.")
	}
	if thick {
		h.say("The wall is thick for the theory of thin rings: the figures are rough.")
	}
	inward, outward, _ := hold.Lobes(n)
	h.step("At a jaw %s W R^3/(E I) = %s mm inward, between two %s W R^3/(E I) = %s mm outward.", round(inward, 6), round(p.Jaw, 5), round(outward, 6), round(p.Between, 5))
	h.value("out of round on radius", p.Lobing, "mm", "worked out")
	h.value("inward at a jaw", p.Jaw, "mm", "worked out")
	h.value("outward between jaws", p.Between, "mm", "worked out")
	h.value("force for 0.005 mm", least, "N", "worked out")
	h.source("thin rings under equal forces: Timoshenko, Roark, from memory; a paper on rings in chucks found such a model within 6 % of what was measured at a bore of 0.88 of the outside")
	return nil
}

func (h *holdPage) dent() error {
	f, e := h.or("force", 0), h.or("elastic", 207)*1000
	d, err := hold.UnderBall(f, h.length("ball"), h.or("hardness", 0), e, 207000)
	if err != nil {
		return err
	}
	switch d.Mark {
	case hold.NoDent:
		h.say("At %s N the face springs back: by theory no dent is left up to %s N.", plain(f), round(d.FirstAt, 1))
	case hold.MayMark:
		h.say("A mark may be left, smaller than %s across and %s deep: metal flows below the face from %s N on, and the dent is full from %s N.", h.Says(d.Across), h.Says(d.Depth), round(d.FirstAt, 1), round(d.FullFrom, 0))
	default:
		h.say("The tip leaves a dent %s across and %s deep.", h.Says(d.Across), h.Says(d.Depth))
	}
	h.say("A pad of soft metal or card under the tip spreads the force.")
	h.step("As in a hardness test: depth 0.102 x %s / (pi x %s x %s) = %s mm.", plain(f), millimetres(h.length("ball")), plain(h.or("hardness", 0)), round(d.Depth, 5))
	h.step("First yield below the face at %s N (Hertz, 1.6 times the yield strength, that a third of the hardness as a pressure).", round(d.FirstAt, 1))
	h.value("dent across, most", d.Across, "mm", "worked out")
	h.value("dent deep, most", d.Depth, "mm", "worked out")
	h.value("first yield", d.FirstAt, "N", "worked out")
	h.source("ISO 6506-1, definition of Brinell hardness", "K. L. Johnson, Contact Mechanics, and Tabor, The Hardness of Metals: from memory")
	return nil
}
