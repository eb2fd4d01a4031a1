package schema

import (
	"reflect"
	"slices"
	"testing"

	"fettle/schema/model"
)

// structKinds pairs each struct that is bound with the kinds it is bound from.
var structKinds = []struct {
	of    reflect.Type
	kinds []string
}{
	{reflect.TypeFor[model.Machine](), machineKinds},
	{reflect.TypeFor[model.Vise](), []string{"vise"}},
	{reflect.TypeFor[model.Parallels](), []string{"parallels"}},
	{reflect.TypeFor[model.Packing](), []string{"packing"}},
	{reflect.TypeFor[model.RoundBar](), []string{"round_bar"}},
	{reflect.TypeFor[model.SoftJaws](), []string{"soft_jaws"}},
	{reflect.TypeFor[model.Clamps](), []string{"clamps"}},
	{reflect.TypeFor[model.Holder](), holderKinds},
	{reflect.TypeFor[model.Collets](), []string{"collets"}},
	{reflect.TypeFor[model.Sleeve](), []string{"sleeve"}},
	{reflect.TypeFor[model.Cutter](), cutterKinds},
	{reflect.TypeFor[model.Instrument](), instrumentKinds},
	{reflect.TypeFor[model.Stock](), []string{"stock"}},
	{reflect.TypeFor[model.Chuck](), []string{"chuck"}},
	{reflect.TypeFor[model.Centre](), []string{"centre"}},
	{reflect.TypeFor[model.Steady](), []string{"steady"}},
	{reflect.TypeFor[model.Mandrel](), []string{"mandrel"}},
	{reflect.TypeFor[model.Carrier](), []string{"carrier"}},
	{reflect.TypeFor[model.SplitBush](), []string{"split_bush"}},
	{reflect.TypeFor[model.Nut](), []string{"nut"}},
	{reflect.TypeFor[model.BarSupport](), []string{"bar_support"}},
	{reflect.TypeFor[model.Faceplate](), []string{"faceplate"}},
	{reflect.TypeFor[model.AnglePlate](), []string{"angle_plate"}},
	{reflect.TypeFor[model.VBlock](), []string{"v_block"}},
	{reflect.TypeFor[model.BalanceWeights](), []string{"balance_weights"}},
	{reflect.TypeFor[model.DividingHead](), []string{"dividing_head"}},
	{reflect.TypeFor[model.DividingPlate](), []string{"dividing_plate"}},
	{reflect.TypeFor[model.RotaryTable](), []string{"rotary_table"}},
	{reflect.TypeFor[model.SineBar](), []string{"sine_bar"}},
	{reflect.TypeFor[model.SlipGauges](), []string{"slip_gauges"}},
	{reflect.TypeFor[model.HeatSource](), []string{"furnace", "torch"}},
	{reflect.TypeFor[model.ArborPress](), []string{"arbor_press"}},
	{reflect.TypeFor[model.Saw](), []string{"power_saw", "hacksaw", "piercing_saw"}},
	{reflect.TypeFor[model.Screws](), []string{"screws"}},
	{reflect.TypeFor[model.Pins](), []string{"pins"}},
	{reflect.TypeFor[model.Bearings](), []string{"bearings"}},
	{reflect.TypeFor[model.Circlips](), []string{"circlips"}},
	{reflect.TypeFor[model.NumberPunches](), []string{"number_punches"}},
	{reflect.TypeFor[model.Fit](), []string{"fit"}},
	{reflect.TypeFor[model.Mesh](), []string{"mesh"}},
	{reflect.TypeFor[model.Stack](), []string{"stack"}},
	{reflect.TypeFor[model.ScrewJoint](), []string{"screw"}},
	{reflect.TypeFor[model.Assembly](), []string{"assembly"}},
	{reflect.TypeFor[model.Place](), []string{"place"}},
	{reflect.TypeFor[model.Part](), []string{"part"}},
	{reflect.TypeFor[model.Blank](), []string{"blank"}},
	{reflect.TypeFor[model.FaceRule](), []string{"face"}},
	{reflect.TypeFor[model.Feature](), featureKinds()},
	{reflect.TypeFor[model.SetUp](), []string{"setup", "square_up", "bench", "heat"}},
	{reflect.TypeFor[model.Step](), []string{"operation", "deburr", "measure", "mark", "shift"}},
	{reflect.TypeFor[model.Made](), []string{"made"}},
	{reflect.TypeFor[model.Concession](), []string{"concession"}},
	{reflect.TypeFor[model.HouseRule](), []string{"house_rule"}},
}

