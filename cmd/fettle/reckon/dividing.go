package reckon

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"fettle/eval/reckon/dividing"
	"fettle/schema/model"
)

var _ = enter(Subject{
	Name:  "dividing",
	Title: "crank, plate and wheels for divisions or an angle; rotary tables",
	Words: []Want{{Name: "DIVISIONS", Kind: Whole, Least: 1, Most: dividing.MostPlaces, Says: "equal divisions of the circle (left out: say --angle)"}},
	Flags: []Want{
		{Name: "angle", Kind: Angle, Least: 0, Most: 360, Says: "move by an angle instead"},
		{Name: "places", Kind: Whole, Least: 1, Most: dividing.MostPlaces, Says: "of --angle: places to be reached, the first included"},
		{Name: "ratio", Kind: Number, Least: 1, Most: dividing.MostRatio, Says: "turns of the crank for one of the work"},
		{Name: "circles", Kind: Text, Says: "holes in each circle with commas between, a face of a plate parted from the next by /: 15,16,17 / 21,23; 2 to 400 holes"},
		{Name: "direct", Kind: Wholes, Least: 2, Most: dividing.MostHoles, Says: "holes or notches of the direct plate, or teeth of a spindle wheel with a detent"},
		{Name: "spaces", Kind: Whole, Least: 1, Most: dividing.MostPlaces, Says: "block indexing: so many spaces at a move"},
		{Name: "wheels", Kind: Wholes, Least: 10, Most: dividing.MostTeeth, Says: "teeth of the wheels of the differential, doubles twice"},
		{Name: "idlers", Kind: OneOf, Of: []string{"usual", "reversed"}, Says: "the head's rule of idlers (left out: usual: with one pair 1 to turn the plate with the crank, 2 against it; with two pairs 0 and 1)"},
		{Name: "axis", Kind: OneOf, Of: []string{"level", "tilted", "upright"}, Says: "how the spindle stands"},
		{Name: "dial", Kind: Angle, Least: 0, Most: 90, Says: "of a rotary table: what one line of its dial or vernier turns it by"},
		{Name: "table", Kind: YesNo, Says: "print every position"},
		{Name: "radius", Kind: Length, Least: 0.001, Most: 10000, Says: "where the error counts"},
	},
	Examples: [][]string{{"36", "--ratio", "40", "--circles", "15,16,17,18,19,20"}, {"--angle", "22 deg 30'", "--ratio", "40", "--circles", "16,18,20"},
		{"127", "--ratio", "40", "--circles", "39", "--wheels", "24,32,40,56"},
		{"7", "--ratio", "90", "--dial", "1'", "--radius", "50", "--table"}, {"45", "--shop", "recipes/shops/attic"}},
	No:     "no setting at hand is exact",
	Answer: answerDividing,
})

// How many lines a table of positions has at most, and with --all.
const mostLines, mostLinesAll = 1000, 5000

// divided is a question of dividing as it was asked.
type divided struct {
	Ask
	head     dividing.Head
	job      dividing.Job
	rotary   dividing.Rotary // has a Line where there is a dial
	from     string          // where the ratio is from
	noRatio  bool            // only a direct plate was named
	plates   bool            // circles are known
	radius   float64         // 0: not asked for
	settings []dividing.Setting
	near     dividing.Nearest
	geared   dividing.Geared
	out      Answer
}

func answerDividing(a Ask) (Answer, error) {
	q := divided{Ask: a}
	q.radius, _ = a.Length("radius")
	if err := cmpErr(q.readJob(), q.readHead()); err != nil {
		return Answer{}, err
	}
	var err error
	if q.settings, err = dividing.Settings(q.head, q.job); err != nil {
		return Answer{}, err
	}
	if q.noRatio {
		q.settings = slices.DeleteFunc(q.settings, func(s dividing.Setting) bool { return s.Method != dividing.Direct })
	}
	if q.near, err = dividing.Near(q.head, q.job); err != nil {
		return Answer{}, err
	}
	if q.geared, err = dividing.Gears(q.head, q.job); err != nil {
		return Answer{}, err
	}
	q.turns()
	q.best()
	q.others()
	if err := cmpErr(q.serve(), q.dial()); err != nil {
		return Answer{}, err
	}
	q.positions()
	q.close()
	return q.out, nil
}

// readJob reads what is to be divided.
func (q *divided) readJob() (err error) {
	n, divisions := q.Whole("DIVISIONS")
	_, isAngle := q.Angle("angle")
	places, some := q.Whole("places")
	k, block := q.Whole("spaces")
	switch {
	case divisions == isAngle:
		return errors.New("say either the number of divisions, as in dividing 36, or --angle")
	case isAngle && block:
		return errors.New("--spaces is of divisions: an angle has none")
	case divisions && some:
		return errors.New("--places is of --angle: equal divisions have as many places as divisions")
	case isAngle:
		q.job, err = dividing.Angle(q.exactAngle("angle"), max(1, places))
	case block:
		q.job, err = dividing.Block(n, k)
	default:
		q.job, err = dividing.Divisions(n)
	}
	return err
}

