package sheet

import (
	"bytes"
	"context"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The sheets in a real browser, Debian's chromium, and printed by it: the text of the PDF is read
// back with pdftotext of poppler-utils. On a bare machine this is skipped; CI promises both.

// program gives the path of an outside program, or ends the test: skipped on a bare machine,
// failed where CI=true promises that the program is there.
func program(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s is not there", name)
	}
	t.Skipf("%s is not there", name)
	return ""
}

// browser starts one; it goes with the test.
func browser(t *testing.T) context.Context {
	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program(t, "chromium")), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.UserDataDir(t.TempDir()))
	ctx, end := chromedp.NewExecAllocator(t.Context(), opts...)
	t.Cleanup(end)
	ctx, close := chromedp.NewContext(ctx)
	t.Cleanup(close)
	ctx, late := context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(late)
	return ctx
}

func TestInBrowser(t *testing.T) {
	reader := program(t, "pdftotext")
	ctx := browser(t)
	for _, r := range recipes {
		recipe, shop := "recipes/"+r[0], "recipes/shops/"+r[1]
		t.Run(r[0]+" in "+r[1], func(t *testing.T) {
			c := checked(t, archive(t, recipe, shop), recipe, shop)
			page := made(t, c, true)
			file := filepath.Join(t.TempDir(), "sheet.html")
			if err := os.WriteFile(file, []byte(page.HTML()), 0o644); err != nil {
				t.Fatal(err)
			}
			open(t, ctx, file)
			for _, b := range page.Blocks {
				if (b.Kind == Part || b.Kind == Heading) && b.ID != "" {
					see(t, ctx, b.ID)
				}
			}
			used(t, ctx, page)
			for _, paper := range []chromedp.PaperSize{chromedp.PaperA4, chromedp.PaperLetter} {
				pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper)))
				if err != nil {
					t.Fatal(err)
				}
				onPaper(t, words(t, reader, pdf), page)
			}
			phone(t, ctx)
		})
	}
}

func open(t *testing.T, ctx context.Context, file string) {
	t.Helper()
	u := url.URL{Scheme: "file", Path: file}
	if err := chromedp.Do(ctx, chromedp.ResetViewport(), chromedp.Navigate(u.String())); err != nil {
		t.Fatal(err)
	}
}

// run evaluates an expression in the page.
func run[T any](t *testing.T, ctx context.Context, expression string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// see wants exactly one element with an id, and some height of it.
func see(t *testing.T, ctx context.Context, id string) {
	t.Helper()
	q := `[...document.querySelectorAll("[id]")].filter(e => e.id === ` + quoted(id) + `)`
	if n := run[int](t, ctx, q+`.length`); n != 1 {
		t.Errorf("%d elements with the id %q", n, id)
		return
	}
	if h := run[float64](t, ctx, q+`[0].getBoundingClientRect().height`); !(h > 5) {
		t.Errorf("%q is %g high", id, h)
	}
}

func quoted(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}

// used ticks the first operation off and writes a size as made, as a hand at the machine would.
func used(t *testing.T, ctx context.Context, page *Page) {
	t.Helper()
	ticks := 0
	for _, b := range page.Blocks {
		if b.Kind == Tick {
			ticks++
		}
	}
	if n := run[int](t, ctx, `document.querySelectorAll("input[type=checkbox]").length`); n != ticks {
		t.Errorf("%d boxes to tick for %d things to do", n, ticks)
	}
	if err := chromedp.Do(ctx, chromedp.Click(chromedp.ID("tick-1")), chromedp.SendKeys(chromedp.CSS(".made input"), "8.0137")); err != nil {
		t.Fatal(err)
	}
	if !run[bool](t, ctx, `document.getElementById("tick-1").checked`) {
		t.Error("the first operation does not stay ticked")
	}
	if s := run[string](t, ctx, `document.querySelector(".made input").value`); s != "8.0137" {
		t.Errorf("the size as made reads %q", s)
	}
}

// words is the text of a PDF without white space: its lines may break anywhere.
func words(t *testing.T, reader string, pdf []byte) string {
	t.Helper()
	cmd := exec.Command(reader, "-raw", "-", "-")
	cmd.Stdin = bytes.NewReader(pdf)
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(string(out)), "")
}

// onPaper looks for the page's words and figures in the text of its print: operations with what
// belongs to them, tables, findings, and the size as made that was written into its box.
func onPaper(t *testing.T, text string, page *Page) {
	t.Helper()
	want := func(s string) {
		t.Helper()
		if bare := strings.Join(strings.Fields(s), ""); !strings.Contains(text, bare) {
			t.Errorf("the print has no %q", s)
		}
	}
	for _, b := range page.Blocks {
		switch b.Kind {
		case Para, Heading:
			want(b.Words)
		case Tick:
			want(b.Words)
			for _, r := range b.Rows {
				want(r[1])
			}
		case Table:
			for _, r := range b.Rows {
				for _, s := range r {
					want(s)
				}
			}
		}
	}
	want("8.0137")
}

// phone wants the page no wider than the screen of a phone: only drawings may be moved sideways.
func phone(t *testing.T, ctx context.Context) {
	t.Helper()
	const wide = 390
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(wide, 844)); err != nil {
		t.Fatal(err)
	}
	if w := run[int](t, ctx, `document.documentElement.scrollWidth`); w > wide {
		t.Errorf("the page is %d wide on a screen of %d", w, wide)
	}
}
