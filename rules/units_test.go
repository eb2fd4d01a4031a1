package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"sort"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/mark"
	"fettle/schema/text"
)

// Law: a recipe or a shop says the same whichever unit its folder counts in. Every case of
// the rules is written anew with `units = "in"` and each bare length of it as mm(length); what
// is found (rule, cause, place in the work, margin) has to be the same, with the recipe in
// inches, with the shop in inches, and with both.

// measured says of every attribute whether a bare figure of it is a length, by the table of
// kinds: "slot.width", "any_cutter.diameter", "chuck.reversed.grips".
func measured(t *testing.T) map[string]bool {
	raw, err := os.ReadFile("../schema/kinds.tsv")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]bool{}
	for line := range strings.Lines(string(raw)) {
		f := strings.Split(line, "\t")
		if len(f) < 6 || f[2] == "" {
			continue
		}
		for _, word := range append([]string{f[2]}, strings.Fields(strings.TrimSpace(f[len(f)-1]))...) {
			key := f[1] + "." + word
			out[key] = out[key] || f[4] == "mm"
			if strings.HasPrefix(f[1], "any") || strings.HasSuffix(f[1], "_setup") || strings.HasSuffix(f[1], "_holding") {
				any := "any." + word
				out[any] = out[any] || f[4] == "mm"
			}
		}
	}
	out["fit.wants"] = true // a clearance is; a class has letters first
	for _, face := range []string{"left", "right", "front", "back", "bottom", "top"} {
		out["graduations.zero_at."+face] = true // bare it is an angle
	}
	return out
}

// lengthOf says whether bare figures of an attribute within a block are lengths.
func lengthOf(m map[string]bool, kind, attr string) (is, known bool) {
	for _, k := range []string{kind, "any"} {
		if is, known = m[k+"."+attr]; known {
			return is, known
		}
	}
	return false, false
}

var (
	blockLine = regexp.MustCompile(`^\s*([a-z_]+)(\s+("[^"]*"|[a-z0-9_]+))?\s*\{\s*(.*)$`)
	onSurface = regexp.MustCompile(`(?s)^(\s*at\s*=\s*\[)([0-9.]+)(,.*)$`)
	attrStart = regexp.MustCompile(`^\s*([a-z_]+)\s*=\s*`)
	bareSize  = regexp.MustCompile(`^"\s*[-+]?[0-9.]+( [A-Za-z]{1,2}[0-9]{1,2}|\s*(±|\+|-|\.\.)[^"a-zA-Z]*)?"$`)
)

// inInches writes a file anew. Strings that hold a thread, a taper or a unit of their own stay.
func inInches(m map[string]bool, src string) string {
	var out strings.Builder
	var kinds []string
	into := ""
	for line := range strings.Lines(src) {
		trimmed := strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(trimmed, "#"):
			out.WriteString(line)
			continue
		case strings.HasPrefix(trimmed, "units"):
			out.WriteString(strings.Replace(line, `"mm"`, `"in"`, 1))
			continue
		}
		kind := ""
		if len(kinds) > 0 {
			kind = kinds[len(kinds)-1]
		}
		if b := blockLine.FindStringSubmatch(line); b != nil && !attrStart.MatchString(line) {
			if strings.HasSuffix(trimmed, "}") {
				head := line[:strings.Index(line, "{")+1]
				out.WriteString(head + rewritten(m, b[1], line[len(head):]))
				continue
			}
			kinds, into = append(kinds, b[1]), ""
			out.WriteString(line)
			continue
		}
		if trimmed == "}" && len(kinds) > 0 {
			kinds = kinds[:len(kinds)-1]
		}
		if a := attrStart.FindStringSubmatch(line); a != nil && a[1] == "into" {
			into = line
		}
		if a := onSurface.FindStringSubmatch(line); a != nil && strings.Contains(into, "outside") {
			out.WriteString(a[1] + "mm(" + a[2] + ")" + a[3]) // on a turned surface: along it, and an angle
			continue
		}
		out.WriteString(rewritten(m, kind, line))
	}
	return out.String()
}

