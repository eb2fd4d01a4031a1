package reckon

import (
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"fettle/schema/text"
)

// BenchmarkSubject asks every example of every subject, from words to page.
func BenchmarkSubject(b *testing.B) {
	files := text.Archive{}
	for _, s := range Subjects() {
		for i, e := range s.Examples {
			b.Run(fmt.Sprintf("%s/%d", s.Name, i+1), func(b *testing.B) {
				args := append([]string{s.Name}, e...)
				for b.Loop() {
					if status, err := Run(args, files, io.Discard); err != nil || status != Answered {
						b.Fatalf("%q: status %d, %v", args, status, err)
					}
				}
			})
		}
	}
}

// BenchmarkWorkshop asks the subjects that search, at the size of a workshop: a rack of bars and
// offcuts for sixty pieces, twenty-five operations on three machines, three pairs of change wheels
// out of two dozen.
func BenchmarkWorkshop(b *testing.B) {
	for _, c := range []struct {
		name string
		args []string
	}{
		{"bar", []string{"bar", sixtyPieces(), "--bars", "12 x 1000, 2 x 600, offcut 430, offcut 385, offcut 260, offcut 210, offcut 155", "--kerf", "1.5", "--facing", "1", "--keep", "100"}},
		{"order", []string{"order", twentyFiveOperations(), "--set-up", "5", "--tool-change", "2", "--machine-change", "8"}},
		{"order, what if", []string{"order", twentyFiveOperations(), "--set-up", "5", "--tool-change", "2", "--machine-change", "8", "--what-if"}},
		{"screwcut", []string{"screwcut", "11.5 tpi", "--screw", "3", "--wheels", "20,21,22,24,25,28,30,32,33,35,36,40,42,45,48,50,52,55,57,60,63,66,80,127"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if status, err := Run(c.args, text.Archive{}, io.Discard); err != nil || status == NotUnderstood {
					b.Fatalf("%q: status %d, %v", c.args, status, err)
				}
			}
		})
	}
}

func sixtyPieces() string {
	r := rand.New(rand.NewPCG(7, 60))
	var out []string
	for range 15 {
		out = append(out, fmt.Sprintf("4 x %d", 20+r.IntN(240)))
	}
	return strings.Join(out, ", ")
}

// twentyFiveOperations has each operation behind at most one before it, with one to three ways.
func twentyFiveOperations() string {
	r := rand.New(rand.NewPCG(7, 25))
	var out []string
	for n := range 25 {
		var ways []string
		for range 1 + r.IntN(3) {
			ways = append(ways, fmt.Sprintf("%s/t%d/%s", []string{"mill", "drill press", "lathe"}[r.IntN(3)], r.IntN(8), []string{"top", "bottom", "end"}[r.IntN(3)]))
		}
		op := fmt.Sprintf("o%d: %s", n, strings.Join(ways, " or "))
		if n > 2 && r.IntN(3) > 0 {
			op += fmt.Sprintf(" after o%d", r.IntN(n))
		}
		out = append(out, op)
	}
	return strings.Join(out, "; ")
}
