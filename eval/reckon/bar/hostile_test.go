package bar

import (
	"testing"

	"fettle/schema/hostile"
)

func TestHostile(t *testing.T) {
	saw := Saw{Kerf: 1.5, Facing: 1, Grip: 20}
	job := Job{Bars: []Bar{{"offcut", 300, 1, true}, {"new", 1000, 3, false}}, Pieces: []Piece{{"pillar", 120, 4}, {"stud", 75, 6}}, Saw: saw, Usable: 50}
	hostile.Calls(t, []hostile.Call{
		{Name: "Level.String", Func: Level.String, With: []any{Scrap}},
		{Name: "Short.Error", Func: (*Short).Error, With: []any{&Short{By: 12}}, Undefined: true, Free: []string{"0.By"}}, // Plans gives none that is no number
		{Name: "Count", Func: Count, With: []any{1000.0, 120.0, saw}},
		{Name: "Plans", Func: Plans, With: []any{job}},
	})
}

// The sum of a rack that has far more than is wanted does not run over: it is not called short.
func TestPlenty(t *testing.T) {
	j := Job{Saw: Saw{Kerf: 1.000000001}}
	for i := range 60 {
		j.Bars = append(j.Bars, Bar{Length: MostLength - float64(i) - 1e-9, Count: MostPieces, Offcut: i%2 == 0})
	}
	j.Pieces = []Piece{{"rail", 40000.000000001, MostPieces}}
	p, err := Plans(j)
	if err != nil || p.NewBars != 0 || p.Touched != MostPieces/2 {
		t.Errorf("%d bars touched, %d new: %v", p.Touched, p.NewBars, err)
	}
}
