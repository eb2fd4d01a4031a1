package mark

import (
	"strings"
	"testing"
)

const marked = `vise "small" {
# <5 ^^^^ first-column: at the start of a line
#    ^^^^^^^ with-blanks: two: of them
  jaw_widht = 50
# ^^^^^^^^^ unknown-word: ½ a sentence
}
# an ordinary comment
#- neither
# - in-no-line: for the whole folder
`

const unmarked = `vise "small" {
  jaw_widht = 50
}
# an ordinary comment
#- neither
`

// What Read takes out, Write puts back: the marks and the clean file are the whole case.
func TestReadAndWriteAreEachOthersInverse(t *testing.T) {
	clean, marks, err := Read("a.hcl", []byte(marked))
	if err != nil {
		t.Fatal(err)
	}
	if string(clean) != unmarked {
		t.Errorf("clean file:\n%s", clean)
	}
	want := []Mark{
		{"a.hcl", 1, 1, 4, "first-column", "at the start of a line"},
		{"a.hcl", 1, 6, 7, "with-blanks", "two: of them"},
		{"a.hcl", 2, 3, 9, "unknown-word", "½ a sentence"},
		{"a.hcl", 0, 0, 0, "in-no-line", "for the whole folder"},
	}
	if got := Compare(want, marks); len(got) > 0 {
		t.Error(strings.Join(got, "\n"))
	}
	if got := string(Write(clean, marks)); got != marked {
		t.Errorf("written again:\n%s", got)
	}
}

// Compare must miss nothing: a mark too many, one too few, the same finding twice.
func TestCompareSeesEveryDifference(t *testing.T) {
	a := Mark{"a.hcl", 1, 1, 4, "one", "says"}
	b := Mark{"a.hcl", 1, 1, 4, "one", "says more"}
	for _, c := range []struct {
		want, found []Mark
		lines       int
	}{
		{[]Mark{a}, []Mark{a}, 0},
		{[]Mark{a}, nil, 1},
		{nil, []Mark{a}, 1},
		{[]Mark{a}, []Mark{b}, 2},
		{[]Mark{a}, []Mark{a, a}, 1},
		{[]Mark{a, a}, []Mark{a}, 1},
	} {
		if got := Compare(c.want, c.found); len(got) != c.lines {
			t.Errorf("Compare(%v, %v) = %q, want %d lines", c.want, c.found, got, c.lines)
		}
	}
}

// A mark without a rule is a mistake in the case, not a comment.
func TestReadRefusesHalfAMark(t *testing.T) {
	if _, _, err := Read("a.hcl", []byte("x = 1\n#  ^^^ no rule here")); err == nil {
		t.Error("half a mark was read")
	}
}
