package model

import (
	"math"
	"testing"

	"fettle/schema/drawing"
)

func TestMembersAreNamedAsTheirShopWritesThem(t *testing.T) {
	mm := &Item{Kind: "drill", Label: "jobbers"}
	in := &Item{Kind: "drill", Label: "fractions", Unit: drawing.Inch}
	for _, c := range []struct {
		of   *Item
		size float64
		want string
	}{
		{mm, 7.8, "drill.jobbers[7.8]"},
		{in, 7.9375, "drill.fractions[inch(5/16)]"},
		{in, 25.4, "drill.fractions[inch(1)]"},
		{in, 38.1, "drill.fractions[inch(1 + 1/2)]"},
		{in, 25.4 / 64, "drill.fractions[inch(1/64)]"},
		{in, 0.035 * 25.4, "drill.fractions[inch(0.035)]"},
		{in, 8, "drill.fractions[inch(0.31496)]"},
		{nil, 8, ""},
	} {
		if got := c.of.Member(c.size); got != c.want {
			t.Errorf("%v mm is %s, not %s", c.size, got, c.want)
		}
	}
}

func TestInchesOfNoReason(t *testing.T) {
	for mm, want := range map[float64]string{0: "0", -0.000001: "0", -25.4: "-1", 1e300: "", math.Inf(1): "+Inf"} {
		if got := Inches(mm); want != "" && got != want {
			t.Errorf("%v mm is %q, not %q", mm, got, want)
		}
	}
}
