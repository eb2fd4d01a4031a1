package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "feature-never-made",
	Title: "no step makes it, or none brings it to its size",
	Why: `What stands on the drawing and in no set-up is found missing at assembly, when nothing can hold the
part any more. A face with metal over it that no step takes off stays too large.`,
	Rows:      []string{"I6", "C9"},
	Source:    []string{"order of work as written"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleHole("to = 5.8"), "diameter = 6", `diameter = "6 H7"`),
	Sound:     exampleHole(),
	Together:  true,
	OnPart:    featureNeverMade,
})

func featureNeverMade(p *eval.PartTrace, a *Ask) {
	if p.End == nil || len(p.Part.Work) == 0 {
		return
	}
	if p.Part.Joined() {
		forms, states := p.MadeTogether()
		for i, f := range forms {
			never(p, a, f, states[i])
		}
		return
	}
	if lacks := p.Part.Unnamed(); len(lacks) > 0 {
		a.Lack(lacks...)
		return
	}
	for i, f := range p.Part.Forms {
		if f.Feature.Kind == "bend" && p.Part.Flat != nil && !p.End.Features[i].Finished {
			a.Say(p.Part.Label+"."+f.Name(), f.Feature.Item.At, "no step folds %s: the sheet stays flat there", f.Name())
		}
		if f.Wrong != "" || len(f.Lacks) > 0 || p.Part.MadeJoined(f, model.NoFace) {
			continue
		}
		if f.Feature.Kind == "outside" && !p.End.Features[i].Begun && asItIs(p.End.Profile, f) {
			continue // the bar has that diameter
		}
		never(p, a, f, p.End.Features[i])
	}
	if p.Part.Round {
		roundNeverMade(p, a)
	}
	jointsNeverFaced(p, a)
	for _, f := range model.Faces {
		if p.Part.Round && !f.Turned() || f == p.Part.Blank.Bar || p.Part.MadeJoined(nil, f) {
			continue
		}
		s := p.FaceAtEnd(f)
		over := (s.At - p.Part.FaceAt(f)) * f.Sign()
		if s.Done || over < 0.001 {
			continue
		}
		at := p.Part.At
		if b := p.Part.Part.Blank; b != nil && b.Over.On(f).Said() {
			at = b.Over.On(f).At
		}
		if s.Times == 0 {
			a.Say(p.Part.Label+".face."+f.String(), at, "no step makes the %s face of %s: it keeps its %s mm of metal over", f, p.Part.Label, figure(round(over)))
		} else {
			a.Say(p.Part.Label+".face."+f.String(), at, "the %s face of %s is left %s mm above its finished place by the last step that makes it, %s", f, p.Part.Label, figure(round(over)), s.By.Step)
		}
	}
	a.Clear(finding.Margin{}, "")
}

func never(p *eval.PartTrace, a *Ask, f *eval.Form, s *eval.FeatureState) {
	name, at := p.Part.Label+"."+f.Name(), f.Feature.Item.At
	switch {
	case !s.Begun && triedInVain(p, f):
		return // another rule says why that step does not make it
	case !s.Begun:
		says := "no step makes " + f.Name()
		if d, ok := thicker(p.End.Profile, f); ok {
			says += fmt.Sprintf(": it stays at %s, and %s is wanted", mm(round(d)), mm(2*f.Lathe.R0))
		}
		a.Say(name, at, "%s", says)
	case !s.Finished && f.Lathe != nil && !f.Lathe.Inside && s.Diameter > 2*f.Lathe.R0+0.001:
		a.Say(name, at, "%s is left at %s by the last step that makes it, %s; %s is wanted", f.Name(), mm(round(s.Diameter)), s.By.Step, mm(2*f.Lathe.R0))
	case !s.Finished && len(f.Mouths) > 0 && f.Diameter.Is() && s.Diameter < f.Diameter.V-0.001:
		a.Say(name, at, "%s is left at %s by the last step that makes it, %s; %s is wanted", f.Name(), mm(s.Diameter), s.By.Step, mm(f.Diameter.V))
	case !s.Finished && len(f.Dirs) > 0 && s.Turns < len(f.Dirs):
		a.Say(name, at, "of the %d places of %s only %d came to look at the spindle, since each leans its own way: a dividing head with its axis at %s degrees turns up one after another, or a holding is wanted for each", len(f.Dirs), f.Name(), s.Turns, figure(round(90-f.Slope())))
	case !s.Finished && tooLarge(f, s): // told of where it is made so
	case !s.Finished:
		a.Say(name, at, "%s is not brought to its size: its last step, %s, leaves metal", f.Name(), s.By.Step)
	}
	if s.Begun && f.Feature.Thread.Said && !s.Threaded {
		a.Say(name+".thread", at, "no step cuts the thread of %s", f.Name())
	}
	if s.Begun && f.Feature.Counterbore.Said && !s.Bored {
		a.Say(name+".counterbore", at, "no step makes the counterbore of %s", f.Name())
	}
	if s.Begun && f.Feature.Countersink.Said && !s.Sunk {
		a.Say(name+".countersink", at, "no step makes the countersink of %s", f.Name())
	}
}

