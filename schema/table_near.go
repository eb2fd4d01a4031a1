package schema

import "strings"

// near gives the known word that a mistyped one most likely means: the one that the fewest
// slips of a key lead to (a letter too many, too few, another, or two swapped); of as many,
// the first in the list. It gives "" where none is near: more than one slip for every three
// letters, at least one. Capitals, minus, blank and underline are no difference.
func near(word string, known []string) string {
	const longest = 60 // a word of the language is far shorter; longer ones are not compared
	if word == "" || len(word) > longest {
		return ""
	}
	w := []rune(plainWord(word))
	best, least := "", max(1, len(w)/3)+1
	for _, k := range known {
		if k == "" || len(k) > longest {
			continue
		}
		c := []rune(plainWord(k))
		if d := slips(w, c); d < least && d < max(len(w), len(c)) {
			best, least = k, d
		}
	}
	return best
}

func plainWord(s string) string {
	return strings.NewReplacer("_", "", "-", "", " ", "").Replace(strings.ToLower(s))
}

// slips counts how many letters must be put in, taken out, changed or swapped with their
// neighbour to make one word of another (the restricted Damerau distance).
func slips(a, b []rune) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range b {
		rows[0][j+1] = j + 1
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(a)][len(b)]
}
