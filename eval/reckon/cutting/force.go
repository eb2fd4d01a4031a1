package cutting

import (
	"fmt"
	"math"
	"slices"

	"fettle/schema/handbook"
)

// Cutting force goes as the section of the chip times a specific force kc, N/mm2, which grows
// as the chip gets thinner: kc = kc1 h^-mc (Kienzle), h the thickness of the chip in mm. kc1
// and mc are printed by groups of metals; other tables print kc against the feed. They differ by 40 %
// and more, so what comes out is a band from the least to the most of them.

// Thin is the thickness of chip, mm, below which the formula is not stretched: kc rises faster
// there, an edge begins to rub, and no table was measured. It is good from about 0.05 to 1 mm.
const Thin = 0.02

// Kienzle gives the specific force, N/mm2, at a thickness of chip, mm, as the formula has it: kc1
// h^-mc. A bare formula, whose ranges Specific asks for; of a thickness that is not above 0 it
// makes no number.
func Kienzle(kc1, mc, h float64) float64 {
	if !(h > 0) {
		return math.NaN()
	}
	return kc1 * math.Pow(h, -mc)
}

// Specific gives the specific cutting force, N/mm2, for a material's group, process "turning" or
// "milling", at a thickness of chip h and a feed f, both 1e-5 to 10 mm; an error names the one
// that is outside. Below Thin both are put at Thin, and thin says so; what the formula would make
// of h itself is in the band besides. A group or process of which no table says anything gives a
// band that is None. The sources stand in the band.
func Specific(process, group string, h, f float64) (kc Band, thin bool, err error) {
	if err := in(figure{"thickness of the chip mm", h, 1e-5, 10}, figure{"feed mm", f, 1e-5, 10}); err != nil {
		return kc, false, err
	}
	thin = h < Thin
	for _, r := range handbook.Forces() {
		if r.MC == 0 || !slices.Contains(r.Groups, group) {
			continue
		}
		name := "VDI 3323 group " + r.VDI
		if r.ISO == "plastic" {
			name = "a guess"
		}
		kc.add(name, Kienzle(r.KC1, r.MC, math.Max(h, Thin)), r.Source)
		if thin {
			kc.add(fmt.Sprintf("%s, stretched to %.3g mm", name, h), Kienzle(r.KC1, r.MC, h), r.Source)
		}
	}
	for _, r := range handbook.ForceFeeds() {
		if r.Process == process && slices.Contains(r.Groups, group) {
			kc.add(r.Metal+" by feed", byFeed(r.Feeds, r.KC, math.Max(f, Thin)), r.Source)
		}
	}
	return kc, thin, nil
}

// byFeed reads a printed row between its feeds as a straight line of logarithms, and beyond its
// ends along the last piece.
func byFeed(feeds, kc []float64, f float64) float64 {
	k := 1
	for k < len(feeds)-1 && f > feeds[k] {
		k++
	}
	slope := math.Log(kc[k]/kc[k-1]) / math.Log(feeds[k]/feeds[k-1])
	return kc[k-1] * math.Pow(f/feeds[k-1], slope)
}

// Turned is what a turning cut asks for. Bands that rest on a kc that no table has are None.
type Turned struct {
	Chip       float64 // thickness of the chip, mm
	Thin       bool    // below Thin
	KC         Band    // N/mm2
	Force      Band    // along the speed, N
	Feed, Back Band    // along the feed and out of the work, N: shares of Force, common practice
	Torque     Band    // N m
	Power      Band    // at the spindle, kW
}

// Shares of the cutting force along the feed and out of the work for a sharp tool at 60 to 95
// degrees: common practice; they grow with the nose radius and with wear.
const (
	feedLeast, feedMost = 0.3, 0.6
	backLeast, backMost = 0.2, 0.5
)

// Turn gives the forces of a turning or boring cut: depth and feed mm, approach angle of the edge
// in degrees, speed m/min, diameter mm. Fc = ap f kc, h = f sin(approach), Pc = Fc vc/60000.
// Sources: toolmakers' data; kc by the tables. Ranges: depth 1e-4 to 100, feed 1e-4 to 10,
// approach 5 to 90, speed 0 to 5000, diameter 0 to 10,000; an error names the figure outside them,
// also a chip thinner than 1e-5 mm.
func Turn(group string, depth, feed, approach, speed, diameter float64) (Turned, error) {
	if err := in(figure{"depth of cut mm", depth, 1e-4, 100}, figure{"feed mm a turn", feed, 1e-4, 10}, figure{"approach angle", approach, 5, 90}, figure{"speed m/min", speed, 0, 5000}, figure{"diameter mm", diameter, 0, 1e4}); err != nil {
		return Turned{}, err
	}
	h := feed * math.Sin(approach*math.Pi/180)
	kc, thin, err := Specific("turning", group, h, feed)
	if err != nil {
		return Turned{}, err
	}
	t := Turned{Chip: h, Thin: thin, KC: kc, Force: kc.Times(depth * feed)}
	t.Torque, t.Power = t.Force.Times(diameter/2000), kc.Times(TurnPower(depth, feed, 1, speed))
	if !kc.None() {
		t.Feed.add("least", t.Force.Lo*feedLeast, "common practice")
		t.Feed.add("most", t.Force.Hi*feedMost, "common practice")
		t.Back.add("least", t.Force.Lo*backLeast, "common practice")
		t.Back.add("most", t.Force.Hi*backMost, "common practice")
	}
	return t, nil
}

