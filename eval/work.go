package eval

import (
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Work is one stretch of the work: a holding with its steps, or a bench.
type Work struct {
	Spot   finding.Spot
	SetUp  *model.SetUp
	Kind   string       // "setup", "bench", "heat"
	Of     *model.SetUp // the square_up that it is one holding of; else SetUp itself
	Facing model.Face   // of a square_up: the face made
	Guide  model.Face   // of a square_up: the face on the fixed jaw
	Ends   bool         // of a square_up: an end, the piece standing
	Leaves float64      // of a square_up: metal left on that face
	Steps  []*Step
	// Unplayed says in a sentence why it is not made on paper; "" if it is.
	Unplayed string
}

// Step is one step of a stretch of work.
type Step struct {
	Spot  finding.Spot
	Kind  string      // "operation", "deburr", "measure", "mark", "shift"
	Step  *model.Step // nil for the facing of a square_up
	Work  *Work
	Makes []Target
	Amiss string // why the face that it is to go down to is no floor for it; "" if it is one, or none is named
}

// Item is the block of the step; nil for the facing of a square_up.
func (s *Step) Item() *model.Item {
	if s.Step == nil {
		return nil
	}
	return s.Step.Item
}

// Target is one thing that an operation makes: a feature or a part of it, or a face.
type Target struct {
	Ref     model.Ref
	Form    *Form
	Face    model.Face
	Outside bool    // the part's own outside, turned
	Member  int     // of a face in an assembly: whose it is; 0 the first part's
	At      float64 // of a face of another part than the first: where it lies along its axis
	Sub     string  // "thread", "counterbore", "countersink", "": the feature itself
}

// Name is what the target is called in sentences.
func (t Target) Name() string {
	switch {
	case t.Form != nil && t.Sub != "":
		return t.Form.Name() + "." + t.Sub
	case t.Form != nil:
		return t.Form.Name()
	case t.Face != model.NoFace && t.Member > 0:
		return t.Ref.Path()
	case t.Face != model.NoFace:
		return "face." + t.Face.String()
	case t.Outside:
		return "face.outside"
	}
	return t.Ref.Path()
}

// OnlyHoles says whether nothing but holes is made, so that a drill press would do.
func (w *Work) OnlyHoles() bool {
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			if t.Form == nil || t.Form.Kind() != "hole" {
				return false
			}
		}
	}
	return true
}

// target finds what a reference of `makes` stands for in this part. False where it is
// nothing that can be made here.
func (p *Part) target(r model.Ref) (Target, bool) {
	if p.Joined() {
		if t, ok := p.memberTarget(r); ok {
			return t, true
		}
	}
	if r.Face != model.NoFace {
		return Target{Ref: r, Face: r.Face}, true
	}
	if isOutside(r) {
		return Target{Ref: r, Outside: true}, p.Round
	}
	if f := p.formMeant(r); f != nil {
		switch r.Sub {
		case "thread", "counterbore", "countersink", "":
			return Target{Ref: r, Form: f, Sub: r.Sub}, true
		}
		if f.Feature.Kind == "split" {
			return Target{Ref: r, Form: f, Sub: r.Sub}, true
		}
		return Target{Ref: r, Form: f}, true
	}
	if r.Item != nil && r.Item.Kind == "face" {
		if f, ok := model.ParseFace(r.Item.Label); ok {
			return Target{Ref: r, Face: f}, true
		}
	}
	return Target{}, false
}

// spell lays the part's work out as stretches with their steps; a square_up becomes six.
func (p *Part) spell() {
	for _, s := range p.Part.Work {
		p.spellOne(s)
	}
}

// spellOne lays one block of the work out.
func (p *Part) spellOne(s *model.SetUp) {
	switch s.Kind {
	case "square_up":
		p.squareUp(s)
	case "setup", "bench":
		w := &Work{SetUp: s, Of: s, Kind: s.Kind, Spot: finding.Spot{Part: p.Label, SetUp: name(s.Item)}, Unplayed: misread(s.Item)}
		for _, st := range s.Steps {
			w.Steps = append(w.Steps, p.inTurn(p.step1(w, st))...)
		}
		if s.Kind == "bench" {
			p.benchMakes(w)
		}
		p.Work = append(p.Work, w)
	default:
		p.Work = append(p.Work, &Work{SetUp: s, Of: s, Kind: s.Kind,
			Spot:     finding.Spot{Part: p.Label, SetUp: name(s.Item)},
			Unplayed: misread(s.Item)})
	}
}

// deciding are the attributes that settle how a piece is held.
var deciding = []string{"machine", "hold", "up", "jaws", "parallels", "grip", "along", "round_bar", "turned", "back", "beside", "order", "leaves", "does"}

