package choose_test

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"fettle/rules/choose"
	"fettle/schema"
)

var renew = flag.Bool("renew", false, "write anew how much is played; read the difference")

const effortTable = "../../testdata/effort.tsv"

// How many moments are played for each recipe and how many distances are worked out for them
// stands in effort.tsv: a rise is seen, where a clock would see nothing. Whoever renews it reads
// the difference and knows why.
func TestEffortAsKept(t *testing.T) {
	var b strings.Builder
	b.WriteString("# Moments played, and distances of tools worked out for them. (go test ./rules/choose -run Effort -renew)\n")
	b.WriteString("recipe\tshop\tmoments\tgaps\n")
	add := func(recipe, shop string, moments, gaps int) {
		fmt.Fprintf(&b, "%s\t%s\t%d\t%d\n", recipe, shop, moments, gaps)
	}
	for _, recipe := range []string{"first", "jack", "dial", "tellurion"} {
		for _, shop := range []string{"attic", "bench", "club", "garage"} {
			files := folders(t, "recipes/"+recipe+"/*.hcl", "recipes/shops/"+shop+"/*.hcl")
			build, _, err := schema.Load(files, "recipes/"+recipe, "recipes/shops/"+shop)
			if err != nil {
				t.Fatal(err)
			}
			tr, _, _ := choose.Choose(build, choose.Effort)
			add(recipe, shop, tr.Moments, tr.Gaps)
		}
	}
	for _, n := range []int{32, 100} {
		files, _ := generated(1, n)
		build, _, err := schema.Load(withClub(t, files), "r", "recipes/shops/club")
		if err != nil {
			t.Fatal(err)
		}
		tr, _, _ := choose.Choose(build, choose.Effort)
		add(fmt.Sprintf("generated, %d operations", n), "club", tr.Moments, tr.Gaps)
	}
	for _, holes := range []int{20, 200} {
		build, _, err := schema.Load(withClub(t, plate(holes)), "r", "recipes/shops/club")
		if err != nil {
			t.Fatal(err)
		}
		tr, _, _ := choose.Choose(build, choose.Effort)
		add(fmt.Sprintf("a plate of %d holes", holes), "club", tr.Moments, tr.Gaps)
	}
	if *renew {
		if err := os.WriteFile(effortTable, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(effortTable)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != b.String() {
		t.Errorf("played now:\n%s\nkept:\n%s", b.String(), want)
	}
}