// Milled is what a milling cut asks for. TeethInCut is a mean.
type Milled struct {
	Engaged    float64 // how far round a tooth is in the work, degrees
	TeethInCut float64
	Chip, Most float64 // mean and greatest thickness of the chip, mm
	Thin       bool    // the mean is below Thin
	KC         Band    // at the mean chip, N/mm2
	Tooth      Band    // mean force of a tooth while it cuts, N
	Peak       Band    // greatest force of a tooth, N
	Force      Band    // mean force round the cutter of all teeth, N
	Torque     Band    // mean, N m
	Power      Band    // at the spindle, kW
	Removed    float64 // cm3/min
}

// Mill gives the forces of a milling cut with straight teeth at 90 degrees, the cutter entering or
// leaving along its side: diameter, width, depth and feed a tooth mm. phi = acos(1 - 2 ae/D); hm =
// 360 fz ae/(pi D phi); Ft = ap hm kc(hm); peak ap hmax kc(hmax). Sources: a toolmaker's catalogue
// for hm and power, the rest from them. Ranges: diameter 0.05 to 1000, width 1e-4 to the diameter,
// depth 1e-4 to 500, feed 1e-5 to 5, teeth 1 to 500, rev/min 0 to 1e6; an error names the figure
// outside them.
func Mill(group string, diameter, width, depth, feed float64, teeth int, revs float64) (Milled, error) {
	if err := in(figure{"diameter mm", diameter, 0.05, 1000}, figure{"width of cut mm", width, 1e-4, diameter}, figure{"depth of cut mm", depth, 1e-4, 500}, figure{"feed mm a tooth", feed, 1e-5, 5}, figure{"teeth", float64(teeth), 1, 500}, figure{"rev/min", revs, 0, 1e6}); err != nil {
		return Milled{}, err
	}
	phi := math.Acos(1 - 2*width/diameter)
	m := Milled{Engaged: phi * 180 / math.Pi, TeethInCut: float64(teeth) * phi / (2 * math.Pi), Most: feed}
	m.Chip = 2 * feed * width / (diameter * phi)
	if phi < math.Pi/2 {
		m.Most = feed * math.Sin(phi)
	}
	var err error
	if m.KC, m.Thin, err = Specific("milling", group, math.Max(m.Chip, 1e-5), feed); err != nil {
		return Milled{}, err
	}
	peak, _, err := Specific("milling", group, math.Max(m.Most, 1e-5), feed)
	if err != nil {
		return Milled{}, err
	}
	rate := feed * float64(teeth) * revs
	m.Tooth, m.Peak = m.KC.Times(depth*m.Chip), peak.Times(depth*m.Most)
	m.Force = m.Tooth.Times(m.TeethInCut)
	m.Torque, m.Power = m.Force.Times(diameter/2000), m.KC.Times(MillPower(depth, width, rate, 1))
	m.Removed = depth * width * rate / 1000
	return m, nil
}

// TurnPower gives the power at the spindle, kW: ap f vc kc/60000, depth and feed a turn mm, kc
// N/mm2, speed m/min, by the units. A bare formula, whose ranges Turn asks for.
func TurnPower(depth, feed, kc, speed float64) float64 { return depth * feed * kc * speed / 60000 }

// MillPower gives the power at the spindle, kW, at a rate in mm a minute: ap ae vf kc/60e6, depth
// and width mm, kc N/mm2, by the units. A bare formula, whose ranges Mill asks for.
func MillPower(depth, width, rate, kc float64) float64 { return depth * width * rate * kc / 60e6 }

// Motor gives what the motor must give, kW, for a power at the spindle, 0 to 10,000 kW, by the
// share that comes through, 0.05 to 1; 0.7 to 0.85 is common practice for belts and gears. An
// error names the figure outside its range.
func Motor(kW, share float64) (float64, error) {
	if err := in(figure{"power kW", kW, 0, 1e4}, figure{"share", share, 0.05, 1}); err != nil {
		return 0, err
	}
	return kW / share, nil
}

// UnitForce gives the force of a boring cut, lbf, from the unit power u in hp per cubic inch a
// minute: F = 396000 d f u, depth and feed in inches. Source: a workholding maker's guide. A bare
// formula, which refuses nothing.
func UnitForce(depth, feed, u float64) float64 { return 396000 * depth * feed * u }

// UnitDrillTorque gives the torque of a drill, lbf in: M = 49500 f d^2 u, in inches and hp per
// cubic inch a minute. Source: the same guide. A bare formula, which refuses nothing.
func UnitDrillTorque(diameter, feed, u float64) float64 {
	return 49500 * feed * diameter * diameter * u
}
