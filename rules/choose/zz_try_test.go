package choose_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

func TestTry(t *testing.T) {
	a := text.Archive{}
	root := "../../"
	for _, g := range []string{"recipes/*/*.hcl", "recipes/shops/*/*.hcl"} {
		fs, _ := filepath.Glob(root + g)
		for _, f := range fs {
			b, _ := os.ReadFile(f)
			a[strings.TrimPrefix(f, root)] = b
		}
	}
	rec := os.Getenv("REC")
	if rec == "" {
		rec = "recipes/first"
	}
	t0 := time.Now()
	b, fs, err := schema.Load(a, rec)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range fs {
		fmt.Println(b.Sources.Mark(f.Place), f.Rule, f.Says)
	}
	t1 := time.Now()
	tr, vs, ch := choose.Choose(b, choose.Effort)
	t2 := time.Now()
	r := rules.Judge(tr, vs, "")
	fmt.Println("load", t1.Sub(t0), "choose", t2.Sub(t1), "moments", tr.Moments)
	for _, f := range r.Findings {
		fmt.Println(f.Level, f.Rule, f.Spots, b.Sources.Mark(f.Place), "\n    ", f.Says)
	}
	for _, c := range ch {
		fmt.Println("  chosen", c.Spot, c.What, c.Item)
	}
	for _, c := range r.Tightest {
		fmt.Println("  tight", c.Rule, c.Spot, c.What, c.Margin)
	}
	fmt.Println(r.Unknown)
	fmt.Println(r.Unplayed)
	fmt.Println(r.Asked)
	fmt.Println(r.Questions)
}
