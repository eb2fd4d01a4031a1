package schema

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"fettle/schema/finding"
	"fettle/schema/text"
)

// Slip is a rule about how a recipe or shop is written. Slips need no dry run: a file that
// has one says something other than what was meant, or nothing at all.
type Slip struct {
	Name, Title, Why string
	Level            finding.Level
}

// Names of the slips, as findings carry them.
const (
	slipCannotRead    = "cannot-be-read"
	slipNotAFile      = "not-a-plain-file"
	slipTooLarge      = "too-large-to-read"
	slipTooDeep       = "too-deeply-nested"
	slipTooLong       = "too-long-to-read"
	slipNotLanguage   = "not-in-this-language"
	slipOutOfPlace    = "out-of-place"
	slipUnknownWord   = "unknown-word"
	slipRefusedWord   = "refused-word"
	slipLabel         = "label-not-right"
	slipNameTwice     = "name-used-twice"
	slipGivenTwice    = "given-twice"
	slipNotGiven      = "not-given"
	slipOneTooMany    = "one-too-many"
	slipUnknownName   = "unknown-name"
	slipNotInShop     = "not-in-this-shop"
	slipWrongValue    = "wrong-kind-of-value"
	slipWrongThing    = "wrong-kind-of-thing"
	slipOutOfRange    = "out-of-range"
	slipCircle        = "goes-round-in-circle"
	slipNought        = "divides-by-nought"
	slipNotAFigure    = "not-a-figure"
	slipUnknownSupply = "shop-not-found"
	slipTooMany       = "too-many-mistakes"
)

// Slips lists the rules of the language in the order in which they are explained.
var Slips = []Slip{
	{slipCannotRead, "The file cannot be read", "A file is read as blocks, attributes and values. Where a bracket, a quote or an equals sign is missing, what follows is guesswork, so nothing else in the build is judged until it is put right.", finding.Stop},
	{slipNotAFile, "A name ends in .hcl but is no plain file", "Only plain files are read. A folder, a pipe or a device of that name is left alone.", finding.Stop},
	{slipTooLarge, "The file is too large", "A recipe is written by a person. A file of more than 1 MiB was most likely put there by mistake.", finding.Stop},
	{slipTooDeep, "Brackets are nested too deeply", "Brackets within brackets are read down to 64 levels. No build needs more, and far more would only hold up the reading.", finding.Stop},
	{slipTooLong, "A calculation or a text is too long", "One calculation may have 256 signs, one text 1,000 pieces. Split it into figures with names: given { … }.", finding.Stop},
	{slipNotLanguage, "Not a part of the recipe language", "A value is a figure, a text, a reference, a calculation, a list or an object. Loops, here-texts and directives inside texts are not read, so that a build stays what it says.", finding.Stop},
	{slipOutOfPlace, "A block stands where it means nothing", "Features and set-ups stand in a part, steps in a set-up, things of a shop at the top of a file.", finding.Stop},
	{slipUnknownWord, "A word that means nothing here", "Every kind of block has its own attributes. One that is mistyped would otherwise be passed over, and with it what it was meant to say.", finding.Stop},
	{slipRefusedWord, "A word that means two things", "Some words of the trade mean one thing to one person and another to the next. They are refused, and the sentence says which words are clear.", finding.Stop},
	{slipLabel, "A label is missing, or one too many", "A label is the name by which other blocks refer to a block.", finding.Stop},
	{slipNameTwice, "Two blocks have the same name", "A reference must lead to one thing only.", finding.Stop},
	{slipGivenTwice, "Something is given twice", "Only one of two values can hold, and the file does not say which.", finding.Stop},
	{slipNotGiven, "Something that must be said is missing", "Most things can be left out and are worked out, chosen or not known. A few decide what the block is, and must be said.", finding.Stop},
	{slipOneTooMany, "Only one of these may be given", "Each of them settles the same thing.", finding.Stop},
	{slipUnknownName, "Nothing has this name", "A reference leads to a block by its kind and label. Where no block has that name, the reference leads nowhere.", finding.Stop},
	{slipNotInShop, "Not in this shop", "The recipe asks for one particular thing, and the shop it is checked against does not have it. Leave it out, and what the shop has is chosen.", finding.Stop},
	{slipWrongValue, "The wrong kind of value", "A length, a thread, a list and a reference are written in different ways; the sentence says which is wanted here.", finding.Stop},
	{slipWrongThing, "The wrong kind of thing", "A reference leads to something of a kind that makes no sense here.", finding.Stop},
	{slipOutOfRange, "A figure that cannot be", "No workpiece has a length below nought or a side longer than 100 m; a figure like that was mistyped.", finding.Stop},
	{slipCircle, "Figures that depend on each other", "Each figure of the circle is worked out from the next, so none of them can be worked out.", finding.Stop},
	{slipNought, "Divided by nought", "Nothing can be divided by nought.", finding.Stop},
	{slipNotAFigure, "Not a figure that can be reckoned with", "The figure is so large or so small that no machine could tell it from infinity or from nought.", finding.Stop},
	{slipUnknownSupply, "The shop that the recipe names cannot be read", "Without a shop nothing is known of the machines and tools.", finding.Stop},
	{slipTooMany, "Too many mistakes to tell of", "Most likely one of the first has caused the others: a word that was mistyped everywhere, or a file that is no recipe.", finding.Stop},
}

