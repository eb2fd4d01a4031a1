package schema

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

// mkItem makes an item of attributes that are already read; every value stands at a place of
// its own.
func mkItem(kind, label string, attrs ...model.Attr) *model.Item {
	i := &model.Item{Kind: kind, Word: kind, Label: label, At: text.Place{File: kind + label, From: 1, To: 2}}
	for n, a := range attrs {
		a.Word = a.Name
		a.At = text.Place{File: kind + label, From: 10 * (n + 1), To: 10*(n+1) + 1}
		a.Value.At = text.Place{File: kind + label, From: 10*(n+1) + 3, To: 10*(n+1) + 4}
		i.Attrs = append(i.Attrs, a)
	}
	return i
}

func mkAttr(name string, v model.Value) model.Attr {
	return model.Attr{Name: name, Word: name, Value: v}
}

func vNum(x float64) model.Value         { return model.Value{Kind: model.Number, Num: x} }
func vWord(s string) model.Value         { return model.Value{Kind: model.Text, Text: s} }
func vYes(b bool) model.Value            { return model.Value{Kind: model.YesNo, Yes: b} }
func vTo(i *model.Item) model.Value      { return model.Value{Kind: model.RefTo, Ref: model.Ref{Item: i}} }
func vList(v ...model.Value) model.Value { return model.Value{Kind: model.List, List: v} }
func vObj(a ...model.Attr) model.Value   { return model.Value{Kind: model.Object, Object: a} }
func vThread(s string) model.Value {
	t, err := drawing.ParseThread(s)
	if err != nil {
		panic(err)
	}
	return model.Value{Kind: model.ThreadOf, Thread: t}
}
func vTaper(s string) model.Value {
	t, err := drawing.ParseTaper(s)
	if err != nil {
		panic(err)
	}
	return model.Value{Kind: model.TaperOf, Taper: t}
}
func vSize(s string) model.Value {
	d, err := drawing.ParseSize(s, drawing.Millimetre)
	if err != nil {
		panic(err)
	}
	return model.Value{Kind: model.SizeOf, Size: d}
}

func isKnown[T comparable](t *testing.T, what string, k model.Known[T], want T, from model.Origin) {
	t.Helper()
	if k.V != want || k.From != from {
		t.Errorf("%s: %v from %d, want %v from %d", what, k.V, k.From, want, from)
	}
}

func isNotKnown[T any](t *testing.T, what string, k model.Known[T]) {
	t.Helper()
	if k.Is() {
		t.Errorf("%s is known: %v", what, k.V)
	}
}

func TestBindArbor(t *testing.T) {
	i := mkItem("arbor", "stub",
		mkAttr("shank", vTaper("MT3")), mkAttr("tail", vThread("M12")), mkAttr("seat", vNum(16)), mkAttr("key", vYes(true)),
		mkAttr("seat_length", vList(vNum(1), vNum(12))),
		mkAttr("clamp", vObj(mkAttr("clamp.by", vWord("nut")), mkAttr("clamp.thread", vThread("M14x1.5 LH")), mkAttr("clamp.length", vNum(14)))))
	h := bound[model.Holder](i)
	if h.Item != i {
		t.Fatal("the block is not kept")
	}
	if h.Shank.V.Taper.Series != "MT" || h.Tail.V.Thread.Series != "M" || !h.Shank.Said() {
		t.Errorf("shank %+v, tail %+v", h.Shank, h.Tail)
	}
	isKnown(t, "seat", h.Seat, 16, model.Written)
	isKnown(t, "key", h.Key, true, model.Written)
	isKnown(t, "clamp.by", h.Clamp.By, "nut", model.Written)
	isKnown(t, "clamp.length", h.Clamp.Length, 14, model.Written)
	if !h.Clamp.Thread.V.Left || !h.Clamp.Said {
		t.Errorf("clamp %+v", h.Clamp)
	}
	if !slices.Equal(h.SeatLength.V, []float64{1, 12}) {
		t.Errorf("seat_length %v", h.SeatLength.V)
	}
	isNotKnown(t, "collar", h.Collar)
	isNotKnown(t, "clamp.washer_held", h.Clamp.WasherHeld)
	isKnown(t, "quantity", h.Quantity, 1, model.Standing)
	isKnown(t, "state", h.State, "here", model.Standing)
	if f := h.Clamp.WasherHeld.Fact(); f != "arbor.stub.clamp.washer_held" {
		t.Errorf("the fact is called %s", f)
	}
	if h.Collar.At != i.At || h.Seat.At != i.Attrs[2].Value.At {
		t.Errorf("collar at %v, seat at %v", h.Collar.At, h.Seat.At)
	}
	if f := h.Collar.Missing(); len(f) != 1 || f[0].Fact != "arbor.stub.collar" || f[0].At != i.At {
		t.Errorf("missing %v", f)
	}
}

