// Package reckon is the trade's arithmetic at the bench: `fettle reckon SUBJECT …` asks one
// question and prints one page, the answer first, then the working with the figures in place,
// then source and caution.
//
// A subject is a value in a file of its own (fit.go, thread.go): it declares the words and flags
// that it takes, which read.go and word.go read and check the same way for all, and one function
// that turns an Ask into an Answer. page.go and json.go print any Answer.
//
// Lengths are millimetres, angles degrees.
package reckon

import (
	"cmp"
	"slices"
)

// Subject is one kind of question.
type Subject struct {
	Name     string
	Title    string     // what it answers, within a line of the list
	Words    []Want     // behind the subject's name, in order
	Flags    []Want     // besides those that every subject has
	Examples [][]string // two or more, the words behind the name; each is answered with yes
	No       string     // when the answer counts as "no" (status 1): "none of the drills serves"; "" never
	Answer   func(Ask) (Answer, error)
}

var subjects []*Subject

// enter puts a subject in the list, which stays sorted by name.
func enter(s Subject) bool {
	subjects = append(subjects, &s)
	slices.SortFunc(subjects, func(a, b *Subject) int { return cmp.Compare(a.Name, b.Name) })
	return true
}

// Subjects lists every subject by name.
func Subjects() []*Subject { return slices.Clone(subjects) }

// find gives a subject by its name; nil if there is none.
func find(name string) *Subject {
	for _, s := range subjects {
		if s.Name == name {
			return s
		}
	}
	return nil
}

// want gives what a subject says of a word or flag; nil where it has none of that name.
func (s *Subject) want(name string) *Want {
	for _, list := range [][]Want{s.Words, s.Flags, common} {
		for i := range list {
			if list[i].Name == name {
				return &list[i]
			}
		}
	}
	return nil
}
