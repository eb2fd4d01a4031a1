package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// WrenchTurn is how far the handle of a wrench turns about a tap or a hand reamer that is all the way in.
type WrenchTurn struct {
	Free float64 // degrees of the half turn after which its two arms have changed places; 180: all round
	At   float64 // mm from the axis to the nearest metal in its way; nothing where it turns all round
	High float64 // mm from the tip of the tool to the underside of the handle
}

// drivenSquare is how long the driving square of a tap or hand reamer is, mm. From memory: ISO 237, whose
// squares are about 0.8 of the diameter across and 3 mm longer than that.
func drivenSquare(diameter float64) float64 { return 0.8*diameter + 3 }

// turnStep is how finely the turn is looked at, degrees.
const turnStep = 3

// WrenchTurns says how far a wrench whose handle sweeps a circle, mm, turns on the tool of a hole beside
// the metal of the piece: a straight handle with two equal arms, on the square at the tool's end. What holds
// the piece is not looked at.
func (k *Cut) WrenchTurns(w *Working, swing float64) model.Known[WrenchTurn] {
	if len(w.Moves) == 0 || k.Choice.Tool.Cutter == nil {
		return model.Known[WrenchTurn]{}
	}
	overall, _ := Lengths(k.Choice.Tool)
	t := WrenchTurn{Free: 180, High: overall.V - drivenSquare(k.Stack.Diameter.Or(k.Choice.Tool.Size))}
	piece := k.After.Piece.Placed(k.Hold.Pose)
	for _, m := range w.Moves {
		high := t.High
		if !overall.Is() {
			high = m.To.Sub(m.From).Len() // it cannot come lower than the face that the tool goes into
		}
		if free, at := turnsFree(piece, m, high, swing/2); free < t.Free {
			t.Free, t.At = free, at
		}
	}
	if !overall.Is() && t.Free < 180 {
		return model.Lacking[WrenchTurn](overall.Missing())
	}
	return model.Sure(t)
}

// turnsFree is the longest run of free places of a handle of two arms, high above the tip of a tool at
// the end of its move, in degrees, and how near the nearest metal is.
func turnsFree(piece *solid.Piece, m solid.Move, high, arm float64) (free, nearest float64) {
	up := m.From.Sub(m.To).Unit()
	hub := m.To.Add(up.Times(high))
	const places = 180 / turnStep
	var clear [places]bool
	nearest = math.Inf(1)
	for i, dir := range allRound(up)[:places] {
		met := min(firstMetal(piece, hub, dir), firstMetal(piece, hub, dir.Times(-1)))
		clear[i] = met > arm
		nearest = min(nearest, met)
	}
	run, best := 0, 0
	for i := range 2 * places {
		run++
		if !clear[i%places] {
			run = 0
		}
		best = max(best, min(run, places))
	}
	if best == places {
		return 180, nearest
	}
	return float64(max(0, best-1) * turnStep), nearest
}

// allRound are the directions of a full turn about a line, a turnStep from each other.
func allRound(about solid.Vec) []solid.Vec {
	side := about.Cross(solid.Vec{1, 0, 0})
	if side.Len() < 0.5 {
		side = about.Cross(solid.Vec{0, 1, 0})
	}
	side = side.Unit()
	across := about.Cross(side)
	out := make([]solid.Vec, 360/turnStep)
	for i := range out {
		a := float64(i) * turnStep * math.Pi / 180
		out[i] = side.Times(math.Cos(a)).Add(across.Times(math.Sin(a)))
	}
	return out
}

// firstMetal is how far the metal of a piece lies from a place in a direction; infinite where there is none.
func firstMetal(piece *solid.Piece, from, dir solid.Vec) float64 {
	for _, s := range piece.Ray(from, dir) {
		return s.A
	}
	return math.Inf(1)
}
