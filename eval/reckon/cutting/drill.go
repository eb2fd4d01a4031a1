package cutting

import (
	"fmt"
	"math"

	"fettle/schema/handbook"
)

// Drilled is what a drill asks for, by up to three formulas that differ by half and more.
type Drilled struct {
	Chip   float64 // thickness of the chip at each lip, mm
	Thin   bool
	Torque Band // N m
	Thrust Band // N; a drill of high speed steel with its chisel edge ground thick may push with twice as much
	Power  Band // kW
}

// Drill gives torque and thrust of a twist drill: diameter and feed a turn mm, point angle
// degrees, web over diameter (0.18 usual, 0.03 to 0.1 a thinned or split point), speed rev/min.
//
// Ranges: diameter 0.1 to 100, feed 1e-4 to 3, point 60 to 180, web 0.03 to 0.4, speed 0 to 1e6; an
// error names the figure outside them. A group of which no table says anything gives bands that are
// None. The sources stand in the bands.
func Drill(group string, diameter, feed, point, web, revs float64) (Drilled, error) {
	if err := in(figure{"diameter mm", diameter, 0.1, 100}, figure{"feed mm a turn", feed, 1e-4, 3}, figure{"point angle", point, 60, 180}, figure{"web over diameter", web, 0.03, 0.4}, figure{"rev/min", revs, 0, 1e6}); err != nil {
		return Drilled{}, err
	}
	d := Drilled{Chip: feed / 2 * math.Sin(point/2*math.Pi/180)}
	kc, thin, err := Specific("turning", group, d.Chip, feed)
	if err != nil {
		return Drilled{}, err
	}
	d.Thin = thin
	for _, s := range kc.Says {
		torque, thrust := DrillByForce(diameter, feed, s.Value)
		d.Torque.add("specific force, "+s.By, torque, s.Source)
		d.Thrust.add("specific force, "+s.By, thrust, s.Source)
	}
	for _, w := range handbook.WorkFactors("drill K", group) {
		torque, thrust := DrillByFactor(diameter, feed, w.Value)
		d.Torque.add("drill formula, "+w.Metal, torque, w.Source)
		d.Thrust.add("drill formula, "+w.Metal, thrust, w.Source)
	}
	for _, w := range handbook.WorkFactors("drill Kd", group) {
		torque, thrust := DrillByHandbook(diameter, feed, web, w.Value, drillWear)
		d.Torque.add("handbook factors, "+w.Metal, torque, w.Source)
		d.Thrust.add("handbook factors, "+w.Metal, thrust, w.Source)
	}
	d.Power = d.Torque.Times(revs / 9549.3)
	return d, nil
}

// drillWear is the handbook's factor for a drill that is no longer new (from memory).
const drillWear = 1.3

// DrillByForce gives torque N m and thrust N from a specific force, N/mm2: M = D^2 f kc/8000,
// about 0.7 (D/2) f kc; diameter and feed a turn mm. Source: a one-page sheet of drilling
// formulas; it calls the thrust approximate. A bare formula, whose ranges Drill asks for.
func DrillByForce(diameter, feed, kc float64) (torque, thrust float64) {
	return diameter * diameter * feed * kc / 8000, 0.7 * diameter / 2 * feed * kc
}

// DrillByFactor gives torque N m and thrust N by a metal's factor K: M = K D^2 (0.630 + 16.84
// f)/100, T = 570 K D f^0.85; diameter and feed a turn mm. Source: a toolmaker's catalogue 2020-21
// p1656. A bare formula, whose ranges Drill asks for: of a feed below 0 it makes no number.
func DrillByFactor(diameter, feed, k float64) (torque, thrust float64) {
	return k * diameter * diameter * (0.630 + 16.84*feed) / 100, 570 * k * diameter * math.Pow(feed, 0.85)
}