// rewritten writes one line within a block anew, figure by figure: a key before it, in the
// objects that are open there, says whether it is a length.
func rewritten(m map[string]bool, kind, line string) string {
	var out strings.Builder
	var path []string // keys of the objects that are open
	key := ""
	for i := 0; i < len(line); {
		c := line[i]
		switch {
		case c == '"':
			end := i + 1 + strings.IndexByte(line[i+1:], '"') + 1
			s := line[i:end]
			if after := strings.TrimLeft(line[end:], " "); strings.HasPrefix(after, "=") && !strings.HasPrefix(after, "==") {
				key = strings.Trim(s, `"`) // { "5" = 4.5 }
			} else if lengthAt(m, kind, path, key) && bareSize.MatchString(s) {
				if n := strings.IndexByte(s, ' '); n > 0 && strings.ContainsAny(s, "ghHGkmnpsrfedjJNPK") {
					s = s[:n] + " mm" + s[n:] // "8 mm H7"
				} else {
					s = s[:len(s)-1] + ` mm"`
				}
			}
			out.WriteString(s)
			i = end
		case c == '{':
			path, key = append(path, key), ""
			out.WriteByte(c)
			i++
		case c == '}':
			if len(path) > 0 {
				key, path = path[len(path)-1], path[:len(path)-1]
			}
			out.WriteByte(c)
			i++
		case c >= 'a' && c <= 'z' || c == '_':
			end := i
			for end < len(line) && (line[end] >= 'a' && line[end] <= 'z' || line[end] == '_' || line[end] == '.' || line[end] >= '0' && line[end] <= '9') {
				end++
			}
			word := line[i:end]
			out.WriteString(word)
			i = end
			if close := strings.IndexByte(line[i:], ')'); (word == "mm" || word == "inch") && strings.HasPrefix(line[i:], "(") && close > 0 {
				out.WriteString(line[i : i+close+1]) // says its own unit
				i += close + 1
				continue
			}
			if rest := strings.TrimLeft(line[i:], " "); strings.HasPrefix(rest, "=") && !strings.HasPrefix(rest, "==") {
				key = word
			} else if strings.HasPrefix(line[i:], "[") { // a member of a set
				close := strings.IndexByte(line[i:], ']')
				in := line[i+1 : i+close]
				if in[0] != '"' {
					in = "mm(" + in + ")"
				}
				out.WriteString("[" + in + "]")
				i += close + 1
			}
		case c >= '0' && c <= '9' || c == '-' && i+1 < len(line) && line[i+1] >= '0' && line[i+1] <= '9':
			end := i + 1
			for end < len(line) && (line[end] >= '0' && line[end] <= '9' || line[end] == '.') {
				end++
			}
			if lengthAt(m, kind, path, key) {
				out.WriteString("mm(" + line[i:end] + ")")
			} else {
				out.WriteString(line[i:end])
			}
			i = end
		default:
			out.WriteByte(c)
			i++
		}
	}
	return out.String()
}

// lengthAt looks the key up within its objects, and where the table has no row for it takes
// what holds of the object: the members of a place are lengths as the place is.
func lengthAt(m map[string]bool, kind string, path []string, key string) bool {
	all := append(append([]string{}, path...), key)
	for n := len(all); n > 0; n-- {
		if is, known := lengthOf(m, kind, strings.Join(all[:n], ".")); known {
			return is
		}
	}
	return false
}

