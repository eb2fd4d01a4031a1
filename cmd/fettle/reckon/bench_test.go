package reckon

import (
	"fmt"
	"io"
	"strings"
	"testing"

	"fettle/schema/text"
)

// Every subject answers its examples, from the words to the page. The table in DEVELOPERS.md is
// from here.
func BenchmarkSubjects(b *testing.B) {
	for _, s := range Subjects() {
		b.Run(s.Name, func(b *testing.B) {
			for b.Loop() {
				for _, e := range s.Examples {
					Run(append([]string{s.Name}, e...), text.Archive{}, io.Discard)
				}
			}
		})
	}
}

// The searches at the size of a workshop: a rack of twenty bars and sixty pieces, twenty
// operations on four machines, twenty-six wheels and three pairs.
func BenchmarkWorkshopSize(b *testing.B) {
	var pieces, bars, ops []string
	for i := range 20 {
		pieces = append(pieces, fmt.Sprintf("3 x %d", 40+17*i))
		bars = append(bars, fmt.Sprint(300+50*(i%9)))
		op := fmt.Sprintf("o%d: mill/t%d/top=2 or lathe/t%d/end=3 or press/t%d/top=1", i, i%5, i%4, i%3)
		if i > 2 {
			op += fmt.Sprintf(" after o%d, o%d", i-3, i/2)
		}
		ops = append(ops, op)
	}
	wheels := "20,20,24,28,30,32,36,40,40,44,45,48,50,52,55,60,60,63,65,70,75,80,90,100,120,127"
	for name, words := range map[string][]string{
		"bar":      {"bar", strings.Join(pieces, ", "), "--bars", strings.Join(bars, ", ") + ", 20 x 1000", "--keep", "50"},
		"order":    {"order", strings.Join(ops, "; "), "--what-if"},
		"screwcut": {"screwcut", "1.37", "--screw", "8 tpi", "--wheels", wheels, "--pairs", "3"},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if status, err := Run(words, text.Archive{}, io.Discard); status > 1 {
					b.Fatal(status, err)
				}
			}
		})
	}
}
