package report

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// wide is how many columns a line of the report has.
const wide = 80

// Wrap is wrap for the other pages of the command.
func Wrap(s string, columns int) []string { return wrap(s, columns) }

// wrap breaks a sentence into lines of at most so many columns; words are never split, so
// one that is longer than a line overflows.
func wrap(s string, columns int) []string {
	var lines []string
	line, n := "", 0
	for _, w := range pairs(strings.Fields(s)) {
		w = short(w)
		l := utf8.RuneCountInString(w)
		if n > 0 && n+1+l > columns {
			lines = append(lines, line)
			line, n = "", 0
		}
		if n > 0 {
			line, n = line+" ", n+1
		}
		line, n = line+w, n+l
	}
	if n > 0 || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// longestWord is how much of one word is shown: no name of a thing is longer, and a label of
// a megabyte must not bury the report.
const longestWord = 240

func short(w string) string {
	if utf8.RuneCountInString(w) <= longestWord {
		return w
	}
	return string([]rune(w)[:longestWord]) + "…"
}

// pairs keeps a figure and its unit on one line.
func pairs(words []string) []string {
	var out []string
	for _, w := range words {
		unit := strings.HasPrefix(w, "mm") || strings.HasPrefix(w, "m/min") || strings.HasPrefix(w, "rev/min") || strings.HasPrefix(w, "degrees")
		if n := len(out); unit && n > 0 && out[n-1] != "" && strings.ContainsAny(out[n-1][:1], "-0123456789") {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

// Safe escapes what does not print or turns the direction of writing, so that a label
// cannot dress up the report.
func Safe(s string) string {
	plain := true
	s = strings.ToValidUTF8(s, string(utf8.RuneError))
	for _, r := range s {
		plain = plain && (unicode.IsPrint(r) || r == ' ')
	}
	if plain {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case unicode.IsPrint(r):
			b.WriteRune(r)
		case r == '\t':
			b.WriteString("  ")
		default:
			q := strconv.QuoteRune(r)
			b.WriteString(q[1 : len(q)-1])
		}
	}
	return b.String()
}

// plural writes a count with its word.
func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
