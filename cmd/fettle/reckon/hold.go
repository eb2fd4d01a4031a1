package reckon

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/eval/reckon/hold"
)

var _ = enter(Subject{
	Name:  "hold",
	Title: "how hard clamps must press; slots and rings that close; dents",
	Words: []Want{{Name: "WHAT", Kind: OneOf, Of: []string{"vise", "contacts", "strap", "slot", "ring", "dent"}, Needed: true,
		Says: "a block between jaws, any points of contact, a strap clamp, a slot or a ring that is squeezed, a dent under a tip"}},
	Flags: []Want{
		{Name: "load", Kind: Text, Says: `vise, contacts: force and place "fx fy fz x y z", N and mm, several with ; between; x along the jaws, y to the fixed jaw, z up, from the middle of the block's foot`},
		{Name: "contacts", Kind: Text, Says: `each "x y z nx ny nz friction", n into the work; behind it clamp for those that press, of 2 on 1 where piece 2 is pushed by piece 1; with ; between`},
		{Name: "size", Kind: Lengths, Least: 1, Most: 2000, Says: "vise: along the jaws, between them, high"},
		{Name: "grip", Kind: Length, Least: 0.5, Most: 1000, Says: "vise: how high the jaws reach up the block"},
		{Name: "friction", Kind: Number, Least: 0.01, Most: 2, Says: "at what presses (left out: 0.15, steel on steel dry)"},
		{Name: "safety", Kind: Number, Least: 1, Most: 20, Says: "times the load (left out: 2)"},
		{Name: "sides", Kind: Whole, Least: 4, Most: 64, Says: "of the friction pyramids, even (left out: 16)"},
		{Name: "torque", Kind: Number, Least: 0.01, Most: 10000, Says: "N m on the handle of the vise, or on the nut of the strap"},
		{Name: "lead", Kind: Pitch, Least: 0.5, Most: 50, Says: "vise: of its screw (left out: 4)"},
		{Name: "offset", Kind: Length, Most: 1000, Says: "vise: of the work's middle from the screw"},
		{Name: "guide", Kind: Length, Least: 1, Most: 2000, Says: "vise: length of the movable jaw's guide, for --offset"},
		{Name: "packing", Kind: Length, Least: 0.1, Most: 1000, Says: "vise: of packing of the same thickness from the screw, on the other side"},
		{Name: "stud", Kind: Length, Least: 1, Most: 100, Says: "strap: diameter of the stud"},
		{Name: "to-work", Kind: Length, Least: 0.1, Most: 1000, Says: "strap: from stud to work"},
		{Name: "to-heel", Kind: Length, Least: 0.1, Most: 1000, Says: "strap: from stud to heel"},
		{Name: "clamps", Kind: Whole, Least: 1, Most: 20, Says: "strap: how many (left out: 1)"},
		{Name: "force", Kind: Number, Least: 0.1, Most: 1000000, Says: "N: slot, dent, and ring on each jaw"},
		{Name: "jaws", Kind: Whole, Least: 2, Most: 20, Says: "ring: how many (left out: 3)"},
		{Name: "outside", Kind: Length, Least: 1, Most: 2000, Says: "ring: outside diameter"},
		{Name: "bore", Kind: Length, Least: 0.5, Most: 2000, Says: "ring: bore"},
		{Name: "length", Kind: Length, Least: 0.1, Most: 2000, Says: "ring, slot: along the axis, along the slot"},
		{Name: "depth", Kind: Length, Least: 0.1, Most: 500, Says: "slot: depth"},
		{Name: "thick", Kind: Length, Least: 0.1, Most: 500, Says: "slot: of the metal on either side"},
		{Name: "at", Kind: Length, Most: 500, Says: "slot: height of the jaws' push above its root (left out: the mouth)"},
		{Name: "ball", Kind: Length, Least: 0.1, Most: 500, Says: "dent: diameter of the tip's ball"},
		{Name: "hardness", Kind: Number, Least: 1, Most: 700, Says: "dent: Brinell hardness of the face"},
		{Name: "elastic", Kind: Number, Least: 0.5, Most: 700, Says: "GPa, of the work (left out: 207, steel)"},
	},
	Examples: [][]string{
		{"vise", "--size", "60,40,30", "--grip", "10", "--load", "900 0 0 0 0 30"},
		{"strap", "--torque", "30", "--stud", "10", "--to-work", "15", "--to-heel", "30"},
		{"ring", "--force", "2000", "--outside", "95", "--bore", "85", "--length", "20"},
		{"slot", "--force", "3000", "--depth", "12", "--thick", "8", "--length", "40"},
		{"dent", "--force", "500", "--ball", "10", "--hardness", "120"}},
	No:     "nothing holds the load, or the screw of --torque does not press hard enough",
	Answer: answerHold,
})

