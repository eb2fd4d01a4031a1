package cutting

// Whether a clamp nut stays tight.
//
// A cutter clamped on a shaft without a key is held by friction alone. The cut pushes it
// back against the rotation, and so does its own weight when the shaft starts: if it slips
// at all it lags behind the shaft, and drags collar and nut with it. Seen from the nut end
// a right-hand nut tightens clockwise. So where the shaft turns counter-clockwise, seen
// from there, a lagging cutter drags the nut clockwise and a right-hand nut tightens; where
// it turns clockwise a left-hand one does. When the cutter leads instead (the shaft braked
// hard, or a climb cut on a slack screw that lets the work pull) everything is the other
// way about. With +1 for counter-clockwise, right hand and lagging, the product of the
// three is +1 where the nut tightens and -1 where it loosens.
//
// A key between cutter and shaft carries the cut, and no steady drag reaches the nut; a
// washer under the nut that is held to the shaft keeps all drag off it. Then the hand of
// the thread does not matter and being tight is enough.
//
// The reasoning is ours; it agrees with the printed cases in the test's table (bench
// grinders, saw blades, screwed-on chucks). It holds for any nut, screw or screwed-on
// cutter that closes a stack on the axis it turns about, and not for a part that rolls in
// its thread under a sideways load.

// Rotation is how a shaft turns, seen from one end.
type Rotation int8

const (
	Clockwise        Rotation = -1
	CounterClockwise Rotation = 1
)

// OtherEnd is the same rotation seen from the other end.
func (r Rotation) OtherEnd() Rotation { return -r }

// FreeEnd is how a spindle turns seen from its free end, looking back at the machine: a
// spindle running forward turns clockwise seen from the machine towards the work.
func FreeEnd(forward bool) Rotation {
	if forward {
		return CounterClockwise
	}
	return Clockwise
}

// Hand is the hand of a thread.
type Hand int8

const (
	RightHand Hand = 1
	LeftHand  Hand = -1
)

// HandOf gives the hand of a thread that is left or not.
func HandOf(left bool) Hand {
	if left {
		return LeftHand
	}
	return RightHand
}

// Drive is what else holds the cutter to its shaft.
type Drive uint8

const (
	NoKey       Drive = iota // the cutter can slip, and drag the nut
	CutterKeyed              // a key carries the cut; the nut bears on cutter or loose collar
	WasherHeld               // the washer under the nut is keyed or tabbed to the shaft, or the nut is locked
)

// Verdict is what the running does to the nut.
type Verdict uint8

const (
	Tightens Verdict = iota + 1
	Loosens
	NoSteadyDrag // being tight is enough
	NoDrag       // no drag reaches the nut; being tight is enough
)

// String writes a verdict for a sentence; "unknown" for what is none.
func (v Verdict) String() string {
	switch v {
	case Tightens:
		return "tightens"
	case Loosens:
		return "loosens"
	case NoSteadyDrag:
		return "no steady drag"
	case NoDrag:
		return "no drag reaches the nut"
	}
	return "unknown"
}

// Nut says what a clamp nut or screw does. seen is how the shaft turns seen from the nut; leads is
// true where the cutter runs ahead of the shaft: hard braking, or a climb cut on a screw with
// backlash. A rotation, hand or drive that is none of those above gives no verdict (0, "unknown").
func Nut(seen Rotation, hand Hand, leads bool, drive Drive) Verdict {
	switch drive {
	case CutterKeyed:
		return NoSteadyDrag
	case WasherHeld:
		return NoDrag
	}
	way := int(seen) * int(hand)
	if drive != NoKey || way != 1 && way != -1 {
		return 0
	}
	if leads {
		way = -way
	}
	if way > 0 {
		return Tightens
	}
	return Loosens
}
