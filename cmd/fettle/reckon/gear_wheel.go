package reckon

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"fettle/eval/reckon/cutting"
	"fettle/eval/reckon/gear"
)

// toothed is one wheel of the question with its figures.
type toothed struct {
	name string // "wheel", "first wheel", "second wheel"
	gear.Wheel
	blank gear.Blank
	span  gear.Span
	pins  gear.Pins
	chord gear.Chord
	short float64 // mm taken off the tip's radius to keep the clearance of a pair
}

// wheels answers for one spur or helical wheel, or for a pair of them.
func (g *geared) wheels() error {
	if err := g.only("spur and helical wheels", "module", "dp", "pressure", "helix", "shift", "mate-shift", "depth", "internal", "centre",
		"backlash", "slack", "span", "pin", "over-span", "over-pins", "cutter"); err != nil {
		return err
	}
	if len(g.teeth) < 1 || len(g.teeth) > 2 {
		return fmt.Errorf("TEETH wants the count of one wheel or of two, as in 30 or 20,60; %d were given", len(g.teeth))
	}
	if err := cmpErr(g.fitting(), g.pitch()); err != nil {
		return err
	}
	var all []toothed
	for i := range g.teeth {
		w, err := g.wheel(i)
		if err != nil {
			return err
		}
		all = append(all, w)
	}
	if len(all) == 2 {
		if err := g.mesh(all); err != nil {
			return err
		}
	}
	for _, w := range all {
		if err := g.tell(w); err != nil {
			return err
		}
	}
	g.sizes(all)
	if err := g.measured(all); err != nil {
		return err
	}
	g.source("sizes: ISO 21771 and any gear text; span and pins: the gear handbooks' formulas, and pins of Machinery's Handbook (from memory)")
	g.out.Caution = gearCaution
	return nil
}

// fitting refuses flags that go with a pair, or with one wheel, where the other is asked.
func (g *geared) fitting() error {
	one := len(g.teeth) == 1
	for _, f := range []string{"centre", "mate-shift"} {
		if one && g.given(f) {
			return fmt.Errorf("--%s is of a pair: give both counts of teeth", f)
		}
	}
	for _, f := range []string{"over-span", "over-pins", "span", "pin"} {
		if !one && g.given(f) {
			return fmt.Errorf("--%s is of one wheel: give its teeth alone", f)
		}
	}
	return nil
}

// wheel works one wheel out.
func (g *geared) wheel(i int) (toothed, error) {
	w := toothed{name: "wheel", Wheel: gear.Wheel{Teeth: g.teeth[i], Module: g.m, Pressure: g.angle, Depth: g.depth}}
	w.Helix, _ = g.Angle("helix")
	w.Shift, _ = g.Number([]string{"shift", "mate-shift"}[i])
	w.Internal = g.Yes("internal") && i == len(g.teeth)-1
	w.Thinning, _ = g.Length("backlash")
	if len(g.teeth) == 2 {
		w.name = []string{"first wheel", "second wheel"}[i]
		w.Thinning /= 2
	}
	return w, g.figures(&w)
}

// figures works out everything of a wheel from its order.
func (g *geared) figures(w *toothed) (err error) {
	if w.blank, err = w.Blank(); err != nil {
		return err
	}
	if err = g.pinned(w); err != nil || w.Internal {
		return err
	}
	if w.chord, err = w.Chord(); err != nil {
		return err
	}
	k, given := g.Whole("span")
	if !given {
		if k, err = w.SpanTeeth(); err != nil {
			return err
		}
	}
	w.span, err = w.Wheel.Span(k)
	return err
}

// shorten takes the tips down. Undercut stays that of the cutter, which knows nothing of it.
func (g *geared) shorten(w *toothed, mm float64) error {
	was := w.blank
	w.short = mm
	w.Depth.Addendum -= mm / w.Module
	w.Depth.Whole -= mm / w.Module
	err := g.figures(w)
	w.blank.LeastTeeth, w.blank.LeastShift, w.blank.Undercut = was.LeastTeeth, was.LeastShift, was.Undercut
	return err
}

// pinned picks the pin: the one asked for, else the first of the trade's list that rests on the
// flanks and stands out of the tips, else the one that touches in the middle of the depth.
func (g *geared) pinned(w *toothed) (err error) {
	if pin, ok := g.Length("pin"); ok {
		w.pins, err = w.OverPins(pin)
		return err
	}
	for _, p := range gear.StandardPins(w.Internal) {
		if w.pins, err = w.OverPins(p * w.Module); err == nil && w.pins.On && w.pins.Proud > 0 {
			return nil
		}
	}
	w.pins = gear.Pins{}
	best, err := w.BestPin()
	if err != nil {
		return nil // no pin serves: the table leaves it out
	}
	if pins, err := w.OverPins(best); err == nil && pins.On {
		w.pins = pins
	}
	return nil
}

