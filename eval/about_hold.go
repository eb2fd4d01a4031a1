package eval

import (
	"math"
	"sort"

	"fettle/schema/model"
)

// line is what the piece turns about in this holding: in what closes on the middle by itself a
// turned part can turn about its own axis alone.
func (h *Chucking) line() Axis {
	about := h.Part.TurnsAbout(h.Work)
	if h.Part.Round && h.ClosesOnMiddle() && len(h.Work.SetUp.Packing) == 0 {
		return Axis{}
	}
	return about
}

// ClosesOnMiddle says whether what holds the piece brings its middle to the axis by itself; no
// also where that is not known.
func (h *Chucking) ClosesOnMiddle() bool {
	c := &h.Choice
	return c.Chuck != nil && c.Chuck.Independent.Is() && !c.Chuck.Independent.V || c.Collets != nil || c.Mandrel != nil
}

// otherLine says that a target does not lie round the line that turns.
func (k *Turn) otherLine(t Target) string {
	f := t.Form
	if f == nil || f.About.Along != k.Hold.About.Along {
		return "it lies round another line than the one that turns in this holding"
	}
	off := model.Figure(math.Round(f.About.At.Sub(k.Hold.About.At).Len()*1000) / 1000)
	if k.Hold.ClosesOnMiddle() && k.Part.Own(k.Hold.About) {
		return "its axis lies " + off + " mm beside the one that turns, and " + k.Hold.Choice.HeldBy() + " closes on the middle by itself; a chuck whose jaws move one by one, or a faceplate, sets the piece over"
	}
	return "its axis lies " + off + " mm beside the one that turns in this holding; it wants a holding of its own"
}

// jaws works out how far each jaw of a chuck stands from the axis where the work is no round thing
// about it: on the four sides of a block, or round a bar that is set over, one pair of jaws in the
// direction in which it is.
func (h *Chucking) jaws() {
	if h.Choice.Chuck == nil || len(h.Touches) == 0 || !h.Touches[0].Uneven {
		return
	}
	if h.Part.Round {
		e := h.About.Aside()
		r := h.Touches.Most() - e
		if side := r*r - e*e; side > 0 {
			h.JawsAt = []float64{r - e, math.Sqrt(side), math.Sqrt(side), r + e}
		}
	} else {
		for _, f := range model.Faces {
			if f.Axis() != h.About.Along {
				h.JawsAt = append(h.JawsAt, (h.own.Faces[f].At-h.About.At[f.Axis()])*f.Sign())
			}
		}
		sort.Float64s(h.JawsAt)
	}
	if n := len(h.JawsAt); n > 0 {
		h.Gripped = 2 * h.JawsAt[n-1]
	}
}

// Under is the thickness of what lies between a faceplate and the work.
func (h *Chucking) Under() float64 {
	most := 0.0
	for _, p := range h.Work.SetUp.Packing {
		most = math.Max(most, p.Under.Or(0))
	}
	return most
}

// TurnsOn says in words where the line lies that the piece turns about; "" for a turned part's own
// axis.
func (h *Chucking) TurnsOn() string {
	a := h.About
	switch {
	case h.Part.Own(a):
		return ""
	case h.Part.Round:
		towards := math.Mod(math.Atan2(a.At[1], a.At[2])*180/math.Pi+360, 360)
		return model.Figure(math.Round(a.Aside()*1000)/1000) + " mm beside its own axis, towards " + model.Figure(math.Round(towards*10)/10) + " degrees"
	}
	words := ""
	for _, f := range []model.Face{model.Left, model.Front, model.Bottom} {
		if f.Axis() == a.Along {
			continue
		}
		if words != "" {
			words += " and "
		}
		words += model.Figure(math.Round((a.At[f.Axis()]-h.Part.FaceAt(f))*1000)/1000) + " mm from the " + f.String() + " face"
	}
	return words
}

// ComesOut is how far the tool goes beyond the held end of the piece as it bores or drills through
// it: its tip, and for an edge that is fed by hand half a millimetre. False where it does not go
// through there.
func (k *Turn) ComesOut(w *Turning) (float64, bool) {
	f := w.Target.Form
	if !w.Inside || w.Wrong != "" || f == nil || !f.Through || k.Hold.Choice.Chuck == nil && k.Hold.Choice.Faceplate == nil || !(w.R0 > 0) {
		return 0, false
	}
	switch k.Choice.By {
	case "drilling", "reaming", "boring":
	default:
		return 0, false
	}
	held := -k.Hold.Held
	if w.U0 > held+model.Grain {
		return 0, false
	}
	return math.Max(w.Point, 0.5), true // half a millimetre: common practice
}

// RoomBehind is the room behind the held end of the piece before the body of a chuck, or the plate,
// begins.
func (h *Chucking) RoomBehind() model.Known[float64] {
	switch {
	case h.Choice.Faceplate != nil:
		return model.Sure(h.Under())
	case h.Choice.Chuck == nil:
		return model.Known[float64]{}
	}
	return model.Map(h.Choice.Chuck.JawLength, func(l float64) float64 { return math.Max(0, l-h.Held) })
}

// BoreBehind is the clear hole through what holds the piece.
func (h *Chucking) BoreBehind() model.Known[float64] {
	switch {
	case h.Choice.Faceplate != nil:
		return h.Choice.Faceplate.Bore
	case h.Choice.Chuck == nil:
		return model.Known[float64]{}
	}
	return h.Choice.Chuck.Bore
}

// LineSaid says whether any of the work of the holding lies round a line, so that it is not chosen.
func (h *Chucking) LineSaid() bool {
	for _, st := range h.Work.Steps {
		for _, t := range st.Makes {
			if _, ok := h.Part.axisOf(t); ok {
				return true
			}
		}
	}
	return false
}

// RoundGripped is the diameter of the round work that the jaws hold, of a bar set over its own; 0 of
// a block.
func (h *Chucking) RoundGripped() float64 {
	switch {
	case len(h.JawsAt) == 0:
		return h.Gripped
	case h.Part.Round:
		return 2 * (h.Touches.Most() - h.About.Aside())
	}
	return 0
}