// holdPage is a holding as it was asked for.
type holdPage struct {
	Ask
	out Answer
}

// holdUses says which flags each question takes; those of another are refused.
var holdUses = map[string][]string{
	"vise":     {"load", "size", "grip", "friction", "safety", "sides", "torque", "lead", "offset", "guide", "packing"},
	"contacts": {"load", "contacts", "safety", "sides"},
	"strap":    {"torque", "stud", "to-work", "to-heel", "clamps", "friction"},
	"slot":     {"force", "depth", "thick", "length", "at", "elastic"},
	"ring":     {"force", "jaws", "outside", "bore", "length", "elastic"},
	"dent":     {"force", "ball", "hardness", "elastic"},
}

// holdWithout are those that may be left out.
var holdWithout = []string{"friction", "safety", "sides", "torque", "lead", "offset", "guide", "packing", "clamps", "at", "elastic", "jaws"}

const holdCaution = "Nothing here says that a holding is safe. Bodies are taken as rigid, friction out of tables, and a cut that grabs pulls many times harder than one that runs: " +
	"put the cut against a stop or the fixed jaw, try the grip by hand before starting, stand out of the line of work that could fly, and follow the manuals of machine and vise."

func answerHold(a Ask) (Answer, error) {
	h := holdPage{Ask: a}
	what := a.Text("WHAT")
	for _, w := range a.of.Flags {
		_, given := a.said[w.Name]
		mine := slices.Contains(holdUses[what], w.Name)
		switch {
		case given && !mine:
			return Answer{}, fmt.Errorf("--%s is not of %s, which takes --%s", w.Name, what, strings.Join(holdUses[what], ", --"))
		case !given && mine && !slices.Contains(holdWithout, w.Name) && (what != "strap" || w.Name != "torque"):
			return Answer{}, fmt.Errorf("%s wants --%s: %s", what, w.Name, w.Says)
		}
	}
	err := map[string]func() error{"vise": h.vise, "contacts": h.points, "strap": h.strap, "slot": h.slot, "ring": h.ring, "dent": h.dent}[what]()
	if err != nil {
		return Answer{}, err
	}
	h.out.Caution = holdCaution
	return h.out, nil
}

func (h *holdPage) say(format string, args ...any) {
	h.out.Says = append(h.out.Says, fmt.Sprintf(format, args...))
}
func (h *holdPage) step(format string, args ...any) {
	h.out.Steps = append(h.out.Steps, fmt.Sprintf(format, args...))
}
func (h *holdPage) value(name string, x float64, unit, from string) {
	h.out.Values = append(h.out.Values, figure(name, x, unit, from))
}
func (h *holdPage) source(s ...string) { h.out.Sources = append(h.out.Sources, s...) }

// or gives a number, or what stands for it.
func (h *holdPage) or(name string, x float64) float64 {
	if v, ok := h.Number(name); ok {
		return v
	}
	return x
}

func (h *holdPage) length(name string) float64 {
	x, _ := h.Length(name)
	return x
}

// pieceAfter takes "of 2" or "on 1" off words; 0 where it is not there.
func pieceAfter(words, key string) (rest string, n int, err error) {
	f := strings.Fields(words)
	for i, w := range f {
		if w != key {
			continue
		}
		if i+1 >= len(f) || len(f[i+1]) != 1 || f[i+1][0] < '1' || f[i+1][0] > '8' {
			return "", 0, fmt.Errorf("%q wants the number of a piece behind it, 1 to 8", key)
		}
		n = int(f[i+1][0] - '0')
		return strings.Join(slices.Delete(f, i, i+2), " "), n, nil
	}
	return words, 0, nil
}

// holdFigures reads blanks between figures.
func holdFigures(flag, words string, want int) ([]float64, error) {
	f := strings.Fields(words)
	if len(f) != want {
		return nil, fmt.Errorf("--%s %s has %d figures where %d are wanted", flag, quoted(words), len(f), want)
	}
	var out []float64
	for _, w := range f {
		minus := strings.HasPrefix(w, "-")
		v, err := pure(strings.TrimPrefix(w, "-"))
		if err != nil {
			return nil, fmt.Errorf("--%s %s: %w", flag, quoted(words), err)
		}
		x, _ := v.Float64()
		if minus {
			x = -x
		}
		out = append(out, x)
	}
	return out, nil
}

// loads reads --load, times the factor of safety.
func (h *holdPage) loads(safety float64) ([]hold.Load, error) {
	var out []hold.Load
	for one := range strings.SplitSeq(h.Text("load"), ";") {
		words, of, err := pieceAfter(one, "of")
		if err != nil {
			return nil, fmt.Errorf("--load: %w", err)
		}
		x, err := holdFigures("load", words, 6)
		if err != nil {
			return nil, err
		}
		force := hold.Vector{x[0] * safety, x[1] * safety, x[2] * safety}
		out = append(out, hold.Load{Force: force, At: hold.Vector{x[3], x[4], x[5]}, Body: of})
		if len(out) > 60 {
			return nil, fmt.Errorf("--load has more than 60 loads")
		}
	}
	return out, nil
}

