package taper

import (
	"fmt"
	"math"
)

// Plug is a taper plug that stands on its small end on a plate, measured over two rollers at its
// sides: once lying on the plate, once lifted on two equal stacks. All lengths are 0.001 to
// MostLength mm.
type Plug struct {
	Roller       float64 // diameter, mm
	Lifted       float64 // height of the stacks, mm
	Below, Above float64 // over the rollers on the plate, and over them lifted, mm
}

// Cone gives the taper of the plug and its diameter at the plate, mm. Half the angle is
// atan((Above - Below) / (2 Lifted)), and a roller in the corner of plate and plug touches the
// plate r cot((90 - half)/2) out of the foot of the cone, half being less than nought where the
// cone stands on its large end. By geometry; an error names the figure out of range or what does
// not go together.
func (p Plug) Cone() (t Taper, small float64, err error) {
	err = first(length("rollers", p.Roller), length("stacks", p.Lifted), length("over the rollers below", p.Below), length("over the rollers above", p.Above))
	if err != nil {
		return Taper{}, 0, err
	}
	if p.Above <= p.Below {
		return Taper{}, 0, fmt.Errorf("over the rollers it is %v mm above and %v mm below: stand the cone on its small end", p.Above, p.Below)
	}
	if t, err = OnDiameter((p.Above - p.Below) / p.Lifted); err != nil {
		return Taper{}, 0, err
	}
	small = p.Below - p.Roller*(1+1/math.Tan((math.Pi/2-t.half())/2))
	if small <= 0 {
		return Taper{}, 0, fmt.Errorf("rollers of %v mm measured over %v mm leave nothing for the plug between", p.Roller, p.Below)
	}
	return t, small, nil
}

// OverRollers gives what is measured, mm, over two rollers that lie on the plate beside a plug of
// a taper with a diameter at the plate, its small end, and lifted on stacks of a height (0: on the
// plate). It undoes Plug.Cone. An error names the length outside 0.001 to MostLength mm.
func (t Taper) OverRollers(small, roller, lifted float64) (float64, error) {
	err := first(length("small end", small), length("rollers", roller), in("stacks", lifted, 0, MostLength, " mm"))
	if err != nil {
		return 0, err
	}
	return small + t.ratio*lifted + roller*(1+1/math.Tan((math.Pi/2-t.half())/2)), nil
}

// Ring is a taper bore, its large end up, measured by a ball that sits high in it and a smaller one that
// sits low.
type Ring struct {
	Large, Small float64 // diameters of the balls, mm
	Proud        float64 // top of the large ball above the face, mm; less than 0: below it
	Deep         float64 // top of the small ball below the face, mm
}

// Cone gives the taper of the bore and its diameter at the face, mm. The sine of half the angle is
// the difference of the radii over the distance of the centres, which are Deep + Proud + small
// radius - large radius apart. Above the level of the large ball's centre the wall goes on out to
// the face. By geometry; an error names the figure out of range, or balls that touch no such cone.
func (r Ring) Cone() (t Taper, mouth float64, err error) {
	err = first(length("large ball", r.Large), length("small ball", r.Small),
		in("large ball above the face", r.Proud, -MostLength, r.Large, " mm"), in("small ball below the face", r.Deep, -MostLength, MostLength, " mm"))
	if err != nil {
		return Taper{}, 0, err
	}
	big, small := r.Large/2, r.Small/2
	apart := r.Deep + r.Proud + small - big
	if big <= small || apart <= big-small {
		return Taper{}, 0, fmt.Errorf("balls of %v and %v mm whose centres are %v mm apart touch no cone: the larger goes above, and the centres lie further apart than their radii differ", r.Large, r.Small, apart)
	}
	half := math.Asin((big - small) / apart)
	if t, err = OnDiameter(2 * math.Tan(half)); err != nil {
		return Taper{}, 0, err
	}
	return t, 2 * (big/math.Cos(half) + (big-r.Proud)*math.Tan(half)), nil
}

// Dovetail is a dovetail slide: its sharp corners, as if no relief were cut there.
type Dovetail struct {
	Angle  float64 // between the flank and the flat, degrees: usually 60, 55 or 45
	Height float64 // along the square to the flats, mm; 0: not known
}

// rollers gives 1 + cot(angle/2), by which rollers of a diameter stand out of or into the corner.
func (d Dovetail) rollers(roller float64) (float64, error) {
	if err := first(in("angle of the dovetail", d.Angle, 10, 89, " degrees"), length("rollers", roller), in("height", d.Height, 0, MostLength, " mm")); err != nil {
		return 0, err
	}
	if d.Height > 0 && d.Touches(roller) >= d.Height/math.Sin(d.Angle*math.Pi/180) {
		return 0, fmt.Errorf("rollers of %v mm touch %v mm up the flank, which is %v mm long: take smaller ones", roller, d.Touches(roller), d.Height/math.Sin(d.Angle*math.Pi/180))
	}
	return 1 + 1/math.Tan(d.Angle/2*math.Pi/180), nil
}