func featureKinds() []string {
	var out []string
	for _, k := range theTable().kinds {
		if k.Where == "feature" && k.Label != sharedRows && k.Name != "face" {
			out = append(out, k.Name)
		}
	}
	return out
}

// filledByHand are the fields that no attribute fills by name.
var filledByHand = []string{
	"Part.Blank", "Part.Faces", "Part.Features", "Part.Work", "SetUp.Steps", "HouseRule.When",
	"Assembly.Places", "Assembly.Work",
}

// takesTheWhole are the fields that hold a value not written as an object.
var takesTheWhole = []string{
	"Backlash.Bare", "Backlash.X", "Backlash.Y", // X and Y only of a lathe, whose row has no members
	"Bought.As", "Bought.Yes", "DownTo.Depth", "DownTo.Face", "MeasuredSize.Of",
	"Soft.Of", "ParallelsAt.Height", "ParallelsAt.Of", "RoundBarAt.Diameter", "RoundBarAt.Of",
	"Index.Angles", "Index.Bare", "StockLimits.Class", "StockLimits.Sizes", "TeeSlots.Bare", "Zero.Kept",
}

// Every field of every bound struct is a row of the table for at least one of its kinds,
// and the row can be written as what the field holds.
func TestEveryFieldIsARow(t *testing.T) {
	for _, s := range structKinds {
		seen := map[string]bool{}
		wholes := map[string]bool{}
		for _, name := range s.kinds {
			k := theTable().byName[name]
			if k == nil {
				t.Fatalf("no kind %s", name)
			}
			see(s.of, planOf(s.of, k), seen, wholes)
		}
		for _, f := range fieldsOf(s.of) {
			switch {
			case seen[f], slices.Contains(filledByHand, f):
			case wholes[f] && slices.Contains(takesTheWhole, f):
			default:
				t.Errorf("%s is no row of %v", f, s.kinds)
			}
		}
	}
}

// see notes the fields of a plan that an attribute fills, and those that take a whole value.
func see(t reflect.Type, p *plan, seen, wholes map[string]bool) {
	for _, fp := range p.fields {
		f := t.Field(fp.at)
		name := t.Name() + "." + f.Name
		switch fp.how {
		case fillKnown:
			seen[name] = seen[name] || fp.attr != nil
		case fillWhole:
			wholes[name] = true
		case fillEmbedded, fillObject:
			if fp.how == fillEmbedded || fp.attr != nil {
				see(f.Type, fp.within, seen, wholes)
			}
		case fillObjects:
			if fp.attr != nil {
				see(f.Type.Elem(), fp.within, seen, wholes)
			}
		}
	}
}

// fieldsOf lists the fields that hold a value, through structs within structs.
func fieldsOf(t reflect.Type) []string {
	var out []string
	for n := range t.NumField() {
		f := t.Field(n)
		_, isKnown := fillers()[f.Type]
		switch {
		case f.Type == blockType, f.Name == "Said":
		case isKnown:
			out = append(out, t.Name()+"."+f.Name)
		case f.Type.Kind() == reflect.Struct:
			out = append(out, fieldsOf(f.Type)...)
		case f.Type.Kind() == reflect.Slice && f.Type.Elem().Kind() == reflect.Struct:
			out = append(out, fieldsOf(f.Type.Elem())...)
		default:
			out = append(out, t.Name()+"."+f.Name)
		}
	}
	return out
}

// Every thing of a shop that has a struct is found by a kind that the table has.
func TestFamiliesAreKinds(t *testing.T) {
	for _, names := range [][]string{cutterKinds, instrumentKinds, settingKinds, machineKinds, holderKinds} {
		for _, n := range names {
			if k := theTable().byName[n]; k == nil || k.Where != "shop" {
				t.Errorf("%s is no thing of a shop", n)
			}
		}
	}
}
