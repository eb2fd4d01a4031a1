package sheet

import "testing"

// BenchmarkSheet writes the largest sheet of the demos, eleven parts and some 130 things to do.
func BenchmarkSheet(b *testing.B) {
	recipe, shop := "recipes/tellurion", "recipes/shops/club"
	c := checked(b, archive(b, recipe, shop), recipe, shop)
	for b.Loop() {
		made(b, c, true).HTML()
	}
}
