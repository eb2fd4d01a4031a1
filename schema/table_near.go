package schema

import "unicode"

// longestWord is the longest word that is compared; those of the language are far shorter.
const longestWord = 60

// Near gives the known word that a mistyped one most likely means, "" where none is near; see near.
func Near(word string, known []string) string { return near(word, known) }

// near gives the known word that a mistyped one most likely means: the one that the fewest
// slips of a key lead to (a letter too many, too few, another, or two swapped); of as many,
// the first in the list. It gives "" where none is near: more than one slip for every three
// letters, at least one. Capitals, minus, blank and underline are no difference.
func near(word string, known []string) string {
	if word == "" || len(word) > longestWord {
		return ""
	}
	w := plainRunes(nil, word)
	best, least := "", max(1, len(w)/3)+1
	var c []rune
	for _, k := range known {
		if k == "" || len(k) > longestWord {
			continue
		}
		c = plainRunes(c[:0], k)
		if d := len(w) - len(c); d >= least || -d >= least {
			continue // as many letters too many or too few
		}
		if d := slips(w, c, least); d < least && d < max(len(w), len(c)) {
			best, least = k, d
		}
	}
	return best
}

// plainRunes adds the letters that count, small.
func plainRunes(to []rune, s string) []rune {
	for _, r := range s {
		if r != '_' && r != '-' && r != ' ' {
			to = append(to, unicode.ToLower(r))
		}
	}
	return to
}

// slips counts how many letters must be put in, taken out, changed or swapped with their
// neighbour to make one word of another (the restricted Damerau distance). It stops at
// enough. Neither word may be longer than longestWord.
func slips(a, b []rune, enough int) int {
	var rows [3][longestWord + 1]int
	last, row, next := &rows[0], &rows[1], &rows[2] // of the letter before the last, the last, this one
	for j := range b {
		row[j+1] = j + 1
	}
	for i := 1; i <= len(a); i++ {
		next[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := min(row[j]+1, next[j-1]+1, row[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, last[j-2]+1)
			}
			next[j] = d
			least = min(least, d)
		}
		if least > enough {
			return least // a swap reaches one row back, never below enough
		}
		last, row, next = row, next, last
	}
	return row[len(b)]
}
