package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// What is written down is obeyed and checked: an attribute that is read from a recipe or a shop and that no
// floor above the language ever looks at changes nothing, and whoever wrote it is not told. This test reads
// the packages above schema with their types and fails for every field of package model that is an
// attribute and that nothing there, nor a method of the model itself, selects.

// exceptions reads testdata/language/unused.tsv: the fields that nothing uses yet, each with its reason. A row
// goes as soon as something asks for the field; the test says which could.
func exceptions(t *testing.T) map[string]string {
	t.Helper()
	all, err := os.ReadFile(filepath.Join("..", "..", "testdata", "language", "unused.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, line := range strings.Split(strings.TrimSpace(string(all)), "\n") {
		name, reason, ok := strings.Cut(line, "\t")
		if strings.HasPrefix(line, "#") {
			continue
		}
		if !ok || reason == "" {
			t.Errorf("%q has no reason", line)
		}
		out[name] = reason
	}
	return out
}

// A field is held against the list by "Struct.Field".
func TestEveryAttributeIsUsed(t *testing.T) {
	p := listed(t)
	used := map[string]bool{}
	im := importer.ForCompiler(p.files, "gc", p.export)
	model, err := im.Import("fettle/schema/model")
	if err != nil {
		t.Fatal(err)
	}
	fields := fieldsOf(model)
	for path, files := range p.sources {
		inner := path == "fettle/schema/model"
		if strings.HasPrefix(path, "fettle/schema") && !inner {
			continue
		}
		pkg, info := p.checked(t, path, files, im)
		names := fields
		if inner {
			names = fieldsOf(pkg)
		}
		for _, s := range info.Selections {
			if s.Kind() == types.FieldVal {
				if name, ok := names[s.Obj()]; ok {
					used[name] = true
				}
			}
		}
	}
	notUsed := exceptions(t)
	var all, could []string
	for _, name := range fields {
		all = append(all, name)
	}
	slices.Sort(all)
	for _, name := range all {
		_, excepted := notUsed[name]
		switch {
		case !used[name] && !excepted:
			t.Errorf("nothing above the language looks at %s: what is written there changes nothing", name)
		case used[name] && excepted:
			could = append(could, name)
		}
	}
	for name := range notUsed {
		if !slices.Contains(all, name) {
			t.Errorf("testdata/language/unused.tsv: the model has no field %s", name)
		}
	}
	if len(all) < 300 || len(used) < 200 {
		t.Errorf("only %d fields were found, %d of them used: the packages were not read", len(all), len(used))
	}
	if len(could) > 0 {
		t.Errorf("used by now, and to be struck off testdata/language/unused.tsv: %s", strings.Join(could, ", "))
	}
}

// module is the packages of this module, as the go command lists them.
type module struct {
	files   *token.FileSet
	sources map[string][]string // by path
	data    map[string]string   // files of export data, by path
}

func (m *module) export(path string) (io.ReadCloser, error) {
	f, ok := m.data[path]
	if !ok {
		return nil, fmt.Errorf("no export data of %s", path)
	}
	return os.Open(f)
}

func listed(t *testing.T) *module {
	t.Helper()
	cmd := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Export,Dir,GoFiles,Standard", "./...")
	cmd.Dir = filepath.Join("..", "..")
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	m := &module{files: token.NewFileSet(), sources: map[string][]string{}, data: map[string]string{}}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p struct {
			ImportPath, Export, Dir string
			GoFiles                 []string
		}
		if err := d.Decode(&p); err == io.EOF {
			return m
		} else if err != nil {
			t.Fatal(err)
		}
		m.data[p.ImportPath] = p.Export
		if strings.HasPrefix(p.ImportPath, "fettle/") {
			for _, f := range p.GoFiles {
				m.sources[p.ImportPath] = append(m.sources[p.ImportPath], filepath.Join(p.Dir, f))
			}
		}
	}
}

func (m *module) checked(t *testing.T, path string, files []string, im types.Importer) (*types.Package, *types.Info) {
	t.Helper()
	var all []*ast.File
	for _, f := range files {
		a, err := parser.ParseFile(m.files, f, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, a)
	}
	info := &types.Info{Selections: map[*ast.SelectorExpr]*types.Selection{}}
	pkg, err := (&types.Config{Importer: im}).Check(path, m.files, all, info)
	if err != nil {
		t.Fatal(err)
	}
	return pkg, info
}

// fieldsOf names the fields of the structs of package model that hold an attribute: those that may be known.
func fieldsOf(model *types.Package) map[types.Object]string {
	out := map[types.Object]string{}
	for _, n := range model.Scope().Names() {
		s, ok := model.Scope().Lookup(n).Type().Underlying().(*types.Struct)
		if !ok {
			continue
		}
		for f := range s.Fields() {
			if named, ok := f.Type().(*types.Named); ok && named.Obj().Name() == "Known" {
				out[f] = n + "." + f.Name()
			}
		}
	}
	return out
}
