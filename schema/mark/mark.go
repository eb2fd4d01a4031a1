// Package mark reads what a case expects to be found, from marks that stand in the case
// itself, and compares it with what was found.
//
// A mark is a comment line under the line at fault:
//
//	hold = vise.smal
//	#      ^^^^^^^^^ unknown-name: no vise is called "smal"; the nearest is vise.small
//
// The carets stand exactly under the words that the finding covers; what follows is the rule
// and the whole sentence. Several mark lines may stand under one line. For a finding in the
// first column, where no caret can stand, the mark says how many columns it is to be moved
// left: "# <5 ^^^^ rule: sentence". A finding that stands in no line is written
// "# - rule: sentence" at the end of the file.
package mark

import (
	"bytes"
	"fmt"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"fettle/schema/finding"
	"fettle/schema/text"
)

// Mark is one finding that a case expects. Line and Column count from 1 in the file without
// its marks; Column and Length count code points. Line 0: it stands in no line.
type Mark struct {
	File                 string
	Line, Column, Length int
	Rule, Says           string
}

func (m Mark) String() string {
	return fmt.Sprintf("%s:%d:%d+%d %s: %s", m.File, m.Line, m.Column, m.Length, m.Rule, m.Says)
}

// Read takes the marks out of a file: what is left is what is checked.
func Read(file string, src []byte) (clean []byte, marks []Mark, err error) {
	var out [][]byte
	for n, line := range bytes.Split(src, []byte("\n")) {
		m, is, err := parse(string(line))
		if err != nil {
			return nil, nil, fmt.Errorf("%s:%d: %w", file, n+1, err)
		}
		if !is {
			out = append(out, line)
			continue
		}
		m.File = file
		if m.Column > 0 {
			m.Line = len(out)
		}
		marks = append(marks, m)
	}
	return bytes.Join(out, []byte("\n")), marks, nil
}

// parse reads one line as a mark; false where it is none.
func parse(line string) (Mark, bool, error) {
	rest := strings.TrimLeft(line, " \t")
	if !strings.HasPrefix(rest, "#") {
		return Mark{}, false, nil
	}
	body := strings.TrimLeft(rest[1:], " ")
	left := 0
	if strings.HasPrefix(body, "<") {
		word, after, _ := strings.Cut(body[1:], " ")
		n, err := strconv.Atoi(word)
		if err != nil {
			return Mark{}, false, nil
		}
		left, body = n, strings.TrimLeft(after, " ")
	}
	var m Mark
	switch {
	case strings.HasPrefix(body, "^"):
		start := len(line) - len(body)
		m.Length = len(body) - len(strings.TrimLeft(body, "^"))
		m.Column = utf8.RuneCountInString(line[:start]) + 1 - left
		body = body[m.Length:]
	case strings.HasPrefix(body, "- ") && left == 0:
		body = body[1:]
		if !strings.Contains(body, ": ") {
			return Mark{}, false, nil
		}
	default:
		return Mark{}, false, nil
	}
	rule, says, ok := strings.Cut(strings.TrimSpace(body), ": ")
	if !ok || strings.ContainsAny(rule, " \t") {
		return Mark{}, false, fmt.Errorf("a mark reads \"^^^ rule-name: sentence\"")
	}
	m.Rule, m.Says = rule, says
	return m, true, nil
}

// Of gives the marks that findings would have, in the order of their places.
func Of(sources *text.Sources, found []finding.Finding) []Mark {
	var out []Mark
	for _, f := range found {
		at := sources.Mark(f.Place)
		m := Mark{File: at.File, Line: at.Line, Column: at.Column, Length: at.Length, Rule: f.Rule, Says: f.Says}
		if m.Line == 0 {
			m.Column, m.Length = 0, 0
		}
		out = append(out, m)
	}
	order(out)
	return out
}

func order(ms []Mark) {
	sort.SliceStable(ms, func(i, j int) bool {
		a, b := ms[i], ms[j]
		switch {
		case a.File != b.File:
			return a.File < b.File
		case a.Line != b.Line:
			return a.Line < b.Line
		case a.Column != b.Column:
			return a.Column < b.Column
		case a.Length != b.Length:
			return a.Length < b.Length
		case a.Rule != b.Rule:
			return a.Rule < b.Rule
		}
		return a.Says < b.Says
	})
}

// Compare says where what was found differs from what is expected: one line for each mark
// that was not found and for each finding that has no mark; nothing where they agree.
// A mark of no length in a line of no length covers one column: a caret must be seen.
func Compare(want, found []Mark) []string {
	count := map[Mark]int{}
	for _, m := range found {
		count[seen(m)]++
	}
	var out []string
	for _, m := range want {
		if count[seen(m)]--; count[seen(m)] < 0 {
			out = append(out, "not found: "+m.String())
		}
	}
	for _, m := range found {
		if count[seen(m)] > 0 {
			count[seen(m)]--
			out = append(out, "found without a mark: "+m.String())
		}
	}
	return out
}

func seen(m Mark) Mark {
	if m.Line > 0 {
		m.Length = max(m.Length, 1)
	}
	return m
}

// Write puts marks into a clean file: what Read would take out again.
func Write(clean []byte, marks []Mark) []byte {
	ms := append([]Mark(nil), marks...)
	order(ms)
	lines := strings.Split(string(clean), "\n")
	var out []string
	var nowhere []string
	next := 0
	for next < len(ms) && ms[next].Line == 0 {
		nowhere = append(nowhere, "# - "+ms[next].Rule+": "+ms[next].Says)
		next++
	}
	for n, line := range lines {
		out = append(out, line)
		for next < len(ms) && ms[next].Line == n+1 {
			out = append(out, render(seen(ms[next])))
			next++
		}
	}
	if len(nowhere) > 0 {
		if last := len(out) - 1; last >= 0 && out[last] == "" {
			out = append(out[:last], append(nowhere, "")...)
		} else {
			out = append(out, nowhere...)
		}
	}
	return []byte(strings.Join(out, "\n"))
}

// render draws a mark as its comment line.
func render(m Mark) string {
	carets := strings.Repeat("^", m.Length) + " " + m.Rule + ": " + m.Says
	if m.Column > 1 {
		return "#" + strings.Repeat(" ", m.Column-2) + carets
	}
	return "# <5 " + carets
}
