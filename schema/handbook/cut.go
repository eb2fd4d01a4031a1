package handbook

import (
	"slices"
	"strings"
	"sync"
)

// FeedRow is a feed as printed. Least and Most are in Unit: "mm/rev", "mm/tooth",
// "x diameter/tooth" (share of the cutter's diameter), "mm/tooth, by diameter" (Least at From,
// Most at To), "times drilling", "share taken off", "depth".
type FeedRow struct {
	Process, Tool, Metal string
	Groups               []string
	From, To             float64 // diameters, mm; both 0: not by diameter, To 0: no upper end
	Least, Most          float64
	Unit, Source         string
}

var feeds = sync.OnceValue(func() []FeedRow {
	var out []FeedRow
	for _, r := range load("feed").rows {
		out = append(out, FeedRow{r.text("process"), r.text("tool"), r.text("metal"), groups(r), r.number("from_mm"), r.number("to_mm"),
			r.number("least"), r.number("most"), r.text("unit"), r.text("source")})
	}
	return out
})

// groups reads a cell of groups with | between.
func groups(r row) []string {
	if s := r.text("groups"); s != "" {
		return strings.Split(s, "|")
	}
	return nil
}

// Feeds lists the feeds printed for a process and a material's group; "" for the group: all.
func Feeds(process, group string) (out []FeedRow) {
	for _, f := range feeds() {
		if f.Process == process && (group == "" || slices.Contains(f.Groups, group)) {
			out = append(out, f)
		}
	}
	return out
}

// PrintedSpeed is a cutting speed as printed, m/min; both figures 0 where a rule has none.
type PrintedSpeed struct {
	Process, Tool, Metal, Detail string
	Groups                       []string
	Least, Most                  float64
	Source                       string
}

var printedSpeeds = sync.OnceValue(func() []PrintedSpeed {
	var out []PrintedSpeed
	for _, r := range load("speed_printed").rows {
		out = append(out, PrintedSpeed{r.text("process"), r.text("tool"), r.text("metal"), r.text("detail"), groups(r), r.number("least"), r.number("most"), r.text("source")})
	}
	return out
})

// sameProcess lets what is printed for a kind of a process stand for it.
var sameProcess = map[string][]string{
	"turning": {"turning", "turning_rough", "turning_finish"}, "milling": {"milling", "milling_end", "milling_face"},
}

// PrintedSpeeds lists the speeds printed for a process, a tool ("HSS", "carbide" with its
// solid, brazed, coated and insert kinds) and a material's group.
func PrintedSpeeds(process, tool, group string) (out []PrintedSpeed) {
	kinds := sameProcess[process]
	if kinds == nil {
		kinds = []string{process}
	}
	for _, s := range printedSpeeds() {
		if s.Most > 0 && slices.Contains(kinds, s.Process) && strings.HasPrefix(strings.ToLower(s.Tool), strings.ToLower(tool)) && slices.Contains(s.Groups, group) {
			out = append(out, s)
		}
	}
	return out
}

// ForceRow is the specific cutting force of a group of VDI 3323: kc = KC1 h^-MC, N/mm2, h in mm.
type ForceRow struct {
	VDI, ISO, Metal string
	Groups          []string
	Rm, HB          float64 // 0: not printed
	KC1, MC         float64 // MC 0: none printed
	Source          string
}

var forces = sync.OnceValue(func() []ForceRow {
	var out []ForceRow
	for _, r := range load("force").rows {
		out = append(out, ForceRow{r.text("vdi"), r.text("iso"), r.text("metal"), groups(r), r.number("rm"), r.number("hb"), r.number("kc1"), r.number("mc"), r.text("source")})
	}
	return out
})

// Forces lists all groups of VDI 3323, in their order.
func Forces() []ForceRow { return slices.Clone(forces()) }

// ForceFeedRow is the specific cutting force as printed against the feed, mm a turn or a tooth.
type ForceFeedRow struct {
	Process, Metal string
	Groups         []string
	Feeds, KC      []float64
	Source         string
}

