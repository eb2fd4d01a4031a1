package schema

import (
	"errors"
	"io/fs"
	"math"
	"slices"
	"strings"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

const (
	smallRecipe = "recipe \"r\" {\n  units = \"mm\"\n}\n"
	smallShop   = "shop \"s\" {\n  units = \"mm\"\n}\n"
)

// What cannot be read at all is an error of its own kind, with a sentence that names the folder.
func TestFoldersThatCannotBeRead(t *testing.T) {
	files := text.Archive{
		"good/a.hcl": []byte(smallRecipe), "shop/a.hcl": []byte(smallShop), "empty/readme.txt": []byte("x"),
		"none/a.hcl": []byte("part \"p\" {\n}\n"), "two/a.hcl": []byte(smallRecipe), "two/b.hcl": []byte(smallRecipe),
		"shops/a.hcl": []byte(smallShop), "shops/b.hcl": []byte(smallShop),
	}
	for _, c := range []struct {
		recipe  string
		shops   []string
		trouble Trouble
		says    string
	}{
		{"nowhere", nil, NoSuchFolder, "there is no folder nowhere"},
		{"empty", nil, EmptyFolder, "the folder empty holds no file that ends in .hcl"},
		{"none", nil, NoHeader, "no file in none has a recipe block, so it is no recipe"},
		{"two", nil, SeveralHeader, "two has more than one recipe block: two/a.hcl line 1 and two/b.hcl line 1"},
		{"shop", nil, WrongFolder, "shop is a shop; a recipe is wanted here"},
		{"good", []string{"good/"}, SameFolder, "good/ is given as recipe and as shop: a shop has a folder of its own"},
		{"good", []string{"two"}, WrongFolder, "two is a recipe; a shop is wanted here"},
		{"good", []string{"nowhere"}, NoSuchFolder, "there is no folder nowhere"},
		{"good", []string{"shops"}, SeveralHeader, "shops has more than one shop block: shops/a.hcl line 1 and shops/b.hcl line 1"},
		{"good", []string{"shop", "shop"}, SeveralShops, "one build is checked against one shop at a time"},
	} {
		_, _, err := Load(files, c.recipe, c.shops...)
		var folder *FolderError
		if !errors.As(err, &folder) || folder.Trouble != c.trouble || err.Error() != c.says {
			t.Errorf("Load(%q, %q): %v, want %s", c.recipe, c.shops, err, c.says)
		}
	}
}

// oddFolder has a pipe beside its files, and one file that the system will not give.
type oddFolder struct{ text.Archive }

func (f oddFolder) List(dir string) (files, odd []string, err error) {
	files, _, err = f.Archive.List(dir)
	return files, []string{dir + "/pipe.hcl"}, err
}

func (f oddFolder) Read(name string, limit int64) ([]byte, error) {
	if strings.HasSuffix(name, "locked.hcl") {
		return nil, fs.ErrPermission
	}
	return f.Archive.Read(name, limit)
}

func TestFilesThatCannotBeRead(t *testing.T) {
	files := oddFolder{text.Archive{"r/a.hcl": []byte(smallRecipe)}}
	b, finds, err := Load(files, "r", NoShop)
	if err != nil || b.Unread || len(finds) != 1 || finds[0].Says != "r/pipe.hcl is no plain file and is not read" {
		t.Errorf("a pipe: %v %v", finds, err)
	}
	files.Archive["r/locked.hcl"] = nil
	files.Archive["r/large.hcl"] = make([]byte, maxFile+1)
	b, finds, err = Load(files, "r", NoShop)
	if err != nil || !b.Unread || len(finds) != 3 {
		t.Fatalf("%v %v", finds, err)
	}
	for i, want := range []string{
		"r/large.hcl is larger than 1 MiB; a recipe or shop is read up to that size",
		"r/locked.hcl cannot be read: permission denied",
	} {
		if finds[i].Says != want {
			t.Errorf("%q, want %q", finds[i].Says, want)
		}
	}
}

// The shop that a recipe names is found from the recipe's folder; one that is not there, or
// lies outside what a recipe may name, is a finding at the name.
func TestTheShopThatARecipeNames(t *testing.T) {
	for _, c := range []struct{ shop, label, rule string }{
		{`"../shop"`, "s", ""},
		{`["../shop", "../other"]`, "s", ""},
		{`"../nowhere"`, "", slipUnknownSupply},
		{`"/shop"`, "", slipWrongValue},
		{`"."`, "", slipWrongValue},
		{`"C:\\shop"`, "", slipWrongValue},
	} {
		files := text.Archive{"b/shop/a.hcl": []byte(smallShop), "b/other/a.hcl": []byte(smallShop)}
		files["b/r/a.hcl"] = []byte("recipe \"r\" {\n  units = \"mm\"\n  shop  = " + c.shop + "\n}\n")
		b, finds, err := Load(files, "b/r")
		if err != nil {
			t.Fatal(err)
		}
		rule := ""
		if len(finds) > 0 {
			rule = finds[0].Rule
		}
		if b.Shop.Label != c.label || rule != c.rule || len(finds) > 1 {
			t.Errorf("shop = %s: %q, %v", c.shop, b.Shop.Label, finds)
		}
	}
	files := text.Archive{"b/r/a.hcl": []byte("recipe \"r\" {\n  units = \"mm\"\n  shop  = [\"../shop\", \"../other\"]\n}\n")}
	if got, err := Shops(files, "b/r"); err != nil || !slices.Equal(got, []string{"b/shop", "b/other"}) {
		t.Errorf("Shops = %q, %v", got, err)
	}
}

// A byte-order mark is passed over, and places behind it are where they stand in the file.
func TestByteOrderMark(t *testing.T) {
	files := text.Archive{"r/a.hcl": []byte("\xef\xbb\xbf" + smallRecipe + "vise \"v\" {\r\n  jaw_widht = 3\r\n}\r\n")}
	b, finds, err := Load(files, "r", NoShop)
	if err != nil || len(finds) != 1 {
		t.Fatalf("%v, %v", finds, err)
	}
	if m := b.Sources.Mark(finds[0].Place); m.Line != 5 || m.Column != 3 || m.Length != 9 {
		t.Errorf("found at %+v", m)
	}
}

// What is typed and does not print, or turns the direction of writing, is shown escaped.
func TestTypedTextIsShownSafely(t *testing.T) {
	src := smallRecipe + "part \"a\u202eb\x1b[31m\" {\n  length = 1\n  diameter = 2\n}\npart \"a\u202eb\x1b[31m\" {\n  length = 1\n  diameter = 2\n}\n"
	_, finds, err := Load(text.Archive{"r/a.hcl": []byte(src)}, "r", NoShop)
	if err != nil || len(finds) != 1 {
		t.Fatalf("%v, %v", finds, err)
	}
	if want := `part "a\u202eb\x1b[31m" stands here for the second time; a reference leads to the first`; finds[0].Says != want {
		t.Errorf("says %q, want %q", finds[0].Says, want)
	}
}

// The same part drawn in millimetres and in inches comes to the same lengths: a bare figure
// is in the folder's unit once, and a length never twice. 1 in is 25.4 mm exactly
// (international yard and pound agreement of 1959; ISO 31-1).
func TestUnits(t *testing.T) {
	shop := "shop \"s\" {\n  units = \"in\"\n}\ndrill \"d\" {\n  diameter = [1/8, mm(6), \"1/4\", \"5 mm\"]\n  point = 118\n}\nmill \"m\" {\n  speeds = [100, 200]\n  taper = \"R8\"\n  travel = [10, 5, 8]\n  power = 750\n}\n"
	recipe := `recipe "r" {
  units = "in"
}
given {
  wall = 0.25
  size = "1/2 H7"
}
part "p" {
  length = 2
  width  = mm(25.4)
  height = length / 4 + given.wall + mm(2.54) + thou(100)
  hole "a" {
    into     = "top"
    at       = [0.5, mm(12.7)]
    diameter = given.size
    depth    = sqrt(length * length + 1.5 * 1.5)
  }
  hole "b" {
    into     = "top"
    at       = { hole.a = 1, front = "3/8" }
    diameter = "1/2 in ±0.005"
    depth    = max(given.wall, mm(1))
    around   = { count = 6, pcd = 1, start = 15 }
  }
  setup "s" {
    operation {
      makes = hole.a
      tool  = drill.d[mm(5)]
      speed = 400
      leaves = width > 0.99 ? thou(10) : 0
    }
    operation {
      makes = hole.b
      tool  = drill.d[1/4]
    }
  }
}
`
	b, finds, err := Load(text.Archive{"r/a.hcl": []byte(recipe), "s/a.hcl": []byte(shop)}, "r", "s")
	if err != nil || len(finds) > 0 {
		t.Fatal(finds, err)
	}
	p := b.Parts[0]
	a, bb := p.Features[0], p.Features[1]
	ops := p.Work[0].Steps
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"length", p.Length.V.Nominal, 50.8},
		{"width", p.Width.V.Nominal, 25.4},
		{"height", p.Height.V.Nominal, 12.7 + 6.35 + 2.54 + 2.54},
		{"place, first", a.At.V[0].Short[0].Nominal, 12.7},
		{"place, second", a.At.V[0].Short[1].Nominal, 12.7},
		{"diameter", a.Diameter.V.Nominal, 12.7},
		{"root of squares", a.Depth.V.Size.Nominal, 63.5}, // 2, 1.5, 2.5: a 3-4-5 triangle
		{"from a hole", bb.At.V[0].Coords[0].Size.Nominal, 25.4},
		{"front", bb.At.V[0].Coords[1].Size.Nominal, 9.525},
		{"upper limit", bb.Diameter.V.Tol.Hi, 0.127},
		{"max", bb.Depth.V.Size.Nominal, 6.35},
		{"bolt circle", bb.Around.Pcd.V.Nominal, 25.4},
		{"angle", bb.Around.Start.V, 15},
		{"count", float64(bb.Around.Count.V), 6},
		{"drill in mm", ops[0].Tool.V[0].Size, 5},
		{"drill in inches", ops[1].Tool.V[0].Size, 6.35},
		{"speed", ops[0].Speed.V, 400},
		{"left for later", ops[0].Leaves.V, 0.254},
		{"travel", b.Shop.Machines[0].Travel.V[0], 254},
		{"spindle speed", b.Shop.Machines[0].Speeds.V.List[1], 200},
		{"drill point", b.Shop.Cutters[0].Point.V, 118},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s is %v, want %v", c.what, c.got, c.want)
		}
	}
	if a.Diameter.V.Tol.Letters != "H7" || !a.Diameter.Said() {
		t.Errorf("a figure with a name has lost its limits: %+v", a.Diameter.V)
	}
}

