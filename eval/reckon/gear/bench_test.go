package gear

import "testing"

// All that one question about a pair asks for.
func BenchmarkPair(b *testing.B) {
	p, w := Wheel{Teeth: 17, Module: 1.5, Pressure: 20, Shift: 0.3}, Wheel{Teeth: 61, Module: 1.5, Pressure: 20}
	for b.Loop() {
		for _, x := range []Wheel{p, w} {
			blank, err := x.Blank()
			if err != nil || blank.Tip <= 0 {
				b.Fatal(err)
			}
			k, _ := x.SpanTeeth()
			_, _ = x.Span(k)
			pin, _ := x.BestPin()
			_, _ = x.OverPins(pin)
			_, _ = x.Chord()
		}
		if _, err := Pair(p, w, 0); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFromTip(b *testing.B) {
	for b.Loop() {
		if _, err := FromTip(52, 30, 4); err != nil {
			b.Fatal(err)
		}
	}
}
