package choose_test

import (
	"regexp"
	"strings"
	"testing"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// Law 3 over generated recipes, turned and milled: the names of the files, and with them their
// order, do not matter.
func TestOrderOfFilesAlikeTurned(t *testing.T) {
	for seed := range int64(2) {
		files, _ := generated(seed, 32)
		turned := text.Archive{}
		for name, b := range files {
			n := strings.TrimPrefix(name, "r/")
			turned["r/"+reversed(strings.TrimSuffix(n, ".hcl"))+".hcl"] = b
		}
		if a, b := clubTold(t, files), clubTold(t, turned); a != b {
			t.Errorf("seed %d, as it is:\n%s\nin other files:\n%s", seed, a, b)
		}
	}
}

var millimetres = regexp.MustCompile(`\bunits = "mm"`)

// Law 1 for turned work: sizes that carry their unit come to the same under either unit of the
// head.
func TestUnitOfHeadAlikeTurned(t *testing.T) {
	w := `part "pin" {
  material = "silver steel"
  diameter = "5 mm"
  length = "40 mm"
  blank {
    over = { left = "1 mm", right = "1 mm" }
  }
  face "outside" {
    raw = true
  }
  setup "a" {
    end = "left"
    stick_out = "10 mm"
    operation {
      makes = face.right
    }
  }
}
`
	head := "recipe \"r\" {\n  units = \"mm\"\n}\n"
	mm := clubTold(t, text.Archive{"r/a.hcl": []byte(head + w)})
	in := clubTold(t, text.Archive{"r/a.hcl": []byte(millimetres.ReplaceAllString(head, `units = "in"`) + w)})
	if mm != in || mm == "" {
		t.Errorf("in mm:\n%s\nin inches:\n%s", mm, in)
	}
}

func reversed(s string) string {
	b := []byte(s)
	for i, j := 0, len(b)-1; i < j; i, j = i+1, j-1 {
		b[i], b[j] = b[j], b[i]
	}
	return string(b)
}

// clubTold checks a recipe in the club's shop.
func clubTold(t *testing.T, files text.Archive) string {
	t.Helper()
	b, slips, err := schema.Load(withClub(t, files), "r", "recipes/shops/club")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips)
	}
	tr, vs, _ := choose.Choose(b, choose.Effort)
	return told(rules.Judge(tr, vs, "").Findings, nil)
}
