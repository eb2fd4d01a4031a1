package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/schema/model"
)

// Asked is what is to be drawn: a part as it is when finished, a set-up of it as the piece is put
// up, or one step of that.
type Asked struct {
	Part, SetUp string
	Step        int // from 1; 0 none
	Projection  sketch.Projection
	Brief       bool // of work on a lathe: without the view from the tailstock where the work turns on its own axis
}

// Draw draws what is asked for. The error says in a sentence what there is instead.
func Draw(t *eval.Trace, a Asked) (*sketch.Drawing, error) {
	p, err := part(t, a.Part)
	if err != nil {
		return nil, err
	}
	if a.SetUp == "" {
		d, _, err := sketch.Part(title(p), p.End.Piece, a.Projection, sizes(p))
		return d, err
	}
	groups := settings(p)
	var names []string
	for _, g := range groups {
		if g.name == a.SetUp || strings.TrimPrefix(g.name, "setup ") == a.SetUp {
			return g.draw(a)
		}
		names = append(names, strings.TrimPrefix(g.name, "setup "))
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("part %q has no set-up that is made on paper", a.Part)
	}
	return nil, fmt.Errorf("part %q has no set-up %q that is made on paper; there are %s", a.Part, a.SetUp, strings.Join(names, ", "))
}

func title(p *eval.PartTrace) string {
	if p.Part.Title.Is() {
		return p.Part.Title.V
	}
	return p.Part.Label
}

func part(t *eval.Trace, label string) (*eval.PartTrace, error) {
	var names []string
	for _, p := range t.Makings() {
		if p.End == nil {
			if p.Part.Label == label {
				return nil, fmt.Errorf("part %q is not made on paper: %s", label, p.Part.Unplayed)
			}
			continue
		}
		if p.Part.Label == label || label == "" && len(t.Parts) == 1 {
			return p, nil
		}
		names = append(names, p.Part.Label)
	}
	if label == "" {
		return nil, fmt.Errorf("name the part to draw with --part; there are %s", strings.Join(names, ", "))
	}
	return nil, fmt.Errorf("there is no part %q; there are %s", label, strings.Join(names, ", "))
}

// group is one holding and what is cut in it.
type group struct {
	name  string
	hold  *eval.Holding
	chuck *eval.Chucking
	cuts  []*eval.Cut
	turns []*eval.Turn
	shown bool // a drawing of it stands on the page
}

// settings lists the holdings of a part in the order of the work, each with its operations.
func settings(p *eval.PartTrace) (out []*group) {
	for i := range p.Moments {
		m := &p.Moments[i]
		switch {
		case m.Hold != nil:
			out = append(out, &group{name: holdName(m.Hold), hold: m.Hold})
		case m.Chuck != nil:
			out = append(out, &group{name: chuckName(m.Chuck), chuck: m.Chuck})
		case m.Cut != nil && len(out) > 0 && out[len(out)-1].hold == m.Cut.Held():
			g := out[len(out)-1]
			g.cuts = append(g.cuts, m.Cut)
		case m.Turn != nil && len(out) > 0:
			g := out[len(out)-1]
			g.turns = append(g.turns, m.Turn)
		}
	}
	return out
}

// holdName names one holding of the several that one block may spell out.
func holdName(h *eval.Holding) string {
	if h.Shifted != nil {
		return h.Spot.SetUp + ", after " + h.Spot.Step
	}
	if f := h.Work.Facing; f != model.NoFace {
		return h.Spot.SetUp + " " + f.String()
	}
	return h.Spot.SetUp
}

// briefHigh is how high a drawing of a lathe is at most that follows another, mm.
const briefHigh = 75

// chuckName names a holding on a lathe.
func chuckName(h *eval.Chucking) string {
	if h.Shifted != nil {
		return h.Spot.SetUp + ", after " + h.Spot.Step
	}
	return h.Spot.SetUp
}

func (g *group) draw(a Asked) (*sketch.Drawing, error) {
	n := len(g.cuts) + len(g.turns)
	if a.Step < 0 || a.Step > n {
		return nil, fmt.Errorf("%s has %s; there is no operation %s", g.name, operations(n), strconv.Itoa(a.Step))
	}
	if why := g.unplayed(a.Step); why != "" {
		return nil, fmt.Errorf("%s is not made on paper: %s", g.name, why)
	}
	s := g.setting(a.Step)
	if a.Brief && g.chuck != nil && a.Step > 0 && len(g.turns[a.Step-1].Choice.Index) == 0 {
		s.Panes, s.High = s.Panes[:1], briefHigh
	}
	return sketch.Set(s)
}

// setting is what there is to draw of a step of it, from 1; 0: as the piece is put up.
func (g *group) setting(step int) sketch.Setting {
	switch {
	case g.chuck != nil && step > 0:
		return Turned(g.chuck, g.turns[step-1])
	case g.chuck != nil:
		return Turned(g.chuck, nil)
	case step > 0:
		return Milled(g.hold, g.cuts[step-1])
	}
	return Milled(g.hold, nil)
}

func (g *group) unplayed(step int) string {
	switch {
	case g.hold != nil && g.hold.Unplayed != "":
		return g.hold.Unplayed
	case g.chuck != nil && g.chuck.Unplayed != "":
		return g.chuck.Unplayed
	case step > 0 && g.hold != nil:
		return g.cuts[step-1].Unplayed
	case step > 0:
		return g.turns[step-1].Unplayed
	}
	return ""
}

func operations(n int) string {
	if n == 1 {
		return "1 operation"
	}
	return strconv.Itoa(n) + " operations"
}
