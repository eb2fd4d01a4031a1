package choose_test

import (
	"math"
	"strings"
	"testing"

	"fettle/rules"
)

// A block of 60 by 50 by 40 mm of steel (7.85 g/cm3: 0.942 kg), bored 25 mm above its bottom, which lies on the
// foot of an angle plate of 0.65 kg.
var shelved = rules.Find("angle-plate-does-not-carry").Sound

// By hand: of the L the foot is 50 by 10 with its middle 5 mm out, the upright 50 by 10 with its middle 35 mm out:
// 20 mm from the outer side of the foot, 45 mm from the axis; the block's own middle lies 5 mm from it that way.
// 0.942 5 + 0.65 45 = 33.96 kg mm. Without its thickness the legs of no thickness have theirs at 60 60/2/110 =
// 16.364 mm; of 25 mm, foot 1250 at 12.5 and upright 875 at 42.5 give 24.853 mm.
func TestPullOnAnAnglePlate(t *testing.T) {
	const block = 0.942 * 5
	for _, c := range []struct {
		thickness   string
		least, most float64
		open        string
	}{
		{"  thickness = 10\n", block + 0.65*45, block + 0.65*45, ""},
		{"", block + 0.65*(25+180.0/11), block + 0.65*(25+(1250*12.5+875*42.5)/2125), "angle_plate.own.thickness"},
	} {
		p, _ := playedRecipe(t, strings.Replace(shelved, "  thickness = 10\n", c.thickness, 1))
		k := p.Moments[len(p.Moments)-1].Turn
		if k == nil {
			t.Fatal("it is not turned")
		}
		u, off := k.Unbalanced()
		if !off || !u.Is() || math.Abs(u.V.Moment.Size-c.least) > 1e-6 || math.Abs(u.V.Most.Size-c.most) > 1e-6 || u.V.Open.Fact != c.open {
			t.Errorf("%+v, by hand %v to %v", u, c.least, c.most)
		}
	}
}

// Turned over, the plate hangs on the other side of the axis from the work: a hole 8 mm above the bottom leaves
// the block's middle 12 mm above the axis, and the plate's 28 mm below it. Between legs of no thickness and thick
// ones the two are even where the plate weighs 0.942 12/26 kg: the least pull is none.
func TestPullEvenOnAnAnglePlate(t *testing.T) {
	recipe := strings.NewReplacer("bottom = 25 }", "bottom = 8 }", "  thickness = 10\n", "", "= 0.65", "= 0.43476923").Replace(shelved)
	p, _ := playedRecipe(t, recipe)
	u, off := p.Moments[len(p.Moments)-1].Turn.Unbalanced()
	if !off || !u.Is() || u.V.Moment.Size > 1e-6 || u.V.Most.Size < 0.5 {
		t.Errorf("%+v", u)
	}
}

// A vise does not turn with a spindle by itself; what is said of one names why.
func TestViseOnALathe(t *testing.T) {
	for _, c := range []struct{ hold, want string }{
		{"vise.small", "vise.small does not go on the spindle of a lathe"},
		{"[vise.small, faceplate.plate]", "work in vise.small on faceplate.plate is not made on paper: how it is bolted there"},
		{"[vise.small, angle_plate.own, faceplate.plate]", "work in vise.small on faceplate.plate is not made on paper"},
		{"angle_plate.own", "angle_plate.own turns on a spindle by a faceplate, and hold names none"},
	} {
		p, _ := playedRecipe(t, strings.Replace(shelved, "[angle_plate.own, faceplate.plate]", c.hold, 1))
		why := ""
		for _, m := range p.Moments {
			if m.Chuck != nil {
				why += m.Chuck.Unplayed
			}
		}
		if !strings.Contains(why, c.want) {
			t.Errorf("%s: %q", c.hold, why)
		}
	}
}
