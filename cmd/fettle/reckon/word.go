package reckon

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// The bounds keep an answer instant on anything that is pasted in by mistake.
const (
	longestWord = 2000 // bytes
	mostWords   = 200
	mostListed  = 1000 // in one list
)

// said is one word or flag as it was given, and what it came to.
type said struct {
	written string
	yes     bool
	texts   []string
	exact   []*big.Rat // whole numbers and numbers pure, lengths and pitches mm
	deg     float64
	sizes   model.Sizes
}

// quoted shows a word in a message, cut short where it is long, what does not print escaped.
func quoted(s string) string {
	s = strings.ToValidUTF8(s, string(utf8.RuneError))
	if r := []rune(s); len(r) > 40 {
		s = string(r[:37]) + "..."
	}
	return strconv.Quote(s)
}

// look refuses a word that is no writing of the trade, whatever it is for.
func look(word string) error {
	switch {
	case len(word) > longestWord:
		return fmt.Errorf("%s has %d bytes; a word has at most %d", quoted(word), len(word), longestWord)
	case !utf8.ValidString(word):
		return fmt.Errorf("%s is not readable as text", quoted(word))
	case strings.TrimSpace(word) == "":
		return errors.New("a word with nothing in it was given")
	}
	for _, r := range word {
		if !unicode.IsPrint(r) && !strings.ContainsRune("\u00a0\u202f\u2009", r) {
			return fmt.Errorf("%s holds a sign that does not print", quoted(word))
		}
	}
	return nil
}

// read turns a word into what is wanted of it.
func (w *Want) read(word string, bare drawing.Unit) (said, error) {
	s := said{written: word}
	err := w.into(&s, strings.TrimSpace(word), bare)
	if err == nil && len(s.texts)+len(s.exact) > mostListed {
		err = fmt.Errorf("more than %d are listed", mostListed)
	}
	if err != nil {
		return said{}, fmt.Errorf("%s wants %s; %w", w.shown(), w.wanted(), err)
	}
	return s, nil
}

func (w *Want) into(s *said, word string, bare drawing.Unit) (err error) {
	switch w.Kind {
	case Text:
		s.texts = []string{word}
	case Texts:
		s.texts, err = list(word)
	case OneOf:
		if !slices.Contains(w.Of, word) {
			return fmt.Errorf("%s is none of them", quoted(word))
		}
		s.texts = []string{word}
	case YesNo:
		if word != "yes" && word != "no" {
			return fmt.Errorf("%s is neither", quoted(word))
		}
		s.yes = word == "yes"
	case Sizes:
		return w.drawer(&s.sizes, word, bare)
	case Angle:
		if s.deg, err = drawing.ParseAngle(word); err == nil {
			err = w.within(new(big.Rat).SetFloat64(s.deg), word)
		}
	default:
		s.exact, err = w.figures(word, bare)
	}
	return err
}

// list parts a list at its commas.
func list(word string) ([]string, error) {
	if strings.Count(word, ",") >= mostListed {
		return nil, fmt.Errorf("more than %d are listed", mostListed)
	}
	parts := strings.Split(word, ",")
	for i, p := range parts {
		if parts[i] = strings.TrimSpace(p); parts[i] == "" {
			return nil, fmt.Errorf("%s has nothing between two commas or at an end", quoted(word))
		}
	}
	return parts, nil
}

// figures reads the kinds that come to exact figures.
func (w *Want) figures(word string, bare drawing.Unit) (out []*big.Rat, err error) {
	parts := []string{word}
	if w.Kind == Wholes || w.Kind == Lengths {
		if parts, err = list(word); err != nil {
			return nil, err
		}
	}
	for _, p := range parts {
		v, err := w.figure(p, bare)
		if err != nil {
			return nil, err
		}
		if err := w.within(v, p); err != nil {
			return nil, err
		}
		out = append(out, v)
	}
	return out, nil
}

func (w *Want) figure(p string, bare drawing.Unit) (*big.Rat, error) {
	switch w.Kind {
	case Whole, Wholes:
		n, err := strconv.ParseInt(p, 10, 64)
		if err != nil || p[0] == '+' {
			return nil, fmt.Errorf("%s is not one", quoted(p))
		}
		return new(big.Rat).SetInt64(n), nil
	case Number:
		return pure(p)
	case Pitch:
		return pitch(p, bare)
	}
	return drawing.ExactLength(p, bare)
}

