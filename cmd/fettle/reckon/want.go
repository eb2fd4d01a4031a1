package reckon

import (
	"fmt"
	"strconv"
	"strings"
)

// Kind is what a word must be.
type Kind uint8

const (
	Text    Kind = iota + 1 // as it stands
	Texts                   // several, with commas between
	OneOf                   // one of Want.Of
	YesNo                   // a flag alone means yes; --flag=no
	Whole                   // whole number
	Wholes                  // several, with commas between
	Number                  // pure number: 40, 2.5, 127/50; kept exact
	Length                  // as drawings write it: 12, 3/8 in, 5 thou; kept exact
	Lengths                 // several, with commas between
	Sizes                   // a drawer: lengths, "1..10 by 0.1", "number drills", "#7", with commas between
	Pitch                   // a length, or "8 tpi"; kept exact
	Angle                   // 22.5, 22 deg 30'
)

// Want is what one word behind the subject, or one flag, must be.
type Want struct {
	Name        string // of a word in capitals, "SIZE"; of a flag without its dashes, "hole"
	Kind        Kind
	Needed      bool
	Rest        bool     // of the last word, a text: the words left over belong to it, so `fit 12 H7/p6` needs no quotes
	Least, Most float64  // both in; lengths mm, angles degrees. Both 0: the widest range of the kind
	Of          []string // of OneOf
	Says        string   // what it is, for the usage page
}

// common are the flags of every subject.
var common = []Want{
	{Name: "shop", Kind: Text, Says: "folder of a shop: what no flag says is taken from its things"},
	{Name: "with", Kind: Texts, Says: "of the shop's things of a kind take this one, such as drill.jobbers; several with commas"},
	{Name: "units", Kind: OneOf, Of: []string{"mm", "in"}, Says: "what a bare length means (left out: mm)"},
	{Name: "format", Kind: OneOf, Of: []string{"text", "json"}, Says: "how to answer (left out: text)"},
	{Name: "all", Kind: YesNo, Says: "show tables at their full length"},
	{Name: "help", Kind: YesNo, Says: "show this page"},
}

// isWord says whether it stands behind the subject without dashes: its name is in capitals.
func (w Want) isWord() bool { return w.Name == strings.ToUpper(w.Name) }

func (w Want) shown() string {
	if w.isWord() {
		return w.Name
	}
	return "--" + w.Name
}

// bounds gives the range that holds, both ends in.
func (w Want) bounds() (least, most float64) {
	if w.Least != 0 || w.Most != 0 {
		return w.Least, w.Most
	}
	switch w.Kind {
	case Whole, Wholes:
		return 1, 1e6
	case Number:
		return -1e9, 1e9
	case Angle:
		return -360, 360
	case Pitch:
		return 0.01, 1000
	}
	return 0, 1e5
}

// wanted says what the word must be, with its range.
func (w Want) wanted() string {
	lo, hi := w.bounds()
	switch w.Kind {
	case Text:
		return "words"
	case Texts:
		return "words with commas between"
	case OneOf:
		return strings.Join(w.Of, " or ")
	case YesNo:
		return "nothing behind it, or =yes or =no"
	case Whole:
		return fmt.Sprintf("a whole number from %s to %s", plain(lo), plain(hi))
	case Wholes:
		return fmt.Sprintf("whole numbers from %s to %s with commas between", plain(lo), plain(hi))
	case Number:
		return fmt.Sprintf("a number from %s to %s, such as 2.5 or 5/2", plain(lo), plain(hi))
	case Length:
		return fmt.Sprintf("a length from %s to %s mm, such as 12, 3/8 in or 5 thou", plain(lo), plain(hi))
	case Lengths:
		return fmt.Sprintf("lengths from %s to %s mm with commas between", plain(lo), plain(hi))
	case Sizes:
		return fmt.Sprintf(`sizes from %s to %s mm with commas between, such as 4.8, 5 or 1..10 by 0.1 or number drills`, plain(lo), plain(hi))
	case Pitch:
		return fmt.Sprintf("a pitch from %s to %s mm, such as 1.5 or 8 tpi", plain(lo), plain(hi))
	}
	return fmt.Sprintf("an angle from %s to %s degrees, such as 22.5 or 22 deg 30'", plain(lo), plain(hi))
}

// stands is what the usage line shows for the value.
func (w Want) stands() string {
	switch w.Kind {
	case Text:
		return "WORDS"
	case OneOf:
		return strings.Join(w.Of, "|")
	case YesNo:
		return ""
	case Whole, Number:
		return "NUMBER"
	case Length, Pitch, Angle:
		return map[Kind]string{Length: "LENGTH", Pitch: "PITCH", Angle: "ANGLE"}[w.Kind]
	}
	return "LIST"
}

// plain writes a figure without a power of ten.
func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