// exactAngle gives an angle as it was written. The frame's float64 has lost at most 1e-13 of it,
// and a whole number of thousandths of a second is taken for what was written.
func (q *divided) exactAngle(flag string) dividing.Fraction {
	deg, _ := q.Angle(flag)
	return exactDegrees(deg)
}

const milliseconds = 3_600_000 // of arc in a degree

func exactDegrees(deg float64) dividing.Fraction {
	ms := math.Round(deg * milliseconds)
	if math.Abs(deg) <= 360 && math.Abs(ms-deg*milliseconds) < 1e-4 {
		return dividing.Of(int64(ms), milliseconds)
	}
	return fraction(decimal(deg))
}

// fraction gives an exact number; no number where it leaves 64 bits.
func fraction(r *big.Rat) dividing.Fraction {
	if !r.Num().IsInt64() || !r.Denom().IsInt64() {
		return dividing.Fraction{}
	}
	return dividing.Of(r.Num().Int64(), r.Denom().Int64())
}

// readHead reads the head or table: flags first, else the shop's.
func (q *divided) readHead() error {
	ratio, known, err := q.ExactFrom("ratio", "ratio", "dividing_head", "rotary_table")
	if err != nil {
		return err
	}
	item := ratio.Item
	q.head.Direct, _ = q.Wholes("direct")
	q.head.Gear.Wheels, _ = q.Wholes("wheels")
	if item != nil {
		q.fromShop(item)
	}
	if err := q.readCircles(item); err != nil {
		return err
	}
	switch {
	case known:
		q.head.Ratio, q.from = fraction(ratio.V), ratio.From
	case len(q.head.Direct) > 0 && !q.plates:
		q.head.Ratio, q.noRatio = dividing.Of(1, 1), true
	default:
		return errors.New("say --ratio, the turns of the crank for one of the work, or --shop with a dividing head or rotary table that says it")
	}
	return q.readGear(item)
}

// fromShop takes what no flag says from a thing of the shop.
func (q *divided) fromShop(i *model.Item) {
	list := func(name string, into *[]int) {
		if v, ok := Member(i, name); ok && len(*into) == 0 {
			for _, x := range v.List {
				*into = append(*into, int(x.Num))
			}
		}
	}
	list("direct", &q.head.Direct)
	list("differential.wheels", &q.head.Gear.Wheels)
	if v, ok := Member(i, "dial.division"); ok {
		q.rotary.Line = exactDegrees(v.Num)
	}
}

// readCircles reads the plates: of the flag by faces; of the shop those that the head says fit
// it, or all where it does not say. The shop does not tell the sides of a plate apart.
func (q *divided) readCircles(item *model.Item) error {
	if text := q.Text("circles"); text != "" {
		q.plates = true
		for i, face := range strings.Split(text, "/") {
			circles, err := circlesOf(face)
			if err != nil {
				return err
			}
			p := dividing.Plate{Faces: [][]int{circles}}
			if strings.Contains(text, "/") {
				p.Name = fmt.Sprintf("face %d", i+1)
			}
			q.head.Plates = append(q.head.Plates, p)
		}
		return nil
	}
	if item == nil || item.Kind != "dividing_head" {
		return nil
	}
	fits, said := Member(item, "plates")
	for _, i := range q.Things("dividing_plate") {
		v, ok := Member(i, "circles")
		if !ok || said && !slices.ContainsFunc(fits.List, func(r model.Value) bool { return r.Ref.Item == i }) {
			continue
		}
		p := dividing.Plate{Name: i.Path(), Faces: [][]int{nil}, Mixed: true}
		for _, c := range v.List {
			p.Faces[0] = append(p.Faces[0], int(c.Num))
		}
		q.plates, q.head.Plates = true, append(q.head.Plates, p)
	}
	return nil
}

func circlesOf(face string) (out []int, err error) {
	for _, w := range strings.Split(face, ",") {
		n, err := strconv.Atoi(strings.TrimSpace(w))
		if err != nil || n < 2 || n > dividing.MostHoles {
			return nil, fmt.Errorf("--circles wants whole numbers from 2 to %d with commas between, and / between faces; %s is none", dividing.MostHoles, quoted(strings.TrimSpace(w)))
		}
		out = append(out, n)
	}
	return out, nil
}

// readGear reads the differential and the dial.
func (q *divided) readGear(item *model.Item) (err error) {
	switch q.Text("axis") {
	case "level":
		q.head.Gear.Axis = dividing.Level
	case "tilted", "upright":
		q.head.Gear.Axis = dividing.Tilted
	}
	if q.Text("idlers") == "reversed" {
		q.head.Gear.Idlers = dividing.Reversed
	}
	_, said := q.Angle("dial")
	if said {
		q.rotary.Line = q.exactAngle("dial")
	}
	if q.noRatio && said {
		return errors.New("--dial is of a rotary table: say its --ratio too")
	}
	if said || q.rotary.Line != (dividing.Fraction{}) {
		q.rotary, err = dividing.Lined(q.head.Ratio, q.rotary.Line)
	}
	return err
}
