// Package printed reads the tables of printed values that tests check against. Tests alone
// use it.
package printed

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Rows reads testdata/published/NAME of the project: columns parted by tabs, of which the
// last names the source and is never empty. Lines that begin with # are remarks, and the
// first other line names the columns.
func Rows(t testing.TB, name string, columns int) [][]string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(root(t), "testdata", "published", name))
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]string
	head := true
	for line := range strings.Lines(string(b)) {
		line = strings.TrimRight(line, "\n")
		if strings.HasPrefix(line, "#") {
			continue
		}
		if head {
			head = false
			continue
		}
		f := strings.Split(line, "\t")
		if len(f) != columns || f[columns-1] == "" {
			t.Fatalf("%s: row without its %d columns: %q", name, columns, line)
		}
		rows = append(rows, f)
	}
	return rows
}

// root is the project's own folder, above the package under test.
func root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod above the package under test")
		}
		dir = up
	}
}

// Figure reads a figure.
func Figure(t testing.TB, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// Figures reads figures parted by blanks.
func Figures(t testing.TB, s string) (out []float64) {
	t.Helper()
	for _, w := range strings.Fields(s) {
		out = append(out, Figure(t, w))
	}
	return out
}
