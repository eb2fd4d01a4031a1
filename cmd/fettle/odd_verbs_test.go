package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"
)

var partNamed = regexp.MustCompile(`(?m)^part "([^"]+)"`)

// The sheet and the drawing of every sixth recipe in the table of hostile input, or of all of them
// with FETTLE_ODD=1: no fault, and no figure that is none.
func TestHostileDrawn(t *testing.T) {
	ar, err := txtar.ParseFile(filepath.Join("..", "..", "testdata", "hostile", "table.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	shop, err := filepath.Abs(filepath.Join("..", "..", "recipes", "shops", "club"))
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	if err := os.CopyFS("shop", os.DirFS(shop)); err != nil {
		t.Fatal(err)
	}
	drawn, every := 0, 6
	if os.Getenv("FETTLE_ODD") != "" { // by hand: all of them
		every = 1
	}
	for i, f := range ar.Files {
		if i%every != 0 {
			continue
		}
		name, text := fmt.Sprintf("r%d", i), spelled(t, string(f.Data))
		if err := os.MkdirAll(name, 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(name, "a.hcl"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		for _, args := range verbsOf(name, text) {
			var out, errs bytes.Buffer
			t0 := time.Now()
			status := run(args, &out, &errs)
			if d := time.Since(t0); d > 20*time.Second {
				t.Errorf("%s: %v takes %v", f.Name, args, d)
			}
			if status == broken {
				t.Errorf("%s: %v: %s", f.Name, args, errs.String())
			}
			for _, bad := range []string{"NaN", "+Inf", "-Inf", "%!"} {
				if at := strings.Index(out.String(), bad); at >= 0 && !strings.Contains(text, bad) {
					t.Errorf("%s: %v writes %q", f.Name, args, out.String()[max(0, at-60):min(at+40, out.Len())])
					break
				}
			}
			if status == 0 && out.Len() > 0 {
				drawn++
			}
		}
	}
	if drawn < 25 {
		t.Errorf("only %d were drawn", drawn)
	}
}

// verbsOf lists what is to be run of a recipe.
func verbsOf(name, text string) (out [][]string) {
	out = append(out, []string{"sheet", name, "--shop", "shop"}, []string{"sheet", name, "--shop", "shop", "--format", "md"})
	if m := partNamed.FindStringSubmatch(text); m != nil && len(m[1]) < 40 {
		out = append(out, []string{"sketch", name, "--part", m[1], "--shop", "shop"})
		for _, s := range []string{"top", "bar"} {
			out = append(out, []string{"sketch", name, "--part", m[1], "--setup", s, "--shop", "shop"},
				[]string{"sketch", name, "--part", m[1], "--setup", s, "--step", "1", "--shop", "shop"})
		}
	}
	return out
}
