package eval

import (
	"math"
	"slices"
	"strings"

	"fettle/eval/reckon/cutting"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Feed, depth of a pass and cutting fluid: what is written, and what the tables print for the
// process, the tool and the metal. Nothing of it changes what is cut.

// Feeding is how an operation is fed.
type Feeding struct {
	Said    model.Known[drawing.Feed] // of the step, else of the set-up; not known: by hand
	Printed cutting.Feed              // the band of what is printed; None where nothing is
	Coarse  cutting.Feed              // the band that holds the coarsest that any table prints for the tool
	Lead    float64                   // mm a turn by which the tool feeds itself: a tap, a die, a thread; 0: it does not
	Teeth   int                       // 0: not known
	Revs    float64                   // rev/min; 0: not known
}

// PerTurn is the feed that is written, mm a turn; false by hand, and where turns or teeth lack.
func (f Feeding) PerTurn() (float64, bool) {
	said, ok := f.Said.Get()
	switch {
	case !ok || !(said.Rate > 0):
	case said.Kind == drawing.PerTurn:
		return said.Rate, true
	case said.Kind == drawing.PerTooth && f.Teeth > 0:
		return said.Rate * float64(f.Teeth), true
	case said.Kind == drawing.PerMinute && f.Revs > 0:
		return said.Rate / f.Revs, true
	}
	return 0, false
}

// PerTooth is the feed that is written, mm a tooth; false by hand, and where turns or teeth lack.
func (f Feeding) PerTooth() (float64, bool) {
	if said, ok := f.Said.Get(); ok && said.Kind == drawing.PerTooth && said.Rate > 0 {
		return said.Rate, true
	}
	turn, ok := f.PerTurn()
	if !ok || f.Teeth <= 0 {
		return 0, false
	}
	return turn / float64(f.Teeth), true
}

// saidFeed is the feed that a step is written with, else its set-up.
func saidFeed(st *Step) model.Known[drawing.Feed] {
	if st.Step != nil && st.Step.Feed.Is() {
		return st.Step.Feed
	}
	return st.Work.SetUp.Feed
}

// led is the feed of a tool that its thread takes along: what a set-up says of all its operations is not
// meant for it.
func (f Feeding) led(st *Step, lead float64) Feeding {
	f.Lead = lead
	if st.Step == nil || !st.Step.Feed.Is() {
		f.Said = model.Known[drawing.Feed]{}
	}
	return f
}

// MetalGroup is the row of the tables of cutting speeds that the part's metal is; "": not known.
func (p *Part) MetalGroup() string {
	if m, ok := p.Material.Get(); ok {
		return m.Group
	}
	if p.Blank.Stock != nil {
		return p.Blank.Stock.Material.V.Group
	}
	return ""
}

// Feeding is how the operation is fed.
func (k *Cut) Feeding() Feeding {
	f := Feeding{Said: saidFeed(k.Step), Revs: k.Choice.Speed}
	cu := k.Choice.Tool.Cutter
	if cu == nil {
		return f
	}
	f.Teeth = cu.Teeth.V
	if cu.Kind == "tap" || cu.Kind == "die" {
		return f.led(k.Step, k.Choice.Tool.Thread.Pitch)
	}
	if p := printedFor(k.Choice.By, cu.Kind); p != "" && k.Choice.Tool.Size > 0 {
		f.Printed, _ = cutting.FeedFor(p, cu.Of.Or("HSS"), k.Part.Makes(k.Step).MetalGroup(), k.Choice.Tool.Size)
		f.Coarse = f.Printed
	}
	return f
}

// printedFor names a process as the tables of feeds do; "": they have none for it.
func printedFor(by, cutter string) string {
	switch cutter {
	case "drill":
		return "drilling"
	case "reamer":
		return "reaming"
	case "end_mill", "slot_drill":
		return "milling_end"
	case "face_mill":
		return "milling_face"
	case "side_and_face_cutter":
		return "milling_side"
	case "slitting_saw":
		return "slitting_saw"
	case "parting_tool":
		return "parting"
	}
	return ""
}

// smallLathe is the greatest height of centres of the small lathes that the tables speak of, mm.
const smallLathe = 125

// Feeding is how the operation on a lathe is fed: what is printed is for a finishing cut where it
// brings something to size, else for roughing; on a small lathe, what is said of those.
func (k *Turn) Feeding() Feeding {
	f := Feeding{Said: saidFeed(k.Step), Revs: k.Choice.Speed}
	cu := k.Choice.Tool.Cutter
	if cu == nil {
		return f
	}
	switch cu.Kind {
	case "tap", "die", "threading_tool":
		lead := k.Choice.Tool.Thread.Pitch
		if t, ok := k.Train(); ok {
			lead = t.Lead
		}
		return f.led(k.Step, lead)
	case "turning_tool", "boring_bar":
		f.Printed = k.printedTurning(cu)
		f.Coarse, _ = cutting.FeedFor("turning_rough", cu.Of.Or("HSS"), k.Part.Makes(k.Step).MetalGroup(), k.Largest())
	default:
		if p := printedFor(k.Choice.By, cu.Kind); p != "" {
			size := k.Choice.Tool.Size
			if !(size > 0) {
				size = k.Largest()
			}
			f.Teeth = cu.Teeth.V
			f.Printed, _ = cutting.FeedFor(p, cu.Of.Or("HSS"), k.Part.Makes(k.Step).MetalGroup(), size)
			f.Coarse = f.Printed
		}
	}
	return f
}

func (k *Turn) printedTurning(cu *model.Cutter) cutting.Feed {
	process := "turning_rough"
	for _, w := range k.Works {
		if w.Final {
			process = "turning_finish"
		}
	}
	switch k.Choice.By {
	case "turning", "facing", "boring":
	default:
		return cutting.Feed{}
	}
	out, _ := cutting.FeedFor(process, cu.Of.Or("HSS"), k.Part.Makes(k.Step).MetalGroup(), k.Largest())
	m := k.Lathe()
	if m == nil || !m.Swing.Is() || m.Swing.V/2 > smallLathe {
		return out
	}
	small := cutting.Feed{}
	for _, s := range out.Says {
		if strings.Contains(s.By, "small bench lathe") {
			small.Says = append(small.Says, s)
		}
	}
	if len(small.Says) == 0 {
		return small // what is printed for full-size lathes is too much for a small one
	}
	small.Lo, small.Hi = math.Inf(1), math.Inf(-1)
	for _, s := range small.Says {
		small.Lo, small.Hi = math.Min(small.Lo, s.Value), math.Max(small.Hi, s.Value)
	}
	return small
}

// Oil is the cutting fluid of a step: as written, else by process and metal; "" where nobody says.
func (p *Part) Oil(st *Step, by string) (fluid string, said bool) {
	if st.Step != nil && st.Step.Oil.Is() {
		return st.Step.Oil.V, true
	}
	process := map[string]string{"sawing": "slitting_saw"}[by]
	if process == "" {
		process = by
	}
	fluid, _, _ = handbook.Oil(process, p.Makes(st).MetalGroup())
	return fluid, false
}

// Oil is the cutting fluid of the operation, and whether it is written; "" for work by hand alone.
func (k *Cut) Oil() (string, bool) {
	if k.Choice.Tool.Cutter == nil || byHandAlone(k.Choice.By) {
		return saidOil(k.Step)
	}
	return k.Part.Oil(k.Step, k.Choice.By)
}

// Oil is the cutting fluid of the operation on a lathe.
func (k *Turn) Oil() (string, bool) {
	if k.Choice.Tool.Cutter == nil || byHandAlone(k.Choice.By) {
		return saidOil(k.Step)
	}
	return k.Part.Oil(k.Step, k.Choice.By)
}

func saidOil(st *Step) (string, bool) {
	if st.Step == nil {
		return "", false
	}
	return st.Step.Oil.Get()
}

// byHandAlone says whether a process is one of the hand, on which nothing is put.
func byHandAlone(by string) bool {
	return slices.Contains([]string{"filing", "scraping", "scribing", "polishing", "lapping", "engraving", "broaching", "spotting", "centring"}, by)
}
