package schema

import "unicode"

// near gives the known word that a mistyped one most likely means: the one that the fewest
// slips of a key lead to (a letter too many, too few, another, or two swapped); of as many,
// the first in the list. It gives "" where none is near: more than one slip for every three
// letters, at least one. Capitals, minus, blank and underline are no difference.
func near(word string, known []string) string {
	const longest = 60 // a word of the language is far shorter; longer ones are not compared
	if word == "" || len(word) > longest {
		return ""
	}
	w := plainRunes(nil, word)
	best, least := "", max(1, len(w)/3)+1
	var c []rune
	for _, k := range known {
		if k == "" || len(k) > longest {
			continue
		}
		c = plainRunes(c[:0], k)
		if d := len(w) - len(c); d >= least || -d >= least {
			continue // as many letters too many or too few
		}
		if d := slips(w, c); d < least && d < max(len(w), len(c)) {
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
// neighbour to make one word of another (the restricted Damerau distance).
func slips(a, b []rune) int {
	var last, row, next []int // of the letter before the last, the last, this one
	last, row, next = make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		next[0] = i
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
		}
		last, row, next = row, next, last
	}
	return row[len(b)]
}
