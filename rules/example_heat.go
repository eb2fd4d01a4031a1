package rules

import "fettle/eval"

// exampleBlock is a drilled block of some metal, with more work after the drilling.
func exampleBlock(metal, work string) string {
	return replaced(replaced(exampleHole(), `material = "brass"`, `material = "`+metal+`"`), `      makes = hole.pin
    }
  }
}`, `      makes = hole.pin
    }
  }
`+work+`}`)
}

// exampleHeats writes heat blocks one after the other, each with its attributes.
func exampleHeats(heats ...string) string {
	s := ""
	for n, h := range heats {
		s += "\n  heat \"" + string(rune('a'+n)) + "\" {\n" + h + "  }\n"
	}
	return s
}

// heatName is what a heat is called in a sentence: "heat.harden".
func heatName(h *eval.Heating) string { return h.SetUp.Kind + "." + h.SetUp.Label }
