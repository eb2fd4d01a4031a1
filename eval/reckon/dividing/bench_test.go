package dividing

import "testing"

// The worst of each question within the ranges: none may take 10 ms on a small machine.
func BenchmarkAnswer(b *testing.B) {
	usualHead := Head{Ratio: Of(40, 1), Plates: three, Direct: []int{24}, Gear: Gearing{Wheels: usual, Axis: Level}}
	large := Head{Ratio: Of(1000, 1), Gear: Gearing{Axis: Level}}
	for face := range 6 {
		var p []int
		for c := range MostCircles / 6 {
			p = append(p, MostHoles-face*MostCircles/6-c)
		}
		large.Plates = append(large.Plates, Plate{Faces: [][]int{p}})
	}
	one := Plate{Faces: make([][]int, 3)}
	for c := range MostCircles {
		one.Faces[c%3] = append(one.Faces[c%3], MostHoles-2*c)
	}
	smooth := Head{Ratio: Of(1000, 1), Plates: []Plate{one}, Gear: Gearing{Axis: Level}}
	for w := range MostWheels {
		large.Gear.Wheels = append(large.Gear.Wheels, 20+4*w)
		smooth.Gear.Wheels = append(smooth.Gear.Wheels, 10+10*w)
	}
	for _, c := range []struct {
		name string
		h    Head
		n    int
	}{
		{"usual 36", usualHead, 36}, {"usual 127", usualHead, 127}, {"usual 1000000", usualHead, 1_000_000},
		{"large 2", large, 2}, {"large 127", large, 127}, {"large 3600", large, 3600}, {"large 999983", large, 999_983}, {"large 720720", large, 720_720},
		{"smooth 2", smooth, 2}, {"smooth 720", smooth, 720}, {"smooth 7200", smooth, 7200}, {"smooth 27720", smooth, 27720},
	} {
		j, err := Divisions(c.n)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(c.name+" settings", func(b *testing.B) {
			for b.Loop() {
				s, _ := Settings(c.h, j)
				b.ReportMetric(float64(len(s)), "settings")
			}
		})
		b.Run(c.name+" trains", func(b *testing.B) {
			for b.Loop() {
				g, _ := Gears(c.h, j)
				b.ReportMetric(float64(len(g.Settings)), "settings")
			}
		})
		b.Run(c.name+" near", func(b *testing.B) {
			for b.Loop() {
				Near(c.h, j)
			}
		})
	}
}

func BenchmarkTable(b *testing.B) {
	h := Head{Ratio: Of(40, 1), Plates: three}
	j, _ := Divisions(10_000)
	n, _ := Near(h, j)
	for b.Loop() {
		for range n.Rounded.Table(h, j) {
		}
	}
}
