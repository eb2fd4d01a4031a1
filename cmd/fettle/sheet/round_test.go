package sheet

import (
	"strings"
	"testing"

	"fettle/rules"
	"fettle/schema/text"
)

// roundWork is a shaft with grooves whose sizes a standard has, turned between centres.
const roundWork = `recipe "example" {
  units   = "mm"
  general = "ISO 2768-m"
}

part "shaft" {
  material = "mild steel"
  diameter = 20
  length   = 60

  blank {
    over = { left = 0, right = 0, outside = 1 }
  }

  outside "end" {
    from     = 30
    diameter = 16
  }
  groove "clip" {
    on   = outside.end
    at   = 50
    form = "circlip"
  }
  groove "relief" {
    on   = outside.end
    from = 30
    form = "thread undercut"
  }
  groove "vee" {
    on    = "outside"
    at    = 10
    form  = "vee"
    angle = 60
    depth = 1.5
  }
  groove "plain" {
    on    = "outside"
    at    = 20
    width = 4
    depth = 1
  }
  thread "end" {
    on       = outside.end
    size     = "M16x1.5"
    class    = "6g"
    from     = 30
    to       = 46
    undercut = groove.relief
  }
  keyway "key" {
    into = outside.end
    from = 52
    to   = 58
  }

  setup "turn" {
    machine = lathe.centre
    hold    = "centres"
    driver  = carrier.bent
    end     = "left"

    operation {
      makes = outside.end
    }
    operation {
      makes = groove.relief
    }
    operation {
      makes = thread.end
      tool  = threading_tool.metric
    }
  }
}

carrier "bent" {
  bars  = [4, 40]
  swing = 110
}
`

// No jaws stand between centres, so lengths count from the end at the headstock; what a standard gives has its limits, and
// what it does not give is told with the size that the recipe gives.
func TestRoundWork(t *testing.T) {
	page := made(t, checked(t, text.Archive{"r/r.hcl": []byte(roundWork), "s/s.hcl": []byte(rules.ExampleShop)}, "r", "s"), false).Markdown()
	for _, says := range []string{
		"| at the headstock | left |", "| measured from | its end at the headstock, towards the tailstock |", "from its end at the headstock: 30 to 60 mm",
		"| ☐ | carrier.bent | turns the work |",
		"| groove.clip, diameter | 15.2 h11 | 15.09 to 15.2 |", "| groove.clip, width | 1.1 H13 | 1.1 to 1.24 |", // DIN 471, from memory
		"| groove.relief, diameter | 13.7 h13 | 13.43 to 13.7 |", "| groove.relief, width | 3.2..5.2 | 3.2 to 5.2 |", // DIN 76-1, from memory
		"| groove.vee, depth | 1.5 | 1.4 to 1.6 |", "| groove.plain, depth | 1 | 0.9 to 1.1 |",
		"| keyway.key, width | 5 N9 | 4.97 to 5 |", "| keyway.key, depth | 3 +0.1/0 | 3 to 3.1 |", // DIN 6885-1, from memory
		"thread deep: 0.92 mm on the radius", // 17/24 of the height of the triangle: ISO 68-1
	} {
		if !strings.Contains(page, says) {
			t.Errorf("the sheet does not say %q", says)
		}
	}
	for _, not := range []string{"jaw face", "groove.vee, width"} {
		if strings.Contains(page, not) {
			t.Errorf("the sheet says %q", not)
		}
	}
}