// Limits go with a bare reference and not with a calculation; a comparison allows for what
// reckoning with float64 loses.
func TestLimitsGoWithAReference(t *testing.T) {
	src := smallRecipe + `
part "p" {
  length = 10
  diameter = "8 h6"
  hole "a" {
    into = "left"
    diameter = diameter
  }
  hole "b" {
    into = "left"
    diameter = diameter + 0
    depth = 0.1 + 0.2 == 0.3 ? 3 : 4
  }
  hole "c" {
    into = "left"
    diameter = part.p.hole.a.diameter
    depth = "${1 + 1}.5"
  }
}
`
	b, finds, err := Load(text.Archive{"r/a.hcl": []byte(src)}, "r", NoShop)
	if err != nil || len(finds) > 0 {
		t.Fatal(finds, err)
	}
	f := b.Parts[0].Features
	for i, want := range []drawing.TolKind{drawing.Class, drawing.General, drawing.Class} {
		if got := f[i].Diameter.V; got.Tol.Kind != want || got.Nominal != 8 {
			t.Errorf("hole %s: %+v", f[i].Label, got)
		}
	}
	if f[1].Depth.V.Size.Nominal != 3 || f[2].Depth.V.Size.Nominal != 2.5 {
		t.Errorf("depths %v and %v", f[1].Depth.V, f[2].Depth.V)
	}
	if got := f[2].Item.Attr("diameter").Value.SizeOf; got != "part.p.hole.a.diameter" {
		t.Errorf("the size is of %q", got)
	}
}