var forceFeeds = sync.OnceValue(func() []ForceFeedRow {
	var out []ForceFeedRow
	for _, r := range load("force_feed").rows {
		out = append(out, ForceFeedRow{r.text("process"), r.text("metal"), groups(r), figures(strings.Fields(r.text("feeds"))), figures(strings.Fields(r.text("kc"))), r.text("source")})
	}
	return out
})

// ForceFeeds lists the tables of specific cutting force against feed.
func ForceFeeds() []ForceFeedRow { return slices.Clone(forceFeeds()) }

// WorkFactor is a factor of a metal in a formula: K of twist drills, Kd, kc of tapping.
type WorkFactor struct {
	Formula, Metal string
	Groups         []string
	Value          float64
	Source         string
}

var workFactors = sync.OnceValue(func() []WorkFactor {
	var out []WorkFactor
	for _, r := range load("drill_force").rows {
		out = append(out, WorkFactor{"drill K", r.text("metal"), groups(r), r.number("k"), r.text("source")})
	}
	for _, r := range load("drill_work").rows {
		out = append(out, WorkFactor{"drill " + r.text("symbol"), r.text("metal"), groups(r), r.number("factor"), r.text("source")})
	}
	for _, r := range load("tap_force").rows {
		out = append(out, WorkFactor{"tap by " + r.text("formula"), r.text("metal"), groups(r), r.number("kc"), r.text("source")})
	}
	return out
})

// WorkFactors lists the factors of a formula: "drill K", "drill Kd", "drill W", "tap by pitch",
// "tap by thread". "" for the group: all.
func WorkFactors(formula, group string) (out []WorkFactor) {
	for _, w := range workFactors() {
		if w.Formula == formula && (group == "" || slices.Contains(w.Groups, group)) {
			out = append(out, w)
		}
	}
	return out
}

// DrillFactor is a factor of drilling by handbook factors, as printed: Ff by feed, FT and FM by
// diameter, A, B and J by web over diameter.
type DrillFactor struct {
	Symbol    string
	At, Value float64
}

var drillFactors = sync.OnceValue(func() []DrillFactor {
	var out []DrillFactor
	for _, r := range load("drill_factor").rows {
		out = append(out, DrillFactor{r.text("symbol"), r.number("at"), r.number("factor")})
	}
	return out
})

// DrillFactors lists the printed factors of a symbol, by what they are printed against.
func DrillFactors(symbol string) (out []DrillFactor) {
	for _, f := range drillFactors() {
		if f.Symbol == symbol {
			out = append(out, f)
		}
	}
	return out
}

// TapFactorRow is the factor K of a tap; Least and Most differ only where a range is printed.
type TapFactorRow struct {
	Tap, Metal  string
	Groups      []string
	Coarse      bool
	Least, Most float64
	Source      string
}

var tapFactors = sync.OnceValue(func() []TapFactorRow {
	var out []TapFactorRow
	for _, r := range load("tap_factor").rows {
		out = append(out, TapFactorRow{r.text("tap"), r.text("metal"), groups(r), r.text("pitch") == "coarse", r.number("least"), r.number("most"), r.text("source")})
	}
	return out
})

// TapFactors lists the factors of the cutting taps for a material's group and kind of pitch.
func TapFactors(group string, coarse bool) (out []TapFactorRow) {
	for _, f := range tapFactors() {
		if slices.Contains(f.Groups, group) && f.Coarse == coarse {
			out = append(out, f)
		}
	}
	return out
}

// CapabilityRow is what a process usually reaches: grades of ISO 286 and Ra in micrometres;
// 0 where the source gives none.
type CapabilityRow struct {
	Process        string
	Fine, Coarse   int
	RaFine, RaMost float64
	Note, Source   string
}

var capabilities = sync.OnceValue(func() []CapabilityRow {
	var out []CapabilityRow
	for _, r := range load("capability").rows {
		out = append(out, CapabilityRow{r.text("process"), int(r.number("it_fine")), int(r.number("it_coarse")), r.number("ra_fine"), r.number("ra_coarse"), r.text("note"), r.text("source")})
	}
	return out
})

// Capabilities lists what a process reaches, one row a source; "" all.
func Capabilities(process string) (out []CapabilityRow) {
	for _, c := range capabilities() {
		if process == "" || c.Process == process {
			out = append(out, c)
		}
	}
	return out
}
