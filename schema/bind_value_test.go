package schema

import (
	"reflect"
	"slices"
	"testing"

	"fettle/schema/model"
)

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