// said is what was found, without the words, which show both units in an inch folder.
func said(t *testing.T, recipe, shop string) (out []string, slips []string) {
	t.Helper()
	files := text.Archive{"recipe/recipe.hcl": []byte(recipe), "shop/shop.hcl": []byte(shop)}
	b, found, err := schema.Load(files, "recipe", "shop")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range found {
		slips = append(slips, s.Says)
	}
	trace, vs, _ := choose.Choose(b, choose.Effort)
	for _, f := range rules.Judge(trace, vs, "2026-11-25").Findings {
		if f.Rule == "threads-look-alike" {
			continue // it speaks of what a folder leaves unsaid of its units
		}
		out = append(out, fmt.Sprintf("%s | %s | %v | %.3f %.3f %s", f.Rule, f.Cause, f.Spots, f.Margin.Has, f.Margin.Wants, f.Margin.Unit))
	}
	sort.Strings(out)
	return out, slips
}

func alike(t *testing.T, what string, got, want, slips []string) {
	t.Helper()
	if len(slips) > 0 {
		t.Errorf("%s it does not read: %s", what, slips[0])
	} else if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("%s\n%s\nin mm\n%s", what, strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// The same of the recipes that stand in the project, each with each shop.
func TestUnitsOfRecipes(t *testing.T) {
	m := measured(t)
	folder := func(path string, inches bool) string {
		files, err := filepath.Glob("../recipes/" + path + "/*.hcl")
		if err != nil || len(files) == 0 {
			t.Fatal(path, err)
		}
		var all strings.Builder
		for _, f := range files {
			raw, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			s := string(raw)
			if inches {
				s = inInches(m, s)
			}
			all.WriteString(s + "\n")
		}
		return all.String()
	}
	for _, recipe := range []string{"first", "jack"} {
		for _, shop := range []string{"shops/attic", "shops/bench", "shops/club"} {
			want, slips := said(t, folder(recipe, false), folder(shop, false))
			want = append(want, slips...) // what the shop lacks is told of in every unit
			got, slips := said(t, folder(recipe, true), folder(shop, true))
			alike(t, recipe+" in "+shop+", in inches", append(got, slips...), want, nil)
			got, slips = said(t, folder(recipe, true), folder(shop, false))
			alike(t, recipe+" in inches in "+shop, append(got, slips...), want, nil)
		}
	}
}

func TestUnitsLaw(t *testing.T) {
	m := measured(t)
	exampleIn := inInches(m, rules.ExampleShop)
	files, err := filepath.Glob(casesFolder + "/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatal("no cases", err)
	}
	asked := 0
	for _, file := range files {
		ar, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		shops := map[string]string{}
		for _, f := range ar.Files {
			if s, ok := strings.CutSuffix(f.Name, ".shop"); ok {
				shops[s] = string(f.Data)
			}
		}
		for n, f := range ar.Files {
			if strings.HasSuffix(f.Name, ".shop") || strings.Contains(string(f.Data), "{{") || !strings.Contains(string(f.Data), `units = "mm"`) || testing.Short() && n%7 != 0 {
				continue
			}
			shop, shopIn := rules.ExampleShop, exampleIn
			if s, ok := shops[f.Name]; ok {
				if strings.Contains(s, "{{") || !regexp.MustCompile(`units\s*=\s*"mm"`).MatchString(s) {
					continue
				}
				shop, shopIn = s, inInches(m, s)
			}
			clean, _, err := mark.Read("recipe/recipe.hcl", f.Data)
			if err != nil {
				t.Fatal(err)
			}
			asked++
			want, _ := said(t, string(clean), shop)
			in := inInches(m, string(clean))
			// One of the three for each case in turn: all three take four times as long and found no more.
			c := []struct{ what, recipe, shop string }{{"recipe", in, shop}, {"shop", string(clean), shopIn}, {"both", in, shopIn}}[asked%3]
			got, slips := said(t, c.recipe, c.shop)
			alike(t, filepath.Base(file)+" "+f.Name+": with the "+c.what+" in inches", got, want, slips)
		}
	}
	if asked < 100 && !testing.Short() {
		t.Errorf("only %d cases were asked", asked)
	}
}
