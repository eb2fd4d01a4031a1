package schema

import (
	"fmt"
	"strings"
)

//go:generate go test -run ^TestReferencePage$ . -args -renew-page

// Reference is the page README.md of this folder: every kind of block with its attributes,
// as the table has them.
func Reference() string {
	var b strings.Builder
	b.WriteString(referenceHead)
	for _, c := range chapters {
		fmt.Fprintf(&b, "- [%s](#%s): ", c.title, anchor(c.title))
		for n, k := range c.kinds() {
			if n > 0 {
				b.WriteString(", ")
			}
			fmt.Fprintf(&b, "[%s](#%s)", c.heading(k), anchor(c.heading(k)))
		}
		b.WriteString("\n")
	}
	for _, c := range chapters {
		fmt.Fprintf(&b, "\n## %s\n", c.title)
		if c.says != "" {
			fmt.Fprintf(&b, "\n%s\n", c.says)
		}
		for _, k := range c.kinds() {
			writeKind(&b, c, k)
		}
	}
	return b.String()
}

const referenceHead = `<!-- Made from kinds.tsv by go generate ./schema. Change the table, not this page. -->

# The words of a recipe and a shop

A recipe and a shop are written as blocks: ` + "`vise \"small\" { jaw_width = 50 }`" + `. The first word is the **kind**, the word in
quotes its **label**, and each line within is an **attribute**. This page lists every kind with all its attributes; nothing else
is read. Most attributes may be left out, and the third column says what that means:

- **not known**: a check that needs the figure says so, and neither passes nor fails.
- **handbook**: the figure comes from a standard or a table of the trade.
- **chosen**, **worked out**: fettle picks it or reckons it, and the report says what it came to.
- a figure or a word: that is taken.
- **must be given**: the block is not complete without it. A member of an object (` + "`clamp.thread`" + `) must be given only where
  the object is written.

How a value is written:

| value | for example |
|---|---|
| length | ` + "`12`, `\"3/8 in\"`, `\"5 thou\"`, `inch(3/8) + 0.1`" + `; a bare figure is in the folder's unit |
| dimension | a length with its limits: ` + "`8`, `\"8 H7\"`, `\"30 ±0.1\"`, `\"12 -0.05/0\"`, `\"9.5..9.6\"`" + ` |
| angle | degrees: ` + "`45`, `\"22 deg 30'\"`" + ` |
| number, whole | a figure without unit, or in the unit shown; a whole figure |
| yes/no | ` + "`true`, `false`" + ` |
| text | ` + "`\"any words\"`" + ` |
| sizes | a set: ` + "`[2, 3, 4]`, `series(1, 13, 0.5)`, `set(\"number drills\")`" + `, or one length |
| speeds | ` + "`[120, 220, 400]`, or `{ from = 50, to = 2500 }`" + ` where stepless |
| thread, taper | ` + "`\"M6x0.75 LH\"`, `\"1/4-20 UNC\"`; `\"MT2\"`, `\"1:10\"`" + ` |
| feed | ` + "`\"0.1 mm/rev\"`, `\"60 mm/min\"`, `\"hand\"`" + ` |
| material | ` + "`\"brass\"`, `\"CW614N\"`, `\"unknown\"`" + ` |
| place | on a face: ` + "`[8, 12.5]`, or with its datums `{ left = \"8 ±0.05\", back = 8 }`" + `; places: a list of them |
| reference | to another block: ` + "`vise.small`, `hole.pillar`, `drill.jobbers[4.5]`, `face.top`" + ` |
| object | ` + "`{ by = \"nut\", diameter = 24 }`" + `; its members are listed with a full stop |
| list of … | ` + "`[a, b, c]`" + ` |

## Index

`

// chapter is one part of the page.
type chapter struct {
	title, says string
	has         func(*kind) bool
}

func is(names ...string) func(*kind) bool {
	return func(k *kind) bool {
		for _, n := range names {
			if n == k.Name {
				return true
			}
		}
		return false
	}
}

func stands(where string) func(*kind) bool { return func(k *kind) bool { return k.Where == where } }

