package schema

import (
	"flag"
	"os"
	"strings"
	"testing"
)

var renewPage = flag.Bool("renew-page", false, "write README.md anew from the table")

func TestReferencePage(t *testing.T) {
	want := Reference()
	if *renewPage {
		if err := os.WriteFile("README.md", []byte(want), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile("README.md")
	if err != nil || string(got) != want {
		t.Errorf("README.md is not what the table says; go generate ./schema renews it (%v)", err)
	}
}

// The page shows every kind once, and every attribute and second spelling.
func TestReferenceIsWhole(t *testing.T) {
	page := Reference()
	for _, k := range theTable().kinds {
		if n := strings.Count(page, "\n### "+k.Name+"\n"); n != 1 {
			t.Errorf("%s stands %d times on the page", k.Name, n)
		}
		_, section, _ := strings.Cut(page, "\n### "+k.Name+"\n")
		section, _, _ = strings.Cut(section, "\n### ")
		for _, w := range append(k.Also, wordsDeep(k.Attrs)...) {
			if !strings.Contains(section, "`"+w+"`") {
				t.Errorf("%s: %s is not shown", k.Name, w)
			}
		}
	}
}

func wordsDeep(as []*attr) []string {
	var out []string
	for _, a := range as {
		out = append(append(append(out, a.Name), a.Also...), wordsDeep(a.Members)...)
	}
	return out
}
