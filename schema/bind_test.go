package schema

import (
	"slices"
	"testing"

	"fettle/schema/drawing"
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