func TestBindWholeOrObject(t *testing.T) {
	bare := bindMachine(mkItem("mill", "a", mkAttr("tee_slots", vNum(10)), mkAttr("backlash", vNum(0.15))))
	isKnown(t, "tee_slots", bare.TeeSlots.Width, 10, model.Written)
	isKnown(t, "backlash.x", bare.Backlash.X, 0.15, model.Written)
	isKnown(t, "backlash.y", bare.Backlash.Y, 0.15, model.Written)
	full := bindMachine(mkItem("mill", "b", mkAttr("tee_slots", vObj(mkAttr("width", vNum(12)))), mkAttr("backlash", vObj(mkAttr("backlash.y", vNum(0.2))))))
	isKnown(t, "tee_slots", full.TeeSlots.Width, 12, model.Written)
	isKnown(t, "backlash.y", full.Backlash.Y, 0.2, model.Written)
	isNotKnown(t, "backlash.x", full.Backlash.X)
	isNotKnown(t, "backlash", full.Backlash.Bare)
	isKnown(t, "spindle", full.Spindle, "upright", model.Standing)
	isNotKnown(t, "column", full.Column) // never taken for granted
	none := bindMachine(mkItem("mill", "c"))
	isNotKnown(t, "tee_slots", none.TeeSlots.Width)
	if f := none.TeeSlots.Bare.Fact(); f != "mill.c.tee_slots" {
		t.Errorf("the fact is called %s", f)
	}
	lathe := bindMachine(mkItem("lathe", "d", mkAttr("backlash", vNum(0.1))))
	isKnown(t, "backlash", lathe.Backlash.Bare, 0.1, model.Written)
	isNotKnown(t, "spindle", lathe.Spindle) // the word is a mill's
}

func TestBindSetUpForms(t *testing.T) {
	vise, pair, bar := mkItem("vise", "small"), mkItem("parallels", "thin"), mkItem("round_bar", "rods")
	jaws := mkItem("soft_jaws", "brass")
	s := bindSetUp(mkItem("setup", "bore",
		mkAttr("hold", vTo(vise)), mkAttr("up", vWord("top")), mkAttr("jaws", vList(vWord("back"), vWord("front"))),
		mkAttr("parallels", vNum(10)), mkAttr("round_bar", vTo(bar)), mkAttr("soft", vTo(jaws)), mkAttr("turned", vNum(90)),
		mkAttr("zero", vWord("kept")),
		mkAttr("packing", vObj(mkAttr("packing.left", vNum(25))))))
	if len(s.Hold.V) != 1 || s.Hold.V[0].Item != vise {
		t.Errorf("hold %+v", s.Hold)
	}
	if s.Up.V.Face != model.Top || len(s.Jaws.V) != 2 || s.Jaws.V[0].Face != model.Back {
		t.Errorf("up %+v, jaws %+v", s.Up, s.Jaws)
	}
	isKnown(t, "parallels", s.Parallels.Height, 10, model.Written)
	isNotKnown(t, "parallels", s.Parallels.Of)
	isNotKnown(t, "round_bar", s.RoundBar.Diameter)
	if s.RoundBar.Of.V.Item != bar || s.Soft.Of.V.Item != jaws || !s.Soft.Said {
		t.Errorf("round_bar %+v, soft %+v", s.RoundBar, s.Soft)
	}
	isKnown(t, "turned", s.Turned, 90, model.Written)
	isKnown(t, "zero", s.Zero.Kept, "kept", model.Written)
	if len(s.Packing) != 1 || s.Packing[0].Left.V != 25 || s.Packing[0].Right.Is() {
		t.Errorf("packing %+v", s.Packing)
	}
	t2 := bindSetUp(mkItem("setup", "again",
		mkAttr("hold", vList(vTo(mkItem("v_block", "pair")), vTo(vise))), mkAttr("parallels", vTo(pair)),
		mkAttr("zero", vObj(mkAttr("zero.x", vWord("left")), mkAttr("zero.by", vTo(mkItem("edge_finder", "a"))))),
		mkAttr("soft", vObj(mkAttr("soft.depth", vNum(2)))),
		mkAttr("clamps", vList(vObj(mkAttr("clamps.tip", vNum(12)), mkAttr("clamps.on", vWord("top"))), vObj(mkAttr("clamps.tip", vNum(14)))))))
	if len(t2.Hold.V) != 2 || t2.Parallels.Of.V.Item != pair || t2.Parallels.Height.Is() {
		t.Errorf("hold %+v, parallels %+v", t2.Hold, t2.Parallels)
	}
	if t2.Zero.X.V.Face != model.Left || t2.Zero.Kept.Is() || t2.Zero.Y.Is() || !t2.Zero.By.Is() {
		t.Errorf("zero %+v", t2.Zero)
	}
	isKnown(t, "soft.step", t2.Soft.Step, 0, model.Standing) // as it stands once the object is written
	if len(t2.Clamps) != 2 || t2.Clamps[1].Tip.V != 14 || t2.Clamps[0].On.V.Face != model.Top {
		t.Errorf("clamps %+v", t2.Clamps)
	}
	none := bindSetUp(mkItem("setup", "bare"))
	isNotKnown(t, "soft.step", none.Soft.Step)
	isKnown(t, "turned", none.Turned, 0, model.Standing)
	isNotKnown(t, "hold", none.Hold)
	if none.Zero.Said || none.Soft.Said {
		t.Error("said, and nothing was")
	}
	bench := bindSetUp(mkItem("bench", "file"))
	if len(bench.Hold.V) != 1 || bench.Hold.V[0].Text != "hand" || bench.Hold.From != model.Standing {
		t.Errorf("bench work is held %+v", bench.Hold)
	}
	sq := bindSetUp(mkItem("square_up", "", mkAttr("round_bar", vNum(6)), mkAttr("leaves", vObj(mkAttr("leaves.top", vNum(2))))))
	isKnown(t, "round_bar", sq.RoundBar.Diameter, 6, model.Written)
	isKnown(t, "leaves.top", sq.Leaves.Top, 2, model.Written)
	isKnown(t, "leaves.left", sq.Leaves.Left, 0, model.Standing)
}

