package text

import (
	"fmt"
	"sort"
)

// Edit replaces the bytes From up to To of a file by New.
type Edit struct {
	File     string
	From, To int
	New      string
}

// Apply carries out the edits of one file on its bytes. Edits may come in any order;
// two that overlap, or one outside the file, are refused and nothing is changed.
func Apply(src []byte, edits []Edit) ([]byte, error) {
	es := append([]Edit(nil), edits...)
	sort.SliceStable(es, func(i, j int) bool { return es[i].From < es[j].From })
	var out []byte
	at := 0
	for _, e := range es {
		if e.From < 0 || e.To < e.From || e.To > len(src) {
			return nil, fmt.Errorf("edit of bytes %d to %d lies outside a file of %d bytes", e.From, e.To, len(src))
		}
		if e.From < at {
			return nil, fmt.Errorf("edits overlap at byte %d", e.From)
		}
		out = append(out, src[at:e.From]...)
		out = append(out, e.New...)
		at = e.To
	}
	return append(out, src[at:]...), nil
}
