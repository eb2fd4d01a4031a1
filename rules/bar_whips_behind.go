package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "bar-whips-behind",
	Title: "bar stands out behind the headstock with nothing to steady it",
	Why: `A bar that turns with a free end bends a little, and near its whirling speed bends in an instant through a right angle. It
then flails round with the force of a flail. Saw the piece off, or put a support with a close bush behind the spindle.`,
	Rows: []string{"A9"},
	Source: []string{
		"first whirl of a cantilever, n = 4.2e7 d/L^2 rev/min for steel and aluminium, 2.9e7 for brass, mm: beam theory; a 6.35 mm bar with 610 mm free was seen bent at 800 rev/min, where it gives 725",
		"0.4 of that speed, and a support asked for from 300 mm: our own limits, to be set by the shop"},
	Limits:    []string{"bar_behind", "whirl_share"},
	Level:     finding.Danger,
	Judgement: finding.Thumb,
	Caution: "A whipping bar has killed. Keep clear of the end behind the headstock, guard it, start at the slowest speed, and follow the " +
		"machine's manual.",
	Trips:  barBehind("700", "nothing"),
	Sound:  barBehind("450", "nothing"),
	OnTurn: barWhipsBehind,
})

// barBehind faces a piece on the end of a long thin bar.
func barBehind(length, behind string) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = 8
  length   = 30

  blank {
    stock = stock.own
    bar   = true
  }

  setup "turn" {
    machine   = lathe.centre
    hold      = chuck.three
    end       = "left"
    stick_out = 36
    behind    = "` + behind + `"

    operation {
      makes = face.right
      speed = 680
    }
  }
}

stock "own" {
  material = "mild steel"
  round    = 8
  lengths  = [` + length + ` + 300]
  skin     = "drawn"
}
`
}

func barWhipsBehind(k *eval.Turn, a *Ask) {
	h := k.Hold
	m := k.Lathe()
	if m == nil || h.Unplayed != "" || h.Choice.Chuck == nil && h.Choice.Collets == nil || h.Choice.Support != nil && h.Choice.Centres {
		return
	}
	open := h.Part.Blank.BarOpen
	if h.Held < 150 && open == nil { // no spindle is so short: it ends within
		return
	}
	if bore, ok := m.Bore.Get(); ok && open != nil && 2*h.Within(k.Before.Profile, -h.Held, 0).Most() > bore+0.0005 {
		return // it does not go through
	}
	a.Asks("what steadies the bar at the rear end of the spindle of %s?", m.Path())
	if open != nil {
		if said := h.Work.SetUp.Behind; !said.Is() || said.V.Text == "nothing" {
			a.Lack(open...)
		}
		return
	}
	out, ok := Need(a, h.Behind())
	if !ok {
		return
	}
	if out <= 0 {
		a.Clear(finding.Margin{}, "")
		return
	}
	d := 2 * h.Within(k.Before.Profile, -h.Held, 0).Most()
	whirl, ok := whirls(k, d, out)
	long := out > a.Limit("bar_behind")+0.0005
	fast := ok && k.Choice.Speed > a.Limit("whirl_share")*whirl+1e-6
	said, known := h.Work.SetUp.Behind.Get()
	switch {
	case known && said.Text != "nothing":
		steadiedBehind(h, d, a)
	case !long && !fast:
		a.Clear(Bound(round(out), a.Limit("bar_behind"), "mm"), "the bar behind "+m.Path())
	case !known:
		a.Lack(model.Known[float64]{Of: h.Work.SetUp.Item, Attr: "behind", At: h.Work.SetUp.Item.At}.Missing()...)
	case fast:
		f := a.Say(h.Work.SetUp.Path()+".behind", k.Place("behind", "speed"), "%s mm of bar of %s mm stand out behind %s with nothing to steady them: it whirls at about %s rev/min, and %s is to be run; usually %s of that at most (whirl_share)",
			tenth(out), figure(round(d)), m.Path(), figure(float64(int(whirl))), figure(k.Choice.Speed), figure(a.Limit("whirl_share")))
		f.Margin = Bound(k.Choice.Speed, a.Limit("whirl_share")*whirl, "rev/min")
	default:
		f := a.Say(h.Work.SetUp.Path()+".behind", k.Place("behind", "speed"), "%s mm of bar of %s mm stand out behind %s with nothing to steady them; usually %s mm at most (bar_behind)",
			tenth(out), figure(round(d)), m.Path(), figure(a.Limit("bar_behind")))
		f.Margin = Bound(round(out), a.Limit("bar_behind"), "mm")
	}
}

// steadiedBehind asks whether a support behind the spindle holds the bar closely. A bar that is loose in
// it whips as far as it is loose; what is said in words alone is taken to hold it.
func steadiedBehind(h *eval.Chucking, d float64, a *Ask) {
	behind := h.Work.SetUp.Behind
	s, ok := model.Find(h.Part.Build.Shop.BarSupports, behind.V.Item)
	if !ok {
		a.Clear(finding.Margin{}, "")
		return
	}
	bars, ok := Need(a, s.Bars)
	switch {
	case !ok || len(bars) != 2:
	case d >= bars[0]-0.0005 && d <= bars[1]+0.0005:
		a.Clear(finding.Margin{}, "")
	default:
		f := a.Say(s.Path()+".bars+"+h.Work.SetUp.Path(), behind.At, "%s holds bar of %s to %s mm closely, and %s mm of bar are to stand in it", s.Path(), figure(bars[0]), figure(bars[1]), figure(round(d)))
		f.Also = []finding.Note{{Place: s.Bars.At, Says: "the diameters that it holds"}}
	}
}

// whirls is the first whirling speed of a round bar held at one end, rev/min.
func whirls(k *eval.Turn, d, free float64) (float64, bool) {
	group, ok := k.MaterialGroup().Get()
	if !ok || free <= 0 {
		return 0, false
	}
	c := 4.2e7
	if oneOf(group, "brass_free_cutting", "bronze", "copper") {
		c = 2.9e7
	}
	return c * d / (free * free), true
}
