package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "stock-too-small",
	Title: "the piece of stock is smaller than the part with the metal over its faces",
	Why: `Finished size and the metal to clean up each face must both come out of the bar; of round bar the
corners must lie inside the circle. What is short by a millimetre is short.`,
	Rows:      []string{"G1", "G3", "G4"},
	Source:    []string{"arithmetic; a rectangle in a round: its diagonal; in a hexagon s across flats: (2 s - a)/sqrt(3) beside a side a that stands on the flats"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleStock(24, 1),
	Sound:     exampleStock(23, 1),
	OnPart:    stockTooSmall,
})

func stockTooSmall(p *eval.PartTrace, a *Ask) {
	if p.Start == nil || p.Part.Blank.Stock == nil {
		return
	}
	s := p.Part.Blank.Stock
	at := p.Part.At
	if b := p.Part.Part.Blank; b != nil {
		at = b.Item.At
		if b.Stock.Said() {
			at = b.Stock.At
		}
	}
	for _, n := range p.Part.StockNeeds() {
		switch {
		case !n.Known:
			a.Lack(n.Lacks...)
		case s.Sheet.Said && n.Side == "height" && math.Abs(n.Has-n.Needs) > 0.0005:
			f := a.Say(s.Path()+"+"+p.Part.Label+".thickness", at, "%s is %s thick, and %s is of sheet of %s", s.Path(), mm(n.Has), p.Part.Label, mm(round(n.Needs)))
			f.Margin = Room(n.Has, round(n.Needs))
		case n.Has < n.Needs-0.0005 && n.Side == "corners":
			f := a.Say(s.Path()+"+"+p.Part.Label+"."+n.Side, at, "%s has a diameter of %s, and the part is %s over its corners: they do not fill out",
				s.Path(), mm(n.Has), mm(round(n.Needs)))
			f.Margin = Room(n.Has, round(n.Needs))
		case n.Has < n.Needs-0.0005 && n.Side == "flats":
			f := a.Say(s.Path()+"+"+p.Part.Label+"."+n.Side, at, "%s is %s across its flats, and the corners of the part want %s: they do not fill out",
				s.Path(), mm(n.Has), mm(round(n.Needs)))
			f.Margin = Room(n.Has, round(n.Needs))
		case n.Has < n.Needs-0.0005:
			f := a.Say(s.Path()+"+"+p.Part.Label+"."+n.Side, at, "the raw piece wants %s for the %s of %s (%s finished and %s over), and %s has %s",
				mm(round(n.Needs)), n.Side, p.Part.Label, mm(finished(p.Part, n.Side)), mm(round(n.Needs-finished(p.Part, n.Side))), s.Path(), mm(n.Has))
			f.Margin = Room(n.Has, round(n.Needs))
		default:
			a.Clear(Room(n.Has, round(n.Needs)), s.Path()+" for the "+n.Side+" of "+p.Part.Label)
		}
	}
}

func finished(p *eval.Part, side string) float64 {
	if p.Flat != nil {
		p = p.Flat.Part // bends make it shorter than its legs over their outsides
	}
	if side == "diameter" {
		return p.Across
	}
	return p.Size[map[string]int{"length": 0, "width": 1, "height": 2}[side]]
}
