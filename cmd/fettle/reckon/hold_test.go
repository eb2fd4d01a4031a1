package reckon

import (
	"strings"
	"testing"

	"fettle/schema/text"
)

// Hostile contacts and loads are refused with a sentence, or answered; never a panic.
func TestHostileHolding(t *testing.T) {
	good := "0 0 0 0 0 1 0.1; 0 0 5 0 0 -1 0.1 clamp"
	for _, c := range []struct {
		contacts, load string
		status         int
	}{
		{good, "9 0 0 0 0 2", Answered},
		{good, "0 0 0 0 0 0", Answered},
		{"0 0 0 0 0 1 0.1", "9 0 0 0 0 2", No},
		{"", "9 0 0 0 0 2", NotUnderstood}, {good, "", NotUnderstood}, {";", ";", NotUnderstood}, {good + ";", "9 0 0 0 0 2", NotUnderstood},
		{"clamp", "9 0 0 0 0 2", NotUnderstood}, {good, "1e999999999 0 0 0 0 0", NotUnderstood}, {good, "NaN 0 0 0 0 0", NotUnderstood}, {good, "--9 0 0 0 0 0", NotUnderstood},
		{good, "9e9 0 0 0 0 0", NotUnderstood}, {"0 0 0 0 0 0 0.1", "9 0 0 0 0 2", NotUnderstood}, {"0 0 0 0 0 1 3", "9 0 0 0 0 2", NotUnderstood},
		{"0 0 0 0 0 1 0.1 of 9", "9 0 0 0 0 2", NotUnderstood}, {"0 0 0 0 0 1 0.1 of 1 on 1", "9 0 0 0 0 2", NotUnderstood}, {good + " of", "9 0 0 0 0 2", NotUnderstood},
		{good, "9 0 0 0 0 2 of 0", NotUnderstood}, {"0 0 0 0 0 1 0.1 \u202e", "9 0 0 0 0 2", NotUnderstood},
		{strings.Repeat("0 0 0 0 0 1 0.1;", 500), "9 0 0 0 0 2", NotUnderstood}, {good, strings.Repeat("9 0 0 0 0 2;", 500), NotUnderstood},
	} {
		page, status := ran(t, text.Archive{}, "hold", "contacts", "--contacts", c.contacts, "--load", c.load)
		if status != c.status {
			t.Errorf("%.60q with %.40q ends with %d: %s", c.contacts, c.load, status, page)
		}
		if status == NotUnderstood && len(page) > 1000 {
			t.Errorf("%.60q: %d bytes", c.contacts, len(page))
		}
	}
}
