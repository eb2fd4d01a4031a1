package sheet

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

// unplayed puts an operation that is not made on paper on the page with its reason; false for one that is.
func (m *maker) unplayed(why string, b *Block, at finding.Spot) bool {
	if why == "" {
		return false
	}
	putting(&b.Rows)("not made on paper", why)
	m.page.add(*b)
	m.mark(at.String())
	return true
}

// tool says what an operation on a machine is done with: the tool, what is like it, what is missing, and what
// holds the tool.
func (m *maker) tool(t eval.Pick, missing string, in []eval.Mount, put func(a, b string)) {
	put("tool", t.Path())
	put(tapWord(t))
	m.twin(t, put)
	put("MISSING", missing)
	var mounts []string
	for _, h := range in {
		mounts = append(mounts, h.Path())
	}
	put("in", strings.Join(mounts, ", in it "))
}