// tooLarge says whether a hole or bore is as deep as it shall be, and wider.
func tooLarge(f *eval.Form, s *eval.FeatureState) bool {
	deep := s.Through || f.Depth.Is() && s.Depth >= f.Depth.V-0.001
	return len(f.Mouths) > 0 && f.Diameter.Is() && deep && s.Diameter > f.Diameter.V+0.001
}

// triedInVain says whether a step of the work names a feature that cannot be made so.
func triedInVain(p *eval.PartTrace, f *eval.Form) bool {
	for _, m := range p.Moments {
		if m.Cut != nil {
			for i := range m.Cut.Works {
				if w := &m.Cut.Works[i]; w.Target.Form == f && w.Wrong != "" {
					return true
				}
			}
		}
		if m.Turn != nil {
			for i := range m.Turn.Works {
				if w := &m.Turn.Works[i]; w.Target.Form == f && w.Wrong != "" {
					return true
				}
			}
		}
	}
	return false
}

// roundNeverMade looks at a turned part as a whole: is it cut from its bar, and is its own
// outside down to size everywhere.
func roundNeverMade(p *eval.PartTrace, a *Ask) {
	if bar := p.Part.Blank.Bar; bar != model.NoFace && !p.End.Parted {
		a.Say(p.Part.Label+".blank.bar", p.Part.Part.Blank.Bar.At, "no step parts or saws %s from the bar", p.Part.Label)
	}
	for i, f := range p.Part.Forms {
		if f.Feature.Kind == "outside" && f.Lathe != nil && !p.End.Features[i].Finished && !asItIs(p.End.Profile, f) {
			return // told of on its own
		}
	}
	want := p.Part.Radius()
	for _, z := range p.End.Profile.Between(p.Part.Low[0], p.Part.High()[0]) {
		if z.Most() < want+0.001 || z.Flats > 0 && z.Flats == p.Part.Flats() {
			continue
		}
		a.Say(p.Part.Label+".face.outside", p.Part.At, "the outside of %s is left at %s from %s to %s mm along the axis; %s is wanted",
			p.Part.Label, mm(round(2*z.Most())), figure(round(z.X0)), figure(round(z.X1)), mm(2*want))
		return
	}
}

// asItIs says whether the piece has the diameter of an outside all along it already.
func asItIs(profile eval.Profile, f *eval.Form) bool {
	l := f.Lathe
	there := profile.Between(l.X0, l.X1)
	return len(there) > 0 && abs(there.Most()-l.R0) < 0.001
}

// thicker gives the diameter that the metal has all along an outside, where it is one diameter and
// more than the outside's own.
func thicker(profile eval.Profile, f *eval.Form) (float64, bool) {
	l := f.Lathe
	if f.Feature.Kind != "outside" || l == nil || l.R0 != l.R1 {
		return 0, false
	}
	there := profile.Between(l.X0, l.X1)
	r := there.Most()
	return 2 * r, len(there) > 0 && abs(there.Least()-r) < 0.001 && r > l.R0+0.001
}

// jointsNeverFaced looks at the faces of a split that are to be cleaned after sawing.
func jointsNeverFaced(p *eval.PartTrace, a *Ask) {
	if p.Part.Apart == nil || p.Part.Apart.Joint.Clean < 0.001 {
		return
	}
	j := p.Part.Apart.Joint
	if !p.Part.Apart.Feature(p.End, j.Form).Finished {
		return // told of already
	}
	for n, s := range p.End.Joint {
		if !s.Done {
			name := j.Form.Name() + "." + j.Form.Feature.Pieces.V[n]
			a.Say(p.Part.Label+"."+name, j.Form.Feature.Item.At, "no step cleans %s: the joint keeps the %s that is left on it after sawing", name, mm(j.Clean))
		}
	}
}
