package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// settleOut finds how far a tool must stand out where nobody said it: the least at which
// its holder clears everything by the usual room, and never less than its flutes and the
// depth of the cut. What the shank cannot give stays a meeting for the rules to tell. It says
// whether the gaps are worked out for the stack as it is in the end.
func (k *Cut) settleOut(placed *solid.Piece) bool {
	t := k.Choice.Tool
	if k.Choice.Out > 0 || t.Cutter == nil || k.Choice.boresWithHead() || k.Stack.Holder != nil && k.Stack.Holder.Kind == "arbor" {
		return false
	}
	least := 0.0
	for _, w := range k.Works {
		least = max(least, w.Deep, w.Passed+w.Depth+w.Point)
	}
	if f, ok := k.Stack.Flutes.Get(); ok {
		least = max(least, f)
	} else if o, ok := k.Stack.Overall.Get(); ok {
		least = max(least, o/2) // half of a short tool stands out: common practice
	}
	if least == 0 {
		least = t.Size
	}
	most, known := k.mostOut()
	if !known {
		most = math.Inf(1)
	}
	least = halves(least, most)
	k.stackUp(least)
	k.gaps(placed)
	out := halves(least+max(k.holderLift(), 0), most)
	if known && out == least {
		return true
	}
	k.stackUp(out)
	if !known {
		k.Stack.unsure(least, model.Known[float64]{Of: t.Cutter.Item, Attr: "overall", At: t.Cutter.At})
	}
	return false
}

// halves rounds up to half a millimetre what a tool is to stand out, since nobody sets it closer; where
// that is more than the shank allows, down to the half below that limit, but never below what is wanted.
func halves(out, most float64) float64 {
	if up := math.Ceil(2*out-2*model.Grain) / 2; up <= most {
		return up
	}
	return max(math.Floor(2*most)/2, min(out, most))
}

// mostOut is how far a tool can stand out with enough of its shank left in the holder.
func (k *Cut) mostOut() (float64, bool) {
	o, ok := k.Stack.Overall.Get()
	if !ok {
		return 0, false
	}
	d := k.Stack.Shank.Or(k.Choice.Tool.Size)
	return max(o-grasp*d, o/3), true
}

// holderLift is how much higher the holder would have to stand to clear by the usual room.
func (k *Cut) holderLift() float64 {
	room := k.Part.Build.Thumbs["room"].Or(1)
	lift := 0.0
	for _, n := range k.Near {
		if n.BodyItem == k.Choice.Tool.Cutter.Item || len(n.Lacks) > 0 && n.Sure > room {
			continue
		}
		if n.Sure < 0 {
			lift = max(lift, n.Lift+room)
		} else if n.Sure < room {
			lift = max(lift, room-n.Sure)
		}
	}
	return lift
}