// Whatever is said must be explained: every rule of the reading is in the list once, with a
// level, and named in two to four words.
func TestSlipsAreExplained(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range Slips {
		words := strings.Count(s.Name, "-") + 1
		if seen[s.Name] || words < 2 || words > 5 || s.Title == "" || s.Why == "" || s.Level == 0 {
			t.Errorf("%+v", s)
		}
		seen[s.Name] = true
	}
}

// A digest is of what is said, not of its layout, its place or how a figure is typed.
func TestDigest(t *testing.T) {
	digest := func(hole string) uint64 {
		src := smallRecipe + "part \"p\" {\n  length = 10\n  diameter = 8\n" + hole + "}\n"
		b, finds, err := Load(text.Archive{"r/a.hcl": []byte(src)}, "r", NoShop)
		if err != nil || len(finds) > 0 {
			t.Fatal(finds, err)
		}
		return b.Parts[0].Features[0].Digest
	}
	one := digest("hole \"a\" {\n  into = \"left\"\n  depth = 5\n}\n")
	if same := digest("\n\nhole \"a\" {\n  into = \"left\" # the left\n  depth    = 2 + 3\n}\n"); same != one {
		t.Error("layout counts")
	}
	for _, other := range []string{
		"hole \"b\" {\n  into = \"left\"\n  depth = 5\n}\n",
		"hole \"a\" {\n  into = \"right\"\n  depth = 5\n}\n",
		"hole \"a\" {\n  into = \"left\"\n  depth = \"5 ±0.1\"\n}\n",
		"hole \"a\" {\n  into = \"left\"\n  depth = 5\n  diameter = 3\n}\n",
		"hole \"a\" {\n  into = \"left\"\n  depth = 5\n  at = [1, 2]\n}\n",
	} {
		if digest(other) == one {
			t.Errorf("does not count: %s", other)
		}
	}
}