func TestSetUpMakesStandAsOperations(t *testing.T) {
	hole, flat := mkItem("hole", "a"), mkItem("face", "top")
	i := mkItem("setup", "s", mkAttr("makes", vList(vTo(hole), vTo(flat))))
	op := mkItem("operation", "later", mkAttr("makes", vTo(hole)))
	op.In = i
	i.Items = []*model.Item{op}
	i.Attrs[0].Value.List[1].At = text.Place{File: "x", From: 7, To: 8}
	s := bindSetUp(i)
	if len(s.Steps) != 3 || s.Steps[2].Item != op {
		t.Fatalf("%d steps", len(s.Steps))
	}
	for n, want := range []*model.Item{hole, flat} {
		st := s.Steps[n]
		if len(st.Makes.V) != 1 || st.Makes.V[0].Item != want || st.Kind != "operation" || st.In != i {
			t.Errorf("step %d makes %+v", n, st.Makes)
		}
		isKnown(t, "mounted", st.Mounted, "as usual", model.Standing)
	}
	if s.Steps[1].Item.At != i.Attrs[0].Value.List[1].At {
		t.Errorf("the second stands at %v", s.Steps[1].Item.At)
	}
	if s.Steps[0].Name != "hole.a" || s.Steps[1].Name != "face.top" {
		t.Errorf("they are called %q and %q", s.Steps[0].Name, s.Steps[1].Name)
	}
	part := mkItem("part", "p")
	twice := mkItem("setup", "t", mkAttr("makes", vList(vTo(hole), vTo(hole))))
	twice.In, hole.In = part, part
	if st := bindSetUp(twice).Steps; st[0].Name != "hole.a" || st[1].Name != "hole.a, second" {
		t.Errorf("they are called %q and %q", st[0].Name, st[1].Name)
	}
}

func TestBindSteps(t *testing.T) {
	hole := mkItem("hole", "a")
	s := bound[model.Step](mkItem("operation", "", mkAttr("makes", vTo(hole)), mkAttr("to", vSize("7.8 ±0.1")), mkAttr("down_to", vNum(5)),
		mkAttr("from", vWord("bottom")), mkAttr("feed", model.Value{Kind: model.FeedOf, Feed: drawing.Feed{Kind: drawing.ByHand}})))
	if s.To.V.Size.Nominal != 7.8 || !s.DownTo.Depth.Is() || s.DownTo.Face.Is() || s.From.V.Face != model.Bottom {
		t.Errorf("%+v", s)
	}
	isKnown(t, "feed", s.Feed, drawing.Feed{Kind: drawing.ByHand}, model.Written)
	isKnown(t, "cutting", s.Cutting, "conventional", model.Standing)
	isNotKnown(t, "leaves", s.Leaves) // 0 only where to is left out: for the dry run
	isNotKnown(t, "turned_by", s.TurnedBy)
	if s.Located.V.Text != "dials" || s.Located.From != model.Standing {
		t.Errorf("located %+v", s.Located)
	}
	s = bound[model.Step](mkItem("operation", "", mkAttr("to", vObj(mkAttr("to.from", vWord("left")), mkAttr("to.size", vSize("20.3 ±0.05")))), mkAttr("down_to", vTo(hole))))
	if s.To.V.From.Face != model.Left || s.To.V.Size.Nominal != 20.3 || s.DownTo.Face.V.Item != hole {
		t.Errorf("%+v", s)
	}
	m := bound[model.Step](mkItem("measure", "", mkAttr("size", vObj(mkAttr("size.from", vWord("left")), mkAttr("size.to", vTo(hole)))), mkAttr("with", vTo(mkItem("micrometer", "first")))))
	if !m.Measured.Said || m.Measured.Of.Is() || m.Measured.To.V.Item != hole || len(m.With.V) != 1 {
		t.Errorf("%+v", m.Measured)
	}
	isKnown(t, "taken_out", m.TakenOut, false, model.Standing)
	m = bound[model.Step](mkItem("measure", "", mkAttr("size", vTo(hole)), mkAttr("taken_out", vYes(true))))
	if m.Measured.Of.V.Item != hole || m.Measured.From.Is() {
		t.Errorf("%+v", m.Measured)
	}
	sh := bound[model.Step](mkItem("shift", "", mkAttr("clamps", vList(vObj(mkAttr("clamps.tip", vNum(12)))))))
	if len(sh.Clamps) != 1 || sh.Clamps[0].Tip.V != 12 {
		t.Errorf("%+v", sh.Clamps)
	}
}

