package eval

import (
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Assemblies come after the parts' own work, in the order written, each from how its members are
// then; work of a part that waits for an assembly (`after`) comes after it, on what it has become
// there. Nothing of a part's own making hangs on another part, so that parts are still made side by
// side up to where they wait.

// awaits is the assembly that a stretch of a part's work comes after, where the part is in it.
func (p *Part) awaits(w *Work) *model.Assembly {
	for _, r := range w.SetUp.After.V {
		for _, a := range p.Build.Assemblies {
			if r.Item != nil && (r.Item == a.Item || r.Item.Up("assembly") == a.Item) && within(p.Item, a, p.Build, 0) {
				return a
			}
		}
	}
	return nil
}

// Waiting says whether work of the part is left that comes after an assembly.
func (t *PartTrace) Waiting() bool { return t.next < len(t.Part.Work) && t.Part.Unplayed == "" }

// goOn makes as much of a part as waits for no assembly but those that are done.
func (pl *Player) goOn(t *PartTrace, done map[*model.Assembly]bool, d Decider) {
	p := t.Part
	for ; t.next < len(p.Work); t.next++ {
		if a := p.awaits(p.Work[t.next]); a != nil && !done[a] {
			return
		}
		from := len(t.Moments)
		switch q := t.Lies; {
		case q == nil:
			t.End = pl.stretch(t, p, p.Work[t.next], t.End, d)
		case q.Work[t.next].bends():
			pl.bend(t, d)
		default:
			t.End = pl.stretch(t, q, q.Work[t.next], t.End, d)
		}
		pl.forget()
		d.Settled(t.Moments[from:])
	}
}

// assemble makes all assemblies, and what waits for them.
func (pl *Player) assemble(t *Trace, d Decider) {
	done := map[*model.Assembly]bool{}
	for range t.Build.Assemblies {
		a := t.ready(done)
		if a == nil {
			break
		}
		why := pl.together(t, a, d)
		if t.apart == nil {
			t.apart = map[*model.Assembly]string{}
		}
		t.apart[a] = why
		if why != "" {
			pl.heats(t, a, d)
		}
		done[a] = true
		for _, p := range t.Parts {
			if p.Waiting() && p.End != nil {
				pl.goOn(p, done, d)
			}
		}
	}
}

// ready is the first assembly that is not done, that is made of no other that is not, and for which
// none of its parts waits elsewhere; where all wait, the first of all.
func (t *Trace) ready(done map[*model.Assembly]bool) *model.Assembly {
	var left *model.Assembly
	for _, a := range t.Build.Assemblies {
		if done[a] {
			continue
		}
		if left == nil {
			left = a
		}
		free := true
		for _, r := range a.Of.V {
			for _, b := range t.Build.Assemblies {
				free = free && !(b.Item == r.Item && b != a && !done[b])
			}
			for _, p := range t.Parts {
				if p.Part.Item == r.Item && p.Waiting() {
					free = free && p.Part.awaits(p.Part.Work[p.next]) == a
				}
			}
		}
		if free {
			return a
		}
	}
	return left
}

// together makes one assembly; why says why it is not made on paper, "" if it is.
func (pl *Player) together(t *Trace, a *model.Assembly, d Decider) (why string) {
	members, traces, why := t.members(a)
	if why != "" {
		return why
	}
	p, state := assembly(t.Build, a, members)
	out := &PartTrace{Part: p, Start: state}
	for _, w := range p.Work {
		if w.Kind == "heat" {
			h := &Heating{Spot: w.Spot, SetUp: w.SetUp, Of: p.Leaves(), Build: t.Build}
			for _, leaf := range h.Of {
				h.Earlier = append(h.Earlier, leaf.coldWork()...)
			}
			h.Earlier = append(h.Earlier, state.Treated...)
			h.play(d)
			pl.Moments++
			t.Heatings = append(t.Heatings, h)
			state = state.next(w.Spot, state.Key.With(itemDigest(w.SetUp.Item), digest(h.Does)))
			state.Treated = append(state.Treated[:len(state.Treated):len(state.Treated)], h.treatment(nil))
			continue
		}
		from := len(out.Moments)
		state = pl.stretch(out, p, w, state, d)
		pl.forget()
		d.Settled(out.Moments[from:])
	}
	out.End, out.next = state, len(p.Work)
	t.Assembled = append(t.Assembled, out)
	for i, one := range p.takeOut(state) {
		if traces[i] != nil { // what is bought comes anew
			traces[i].End = one
		}
	}
	return ""
}

func makesOfAll(a *model.Assembly) (out []model.Ref) {
	for _, s := range a.Work {
		out = append(out, makesOf(s)...)
	}
	return out
}

// members puts the parts of an assembly where they sit.
func (t *Trace) members(a *model.Assembly) (out []Member, traces []*PartTrace, why string) {
	for i, r := range a.Of.V {
		p := t.makingOf(r.Item)
		switch {
		case p == nil:
			return nil, nil, "what is joined in it is not known"
		case p.Part.Bought():
			q, s, why := asBought(t.Build, p.Part.Part)
			if why != "" {
				return nil, nil, p.Part.Path() + " is bought, and " + why
			}
			out, traces = append(out, Member{Part: q, State: s, Pose: unturned}), append(traces, nil)
		case p.unsaid(a):
			q, s, why := asItComes(t.Build, p.Part.Part, makesOfAll(a))
			if why != "" {
				return nil, nil, p.Part.Path() + ", of which no work is written, cannot be taken as drawn: " + why
			}
			out, traces = append(out, Member{Part: q, State: s, Pose: unturned}), append(traces, p)
		case p.Part.Unplayed != "" || p.End == nil:
			return nil, nil, p.Part.Path() + " is not made on paper"
		default:
			q := p.Part
			if p.Lies != nil {
				q = p.Lies
			}
			out, traces = append(out, Member{Part: q, State: p.End, Pose: unturned}), append(traces, p)
		}
		if i > 0 {
			if why := t.seat(a, out[:i], &out[i]); why != "" {
				return nil, nil, why
			}
		}
	}
	if len(out) == 0 {
		return nil, nil, "what is joined in it is not known"
	}
	return out, traces, ""
}

// unsaid says whether nobody writes how a part is made, nor an assembly that any of its faces is: it is then
// taken as it is drawn, as what is bought is.
func (t *PartTrace) unsaid(a *model.Assembly) bool {
	p := t.Part
	if p.Unplayed != "" || p.Joined() || len(p.Work) > 0 || p.Part.Blank != nil || p.Part.MirrorOf.Is() || p.Flat != nil || t.End == nil || len(t.End.Treated) > 0 {
		return false
	}
	for _, r := range makesOfAll(a) {
		if r.Part() == p.Item && (r.Item == p.Item || r.Item.Kind == "face") {
			return false
		}
	}
	return true
}

// makingOf is the making of a part or of an assembly that was made before.
func (t *Trace) makingOf(i *model.Item) *PartTrace {
	for _, p := range t.Assembled {
		if p.Part.Item == i {
			return p
		}
	}
	for _, p := range t.Parts {
		if p.Part.Item == i {
			return p
		}
	}
	return nil
}

// heats plays the heats of an assembly that is not made on paper otherwise.
func (pl *Player) heats(t *Trace, a *model.Assembly, d Decider) {
	var of []*Part
	var earlier []Treatment
	for _, p := range t.Parts {
		if within(p.Part.Item, a, t.Build, 0) {
			of = append(of, p.Part)
			earlier = append(earlier, p.Part.coldWork()...)
			if p.End != nil {
				earlier = append(earlier, p.End.Treated...)
			}
		}
	}
	for _, s := range a.Work {
		spot := finding.Spot{Part: a.Label, SetUp: name(s.Item)}
		switch s.Kind {
		case "bench":
			earlier = append(earlier, bonds(s, spot, nil, of)...)
		case "heat":
			h := &Heating{Spot: spot, SetUp: s, Of: of, Build: t.Build, Earlier: append([]Treatment{}, earlier...)}
			h.play(d)
			pl.Moments++
			t.Heatings = append(t.Heatings, h)
			earlier = append(earlier, h.treatment(nil))
		}
	}
}

// Makings are the makings of all parts, then of the assemblies that are made on paper.
func (t *Trace) Makings() []*PartTrace {
	return append(append([]*PartTrace(nil), t.Parts...), t.Assembled...)
}
