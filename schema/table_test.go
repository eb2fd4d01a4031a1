package schema

import (
	"strings"
	"testing"
)

// Every row of the table is read into exactly one kind or attribute, with no word of its
// value left over.
func TestEveryRowIsRead(t *testing.T) {
	tab := theTable()
	for n, line := range strings.Split(strings.TrimRight(kindRows, "\n"), "\n")[1:] {
		f := strings.Split(line, "\t")
		k := tab.byName[f[1]]
		if k == nil {
			t.Errorf("line %d: kind %s is not read", n+2, f[1])
			continue
		}
		if f[2] == "" {
			continue
		}
		if f[2] == "NAME" {
			if f[1] != "rules_of_thumb" && k.free == nil {
				t.Errorf("%s takes no words of its own", f[1])
			}
			continue
		}
		a, ok := find(k.Attrs, f[2])
		if !ok || a.Value != f[3] || a.LeftOut != f[6] || len(a.Forms) == 0 {
			t.Errorf("line %d: %s.%s is not read as written", n+2, f[1], f[2])
		}
	}
}
