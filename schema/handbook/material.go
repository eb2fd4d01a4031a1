package handbook

import (
	"strings"
	"sync"

	"fettle/schema/model"
)

type materialRow struct {
	name, kind string
	words      []string // every way it is written, as key
	group      string
	density    float64
}

var materials = sync.OnceValue(func() []materialRow {
	var out []materialRow
	for _, r := range load("material").rows {
		m := materialRow{name: r.text("name"), kind: r.text("kind"), group: r.text("group"), density: r.number("density")}
		m.words = append(m.words, key(m.name))
		for _, o := range strings.Split(r.text("others"), "|") {
			if o != "" {
				m.words = append(m.words, key(o))
			}
		}
		out = append(out, m)
	}
	return out
})

// key drops what people write in different ways: case, blanks and hyphens.
func key(s string) string {
	return strings.NewReplacer(" ", "", "-", "", "\u00a0", "").Replace(strings.ToLower(strings.TrimSpace(s)))
}

// Material gives what a name or designation stands for. False where it is not in the
// handbook; "unknown" is not a material and is left to the reader of recipes.
func Material(name string) (model.Material, bool) {
	k := key(name)
	for _, m := range materials() {
		for _, w := range m.words {
			if w == k {
				return model.Material{Written: name, Name: m.name, Group: m.group, Density: m.density}, true
			}
		}
	}
	return model.Material{Written: name}, false
}

// MaterialNames lists the handbook's own names, in the order of the table.
func MaterialNames() []string {
	var out []string
	for _, m := range materials() {
		out = append(out, m.name)
	}
	return out
}

// Serves says whether metal of one sort can be used where another is asked for: it is the
// same, or the one asked for is the general word of a family and the other a grade of it
// ("aluminium" is served by 6082; 6082 is not served by 6061).
func Serves(asked, there model.Material) bool {
	if asked.Name == "" || there.Name == "" {
		return false
	}
	if asked.Name == there.Name {
		return true
	}
	for _, m := range materials() {
		if m.name == there.Name {
			return m.kind == asked.Name
		}
	}
	return false
}

// SpeedRow is a cutting speed at the edge, m/min.
type SpeedRow struct {
	Process, Tool, Group string
	Pick                 float64 // what is used where nothing is written
	Warn                 float64 // above it the speed is worth a word; a rule of thumb
	Source               string
}

var speeds = sync.OnceValue(func() []SpeedRow {
	var out []SpeedRow
	for _, r := range load("speed").rows {
		out = append(out, SpeedRow{r.text("process"), r.text("tool"), r.text("group"), r.number("pick"), r.number("warn"), r.text("source")})
	}
	return out
})

// Speed gives the cutting speed for a process ("turning", "milling", "drilling", "reaming",
// "slitting_saw", "tapping_machine", "parting"), a tool ("HSS", "carbide") and a material's
// group. False where the tables have none.
func Speed(process, toolMaterial, group string) (SpeedRow, bool) {
	for _, s := range speeds() {
		if s.Process == process && strings.EqualFold(s.Tool, toolMaterial) && s.Group == group && group != "" {
			return s, true
		}
	}
	return SpeedRow{}, false
}

// Skin gives, for a raw face, the least metal to take off for a clean one and the depth of
// its hard or scaly layer, mm: common practice.
func Skin(skin string) (over, depth float64, ok bool) {
	for _, r := range skins() {
		if r.text("skin") == skin {
			return r.number("over_mm"), r.number("depth_mm"), true
		}
	}
	return 0, 0, false
}

var skins = sync.OnceValue(func() []row { return load("skin").rows })
