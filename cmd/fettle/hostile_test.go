package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode"

	"github.com/rogpeppe/go-internal/txtar"
)

// The table of hostile and odd input: each file of testdata/hostile/table.txtar is a recipe.
// Behind its name stands what is expected: "name.hcl STATUS sentence". The sentence must come
// somewhere in what is printed; an empty one asks for nothing but the status. In the text
// ‹n×words› stands for the words written n times, ‹U+202E› for one character.
func TestHostile(t *testing.T) {
	table, err := filepath.Abs(filepath.Join("..", "..", "testdata", "hostile", "table.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	ar, err := txtar.ParseFile(table)
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
	if *renew {
		defer func() {
			if err := os.WriteFile(table, txtar.Format(ar), 0o644); err != nil {
				t.Error(err)
			}
		}()
	}
	for i, f := range ar.Files {
		words := strings.SplitN(f.Name, " ", 3)
		if len(words) < 2 {
			t.Fatalf("%q names no status", f.Name)
		}
		name, status, says := words[0], int(words[1][0]-'0'), ""
		if len(words) == 3 {
			says = words[2]
		}
		t.Run(name, func(t *testing.T) {
			text := spelled(t, string(f.Data))
			if err := os.MkdirAll(name, 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(name, "a.hcl"), []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
			before, err := listing(".")
			if err != nil {
				t.Fatal(err)
			}
			var out, errs bytes.Buffer
			done := make(chan int, 1)
			go func() { done <- run([]string{"check", name, "--shop", "shop"}, &out, &errs) }()
			select {
			case got := <-done:
				if *renew {
					status, says = got, first(out.String()+errs.String())
					ar.Files[i].Name = fmt.Sprintf("%s %d %s", name, status, says)
				}
				if got != status {
					t.Errorf("ended with status %d, not %d\n%.2000s%.2000s", got, status, out.String(), errs.String())
				}
			case <-time.After(30 * time.Second): // a hang, however busy the machine
				t.Fatal("it hangs")
			}
			printed := out.String() + errs.String()
			if flat := strings.Join(strings.Fields(printed), " "); !strings.Contains(flat, says) {
				t.Errorf("nowhere is said %q\n%.3000s", says, printed)
			}
			if len(printed) > 500_000 {
				t.Errorf("%d bytes are printed", len(printed))
			}
			for _, r := range printed {
				if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)) {
					t.Fatalf("%U is printed as it is", r)
				}
			}
			if after, err := listing("."); err != nil || after != before {
				t.Errorf("the check wrote something: %v", err)
			}
		})
	}
}

// first is the beginning of the first sentence that tells of something.
func first(printed string) string {
	flat := strings.Join(strings.Fields(printed), " ")
	at := len(flat)
	for _, level := range []string{"DANGER ", "STOP ", "SCRAP ", "ADVICE "} {
		if i := strings.Index(flat, level); i >= 0 {
			at = min(at, i)
		}
	}
	if at == len(flat) {
		at = max(strings.Index(flat, "Nothing was found"), 0)
	}
	flat = flat[at:]
	if end := strings.Index(flat, ". "); end > 0 {
		flat = flat[:end]
	}
	if r := []rune(flat); len(r) > 110 {
		flat = string(r[:110])
	}
	return strings.TrimSpace(flat)
}

// spelled spells out the short forms of the table.
func spelled(t *testing.T, s string) string {
	var out strings.Builder
	for {
		before, rest, ok := strings.Cut(s, "‹")
		out.WriteString(before)
		if !ok {
			return out.String()
		}
		form, after, ok := strings.Cut(rest, "›")
		if !ok {
			t.Fatalf("‹%.20s is not closed", rest)
		}
		out.WriteString(short(t, form))
		s = after
	}
}

// short spells out one short form: "U+202E", or "1000×words".
func short(t *testing.T, form string) string {
	if hex, ok := strings.CutPrefix(form, "U+"); ok {
		n, err := strconv.ParseUint(hex, 16, 32)
		if err != nil {
			t.Fatal(err)
		}
		return string(rune(n))
	}
	times, words, _ := strings.Cut(form, "×")
	n, err := strconv.Atoi(times)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Repeat(words, n)
}
