package eval

import (
	"cmp"
	"slices"

	"fettle/schema/handbook"
	"fettle/schema/model"
)

// handLeads are the leads of a set of hand taps, which are used one after another; taps with spiral points
// or flutes cut their thread alone.
var handLeads = []string{"taper", "second", "bottoming"}

// LeadLength is how many threads at the tip of a tap are incomplete, at the most, in pitches; 0 where nothing
// is said of its lead.
func LeadLength(l model.Lead) float64 {
	if l.Threads > 0 {
		return l.Threads
	}
	_, most, _ := handbook.TapLead(l.Word)
	return most
}

// TapsInTurn lists the taps of a set by their leads as they go into one hole: those with longer leads than
// the one that finishes it begin the thread. One alone where it is no hand tap, or has none before it.
func (t Pick) TapsInTurn() (words []string) {
	last := t.Lead
	if t.Cutter == nil || !slices.Contains(handLeads, last.Word) {
		return words
	}
	turn := []model.Lead{last}
	for _, l := range t.Cutter.Leads.V {
		if slices.Contains(handLeads, l.Word) && LeadLength(l) > LeadLength(last) {
			turn = append(turn, l)
		}
	}
	slices.SortStableFunc(turn, func(a, b model.Lead) int { return cmp.Compare(LeadLength(b), LeadLength(a)) })
	for _, l := range turn {
		words = append(words, l.Word)
	}
	return words
}
