package reckon

import (
	"fmt"
	"slices"
	"strings"

	"fettle/schema"
	"fettle/schema/drawing"
)

// given is a command line of a subject, parted into words and flags, nothing read yet.
type given struct {
	words []string
	flags []flagSaid // in the order given
}

type flagSaid struct {
	want  *Want
	value string
}

// part goes through the words behind a subject. Flags may stand before or behind the words,
// their value behind them or after an equals sign; "--" ends the flags. A word that is a
// negative number is no flag.
func (s *Subject) part(args []string) (given, error) {
	var g given
	if len(args) > mostWords {
		return g, fmt.Errorf("%d words are more than a question has; at most %d are read", len(args), mostWords)
	}
	for len(args) > 0 {
		word := args[0]
		args = args[1:]
		if word == "--" {
			g.words = append(g.words, args...)
			break
		}
		if !isFlag(word) {
			g.words = append(g.words, word)
			continue
		}
		f, took, err := s.flag(word, args)
		if err != nil {
			return g, err
		}
		if slices.ContainsFunc(g.flags, func(o flagSaid) bool { return o.want == f.want }) {
			return g, fmt.Errorf("--%s is given twice", f.want.Name)
		}
		g.flags, args = append(g.flags, f), args[took:]
	}
	for _, w := range g.words {
		if err := look(w); err != nil {
			return g, err
		}
	}
	for _, f := range g.flags {
		if err := look(f.value); err != nil {
			return g, fmt.Errorf("--%s: %w", f.want.Name, err)
		}
	}
	return g, nil
}

// isFlag says whether a word begins with a dash and is no negative figure.
func isFlag(word string) bool {
	return len(word) > 1 && word[0] == '-' && !strings.ContainsRune("0123456789.", rune(word[1]))
}

// flag reads one flag and says how many of the words behind it belong to it.
func (s *Subject) flag(word string, behind []string) (f flagSaid, took int, err error) {
	name, value, has := strings.Cut(word, "=")
	f.want = nil
	if strings.HasPrefix(name, "--") {
		f.want = s.want(name[2:])
	}
	switch {
	case f.want == nil || f.want.isWord():
		return f, 0, s.unknown(name)
	case has:
	case f.want.Kind == YesNo:
		value = "yes"
	case len(behind) == 0 || isFlag(behind[0]):
		return f, 0, fmt.Errorf("%s wants %s behind it", f.want.shown(), f.want.wanted())
	default:
		value, took = behind[0], 1
	}
	f.value = value
	return f, took, nil
}

func (s *Subject) unknown(name string) error {
	var names []string
	for _, list := range [][]Want{s.Flags, common} {
		for _, w := range list {
			names = append(names, w.shown())
		}
	}
	if n := schema.Near(name, names); n != "" {
		return fmt.Errorf("%s has no %s; %s is near", s.Name, quoted(name), n)
	}
	return fmt.Errorf("%s has no %s; it has %s", s.Name, quoted(name), and(names))
}

// and lists words in a sentence.
func and(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

// ask reads the words and flags of a question. What the flags common to all say of units is
// read first, since it says what a bare length is.
func (s *Subject) ask(args []string) (Ask, error) {
	a := Ask{of: s, said: map[string]said{}}
	g, err := s.part(args)
	if err != nil {
		return a, err
	}
	a.words = args
	for _, f := range g.flags {
		if f.want.Name == "units" && f.value == "in" {
			a.Units = drawing.Inch
		}
	}
	for _, f := range g.flags {
		v, err := f.want.read(f.value, a.Units)
		if err != nil {
			return a, err
		}
		a.said[f.want.Name] = v
	}
	if a.Yes("help") {
		return a, nil
	}
	if err := a.place(g.words); err != nil {
		return a, err
	}
	for _, w := range s.Flags {
		if _, ok := a.said[w.Name]; w.Needed && !ok {
			return a, fmt.Errorf("%s wants --%s: %s", s.Name, w.Name, w.wanted())
		}
	}
	return a, nil
}

// place gives each word behind the subject to what the subject wants there.
func (a *Ask) place(words []string) error {
	for i := range a.of.Words {
		w := &a.of.Words[i]
		if len(words) == 0 {
			if w.Needed {
				return fmt.Errorf("%s wants %s: %s", a.of.Name, w.Name, w.Says)
			}
			return nil
		}
		n := 1
		if w.Rest {
			n = len(words)
		}
		v, err := w.read(strings.Join(words[:n], " "), a.Units)
		if err != nil {
			return err
		}
		a.said[w.Name], words = v, words[n:]
	}
	if len(words) > 0 {
		return fmt.Errorf("%s does not take %s; a word with blanks in it wants quotes", a.of.Name, quoted(words[0]))
	}
	return nil
}