var chapters = []chapter{
	{"Heads of folders", "Every recipe folder has one `recipe` block, every shop folder one `shop` block.", stands("header")},
	{"Everything in a shop", "A block of any kind in a shop may carry these besides its own.", is("any_item")},
	{"Machines", "", is("mill", "drill_press", "lathe", "power_saw", "hacksaw", "arbor_press", "furnace", "torch")},
	{"Holding the work", "", is("vise", "parallels", "packing", "soft_jaws", "round_bar", "clamps", "angle_plate", "v_block",
		"faceplate", "balance_weights", "chuck", "centre", "steady", "mandrel", "carrier", "split_bush", "nut", "bar_support")},
	{"Dividing and setting", "", is("dividing_head", "dividing_plate", "rotary_table", "sine_bar", "slip_gauges", "square", "surface_plate")},
	{"Holding the tool", "", is("collets", "collet_chuck", "drill_chuck", "arbor", "sleeve", "boring_head", "tool_post", "die_holder", "tap_wrench")},
	{"Cutters", "Every cutter may carry what stands under any_cutter besides its own; its own row is the one that counts.",
		is(append([]string{"any_cutter"}, cutterKinds...)...)},
	{"Hand tools", "", is("file", "piercing_saw", "scraper", "graver", "number_punches", "centre_punch")},
	{"Instruments", "", is(instrumentKinds...)},
	{"Stock and bought things", "", is("stock", "screws", "pins", "bearings", "circlips")},
	{"Rules of thumb", "Limits of judgement, not of fact. A shop may set its own, and a recipe may set them again for itself.", is("rules_of_thumb")},
	{"The part", "", stands("part")},
	{"Features", "A feature stands in a part. Every feature may carry what stands under any_feature besides its own.", stands("feature")},
	{"Set-ups", "Work on a part, in the order written. A set-up carries what stands under any_setup, and what belongs to the way it holds the piece: in a vise, clamped, turned or divided.", stands("setup")},
	{"Steps", "What is done within a set-up or at the bench, in the order written.", stands("step")},
	{"Parts together", "", stands("build")},
	{"Records and rules", "", stands("record")},
}

func (c chapter) kinds() []*kind {
	var out []*kind
	for _, k := range theTable().kinds {
		if c.has(k) {
			out = append(out, k)
		}
	}
	return out
}

// heading is a kind's name, told apart from the same words of a chapter by its own title.
func (c chapter) heading(k *kind) string { return k.Name }

// anchor is how a heading is linked to in Markdown.
func anchor(heading string) string { return strings.ReplaceAll(strings.ToLower(heading), " ", "-") }

func writeKind(b *strings.Builder, c chapter, k *kind) {
	fmt.Fprintf(b, "\n### %s\n\n%s.", c.heading(k), sentence(k.Meaning))
	if len(k.Also) > 0 {
		fmt.Fprintf(b, " Also written %s.", quotedWords(k.Also))
	}
	switch k.Label {
	case labelOptional:
		b.WriteString(" A label may be left out.")
	case labelNone:
		b.WriteString(" Without a label.")
	}
	if p := parentsOf(k); k.Label != sharedRows && k.Where != "shop" && k.Where != "header" && k.Where != "feature" {
		fmt.Fprintf(b, " Stands in: %s.", standsIn(p))
	}
	b.WriteString("\n")
	if k.free != nil {
		_, more, _ := strings.Cut(k.free.Meaning, "; ")
		fmt.Fprintf(b, "\nAny single word may be an attribute, with %s as its value; %s.\n", k.free.Value, more)
	}
	if len(k.Attrs) == 0 {
		return
	}
	b.WriteString("\n| attribute | value | left out | meaning |\n|---|---|---|---|\n")
	writeAttrs(b, k.Attrs, k.Attrs)
}

func writeAttrs(b *strings.Builder, as, ofKind []*attr) {
	for _, a := range as {
		name := "`" + a.Name + "`"
		if len(a.Also) > 0 {
			name += ", " + quotedWords(a.Also)
		}
		value := strings.ReplaceAll(strings.ReplaceAll(a.Value, `"`, "`"), "` `", "`, `")
		if a.Unit != "" && a.Unit != "mm" && a.Unit != "deg" {
			value += ", " + a.Unit
		}
		fmt.Fprintf(b, "| %s | %s | %s | %s |\n", name, value, leftOut(a, ofKind), a.Meaning)
		writeAttrs(b, a.Members, ofKind)
	}
}

func leftOut(a *attr, ofKind []*attr) string {
	if a.Required {
		return "must be given"
	}
	if a.Group == "" {
		return strings.ReplaceAll(a.LeftOut, `"`, "`")
	}
	var group []string
	for _, o := range ofKind {
		if o.Group == a.Group {
			group = append(group, o.Name)
		}
	}
	return "exactly one of " + quotedWords(group)
}

func quotedWords(ws []string) string { return "`" + strings.Join(ws, "`, `") + "`" }

var parentWords = map[string]string{
	"recipe": "the top of a recipe", "shop": "the top of a shop", "part": "a part",
	"assembly": "an assembly", "setup": "a set-up", "bench": "bench work",
}

func standsIn(parents []string) string {
	var out []string
	for _, p := range parents {
		out = append(out, parentWords[p])
	}
	return strings.Join(out, ", ")
}

// sentence begins with a capital.
func sentence(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
