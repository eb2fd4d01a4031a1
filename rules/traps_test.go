package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fettle/rules"
)

const trapsTable = "../testdata/traps.tsv"

// trapCounts is how many rows each letter of the list of traps has.
var trapCounts = map[string]int{"A": 22, "B": 18, "C": 25, "D": 29, "E": 17, "F": 20, "G": 12, "H": 18, "I": 10, "J": 7}

// The table of traps says of every row what looks after it. Its rules are those that name the row; what it
// says of the sheet stands in the words of the sheet; a row that neither looks after says why.
func TestTraps(t *testing.T) {
	raw, err := os.ReadFile(trapsTable)
	if err != nil {
		t.Fatal(err)
	}
	of, words := rulesByRow(), sheetWords(t)
	lines := strings.Split(strings.TrimSuffix(string(raw), "\n"), "\n")
	seen := map[string]bool{}
	next := map[string]int{}
	head := false
	for i, line := range lines {
		c := strings.Split(line, "\t")
		switch {
		case strings.HasPrefix(line, "#"):
			continue
		case len(c) != 5:
			t.Fatalf("line %d has %d columns", i+1, len(c))
		case !head:
			head = true
			continue
		}
		row, letter := c[0], c[0][:1]
		next[letter]++
		if seen[row] = true; row != fmt.Sprintf("%s%d", letter, next[letter]) || c[1] == "" {
			t.Errorf("line %d: %s is not the next row, or says nothing", i+1, row)
		}
		want := strings.Join(of[row], " ")
		if *renew {
			c[2] = want
			lines[i] = strings.Join(c, "\t")
		} else if c[2] != want {
			t.Errorf("%s is looked after by %q, and the table says %q", row, want, c[2])
		}
		for _, w := range strings.Split(c[3], " | ") {
			if !strings.Contains(words, w) {
				t.Errorf("%s: the sheet says nothing like %q", row, w)
			}
		}
		if want == "" && c[3] == "" && c[4] == "" {
			t.Errorf("nothing looks after %s, and the table does not say why", row)
		}
	}
	for letter, n := range trapCounts {
		if next[letter] != n {
			t.Errorf("%d rows of %s; %d are wanted", next[letter], letter, n)
		}
	}
	for row := range of {
		if !seen[row] {
			t.Errorf("%s covers %s, which is no row", of[row][0], row)
		}
	}
	if *renew {
		if err := os.WriteFile(trapsTable, []byte(strings.Join(lines, "\n")+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// rulesByRow lists for each row the rules that name it, by name.
func rulesByRow() map[string][]string {
	of := map[string][]string{}
	for _, r := range rules.Catalogue() {
		for _, row := range r.Rows {
			of[row] = append(of[row], r.Name)
		}
	}
	for row := range of {
		slices.Sort(of[row])
	}
	return of
}

// sheetWords is all that the sheet can say, as it stands in its source.
func sheetWords(t *testing.T) string {
	files, err := filepath.Glob("../cmd/fettle/sheet/*.go")
	if err != nil || len(files) == 0 {
		t.Fatal("no sheet", err)
	}
	var all strings.Builder
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") {
			continue
		}
		raw, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(raw)
	}
	return all.String()
}
