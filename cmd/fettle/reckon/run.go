package reckon

import (
	"fmt"
	"io"

	"fettle/schema"
	"fettle/schema/text"
)

// Exit statuses of a question; a fault of fettle's own is 3, as everywhere.
const (
	Answered      = 0
	No            = 1 // it has an answer, and the answer is no
	NotUnderstood = 2 // it was not understood, or the shop could not be read
)

// Run answers `fettle reckon` with the words behind it. What it answers goes to out; the error
// says what was not understood, and then nothing was written.
func Run(args []string, files text.Folder, out io.Writer) (status int, err error) {
	if len(args) == 0 || len(args) == 1 && args[0] == "--help" {
		writeList(out)
		return Answered, nil
	}
	s, err := named(args[0])
	if err != nil {
		return NotUnderstood, err
	}
	ask, err := s.ask(args[1:])
	if err != nil {
		return NotUnderstood, s.hint(err)
	}
	if ask.Yes("help") {
		s.writeUsage(out)
		return Answered, nil
	}
	note, err := ask.open(files)
	if err != nil {
		return NotUnderstood, err
	}
	answer, err := s.Answer(ask)
	if err != nil {
		return NotUnderstood, s.hint(err)
	}
	if ask.Text("format") == "json" {
		if err := answer.json(out, ask, note); err != nil {
			return NotUnderstood, err
		}
	} else {
		answer.text(out, ask.All(), note)
	}
	if answer.No {
		return No, nil
	}
	return Answered, nil
}

// hint adds where the words of a subject are explained.
func (s *Subject) hint(err error) error {
	return fmt.Errorf("%w (fettle reckon %s --help)", err, s.Name)
}

func named(word string) (*Subject, error) {
	if s := find(word); s != nil {
		return s, nil
	}
	var names []string
	for _, s := range subjects {
		names = append(names, s.Name)
	}
	if isFlag(word) {
		return nil, fmt.Errorf("%s: name a subject first; there are %s", quoted(word), and(names))
	}
	if n := schema.Near(word, names); n != "" {
		return nil, fmt.Errorf("there is no subject %s; %s is near", quoted(word), n)
	}
	return nil, fmt.Errorf("there is no subject %s; there are %s", quoted(word), and(names))
}

// open reads the shop, if one was named, and gives what is to be said of it.
func (a *Ask) open(files text.Folder) (note string, err error) {
	folder := a.Text("shop")
	if folder != "" {
		if a.shop, err = openShop(files, folder); err != nil {
			return "", err
		}
		switch n := a.shop.slips; {
		case n == 1:
			note = "One slip of writing in the files of " + folder + ": what it is about may be missing here; fettle check tells of it."
		case n > 1:
			note = fmt.Sprintf("%d slips of writing in the files of %s: what they are about may be missing here; fettle check tells of them.", n, folder)
		}
	}
	return note, a.checkWith()
}
