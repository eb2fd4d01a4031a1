package eval

import (
	"math"

	"fettle/schema/model"
)

// JawRoom is how near a cut on a lathe, or what holds its tool, comes to what turns with the work:
// the jaws of a chuck, or a faceplate. Places are on the lathe's axis, 0 the jaw face, in mm.
type JawRoom struct {
	Of       JawRoomOf
	From, To float64 // of jaws or plate, of tool or post
	Room     float64 // below 0 they meet
	Left     float64 // of a post: how far it stands out to the left of the edge
	Ends     float64 // of a post: where the cut itself ends
	// Outside is, of a post, how far it stays beyond the circle that the jaws sweep; below 0 it may meet them.
	Outside model.Known[float64]
	Lacks   []model.Lack // why the room is not known; nil where it is
}

// JawRoomOf says between which things a JawRoom lies.
type JawRoomOf int

const (
	CutToJaws JawRoomOf = iota // the cut itself runs into the jaws
	BladeToJaws
	PostToJaws
	ToolToPlate
	ToolToFoot // of an angle plate on the faceplate
)

// OnSlides says whether the tool of an operation sits in a post on the slides of the lathe.
func (k *Turn) OnSlides() bool {
	if k.Choice.Tool.Cutter == nil {
		return false
	}
	switch k.Choice.Tool.Cutter.Kind {
	case "turning_tool", "boring_bar", "parting_tool", "threading_tool", "knurling_tool":
		return true
	}
	return false
}

// JawRoom gives how near the making of one target comes to jaws or plate; false where nothing
// stands there, or where the tool works within the piece. A blade stands at the left of its holder,
// so that it is the nearest itself. The part's own outside is turned as far as the jaws.
func (k *Turn) JawRoom(w *Turning) (JawRoom, bool) {
	h := k.Hold
	if h.Unplayed != "" || !k.OnSlides() || w.Inside || w.Wrong != "" || w.Had == 0 {
		return JawRoom{}, false
	}
	near := round3(w.U0)
	if h.Inside { // the outside is free up to the held end
		near = round3(w.U0 + h.Held)
	}
	switch {
	case h.Choice.AnglePlate != nil:
		return h.footRoom(near), true
	case h.Choice.Faceplate != nil:
		return JawRoom{Of: ToolToPlate, From: -h.Under(), To: near, Room: round3(near + h.Under())}, true
	case h.Choice.Chuck == nil:
		return JawRoom{}, false
	case near < -model.Grain/2 && !w.Target.Outside:
		return JawRoom{Of: CutToJaws, To: near, Room: near}, true
	case k.Choice.Tool.Cutter.Kind == "parting_tool" || k.Choice.By == "parting":
		return JawRoom{Of: BladeToJaws, To: near, Room: near}, true
	}
	return k.postRoom(w, math.Max(near, 0)), true
}

// postRoom is the room of the post beside a cut that ends so far in front of the jaws.
func (k *Turn) postRoom(w *Turning, near float64) JawRoom {
	r := JawRoom{Of: PostToJaws}
	post := k.Choice.Post
	if post == nil {
		r.Lacks = []model.Lack{{Fact: "tool_post (how far it stands out to the left of the edge)"}}
		return r
	}
	left, ok := post.LeftOfEdge.Get()
	if !ok {
		r.Lacks = post.LeftOfEdge.Missing()
		return r
	}
	r.Left, r.Ends, r.To = left, near, round3(near-left)
	r.Room = r.To
	c := k.Choice.Tool.Cutter
	switch c.Kind {
	case "turning_tool", "boring_bar", "parting_tool":
	default: // nothing in a shop says it
		r.Outside = model.Lacking[float64](k.Hold.Sweeps().Missing(), []model.Lack{{Fact: "how far " + c.Path() + " stands out of its holder", At: c.At}})
		return r
	}
	inner := math.Min(w.R0, w.R1)
	if k.By(w.Target) == "facing" {
		inner = 0
	}
	r.Outside = model.Both(k.Hold.Sweeps(), c.Reach, func(sweep, reach float64) float64 { return round3(inner + reach - sweep/2) })
	return r
}
