package choose_test

import (
	"strings"
	"testing"

	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// chosenIn gives what is chosen in a recipe by what it is and its item.
func chosenIn(t *testing.T, recipe, shop string) map[string]string {
	t.Helper()
	b, slips, err := schema.Load(withClub(t, text.Archive{"r/recipe.hcl": []byte(recipe)}), "r", shop)
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips)
	}
	_, _, list := choose.Choose(b, choose.Effort)
	out := map[string]string{}
	for _, c := range list {
		out[strings.TrimPrefix(c.Spot.SetUp, "setup ")+"/"+c.What] = c.Item
	}
	return out
}

// Of work between centres under a mill the head, its carrier and the end at the head are chosen, and stand
// on the list; what is written does not.
func TestBetweenCentresIsListed(t *testing.T) {
	recipe := strings.Replace(betweenCentres, "makes = flat.key", "makes = flat.key\n      tool  = end_mill.four[16]", 1)
	got := chosenIn(t, recipe, "recipes/shops/club")
	for what, want := range map[string]string{"head": "dividing_head.", "driver": "carrier.", "end held": "left"} {
		if item := got["flat/"+what]; !strings.HasPrefix(item, want) {
			t.Errorf("%s: %q is listed, not %s", what, item, want)
		}
	}
	written := strings.Replace(recipe, `    hold    = "centres"`, `    hold    = "centres"
    driver  = `+got["flat/driver"]+`
    end     = "left"`, 1)
	got = chosenIn(t, written, "recipes/shops/club")
	for _, what := range []string{"driver", "end"} {
		if item, ok := got["flat/"+what]; ok {
			t.Errorf("%s %s is listed as chosen, and it is written", what, item)
		}
	}
}

// Between centres on a lathe the carrier is chosen; of a set of tools that is written whole the member is,
// and of a set of taps the one that is used.
func TestMembersAreListed(t *testing.T) {
	recipe := `recipe "members" {
  units = "mm"
}

part "plate" {
  material = "brass"
  length   = 40
  width    = 20
  height   = 12

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "screw" {
    into   = "top"
    at     = [10, 10]
    thread = { size = "M5" }
  }

  setup "drill" {
    machine = mill.upright
    hold    = vise.machine
    operation {
      makes = hole.screw
      tool  = drill.jobbers
    }
    operation {
      makes = hole.screw.thread
      tool  = tap.metric
    }
  }
}
`
	got := chosenIn(t, recipe, "recipes/shops/club")
	if item := got["drill/tap"]; item != "taper" {
		t.Errorf("tap: %q is listed", item)
	}
	if item := got["drill/tool"]; !strings.Contains(item, "[") {
		t.Errorf("tool: %q is listed, no member of a set", item)
	}
}
