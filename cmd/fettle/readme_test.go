package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func readme(t *testing.T) string {
	raw, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

// section is the text of the README under a heading.
func section(t *testing.T, heading string) string {
	_, after, ok := strings.Cut(readme(t), "\n## "+heading+"\n")
	if !ok {
		t.Fatalf("the README has no section %q", heading)
	}
	body, _, _ := strings.Cut(after, "\n## ")
	return body
}

// written are the blocks of HCL in a section, in their order.
func written(body string) []string {
	var out []string
	for {
		_, after, ok := strings.Cut(body, "```hcl\n")
		if !ok {
			return out
		}
		block, rest, _ := strings.Cut(after, "```")
		out, body = append(out, block), rest
	}
}

func fettle(t *testing.T, args ...string) (string, int) {
	t.Helper()
	var out, errs bytes.Buffer
	status := run(args, &out, &errs)
	if errs.Len() > 0 {
		t.Fatalf("%v: %s", args, errs.String())
	}
	return out.String(), status
}

// The README walks through what the attic's report says of the bearing, and what it writes down as
// the cure cures it.
func TestReadmeCures(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	body := section(t, "From finding to cure")
	report, err := os.ReadFile("recipes/tellurion/report-attic.txt")
	if err != nil {
		t.Fatal(err)
	}
	_, after, ok := strings.Cut(string(report), "\nPart bearing\n")
	said, _, ok2 := strings.Cut(after, "\nPart ")
	if !ok || !ok2 {
		t.Fatal("the attic says nothing of the bearing")
	}
	for _, l := range strings.Split(strings.TrimRight(said, "\n"), "\n") {
		if l != "" && !strings.Contains(body, "\n    "+l+"\n") {
			t.Errorf("the README does not show %q", l)
		}
	}
	blocks := written(body)
	if len(blocks) != 2 {
		t.Fatalf("%d blocks are written down, not 2", len(blocks))
	}
	home := t.TempDir()
	if err := os.CopyFS(home, os.DirFS("recipes")); err != nil {
		t.Fatal(err)
	}
	change := func(file, old, now string) {
		t.Helper()
		name := filepath.Join(home, file)
		raw, err := os.ReadFile(name)
		if err != nil || strings.Count(string(raw), old) != 1 {
			t.Fatalf("%s does not hold %q once (%v)", file, old, err)
		}
		if err := os.WriteFile(name, []byte(strings.Replace(string(raw), old, now, 1)), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	check := func() string {
		out, _ := fettle(t, "check", "--plain", "--shop", filepath.Join(home, "shops/attic"), filepath.Join(home, "tellurion"))
		return out
	}
	change("tellurion/bearing.hcl", "    operation {\n      makes = split.joint\n    }\n", blocks[0])
	thick := "  clamp  = { by = \"nut\", thread = \"M14x1.5 LH\", diameter = 24, length = 14 }\n"
	change("shops/attic/shop.hcl", thick, blocks[1])
	out := check()
	if strings.Contains(out, "Part bearing") || strings.Contains(out, "bearing › setup saw ›") {
		t.Error("something is still said of the bearing")
	}
	if !strings.Contains(out, "[nut-unwinds]") {
		t.Error("nothing is said of the arm's saw")
	}
	change("shops/attic/shop.hcl", blocks[1], thick)
	change("tellurion/bearing.hcl", "    grip = 9\n", "    grip = 5\n")
	if out := strings.Join(strings.Fields(check()), " "); !strings.Contains(out, "vise.small grips 6 mm of the piece's 28.8 mm of height") {
		t.Error("lifted, the block is gripped otherwise than the README says")
	}
}

// The shop that the README begins with reads, and what the README says of it is so.
func TestReadmeShopIsRead(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	blocks := written(section(t, "Describe your shop in ten minutes"))
	if len(blocks) != 2 {
		t.Fatalf("%d blocks are written down, not 2", len(blocks))
	}
	shed := t.TempDir()
	try := func(shop string) string {
		if err := os.WriteFile(filepath.Join(shed, "shop.hcl"), []byte(shop), 0o666); err != nil {
			t.Fatal(err)
		}
		out, status := fettle(t, "check", "--plain", "--shop", shed, "recipes/first")
		if status != found || strings.Contains(out, "The files and the build as a whole") {
			t.Fatalf("status %d:\n%s", status, out)
		}
		return strings.Join(strings.Fields(out), " ")
	}
	if out := try(blocks[0]); !strings.Contains(out, "no chuck or collet holds it") {
		t.Error("nothing is said of what should hold the drills")
	}
	out := try(blocks[0] + "\n" + blocks[1])
	if strings.Contains(out, "no chuck or collet holds it") || !strings.Contains(out, "would settle 10 parallels.pairs.thickness 6 end_mill.few.flute_length") ||
		!strings.Contains(out, "No tap M4 is here") {
		t.Errorf("the report is not what the README says:\n%s", out)
	}
}

// The drawings that the README links to are those that its commands make.
func TestExpectedDrawings(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	for file, words := range map[string]string{
		"arm.svg":         "--part arm",
		"bearing-saw.svg": "--part bearing --setup saw --step 1",
	} {
		if text := readme(t); !strings.Contains(text, "(recipes/tellurion/drawings/"+file+")") || !strings.Contains(text, "fettle sketch recipes/tellurion "+words+" --out "+file) {
			t.Errorf("the README does not show how %s is made", file)
		}
		got, status := fettle(t, append(append([]string{"sketch"}, strings.Fields(words)...), "recipes/tellurion")...)
		name := "recipes/tellurion/drawings/" + file
		if *renew {
			if err := os.WriteFile(name, []byte(got), 0o666); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if status != 0 || got != string(want) {
			t.Errorf("%s is not what is drawn now: go test ./cmd/fettle -run Expected -renew, and look at it", name)
		}
	}
}
