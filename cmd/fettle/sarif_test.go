package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	_ "github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif" // holds a copy of the standard's schema
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// standardSchema is the schema of SARIF 2.1.0 as OASIS publishes it: a copy beside the project, or
// the one that a library carries in its source.
func standardSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "..", "..", "shared", "oracles", "sarif", "sarif-schema-2.1.0.json"))
	if err != nil {
		b = schemaInLibrary()
	}
	if b == nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("the schema of SARIF is not at hand")
		}
		t.Skip("the schema of SARIF is not at hand: neither beside the project nor in the module cache")
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("sarif.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("sarif.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// schemaInLibrary takes the schema out of the source of the library; nil where it is not there.
func schemaInLibrary() []byte {
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/owenrumney/go-sarif/v3").Output()
	if err != nil {
		return nil
	}
	src, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(dir)), "pkg", "report", "v210", "sarif", "schema.go"))
	if err != nil {
		return nil
	}
	_, rest, _ := bytes.Cut(src, []byte("`"))
	body, _, ok := bytes.Cut(rest, []byte("`"))
	if !ok {
		return nil
	}
	return body
}

// What the check writes in SARIF is valid against the schema of the standard, for sound recipes,
// recipes with trouble of every kind, and files that cannot be read as a recipe.
func TestSARIFIsValid(t *testing.T) {
	schema := standardSchema(t)
	bad := t.TempDir()
	if err := os.WriteFile(filepath.Join(bad, "a b%.hcl"), []byte("recipe \"x\" {\n  units = \"mm\"\n  title = \n}\npart \"y\" {\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	root := filepath.Join("..", "..")
	for _, c := range []struct{ recipe, shop string }{
		{"recipes/first", "recipes/shops/bench"}, {"recipes/first", "recipes/shops/attic"},
		{"recipes/jack", "recipes/shops/attic"}, {"testdata/recipes/telling", "recipes/shops/attic"}, {bad, "recipes/shops/attic"},
	} {
		recipe := c.recipe
		if !filepath.IsAbs(recipe) {
			recipe = filepath.Join(root, recipe)
		}
		var out, errs bytes.Buffer
		run([]string{"check", "--format", "sarif", "--on", "2026-11-25", "--shop", filepath.Join(root, c.shop), recipe}, &out, &errs)
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(out.Bytes()))
		if err != nil {
			t.Fatalf("%s: %v", c.recipe, err)
		}
		if err := schema.Validate(doc); err != nil {
			t.Errorf("%s: %v", c.recipe, err)
		}
		holdsTogether(t, c.recipe, out.Bytes(), c.recipe != "recipes/first" || c.shop != "recipes/shops/bench")
	}
	// The schema itself refuses what is wrong: the check can fail.
	wrong := map[string]any{"version": "2.1.0", "runs": []any{map[string]any{"tool": map[string]any{}}}}
	if schema.Validate(wrong) == nil {
		t.Error("the schema takes a run without a driver")
	}
}

// holdsTogether checks what the schema cannot: rules are found by their index, fingerprints tell
// findings apart, and there are some where some are expected.
func holdsTogether(t *testing.T, name string, b []byte, some bool) {
	t.Helper()
	var log struct {
		Runs []struct {
			Tool struct {
				Driver struct {
					Rules []struct{ ID string }
				}
			}
			Results []struct {
				RuleID              string
				RuleIndex           int
				PartialFingerprints map[string]string
			}
		}
	}
	if err := json.Unmarshal(b, &log); err != nil {
		t.Fatal(err)
	}
	for _, r := range log.Runs {
		seen := map[string]bool{}
		for _, x := range r.Results {
			if r.Tool.Driver.Rules[x.RuleIndex].ID != x.RuleID {
				t.Errorf("%s: %s is not rule %d", name, x.RuleID, x.RuleIndex)
			}
			for _, p := range x.PartialFingerprints {
				if seen[p] {
					t.Errorf("%s: two findings of %s have one fingerprint", name, x.RuleID)
				}
				seen[p] = true
			}
		}
		if some != (len(r.Results) > 0) {
			t.Errorf("%s has %d results", name, len(r.Results))
		}
	}
}