func TestBindCutters(t *testing.T) {
	d := bound[model.Cutter](mkItem("drill", "jobbers", mkAttr("diameter", model.Value{Kind: model.Set, Sizes: model.Sizes{Series: []model.Series{{From: 1, To: 10, By: 0.1}}}})))
	if !d.Diameter.V.Has(4.5) || d.Diameter.V.Single {
		t.Errorf("diameter %+v", d.Diameter)
	}
	isKnown(t, "point", d.Point, 118, model.Standing)
	isKnown(t, "series", d.Series, "jobber", model.Standing)
	isKnown(t, "hand", d.Hand, "right", model.Standing)
	isNotKnown(t, "of", d.Of)
	isNotKnown(t, "centre_cutting", d.CentreCutting)
	isNotKnown(t, "angle", bound[model.Cutter](mkItem("countersink", "a")).Angle)
	isKnown(t, "centre_cutting", bound[model.Cutter](mkItem("slot_drill", "a")).CentreCutting, true, model.Standing)
	isKnown(t, "corner", bound[model.Cutter](mkItem("end_mill", "a")).Corner, 0, model.Standing)
	f := bound[model.Cutter](mkItem("fly_cutter", "a", mkAttr("diameter", vList(vNum(20), vNum(60)))))
	if !slices.Equal(f.SwingOf.V, []float64{20, 60}) || f.Diameter.Is() {
		t.Errorf("fly cutter %+v, %+v", f.SwingOf, f.Diameter)
	}
	saw := bound[model.Cutter](mkItem("slitting_saw", "fine", mkAttr("diameter", vNum(63)), mkAttr("teeth", vNum(100))))
	if !saw.Diameter.V.Single || !saw.Diameter.V.Has(63) || saw.Teeth.V != 100 || saw.SwingOf.Is() {
		t.Errorf("saw %+v", saw)
	}
	g := bound[model.Cutter](mkItem("gear_cutter", "a", mkAttr("teeth", vList(vNum(55), vNum(134)))))
	isNotKnown(t, "teeth", g.Teeth) // of a gear cutter: of the wheels it is for
	tap := bound[model.Cutter](mkItem("tap", "a", mkAttr("threads", vList(vThread("M6"), vThread("M8"))), mkAttr("leads", vList(vWord("second"), vNum(1.5)))))
	if len(tap.Threads.V) != 2 || !slices.Equal(tap.Leads.V, []model.Lead{{Word: "second"}, {Threads: 1.5}}) {
		t.Errorf("tap %+v", tap)
	}
	r := bound[model.Cutter](mkItem("reamer", "a", mkAttr("diameter", vList(vNum(3), vNum(8))), mkAttr("kind", vWord("machine")), mkAttr("range", vNum(0.5))))
	isKnown(t, "kind", r.ReamerKind, "machine", model.Written)
	isKnown(t, "range", r.Opens, 0.5, model.Written)
	if lo, hi, ok := r.Diameter.V.Range(); !ok || lo != 3 || hi != 8 {
		t.Errorf("reamers %+v", r.Diameter)
	}
	sh := bound[model.Cutter](mkItem("end_mill", "b", mkAttr("shank", vNum(10))))
	if sh.Shank.V.Diameter != 10 {
		t.Errorf("shank %+v", sh.Shank)
	}
}

func TestBindOtherThings(t *testing.T) {
	m := bindMachine(mkItem("mill", "a", mkAttr("speeds", vList(vNum(400), vNum(120))), mkAttr("drawbars", vList(vThread("M12"))), mkAttr("travel", vList(vNum(220), vNum(100), vNum(180)))))
	if !slices.Equal(m.Speeds.V.List, []float64{120, 400}) || len(m.Drawbars.V) != 1 || len(m.Travel.V) != 3 {
		t.Errorf("%+v", m)
	}
	m = bindMachine(mkItem("mill", "a", mkAttr("speeds", vObj(mkAttr("from", vNum(50)), mkAttr("to", vNum(2500))))))
	if !m.Speeds.V.Stepless || !m.Speeds.V.Has(777) {
		t.Errorf("%+v", m.Speeds)
	}
	p := bound[model.Parallels](mkItem("parallels", "thin", mkAttr("heights", vList(vNum(6), vNum(8))), mkAttr("quantity", vNum(2))))
	if !p.Heights.V.Has(8) || p.Quantity.V != 2 {
		t.Errorf("%+v", p)
	}
	j := bound[model.SoftJaws](mkItem("soft_jaws", "a", mkAttr("for_use_on", vList(vTo(mkItem("vise", "small"))))))
	if len(j.ForUseOn.V) != 1 {
		t.Errorf("%+v", j)
	}
	s := bound[model.Stock](mkItem("stock", "a", mkAttr("flat", vObj(mkAttr("flat.width", vNum(20)), mkAttr("flat.thickness", vSize("15 h9")))),
		mkAttr("limits", vWord("h11")), mkAttr("lengths", vList(vNum(310), vNum(95))),
		mkAttr("material", model.Value{Kind: model.MaterialOf, Material: model.Material{Written: "CW614N"}})))
	if !s.Flat.Said || s.Flat.Thickness.V.Tol.Letters != "h9" || s.Flat.Width.V.Nominal != 20 || s.Material.V.Written != "CW614N" {
		t.Errorf("%+v", s)
	}
	isKnown(t, "limits", s.Limits.Class, "h11", model.Written)
	isNotKnown(t, "limits", s.Limits.Sizes)
	s = bound[model.Stock](mkItem("stock", "b", mkAttr("limits", vList(vNum(11.9), vNum(12))), mkAttr("casting", vObj(mkAttr("casting.over", vNum(3))))))
	if !slices.Equal(s.Limits.Sizes.V, []float64{11.9, 12}) || s.Limits.Class.Is() || s.Casting.Over.V != 3 {
		t.Errorf("%+v", s.Limits)
	}
	sl := bound[model.Sleeve](mkItem("sleeve", "a", mkAttr("outside", vTaper("MT3")), mkAttr("inside", vTaper("MT2"))))
	if sl.Outside.V.Number != "3" || sl.Open.Is() {
		t.Errorf("%+v", sl)
	}
	gauge := bound[model.Instrument](mkItem("plug_gauge", "a", mkAttr("diameter", vList(vNum(6), vNum(8)))))
	if !gauge.Diameter.V.Has(6) {
		t.Errorf("%+v", gauge.Diameter)
	}
	lent := bound[model.Vise](mkItem("vise", "a", mkAttr("state", vWord("lent out")), mkAttr("made_as", vTo(mkItem("part", "jaw")))))
	if lent.Here() || !lent.MadeAs.Is() {
		t.Error("lent out, and here")
	}
}