// DrillByHandbook gives torque N m and thrust N by handbook factors: T = 0.05 Kd Ff FT B W + 0.007
// Kd D^2 J W, M = 0.000025 Kd Ff FM A W; diameter and feed a turn mm. Ff = f^0.8, FT = D^0.8 and
// FM = D^1.8 stand for the printed tables, which they meet within 0.6 % but for one misprint; A, B
// and J are read from the table by web over diameter. Source: Machinery's Handbook 31, pp.
// 1152-1153. A bare formula, whose ranges Drill asks for: of a diameter or feed below 0 it makes
// no number.
func DrillByHandbook(diameter, feed, web, kd, wear float64) (torque, thrust float64) {
	a, b, j := factor("A", web), factor("B", web), factor("J", web)
	ff := math.Pow(feed, 0.8)
	thrust = 0.05*kd*ff*math.Pow(diameter, 0.8)*b*wear + 0.007*kd*diameter*diameter*j*wear
	return 0.000025 * kd * ff * math.Pow(diameter, 1.8) * a * wear, thrust
}

// DrillByHandbookInch is the same in inches, diameter and feed in: torque lbf in, thrust lbf, T =
// 2 Kd Ff FT B W + Kd d^2 J W, M = Kd Ff FM A W. Of a diameter or feed below 0 it makes no number.
func DrillByHandbookInch(diameter, feed, web, kd, wear float64) (torque, thrust float64) {
	a, b, j := factor("A", web), factor("B", web), factor("J", web)
	ff := math.Pow(feed, 0.8)
	thrust = 2*kd*ff*math.Pow(diameter, 0.8)*b*wear + kd*diameter*diameter*j*wear
	return kd * ff * math.Pow(diameter, 1.8) * a * wear, thrust
}

// factor reads a printed factor, straight between two rows, the end rows beyond them.
func factor(symbol string, at float64) float64 {
	rows := handbook.DrillFactors(symbol)
	if math.IsNaN(at) {
		return at
	}
	for n, r := range rows {
		switch {
		case at > r.At:
			continue
		case n == 0:
			return r.Value
		}
		b := rows[n-1]
		return b.Value + (r.Value-b.Value)*(at-b.At)/(r.At-b.At)
	}
	if len(rows) == 0 {
		return 0
	}
	return rows[len(rows)-1].Value
}

// Tapped is what a tap asks for, N m. Worn is twice the most: a worn tap or a bottoming one.
type Tapped struct {
	Torque Band
	Worn   float64
}

// Tap gives the torque of a cutting tap: diameter 0.5 to 100, pitch 0.05 to half of that, hole 0.1
// to the diameter, all mm; coarse says that the pitch is the coarse one of the size. An error
// names the figure outside its range. A group of which no table says anything gives a band that is
// None and a Worn of 0. The sources stand in the band.
func Tap(group string, diameter, pitch, hole float64, coarse bool) (Tapped, error) {
	if err := in(figure{"diameter mm", diameter, 0.5, 100}, figure{"pitch mm", pitch, 0.05, diameter / 2}, figure{"hole mm", hole, 0.1, diameter}); err != nil {
		return Tapped{}, err
	}
	var t Tapped
	for _, w := range handbook.WorkFactors("tap by pitch", group) {
		t.Torque.add("by the pitch, "+w.Metal, TapByPitch(diameter, pitch, w.Value), w.Source)
	}
	for _, w := range handbook.WorkFactors("tap by thread", group) {
		for _, f := range handbook.TapFactors(group, coarse) {
			t.Torque.add(fmt.Sprintf("by the thread, %s, %s", w.Metal, f.Tap), TapByThread(diameter, hole, w.Value, f.Least), w.Source)
		}
	}
	t.Worn = 2 * t.Torque.Hi
	return t, nil
}

// TapByPitch is M = kc P^2 D/8000 N m, pitch and diameter mm, kc N/mm2. Source: a tap maker's
// calculation page. A bare formula, whose ranges Tap asks for.
func TapByPitch(diameter, pitch, kc float64) float64 { return kc * pitch * pitch * diameter / 8000 }

// TapByThread is M = tan 30 kc K (D - Do)^2 (D + 2 Do)/24000 N m, diameter and hole Do mm, kc
// N/mm2. Source: another tap maker's catalogues; sharp tap, oil. A bare formula, whose ranges Tap
// asks for.
func TapByThread(diameter, hole, kc, k float64) float64 {
	t := diameter - hole
	return math.Tan(math.Pi/6) * kc * k * t * t * (diameter + 2*hole) / 24000
}
