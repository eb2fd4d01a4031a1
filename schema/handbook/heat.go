package handbook

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"fettle/schema/model"
)

// Degrees is a range of temperatures, degrees Celsius, both ends in.
type Degrees struct{ Low, High float64 }

// Metal is what heat does to one material. Bands of nought are not done to it, or not known.
type Metal struct {
	Name                            string
	Harden, Temper, Anneal, Relieve Degrees
	HRC                             float64 // as quenched, about; 0: does not harden, or not known
	Suits, Cracks, Soft             []string
	Melts                           float64 // begins to melt or go soft; 0: not known
}

// Hardens says whether a quench makes the metal hard.
func (m Metal) Hardens() bool { return m.Harden.High > 0 }

// Solder is one filler.
type Solder struct {
	Name, Kind        string // kind: "soft", "silver", "aluminium"
	Solidus, Liquidus float64
}

var metals = sync.OnceValue(func() []Metal {
	var out []Metal
	for _, r := range load("heat").rows {
		band := func(what string) Degrees { return Degrees{r.number(what + "_low"), r.number(what + "_high")} }
		out = append(out, Metal{Name: r.text("name"), Harden: band("harden"), Temper: band("temper"), Anneal: band("anneal"),
			Relieve: band("relieve"), HRC: r.number("hrc"), Suits: split(r.text("suits")), Cracks: split(r.text("cracks")),
			Soft: split(r.text("soft")), Melts: r.number("melts")})
	}
	return out
})

func split(s string) []string {
	if s == "" {
		return nil
	}
	return strings.Split(s, "|")
}

// HeatOf gives what heat does to a material: its own row, else that of the general word it
// is a grade of. False where the handbook has neither.
func HeatOf(m model.Material) (Metal, bool) {
	for _, exact := range [2]bool{true, false} {
		for _, h := range metals() {
			if m.Name != "" && (h.Name == m.Name || !exact && Serves(model.Material{Name: h.Name}, m)) {
				return h, true
			}
		}
	}
	return Metal{}, false
}

// Metals lists the materials of the table of heat, in its order.
func Metals() []Metal { return slices.Clone(metals()) }

// HeatColour gives the band of a colour: "straw", "cherry red". False where it is no colour
// of the table.
func HeatColour(word string) (Degrees, bool) {
	word = strings.NewReplacer("gray", "grey", "-", " ").Replace(strings.ToLower(strings.TrimSpace(word)))
	for _, r := range load("heat_colour").rows {
		if r.text("colour") == word {
			return Degrees{r.number("low"), r.number("high")}, true
		}
	}
	return Degrees{}, false
}

// hottest bounds what is read as a temperature, degrees Celsius: above every furnace of a workshop.
const hottest = 3000

// Temperature reads what stands for a temperature: "780", "230..240", "230..240 C", a colour.
// False for anything else, and for a figure outside 0 to 3000 degrees Celsius.
func Temperature(s string) (Degrees, bool) {
	if b, ok := HeatColour(s); ok {
		return b, true
	}
	s = strings.TrimSpace(s)
	for _, unit := range []string{"deg C", "°C", "C"} {
		s = strings.TrimSpace(strings.TrimSuffix(s, unit))
	}
	lo, hi, two := strings.Cut(s, "..")
	a, err := strconv.ParseFloat(strings.TrimSpace(lo), 64)
	if err != nil || !(a > 0 && a <= hottest) {
		return Degrees{}, false
	}
	if !two {
		return Degrees{a, a}, true
	}
	b, err := strconv.ParseFloat(strings.TrimSpace(hi), 64)
	if err != nil || !(b >= a && b <= hottest) {
		return Degrees{}, false
	}
	return Degrees{a, b}, true
}

// SolderNamed gives a filler by its name or designation. False where the handbook has none
// of that name.
func SolderNamed(name string) (Solder, bool) {
	k := key(name)
	for _, r := range load("solder").rows {
		for _, w := range append([]string{r.text("name")}, split(r.text("others"))...) {
			if key(w) == k {
				return Solder{r.text("name"), r.text("kind"), r.number("solidus"), r.number("liquidus")}, true
			}
		}
	}
	return Solder{}, false
}

// SolderKind gives the band of all fillers of a kind: the least and the greatest of the
// solidus, and of the liquidus.
func SolderKind(kind string) (solidus, liquidus Degrees, ok bool) {
	for _, r := range load("solder").rows {
		if r.text("kind") != kind {
			continue
		}
		s, l := r.number("solidus"), r.number("liquidus")
		if !ok {
			solidus, liquidus, ok = Degrees{s, s}, Degrees{l, l}, true
		}
		solidus = Degrees{min(solidus.Low, s), max(solidus.High, s)}
		liquidus = Degrees{min(liquidus.Low, l), max(liquidus.High, l)}
	}
	return solidus, liquidus, ok
}

// Bond gives up to what heat a bond other than solder holds: at Low the weakest of its kind
// lets go, at High the last has. False where the words name no bond.
func Bond(words string) (name string, b Degrees, ok bool) {
	words = strings.ToLower(words)
	for _, r := range load("bond").rows {
		for _, w := range split(r.text("words")) {
			if strings.Contains(words, w) {
				return r.text("bond"), Degrees{r.number("low"), r.number("high")}, true
			}
		}
	}
	return "", Degrees{}, false
}

var soaks = sync.OnceValue(func() []row { return load("soak").rows })

// Soak gives how long work so thick, mm, is kept at heat to "harden", "temper", "anneal" or "stress relieve"
// it, minutes from and to; common practice. False for any other heat and for a thickness that is not above 0.
func Soak(does string, thick float64) (least, most float64, source string, ok bool) {
	for _, r := range soaks() {
		if r.text("does") == does && thick > 0 && thick < 1e4 {
			at := r.number("at_least")
			return max(at, r.number("least_per_mm")*thick), max(at, r.number("most_per_mm")*thick), r.text("source"), true
		}
	}
	return 0, 0, "", false
}