// The error of an instrument that does not say is that of its standard for its own range:
// DIN 862 allows a caliper to 200 mm that reads to 0.02 mm an error of 0.03 mm, one that
// reads to 0.05 mm one of 0.05 mm.
func TestFilledFromTheHandbook(t *testing.T) {
	caliper := func(attrs ...model.Attr) model.Known[float64] {
		return bindInstrument(mkItem("caliper", "a", attrs...)).Error
	}
	to200 := mkAttr("range", vList(vNum(0), vNum(200)))
	isKnown(t, "error", caliper(to200, mkAttr("reads_to", vNum(0.02))), 0.03, model.Handbook)
	isKnown(t, "error", caliper(to200, mkAttr("reads_to", vNum(0.05))), 0.05, model.Handbook)
	isKnown(t, "error", caliper(to200, mkAttr("error", vNum(0.01))), 0.01, model.Written)
	isNotKnown(t, "error, not understood", caliper(to200, mkAttr("error", vWord("small"))))
	isNotKnown(t, "error beyond the tables", caliper(mkAttr("range", vList(vNum(0), vNum(5000)))))
	isNotKnown(t, "error of a depth micrometer", bindInstrument(mkItem("micrometer", "a", mkAttr("kind", vWord("depth")))).Error)
	isNotKnown(t, "error of feelers", bindInstrument(mkItem("feelers", "a")).Error)
	if k := caliper(to200); k.Fact() != "caliper.a.error" {
		t.Errorf("the fact is called %s", k.Fact())
	}

	r8 := bindCollets(mkItem("collets", "a", mkAttr("system", vWord("R8"))))
	if !r8.Sizes.V.Has(20) || r8.Sizes.V.Has(21) || r8.Sizes.From != model.Handbook {
		t.Errorf("sizes %+v", r8.Sizes)
	}
	isKnown(t, "range", r8.Range, 0.1, model.Handbook)
	isNotKnown(t, "tail", r8.Tail)
	inches := mkItem("collets", "b", mkAttr("system", vWord("R8")))
	inches.Unit = drawing.Inch
	if s := bindCollets(inches).Sizes.V; !s.Has(19.05) || s.Has(20) {
		t.Errorf("in inches %+v", s)
	}
	er := bindCollets(mkItem("collets", "c", mkAttr("system", vWord("ER25"))))
	isNotKnown(t, "range", er.Range) // half as far up to 3 mm: for the dry run, by size
	few := bindCollets(mkItem("collets", "d", mkAttr("system", vWord("ER25")), mkAttr("sizes", vList(vNum(6), vNum(10)))))
	isKnown(t, "range", few.Range, 1, model.Handbook)
	if few.Sizes.From != model.Written || few.Sizes.V.Has(8) {
		t.Errorf("sizes %+v", few.Sizes)
	}
	other := bindCollets(mkItem("collets", "e", mkAttr("system", vWord("of my own"))))
	isNotKnown(t, "sizes", other.Sizes)
	isNotKnown(t, "range", other.Range)
}

func TestBindPart(t *testing.T) {
	hole := mkItem("hole", "pillar", mkAttr("into", vWord("top")), mkAttr("diameter", vSize("8 H7")),
		mkAttr("at", model.Value{Kind: model.PositionOf, Position: model.Position{Short: []drawing.Size{{Nominal: 8}, {Nominal: 8}}}}),
		mkAttr("depth", vWord("through")), mkAttr("thread", vObj(mkAttr("thread.size", vThread("M6")))), mkAttr("around", vObj(mkAttr("around.count", vNum(6)))),
		mkAttr("square", vObj(mkAttr("square.to", vWord("left")), mkAttr("square.within", vNum(0.02)))))
	slit := mkItem("slit", "split", mkAttr("width", vNum(0.8)), mkAttr("depth", vNum(8)))
	flat := mkItem("flat", "a", mkAttr("at", vNum(90)))
	split := mkItem("split", "s", mkAttr("pieces", vList(vWord("base"), vWord("cap"))))
	blank := mkItem("blank", "", mkAttr("lies", vList(vWord("length"), vWord("width"))), mkAttr("over", vObj(mkAttr("over.left", vNum(1)))),
		mkAttr("skin", vObj(mkAttr("skin.left", vWord("sawn")))))
	face := mkItem("face", "top", mkAttr("raw", vYes(true)), mkAttr("position", vObj(mkAttr("position.to", vList(vWord("left"), vWord("front"))), mkAttr("position.within", vNum(0.1)))))
	p := mkItem("part", "clamp", mkAttr("length", vSize("30 ±0.1")), mkAttr("width", vNum(16)), mkAttr("bought", vTo(mkItem("bearings", "b"))))
	bench, heat, setup := mkItem("bench", "file"), mkItem("heat", "harden"), mkItem("setup", "one")
	p.Items = []*model.Item{blank, hole, slit, flat, split, face, setup, bench, heat}
	b := bindPart(p)
	if b.Blank == nil || b.Blank.Over.Left.V != 1 || b.Blank.Over.Right.Is() || b.Blank.Skin.Left.V != "sawn" || !slices.Equal(b.Blank.Lies.V, []string{"length", "width"}) {
		t.Errorf("blank %+v", b.Blank)
	}
	isKnown(t, "bar", b.Blank.Bar, false, model.Standing)
	if len(b.Features) != 4 || len(b.Faces) != 1 || len(b.Work) != 3 || b.Work[1].Kind != "bench" {
		t.Fatalf("%d features, %d faces, %d set-ups", len(b.Features), len(b.Faces), len(b.Work))
	}
	h := b.Features[0]
	if h.Into.V.Face != model.Top || h.Diameter.V.Tol.Letters != "H7" || len(h.At.V) != 1 || !h.Depth.V.Through || h.Thread.Size.V.Series != "M" || !h.Thread.Said {
		t.Errorf("hole %+v", h)
	}
	isKnown(t, "around.count", h.Around.Count, 6, model.Written)
	isKnown(t, "around.start", h.Around.Start, 0, model.Standing)
	isKnown(t, "around.over", h.Around.Over, 360, model.Standing) // "360, evenly spaced"
	if h.SquareTo.To.V.Face != model.Left || h.SquareTo.Within.V != 0.02 || h.ParallelTo.Said {
		t.Errorf("square %+v", h.SquareTo)
	}
	if h.SquareTo.Within.Attr != "square.within" {
		t.Errorf("the fact is called %s", h.SquareTo.Within.Fact())
	}
	if d := b.Features[1].Depth.V; d.Size.Nominal != 8 || d.Through {
		t.Errorf("slit %+v", d)
	}
	isNotKnown(t, "at of a flat", b.Features[2].At) // an angle there, not a place
	if !slices.Equal(b.Features[3].Pieces.V, []string{"base", "cap"}) || b.Features[3].StaysOpen.V || !b.Features[3].StaysOpen.Is() {
		t.Errorf("split %+v", b.Features[3])
	}
	if len(b.Faces[0].PositionIn.To.V) != 2 || !b.Faces[0].Raw.V {
		t.Errorf("face %+v", b.Faces[0])
	}
	if !b.Bought.Yes.V || !b.Bought.As.Is() {
		t.Errorf("bought %+v", b.Bought)
	}
	isKnown(t, "bought", bindPart(mkItem("part", "x")).Bought.Yes, false, model.Standing)
	isKnown(t, "bought", bindPart(mkItem("part", "x", mkAttr("bought", vYes(true)))).Bought.Yes, true, model.Written)
	isKnown(t, "quantity", b.Quantity, 1, model.Standing)
}

