package eval

import "fettle/schema/model"

// AsCut gives an operation on a lathe as rules about holes, tools and sizes look at any other: the
// tool in its holder, what it makes, the piece before and after. It has no way of a tool in a
// machine's frame, so that whatever looks at clearance finds nothing in it. Of tools in the
// tailstock the socket is the tailstock's.
func (k *Turn) AsCut() *Cut {
	if k.asCut == nil {
		k.asCut = k.likeCut()
	}
	return k.asCut
}

func (k *Turn) likeCut() *Cut {
	h := k.Hold.asHold()
	out := &Cut{Spot: k.Spot, Step: k.Step, Hold: h, Part: k.Part, Before: k.Own, After: k.Left, Key: k.Key, Unplayed: k.Unplayed,
		Choice: CutChoice{By: k.Choice.By, Tool: k.Choice.Tool, Mounts: k.Choice.Mounts, Speed: k.Choice.Speed, Reverse: k.Choice.Reverse,
			Turned: k.Choice.Turned, ByHand: k.Choice.ByHand, NoTool: k.Choice.NoTool}}
	if t := k.Choice.Tool.Cutter; t != nil && k.Choice.Post == nil && t.Kind != "die" {
		out.stackUp(0)
	}
	for _, w := range k.Works {
		out.Works = append(out.Works, k.asWorking(&w))
	}
	return out
}

// asHold is the holding of an operation on a lathe as such rules look at it.
func (h *Chucking) asHold() *Holding {
	if h.alike != nil {
		return h.alike
	}
	out := &Holding{Spot: h.Spot, Work: h.Work, Part: h.Part, Before: h.Before, Unplayed: h.Unplayed}
	if m := h.Choice.Machine; m != nil {
		like := *m
		like.Taper = m.Tailstock.Taper
		if !like.Taper.Is() {
			like.Taper.Of, like.Taper.Attr = m.Item, "tailstock.taper"
		}
		out.Choice.Machine = &like
	}
	h.alike = out
	return out
}

func (k *Turn) asWorking(w *Turning) Working {
	out := Working{Target: w.Target, By: k.By(w.Target), Facing: true, Final: w.Final, Wrong: w.Wrong, Depth: w.Depth, Point: w.Point, Diameter: 2 * max(w.R0, w.R1)}
	f := w.Target.Form
	if f == nil {
		return out
	}
	out.Entry = f.Into
	if w.Inside {
		out.Had = 2 * w.Had
	}
	if f.Lathe == nil && len(f.Mouths) > 0 {
		out.Through = f.Through && w.Target.Sub != "counterbore" && w.Target.Sub != "countersink"
		had := k.Part.Feature(k.Before, f)
		out.HadDepth, out.Had = had.Depth, had.Diameter
		out.Deep = w.Depth
	}
	if k.drilledOut(f) { // what stood open may be another feature's: a hole drilled to bore it from
		had := k.Part.Feature(k.Before, f)
		_, out.Through = k.axisDepth(f)
		out.HadDepth, out.Had, out.Deep = had.Depth, max(had.Diameter, out.Had), w.Depth
	}
	return out
}

// By is how a target of an operation is made. What faces and turns in one operation, with one tool,
// is one process by its name, and each surface is held to what its own comes to.
func (k *Turn) By(t Target) string { return processOn(k.Choice.By, t) }

func processOn(by string, t Target) string {
	switch {
	case by != "turning" && by != "facing":
		return by
	case t.Form == nil && !t.Outside:
		return "facing"
	}
	return "turning"
}

// InTailstock says whether the tool stands in the tailstock.
func (k *Turn) InTailstock() bool {
	return k.Choice.Tool.Cutter != nil && k.Choice.Post == nil && !k.Choice.ByHand && k.Choice.Tool.Cutter.Kind != "die" && k.Choice.By != "filing"
}

// Lathe is the machine of an operation; nil where none is known.
func (k *Turn) Lathe() *model.Machine { return k.Hold.Choice.Machine }