// within holds a figure to the range of what is wanted, both ends in. The bounds are taken as
// they are printed, so that 0.1 means one tenth.
func (w *Want) within(v *big.Rat, p string) error {
	lo, hi := w.bounds()
	if v.Sign() == 0 && strings.HasPrefix(strings.TrimSpace(p), "-") {
		return fmt.Errorf("%s: nought has no sign", quoted(p))
	}
	if v.Cmp(decimal(lo)) < 0 || v.Cmp(decimal(hi)) > 0 {
		return fmt.Errorf("%s is outside that", quoted(p))
	}
	return nil
}

// decimal gives the shortest decimal that a float64 stands for: 0.1 is one tenth.
func decimal(x float64) *big.Rat {
	v, ok := new(big.Rat).SetString(plain(x))
	if !ok { // an infinity
		return new(big.Rat)
	}
	return v
}

// pure reads a number without a unit: 40, 2.5, 5/2, 1 1/8.
func pure(p string) (*big.Rat, error) {
	if strings.ContainsFunc(p, func(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune("\"\u2033\u201d", r) }) {
		return nil, fmt.Errorf("%s is not a number without a unit", quoted(p))
	}
	return drawing.ExactLength(p, drawing.Millimetre)
}

// pitch reads a length or threads per inch, and gives mm.
func pitch(p string, bare drawing.Unit) (*big.Rat, error) {
	per, ok := strings.CutSuffix(strings.ToLower(p), "tpi")
	if !ok {
		return drawing.ExactLength(p, bare)
	}
	n, err := pure(strings.TrimSpace(per))
	if err != nil {
		return nil, err
	}
	if n.Sign() <= 0 {
		return nil, fmt.Errorf("%s is not a number of threads", quoted(p))
	}
	return n.Quo(big.NewRat(127, 5), n), nil
}

// drawer reads a set of sizes. A series is kept as such: a million members cost nothing.
func (w *Want) drawer(s *model.Sizes, word string, bare drawing.Unit) error {
	parts, err := list(word)
	if err != nil {
		return err
	}
	for _, p := range parts {
		if set, ok := handbook.Set(p); ok {
			s.List = append(s.List, set.List...)
			continue
		}
		if m, ok := namedDrill(p); ok {
			s.List = append(s.List, m)
			continue
		}
		if from, rest, ok := strings.Cut(p, ".."); ok {
			r, err := w.series(p, from, rest, bare)
			if err != nil {
				return err
			}
			s.Series = append(s.Series, r)
			continue
		}
		mm, err := w.length(p, bare)
		if err != nil {
			return err
		}
		s.List = append(s.List, model.Member{Size: mm})
	}
	return nil
}

func (w *Want) length(p string, bare drawing.Unit) (float64, error) {
	v, err := drawing.ExactLength(strings.TrimSpace(p), bare)
	if err != nil {
		return 0, err
	}
	mm, _ := v.Float64()
	return mm, w.within(v, p)
}

func (w *Want) series(p, from, rest string, bare drawing.Unit) (model.Series, error) {
	to, by, ok := strings.Cut(rest, " by ")
	if !ok {
		return model.Series{}, fmt.Errorf("%s does not say its step, as in 1..10 by 0.1", quoted(p))
	}
	lo, err1 := w.length(from, bare)
	hi, err2 := w.length(to, bare)
	step, err3 := drawing.ParseLength(by, bare)
	if err := cmpErr(err1, err2, err3); err != nil {
		return model.Series{}, err
	}
	if lo > hi || step < 0.001 {
		return model.Series{}, fmt.Errorf("%s: the smaller size comes first, and a step is at least 0.001 mm", quoted(p))
	}
	return model.Series{From: lo, To: hi, By: step}, nil
}

func cmpErr(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// namedDrill gives a drill by the name it has in a usual set: "#7", "F".
func namedDrill(name string) (model.Member, bool) {
	if r, _ := utf8.DecodeRuneInString(name); r != '#' && !unicode.IsUpper(r) {
		return model.Member{}, false
	}
	for _, n := range handbook.SetNames() {
		set, _ := handbook.Set(n)
		for _, m := range set.List {
			if m.Name == name {
				return m, true
			}
		}
	}
	return model.Member{}, false
}
