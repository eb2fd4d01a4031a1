package hostile

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// exported lists the exported functions of the package in a folder, and the exported methods of
// its exported types as Type.Method.
func exported(t *testing.T, dir string) (out []string) {
	t.Helper()
	files, _ := filepath.Glob(filepath.Join(dir, "*.go"))
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Name.IsExported() {
				if name := named(fn); ast.IsExported(name) {
					out = append(out, name)
				}
			}
		}
	}
	slices.Sort(out)
	return out
}

func named(fn *ast.FuncDecl) string {
	if fn.Recv == nil {
		return fn.Name.Name
	}
	of := fn.Recv.List[0].Type
	if s, ok := of.(*ast.StarExpr); ok {
		of = s.X
	}
	if id, ok := of.(*ast.Ident); ok {
		return id.Name + "." + fn.Name.Name
	}
	return fn.Name.Name
}
