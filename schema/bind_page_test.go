package schema

import (
	"slices"
	"testing"

	"fettle/schema/model"
)

// Both examples of the page that describes the language, in structs.
func TestBindExamplesOfThePage(t *testing.T) {
	folder, _ := pageExamples(t)
	b, _, err := Load(folder, "tellurion")
	if err != nil {
		t.Fatal(err)
	}
	shopOfThePage(t, &b.Shop)
	recipeOfThePage(t, b)
}

func shopOfThePage(t *testing.T, shop *model.Shop) {
	mill, vise, pair, arbor := shop.Machines[0], shop.Vises[0], shop.Parallels[0], shop.Holders[0]
	if mill.Taper.V.String() != "MT3" || len(mill.Drawbars.V) != 1 || mill.Drawbars.V[0].String() != "M12" ||
		!slices.Equal(mill.Speeds.V.List, []float64{120, 220, 400, 700, 1300, 2400}) || !slices.Equal(mill.NoseToTable.V, []float64{40, 230}) {
		t.Errorf("mill %+v", mill)
	}
	isKnown(t, "column", mill.Column, "dovetail", model.Written)
	isKnown(t, "backlash.y", mill.Backlash.Y, 0.15, model.Written)
	isNotKnown(t, "reverse", mill.Reverse)
	isKnown(t, "jaw_depth", vise.JawDepth, 18, model.Written)
	isNotKnown(t, "force", vise.Force)
	if !pair.Heights.V.Has(14) || pair.Heights.V.Has(15) {
		t.Errorf("parallels %+v", pair.Heights)
	}
	if c := arbor.Clamp; c.Thread.V.String() != "M14x1.5 LH" || c.By.V != "nut" || c.Length.V != 14 || arbor.Tail.V.Thread.String() != "M12" || arbor.Shank.V.Taper.String() != "MT3" {
		t.Errorf("arbor %+v", arbor)
	}
	var names []string
	for _, c := range shop.Cutters {
		names = append(names, c.Path())
	}
	if !slices.Equal(names, []string{"drill.jobbers", "reamer.machine", "slitting_saw.fine"}) {
		t.Errorf("cutters %q", names)
	}
	isKnown(t, "teeth", shop.Cutters[2].Teeth, 100, model.Written)
	isKnown(t, "point", shop.Cutters[0].Point, 118, model.Standing)
	// the older standard for micrometers allows 4 um from 0 to 25 mm (DIN 863-1)
	isKnown(t, "error", shop.Instruments[0].Error, 0.004, model.Handbook)
	if s := shop.Stock[0]; s.Flat.Width.V.Nominal != 20 || !slices.Equal(s.Lengths.V, []float64{310, 95}) || !s.Material.Is() {
		t.Errorf("stock %+v", s)
	}
}

func recipeOfThePage(t *testing.T, b *model.Build) {
	shop, clamp, vise := &b.Shop, b.Parts[0], b.Shop.Vises[0]
	if b.Recipe.General.Class != "m" || clamp.Length.V.Tol.Hi != 0.1 || clamp.Width.V.Nominal != 16 || clamp.Height.V.Tol.Lo != -0.05 {
		t.Errorf("part %+v, general %+v", clamp, b.Recipe.General)
	}
	if bl := clamp.Blank; bl.Stock.V.Item != shop.Stock[0].Item || bl.Over.Top.V != 1.5 || bl.Skin.Right.V != "sawn" || bl.Skin.Top.Is() {
		t.Errorf("blank %+v", bl)
	}
	hole, slit := clamp.Features[0], clamp.Features[1]
	if hole.Into.V.Face != model.Top || hole.Diameter.V.Tol.Letters != "H7" || len(hole.At.V) != 1 || len(hole.At.V[0].Coords) != 2 || !hole.Depth.V.Through || hole.Depth.From != model.Chosen {
		t.Errorf("hole %+v, %+v, %+v", hole.Into, hole.At, hole.Depth)
	}
	if slit.Into.V.Face != model.Left || slit.Width.V.Nominal != 0.8 || slit.Depth.V.Size.Nominal != 8 {
		t.Errorf("slit %+v", slit)
	}
	squareUp, bore, split := clamp.Work[0], clamp.Work[1], clamp.Work[2]
	if squareUp.Hold.V[0].Item != vise.Item || squareUp.RoundBar.Diameter.V != 6 {
		t.Errorf("square_up %+v", squareUp)
	}
	if bore.Up.V.Face != model.Top || bore.Jaws.V[0].Face != model.Back || bore.Parallels.Height.V != 10 || bore.Grip.Is() {
		t.Errorf("setup bore %+v", bore)
	}
	if st := bore.Steps; st[0].To.V.Size.Nominal != 7.8 || st[0].Makes.V[0].Item != hole.Item || !st[1].Tool.V[0].Has || st[3].With.V[0].Item != shop.Instruments[0].Item || !st[3].TakenOut.V {
		t.Errorf("steps %+v", st)
	}
	if split.Grip.V != 6 || split.Along.V != 10 || split.Steps[0].Tool.V[0].Item != shop.Cutters[2].Item {
		t.Errorf("setup split %+v", split)
	}
	if b.Made[0].Size.V != 8.012 || b.Excused[0].Until.V != "2027-01-31" || b.House[0].Level.V != "danger" || b.House[0].When == nil {
		t.Errorf("records %+v %+v %+v", b.Made[0], b.Excused[0], b.House[0])
	}
}
