package screwcut

import (
	"fmt"
	"math/bits"
)

// # When the half-nuts may be opened
//
// Between two passes the tool must fall into its groove again. While the half-nuts are shut it does,
// because spindle and screw are geared together. If they are opened and closed again after the screw
// has made n turns, the spindle has made n/turn of them, with turn the turns of the screw for one of
// the spindle. The tool is right again where that is a whole number. With turn = s/p in lowest terms
// it is whole for every n where s = 1, that is where the lead divides the lead of the screw a whole
// number of times; else only where n is a multiple of s. A chasing dial of so many teeth on the screw
// tells n but for whole turns of the dial: it serves if s divides its teeth, at one place in every s
// teeth.
//
// It is the train that counts and not the thread of the drawing: a 63-tooth wheel that stands for 127
// cuts nearly 1.25 mm from an inch screw, and yet the nuts must stay shut.

// Nuts is what the half-nuts may do with a train. Exact but for Way.
type Nuts struct {
	Anywhere bool    // they may be closed at any place
	Screw    int64   // the screw comes round right again every so many turns
	Spindle  int64   // in which the spindle makes so many
	Way      float64 // and the carriage goes so far, mm
}

// HalfNuts says what the half-nuts may do with a train, by the essay above. An error where the
// train has no Turn or the screw no lead; of the train Turn alone is read.
func HalfNuts(t Train, screw Pitch) (Nuts, error) {
	if t.Turn.Num <= 0 || t.Turn.Den <= 0 || screw.den == 0 {
		return Nuts{}, fmt.Errorf("a train and a lead screw are wanted to say what the half-nuts may do")
	}
	f := reduced(t.Turn.Num, t.Turn.Den)
	return Nuts{f.Num == 1, f.Num, f.Den, float64(f.Num) * screw.MM()}, nil
}

// Marks gives at how many places round a chasing dial of so many teeth the half-nuts may be
// closed; 0 where the dial cannot tell, and of fewer than one tooth. They are as many teeth apart
// as the screw has turns in Nuts.Screw.
func (n Nuts) Marks(teeth int) int {
	if teeth < 1 || n.Screw < 1 || int64(teeth)%n.Screw != 0 {
		return 0
	}
	return int(int64(teeth) / n.Screw)
}

// NextStart gives after how many turns of the lead screw, nuts open, they are closed for another
// start of a thread of two starts or more; done again and again it comes to all of them. False
// where opening the nuts never finds another start.
func (n Nuts) NextStart(starts int) (turns int64, ok bool) {
	if starts < 2 || n.Screw < 1 || n.Screw%int64(starts) != 0 {
		return 0, false
	}
	return n.Screw / int64(starts), true
}

// StartTeeth says by how many teeth of the first wheel the spindle is turned on alone to the next
// start: mark a tooth and the gap it stands in, take the wheels apart, turn, and put them together
// again. A stud that makes head turns for one of the spindle (zero: 1) wants wheel x head /
// starts. False where that is no whole number of teeth, for less than one tooth, two starts or a
// head that is not above 0, and above 2^31 teeth.
func StartTeeth(wheel int, head Fraction, starts int) (teeth int64, ok bool) {
	if head == (Fraction{}) {
		head = Fraction{1, 1}
	}
	if wheel < 1 || starts < 2 || head.Num < 1 || head.Den < 1 {
		return 0, false
	}
	over, all := bits.Mul64(uint64(wheel), uint64(head.Num))
	over2, by := bits.Mul64(uint64(head.Den), uint64(starts))
	if over != 0 || over2 != 0 || by == 0 || all%by != 0 || all/by > 1<<31 {
		return 0, false
	}
	return int64(all / by), true
}
