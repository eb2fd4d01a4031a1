package schema

import (
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// What the handbook says of a thing at once, with no size to be asked for. Where it depends
// on a size (the length of a drill, the lead of a reamer) the dry run asks.

// fromHandbook fills a figure that is not written.
func fromHandbook[T any](k *model.Known[T], v T, ok bool) {
	if ok && k.From == model.Unknown && !isThere(k) {
		k.V, k.From = v, model.Handbook
	}
}

// isThere says whether an attribute stands in the file, understood or not. What stands
// there and is not understood stays not known.
func isThere[T any](k *model.Known[T]) bool { return k.Of != nil && k.Of.Attr(k.Attr) != nil }

// bindInstrument fills an instrument. An error that is not written is that of the older
// standards for its range and its smallest step: at best, so it is never a fact.
func bindInstrument(i *model.Item) *model.Instrument {
	in := bound[model.Instrument](i)
	kind := i.Kind
	if in.Measures.V == "inside" && kind == "micrometer" {
		kind = "inside micrometer"
	}
	if in.Measures.V == "depth" {
		return in // the tables have no depth micrometers
	}
	var lo, hi float64
	if r := in.Range.V; len(r) == 2 {
		lo, hi = r[0], r[1]
	}
	mm, ok := handbook.InstrumentError(kind, lo, hi, in.ReadsTo.V)
	fromHandbook(&in.Error, mm, ok)
	return in
}

// bindCollets fills a set of collets from its system: the full set, in inch sizes where the
// folder is in inches and such a set is usual; and how far each closes, where that is the
// same for all of the set. A drawbar's thread belongs to the tool and not to its taper, so
// it is not known until it is said.
func bindCollets(i *model.Item) *model.Collets {
	c := bound[model.Collets](i)
	row, ok := handbook.ColletSystem(c.System.V)
	if !c.System.Is() || !ok {
		return c
	}
	full := row.Full
	if i.Unit == drawing.Inch && len(row.FullInch.List) > 0 {
		full = row.FullInch
	}
	fromHandbook(&c.Sizes, full, len(full.List) > 0)
	if lo, hi, some := c.Sizes.V.Range(); some {
		fromHandbook(&c.Range, row.Closes(hi), row.Closes(lo) == row.Closes(hi))
	}
	return c
}

// bindBearings fills bearings from their number. What is written as well is kept: a rule compares the two.
func bindBearings(i *model.Item) *model.Bearings {
	b := bound[model.Bearings](i)
	std, ok := handbook.BearingOf(b.Code.V)
	fromHandbook(&b.Bore, std.Bore, ok)
	fromHandbook(&b.Outside, std.Outside, ok)
	fromHandbook(&b.Width, std.Width, ok && std.Width > 0)
	return b
}
