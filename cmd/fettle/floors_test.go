package main

import (
	"fmt"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The floors of the house: a package looks only down, and within a floor only at what is
// listed before it. What stands behind each package is all that it may import besides lower
// floors and the plain part of the standard library.
var floors = []struct {
	name    string
	floor   int
	outside []string
}{
	{"schema/text", 1, nil},
	{"schema/beside", 1, nil},
	{"schema/finding", 1, nil},
	{"schema/drawing", 1, nil},
	{"schema/model", 1, nil},
	{"schema/handbook", 1, nil},
	{"schema/mark", 1, nil},
	{"schema", 2, []string{"github.com/hashicorp/hcl/v2", "github.com/zclconf/go-cty", "github.com/agext/levenshtein", "time"}},
	{"eval/reckon/fit", 3, nil},
	{"eval/reckon/thread", 3, nil},
	{"eval/reckon/cutting", 3, nil},
	{"eval/reckon/cover", 3, nil},
	{"eval/reckon/order", 3, nil},
	{"eval/reckon/chain", 3, nil},
	{"eval/reckon/bar", 3, nil},
	{"eval/reckon/dividing", 3, nil},
	{"eval/reckon/gear", 3, nil},
	{"eval/reckon/dial", 3, nil},
	{"eval/reckon/screwcut", 3, nil},
	{"eval/reckon/taper", 3, nil},
	{"eval/reckon/geometry", 3, nil},
	{"eval/reckon/hold", 3, nil},
	{"eval/reckon/heat", 3, nil},
	{"eval/reckon/press", 3, nil},
	{"eval/reckon/balance", 3, nil},
	{"eval/reckon/rigid", 3, nil},
	{"eval/solid", 4, nil},
	{"eval", 5, nil},
	{"rules", 6, nil},
	{"rules/choose", 7, nil},
	{"schema/printed", 8, nil},                                   // read by tests alone
	{"schema/hostile", 8, nil},                                   // the same
	{"schema/seeded", 8, []string{"flag", "pgregory.net/rapid"}}, // the same
	{"cmd/fettle/sketch", 8, nil},
	{"cmd/fettle/report", 8, []string{"github.com/fatih/color"}},
	{"cmd/fettle/reckon", 8, nil},
	{"cmd/fettle/sheet", 8, []string{"crypto/sha256", "encoding/hex", "html"}},
	{"cmd/fettle", 8, []string{"github.com/fatih/color"}},
}

// plain is what of the standard library any floor may import. It reads no file, clock,
// environment, network or chance: the same input gives the same bytes. ("time" is one word that
// reads a clock; it is on the list of the schema alone, which reads days with it.)
var plain = []string{"bytes", "cmp", "container/heap", "embed", "errors", "fmt", "hash", "hash/fnv", "io/fs", "iter", "maps", "math",
	"math/big", "math/bits", "path", "reflect", "regexp", "slices", "sort", "strconv", "strings", "sync", "unicode", "unicode/utf8"}

func TestFloors(t *testing.T) {
	root := filepath.Join("..", "..")
	rank := map[string]int{}
	for i, f := range floors {
		rank[f.name] = i
	}
	seen := map[string]bool{}
	for dir, imports := range packages(t, root) {
		i, ok := rank[dir]
		if !ok {
			t.Errorf("%s has no floor: enter it in the list above", dir)
			continue
		}
		seen[dir] = true
		for _, im := range imports {
			if wrong := refuse(i, im, rank); wrong != "" {
				t.Errorf("%s imports %s, %s", dir, im, wrong)
			}
		}
	}
	for _, f := range floors {
		if !seen[f.name] {
			t.Errorf("%s is in the list and holds no Go code", f.name)
		}
	}
}

// refuse says why the package of that rank may not import another; "" if it may.
func refuse(i int, im string, rank map[string]int) string {
	me := floors[i]
	if own, ok := strings.CutPrefix(im, "fettle/"); ok {
		j, known := rank[own]
		switch {
		case !known:
			return "which has no floor"
		case floors[j].floor > me.floor || floors[j].floor == me.floor && j >= i:
			return fmt.Sprintf("of floor %d, and stands on floor %d", floors[j].floor, me.floor)
		}
		return ""
	}
	for _, o := range me.outside {
		if im == o || strings.HasPrefix(im, o+"/") {
			return ""
		}
	}
	standard := !strings.Contains(strings.SplitN(im, "/", 2)[0], ".")
	if standard && (me.floor == 8 || slices.Contains(plain, im)) {
		return ""
	}
	return "which is not on its list"
}

// The list refuses what it is there to refuse.
func TestFloorsRefuse(t *testing.T) {
	rank := map[string]int{}
	for i, f := range floors {
		rank[f.name] = i
	}
	for _, c := range []struct {
		from, to string
		may      bool
	}{
		{"eval", "fettle/eval/solid", true},
		{"eval/solid", "fettle/eval", false},
		{"schema/model", "fettle/schema/drawing", true},
		{"schema/drawing", "fettle/schema/model", false}, // one floor, against the order
		{"rules", "fettle/rules", false},
		{"rules", "fettle/somewhere", false},
		{"rules", "os", false},
		{"rules", "math/rand/v2", false},
		{"rules", "time", false},
		{"rules", "sort", true},
		{"cmd/fettle", "os", true},
		{"schema", "github.com/hashicorp/hcl/v2/hclsyntax", true},
		{"eval", "github.com/hashicorp/hcl/v2", false},
		{"schema", "github.com/hashicorp/hcl/v20", false},
		{"cmd/fettle", "github.com/zclconf/go-cty/cty", false},
	} {
		if got := refuse(rank[c.from], c.to, rank); (got == "") != c.may {
			t.Errorf("%s imports %s: %q", c.from, c.to, got)
		}
	}
}

// packages gives the imports of every package that is not test code.
func packages(t *testing.T, root string) map[string][]string {
	out := map[string][]string{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, _ := filepath.Rel(root, path)
		if d.IsDir() {
			if strings.HasPrefix(d.Name(), ".") && rel != "." {
				return fs.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		dir := filepath.ToSlash(filepath.Dir(rel))
		if top := strings.SplitN(dir, "/", 2)[0]; top == "recipes" || top == "testdata" {
			t.Errorf("%s: there is no Go code in %s", rel, top)
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, im := range f.Imports {
			p, _ := strconv.Unquote(im.Path.Value)
			if !slices.Contains(out[dir], p) {
				out[dir] = append(out[dir], p)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// At the top stand the agreed folders and nothing else.
func TestTopLevel(t *testing.T) {
	agreed := []string{"cmd", "schema", "rules", "eval", "recipes", "testdata", "go.mod", "go.sum", "README.md", "DEVELOPERS.md"}
	entries, err := os.ReadDir(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && !slices.Contains(agreed, e.Name()) && e.Name() != "fettle" {
			t.Errorf("%s does not belong at the top", e.Name())
		}
	}
}
