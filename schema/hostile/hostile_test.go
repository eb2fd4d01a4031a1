package hostile

import (
	"errors"
	"fmt"
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
				return 0, fmt.Errorf("x must lie from 0 to 10, not %v", x)
			}
			return x, nil
		}, With: []any{1.0}}, true},
		{"a refusal that names nothing", Call{Func: func(x float64) (float64, error) {
			if !(x > 0 && x < 10) {
				return 0, errors.New("this cannot be")
			}
			return x, nil
		}, With: []any{1.0}}, false},
		{"a spoilt sentence", Call{Func: func(n int) (int, error) {
			if n < 0 || n > 10 {
				return 0, errors.New("n is %" + "!d(string=x)")
			}
			return n, nil
		}, With: []any{1}}, false},
		{"an answer without end", Call{Func: func(x float64) (float64, error) {
			if !(x >= 0 && x < 10) {
				return 0, fmt.Errorf("x must lie from 0 to 10, not %v", x)
			}
			return 1 / x, nil
		}, With: []any{1.0}, Endless: true}, true},
		{"an infinite figure that is taken", Call{Func: func(x float64) (float64, error) {
			if math.IsNaN(x) {
				return 0, fmt.Errorf("x must lie from 0 to 10, not %v", x)
			}
			return 3, nil
		}, With: []any{1.0}}, false},
		{"a map's figures", Call{Func: func(m map[string]float64) (float64, error) { return m["a"], nil },
			With: []any{map[string]float64{"a": 1}}}, false},
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
