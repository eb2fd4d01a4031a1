// Package model holds a build as plain structs: what was written, with its places, and
// what the language and the handbook fill in. Lengths are millimetres, angles degrees.
package model

import (
	"fettle/schema/text"
)

// Origin says where a figure is from. The zero Origin is "not known".
type Origin uint8

const (
	Unknown   Origin = iota
	Written          // stands in the file
	Standing         // the language's own value where nothing is written
	Handbook         // from a standard or a table of the trade
	WorkedOut        // follows from other figures
	Chosen           // picked by fettle, and listed as chosen
	Measured         // found on the piece
)

// Known is a figure that may be missing. Its zero value is not known, never 0.
type Known[T any] struct {
	V     T
	From  Origin
	At    text.Place // where it is written; not known: the block that could say it
	Of    *Item      // the block it belongs to
	Attr  string     // its attribute
	Lacks []Lack     // of a worked-out figure that is not known: what it wanted
}

// Get gives the figure and whether it is known.
func (k Known[T]) Get() (T, bool) { return k.V, k.From != Unknown }

// Is says whether the figure is known.
func (k Known[T]) Is() bool { return k.From != Unknown }

// Said says whether the figure stands in the file, rather than being filled in.
func (k Known[T]) Said() bool { return k.From == Written }

// Or gives the figure, or another where it is not known.
func (k Known[T]) Or(other T) T {
	if k.From == Unknown {
		return other
	}
	return k.V
}

// Fact names the figure: "vise.small.jaw_width".
func (k Known[T]) Fact() string {
	if k.Of == nil {
		return k.Attr
	}
	return k.Of.Path() + "." + k.Attr
}

// Missing lists what must be found out before the figure is known; nothing if it is.
func (k Known[T]) Missing() []Lack {
	if k.From != Unknown {
		return nil
	}
	if len(k.Lacks) > 0 {
		return k.Lacks
	}
	return []Lack{{Fact: k.Fact(), At: k.At}}
}

// Lack is a fact that a check asked for and nobody declared.
type Lack struct {
	Fact string
	At   text.Place // where it could be said
}

// Sure makes a worked-out figure.
func Sure[T any](v T) Known[T] { return Known[T]{V: v, From: WorkedOut} }

// Lacking makes a worked-out figure that is not known, for want of others.
func Lacking[T any](lacks ...[]Lack) Known[T] {
	var all []Lack
	for _, l := range lacks {
		all = append(all, l...)
	}
	return Known[T]{Lacks: all}
}

// Map works one figure out from another; not known stays not known.
func Map[A, B any](a Known[A], f func(A) B) Known[B] {
	if !a.Is() {
		return Lacking[B](a.Missing())
	}
	return Sure(f(a.V))
}

// Both works one figure out from two others; all that is lacking is named.
func Both[A, B, C any](a Known[A], b Known[B], f func(A, B) C) Known[C] {
	if !a.Is() || !b.Is() {
		return Lacking[C](a.Missing(), b.Missing())
	}
	return Sure(f(a.V, b.V))
}