func slipLevel(name string) finding.Level {
	for i := range Slips {
		if Slips[i].Name == name {
			return Slips[i].Level
		}
	}
	panic("no slip is called " + name)
}

// say enters one finding. The same is said at one place only once.
func (r *reader) say(rule string, at text.Place, sentence string) {
	key := saidKey{rule, sentence, at}
	if r.said[key] || r.full() {
		return
	}
	if len(r.finds) == mostFindings-1 {
		rule, sentence = slipTooMany, fmt.Sprintf("more than %d mistakes: put those above right first, the rest was not looked at", mostFindings-1)
	}
	if r.said == nil {
		r.said = map[saidKey]bool{}
	}
	r.said[key] = true
	r.finds = append(r.finds, finding.Finding{
		Rule:      rule,
		Level:     slipLevel(rule),
		Judgement: finding.Fact,
		Cause:     at.File + ":" + rule + ":" + shown(string(r.bytes(at))),
		Place:     at,
		Says:      sentence,
	})
}

// sayAlso is say with a second place and what is to be seen there.
func (r *reader) sayAlso(rule string, at text.Place, sentence string, also text.Place, there string) {
	n := len(r.finds)
	r.say(rule, at, sentence)
	if len(r.finds) > n {
		r.finds[n].Also = []finding.Note{{Place: also, Says: there}}
	}
}

// once says what one member of a list is wrong in, unless it is word for word what was said of
// the member before; it gives back what was said.
func (r *reader) once(before string, complain func()) string {
	n := len(r.finds)
	complain()
	if len(r.finds) == n {
		return before
	}
	says := r.finds[n].Says
	if says == before {
		r.finds = r.finds[:n]
	}
	return says
}

// mostFindings is how many mistakes one reading tells of: more than a person reads at a
// time, and each costs a search for what was meant.
const mostFindings = 500

func (r *reader) full() bool { return len(r.finds) >= mostFindings }

// near is the nearest known word, while there is still something to say.
func (r *reader) near(word string, known []string) string {
	if r.full() {
		return ""
	}
	return near(word, known)
}

type saidKey struct {
	rule, says string
	at         text.Place
}

func (r *reader) bytes(at text.Place) []byte {
	b := r.sources.Bytes(at.File)
	if at.From < 0 || at.To > len(b) || at.From > at.To {
		return nil
	}
	return b[at.From:at.To]
}

// longest is how much of something typed is shown in a sentence, in code points.
const longest = 60

// shown makes typed text fit to be shown: what does not print, or turns the direction of
// writing, is escaped, and long text is cut.
func shown(s string) string {
	var b strings.Builder
	n := 0
	for _, c := range s {
		if n++; n > longest {
			b.WriteString("…")
			break
		}
		if c == '\t' || c == '\n' || c == '\r' {
			b.WriteByte(' ')
			continue
		}
		if unicode.IsPrint(c) {
			b.WriteRune(c)
			continue
		}
		q := strconv.QuoteRune(c)
		b.WriteString(q[1 : len(q)-1])
	}
	return b.String()
}

// quoted shows typed text in quotes.
func quoted(s string) string { return `"` + shown(strings.ReplaceAll(s, `"`, `\"`)) + `"` }

// either lists words as a person does: "a, b or c".
func either(words []string) string { return listed(words, " or ") }

// all lists words as a person does: "a, b and c".
func all(words []string) string { return listed(words, " and ") }

func listed(words []string, last string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + last + words[n-1]
	}
}

// several says whether a word stands for more than one: parallels, clamps, rules of thumb.
func several(word string) bool {
	return strings.HasSuffix(word, "s") && word != "radius" || word == "teeth" || word == "rules of thumb"
}

// article puts "a" or "an" before a word.
func article(word string) string {
	if several(word) {
		return word
	}
	if word != "" && strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

// plain is a kind or attribute in words: "dividing_head" is "dividing head".
func plain(word string) string { return strings.ReplaceAll(word, "_", " ") }
