package cutting

import (
	"fmt"
	"math"
)

// Said is what one table or formula makes of a figure, in the unit of the band it stands in, and
// the source as the table has it.
type Said struct {
	By     string
	Value  float64
	Source string
}

// Band is a figure on which tables disagree: the least and the most that they make of it, and each
// by itself, all in one unit, which the function that gives the band says. None means that no
// table has an answer.
type Band struct {
	Lo, Hi float64
	Says   []Said
}

// None says that no table has an answer; Lo and Hi are then 0 and mean nothing.
func (b Band) None() bool { return len(b.Says) == 0 }

func (b *Band) add(by string, x float64, source string) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return
	}
	if b.None() {
		b.Lo, b.Hi = x, x
	}
	b.Lo, b.Hi = math.Min(b.Lo, x), math.Max(b.Hi, x)
	b.Says = append(b.Says, Said{by, x, source})
}

// Times multiplies a band and each of its figures by k. What would be no number or infinite is
// left out, so that the band may come to be None.
func (b Band) Times(k float64) Band {
	out := Band{}
	for _, s := range b.Says {
		out.add(s.By, s.Value*k, s.Source)
	}
	return out
}

// figure is one that was given, with its bounds; both are in.
type figure struct {
	name      string
	x, lo, hi float64
}

func in(figures ...figure) error {
	for _, f := range figures {
		if !(f.x >= f.lo && f.x <= f.hi) {
			return fmt.Errorf("%s is %v: %g to %g is wanted", f.name, f.x, f.lo, f.hi)
		}
	}
	return nil
}