// blockContacts gives the contacts of a block in a vise: the corners of what each jaw grips, the lower ones a fifth
// of the grip above the foot, and four points of parallels under it.
func blockContacts(size []float64, grip, mu float64) []hold.Contact {
	var cs []hold.Contact
	for _, x := range []float64{-size[0] / 2, size[0] / 2} {
		for _, z := range []float64{grip / 5, grip} {
			cs = append(cs, hold.Contact{Name: "fixed jaw", At: hold.Vector{x, size[1] / 2, z}, Normal: hold.Vector{0, -1, 0}, Friction: mu},
				hold.Contact{Name: "movable jaw", At: hold.Vector{x, -size[1] / 2, z}, Normal: hold.Vector{0, 1, 0}, Friction: mu, Clamp: true})
		}
		for _, y := range []float64{-0.3, 0.3} {
			cs = append(cs, hold.Contact{Name: "parallel", At: hold.Vector{0.8 * x, y * size[1], 0}, Normal: hold.Vector{0, 0, 1}, Friction: mu})
		}
	}
	return cs
}

func (h *holdPage) vise() error {
	size, _ := h.Lengths("size")
	grip, mu := h.length("grip"), h.or("friction", 0.15)
	if len(size) != 3 {
		return fmt.Errorf("--size wants three lengths: along the jaws, between them, high")
	}
	if grip > size[2] {
		return fmt.Errorf("--grip %s mm is above the block, which is %s mm high", millimetres(grip), millimetres(size[2]))
	}
	g, err := h.least(blockContacts(size, grip, mu), "The vise")
	if err != nil {
		return err
	}
	h.step("The block touches each jaw at the corners of what it grips, %s to %s mm up, and parallels at four points; friction %s everywhere. Its weight counts only if it is one of the loads.", millimetres(grip/5), millimetres(grip), plain(mu))
	if grip < size[2]/3 {
		h.say("The jaws grip less than a third of the height: the block tips easily.")
	}
	return h.screw(g)
}

// least answers with the least force.
func (h *holdPage) least(cs []hold.Contact, who string) (hold.Grip, error) {
	safety := h.or("safety", 2)
	sides, ok := h.Whole("sides")
	if !ok {
		sides = 16
	}
	ls, err := h.loads(safety)
	if err != nil {
		return hold.Grip{}, err
	}
	g, err := hold.Least(cs, ls, sides)
	if err != nil {
		return g, err
	}
	if !g.Held {
		h.out.No = true
		h.say("No force of the clamps holds it: nothing stands against the load.")
		h.say("It goes %s.", goes(g.Gives[0]))
		h.step("Friction pyramids of %d sides; every way that contacts can push was tried (linear program), and a way to move was found that none resists.", sides)
		h.source("balance of forces and moments with friction cones")
		h.value("held", 0, "", "worked out")
		return g, nil
	}
	if !slices.ContainsFunc(cs, func(c hold.Contact) bool { return c.Clamp }) {
		h.say("Forces exist that balance without any clamp, %s times the load counted in: it can stand, if it settles on them.", plain(safety))
	} else {
		h.say("%s must press with %s N at least, %s times the load counted in.", who, round(math.Ceil(g.Force), 0), plain(safety))
		h.say("With less it first goes %s.", goes(g.Gives[0]))
		h.say("With %d-sided friction pyramids, which leave out up to %s %% of friction, that is on the careful side; less than %s N does not do even with the whole round cone of friction.", sides, round(g.Short*100, 1), round(math.Floor(g.Floor), 0))
	}
	t := Table{Title: "Forces on the work that balance", Head: []Column{left("contact"), right("x"), right("y"), right("z"), right("N along x"), right("along y"), right("along z")}, Most: 14}
	for i, p := range g.Pushes {
		name := cs[i].Name
		if name == "" {
			name = fmt.Sprint(i + 1)
		}
		at := cs[i].At
		t.Rows = append(t.Rows, []string{name, round(at[0], 2), round(at[1], 2), round(at[2], 2), round(p[0], 0), round(p[1], 0), round(p[2], 0)})
	}
	h.out.Tables = append(h.out.Tables, t)
	h.step("Every force of a contact lies in its friction pyramid; forces and moments balance; the sum of the clamps' normal forces is least (linear program, both bounds agree): %s N. That such forces exist is needed and not proved enough: work with friction may settle on others.", round(g.Force, 2))
	h.source("balance of forces and moments with friction cones, checked against a general solver of linear programs",
		"times the load 2 to 3: common practice; friction of clean steel on steel 0.15: a workholding maker's pages on clamping force")
	h.value("least force", g.Force, "N", "worked out")
	h.value("floor", g.Floor, "N", "worked out")
	h.value("times the load", safety, "", map[bool]string{true: "--safety", false: "common practice"}[h.Written("safety") != ""])
	return g, nil
}

