package rigid

import (
	"fmt"
	"math"

	"fettle/schema/handbook"
)

// A thin wall standing on its foot, or on its foot and both ends, pushed at its free edge by a
// force P gives way by
//
//	w = f P H^2 / D    D = E t^3/(12 (1 - v^2))
//
// with a figure f of the shape alone. The figures below are by finite elements (shells of
// second order, ten to the height, thickness a twentieth of the height, Poisson's ratio 0.3:
// testdata/elastic/values.tsv, rows "wall", made by make.py there). For the long wall they
// agree with T. H. MacGregor, 1935 (0.168, from memory). Twice as fine a mesh gives up to 1.6 %
// more. A plain strip bending like a bar understates a long wall 2.3 times at the middle, where
// it stands for its whole length.
//
// Other thicknesses and metals move f, and the answer is a band that holds them: thickness
// from a fiftieth to a tenth of the height, Poisson's ratio from 0.25 to 0.34, and the mesh.

// Wall is a thin wall, standing up.
type Wall struct {
	Length    float64 // along the free edge, mm
	Height    float64 // from the foot to the free edge, mm
	Thickness float64 // mm
	Ends      bool    // held at both ends as well as along the foot
	AtEnd     bool    // pushed at an end of the free edge, not at its middle
}

var wallRatios = []float64{0.25, 0.35, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 7, 10} // length / height

var (
	footMiddle = []float64{1.42202, 1.00856, 0.70211, 0.470016, 0.358861, 0.295485, 0.255766, 0.211251, 0.189512, 0.17852, 0.170254, 0.168355, 0.167902, 0.167889}
	footEnd    = []float64{1.4695, 1.07003, 0.78275, 0.579498, 0.495087, 0.45624, 0.437976, 0.425529, 0.423034, 0.422596, 0.422512, 0.422511, 0.422511, 0.422511}
	endsMiddle = []float64{0.00272357, 0.00435079, 0.00770345, 0.0159352, 0.0273537, 0.0418954, 0.0590964, 0.0954701, 0.125863, 0.145924, 0.162968, 0.166959, 0.167866, 0.167889}
)

// How far f strays from the table, down and up, over the thicknesses, metals and meshes above.
var (
	strayFoot = handbook.Band{Lo: 0.97, Hi: 1.06}
	strayEnds = handbook.Band{Lo: 0.90, Hi: 1.20}
)

// Figure gives f of a wall, without unit, by the table above: the low and the high bound. Walls
// shorter than a quarter of their height are bars, those thicker than a tenth of it are blocks;
// both are an error, as are sizes outside 0.001 to 100,000 mm and a wall held at its ends and
// pushed there. A wall longer than ten heights has the figure of ten.
func (w Wall) Figure() (handbook.Band, error) {
	for _, c := range []struct {
		what string
		x    float64
	}{{"length", w.Length}, {"height", w.Height}, {"thickness", w.Thickness}} {
		if !(c.x >= least && c.x <= longest) {
			return handbook.Band{}, fmt.Errorf("the %s of the wall must lie from %v to %v mm, not %v", c.what, least, float64(longest), c.x)
		}
	}
	const dust = 1e-9
	switch r := w.Length / w.Height; {
	case r < 0.25*(1-dust):
		return handbook.Band{}, fmt.Errorf("a wall shorter than a quarter of its height, %v mm, is a bar: take it as one", w.Height)
	case w.Thickness > w.Height/10*(1+dust):
		return handbook.Band{}, fmt.Errorf("a wall thicker than a tenth of its height, %v mm, is no thin wall, and gives less than figures for one", w.Height)
	case w.Ends && w.AtEnd:
		return handbook.Band{}, fmt.Errorf("a wall held at its ends does not give there")
	}
	table, stray := footMiddle, strayFoot
	if w.Ends {
		table, stray = endsMiddle, strayEnds
	} else if w.AtEnd {
		table = footEnd
	}
	return stray.Times(between(w.Length/w.Height, table)), nil
}

// between reads a table on straight lines over the logarithms of ratio and figure.
func between(r float64, table []float64) float64 {
	n := len(wallRatios) - 1
	if r >= wallRatios[n] {
		return table[n]
	}
	i := 0
	for i < n-1 && r > wallRatios[i+1] {
		i++
	}
	part := math.Log(math.Max(r, wallRatios[0])/wallRatios[i]) / math.Log(wallRatios[i+1]/wallRatios[i])
	return table[i] * math.Pow(table[i+1]/table[i], part)
}

// Under gives how far the wall gives way, mm, under a force, 0 to 1e7 N. Of the metal its
// stiffness, 1 to 2,000,000 MPa, and Poisson's ratio, 0 to under 0.5, are read. An error for what
// Figure refuses, and for a figure out of range. The formula is that of the essay above.
func (w Wall) Under(force float64, m handbook.Elastic) (handbook.Band, error) {
	f, err := w.Figure()
	if err != nil {
		return handbook.Band{}, err
	}
	e, v := m.Young, m.Poisson
	switch {
	case !(force >= 0 && force <= strongest):
		return handbook.Band{}, fmt.Errorf("the force must lie from 0 to %v N, not %v", float64(strongest), force)
	case !(e.Lo >= 1 && e.Lo <= e.Hi && e.Hi <= 2e6):
		return handbook.Band{}, fmt.Errorf("the stiffness must lie from 1 to 2,000,000 MPa, not %v to %v", e.Lo, e.Hi)
	case !(v.Lo >= 0 && v.Lo <= v.Hi && v.Hi < 0.5):
		return handbook.Band{}, fmt.Errorf("the Poisson's ratio must lie from 0 to under 0.5, not %v to %v", v.Lo, v.Hi)
	}
	plate := func(e, v float64) float64 { return e * math.Pow(w.Thickness, 3) / 12 / (1 - v*v) }
	push := force * w.Height * w.Height
	return handbook.Band{Lo: f.Lo * push / plate(e.Hi, v.Hi), Hi: f.Hi * push / plate(e.Lo, v.Lo)}, nil
}