// tell says what to turn, how deep to cut, and with what.
func (g *geared) tell(w toothed) error {
	b, name := w.blank, capital(w.name)
	what := "Turn the blank to"
	if w.Internal {
		what = "Bore it to"
	}
	head := ""
	if w.name != "wheel" {
		head = fmt.Sprintf("%s, %d teeth: ", name, w.Teeth)
		what = strings.ToLower(what[:1]) + what[1:]
	}
	g.say("%s%s %s and cut %s deep.", head, what, g.Says(b.Tip), g.Says(b.Whole+b.Deeper))
	g.sums(w)
	if w.Internal {
		g.say("Teeth inside are shaped or slotted: a disc cutter seldom gets in.")
		return nil
	}
	if w.Helix > 0 {
		g.say("Gear the table to the head for a lead of %s, and swing it by %s degrees.", g.Says(b.Lead), round(w.Helix, 4))
		g.step("%s: lead = pi x %s / tan %s = %s mm; virtual teeth = z / cos^3(helix) = %s.", name, millimetres(b.Reference), round(w.Helix, 4), millimetres(b.Lead), round(b.Virtual, 3))
	}
	if b.Undercut {
		g.say("A rack-shaped cutter or hob would undercut it: from %d teeth on it does not, nor with a shift of %s modules. A form cutter gives such wheels the relief of its own range.",
			int(math.Ceil(b.LeastTeeth-1e-9)), round(b.LeastShift, 3))
	}
	if b.TipLand < 0.2*w.Module {
		g.say("Its teeth are %s thick at the tip: they come to a point.", g.Says(max(0, b.TipLand)))
	}
	g.cutters(name, gear.Whole(b.Virtual))
	return g.runOut(w)
}

// runOut tells how far a disc cutter goes on beyond the teeth.
func (g *geared) runOut(w toothed) error {
	d, ok := g.Length("cutter")
	if !ok {
		d = g.disc
	}
	if d == 0 {
		return nil
	}
	deep := w.blank.Whole + w.blank.Deeper
	if deep >= d/2 {
		return fmt.Errorf("a cutter of %s mm is too small to cut %s mm deep", millimetres(d), millimetres(deep))
	}
	out := cutting.RunOut(d, deep)
	g.say("The cutter runs out %s beyond the teeth: leave that free of hub, shoulder and chuck.", g.Says(out))
	g.step("Run-out = sqrt(h x (D - h)) = sqrt(%s x %s) = %s mm.", millimetres(deep), millimetres(d-deep), millimetres(out))
	g.value(w.name+" run-out", out, "mm", "worked out")
	return nil
}

// sums puts the figures in place.
func (g *geared) sums(w toothed) {
	b, name, out := w.blank, capital(w.name), "+"
	if w.Internal {
		out = "-"
	}
	over, angle := "", ""
	if w.Helix > 0 {
		over, angle = " / cos(helix)", " / cos "+round(w.Helix, 4)
	}
	g.step("%s: pitch diameter = m z%s = %s x %d%s = %s mm; tip = %s %s 2 x %s = %s mm.", name, over, round(w.Module, 6), w.Teeth, angle,
		millimetres(b.Reference), millimetres(b.Reference), out, millimetres(b.Addendum), millimetres(b.Tip))
	depth := fmt.Sprintf("%s m", round(g.depth.Whole, 4))
	if g.depth.Extra > 0 {
		depth += fmt.Sprintf(" + %s mm", millimetres(g.depth.Extra))
	}
	if w.short > 0 {
		depth += fmt.Sprintf(" - %s mm", millimetres(w.short))
	}
	g.step("%s: whole depth = %s = %s mm (the system %s).", name, depth, millimetres(b.Whole), g.depth.Name)
	if w.Thinning > 0 {
		g.step("%s: to thin the tooth by %s mm a form cutter goes %s / (2 tan %s) = %s mm deeper.", name, millimetres(w.Thinning),
			millimetres(w.Thinning), round(w.Pressure, 4), millimetres(b.Deeper))
	}
}

