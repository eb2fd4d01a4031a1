package schema

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"fettle/schema/text"
)

const recipeHead = "recipe \"r\" {\n  units = \"mm\"\n}\n"

// within a part, where most values stand
func inPart(attr string) string {
	return recipeHead + "part \"p\" {\n  length = 10\n  diameter = 5\n  " + attr + "\n}\n"
}

// Inputs that overflow the stack of a trusting parser, or keep it busy for minutes. Each must
// come back within a second (ten under the race detector or on a busy machine), as findings
// and never as a crash. The list is of dangers that were measured with the parser in use.
func TestHostileInputs(t *testing.T) {
	big := strings.Repeat
	cases := map[string]string{
		"brackets":             inPart("note = " + big("[", 100_000)),
		"closed brackets":      inPart("note = " + big("[", 100_000) + big("]", 100_000)),
		"parentheses":          inPart("note = " + big("(", 100_000) + "1" + big(")", 100_000)),
		"objects":              inPart("note = " + big("{a=", 100_000)),
		"blocks":               recipeHead + big("part \"p\" {\n", 50_000),
		"minuses":              inPart("edges = " + big("-", 500_000) + "1"),
		"bangs":                inPart("edges = " + big("!", 500_000) + "true"),
		"sums":                 inPart("edges = 1" + big("+1", 300_000)),
		"choices":              inPart("edges = " + big("true?1:", 100_000) + "1"),
		"nested calls":         inPart("edges = " + big("abs(", 100_000) + "1" + big(")", 100_000)),
		"indices":              inPart("edges = a" + big("[b]", 200_000)),
		"dots":                 inPart("edges = a" + big(".b", 300_000)),
		"dots of figures":      inPart("edges = a" + big(".1", 300_000)),
		"dollars":              inPart("note = \"" + big("$$", 100_000) + "\""),
		"percents":             inPart("note = \"" + big("% ", 100_000) + "\""),
		"pieces":               inPart("note = \"" + big("${1}", 200_000) + "\""),
		"texts in texts":       inPart("note = " + big("\"${", 50_000) + "1" + big("}\"", 50_000)),
		"here-text":            inPart("note = <<EOT\n" + big("$$", 100_000) + "\nEOT"),
		"here-text not closed": inPart("note = <<EOT\n" + big("x\n", 100_000)),
		"nested loops":         inPart("note = " + big("[for a in [1,2,3,4,5,6,7,8,9]: ", 14) + "1" + big("]", 14)),
		"loop in a text":       inPart("note = \"%{ for a in b }x%{ endfor }\""),
		"splat":                inPart("note = a" + big("[*]", 1000)),
		"power of ten":         inPart("edges = 1e10000000"),
		"power in a text":      inPart("note = \"${1e10000000}\""),
		"nought point":         inPart("edges = 1e-10000000"),
		"many digits":          inPart("edges = " + big("9", 500_000)),
		"infinity":             inPart("edges = 1e308 * 1e308"),
		"by nought":            inPart("edges = 1 / 0"),
		"remainder of nought":  inPart("edges = 1 % 0"),
		"a long word":          inPart(big("x", 1_000_000) + " = 1"),
		"a long label":         recipeHead + "part \"" + big("x", 1_000_000) + "\" {\n}\n",
		"a long text":          inPart("diameter = \"" + big("9 ", 400_000) + "\""),
		"a long comment":       recipeHead + "# " + big("x", 1_000_000),
		"combining marks":      recipeHead + "# a" + big("\u0301", 400_000),
		"zero bytes":           inPart("note = \"a\x00b\""),
		"no text at all":       "\x89PNG\r\n\x1a\n" + big("\xff\xfe", 1000),
		"only newlines":        recipeHead + big("\n", 1_000_000),
		"carriage returns":     recipeHead + big("\r", 500_000),
		"semicolons":           recipeHead + big(";", 500_000),
		"quotes":               recipeHead + big("\"", 500_000),
		"odd signs":            recipeHead + big("☃", 300_000),
		"doubled texts":        recipeHead + doubling("\"%s${given.a%d}${given.a%d}\"", 60),
		"doubled lists":        recipeHead + doubling("[%sgiven.a%d, given.a%d]", 60),
		"a long chain":         recipeHead + chain(40_000),
		"a ring":               recipeHead + ring(20_000),
		"many attributes":      recipeHead + "part \"p\" {\n" + manyLines("a%d = 1\n", 60_000) + "}\n",
		"many of one":          recipeHead + "part \"p\" {\n" + big("length = 1\n", 80_000) + "}\n",
		"many blocks":          recipeHead + manyLines("part \"p%d\" {}\n", 50_000),
		"same blocks":          recipeHead + big("part \"p\" {}\n", 50_000),
		"unknown blocks":       recipeHead + manyLines("prat%d \"p\" {}\n", 50_000),
		"unknown names":        inPart("note = 1\n" + manyLines("hole \"h%d\" { into = face.tpo }\n", 20_000)),
		"many holes":           inPart("note = \"\"\n" + manyLines("hole \"h%d\" { diameter = 1 + hole.h0.diameter }\n", 15_000)),
		"steps by name":        recipeHead + stepsByName(6_000),
		"a vast series":        recipeHead + "drill \"d\" { diameter = series(0, 1e12, 1e-9) }\npart \"p\" {\n edges = drill.d[1].diameter\n}\n",
		"too many members":     inPart("note = [" + big("1,", 300_000) + "]"),
	}
	for name, src := range cases {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			_, finds, err := Load(text.Archive{"r/a.hcl": []byte(src)}, "r", NoShop)
			took := time.Since(start)
			if err != nil {
				t.Fatal(err)
			}
			if len(finds) == 0 && !harmless[name] {
				t.Error("nothing was found")
			}
			if took > 10*time.Second {
				t.Errorf("took %v", took)
			}
			if took > time.Second {
				t.Logf("took %v", took)
			}
			for _, f := range finds {
				if len(f.Says) > 1000 {
					t.Errorf("a sentence of %d bytes: %.200s", len(f.Says), f.Says)
					break
				}
			}
		})
	}
}

// harmless are inputs that are large but say nothing wrong.
var harmless = map[string]bool{"a long comment": true, "combining marks": true, "only newlines": true}

func doubling(form string, n int) string {
	var b strings.Builder
	b.WriteString("given {\n  a0 = \"xxxxxxxxxxxxxxxx\"\n")
	for i := 1; i <= n; i++ {
		fmt.Fprintf(&b, "  a%d = "+form+"\n", i, "", i-1, i-1)
	}
	return b.String() + "}\npart \"p\" {\n  note = given.a60\n}\n"
}

func chain(n int) string {
	var b strings.Builder
	b.WriteString("given {\n")
	for i := n; i > 0; i-- {
		fmt.Fprintf(&b, "  a%d = given.a%d\n", i, i-1)
	}
	return b.String() + "  a0 = 1\n}\n"
}

func ring(n int) string {
	var b strings.Builder
	b.WriteString("given {\n")
	for i := range n {
		fmt.Fprintf(&b, "  a%d = given.a%d\n", i, (i+1)%n)
	}
	return b.String() + "}\n"
}

func manyLines(form string, n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, form, i)
	}
	return b.String()
}

func stepsByName(n int) string {
	return "part \"p\" {\n  length = 1\n  diameter = 1\n  hole \"h\" { into = \"left\" }\n  setup \"s\" {\n" +
		strings.Repeat("    operation { makes = hole.h }\n", n) +
		"    measure { size = setup.s.operation[\"nothing\"] }\n  }\n}\n"
}
