package eval

import (
	"fmt"
	"math"

	"fettle/eval/reckon/screwcut"
	"fettle/schema/model"
)

// Helical teeth: while the table goes on by the lead of the helix, the piece turns once. Wheels between the
// table's long screw and the head do it: the head turns once in as many turns of its worm as its ratio is,
// so that
//
//	driven / drivers = lead / (ratio x lead of the screw),
//
// the first driver on the screw, the last driven wheel on the head (Practical Treatise on Milling and
// Milling Machines; any book on milling). It is the equation of a lathe's change wheels with drivers and
// driven changed over, and is looked for by the same search. The wheels are in use then, and the worm is in
// mesh: only plain indexing is left.

// Helix is how a piece is turned as the table goes. Lengths are mm.
type Helix struct {
	Lead   float64 // of the helix
	Screw  float64 // of the table's long screw
	Ratio  float64 // of the head
	Found  bool    // a train comes within a fiftieth
	Drives []int   // wheels that drive, from the table's screw on
	Driven []int   // wheels that are driven, the last on the head
	PPM    float64 // the lead that comes of it is longer by so many parts in a million
	Over   float64 // width of the teeth
	Off    float64 // how far a tooth is off over that width on the reference circle
	Play   float64 // usual play of such teeth, 0.04 modules: common practice
}

// Helix finds the wheels for what an operation cuts on a helix. Lacks is what nobody said; wrong why nothing
// turns it, "" where something may; false where it cuts none.
func (k *Cut) Helix(f *Form) (h Helix, lacks []model.Lack, wrong string, ok bool) {
	d := k.Hold.Choice.Divided
	if f == nil || f.Tooth == nil || f.Tooth.Lead <= 0 || d == nil || d.Upright || k.Hold.Unplayed != "" || !k.disc() {
		return h, nil, "", false
	}
	t := f.Tooth
	h = Helix{Lead: t.Lead, Over: f.Hi[0] - f.Lo[0], Play: usualBacklash * t.Module}
	if !(t.Module > 0) {
		h.Play = usualBacklash * 2 * t.On / float64(t.Count) // as much for a notch, by its pitch
	}
	if d.Head == nil {
		return h, nil, "nothing gears " + d.Item().Path() + " to the screw of the table", true
	}
	if x := d.Head.Differential; !x.Said {
		lacks = append(lacks, model.Lack{Fact: d.Head.Path() + ".differential", At: d.Head.At})
	} else if lacks = append(lacks, x.Wheels.Missing()...); x.Wheels.Is() && len(x.Wheels.V) < 2 {
		return h, nil, d.Head.Path() + " has no wheels that gear it to the screw of the table", true
	}
	lacks = append(lacks, d.Head.Ratio.Missing()...)
	if m := k.Hold.Choice.Machine; m != nil {
		lacks = append(lacks, m.Dials.X.Turn.Missing()...)
		if !m.Dials.X.Said && len(m.Dials.X.Turn.Missing()) == 0 {
			lacks = append(lacks, model.Lack{Fact: m.Path() + ".dials.x.turn", At: m.At})
		}
		h.Screw = m.Dials.X.Turn.V
	}
	h.Ratio = d.Head.Ratio.V
	if len(lacks) == 0 {
		wrong = h.train(d.Head.Differential.Wheels.V, math.Abs(t.Lean))
	}
	return h, lacks, wrong, true
}

// train looks for the wheels.
func (h *Helix) train(wheels []float64, lean float64) (wrong string) {
	screw, err := screwcut.Millimetres(h.Screw)
	if err != nil {
		return err.Error()
	}
	turn, err := screwcut.Millimetres(h.Lead / h.Ratio)
	if err != nil {
		return "a lead of " + model.Figure(round3(h.Lead)) + " mm is beyond what wheels do on a head of " + model.Figure(h.Ratio) + " to 1"
	}
	found, err := screwcut.Trains(screwcut.Lathe{Screw: screw, Wheels: wholes(wheels)}, screwcut.Wanted{Lead: turn, Within: NearWorm, Pairs: 2})
	if err != nil {
		return err.Error()
	}
	if len(found.Trains) == 0 {
		return ""
	}
	best := found.Trains[0]
	h.Found, h.PPM = true, best.PPM
	for n := best.Pairs - 1; n >= 0; n-- {
		h.Drives, h.Driven = append(h.Drives, best.Driven[n]), append(h.Driven, best.Driver[n])
	}
	h.Off = h.Over * math.Tan(lean*math.Pi/180) * math.Abs(h.PPM) / 1e6
	return ""
}

// Words says the wheels and where they sit.
func (h *Helix) Words() string {
	if len(h.Drives) == 0 {
		return ""
	}
	s := fmt.Sprintf("%d on the table's screw drives ", h.Drives[0])
	if len(h.Drives) == 1 {
		s += fmt.Sprintf("%d on the head, by an idler", h.Driven[0])
	} else {
		s += fmt.Sprintf("%d, %d with it drives %d on the head", h.Driven[0], h.Drives[1], h.Driven[1])
	}
	if math.Abs(h.PPM) < 0.5 {
		return s + "; exact to a millionth"
	}
	way := "long"
	if h.PPM < 0 {
		way = "short"
	}
	return s + fmt.Sprintf("; the lead comes %s parts in a million too %s", model.Figure(math.Round(math.Abs(h.PPM))), way)
}

// gashesOnly says whether a head is set over for straight gashes that lean: each is played as the piece
// lies square, and the lean of the set-up stands for that of the gash.
func (h *Holding) gashesOnly() bool {
	if h.Choice.Divided == nil || !h.Part.Round || len(h.Work.Steps) == 0 {
		return false
	}
	for _, st := range h.Work.Steps {
		for _, t := range st.Makes {
			if t.Form == nil || t.Form.Tooth == nil || t.Form.Tooth.Lean == 0 || t.Form.Tooth.Lead > 0 {
				return false
			}
		}
	}
	return true
}

// setOver is the lean of the set-up where it stands for that of straight gashes.
func (k *Cut) setOver() (by float64, ok bool) {
	t := k.Step.Work.SetUp.Tilt
	return math.Abs(t.By.V), t.Said && t.By.Is() && k.Hold.gashesOnly()
}

// LeansBy says how cutter or table lean for gaps that do, and by how many degrees; false where they do not,
// or the tool makes them standing square.
func (k *Cut) LeansBy(f *Form) (words string, by float64, ok bool) {
	if f == nil || f.Tooth == nil || f.Tooth.Lean == 0 || !k.disc() || k.Choice.Tool.Cutter.Kind == "gear_cutter" && IsHob(k.Choice.Tool.Cutter) {
		return "", 0, false
	}
	by = math.Abs(f.Tooth.Lean)
	if over, ok := k.setOver(); ok {
		return "the head set over on the table by " + model.Figure(over) + " degrees, as the set-up is tilted", 0, true
	}
	hand, upright, level := "right", "right", "anticlockwise"
	if f.Tooth.Lean < 0 {
		hand, upright, level = "left", "left", "clockwise"
	}
	says := model.Figure(math.Round(by*1e4)/1e4) + " degrees for teeth of the " + hand + " hand: "
	if k.LevelSpindle() {
		return says + "the table swung " + level + " as seen from above", by, true
	}
	return says + "the top of the spindle to the " + upright + " as seen from the front, the cutter in front of the piece", by, true
}
