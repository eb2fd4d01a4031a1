package handbook

import (
	"math"
	"strconv"
	"strings"
	"sync"
)

// Band is a figure of which only the bounds are known, both in. The zero Band is not known.
type Band struct{ Lo, Hi float64 }

// One is a figure that is known.
func One(x float64) Band { return Band{x, x} }

// Known says whether there is a figure.
func (b Band) Known() bool { return b != Band{} }

// Times is the band of a figure multiplied; k may be below nought.
func (b Band) Times(k float64) Band {
	if k < 0 {
		return Band{b.Hi * k, b.Lo * k}
	}
	return Band{b.Lo * k, b.Hi * k}
}

// Elastic is how a metal or plastic gives way to force and warmth. Bands are the spread of
// published figures over bars of one name; a bar in the hand has one figure of it.
type Elastic struct {
	Name      string
	Family    string // metals alike in a press fit: "steel", "copper alloy"; "" not known
	Young     Band   // MPa
	Poisson   Band
	Yield     Band    // proof stress, MPa; not known where temper or grade decides, and where Breaks is
	Breaks    Band    // tensile strength of what breaks without yielding, MPa
	Expansion Band    // 1/K near 20 degrees
	Density   float64 // kg/m3
	Source    string
}

// ElasticOf gives the figures of a material by any name or designation of the handbook.
// False where it has no such material; single bands may be not known all the same.
func ElasticOf(name string) (Elastic, bool) {
	m, ok := Material(name)
	if !ok {
		return Elastic{}, false
	}
	for _, e := range elastics() {
		if e.Name == m.Name {
			return e, true
		}
	}
	return Elastic{}, false
}

var elastics = sync.OnceValue(func() []Elastic {
	var out []Elastic
	for _, r := range load("material").rows {
		out = append(out, Elastic{
			Name: r.text("name"), Family: r.text("family"), Density: r.number("density"),
			Young: r.band("young").Times(1000), Poisson: r.band("poisson"), Yield: r.band("yield"),
			Breaks: r.band("breaks"), Expansion: r.band("expansion").Times(1e-6), Source: r.text("elastic_source"),
		})
	}
	return out
})

// band reads "low high" or one figure; an empty cell is not known.
func (r row) band(column string) Band {
	f := strings.Fields(r.text(column))
	if len(f) == 0 {
		return Band{}
	}
	lo, err := strconv.ParseFloat(f[0], 64)
	hi, err2 := strconv.ParseFloat(f[len(f)-1], 64)
	if err != nil || err2 != nil || len(f) > 2 || !(lo > 0 && lo <= hi) || math.IsInf(hi, 0) {
		panic("handbook table " + r.of.name + ": no band in column " + column)
	}
	return Band{lo, hi}
}

// ToolMetal gives the stiffness of what a boring bar or cutter is made of: "HSS", "steel",
// "carbide", "heavy metal".
func ToolMetal(name string) (Elastic, bool) {
	for _, e := range toolMetals() {
		if key(e.Name) == key(name) {
			return e, true
		}
	}
	return Elastic{}, false
}

// ToolMetalNames lists them in the order of the table.
func ToolMetalNames() []string {
	var out []string
	for _, e := range toolMetals() {
		out = append(out, e.Name)
	}
	return out
}

var toolMetals = sync.OnceValue(func() []Elastic {
	var out []Elastic
	for _, r := range load("tool_metal").rows {
		out = append(out, Elastic{Name: r.text("name"), Young: r.band("young").Times(1000), Poisson: r.band("poisson"),
			Density: r.number("density"), Source: r.text("source")})
	}
	return out
})

// PressFriction gives the friction in a press fit of two families of metal, either way
// round, joined "dry", "oiled" or "shrunk". False where the table has none.
func PressFriction(one, other, joined string) (mu Band, source string, ok bool) {
	for _, r := range pressFrictions() {
		a, b := r.text("one"), r.text("other")
		if r.text("joined") == joined && (a == one && b == other || a == other && b == one) {
			return Band{r.number("low"), r.number("high")}, r.text("source"), true
		}
	}
	return Band{}, "", false
}

var pressFrictions = sync.OnceValue(func() []row { return load("press_friction").rows })

// SlenderRow is how far a thing may reach, as a ratio of its thickness.
type SlenderRow struct {
	What   string // "steel boring bar"
	Length string // what is measured: "out of its holder"
	By     string // what it is divided by: "diameter"
	Limit  float64
	Most   float64 // beyond it nobody goes; 0 where only the limit is known
	Source string
}

// Slender gives the usual limit of a kind of overhang. False where the table has none.
func Slender(what string) (SlenderRow, bool) {
	for _, r := range slenders() {
		if r.text("what") == what {
			return SlenderRow{what, r.text("length"), r.text("by"), r.number("limit"), r.number("most"), r.text("source")}, true
		}
	}
	return SlenderRow{}, false
}

var slenders = sync.OnceValue(func() []row { return load("slender").rows })