// misread says which attribute of a set-up is written and came to no value. Such a set-up is
// not played as if nothing stood there: what follows would be laid at the wrong door.
func misread(i *model.Item) string {
	for _, name := range deciding {
		if a := i.Attr(name); a != nil && a.Value.Kind == model.NoValue {
			return a.Word + " is written, and its value is not known"
		}
	}
	return ""
}

// Unnamed lists the operations of which it is not known what they make: until it is, nobody
// can say that a feature of the part is never made.
func (p *Part) Unnamed() []model.Lack {
	var out []model.Lack
	for _, w := range p.Work {
		if a := w.SetUp.Attr("makes"); a != nil {
			out = append(out, w.SetUp.Makes.Missing()...)
		}
		for _, st := range w.Steps {
			if st.Step != nil && st.Kind == "operation" && len(st.Makes) == 0 {
				out = append(out, st.Step.Makes.Missing()...)
			}
		}
	}
	return out
}

// name is a block with its kind, as a spot shows it.
func name(i *model.Item) string {
	if i.Label == "" {
		return i.Kind
	}
	return i.Kind + " " + i.Label
}

func (p *Part) step1(w *Work, st *model.Step) *Step {
	spot := w.Spot
	spot.Step = st.Item.Name
	if spot.Step == "" {
		spot.Step = name(st.Item)
	}
	out := &Step{Spot: spot, Kind: st.Kind, Step: st, Work: w}
	for _, r := range st.Makes.V {
		if t, ok := p.target(r); ok {
			out.Makes = append(out.Makes, t)
		}
	}
	p.downToFace(out)
	return out
}

// benchMakes turns `makes` of a bench into one step each.
func (p *Part) benchMakes(w *Work) {
	if len(w.Steps) > 0 || !w.SetUp.Makes.Is() {
		return
	}
	for _, r := range w.SetUp.Makes.V {
		t, ok := p.target(r)
		if !ok {
			continue
		}
		spot := w.Spot
		spot.Step = t.Name()
		w.Steps = append(w.Steps, &Step{Spot: spot, Kind: "operation", Work: w, Makes: []Target{t}})
	}
}

// squareUp spells the trade's six holdings out: the largest face first; its two neighbours
// with it against the fixed jaw; the face opposite it; then the two ends with the piece
// standing. `order` may name another order.
func (p *Part) squareUp(s *model.SetUp) {
	order := p.squareOrder(s)
	var made []model.Face
	for _, f := range order {
		w := &Work{SetUp: s, Of: s, Kind: "setup", Facing: f, Unplayed: misread(s.Item)}
		w.Spot = finding.Spot{Part: p.Label, SetUp: "square_up", Step: "face." + f.String()} // each holding makes one face
		w.Ends = f.Axis() == p.longest()
		w.Guide = guide(f, made, p.longest())
		w.Leaves = s.Leaves.On(f).Or(0)
		w.Steps = []*Step{{Spot: w.Spot, Kind: "operation", Work: w, Makes: []Target{{Face: f}}}}
		p.Work = append(p.Work, w)
		made = append(made, f)
	}
}

// guide is the face on the fixed jaw while f is made: the first one made that is square to
// it, else any that is not an end.
func guide(f model.Face, made []model.Face, long int) model.Face {
	for _, m := range made {
		if m.Axis() != f.Axis() {
			return m
		}
	}
	for _, axis := range [3]int{1, 2, 0} {
		if axis != f.Axis() && axis != long {
			return model.FaceOn(axis, 1)
		}
	}
	return model.FaceOn((f.Axis()+1)%3, 1)
}

func (p *Part) longest() int {
	best := 0
	for i := 1; i < 3; i++ {
		if p.Size[i] > p.Size[best]+model.Grain {
			best = i
		}
	}
	return best
}

func (p *Part) squareOrder(s *model.SetUp) []model.Face {
	if s.Order.Is() {
		var out []model.Face
		for _, r := range s.Order.V {
			if r.Face != model.NoFace {
				out = append(out, r.Face)
			} else if r.Item != nil {
				if f, ok := model.ParseFace(r.Item.Label); ok {
					out = append(out, f)
				}
			}
		}
		return out
	}
	long := p.longest()
	// The two axes across the bar: the larger faces are square to the shorter of them.
	a, b := (long+1)%3, (long+2)%3
	if a > b {
		a, b = b, a
	}
	if p.Size[a] <= p.Size[b]-model.Grain {
		a, b = b, a // b is now the shorter, or z where they are alike
	}
	return []model.Face{
		model.FaceOn(b, 1), model.FaceOn(a, -1), model.FaceOn(a, 1), model.FaceOn(b, -1),
		model.FaceOn(long, -1), model.FaceOn(long, 1),
	}
}