// A condition has three answers; a side that settles it is enough.
func TestConditions(t *testing.T) {
	facts := map[string]model.Value{
		"cut":     {Kind: model.Number, Num: 2},
		"cutting": {Kind: model.Text, Text: "climb"},
		"speed":   {Kind: model.Number, Num: 400},
	}
	for _, c := range []struct {
		when string
		want model.Answer
	}{
		{`operation.cutting == "climb"`, model.Yes},
		{`operation.cutting != "climb"`, model.No},
		{`operation.cut > 1 && operation.speed <= 400`, model.Yes},
		{`operation.cut > 2`, model.No},
		{`operation.cut >= 2`, model.Yes},
		{`operation.cut * 2 - 1 == 3`, model.Yes},
		{`operation.leaves > 1`, model.NotKnown},
		{`operation.leaves > 1 && operation.cut > 5`, model.No},
		{`operation.leaves > 1 || operation.cut > 1`, model.Yes},
		{`operation.leaves > 1 && operation.cut > 1`, model.NotKnown},
		{`!(operation.leaves > 1)`, model.NotKnown},
		{`operation.leaves == null`, model.Yes},
		{`operation.cut != null`, model.Yes},
		{`operation.cut / 0 > 1`, model.NotKnown},
		{`operation.speed > given.most`, model.Yes},
	} {
		src := smallRecipe + "given {\n  most = 300\n}\nhouse_rule \"h\" {\n  looks_at = \"operation\"\n  says = \"x\"\n  when = " + c.when + "\n}\n"
		b, finds, err := Load(text.Archive{"r/a.hcl": []byte(src)}, "r", NoShop)
		if err != nil || len(finds) > 0 {
			t.Errorf("%s: %v %v", c.when, finds, err)
			continue
		}
		got, lacks := b.House[0].When.Eval(func(path []string) model.Value { return facts[strings.Join(path, ".")] })
		if got != c.want {
			t.Errorf("%s: %v, want %v", c.when, got, c.want)
		}
		if (got == model.NotKnown) != (len(lacks) > 0) && !strings.Contains(c.when, "/ 0") {
			t.Errorf("%s: %v, lacking %v", c.when, got, lacks)
		}
	}
}

// An answer that is the same in any unit: an inch shop's bare figures beside lengths.
func TestConditionInInches(t *testing.T) {
	src := "recipe \"r\" {\n  units = \"in\"\n}\nhouse_rule \"h\" {\n  looks_at = \"operation\"\n  says = \"x\"\n  when = operation.cut > 0.1\n}\n"
	b, finds, err := Load(text.Archive{"r/a.hcl": []byte(src)}, "r", NoShop)
	if err != nil || len(finds) > 0 {
		t.Fatal(finds, err)
	}
	for cut, want := range map[float64]model.Answer{2.5: model.No, 2.6: model.Yes} {
		got, _ := b.House[0].When.Eval(func([]string) model.Value { return model.Value{Kind: model.Number, Num: cut} })
		if got != want {
			t.Errorf("a cut of %v mm is deeper than 0.1 in: %v, want %v", cut, got, want)
		}
	}
}

// Findings carry what package finding holds to be valid.
func TestFindingsOfReadingAreWhole(t *testing.T) {
	src := smallRecipe + "vise \"v\" {\n  jaw_widht = 3\n}\n"
	_, finds, _ := Load(text.Archive{"r/a.hcl": []byte(src)}, "r", NoShop)
	for _, f := range finds {
		if f.Level == 0 || f.Judgement != finding.Fact || f.Cause == "" || f.Place.None() {
			t.Errorf("%+v", f)
		}
	}
}
