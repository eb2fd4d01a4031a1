package main

import (
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
// listed before it. What stands behind each package is all that it may import besides the
// standard library and lower floors; packages of the standard library that reach outside
// (os, net, time's clock is not seen here) belong to the top floor alone.
var floors = []struct {
	name    string
	floor   int
	outside []string
}{
	{"schema/text", 1, nil},
	{"schema/finding", 1, nil},
	{"schema/drawing", 1, nil},
	{"schema/model", 1, nil},
	{"schema/handbook", 1, nil},
	{"schema/mark", 1, nil},
	{"schema", 2, []string{"github.com/hashicorp/hcl/v2", "github.com/zclconf/go-cty", "github.com/agext/levenshtein"}},
	{"eval/reckon/fit", 3, nil},
	{"eval/reckon/thread", 3, nil},
	{"eval/reckon/cutting", 3, nil},
	{"eval/reckon/cover", 3, nil},
	{"eval/reckon/order", 3, nil},
	{"eval/reckon/chain", 3, nil},
	{"eval/solid", 4, nil},
	{"eval", 5, nil},
	{"rules", 6, nil},
	{"rules/choose", 7, nil},
	{"cmd/fettle/report", 8, []string{"github.com/fatih/color"}},
	{"cmd/fettle", 8, []string{"github.com/fatih/color"}},
}

// reachesOut lists what of the standard library only the top floor may import.
var reachesOut = []string{"os", "os/exec", "net", "net/http", "syscall", "plugin"}

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
			judge(t, i, im, rank)
		}
	}
	for _, f := range floors {
		if !seen[f.name] {
			t.Errorf("%s is in the list and holds no Go code", f.name)
		}
	}
}

func judge(t *testing.T, i int, im string, rank map[string]int) {
	t.Helper()
	me := floors[i]
	if own, ok := strings.CutPrefix(im, "fettle/"); ok {
		j, known := rank[own]
		switch {
		case !known:
			t.Errorf("%s imports %s, which has no floor", me.name, own)
		case floors[j].floor > me.floor || floors[j].floor == me.floor && j >= i:
			t.Errorf("%s (floor %d) imports %s (floor %d)", me.name, me.floor, own, floors[j].floor)
		}
		return
	}
	if !strings.Contains(strings.SplitN(im, "/", 2)[0], ".") {
		if slices.Contains(reachesOut, im) && me.floor < 8 {
			t.Errorf("%s imports %s, which reaches outside", me.name, im)
		}
		return
	}
	for _, o := range me.outside {
		if im == o || strings.HasPrefix(im, o+"/") {
			return
		}
	}
	t.Errorf("%s imports %s, which is not on its list", me.name, im)
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
