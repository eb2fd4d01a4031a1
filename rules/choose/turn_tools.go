package choose

import (
	"math"
	"sort"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// turnTools lists the tools for an operation on a lathe in the order they are tried.
func (c *chooser) turnTools(k *asked) []eval.Pick {
	if refs := k.pinnedTools(); len(refs) > 0 {
		var out []eval.Pick
		for _, r := range refs {
			if cu, ok := model.Find(c.build.Shop.Cutters, r.Item); ok {
				if fromPost(cu) || cu.Kind == "die" {
					out = append(out, c.latheTool(k, cu))
				} else {
					out = append(out, c.picked(k, cu, r)...)
				}
			}
		}
		return out
	}
	inside := k.target.Form != nil && k.target.Form.Lathe != nil && k.target.Form.Lathe.Inside
	switch k.by {
	case "turning", "facing":
		return c.latheTools(k, func(cu *model.Cutter) bool { return cu.Kind == "turning_tool" && !cu.Inside.V })
	case "planing":
		if f := k.target.Form; f != nil && f.Tooth != nil && !f.Tooth.Inside {
			return c.latheTools(k, func(cu *model.Cutter) bool { return cu.Kind == "turning_tool" && !cu.Inside.V })
		}
		return c.latheBars(k)
	case "boring":
		return c.latheBars(k)
	case "parting", "grooving":
		return c.partingTools(k)
	case "engraving":
		return c.points(k)
	case "threading":
		out := c.latheTools(k, func(cu *model.Cutter) bool { return cu.Kind == "threading_tool" && cu.Inside.V == inside })
		if !inside {
			out = append(out, c.dies(k)...)
		}
		return out
	case "knurling":
		return c.latheTools(k, func(cu *model.Cutter) bool { return cu.Kind == "knurling_tool" && k.knurls(cu) })
	case "centring":
		return c.centreDrills(k)
	}
	return c.tools(k)
}

func (c *chooser) latheTools(k *asked, fits func(*model.Cutter) bool) []eval.Pick {
	var out []eval.Pick
	for _, cu := range c.build.Shop.Cutters {
		if cu.AtHand() && fits(cu) {
			out = append(out, c.latheTool(k, cu))
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Cutter.Hand.V != "left" && out[j].Cutter.Hand.V == "left" })
	return out
}

// latheBars lists the bars for a bore, the stoutest first: it gives least.
func (c *chooser) latheBars(k *asked) []eval.Pick {
	out := c.latheTools(k, func(cu *model.Cutter) bool {
		return cu.Kind == "boring_bar" || cu.Kind == "turning_tool" && cu.Inside.V
	})
	thick := func(t eval.Pick) float64 { d, _ := t.Cutter.Diameter.V.Nearest(0); return d }
	sort.SliceStable(out, func(i, j int) bool { return thick(out[i]) > thick(out[j])+model.Same })
	return out
}

// latheTool is a tool with the thread that is wanted of it, where it is to cut one.
func (c *chooser) latheTool(k *asked, cu *model.Cutter) eval.Pick {
	t := eval.Pick{Cutter: cu}
	if th, ok := k.wantedThread(); ok {
		t.Thread = th
	}
	return t
}

// wantedThread is the thread of the target.
func (k *asked) wantedThread() (drawing.Thread, bool) {
	f := k.target.Form
	if f == nil {
		return drawing.Thread{}, false
	}
	th, ok := f.Feature.ThreadSize.Get()
	if !ok {
		th, ok = f.Feature.Thread.Size.Get()
	}
	if !ok || f.Feature.Kind != "thread" && k.target.Sub != "thread" {
		return drawing.Thread{}, false
	}
	if full, ok := handbook.FillThread(th); ok {
		return full, true
	}
	return th, true
}

// dies lists the dies that cut the thread.
func (c *chooser) dies(k *asked) []eval.Pick {
	want, ok := k.wantedThread()
	if !ok {
		return nil
	}
	var out []eval.Pick
	for _, cu := range c.here([]string{"die"}) {
		for _, t := range cu.Threads.V {
			if t.Same(want) {
				out = append(out, eval.Pick{Cutter: cu, Thread: t})
				break
			}
		}
	}
	return out
}

// partingTools lists the parting tools: for a groove those that go into it, the widest first;
// to part with the narrowest first.
func (c *chooser) partingTools(k *asked) []eval.Pick {
	out := c.latheTools(k, func(cu *model.Cutter) bool { return cu.Kind == "parting_tool" })
	if k.by == "parting" {
		sort.SliceStable(out, func(i, j int) bool { return out[i].Cutter.Width.V < out[j].Cutter.Width.V })
		return out
	}
	room := math.Inf(1)
	if f := k.target.Form; f != nil && f.Width > 0 {
		room = f.Width
	}
	fits := func(t eval.Pick) bool { return t.Cutter.Width.V <= room+model.Grain }
	sort.SliceStable(out, func(i, j int) bool {
		if fits(out[i]) != fits(out[j]) {
			return fits(out[i])
		}
		return out[i].Cutter.Width.V > out[j].Cutter.Width.V
	})
	return out
}

// centreDrills lists the centre drills, the nearest to the wanted pilot first.
func (c *chooser) centreDrills(k *asked) []eval.Pick {
	var out []eval.Pick
	for _, cu := range c.here([]string{"centre_drill"}) {
		if d, ok := cu.Diameter.V.Nearest(k.target.Form.Size); ok {
			out = append(out, c.pick(k, cu, d))
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		return math.Abs(out[i].Size-k.target.Form.Size) < math.Abs(out[j].Size-k.target.Form.Size)
	})
	return out
}
