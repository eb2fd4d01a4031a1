package model

import (
	"math"
	"sort"
	"strconv"
)

// Same is how far two lengths may differ and still be the same size, in mm. It is far
// below any size of the trade and far above the error of a sum of float64 figures.
const Same = 1e-6

// Grain is how far apart two places must be to be two places, in mm. Printed figures are
// rounded to it first.
const Grain = 0.001

// Figure prints a figure as people write it: at most three decimals, no trailing noughts.
func Figure(x float64) string {
	r := math.Round(x*1000) / 1000
	if r == 0 {
		r = 0 // no minus before nought
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// Has says whether the set holds a size.
func (s Sizes) Has(size float64) bool {
	for _, m := range s.List {
		if math.Abs(m.Size-size) < Same {
			return true
		}
	}
	for _, r := range s.Series {
		if n, ok := r.turn(size); ok && math.Abs(r.From+n*r.By-size) < Same {
			return true
		}
	}
	return false
}

// turn gives the number of the step nearest to a size, held within the series.
func (r Series) turn(size float64) (float64, bool) {
	if !(r.By > 0) || r.To < r.From {
		return 0, math.Abs(size-r.From) < Same
	}
	last := math.Floor((r.To-r.From)/r.By + Same)
	n := math.Round((size - r.From) / r.By)
	return min(max(n, 0), last), true
}

// Nearest gives the member closest to a size; of two as close the smaller. False where
// the set is empty.
func (s Sizes) Nearest(size float64) (float64, bool) {
	best, found := 0.0, false
	try := func(x float64) {
		d, e := math.Abs(x-size), math.Abs(best-size)
		if !found || d < e-Same || (d < e+Same && x < best) {
			best, found = x, true
		}
	}
	for _, m := range s.List {
		try(m.Size)
	}
	for _, r := range s.Series {
		if n, ok := r.turn(size); ok {
			for d := -1.0; d <= 1; d++ {
				if m, ok := r.turn(r.From + (n+d)*r.By); ok {
					try(r.From + m*r.By)
				}
			}
		}
	}
	return best, found
}

// NotAbove gives the largest member that is not above a limit; false where there is none.
func (s Sizes) NotAbove(limit float64) (best float64, ok bool) {
	see := func(x float64) {
		if x <= limit+Same && (!ok || x > best) {
			best, ok = x, true
		}
	}
	for _, m := range s.List {
		see(m.Size)
	}
	for _, r := range s.Series {
		see(r.From)
		if r.By > 0 {
			n, _ := r.turn(limit)
			see(r.From + n*r.By)
			see(r.From + max(0, n-1)*r.By)
		}
	}
	return best, ok
}

// Within lists the members from lo to hi, both in, ascending, at most limit of them; the
// smallest are kept. It never walks a series outside that range.
func (s Sizes) Within(lo, hi float64, limit int) []float64 {
	var out []float64
	for _, m := range s.List {
		if m.Size >= lo-Same && m.Size <= hi+Same {
			out = append(out, m.Size)
		}
	}
	for _, r := range s.Series {
		if !(r.By > 0) {
			continue
		}
		n := math.Max(0, math.Ceil((lo-r.From)/r.By-Same))
		for i := 0; i < limit; i++ {
			x := r.From + (n+float64(i))*r.By
			if x > hi+Same || x > r.To+Same {
				break
			}
			out = append(out, x)
		}
	}
	sort.Float64s(out)
	var set []float64
	for _, x := range out {
		if len(set) == 0 || x-set[len(set)-1] > Same {
			set = append(set, x)
		}
	}
	if len(set) > limit {
		set = set[:limit]
	}
	return set
}

// Range gives the smallest and largest member; false where the set is empty.
func (s Sizes) Range() (lo, hi float64, ok bool) {
	see := func(x float64) {
		if !ok {
			lo, hi, ok = x, x, true
			return
		}
		lo, hi = min(lo, x), max(hi, x)
	}
	for _, m := range s.List {
		see(m.Size)
	}
	for _, r := range s.Series {
		see(r.From)
		if r.By > 0 && r.To >= r.From {
			see(r.From + math.Floor((r.To-r.From)/r.By+Same)*r.By)
		}
	}
	return lo, hi, ok
}

// Name gives the name of a member: "#7", or its size.
func (s Sizes) Name(size float64) string {
	for _, m := range s.List {
		if m.Name != "" && math.Abs(m.Size-size) < Same {
			return m.Name
		}
	}
	return Figure(size)
}

// At gives the fastest of the speeds that is not above a limit, and whether there is one.
func (s Speeds) At(limit float64) (float64, bool) {
	if s.Stepless {
		if limit < s.From-Same {
			return s.From, false
		}
		return min(limit, s.To), true
	}
	best, ok := 0.0, false
	for _, v := range s.List {
		if v <= limit+Same && v > best {
			best, ok = v, true
		}
	}
	return best, ok
}

// Slowest gives the lowest speed; false where there is none.
func (s Speeds) Slowest() (float64, bool) {
	if s.Stepless {
		return s.From, true
	}
	if len(s.List) == 0 {
		return 0, false
	}
	low := s.List[0]
	for _, v := range s.List {
		low = min(low, v)
	}
	return low, true
}

// Has says whether the spindle can run at a speed.
func (s Speeds) Has(speed float64) bool {
	if s.Stepless {
		return speed >= s.From-Same && speed <= s.To+Same
	}
	for _, v := range s.List {
		if math.Abs(v-speed) < Same {
			return true
		}
	}
	return false
}
