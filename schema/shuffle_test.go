package schema

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/schema/mark"
	"fettle/schema/text"
)

var rightHand = regexp.MustCompile(`(?m)^(\s*)([a-z_]+)(\s*=\s*)(.+)$`)

// Every value of the cases put where another belongs, and attributes of one kind in another:
// the reading must say what is wrong and never fall over. Bytes changed at random rarely get
// past the parser; this does. FETTLE_SHUFFLES sets how many rounds (300 if it is not set).
func TestValuesInWrongPlaces(t *testing.T) {
	rounds := 300
	if s := os.Getenv("FETTLE_SHUFFLES"); s != "" {
		rounds, _ = strconv.Atoi(s)
	}
	var sources, values, words []string
	var shop string
	files, _ := filepath.Glob("../testdata/language/reading/*.txtar")
	for _, name := range append(files, "../testdata/language/examples.txtar") {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range txtar.Parse(src).Files {
			clean, _, err := mark.Read(f.Name, f.Data)
			if err != nil {
				t.Fatal(err)
			}
			if strings.Contains(name, "writing") {
				continue
			}
			if strings.Contains(f.Name, "attic") {
				shop = string(clean)
			}
			sources = append(sources, string(clean))
			for _, m := range rightHand.FindAllStringSubmatch(string(clean), -1) {
				words, values = append(words, m[2]), append(values, m[4])
			}
		}
	}
	for _, k := range theTable().kinds {
		for _, a := range k.Attrs {
			words = append(words, a.Name)
		}
	}
	rules := map[string]int{}
	for seed := range rounds {
		rng := rand.New(rand.NewPCG(uint64(seed), 1))
		src := sources[rng.IntN(len(sources))]
		src = rightHand.ReplaceAllStringFunc(src, func(line string) string {
			if rng.IntN(3) > 0 || strings.Contains(line, "units") {
				return line
			}
			m := rightHand.FindStringSubmatch(line)
			word, value := m[2], values[rng.IntN(len(values))]
			switch rng.IntN(6) {
			case 0:
				word = words[rng.IntN(len(words))]
			case 1:
				value = fmt.Sprintf("[%s, %s]", value, values[rng.IntN(len(values))])
			case 2:
				value = fmt.Sprintf("{ %s = %s }", strings.ReplaceAll(words[rng.IntN(len(words))], ".", "_"), value)
			case 3:
				value = fmt.Sprintf("(%s) %s (%s)", value, []string{"+", "-", "*", "/", "==", "&&", "<"}[rng.IntN(7)], values[rng.IntN(len(values))])
			}
			return m[1] + word + m[3] + value
		})
		folder := text.Archive{"r/a.hcl": []byte(src), "s/a.hcl": []byte(shop)}
		if !strings.Contains(src, "recipe \"") {
			folder["r/head.hcl"] = []byte(smallRecipe)
		}
		func() {
			defer func() {
				if x := recover(); x != nil {
					t.Fatalf("seed %d: %v\n%s", seed, x, src)
				}
			}()
			_, finds, _ := Load(folder, "r", "s")
			for _, f := range finds {
				rules[f.Rule]++
				if strings.Contains(f.Says, "%!") || len(f.Says) < 10 {
					t.Errorf("seed %d: says %q", seed, f.Says)
				}
			}
		}()
	}
	if len(rules) < 12 {
		t.Errorf("only %d rules were tripped: %v", len(rules), rules)
	}
}
