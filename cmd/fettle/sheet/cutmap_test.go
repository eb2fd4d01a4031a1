package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// tableAfter is the table that follows a heading.
func tableAfter(p *Page, id string) *Block {
	found := false
	for i := range p.Blocks {
		b := &p.Blocks[i]
		found = found || b.Kind == Heading && b.ID == id
		if found && b.Kind == Table {
			return b
		}
	}
	return nil
}

// What is sawn from a bar, the cuts and what is left over are as long as the bar; every part is there as
// often as it is made.
func TestCutMapAddsUp(t *testing.T) {
	for _, d := range demos {
		c := checked(t, archive(t, d[0], d[1]), d[0], d[1])
		table := tableAfter(made(t, c, false), "cutmap")
		if table == nil {
			t.Errorf("%s: no cut map", d[0])
			continue
		}
		kerfs := map[string]float64{}
		for _, x := range c.Result.Trace.Parts {
			if b := x.Part.Blank.Stock; b != nil {
				kerf, _ := x.Severs()
				kerfs[b.Item.Path()] = max(kerfs[b.Item.Path()], kerf)
			}
		}
		count := map[string]int{}
		for _, row := range table.Rows {
			var long, left float64
			bar, l, _ := strings.Cut(row[0], ", ")
			fmt.Sscanf(l, "%f mm", &long)
			fmt.Sscanf(row[2], "%f mm", &left)
			sum := left
			for _, piece := range strings.Split(row[1], "; ") {
				_, rest, _ := strings.Cut(piece, ": ")
				name, l, _ := strings.Cut(rest, ", ")
				var x float64
				fmt.Sscanf(l, "%f mm", &x)
				sum += x + kerfs[bar]
				count[name]++
			}
			if long == 0 || math.Abs(sum-long) > 1e-6 {
				t.Errorf("%s: %v: all together %v", d[0], row, sum)
			}
		}
		whole := map[string]bool{}
		for _, p := range c.Result.Trace.Parts {
			whole[p.Part.Label] = !p.Part.Joined()
			s := p.Part.Blank.Stock
			if p.Start == nil || p.Part.Joined() || s == nil || s.Sheet.Said || s.Casting.Said || !s.Lengths.Is() {
				continue
			}
			if n := p.Part.Part.Quantity.Or(1); count[p.Part.Label] != n {
				t.Errorf("%s: %s is sawn %d times of %d", d[0], p.Part.Label, count[p.Part.Label], n)
			}
		}
		for name := range count {
			if !whole[name] {
				t.Errorf("%s: %s is no part that is sawn", d[0], name)
			}
		}
	}
}

// The chains of a part's sizes, by hand from ISO 286 (testdata/published/fit.tsv has the classes):
// 12 H7 is 12 to 12.018 and 12 p7 12.018 to 12.036; 8 f7 is 7.972 to 7.987 and 8 H7 8 to 8.015. Wheels of 44 and
// 22 teeth of module 0.8 run at (44 + 22) / 2 × 0.8 = 26.4 mm.
func TestMates(t *testing.T) {
	md := made(t, checked(t, archive(t, "recipes/tellurion", "recipes/shops/club"), "recipes/tellurion", "recipes/shops/club"), false).Markdown()
	for _, want := range []string{
		"| fit.bush in arm | bush.outside.body.diameter 12 p7 (12.018 to 12.036) in arm.hole.bush.diameter 12 H7 (12 to 12.018) | interference 0 to 0.036 | H7/p7 |",
		"| fit.shaft in bush | pinion.outside.shaft.diameter 8 f7 (7.972 to 7.987) in bush.hole.bore.diameter 8 H7 (8 to 8.015) | clearance 0.013 to 0.043 | H7/f7 |",
		"| mesh.sun and earth | wheel.teeth.rim with pinion.teeth.rim | axes 26.4 apart at the pitch circles; as drawn 26.43 to 26.47 |",
	} {
		if n := strings.Count(md, want); n != 2 { // on the pages of both parts
			t.Errorf("%d times on the sheet: %s", n, want)
		}
	}
}
