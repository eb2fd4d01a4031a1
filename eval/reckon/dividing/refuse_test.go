package dividing

import (
	"math"
	"testing"
)

// A job that is none has no lines and no rounds; nor has the table of a head or rotary table that
// is none.
func TestNoLines(t *testing.T) {
	job, err := Divisions(6)
	if err != nil {
		t.Fatal(err)
	}
	rotary := Rotary{Of(90, 1), Of(1, 21600)}
	head := Head{Ratio: Of(40, 1)}
	count := func(job Job, rotary Rotary, head Head) (n [3]int) {
		for range Table(job, Setting{Crank: Count{6, 12, 18}}) {
			n[0]++
		}
		for range rotary.Table(job) {
			n[1]++
		}
		for range (Rounding{Circle: 20}).Table(head, job) {
			n[2]++
		}
		return n
	}
	for _, c := range []struct {
		name   string
		job    Job
		rotary Rotary
		head   Head
		want   [3]int
	}{
		{"all in order: six places and the first again", job, rotary, head, [3]int{7, 7, 7}},
		{"no job", Job{}, rotary, head, [3]int{}},
		{"a job of no places", Job{Step: Of(1, 6), Spaces: 1, Whole: true}, rotary, head, [3]int{}},
		{"a job of no spaces at once", Job{Step: Of(1, 6), Places: 6, Whole: true}, rotary, head, [3]int{}},
		{"no rotary table", job, Rotary{}, head, [3]int{7, 0, 7}},
		{"no head", job, rotary, Head{}, [3]int{7, 7, 0}},
	} {
		if got := count(c.job, c.rotary, c.head); got != c.want {
			t.Errorf("%s: %v lines, want %v", c.name, got, c.want)
		}
	}
	if first, rounds := (Job{}).Rounds(); first != 0 || rounds != 0 {
		t.Errorf("no job goes round %d, %d", first, rounds)
	}
}

// What is no number stays none, also where it was not made by Of.
func TestNoNumber(t *testing.T) {
	one := Of(1, 1)
	for _, none := range []Fraction{{}, {5, 0}, {1, -2}, {math.MinInt64, 1}} {
		for name, got := range map[string]Fraction{
			"plus": one.Plus(none), "minus": one.Minus(none), "times": one.Times(none), "over": one.Over(none), "under": none.Over(one),
		} {
			if got.Valid() {
				t.Errorf("%s of %d/%d is %s", name, none.Num, none.Den, got)
			}
		}
		if none.Cmp(one) != -1 || one.Cmp(none) != 1 || none.Cmp(Fraction{}) != 0 {
			t.Errorf("%d/%d is not less than all", none.Num, none.Den)
		}
	}
	huge := Train{Pairs: 2, Spindle: math.MaxInt, StudIn: 7, StudOut: math.MaxInt, Plate: 3}
	if r := huge.Ratio(); r.Valid() {
		t.Errorf("a train beyond 64 bits has the ratio %s", r)
	}
}
