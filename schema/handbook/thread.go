package handbook

import (
	"math"
	"sync"

	"fettle/schema/drawing"
)

// ThreadRow is one size and pitch of a series.
type ThreadRow struct {
	Series, Size         string
	Diameter, Pitch      float64
	TPI                  float64 // 0 in metric series
	Coarse               bool    // of a metric size with several pitches: the one that is meant when none is written
	Drill                float64 // tapping drill, mm; 0 none in the tables
	MinorLeast, MinorMax float64 // minor diameter of the nut; MinorMax 0: not known
	DrillSource, Source  string
}

var threads = sync.OnceValue(func() []ThreadRow {
	var out []ThreadRow
	for _, r := range load("thread").rows {
		t := ThreadRow{
			Series: r.text("series"), Size: r.text("size"),
			Diameter: r.number("diameter_mm"), Pitch: r.number("pitch_mm"), TPI: r.number("tpi"),
			Coarse: r.text("step") == "coarse", Drill: r.number("drill_mm"),
			MinorLeast: r.number("minor_min_mm"), MinorMax: r.number("minor_max_mm"),
			DrillSource: r.text("drill_source"), Source: r.text("source"),
		}
		if t.TPI > 0 {
			t.Pitch = 25.4 / t.TPI
		}
		out = append(out, t)
	}
	return out
})

// Threads lists all sizes, in the order of the table: by series, then by size.
func Threads() []ThreadRow { return append([]ThreadRow(nil), threads()...) }

// one gives the row that a designation means. Series with several pitches a size need the
// pitch, but for the coarse one of metric threads.
func one(t drawing.Thread) (ThreadRow, bool) {
	for _, r := range threads() {
		if !sameSeries(t.Series, r.Series) || !sameSize(t, r) {
			continue
		}
		switch {
		case t.Pitch > 0 && math.Abs(t.Pitch-r.Pitch) < hair,
			t.Pitch == 0 && (r.Coarse || r.Series != "M" && r.Series != "Tr" && r.Series != "ME"):
			return r, true
		}
	}
	return ThreadRow{}, false
}

// sameSeries lets "UN" stand for every Unified series: the pitch tells which.
func sameSeries(asked, row string) bool {
	return asked == row || asked == "UN" && (row == "UNC" || row == "UNF" || row == "UNEF")
}

func sameSize(t drawing.Thread, r ThreadRow) bool {
	if t.Diameter > 0 {
		return math.Abs(t.Diameter-r.Diameter) < hair
	}
	return t.Size == r.Size
}

// FillThread puts in the diameter and pitch of the series, and says whether a metric pitch
// is the coarse one. False, and the thread as it came, where the tables have no such size;
// a thread whose diameter and pitch are both written is complete all the same.
func FillThread(t drawing.Thread) (drawing.Thread, bool) {
	r, ok := one(t)
	if !ok {
		return t, false
	}
	t.Diameter, t.Pitch = r.Diameter, r.Pitch
	t.Coarse = r.Coarse && r.Series == "M"
	return t, true
}

// Thread gives the row of the tables for a designation.
func Thread(t drawing.Thread) (ThreadRow, bool) { return one(t) }

// TappingDrill gives the drill of the tables for a thread, mm.
func TappingDrill(t drawing.Thread) (mm float64, source string, ok bool) {
	r, ok := one(t)
	if !ok || r.Drill == 0 {
		return 0, "", false
	}
	return r.Drill, r.DrillSource, true
}

// MinorLimits gives the least and greatest minor diameter of the nut; a hole of that size
// before tapping makes a thread of its standard's usual class. False where the tables lack one.
func MinorLimits(t drawing.Thread) (least, most float64, ok bool) {
	r, ok := one(t)
	if !ok || r.MinorMax == 0 {
		return 0, 0, false
	}
	return r.MinorLeast, r.MinorMax, true
}

// TaperRow is one taper. Ratio is on diameter, mm for each mm of length.
type TaperRow struct {
	Series, Number string
	Gauge          float64 // diameter at the gauge line, the large end
	Ratio          float64
	Small, Length  float64 // small end and length of the cone; 0: not in the tables
	SelfHolding    bool    // holds by its own friction; the others need a drawbar always
	Source         string
}

var tapers = sync.OnceValue(func() []TaperRow {
	var out []TaperRow
	for _, r := range load("taper").rows {
		out = append(out, TaperRow{r.text("series"), r.text("number"), r.number("gauge_mm"), r.number("ratio"),
			r.number("small_mm"), r.number("length_mm"), r.text("self") == "yes", r.text("source")})
	}
	return out
})

// TaperRows lists the tapers, in the order of the table. The list is shared and must not be changed.
func TaperRows() []TaperRow { return tapers() }

// TaperSize gives the sizes of a taper of a named series.
func TaperSize(t drawing.Taper) (TaperRow, bool) {
	for _, r := range tapers() {
		if t.Series != "" && r.Series == t.Series && r.Number == t.Number {
			return r, true
		}
	}
	return TaperRow{}, false
}

// Drawbar is one of the threads that shanks of a taper are made with.
type Drawbar struct {
	Thread drawing.Thread // filled
	Where  string
	Source string
}

type drawbarRow struct {
	series, number string
	Drawbar
}

var drawbars = sync.OnceValue(func() []drawbarRow {
	var out []drawbarRow
	for _, r := range load("drawbar").rows {
		t, err := drawing.ParseThread(r.text("thread"))
		if err != nil {
			panic(err)
		}
		t, _ = FillThread(t)
		out = append(out, drawbarRow{r.text("series"), r.text("number"), Drawbar{t, r.text("where"), r.text("source")}})
	}
	return out
})

// Drawbars lists the threads that shanks of a taper are usually made with, for a sentence
// that says what to look for; which of them a tool has, only the tool says.
func Drawbars(t drawing.Taper) []Drawbar {
	var out []Drawbar
	for _, r := range drawbars() {
		if t.Series != "" && t.Same(drawing.Taper{Series: r.series, Number: r.number}) {
			out = append(out, r.Drawbar)
		}
	}
	return out
}

// TaperRatio gives how much a taper changes on diameter for each mm of its axis: of a
// designation from the tables, of a written ratio itself.
func TaperRatio(t drawing.Taper) (float64, bool) {
	if t.Ratio > 0 {
		return t.Ratio, true
	}
	r, ok := TaperSize(t)
	return r.Ratio, ok && r.Ratio > 0
}
