package schema

import (
	"bytes"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/schema/finding"
	"fettle/schema/mark"
	"fettle/schema/model"
	"fettle/schema/text"
)

// pageExamples reads the two examples of the page that describes the language.
func pageExamples(t testing.TB) (text.Archive, []mark.Mark) {
	src, err := os.ReadFile("../testdata/language/examples.txtar")
	if err != nil {
		t.Fatal(err)
	}
	folder := text.Archive{}
	var want []mark.Mark
	for _, f := range txtar.Parse(src).Files {
		clean, marks, err := mark.Read(f.Name, f.Data)
		if err != nil {
			t.Fatal(err)
		}
		folder[f.Name] = clean
		want = append(want, marks...)
	}
	return folder, want
}

// Both examples load, the shop found by the way that the recipe names, and have no finding
// but the one that the recipe truly contains.
func TestExamplesOfThePage(t *testing.T) {
	folder, want := pageExamples(t)
	b, finds, err := Load(folder, "tellurion")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range mark.Compare(want, mark.Of(b.Sources, finds)) {
		t.Error(line)
	}
	if b.Shop.Label != "attic" || len(b.Shop.All) != 11 || len(b.Parts) != 1 || b.Unread {
		t.Fatalf("shop %q with %d things, %d parts", b.Shop.Label, len(b.Shop.All), len(b.Parts))
	}
	p := b.Parts[0]
	var steps []string
	for _, s := range p.Work {
		for _, o := range s.Steps {
			steps = append(steps, s.Kind+" "+s.Label+": "+o.Name)
		}
	}
	wantSteps := []string{"setup bore: hole.pillar", "setup bore: hole.pillar, second", "setup bore: deburr", "setup bore: measure", "setup split: operation saw the split"}
	if !slices.Equal(steps, wantSteps) {
		t.Errorf("steps %q", steps)
	}
	if h := p.Height.V; h.Nominal != 12 || h.Tol.Lo != -0.05 || h.Tol.Hi != 0 {
		t.Errorf("height %+v", h)
	}
	ream := p.Work[1].Steps[1]
	if got := ream.Tool.V[0].Path(); got != "reamer.machine[8]" {
		t.Errorf("tool %q", got)
	}
	measured := p.Work[1].Steps[3].Measured.Of.V
	if measured.Item != p.Item || measured.Sub != "height" {
		t.Errorf("measured %+v", measured)
	}
	if c := b.Excused[0].At.V; c.Item == nil || c.Item.Label != "split" {
		t.Errorf("concession at %+v", c)
	}
	climb := b.House[0].When
	for _, c := range []struct {
		cutting model.Value
		want    model.Answer
	}{
		{model.Value{Kind: model.Text, Text: "climb"}, model.Yes},
		{model.Value{Kind: model.Text, Text: "conventional"}, model.No},
		{model.Value{}, model.NotKnown},
	} {
		if got, _ := climb.Eval(func([]string) model.Value { return c.cutting }); got != c.want {
			t.Errorf("no_climb with %+v: %v, want %v", c.cutting, got, c.want)
		}
	}
}

// Without a shop, and against one that lacks a tool, the recipe is read all the same.
func TestExampleInOtherShops(t *testing.T) {
	folder, _ := pageExamples(t)
	b, finds, err := Load(folder, "tellurion", NoShop)
	if err != nil || len(finds) != 1 {
		t.Errorf("without a shop: %v, %v", finds, err)
	}
	if ref := b.Parts[0].Work[1].Steps[1].Tool.V[0]; ref.Item != nil || ref.Text != "reamer.machine[8]" || !ref.Has || ref.Size != 8 {
		t.Errorf("a tool of no shop: %+v", ref)
	}
	shop := bytes.Replace(folder["shops/attic/shop.hcl"], []byte("[3, 4, 5, 6, 8]"), []byte("[3, 4, 5, 6]"), 1)
	folder["shops/other/shop.hcl"] = shop
	_, finds, err = Load(folder, "tellurion", "shops/other")
	if err != nil {
		t.Fatal(err)
	}
	var lacks []string
	for _, f := range finds {
		if f.Rule == slipNotInShop {
			lacks = append(lacks, f.Says)
		}
	}
	if want := []string{"reamer.machine has no 8; the nearest it has is 6"}; !slices.Equal(lacks, want) {
		t.Errorf("a reamer that is not there: %q", lacks)
	}
}

// A build is the same however its blocks are spread over files and whatever those are
// called: blocks are dealt out to files in turn, in both orders.
func TestOrderOfFilesDoesNotMatter(t *testing.T) {
	folder, _ := pageExamples(t)
	ref, refFinds, err := Load(folder, "tellurion")
	if err != nil {
		t.Fatal(err)
	}
	for _, flip := range []bool{false, true} {
		spread := text.Archive{}
		for name, src := range folder {
			dir := name[:strings.LastIndexByte(name, '/')+1]
			for i, block := range topBlocks(string(src)) {
				file := string(rune('a' + i))
				if flip {
					file = string(rune('z' - i))
				}
				spread[dir+file+".hcl"] = []byte(block)
			}
		}
		if len(spread) < 15 {
			t.Fatalf("spread over %d files only", len(spread))
		}
		b, finds, err := Load(spread, "tellurion")
		if err != nil {
			t.Fatal(err)
		}
		if got, want := sayings(finds), sayings(refFinds); !slices.Equal(got, want) {
			t.Errorf("findings %q, want %q", got, want)
		}
		if got, want := digests(b), digests(ref); !maps.Equal(got, want) {
			t.Errorf("things differ: %v, want %v", got, want)
		}
	}
}

func topBlocks(src string) []string {
	var out []string
	for _, b := range strings.SplitAfter(src, "\n}\n") {
		if strings.TrimSpace(b) != "" {
			out = append(out, b)
		}
	}
	return out
}

func sayings(finds []finding.Finding) []string {
	var out []string
	for _, f := range finds {
		out = append(out, f.Rule+": "+f.Says)
	}
	slices.Sort(out)
	return out
}

func digests(b *model.Build) map[string]uint64 {
	out := map[string]uint64{}
	for _, i := range b.Shop.All {
		out[i.Path()] = i.Digest
	}
	for _, p := range b.Parts {
		out[p.Path()] = p.Digest
	}
	return out
}

func BenchmarkLoad(b *testing.B) {
	folder, _ := pageExamples(b)
	for b.Loop() {
		if _, _, err := Load(folder, "tellurion"); err != nil {
			b.Fatal(err)
		}
	}
}