// What is not understood is not known, at its own place; it is never the value that
// leaving it out would stand for.
func TestWrongValuesAreNotKnown(t *testing.T) {
	i := mkItem("drill", "a", mkAttr("point", vWord("sharp")), mkAttr("hand", vNum(3)), mkAttr("diameter", model.Value{}), mkAttr("teeth", vNum(2.5)))
	d := bound[model.Cutter](i)
	isNotKnown(t, "point", d.Point)
	isNotKnown(t, "hand", d.Hand)
	isNotKnown(t, "diameter", d.Diameter)
	isNotKnown(t, "teeth", d.Teeth)
	if d.Point.At != i.Attrs[0].Value.At {
		t.Errorf("point at %v", d.Point.At)
	}
	isNotKnown(t, "clamp.by", bound[model.Holder](mkItem("arbor", "a", mkAttr("clamp", vNum(3)))).Clamp.By)
	isNotKnown(t, "heights", bound[model.Parallels](mkItem("parallels", "a", mkAttr("heights", vList(vNum(6), vWord("x"))))).Heights)
}

func TestStanding(t *testing.T) {
	for _, c := range []struct {
		attr string
		want model.Value
		from model.Origin
	}{
		{"vise.quantity", vNum(1), model.Standing},
		{"vise.state", vWord("here"), model.Standing},
		{"vise.jaw_width", model.Value{}, model.Unknown},
		{"drill.point", vNum(118), model.Standing},
		{"v_block.angle", vNum(90), model.Standing},
		{"slot_drill.centre_cutting", vYes(true), model.Standing},
		{"end_mill.centre_cutting", model.Value{}, model.Unknown},
		{"part.bought", vYes(false), model.Standing},
		{"flat.at", vNum(0), model.Standing},                   // "0, towards top"
		{"teeth.throated", vYes(false), model.Standing},        // "no: straight gashes"
		{"teeth.pressure_angle", model.Value{}, model.Unknown}, // "20, listed as chosen; with a worm: …"
		{"worm.pressure_angle", vNum(20), model.Chosen},
		{"worm.hand", vWord("right"), model.Chosen},
		{"operation.cutting", vWord("conventional"), model.Standing},
		{"operation.mounted", vWord("as usual"), model.Standing},
		{"operation.spindle", model.Value{}, model.Unknown},
		{"operation.leaves", model.Value{}, model.Unknown}, // "0, unless to is given"
		{"operation.top_slide", model.Value{}, model.Unknown},
		{"operation.located", vWord("dials"), model.Standing},
		{"setup.moved", model.Value{}, model.Unknown}, // "no if machine and holding are …"
		{"setup.set_over", vNum(0), model.Standing},
		{"hole.bottom", model.Value{}, model.Unknown}, // a through hole has none
		{"screws.head", model.Value{}, model.Unknown}, // "none" is one of its words, and it is not known
		{"hole.thread", model.Value{}, model.Unknown},
		{"micrometer.kind", vWord("outside"), model.Standing},
		{"house_rule.level", vWord("advice"), model.Standing},
		{"rules_of_thumb.vise_grip_share", vNum(0.33), model.Standing},
	} {
		kindName, name := c.attr[:indexOf(c.attr)], c.attr[indexOf(c.attr)+1:]
		a, ok := theTable().byName[kindName].attr(name)
		if !ok {
			t.Fatalf("no %s", c.attr)
		}
		if got, from := standing(a); from != c.from || !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s, left out %q: %+v from %d, want %+v from %d", c.attr, a.LeftOut, got, from, c.want, c.from)
		}
	}
}

