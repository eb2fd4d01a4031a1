package handbook

import (
	"strings"
	"sync"
)

// Deviations are the tables of ISO 286-1: standard tolerances, fundamental deviations and
// delta, in micrometres, for nominal sizes up to 500 mm.
type Deviations struct {
	grades, deltas []gradeStep
	letters        map[string][]letterStep // "g" shafts, "G" holes
}

type gradeStep struct {
	over, to float64 // mm
	grade    int
	um       float64
}

type letterStep struct {
	over, to float64 // mm
	from, up int     // grades that the row holds for, both in
	upper    bool    // the deviation given is the upper one, es or ES
	um       float64
	delta    bool // delta of the grade is added
}

// Grade01 is how the grade IT01 is counted here, below IT0.
const Grade01 = -1

var deviations = sync.OnceValue(func() *Deviations {
	d := &Deviations{letters: map[string][]letterStep{}}
	d.grades, d.deltas = gradeSteps("iso286_grade"), gradeSteps("iso286_delta")
	for _, name := range []string{"iso286_shaft", "iso286_hole"} {
		for _, r := range load(name).rows {
			l := r.text("letter")
			d.letters[l] = append(d.letters[l], letterStep{
				over: r.number("over_mm"), to: r.number("to_mm"),
				from: gradeNumber(r.text("grade_from")), up: gradeNumber(r.text("grade_to")),
				upper: strings.EqualFold(r.text("limit"), "es"),
				um:    r.number("um"),
				delta: name == "iso286_hole" && r.text("delta") == "yes",
			})
		}
	}
	return d
})

func gradeSteps(name string) []gradeStep {
	var out []gradeStep
	for _, r := range load(name).rows {
		out = append(out, gradeStep{r.number("over_mm"), r.number("to_mm"), gradeNumber(r.text("grade")), r.number("um")})
	}
	return out
}

// gradeNumber counts IT01 as Grade01.
func gradeNumber(s string) int {
	if s == "01" {
		return Grade01
	}
	n := 0
	for _, c := range s {
		n = n*10 + int(c-'0')
	}
	return n
}

// ISO286 gives the tables of limits and fits.
func ISO286() *Deviations { return deviations() }

func step(steps []gradeStep, nominal float64, grade int) (float64, bool) {
	for _, s := range steps {
		if s.grade == grade && nominal > s.over+hair && nominal <= s.to+hair {
			return s.um, true
		}
	}
	return 0, false
}

// Grade gives the standard tolerance of a grade, micrometres. False for sizes over 500 mm,
// not above 0, or a grade that does not exist. Grades 14 and coarser are not for sizes up
// to 1 mm (ISO 286-1, table 1, from memory).
func (d *Deviations) Grade(nominal float64, grade int) (um float64, ok bool) {
	if nominal <= 1+hair && grade >= 14 {
		return 0, false
	}
	return step(d.grades, nominal, grade)
}

// Delta gives what is added to the upper deviation of holes K, M, N to grade 8 and P to ZC
// to grade 7; none up to 3 mm.
func (d *Deviations) Delta(nominal float64, grade int) (um float64, ok bool) {
	return step(d.deltas, nominal, grade)
}

// Fundamental gives the deviation that a letter fixes, delta included, and whether it is
// the upper one. Capitals are holes. js and JS have none: half the tolerance lies on each
// side. False where the standard has no such letter, size and grade; a and b, A and B are
// not for sizes up to 1 mm (ISO 286-1, from memory).
func (d *Deviations) Fundamental(letter string, nominal float64, grade int) (um float64, upper, ok bool) {
	if nominal <= 1+hair && (letter == "a" || letter == "b" || letter == "A" || letter == "B") {
		return 0, false, false
	}
	for _, s := range d.letters[letter] {
		if grade < s.from || grade > s.up || nominal <= s.over+hair || nominal > s.to+hair {
			continue
		}
		um = s.um
		if s.delta {
			extra, ok := d.Delta(nominal, grade)
			if !ok {
				return 0, false, false
			}
			um += extra
		}
		return um, s.upper, true
	}
	return 0, false, false
}

type generalRow struct {
	what     string
	over, to float64
	half     [4]float64 // f, m, c, v; 0: none given
}

var generals = sync.OnceValue(func() []generalRow {
	var out []generalRow
	for _, r := range load("general").rows {
		out = append(out, generalRow{r.text("what"), r.number("over_mm"), r.number("to_mm"),
			[4]float64{r.number("f"), r.number("m"), r.number("c"), r.number("v")}})
	}
	return out
})

func general(what, letter string, size float64) (float64, bool) {
	n := strings.Index("fmcv", letter)
	if n < 0 || len(letter) != 1 {
		return 0, false
	}
	for _, g := range generals() {
		least := size > g.over+hair || g.over == 0.5 && size >= 0.5-hair
		if g.what == what && least && size <= g.to+hair {
			return g.half[n], g.half[n] > 0
		}
	}
	return 0, false
}

// General gives the general tolerance of ISO 2768-1 table 1, class f, m, c or v: the size
// may be off by so many mm either way. False below 0.5 mm, where the standard wants it
// beside the size, and above 4000.
func General(letter string, size float64) (half float64, ok bool) {
	return general("linear", letter, size)
}

// GeneralEdge is table 2, for radii and the heights of chamfers.
func GeneralEdge(letter string, size float64) (half float64, ok bool) {
	return general("edge", letter, size)
}

// GeneralAngle is table 3, in degrees, by the length of the shorter side in mm.
func GeneralAngle(letter string, side float64) (half float64, ok bool) {
	minutes, ok := general("angle", letter, side)
	return minutes / 60, ok
}
