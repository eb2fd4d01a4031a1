package sheet

import (
	"strings"
	"testing"

	"fettle/rules"
	"fettle/schema/text"
)

// between is a pin that is turned on a lathe of its own; HOLD is how.
const between = `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = 20
  length   = 60

  blank {
    over = { left = 1, right = 1, outside = 1 }
  }

  outside "waist" {
    from     = 40
    diameter = 16
  }

  setup "turn" {
    machine = lathe.own
    HOLD
    end     = "left"

    operation {
      makes = outside.waist
    }
  }
}

lathe "own" {
  swing            = 250
  swing_over_slide = 150
  bore             = 26
  nose             = "M39x4"
  nose_lock        = LOCK
  brake            = true
  tool_height      = 18
  speeds           = [60, 100, 160, 260, 420, 680, 1100]
  as_of            = "2024-05-01"
}

carrier "tail" {
  bars  = [4, 40]
  swing = 110
}

centre "dead" {
  shank = "MT2"
  live  = LIVE
  out   = 60
}

balance_weights "lead" {
  masses = [0.2, 0.5]
}

bar_support "stand" {
  bars = [6, 30]
}
`

// What a shop says of its things stands on the sheet, and does not where it says otherwise or nothing.
func TestThingsAtTheMachine(t *testing.T) {
	const chuck = "hold = chuck.three\n    grip = 20"
	for _, c := range []struct {
		hold, live, lock string
		says, not        string
	}{
		{`hold = "centres"`, "false", "false", "| driven by | carrier.tail, whose tail sweeps ⌀110 mm |", ""},
		{chuck, "false", "false", "", "driven by"},
		{chuck + "\n    support = { by = centre.dead, at = \"right\" }", "false", "false", "stands still: grease its point", ""},
		{chuck + "\n    support = { by = centre.dead, at = \"right\" }", "true", "false", "| its centre | turns with the work |", "grease"},
		{chuck, "false", "false", "brake gently, or let it run out: chuck.three is screwed on without a lock", ""},
		{chuck, "false", "true", "", "brake gently"},
		{chuck + "\n    balance = balance_weights.lead", "false", "false", `| balanced by | balance\_weights.lead (0.2 kg, 0.5 kg) |`, ""},
		{chuck + "\n    behind = bar_support.stand", "false", "false", `| behind the spindle | bar\_support.stand |`, ""},
		{chuck, "false", "false", "the axis lies 18 mm above the seat of the tool post", "behind the spindle"},
		{chuck, "false", "false", "Older figures: lathe.own of 2024-05-01.", ""},
	} {
		recipe := strings.NewReplacer("HOLD", c.hold, "LIVE", c.live, "LOCK", c.lock).Replace(between)
		page := made(t, checked(t, text.Archive{"r/r.hcl": []byte(recipe), "s/s.hcl": []byte(rules.ExampleShop)}, "r", "s"), false).Markdown()
		if !strings.Contains(page, c.says) {
			t.Errorf("%s, live %s, lock %s: the sheet does not say %q", c.hold, c.live, c.lock, c.says)
		}
		if c.not != "" && strings.Contains(page, c.not) {
			t.Errorf("%s, live %s, lock %s: the sheet says %q", c.hold, c.live, c.lock, c.not)
		}
	}
}

// The day of the shop's figures, and what wrench turns a tap, stand on the sheet where they are said.
func TestDayAndWrench(t *testing.T) {
	trip := rules.Find("tap-of-another-thread").Sound
	shop := strings.Replace(rules.ExampleShop, `  units = "mm"`, "  units = \"mm\"\n  as_of = \"2026-11-25\"", 1) + "\ntap_wrench \"tee\" {\n  swing = 180\n}\n"
	with := made(t, checked(t, text.Archive{"r/r.hcl": []byte(trip), "s/s.hcl": []byte(shop)}, "r", "s"), false).Markdown()
	without := made(t, checked(t, text.Archive{"r/r.hcl": []byte(trip), "s/s.hcl": []byte(rules.ExampleShop)}, "r", "s"), false).Markdown()
	for _, s := range []string{"It was last gone through on 2026-11-25.", `turned with: tap\_wrench.tee, whose handle sweeps ⌀180 mm`} {
		if !strings.Contains(with, s) || strings.Contains(without, s) {
			t.Errorf("%q: with it %v, without it %v", s, strings.Contains(with, s), strings.Contains(without, s))
		}
	}
}