// sizes is the table of lengths, and the same by name.
func (g *geared) sizes(all []toothed) {
	t := Table{Head: []Column{left("")}}
	for _, w := range all {
		unit := ""
		if len(all) == 2 {
			unit = fmt.Sprintf("%d teeth ", w.Teeth)
		}
		t.Head = append(t.Head, right(unit+"mm"), right("in"))
	}
	row := func(label string, of func(toothed) (name string, mm float64)) {
		cells, any := []string{label}, false
		for _, w := range all {
			name, mm := of(w)
			if name == "" {
				cells = append(cells, "", "")
				continue
			}
			any = true
			cells = append(cells, millimetres(mm), inches(mm))
			g.value(w.name+" "+name, mm, "mm", "worked out")
		}
		if any {
			t.Rows = append(t.Rows, cells)
		}
	}
	plainly := func(label string, of func(toothed) float64) {
		row(label, func(w toothed) (string, float64) { return label, of(w) })
	}
	outside := func(label string, of func(toothed) float64) {
		row(label, func(w toothed) (string, float64) {
			if w.Internal {
				return "", 0
			}
			return strings.Trim(label, "."), of(w)
		})
	}
	plainly("pitch diameter", func(w toothed) float64 { return w.blank.Reference })
	plainly("tip diameter", func(w toothed) float64 { return w.blank.Tip })
	plainly("root diameter", func(w toothed) float64 { return w.blank.Root })
	plainly("base diameter", func(w toothed) float64 { return w.blank.Base })
	plainly("whole depth", func(w toothed) float64 { return w.blank.Whole })
	plainly("tooth on the pitch circle", func(w toothed) float64 { return w.blank.Thickness })
	outside("chordal thickness", func(w toothed) float64 { return w.chord.Thickness })
	outside("chordal height", func(w toothed) float64 { return w.chord.Height })
	row(g.spanLabel(all), func(w toothed) (string, float64) {
		if w.Internal || !w.span.On {
			return "", 0
		}
		return "span", w.span.Measure
	})
	row(pinLabel(all), func(w toothed) (string, float64) {
		if w.pins.Pin == 0 {
			return "", 0
		}
		return "pins", w.pins.Measure
	})
	g.out.Tables = append(g.out.Tables, t)
	g.limits(all)
}

func (g *geared) spanLabel(all []toothed) string {
	var counts []string
	for _, w := range all {
		if !w.Internal {
			counts = append(counts, fmt.Sprint(w.span.Teeth))
		}
	}
	return "span over " + strings.Join(counts, " and ")
}

// pinLabel names the pins, as exactly as a pin can be bought and measured.
func pinLabel(all []toothed) string {
	var pins []string
	for _, w := range all {
		if w.pins.Pin > 0 && !(len(pins) == 1 && pins[0] == round(w.pins.Pin, 4)) {
			pins = append(pins, round(w.pins.Pin, 4))
		}
	}
	way := "over pins of "
	if all[len(all)-1].Internal {
		way = "pins of "
	}
	return way + strings.Join(pins, " and ")
}

// limits adds the ends of span and pins where the teeth may be thinner still.
func (g *geared) limits(all []toothed) {
	slack, ok := g.Length("slack")
	for _, w := range all {
		if !w.Internal && !w.span.On {
			g.say("%s: over %d teeth the anvils do not touch on the flanks inside the tip; that span is left out.", capital(w.name), w.span.Teeth)
		}
		if w.span.Face > 0 {
			g.say("%s: the span wants a face more than %s wide.", capital(w.name), g.Says(w.span.Face))
		}
		if w.pins.Pin > 0 && !w.pins.On {
			g.say("%s: pins of %s do not rest on the flanks between root and tip.", capital(w.name), g.Says(w.pins.Pin))
		} else if w.pins.Pin > 0 && w.pins.Proud <= 0 {
			g.say("%s: pins of %s do not stand out of the tips.", capital(w.name), g.Says(w.pins.Pin))
		}
		if !ok {
			continue
		}
		if small, large, err := w.PinLimits(w.pins.Pin, w.Thinning, w.Thinning+slack); err == nil {
			g.say("%s: over pins %s, for teeth up to %s thinner.", capital(w.name), g.Span(small, large), g.Says(slack))
			g.value(w.name+" pins least", small, "mm", "worked out")
			g.value(w.name+" pins most", large, "mm", "worked out")
		}
		if !w.Internal && w.span.On {
			less := slack * math.Cos(w.Pressure*math.Pi/180)
			g.say("%s: span %s, likewise.", capital(w.name), g.Span(w.span.Measure-less, w.span.Measure))
			g.value(w.name+" span least", w.span.Measure-less, "mm", "worked out")
		}
	}
}

// measured tells how much is yet to cut.
func (g *geared) measured(all []toothed) error {
	w := all[0]
	for _, flag := range []string{"over-span", "over-pins"} {
		size, ok := g.Length(flag)
		if !ok {
			continue
		}
		var thin float64
		var err error
		if flag == "over-span" {
			thin, err = w.ThinningBySpan(w.span.Teeth, size)
		} else if w.pins.Pin == 0 {
			err = errors.New("no pin rests between these teeth: say --pin")
		} else {
			thin, err = w.ThinningByPins(w.pins.Pin, size)
		}
		if err != nil {
			return err
		}
		more := w.Thinning - thin
		deeper := more / (2 * math.Tan(w.Pressure*math.Pi/180))
		word := "too thick: feed a form cutter %s deeper"
		if more < 0 {
			word = "too thin: it went %s too deep"
		}
		g.say("By --%s the tooth is %s "+word+".", flag, g.Says(math.Abs(more)), g.Says(math.Abs(deeper)))
		g.step("%s mm of tooth is %s / (2 tan %s) = %s mm of depth.", millimetres(math.Abs(more)), millimetres(math.Abs(more)), round(w.Pressure, 4), millimetres(math.Abs(deeper)))
		g.value("deeper by "+flag, deeper, "mm", "--"+flag)
	}
	return nil
}
