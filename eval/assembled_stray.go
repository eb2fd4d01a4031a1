package eval

import (
	"slices"

	"fettle/eval/solid"
)

// Stray is metal that an operation on joined parts takes off a part of which it makes nothing.
type Stray struct {
	Part  *Part
	Takes float64 // mm³
}

// leastStray is below what the volumes of a piece are told apart, mm³.
const leastStray = 0.05

// Strays lists the parts that an operation on joined parts cuts into without making anything of them.
// A face that is machined is made of all that stands out over it. False where nothing of it is asked:
// a part by itself, a face, an operation that is not made.
func (k *Cut) Strays() (out []Stray, asked bool) {
	p := k.Part
	if !p.Joined() || k.Unplayed != "" || len(k.Works) == 0 {
		return nil, false
	}
	made := map[int]bool{}
	for _, t := range k.Step.Makes {
		if t.Form == nil || t.Form.Owner == nil {
			return nil, false
		}
		made[p.memberOf(t.Form.Owner)] = true
	}
	for n := range p.Members {
		if made[n] {
			continue
		}
		was, now := p.lumpsOf(k.Before, n), p.lumpsOf(k.After, n)
		takes := 0.0
		for i := range was {
			if i < len(now) && len(now[i].Removals()) > len(was[i].Removals()) {
				takes += lost(was[i], now[i])
			}
		}
		if takes > leastStray {
			out = append(out, Stray{p.Members[n].Part, takes})
		}
	}
	return out, true
}

func lost(was, now *solid.Piece) float64 { return was.Volume() - now.Volume() }

// ShutIn lists the burrs round holes that the work of an assembly leaves between its parts, where they are not
// taken apart after it.
func (t *PartTrace) ShutIn() []Burr {
	if !t.Part.Joined() || t.End == nil {
		return nil
	}
	for _, a := range t.Part.Build.Assemblies {
		if a.Item == t.Part.Item && a.Apart.V {
			return nil
		}
	}
	var out []Burr
	for _, b := range t.End.Hidden {
		if b.Round && b.By.Part == t.Part.Label {
			out = append(out, *b)
		}
	}
	return out
}

// ownBurrs notes on which part the burrs of a target stand.
func (k *Cut) ownBurrs(t Target) {
	if !k.Part.Joined() {
		return
	}
	k.After.Burrs = slices.Clone(k.After.Burrs)
	for i := range k.After.Burrs {
		if b := *k.After.Burrs[i]; b.Of == nil {
			b.Of = k.Part.Owner(t)
			k.After.Burrs[i] = &b
		}
	}
}

// passes gives every hole of an operation on joined parts the way that its tool has through what lies
// before it on the same axis: parts drilled together are drilled as deep as they are thick together.
func (k *Cut) passes() {
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || f.Owner == nil || len(f.Mouths) != 1 || w.Target.Sub != "" {
			continue
		}
		for j := range k.Works {
			g := k.Works[j].Target.Form
			if j == i || g == nil || len(g.Mouths) != 1 || k.Works[j].Target.Sub != "" || g.Owner == f.Owner {
				continue
			}
			in := Normal(w.Entry.Face).Times(-1)
			from, to := g.at(g.Mouths[0], k.Works[j].Entry), f.at(f.Mouths[0], w.Entry)
			if d := to.Sub(from); d.Dot(in) > 0 && d.Sub(in.Times(d.Dot(in))).Len() < 0.01 {
				w.Passed = max(w.Passed, d.Dot(in))
			}
		}
	}
}
