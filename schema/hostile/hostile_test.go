package hostile

import (
	"errors"
	"math"
	"testing"
)

// What each function does wrong is found, and what does nothing wrong passes.
func TestHolds(t *testing.T) {
	for _, c := range []struct {
		name string
		call Call
		want bool
	}{
		{"a refusal", Call{Func: func(x float64) (float64, error) {
			if !(x > 0 && x < 10) {
				return 0, errors.New("x must lie from 0 to 10")
			}
			return x, nil
		}, With: []any{1.0}}, true},
		{"a silent NaN", Call{Func: func(x float64) (float64, error) { return x, nil }, With: []any{1.0}}, false},
		{"a NaN that is lost", Call{Func: func(x float64) (float64, bool) { return 3, x != 7 }, With: []any{1.0}}, false},
		{"the same, free", Call{Func: func(x float64) (float64, bool) { return 3, x != 7 }, With: []any{1.0}, Free: []string{"0"}}, true},
		{"an index out of its list", Call{Func: func(l []int) int { return l[0] }, With: []any{[]int{1}}}, false},
		{"a figure within a struct", Call{Func: func(p struct{ X []float64 }) (float64, error) { return p.X[0], nil },
			With: []any{struct{ X []float64 }{[]float64{1}}}}, false},
		{"a bare formula", Call{Func: func(x float64) float64 { return x + 2 }, With: []any{1.0}}, true},
		{"a bare formula that makes a figure up", Call{Func: func(x float64) float64 {
			if !(x > 0) {
				return 5
			}
			return x
		}, With: []any{1.0}}, false},
		{"a bare formula that divides by nought", Call{Func: func(x float64) float64 { return 1 / x }, With: []any{1.0}}, false},
		{"an enumeration", Call{Func: func(n uint8) string { return [...]string{"a", "b"}[n] }, With: []any{uint8(1)}}, false},
	} {
		if got := c.call.passes(); got != c.want {
			t.Errorf("%s: passes %v", c.name, got)
		}
	}
}

// passes asks the same as Calls without failing a test.
func (c Call) passes() bool {
	for _, w := range c.ways() {
		if c.fault(w) != "" {
			return false
		}
	}
	return true
}

// Arguments are fresh for each call.
func TestFresh(t *testing.T) {
	c := Call{Func: func(l []float64) bool { l[0] = math.NaN(); return true }, With: []any{[]float64{1}}}
	first := c.arguments()
	c.ask(first)
	if again := c.arguments(); again[0].Index(0).Float() != 1 {
		t.Error("the second call is asked with what the first left")
	}
}
