package reckon

import (
	"fmt"
	"strings"
	"testing"

	"fettle/schema/text"
)

const shed = `shop "shed" {
  units = "in"
}

lathe "round" {
  lead_screw = "8 tpi"
  wheels     = [20, 20, 30]
  tailstock  = { travel = 2 }
}

dividing_head "big" {
  ratio  = 40
  plates = [dividing_plate.one]
}

dividing_head "small" {
  ratio = 60
}

dividing_plate "one" {
  circles = [15, 16, 17, 18, 19, 20]
}

dividing_plate "two" {
  circles = [21, 23]
  state   = "lent out"
}

drill "few" {
  diameter = [0.125, 0.25]
}

drill "one" {
  diameter = 0.5
}

rules_of_thumb {
  room = 2
}
`

var trying = Subject{Name: "trying", Flags: []Want{{Name: "ratio", Kind: Number}, {Name: "circles", Kind: Wholes}, {Name: "drills", Kind: Sizes}, {Name: "pitch", Kind: Pitch}}}

func atShed(t *testing.T, args ...string) Ask {
	t.Helper()
	a, err := trying.ask(append(args, "--shop", "shed"))
	if err != nil {
		t.Fatal(err)
	}
	if note, err := a.open(text.Archive{"shed/shop.hcl": []byte(shed)}); err != nil || note != "" {
		t.Fatal(note, err)
	}
	return a
}

// A figure comes from its flag, else from the things of the shop that are here, and says which;
// two things that say it are a question back.
func TestFrom(t *testing.T) {
	a := atShed(t)
	if f, ok, err := a.ExactFrom("ratio", "ratio", "dividing_head"); ok || err == nil || err.Error() !=
		"the shop has dividing_head.big and dividing_head.small: pick one with --with dividing_head.big, or say --ratio" {
		t.Error(f, ok, err)
	}
	if f, ok, err := a.ExactFrom("pitch", "lead_screw", "lathe"); !ok || err != nil || f.V.RatString() != "127/40" || f.From != "lathe.round of shed" {
		t.Error(f, ok, err)
	}
	if f, ok, err := a.ExactFrom("pitch", "tailstock.travel", "lathe"); !ok || err != nil || f.V.RatString() != "254/5" {
		t.Error(f, ok, err)
	}
	if _, ok, err := a.ExactFrom("pitch", "swing", "lathe"); ok || err != nil {
		t.Error("a figure that nobody said", err)
	}
	if c := a.WholesFrom("circles", "circles", "dividing_plate"); len(c) != 1 || fmt.Sprint(c[0].V) != "[15 16 17 18 19 20]" || c[0].From != "dividing_plate.one of shed" {
		t.Errorf("circles: %+v", c)
	}
	if c := a.WholesFrom("circles", "wheels", "lathe"); len(c) != 1 || fmt.Sprint(c[0].V) != "[20 20 30]" {
		t.Errorf("wheels: %+v", c)
	}
	d := a.SizesFrom("drills", "diameter", "drill")
	if len(d) != 2 || !d[0].V.Has(3.175) || !d[1].V.Has(12.7) || d[1].From != "drill.one of shed" {
		t.Errorf("drills: %+v", d)
	}
	if x, ok := a.Thumb("room"); !ok || x != 50.8 {
		t.Errorf("room: %v %v", x, ok)
	}

	a = atShed(t, "--ratio", "5/2", "--circles", "7", "--drills", "5")
	if f, ok, err := a.ExactFrom("ratio", "ratio", "dividing_head"); !ok || err != nil || f.V.RatString() != "5/2" || f.From != "--ratio" || f.Item != nil {
		t.Error(f, ok, err)
	}
	if c := a.WholesFrom("circles", "circles", "dividing_plate"); len(c) != 1 || c[0].From != "--circles" {
		t.Errorf("circles: %+v", c)
	}
	if d := a.SizesFrom("drills", "diameter", "drill"); len(d) != 1 || d[0].From != "--drills" {
		t.Errorf("drills: %+v", d)
	}

	a = atShed(t, "--with", "dividing_head.small, drill.one")
	if f, ok, err := a.ExactFrom("ratio", "ratio", "dividing_head"); !ok || err != nil || f.V.RatString() != "60" {
		t.Error(f, ok, err)
	}
	if d := a.Things("drill"); len(d) != 1 || d[0].Label != "one" {
		t.Errorf("drills: %v", d)
	}
	if d := a.Things("dividing_plate"); len(d) != 1 {
		t.Errorf("plates: %v", d)
	}
}

// Without a shop there are no things, and the limits of judgement are those of the language.
func TestNoShop(t *testing.T) {
	a, err := trying.ask(nil)
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := a.Shop(); ok || len(a.Things("drill")) > 0 || len(a.WholesFrom("circles", "circles", "dividing_plate")) > 0 {
		t.Error("there are things without a shop")
	}
	if _, ok := a.Thumb("room"); !ok {
		t.Error("no limit of judgement")
	}
}

// Everything of a shop is a folder like any other: one that cannot be read has a sentence.
func TestShopUnread(t *testing.T) {
	for folder, says := range map[string]string{
		"recipe":  "recipe is a recipe; a shop is wanted here",
		"empty":   "no file in empty has a shop block",
		"nowhere": "there is no folder nowhere",
		"bad":     "bad/a.hcl line 1: ",
	} {
		files := text.Archive{"recipe/a.hcl": []byte("recipe \"x\" {\n  units = \"mm\"\n}\n"), "empty/a.hcl": []byte("\n"), "bad/a.hcl": []byte("shop {{{\n")}
		if _, err := openShop(files, folder); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", folder, err)
		}
	}
}
