package reckon

import (
	"fmt"
	"math"
	"strings"

	"fettle/eval"
	"fettle/eval/reckon/taper"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// slips is a set of slip gauges.
type slips struct {
	name, from string
	unit       drawing.Unit // of its grains
	blocks     taper.Blocks
	source     string
}

// sine answers for a sine bar, and for a stack of slip gauges under it or alone.
func (q *coned) sine() error {
	height, alone := q.Length("stack")
	bar, from, ok := q.bar()
	if !alone && (!ok || !q.isCone()) {
		return nil
	}
	angle := q.angle
	if q.Text("set") == "half" {
		angle /= 2
	}
	if !alone {
		var err error
		if height, err = q.under(bar, from, angle); err != nil {
			return err
		}
	}
	set, ok, err := q.slips()
	if err != nil || !ok && !alone {
		return err
	}
	if !ok {
		return fmt.Errorf("--stack wants a set: say --slips, one of %s, or name a shop with slip_gauges", and(handbook.SlipSetNames()))
	}
	if alone {
		_, err = q.build(set, height)
		return err
	}
	grain := 0.001 // finer costs blocks, and no sine bar is so good
	if set.unit == drawing.Inch {
		grain = 0.00254
	}
	made, err := q.build(set, math.Round(height/grain)*grain)
	if err != nil {
		return err
	}
	got, err := bar.Angle(made)
	if err != nil {
		return err
	}
	q.step("The stack made gives %s degrees, %s seconds of arc off.", round(got, 5), round(math.Abs(got-angle)*3600, 2))
	q.value("angle made", got, "degrees", from)
	return nil
}

// under says what stack goes under a sine bar.
func (q *coned) under(bar taper.Bar, from string, angle float64) (float64, error) {
	height, err := bar.Stack(angle)
	if err != nil {
		return 0, err
	}
	q.say("Sine bar of %s mm at %s degrees: a stack of %s.", millimetres(bar.Centres), round(angle, 4), q.Says(height))
	q.step("Stack = %s x sin %s = %s mm.", millimetres(bar.Centres), round(angle, 5), round(height, 5))
	q.value("stack", height, "mm", from)
	if angle > 45 {
		q.say("Above 45 degrees a sine bar tells an error of the stack ever more coarsely: set the other angle, %s degrees, if the work can be turned over.", round(90-angle, 4))
	}
	off, err := bar.Off(angle, 0.001)
	if err != nil {
		return 0, err
	}
	q.step("Each 0.001 mm of the stack%s is up to %s seconds of arc.", centresToo(bar), round(off*3600, 1))
	return height, nil
}

func centresToo(b taper.Bar) string {
	if b.Error > 0 {
		return fmt.Sprintf(", with %s mm of the bar's centres,", millimetres(b.Error))
	}
	return ""
}

// bar is the sine bar: the flag's, else the shop's first where the question is not how to turn it.
func (q *coned) bar() (taper.Bar, string, bool) {
	if mm, ok := q.Length("sine"); ok {
		return taper.Bar{Centres: mm}, "--sine", true
	}
	if _, whole := q.Length("whole"); (whole || q.along > 0) && q.Text("slips")+q.Text("set") == "" {
		return taper.Bar{}, "", false
	}
	for _, i := range q.Things("sine_bar") {
		if v, ok := Member(i, "centres"); ok {
			e, _ := Member(i, "error")
			return taper.Bar{Centres: v.Num, Error: e.Num}, i.Path(), true
		}
	}
	return taper.Bar{}, "", false
}

// slips is the set of slip gauges: the flag's, else the shop's first.
func (q *coned) slips() (slips, bool, error) {
	name, from := q.Text("slips"), "--slips"
	if name == "" {
		for _, i := range q.Things("slip_gauges") {
			v, ok := Member(i, "set")
			switch {
			case ok && v.Kind == model.Set:
				return ownSlips(v.Sizes, i.Path()), true, nil
			case ok && v.Kind == model.Text:
				name, from = v.Text, i.Path()
			}
			if name != "" {
				break
			}
		}
	}
	if name == "" {
		return slips{}, false, nil
	}
	set, ok := handbook.SlipSet(name)
	if !ok {
		return slips{}, false, fmt.Errorf("%s: the tables have no set %s; they have %s", from, quoted(name), and(handbook.SlipSetNames()))
	}
	return slips{set.Name, from, set.Unit, set.Sizes, set.Source}, true, nil
}

// ownSlips is a set whose sizes the shop lists.
func ownSlips(sizes model.Sizes, from string) slips {
	return slips{name: from, from: from, source: "the sizes that the shop lists", blocks: eval.GaugeBlocks(sizes)}
}

// build says what to wring together for a height, and gives the height it comes to, mm.
func (q *coned) build(set slips, height float64) (float64, error) {
	grains := func(mm float64) int64 { return int64(math.Round(mm / set.unit.MM() * taper.Grain)) }
	wear, _ := q.Length("wear")
	s, err := set.blocks.Build(grains(height), [2]int64{grains(wear), grains(wear)})
	if err != nil {
		return 0, err
	}
	in := func(g int64) string { return round(float64(g)/taper.Grain, 5) }
	var words []string
	for _, b := range s.Blocks {
		words = append(words, in(b))
	}
	ends := ""
	if wear > 0 {
		ends = fmt.Sprintf(", and two wear blocks of %s make %s %s", in(s.Wear[0]), in(s.Height), set.unit)
	}
	off := (float64(s.Height)/taper.Grain)*set.unit.MM() - height
	near := ""
	if math.Abs(off) > 1e-7 {
		near = fmt.Sprintf(", %s mm too %s, the nearest that the set makes", round(math.Abs(off), 5), highLow(off))
		_, alone := q.Length("stack")
		q.out.No = q.out.No || alone
	}
	q.say("Slip gauges of %s: %s = %s %s (%s)%s%s.", set.name, strings.Join(words, " + "), in(s.Height-s.Wear[0]-s.Wear[1]), set.unit, counted(len(s.Blocks), "block"), ends, near)
	q.step("Fewest blocks by looking at every stack of the set; the largest blocks of those with as few.")
	q.value("blocks", float64(len(s.Blocks)), "", set.from)
	q.value("stack made", float64(s.Height)/taper.Grain*set.unit.MM(), "mm", set.from)
	q.source("set " + set.name + ": " + set.source)
	return height + off, nil
}

func highLow(off float64) string {
	if off < 0 {
		return "low"
	}
	return "high"
}

// rollers says what is measured over rollers beside a plug.
func (q *coned) rollers() error {
	roller, ok := q.Length("over")
	if !ok || !q.isCone() {
		return nil
	}
	small, ok := q.Length("small")
	if !ok {
		return fmt.Errorf("--over wants --small, the diameter of the small end")
	}
	lift, _ := q.Length("lift")
	m, err := q.t.OverRollers(small, roller, lift)
	if err != nil {
		return err
	}
	q.say("Over rollers of %s mm on %s mm beside the plug: %s.", millimetres(roller), millimetres(lift), q.Says(m))
	q.step("Over the rollers: %s + %s x %s + %s x (1 + cot((90 - %s) / 2)) = %s mm.", millimetres(small), round(q.t.Ratio(), 6), millimetres(lift), millimetres(roller), round(q.t.Half(), 4), millimetres(m))
	q.value("over rollers", m, "mm", "worked out")
	return nil
}

// dovetail says what is measured over or between rollers in a dovetail.
func (q *coned) dovetail() error {
	for _, side := range []struct {
		flag, says, sign string
		of               func(taper.Dovetail, float64, float64) (float64, error)
	}{{"male", "Over two rollers of %s mm in the corners of the male dovetail: %s.", "+", taper.Dovetail.OverMale},
		{"female", "Between two rollers of %s mm in the corners of the female dovetail: %s.", "-", taper.Dovetail.BetweenFemale}} {
		l, ok, err := q.figures(side.flag, 2)
		if err != nil || !ok {
			if err != nil {
				return err
			}
			continue
		}
		if q.angle == 0 {
			return fmt.Errorf("--%s wants TAPER, the angle between flank and flat, as in 60 deg", side.flag)
		}
		d := taper.Dovetail{Angle: q.angle}
		m, err := side.of(d, l[0], l[1])
		if err != nil {
			return err
		}
		q.say(side.says, millimetres(l[1]), q.Says(m))
		q.say("The rollers touch the flanks %s from the sharp corner: they must touch above any relief and below the edge.", q.Says(d.Touches(l[1])))
		q.step("%s %s %s x (1 + cot(%s / 2)) = %s mm.", millimetres(l[0]), side.sign, millimetres(l[1]), round(q.angle, 4), millimetres(m))
		q.value(side.flag+" dovetail", m, "mm", "worked out")
		q.source("Machinery's Handbook, measuring dovetail slides; the width is the sharp one where the rollers lie")
	}
	return nil
}

// vee says how high rollers stand in a vee.
func (q *coned) vee() error {
	rollers, ok := q.Lengths("vee")
	if !ok {
		return nil
	}
	if q.angle == 0 {
		return fmt.Errorf("--vee wants TAPER, the angle of the vee, as in 90 deg")
	}
	t := Table{Title: fmt.Sprintf("Rollers in a vee of %s degrees", round(q.angle, 4)), Head: []Column{right("roller mm"), right("top above the bottom mm"), right("in")}}
	for _, r := range rollers {
		top, err := taper.Vee{Angle: q.angle}.Top(r)
		if err != nil {
			return err
		}
		t.Rows = append(t.Rows, []string{millimetres(r), millimetres(top), inches(top)})
		q.value(fmt.Sprintf("top of %s", millimetres(r)), top, "mm", "worked out")
	}
	q.say("A roller of %s mm stands %s mm above the sharp bottom of the vee.", t.Rows[0][0], t.Rows[0][1])
	q.step("Top = r x (1 + 1 / sin %s), r half the roller.", round(q.angle/2, 4))
	q.out.Tables = append(q.out.Tables, t)
	return nil
}