// Touches gives how far from the sharp corner, mm, a roller touches flank and flat: r
// cot(angle/2). It must touch on the flank, and beyond any relief in the corner. A bare formula;
// of an angle outside 0 to 180 degrees it makes no number.
func (d Dovetail) Touches(roller float64) float64 {
	if !(d.Angle > 0 && d.Angle < 180) {
		return math.NaN()
	}
	return roller / 2 / math.Tan(d.Angle/2*math.Pi/180)
}

// OverMale gives what is measured over two rollers, mm, in the corners of a male dovetail: its
// narrow width at the root and D(1 + cot(angle/2)). (Machinery's Handbook.) The angle is 10 to 89
// degrees. An error names the figure out of range, or rollers that touch above the flank; the
// measure then means nothing.
func (d Dovetail) OverMale(narrow, roller float64) (float64, error) {
	k, err := d.rollers(roller)
	return narrow + roller*k, first(err, length("narrow width", narrow))
}

// BetweenFemale gives what is measured between two rollers, mm, in the corners of a female
// dovetail: its wide width at the bottom less D(1 + cot(angle/2)) (from OverMale, the corner being
// the same). An error names the figure out of range, or rollers for which there is no room.
func (d Dovetail) BetweenFemale(wide, roller float64) (float64, error) {
	k, err := d.rollers(roller)
	if err := first(err, length("wide width", wide)); err != nil {
		return 0, err
	}
	if wide <= roller*k {
		return 0, fmt.Errorf("two rollers of %v mm do not go side by side into a dovetail of %v mm", roller, wide)
	}
	return wide - roller*k, nil
}

// Wide gives the wide width, mm, of a dovetail of a height from its narrow one: narrow + 2
// height/tan. With the error for an angle outside 10 to 89 degrees or a length out of range it
// means nothing.
func (d Dovetail) Wide(narrow float64) (float64, error) {
	err := first(in("angle of the dovetail", d.Angle, 10, 89, " degrees"), length("narrow width", narrow), length("height", d.Height))
	return narrow + 2*d.Height/math.Tan(d.Angle*math.Pi/180), err
}

// Vee is a vee groove with equal flanks of an included angle in degrees, 1 to 179.
type Vee struct{ Angle float64 }

func (v Vee) check(roller float64) error {
	return first(in("angle of the vee", v.Angle, 1, 179, " degrees"), length("roller", roller))
}

func (v Vee) half() float64 { return v.Angle / 2 * math.Pi / 180 }

// Top gives how high the top of a roller that lies in the vee stands above the sharp bottom, mm: r
// (1 + 1/sin(half)). With the error for a figure out of range it means nothing.
func (v Vee) Top(roller float64) (float64, error) {
	return roller / 2 * (1 + 1/math.Sin(v.half())), v.check(roller)
}

// Depth gives the depth of the sharp vee below the surface, mm, from how far the top of a roller
// in it stands above the surface (less than 0: below), and the width of the vee at the surface.
// The roller must touch the flanks below the surface. An error also names the figure out of range.
func (v Vee) Depth(roller, proud float64) (deep, wide float64, err error) {
	top, err := v.Top(roller)
	if err := first(err, in("top of the roller above the surface", proud, -MostLength, roller, " mm")); err != nil {
		return 0, 0, err
	}
	deep = top - proud
	touch := roller / 2 * math.Cos(v.half()) / math.Tan(v.half()) // above the bottom
	if deep < touch {
		return 0, 0, fmt.Errorf("a roller of %v mm that stands %v mm above the surface lies on the edges of the vee and not on its flanks", roller, proud)
	}
	return deep, 2 * deep * math.Tan(v.half()), nil
}

// VeeAngle gives the included angle of a vee, degrees, from the heights of the tops of two rollers
// in it above any one level: sin(half) = (R - r)/(distance of the centres). An error names the
// figure out of range, or rollers that lie in no vee.
func VeeAngle(large, small, topLarge, topSmall float64) (Vee, error) {
	err := first(length("large roller", large), length("small roller", small), in("top of the large roller", topLarge, -MostLength, MostLength, " mm"),
		in("top of the small roller", topSmall, -MostLength, MostLength, " mm"))
	if err != nil {
		return Vee{}, err
	}
	rise := (large - small) / 2
	apart := topLarge - topSmall - rise
	if rise <= 0 || apart <= rise {
		return Vee{}, fmt.Errorf("rollers of %v and %v mm whose centres are %v mm apart lie in no vee", large, small, apart)
	}
	return Vee{2 * math.Asin(rise/apart) * 180 / math.Pi}, nil
}
