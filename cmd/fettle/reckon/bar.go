package reckon

import (
	"errors"
	"fmt"
	"strings"

	"fettle/eval/reckon/bar"
)

var _ = enter(Subject{
	Name:  "bar",
	Title: "pieces from bars and offcuts: what to saw from which, what is left",
	Words: []Want{{Name: "PIECES", Kind: Text, Needed: true, Rest: true, Says: "finished lengths with commas between: 3 x 120, 95, 2 x 40"}},
	Flags: []Want{
		{Name: "bars", Kind: Text, Says: "what lies on the rack: 2 x 1000, 500, offcut 310 (left out: the shop's stock; pick one with --with)"},
		{Name: "kerf", Kind: Length, Least: 0, Most: 20, Says: "width of the saw cut (left out: 1 mm)"},
		{Name: "facing", Kind: Length, Least: 0, Most: 100, Says: "added to each piece for facing its ends (left out: 0)"},
		{Name: "grip", Kind: Length, Least: 0, Most: 1000, Says: "end of each bar that stays in the clamp (left out: 0)"},
		{Name: "keep", Kind: Length, Least: 0, Most: 10000, Says: "shortest remainder worth keeping (left out: 0, none)"},
		{Name: "end", Kind: YesNo, Says: "the bar's own end may be the last face of the last piece"},
	},
	Examples: [][]string{{"3 x 120, 95, 2 x 40", "--bars", "500, offcut 310"},
		{"5 x 100", "--bars", "2 x 310", "--kerf", "1.5", "--facing", "1"}},
	No:     "the rack does not give all the pieces",
	Answer: answerBar,
})

// sawn is a rack and what is to come from it.
type sawn struct {
	reply
	job  bar.Job
	from string
}

func answerBar(a Ask) (Answer, error) {
	q := sawn{reply: reply{Ask: a}}
	if err := cmpErr(q.pieces(), q.rack()); err != nil {
		return Answer{}, err
	}
	saw := &q.job.Saw
	saw.Kerf, saw.EndIsFace = 1, a.Yes("end")
	for _, f := range []struct {
		name string
		to   *float64
	}{{"kerf", &saw.Kerf}, {"facing", &saw.Facing}, {"grip", &saw.Grip}, {"keep", &q.job.Usable}} {
		if mm, ok := a.Length(f.name); ok {
			*f.to = mm
		}
	}
	p, err := bar.Plans(q.job)
	var short *bar.Short
	switch {
	case errors.As(err, &short):
		return q.short(short), nil
	case err != nil:
		return Answer{}, err
	}
	return q.plan(p), nil
}

func (q *sawn) pieces() error {
	list, err := items(q.Text("PIECES"), ",", "piece")
	if err != nil {
		return err
	}
	for _, it := range list {
		n, rest, err := times(it)
		if err != nil {
			return err
		}
		mm, err := length(rest, "length of a piece", q.Units)
		if err != nil {
			return err
		}
		q.job.Pieces = append(q.job.Pieces, bar.Piece{Name: millimetres(mm), Length: mm, Count: n})
	}
	return nil
}

func (q *sawn) rack() error {
	words := q.Text("bars")
	if words == "" {
		return q.shopRack()
	}
	q.from = "--bars"
	list, err := items(words, ",", "bar")
	if err != nil {
		return err
	}
	for _, it := range list {
		n, rest, err := times(it)
		if err != nil {
			return err
		}
		rest, offcut := strings.CutPrefix(rest, "offcut ")
		mm, err := length(rest, "length of a bar", q.Units)
		if err != nil {
			return err
		}
		q.add(mm, n, offcut)
	}
	return nil
}

func (q *sawn) add(mm float64, n int, offcut bool) {
	name := millimetres(mm) + " mm bar"
	if offcut {
		name = millimetres(mm) + " mm offcut"
	}
	q.job.Bars = append(q.job.Bars, bar.Bar{Name: name, Length: mm, Count: n, Offcut: offcut})
}

// shopRack takes the pieces of one stock of the shop.
func (q *sawn) shopRack() error {
	racks := q.Things("stock")
	if len(racks) != 1 {
		return fmt.Errorf("what lies on the rack is wanted: say --bars, or name a shop and pick one of its stock with --with")
	}
	list := racks[0].Attr("lengths")
	if list == nil {
		return fmt.Errorf("%s does not say its lengths: say --bars", racks[0].Path())
	}
	q.from = racks[0].Path()
	for _, v := range list.Value.List {
		q.add(v.Num, 1, false)
	}
	return nil
}

func (q *sawn) plan(p bar.Plan) Answer {
	bars := counted(p.NewBars, "new bar")
	q.say("%s will do, with %s of scrap.", bars, q.Says(p.Scrap))
	switch {
	case p.Proved >= bar.Scrap:
		q.say("No way of sawing opens fewer new bars or, with as few, leaves less scrap.")
	case p.Proved >= bar.NewBars:
		q.say("No way of sawing opens fewer new bars; whether less scrap could be left is not proved.")
	default:
		q.say("At least %s must be opened; better ways were looked for and not found, and are not ruled out.", counted(p.LeastNew, "new bar"))
	}
	t := Table{Title: "Saw", Head: []Column{left("from"), left("pieces"), right("left mm"), left("")}, Most: 30}
	for _, c := range p.Cuts {
		kept := ""
		if c.Kept {
			kept = "keep"
		}
		t.Rows = append(t.Rows, []string{c.Bar, strings.Join(c.Pieces, ", "), millimetres(c.Left), kept})
	}
	q.out.Tables = append(q.out.Tables, t)
	s := q.job.Saw
	q.step("Each piece takes its length, %s mm for facing and a kerf of %s mm.", millimetres(s.Facing), millimetres(s.Kerf))
	if s.Grip > 0 {
		q.step("%s mm of each bar stay in the clamp.", millimetres(s.Grip))
	}
	q.common()
	q.value("new bars", float64(p.NewBars), "", "worked out")
	q.value("scrap", p.Scrap, "mm", "worked out")
	q.value("bars touched", float64(p.Touched), "", "worked out")
	return q.out
}

func (q *sawn) short(s *bar.Short) Answer {
	q.out.No = true
	switch {
	case s.By > 0:
		q.say("The rack does not give all the pieces: at least %s of bar are lacking.", q.Says(s.By))
	case s.Proved:
		q.say("The rack does not give all the pieces: its lengths together would do, and no way of sawing does.")
	default:
		q.say("No way was found to saw all the pieces from the rack, though its lengths together would do; it is not proved that there is none.")
	}
	q.common()
	q.value("lacking", s.By, "mm", "worked out")
	return q.out
}

func (q *sawn) common() {
	q.out.Sources = append(q.out.Sources, "one-dimensional cutting as a search with bounds; checked against published instances with proved optimum (OR-Library) and a general solver")
	q.out.Caution = "Measure the bars before the first cut, and saw the longest piece of each first. A saw throws short ends: clamp what is cut off as well, and follow the machine's manual."
}
