package rules

import (
	"testing"

	"fettle/schema/handbook"
	"fettle/schema/model"
)

// The table of heat and the rule about metals that stay soft say the same of every metal.
func TestHardeningAgrees(t *testing.T) {
	for _, m := range handbook.Metals() {
		mat, ok := handbook.Material(m.Name)
		if !ok {
			t.Fatalf("%s is no material", m.Name)
		}
		if soft := softAfterQuench(mat); soft != "" && m.Hardens() {
			t.Errorf("%s hardens by the table, and: %s", m.Name, soft)
		}
	}
	for _, name := range []string{"mild steel", "brass", "copper", "304"} {
		mat, _ := handbook.Material(name)
		if m, ok := handbook.HeatOf(mat); !ok || m.Hardens() || softAfterQuench(mat) == "" {
			t.Errorf("%s: %v %v", name, m, softAfterQuench(mat))
		}
	}
	if _, ok := handbook.HeatOf(model.Material{}); ok {
		t.Error("no metal has a row")
	}
}