func indexOf(s string) int { return slices.Index([]byte(s), '.') }

func TestThumbs(t *testing.T) {
	rows := 0
	for _, f := range tableRows(t) {
		if f[0] == "shop" && f[1] == "rules_of_thumb" && f[2] != "" {
			rows++
		}
	}
	w := written{
		ShopItems:   []*model.Item{mkItem("rules_of_thumb", "", mkAttr("room", vNum(2)), mkAttr("burr", vNum(0.1)))},
		RecipeItems: []*model.Item{mkItem("rules_of_thumb", "", mkAttr("room", vNum(3)))},
	}
	got := bindThumbs(w)
	if len(got) != rows || rows < 40 {
		t.Errorf("%d limits of %d", len(got), rows)
	}
	isKnown(t, "room", got["room"], 3, model.Written)
	isKnown(t, "burr", got["burr"], 0.1, model.Written)
	isKnown(t, "thin_wall", got["thin_wall"], 0.5, model.Standing)
	for name, k := range got {
		if !k.Is() || math.IsNaN(k.V) || k.V <= 0 {
			t.Errorf("%s is %v", name, k)
		}
	}
}

// A limit in two blocks of one folder: the order of files must not settle which holds. The
// recipe's instead of the shop's is as it should be.
func TestThumbsGivenTwice(t *testing.T) {
	block := func(file, limit string) *model.Item {
		i := mkItem("rules_of_thumb", "", mkAttr(limit, vNum(2)))
		i.At.File, i.Attrs[0].At.File = file, file
		return i
	}
	w := written{Shop: mkItem("shop", "s"), ShopItems: []*model.Item{block("b.hcl", "room"), block("a.hcl", "room"), block("c.hcl", "burr")},
		RecipeItems: []*model.Item{block("r.hcl", "room")}}
	_, findings := bindBuild(w)
	if len(findings) != 1 || findings[0].Rule != slipGivenTwice || findings[0].Place.File != "b.hcl" || findings[0].Also[0].Place.File != "a.hcl" {
		t.Errorf("%+v", findings)
	}
}

func TestSpeeds(t *testing.T) {
	series := func(from, to, by float64) model.Value {
		return model.Value{Kind: model.Set, Sizes: model.Sizes{Series: []model.Series{{From: from, To: to, By: by}}}}
	}
	span := func(from, to float64) model.Value { return vObj(mkAttr("from", vNum(from)), mkAttr("to", vNum(to))) }
	for _, c := range []struct {
		v            model.Value
		has, hasNot  float64
		known, found bool
	}{
		{vNum(400), 400, 401, true, false},
		{vList(vNum(900), vNum(120)), 120, 400, true, false},
		{series(100, 1000, 100), 900, 950, true, false},
		{series(1, 1000, 1), 1000, 1001, true, false},
		{series(50, 3000, 1), 3000, 3001, true, false},  // every turn: as good as stepless
		{series(1, 1e12, 1e-9), 777, 2e12, true, false}, // asked, never spelled out
		{span(50, 2500), 777, 49, true, false},
		{span(500, 500), 500, 499, true, false},
		{span(2500, 50), -1, 777, false, true},
		{vObj(mkAttr("from", vNum(50))), -1, 777, false, false}, // what is lacking is a finding of decoding
		{vWord("many"), -1, 777, false, false},
	} {
		w := written{ShopItems: []*model.Item{mkItem("mill", "a", mkAttr("speeds", c.v))}}
		b, findings := bindBuild(w)
		s := b.Shop.Machines[0].Speeds
		if s.Is() != c.known || c.known && !s.V.Has(c.has) || c.known && s.V.Has(c.hasNot) || (len(findings) == 1) != c.found {
			t.Errorf("%+v: %+v, %+v", c.v, s, findings)
		}
		if c.found && findings[0].Place != w.ShopItems[0].Attrs[0].Value.At {
			t.Errorf("found at %+v", findings[0].Place)
		}
	}
}

// Values that are read in more than one way.
func TestReadValues(t *testing.T) {
	size := vSize("8 H7")
	if n, ok := asNumber(&size); n != 8 || !ok {
		t.Errorf("the nominal is %v", n)
	}
	hand := vList(vWord("hand"))
	if r, ok := asRef(&hand); !ok || r.Text != "hand" || r.Face != model.NoFace {
		t.Errorf("%+v", r)
	}
	for _, v := range []model.Value{vNum(3), vList(vWord("top"), vWord("left")), {}} {
		if r, ok := asRef(&v); ok {
			t.Errorf("%+v is read as %+v", v, r)
		}
	}
	several := vList(vWord("top"), vWord("left"))
	if r, ok := asRefs(&several); !ok || r[1].Face != model.Left {
		t.Errorf("%+v", r)
	}
}

