package cutting

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/schema/handbook"
)

// Feed is the band of feeds that are printed.
type Feed struct {
	Band
	PerTooth bool // mm a tooth; else mm a turn
}

// FeedFor gives the feeds that are printed for a process ("drilling", "reaming", "milling_end",
// "milling_face", "milling_side", "slitting_saw", "turning_rough", "turning_finish", "parting"), a
// tool ("HSS", "carbide"; "" any) and a material's group at a diameter, mm. Ranges hold from just
// over their lower diameter up to the upper; what is printed at single diameters is read straight
// between two of them and not beyond. Where nothing is printed the band is None. The diameter runs
// from 0.05 to 1000; an error says so. A word that no table has is no error.
func FeedFor(process, tool, group string, diameter float64) (Feed, error) {
	if err := in(figure{"diameter mm", diameter, 0.05, 1000}); err != nil {
		return Feed{}, err
	}
	f := Feed{PerTooth: strings.HasPrefix(process, "milling") || process == "slitting_saw"}
	rows := slices.DeleteFunc(handbook.Feeds(process, group), func(r handbook.FeedRow) bool {
		return !serves(r.Tool, tool) || group == ""
	})
	for n, r := range rows {
		by := r.Tool + ", " + r.Metal
		switch {
		case r.Unit == "x diameter/tooth" && reaches(r, diameter):
			f.both(by, r.Least*diameter, r.Most*diameter, r.Source)
		case r.Unit == "mm/tooth, by diameter" && diameter >= r.From && diameter <= r.To:
			x := r.Least + (r.Most-r.Least)*(diameter-r.From)/(r.To-r.From)
			f.add(by, x, r.Source)
		case r.Unit != "mm/rev" && r.Unit != "mm/tooth" || (r.Unit == "mm/tooth") != f.PerTooth:
		case r.From > 0 && r.From == r.To:
			if next, ok := after(rows[n:], r); ok && diameter >= r.From && diameter <= next.From {
				k := (diameter - r.From) / (next.From - r.From)
				f.add(by, r.Least+(next.Least-r.Least)*k, r.Source)
			}
		case reaches(r, diameter):
			f.both(by, r.Least, r.Most, r.Source)
		}
	}
	return f, nil
}

func (f *Feed) both(by string, lo, hi float64, source string) {
	f.add(by+", least", lo, source)
	f.add(by+", most", hi, source)
}

func reaches(r handbook.FeedRow, diameter float64) bool {
	return diameter > r.From-1e-9 && (r.To == 0 || diameter <= r.To+1e-9)
}

// after gives the next printed diameter of the same table.
func after(rows []handbook.FeedRow, r handbook.FeedRow) (handbook.FeedRow, bool) {
	for _, s := range rows[1:] {
		if s.Tool == r.Tool && s.Metal == r.Metal && s.Unit == r.Unit && s.From == s.To && s.From > r.From {
			return s, true
		}
	}
	return r, false
}

// serves says whether a printed tool is of a material; words that name none serve every one.
func serves(printed, tool string) bool {
	p := strings.ToLower(printed)
	hss, carbide := strings.Contains(p, "hss"), strings.Contains(p, "carbide")
	switch strings.ToLower(tool) {
	case "":
		return true
	case "hss":
		return hss || !carbide
	case "carbide":
		return carbide || !hss
	}
	return false
}

// Rz gives the height of the ridges that a round nose leaves in theory, micrometres: 1000 f^2/(8
// r), feed and nose radius mm; Ra is about a quarter of it (common practice). Tearing, built-up
// edge and shake make it more. Good while the feed is well below the radius: feed up to 2 r.
// Source: a toolmaker's catalogue 2016-17, basic turning formulas. Ranges: feed 1e-5 to 10, nose
// 0.001 to 100; an error names the figure. A feed above 2 r is an error too.
func Rz(feed, nose float64) (rz, ra float64, err error) {
	if err := in(figure{"feed mm a turn", feed, 1e-5, 10}, figure{"nose radius mm", nose, 0.001, 100}); err != nil {
		return 0, 0, err
	}
	if feed > 2*nose {
		return 0, 0, fmt.Errorf("a feed of %v mm is above twice the nose radius of %v mm: the nose cuts a thread and the formula does not hold", feed, nose)
	}
	rz = 1000 * feed * feed / (8 * nose)
	return rz, rz / 4, nil
}

// FeedForRz is the other way about: the feed, mm a turn, that leaves a height in theory,
// micrometres from 0 to 500 times the nose radius (where the feed is 2 r), by a nose of 0.001 to
// 100 mm. An error names the figure outside its range.
func FeedForRz(rz, nose float64) (feed float64, err error) {
	if err := in(figure{"height micrometres", rz, 0, 500 * nose}, figure{"nose radius mm", nose, 0.001, 100}); err != nil {
		return 0, err
	}
	return math.Sqrt(8 * nose * rz / 1000), nil
}

// Reached is how a process stands to a wanted grade or roughness.
type Reached uint8

const (
	NotSaid Reached = iota // no table says
	ByEvery                // every source gives it
	BySome                 // one source gives it, another stops coarser
	ByNone                 // finer than any source gives
)

// ReachesGrade says how a process stands to a grade of ISO 286, its number, by the printed
// capabilities of processes. NotSaid for a process that no table has.
func ReachesGrade(process string, grade int) Reached {
	return reached(process, float64(grade), func(c handbook.CapabilityRow) (float64, float64) { return float64(c.Fine), float64(c.Coarse) })
}

// ReachesRa says how a process stands to a roughness Ra, micrometres, by the same tables. NotSaid
// for a process that no table has, and for a roughness that is no number; one of 0 or below is
// reached by none.
func ReachesRa(process string, ra float64) Reached {
	return reached(process, ra, func(c handbook.CapabilityRow) (float64, float64) { return c.RaFine, c.RaMost })
}

func reached(process string, want float64, of func(handbook.CapabilityRow) (fine, coarse float64)) Reached {
	if process == "" || math.IsNaN(want) {
		return NotSaid
	}
	said, served := 0, 0
	for _, c := range handbook.Capabilities(process) {
		fine, _ := of(c)
		if fine == 0 {
			continue
		}
		said++
		if want >= fine-1e-9 {
			served++
		}
	}
	switch {
	case said == 0:
		return NotSaid
	case served == said:
		return ByEvery
	case served > 0:
		return BySome
	}
	return ByNone
}
