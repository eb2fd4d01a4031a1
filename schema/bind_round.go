package schema

import "fettle/schema/model"

// bindRound sorts the things of turning, dividing, heat and fastening into their structs.
func bindRound(s *model.Shop, i *model.Item) {
	switch i.Kind {
	case "chuck":
		s.Chucks = append(s.Chucks, bound[model.Chuck](i))
	case "centre":
		s.Centres = append(s.Centres, bound[model.Centre](i))
	case "steady":
		s.Steadies = append(s.Steadies, bound[model.Steady](i))
	case "mandrel":
		s.Mandrels = append(s.Mandrels, bound[model.Mandrel](i))
	case "carrier":
		s.Carriers = append(s.Carriers, bound[model.Carrier](i))
	case "split_bush":
		s.SplitBushes = append(s.SplitBushes, bound[model.SplitBush](i))
	case "nut":
		s.Nuts = append(s.Nuts, bound[model.Nut](i))
	case "bar_support":
		s.BarSupports = append(s.BarSupports, bound[model.BarSupport](i))
	case "faceplate":
		s.Faceplates = append(s.Faceplates, bound[model.Faceplate](i))
	case "angle_plate":
		s.AnglePlates = append(s.AnglePlates, bound[model.AnglePlate](i))
	case "v_block":
		s.VBlocks = append(s.VBlocks, bound[model.VBlock](i))
	case "balance_weights":
		s.Weights = append(s.Weights, bound[model.BalanceWeights](i))
	case "dividing_head":
		s.Heads = append(s.Heads, bound[model.DividingHead](i))
	case "dividing_plate":
		s.Plates = append(s.Plates, bound[model.DividingPlate](i))
	case "rotary_table":
		s.Tables = append(s.Tables, bound[model.RotaryTable](i))
	case "sine_bar":
		s.SineBars = append(s.SineBars, bound[model.SineBar](i))
	case "slip_gauges":
		s.SlipGauges = append(s.SlipGauges, bound[model.SlipGauges](i))
	case "furnace", "torch":
		s.Heats = append(s.Heats, bound[model.HeatSource](i))
	case "arbor_press":
		s.Presses = append(s.Presses, bound[model.ArborPress](i))
	case "power_saw", "hacksaw", "piercing_saw":
		s.Saws = append(s.Saws, bound[model.Saw](i))
	default:
		bindBought(s, i)
	}
}

func bindBought(s *model.Shop, i *model.Item) {
	switch i.Kind {
	case "screws":
		s.Screws = append(s.Screws, bound[model.Screws](i))
	case "pins":
		s.Pins = append(s.Pins, bound[model.Pins](i))
	case "bearings":
		s.Bearings = append(s.Bearings, bindBearings(i))
	case "circlips":
		s.Circlips = append(s.Circlips, bound[model.Circlips](i))
	case "number_punches":
		s.Punches = append(s.Punches, bound[model.NumberPunches](i))
	}
}

// bindJoints fills what joins the parts of a build.
func bindJoints(b *model.Build) {
	for _, i := range b.Joints {
		switch i.Kind {
		case "fit":
			b.Fits = append(b.Fits, bound[model.Fit](i))
		case "mesh":
			b.Meshes = append(b.Meshes, bound[model.Mesh](i))
		case "stack":
			b.Stacks = append(b.Stacks, bound[model.Stack](i))
		case "screw":
			b.Screwed = append(b.Screwed, bound[model.ScrewJoint](i))
		case "assembly":
			b.Assemblies = append(b.Assemblies, bindAssembly(i))
		}
	}
}

// bindAssembly fills an assembly with its places and its work in the order written.
func bindAssembly(i *model.Item) *model.Assembly {
	a := bound[model.Assembly](i)
	for _, in := range i.Items {
		k := theTable().byName[in.Kind]
		switch {
		case k == nil:
		case k.Name == "place":
			a.Places = append(a.Places, bound[model.Place](in))
		case k.Where == "setup":
			a.Work = append(a.Work, bindSetUp(in))
		}
	}
	return a
}
