package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/handbook"
)

var _ = enter(Rule{
	Name:  "surface-finer-than-process",
	Title: "the surface asked for is finer than what the last process on it leaves",
	Why: `Every process leaves a surface of its own: a drill a rough one, a reamer or a fine cut a smoother one. Where the drawing
asks for a finer one, plan a finer process after it, such as reaming, boring, polishing or lapping, and leave metal for it, or ask for less.`,
	Rows:      []string{"E1"},
	Source:    []string{"Ra by process: printed charts and common practice, as tabled in the handbook; the finest that any of them gives counts"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     replaced(exampleHole(), "diameter = 6", "diameter = 6\n    finish   = \"Ra 0.8\""),
	Sound:     replaced(exampleHole(), "diameter = 6", "diameter = 6\n    finish   = \"Ra 3.2\""),
	OnPart:    surfaceFinerThanProcess,
})

func surfaceFinerThanProcess(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	var at map[string]*eval.Worked
	said := map[string]bool{}
	for _, s := range p.Part.Surfaces() {
		ra, ok := drawing.ParseRoughness(s.Finish.V)
		if !ok {
			continue
		}
		if at == nil {
			at = p.LastWorked(false)
		}
		by, rows, spot := leaves(p, &s, at)
		best, ok := finestRa(rows)
		if !ok {
			continue
		}
		if ra >= best-1e-9 {
			a.Clear(finding.Margin{Has: ra, Wants: best, Unit: "µm"}, "the surface of "+s.Target.Name()+" by "+by)
			continue
		}
		cause := s.Target.Name()
		if !s.Own {
			cause = p.Part.Label + ".finish"
		}
		if said[cause+by] {
			continue // the part says it of all: one sentence for each process
		}
		said[cause+by] = true
		f := a.Say(cause+"+"+by, s.Finish.At, "%s is to have %s, and is left by %s, which leaves Ra %s at best; a finer process would have to follow",
			s.Target.Name(), s.Finish.V, by, figure(best))
		f.Margin = finding.Margin{Has: ra, Wants: best, Unit: "µm"}
		if spot.Part != "" {
			f.Spots[0] = spot
		}
	}
}

// surfaceTables are the rows of the handbook's capabilities by process.
var surfaceTables = map[string][]string{
	"milling": {"milling", "manual_mill_end_milling"}, "plunging": {"milling", "manual_mill_end_milling"},
	"turning": {"turning", "small_lathe_turning"}, "facing": {"turning", "small_lathe_turning"},
	"grooving": {"turning", "small_lathe_turning"}, "parting": {"turning", "small_lathe_turning"},
	"boring":   {"boring", "small_lathe_boring"},
	"drilling": {"drilling", "drilled_hole_small"}, "counterboring": {"drilling", "drilled_hole_small"},
	"reaming": {"reaming", "hand_reaming"}, "sawing": {"sawing", "hacksawing"}, "filing": {"filing_to_a_line", "fine_filing_draw_filing"},
	"polishing": {"polishing", "polishing_emery"}, "lapping": {"lapping", "hand_lapping_small_parts"},
	"planing": {"planing_shaping"}, "broaching": {"broaching"},
}

// skinTables are the same of stock that is left as it was bought.
var skinTables = map[string][]string{"drawn": {"cold_drawn_stock"}, "ground": {"grinding_cyl", "grinding_surface"}, "sawn": {"sawing", "hacksawing"}}

// leaves says what leaves a surface as it is: a process, or the stock where nobody works it. No rows
// where no table says, or nobody knows.
func leaves(p *eval.PartTrace, s *eval.Surface, at map[string]*eval.Worked) (by string, rows []string, spot finding.Spot) {
	if w := at[s.Target.Name()]; w != nil {
		rows = surfaceTables[w.By]
		if w.Tool == "slitting_saw" {
			rows = []string{"slitting_saw"}
		}
		return w.By, rows, w.Spot
	}
	if s.Target.Form != nil || s.Target.Outside || p.End.Faces[s.Target.Face].Times > 0 {
		return "", nil, spot
	}
	skin := p.End.Faces[s.Target.Face].Skin
	return "the stock, " + skin, skinTables[skin], spot
}

// finestRa is the finest roughness that any source gives for these processes, micrometres.
func finestRa(processes []string) (best float64, ok bool) {
	for _, process := range processes {
		for _, c := range handbook.Capabilities(process) {
			if c.RaFine > 0 && (!ok || c.RaFine < best) {
				best, ok = c.RaFine, true
			}
		}
	}
	return best, ok
}
