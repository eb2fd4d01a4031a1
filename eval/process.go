package eval

import "fettle/schema/model"

// Process names a process as the tables of cutting speeds do.
func Process(by string, cu *model.Cutter) string {
	switch by {
	case "sawing":
		return "slitting_saw"
	case "drilling", "spotting", "centring", "counterboring", "countersinking":
		return "drilling"
	case "reaming":
		return "reaming"
	case "boring":
		return "turning"
	case "tapping":
		return "tapping_machine"
	}
	if cu != nil && cu.Kind == "slitting_saw" {
		return "slitting_saw"
	}
	return "milling"
}