// goes says in words how a body goes.
func goes(m hold.Motion) string {
	names := [3][2]string{{"to +x", "to -x"}, {"to +y", "to -y"}, {"up", "down"}}
	axis := func(v hold.Vector) (int, int) {
		k := 0
		for i := range v {
			if math.Abs(v[i]) > math.Abs(v[k])+1e-9 {
				k = i
			}
		}
		if v[k] < 0 {
			return k, 1
		}
		return k, 0
	}
	k, s := axis(m.Slide)
	if m.Turn.Length() < 1e-6 {
		return names[k][s]
	}
	r, _ := axis(m.Turn)
	return fmt.Sprintf("over, turning about %s", [3]string{"x", "y", "z"}[r])
}

// screw compares what the screw gives.
func (h *holdPage) screw(g hold.Grip) error {
	torque, ok := h.Number("torque")
	if !ok || !g.Held {
		return nil
	}
	lead := h.length("lead")
	if lead == 0 {
		lead = 4
	}
	lo, err := hold.Screw(torque*1000, lead, 0.15)
	hi, err2 := hold.Screw(torque*1000, lead, 0.30)
	if err := cmpErr(err, err2); err != nil {
		return err
	}
	h.step("Screw: 2 x pi x %s / %s x 0.15 to 0.30 = %s to %s N.", plain(torque*1000), millimetres(lead), round(lo, 0), round(hi, 0))
	share, words, err := h.aside()
	if err != nil {
		return err
	}
	lo, hi = lo*share, hi*share
	verdict := "enough by the tables, even with a stiff screw"
	switch {
	case hi < g.Force:
		verdict, h.out.No = "not enough, even with an easy screw", true
	case lo < g.Force:
		verdict = "enough with an easy screw and not with a stiff one"
	}
	h.say("%s N m on the handle give %s to %s N on the work%s: %s.", plain(torque), round(math.Floor(lo), 0), round(math.Floor(hi), 0), words, verdict)
	h.value("force on the work, least", lo, "N", "worked out, 0.15 of the work through the screw")
	h.value("force on the work, most", hi, "N", "worked out, 0.30 of the work through the screw")
	h.source("share of the work through a plain screw and thrust face, 0.15 to 0.30: worked out from screw friction of 0.12 to 0.2")
	return nil
}

// aside is what is left of the screw's force for work off its axis.
func (h *holdPage) aside() (share float64, words string, err error) {
	offset, off := h.Length("offset")
	packing, packed := h.Length("packing")
	guide, guided := h.Length("guide")
	switch {
	case !off && (packed || guided):
		return 0, "", fmt.Errorf("--packing and --guide go with --offset")
	case !off:
		return 1, "", nil
	case packed:
		w, _, err := hold.Packed(1, offset, packing)
		h.step("Packed: %s / (%s + %s) = %s of the screw's force on the work.", millimetres(packing), millimetres(offset), millimetres(packing), round(w, 3))
		return w, fmt.Sprintf(", packing at the other side taking %s %%", round((1-w)*100, 0)), err
	case guided:
		r, err := hold.Rack(1, offset, guide, 0.15, 0)
		h.step("Racked: 1 / (1 + 2 x 0.15 x %s / %s) = %s of the screw's force on the work.", millimetres(offset), millimetres(guide), round(r.Work, 3))
		h.say("The jaw yaws by its clearance over %s mm and bites one edge of the work: put packing of the same thickness at the other side.", millimetres(guide))
		return r.Work, ", the jaw racked", err
	}
	return 0, "", fmt.Errorf("--offset wants --packing at the other side, or --guide, the length of the jaw's guide")
}

func (h *holdPage) points() error {
	var cs []hold.Contact
	for one := range strings.SplitSeq(h.Text("contacts"), ";") {
		words, clamp := strings.CutSuffix(strings.TrimSpace(one), "clamp")
		words, of, err := pieceAfter(words, "of")
		words, on, err2 := pieceAfter(words, "on")
		if err := cmpErr(err, err2); err != nil {
			return fmt.Errorf("--contacts: %w", err)
		}
		x, err := holdFigures("contacts", words, 7)
		if err != nil {
			return err
		}
		cs = append(cs, hold.Contact{At: hold.Vector{x[0], x[1], x[2]}, Normal: hold.Vector{x[3], x[4], x[5]}, Friction: x[6], Clamp: clamp, Body: of, Against: on})
		if len(cs) > 64 {
			return fmt.Errorf("--contacts has more than 64 contacts")
		}
	}
	_, err := h.least(cs, "The clamps together")
	return err
}