func TestGeneralTolerance(t *testing.T) {
	for _, c := range []struct {
		v     model.Value
		class string
		half  float64
		ok    bool
	}{
		{vWord("ISO 2768-m"), "m", 0, true}, {vWord("ISO 2768-1 f"), "f", 0, true}, {vWord("ISO 2768-mK"), "m", 0, true},
		{vWord("ISO 2768"), "", 0, false}, {vWord("ISO 2768-x"), "", 0, false}, {vWord("ISO 286"), "", 0, false},
		{vWord("±0.005"), "", 0.005, true}, {vWord("+/-0.1"), "", 0.1, true}, {vWord("± 0.2 mm"), "", 0.2, true},
		{vWord("±x"), "", 0, false}, {vWord("0.1"), "", 0, false}, {vNum(0.1), "", 0, false}, {vWord(""), "", 0, false},
	} {
		g, wrong := generalTolerance(&c.v, drawing.Millimetre)
		if g.Class != c.class || math.Abs(g.Either-c.half) > 1e-12 || (wrong == "") != c.ok || (g.From == model.Written) != c.ok {
			t.Errorf("%+v: %+v, %q", c.v, g, wrong)
		}
	}
	v := vWord("±0.005")
	if g, _ := generalTolerance(&v, drawing.Inch); math.Abs(g.Either-0.127) > 1e-12 {
		t.Errorf("in inches: %v mm", g.Either)
	}
	v = vObj(mkAttr("general..xx", vNum(0.01)), mkAttr(".xxx", vNum(0.005)))
	if g, wrong := generalTolerance(&v, drawing.Millimetre); !slices.Equal(g.Places, []float64{0, 0, 0.01, 0.005}) || wrong != "" || g.From != model.Written {
		t.Errorf("by places: %+v, %q", g, wrong)
	}
	v = vObj(mkAttr("general.fine", vNum(0.01)))
	if g, wrong := generalTolerance(&v, drawing.Millimetre); wrong == "" {
		t.Errorf("read as %+v", g)
	}
}

// smallBuild is a recipe and a shop with a few of everything.
func smallBuild() written {
	w := written{Recipe: mkItem("recipe", "r", mkAttr("title", vWord("A thing")), mkAttr("shop", vWord("../shop")), mkAttr("general", vWord("ISO 2768-m"))),
		Shop: mkItem("shop", "attic", mkAttr("title", vWord("The attic")))}
	for n := range 20 {
		label := fmt.Sprintf("t%02d", 19-n)
		w.ShopItems = append(w.ShopItems,
			mkItem("vise", label, mkAttr("jaw_width", vNum(50))), mkItem("drill", label, mkAttr("diameter", vNum(float64(n+1)))), mkItem("end_mill", label, mkAttr("diameter", vNum(6))),
			mkItem("micrometer", label, mkAttr("range", vList(vNum(0), vNum(25)))), mkItem("arbor", label, mkAttr("seat", vNum(16))),
			mkItem("lathe", label), mkItem("mill", label), mkItem("stock", label, mkAttr("round", vNum(20))), mkItem("rotary_table", label))
		p := mkItem("part", label, mkAttr("length", vNum(30)))
		p.Items = []*model.Item{mkItem("hole", "a", mkAttr("into", vWord("top"))), mkItem("setup", "s", mkAttr("up", vWord("top")))}
		w.RecipeItems = append(w.RecipeItems, p)
	}
	w.RecipeItems = append(w.RecipeItems, mkItem("fit", "a"), mkItem("made", ""), mkItem("concession", "grip-too-shallow", mkAttr("because", vWord("tried"))),
		mkItem("house_rule", "h", mkAttr("says", vWord("no"))), mkItem("assembly", "z"), mkItem("nut", "special"))
	return w
}

func TestBindBuildWhateverTheOrder(t *testing.T) {
	w := smallBuild()
	b, findings := bindBuild(w)
	if len(findings) > 0 {
		t.Errorf("%v", findings)
	}
	if len(b.Shop.Cutters) != 40 || len(b.Shop.Machines) != 40 || len(b.Shop.All) != 181 || len(b.Parts) != 20 || len(b.Joints) != 2 {
		t.Errorf("%d cutters, %d machines, %d in all, %d parts, %d joints", len(b.Shop.Cutters), len(b.Shop.Machines), len(b.Shop.All), len(b.Parts), len(b.Joints))
	}
	if b.Recipe.Title != "A thing" || b.Recipe.General.Class != "m" || !slices.Equal(b.Recipe.Shops, []string{"../shop"}) || b.Shop.Label != "attic" {
		t.Errorf("%+v", b.Recipe)
	}
	if b.Parts[0].Label != "t00" || b.Shop.Cutters[0].Label != "t00" || b.Shop.Cutters[0].Kind != "drill" {
		t.Error("not sorted by label")
	}
	if len(b.Made) != 1 || len(b.Excused) != 1 || len(b.House) != 1 || b.House[0].Level.V != "advice" {
		t.Errorf("%d made, %d concessions, %d house rules", len(b.Made), len(b.Excused), len(b.House))
	}
	order := func(b *model.Build) (out []string) {
		for _, i := range b.Shop.All {
			out = append(out, i.Path())
		}
		for _, m := range b.Shop.Machines {
			out = append(out, m.Path())
		}
		for _, p := range b.Parts {
			out = append(out, p.Path())
		}
		for _, j := range b.Joints {
			out = append(out, j.Path())
		}
		return out
	}
	slices.Reverse(w.ShopItems)
	slices.Reverse(w.RecipeItems)
	again, _ := bindBuild(w)
	if !slices.Equal(order(b), order(again)) {
		t.Error("the order of files shows")
	}
	w.Recipe = mkItem("recipe", "r", mkAttr("general", vWord("fine")))
	if _, findings = bindBuild(w); len(findings) != 1 || findings[0].Level != finding.Stop || findings[0].Place != w.Recipe.Attrs[0].Value.At {
		t.Errorf("%+v", findings)
	}
}

func BenchmarkBindBuild(b *testing.B) {
	w := smallBuild()
	for b.Loop() {
		bindBuild(w)
	}
}
