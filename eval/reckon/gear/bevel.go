package gear

import (
	"fmt"
	"math"
)

// Bevel is a pair of straight bevel wheels. What lies outside the ranges below is an error of its
// methods, which names the figure.
type Bevel struct {
	Teeth    [2]int  // pinion, wheel; 5 to 10000
	Module   float64 // at the large end, mm, 0.05 to 100
	Pressure float64 // degrees, 10 to 35
	Shaft    float64 // angle between the shafts, degrees, 10 to 170
	Face     float64 // width of the teeth along the cone, mm; 0: not asked
	Long     bool    // the long and short addendum of 90 degree drives, clearance even along the tooth
	Depth    Depth   // of equal addendum teeth; the zero Depth: UsualDepth
}

// Cone is one wheel of such a pair. Lengths are mm, angles degrees.
type Cone struct {
	Pitch      float64 // half angle of the pitch cone, degrees; above 90 the wheel is internal
	Reference  float64 // pitch diameter at the large end, mm
	Tip        float64 // outside diameter at the large end
	Addendum   float64 // at the large end, square to the cone
	Dedendum   float64
	Face, Root float64 // half angles of the cones of tip and root, degrees; the head is set to the root's
	Apex       float64 // apex of the pitch cone to the plane of the outside diameter, along the axis, mm
	Virtual    float64 // teeth that a form cutter is chosen for: z / cos(pitch angle); infinite for a crown wheel
	SmallTip   float64 // outside diameter at the small end, where a width is given
}

// Bevels is the pair. Lengths are mm.
type Bevels struct {
	Cone        [2]Cone
	Distance    float64 // cone distance, mm
	MostFace    float64 // widest face of the trade: a third of the cone distance
	SmallModule float64 // module at the small end, where a width is given
	Whole       float64 // depth at the large end, mm
}

// Check says what is out of range. Whether the width of face fits the cone is asked by Pair.
func (b Bevel) Check() error {
	for _, z := range b.Teeth {
		if z < 5 || z > 10000 {
			return fmt.Errorf("a bevel wheel of %d teeth: from 5 to 10000", z)
		}
	}
	if b.Long && math.Abs(b.Shaft-90) > 1e-9 {
		return fmt.Errorf("long and short addenda are laid down for shafts at 90 degrees, not %v", b.Shaft)
	}
	return first(within("a module of", b.Module, 0.05, 100, " mm"),
		within("a pressure angle of", b.Pressure, 10, 35, " degrees"),
		within("a shaft angle of", b.Shaft, 10, 170, " degrees"),
		within("a width of face of", b.Face, 0, 1e6, " mm"), b.Depth.or(b.Pressure).check())
}

// Crown gives the pitch angle of a pinion that runs with a crown wheel (a flat one) and the angle
// between their shafts: sin = z1/z2, and 90 degrees more. The pinion has 5 teeth or more, the
// crown wheel more than the pinion and at most 10,000; others are an error. Angles in degrees, by
// geometry.
func Crown(pinion, crown int) (pitch, shaft float64, err error) {
	if pinion < 5 || crown > 10000 || pinion >= crown {
		return 0, 0, fmt.Errorf("a pinion of %d and a crown wheel of %d teeth: the pinion has 5 or more, and fewer than the wheel", pinion, crown)
	}
	pitch = deg(math.Asin(float64(pinion) / float64(crown)))
	return pitch, 90 + pitch, nil
}

// Pair gives the sizes, mm and degrees: tan(pitch angle of the pinion) = sin S/(z2/z1 + cos S).
// Tip and root cones go to the common apex; with long and short addenda the tip cone runs along
// the mate's root. Equal addenda: any gear text; long and short: 0.54 m + 0.46 m z1 cos d2/(z2 cos
// d1) for the wheel, both together 2 m, whole depth 2.188 m, a straight bevel system of the trade
// as given in the Japanese gear handbook form (from memory). Errors: what Check refuses, a face
// wider than 0.75 of the cone distance, a pitch cone of 150 degrees or more. The virtual teeth of
// a crown wheel are infinite.
//
// Law: both pitch angles make up the shaft angle.
func (b Bevel) Pair() (Bevels, error) {
	if err := b.Check(); err != nil {
		return Bevels{}, err
	}
	z := [2]float64{float64(b.Teeth[0]), float64(b.Teeth[1])}
	s := rad(b.Shaft)
	d1 := math.Atan2(math.Sin(s), z[1]/z[0]+math.Cos(s))
	pitch := [2]float64{d1, s - d1}
	if pitch[1] >= rad(150) || pitch[0] >= rad(150) {
		return Bevels{}, fmt.Errorf("%d and %d teeth at %v degrees: one cone is hollower than this reckoning goes", b.Teeth[0], b.Teeth[1], b.Shaft)
	}
	out := Bevels{Distance: z[0] * b.Module / (2 * math.Sin(d1))}
	out.MostFace = out.Distance / 3
	if err := within("a width of face of", b.Face, 0, 0.75*out.Distance, " mm"); err != nil {
		return Bevels{}, err
	}
	up, down := b.heights(z, pitch)
	out.Whole = up[0] + down[0]
	for i := range 2 {
		out.Cone[i] = b.cone(i, z[i]*b.Module, pitch[i], up, down, out.Distance)
		out.Cone[i].Virtual = math.Inf(1)
		if c := math.Cos(pitch[i]); math.Abs(c) > 1e-9 {
			out.Cone[i].Virtual = z[i] / c
		}
	}
	if b.Face > 0 {
		out.SmallModule = b.Module * (out.Distance - b.Face) / out.Distance
	}
	return out, nil
}

// heights gives addenda and dedenda at the large end.
func (b Bevel) heights(z, pitch [2]float64) (up, down [2]float64) {
	m := b.Module
	if b.Long {
		up[1] = 0.54*m + 0.46*m*z[0]*math.Cos(pitch[1])/(z[1]*math.Cos(pitch[0]))
		up[0] = 2*m - up[1]
		return up, [2]float64{2.188*m - up[0], 2.188*m - up[1]}
	}
	d := b.Depth.or(b.Pressure)
	a, r := d.Addendum*m, (d.Whole-d.Addendum)*m+d.Extra
	return [2]float64{a, a}, [2]float64{r, r}
}

func (b Bevel) cone(i int, d, pitch float64, up, down [2]float64, distance float64) Cone {
	tip := math.Atan(up[i] / distance)
	if b.Long {
		tip = math.Atan(down[1-i] / distance)
	}
	c := Cone{Pitch: deg(pitch), Reference: d, Addendum: up[i], Dedendum: down[i]}
	c.Tip = d + 2*up[i]*math.Cos(pitch)
	c.Face, c.Root = deg(pitch+tip), deg(pitch-math.Atan(down[i]/distance))
	c.Apex = distance*math.Cos(pitch) - up[i]*math.Sin(pitch)
	if b.Face > 0 {
		c.SmallTip = c.Tip - 2*b.Face*math.Sin(pitch+tip)/math.Cos(tip)
	}
	return c
}
