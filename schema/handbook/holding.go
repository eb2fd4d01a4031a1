package handbook

import (
	"strconv"
	"strings"
	"sync"
)

// FrictionRow is the friction between work and what holds it.
type FrictionRow struct {
	Pair, State string
	Mu          float64
	Axial       float64            // along the axis, where the table has both; else 0
	Times       map[string]float64 // by group of the material; others are as steel
	Source      string
}

var frictions = sync.OnceValue(func() []FrictionRow {
	var out []FrictionRow
	for _, r := range load("clamp_friction").rows {
		f := FrictionRow{Pair: r.text("pair"), State: r.text("state"), Mu: r.number("mu"), Axial: r.number("axial"), Source: r.text("source"), Times: map[string]float64{}}
		for one := range strings.SplitSeq(r.text("times"), "|") {
			if name, x, ok := strings.Cut(one, " "); ok {
				f.Times[name], _ = strconv.ParseFloat(x, 64)
			}
		}
		out = append(out, f)
	}
	return out
})

// Frictions lists the table of friction between work and what holds it.
func Frictions() []FrictionRow { return append([]FrictionRow(nil), frictions()...) }

// Of gives the friction on a material's group: the table's figure is for steel.
func (f FrictionRow) Of(group string) float64 {
	if k, ok := f.Times[group]; ok {
		return f.Mu * k
	}
	return f.Mu
}

// StrapRow is a strap clamp with its stud in the middle: torque N m, forces N.
type StrapRow struct {
	Stud                          string
	Diameter, Torque, Clamp, Pull float64
	Source                        string
}

var straps = sync.OnceValue(func() []StrapRow {
	var out []StrapRow
	for _, r := range load("strap").rows {
		out = append(out, StrapRow{r.text("stud"), r.number("diameter_mm"), r.number("torque"), r.number("clamp"), r.number("pull"), r.text("source")})
	}
	return out
})

// Straps lists the strap clamps of the table, by stud.
func Straps() []StrapRow { return append([]StrapRow(nil), straps()...) }

// HoldingRule is a rule of holding work; Low and High are 0 where it has no figure.
type HoldingRule struct {
	Rule, What string
	Low, High  float64
	Unit       string
	Source     string
}

var holdingRules = sync.OnceValue(func() []HoldingRule {
	var out []HoldingRule
	for _, r := range load("workholding").rows {
		out = append(out, HoldingRule{r.text("rule"), r.text("what"), r.number("low"), r.number("high"), r.text("unit"), r.text("source")})
	}
	return out
})

// HoldingRules lists the rules of holding work by name; "" all.
func HoldingRules(rule string) (out []HoldingRule) {
	for _, h := range holdingRules() {
		if rule == "" || h.Rule == rule {
			out = append(out, h)
		}
	}
	return out
}
