package sheet

import (
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fettle/cmd/fettle/report"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

func checked(t testing.TB, files text.Archive, recipe, shop string) *report.Checked {
	t.Helper()
	b, slips, err := schema.Load(files, recipe, shop)
	if err != nil {
		t.Fatal(err)
	}
	if b.Unread {
		t.Fatal(slips)
	}
	tr, vs, chosen := choose.Choose(b, choose.Effort)
	c := &report.Checked{Recipe: recipe, Shop: shop, Build: b, Read: true, Result: rules.Judge(tr, vs, "2026-11-25"), Chosen: chosen}
	c.Findings = append(report.Spotted(slips, tr), c.Result.Findings...)
	return c
}

func made(t testing.TB, c *report.Checked, pictures bool) *Page {
	t.Helper()
	p, err := Make(c, Wanted{On: "2026-11-25", Pictures: pictures})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestExpectedSheets(t *testing.T) {
	for _, r := range recipes {
		recipe, shop := "recipes/"+r[0], "recipes/shops/"+r[1]
		got := made(t, checked(t, archive(t, recipe, shop), recipe, shop), false).Markdown()
		path := filepath.Join(root, "testdata", "sheet", r[0]+"-"+r[1]+".md")
		if *renew {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s differs: go test ./cmd/fettle/sheet -run Expected -renew, and read the change", path)
		}
	}
}

// Every operation, measurement and set-up that was made on paper has its tick and its drawing;
// what the dry run chose stands there.
func TestNothingIsLeftOut(t *testing.T) {
	for _, r := range recipes[:4] {
		recipe, shop := "recipes/"+r[0], "recipes/shops/"+r[1]
		c := checked(t, archive(t, recipe, shop), recipe, shop)
		page := made(t, c, true).HTML()
		ticks, boxes := strings.Count(page, `type="checkbox"`), 0
		for _, p := range c.Result.Trace.Parts {
			for _, m := range p.Moments {
				if m.Cut != nil || m.Turn != nil || m.Measure != nil || m.Deburr != nil && m.Deburr.Hold != nil || m.Heat != nil {
					boxes++
				}
				var tool string
				switch {
				case m.Cut != nil:
					tool = m.Cut.Choice.Tool.Path()
				case m.Turn != nil:
					tool = m.Turn.Choice.Tool.Path()
				}
				if tool != "" && tool != "-" && !strings.Contains(page, "<dd>"+esc(tool)+"</dd>") {
					t.Errorf("%s: %s is not on the sheet", r[0], tool)
				}
			}
		}
		if ticks < boxes {
			t.Errorf("%s: %d ticks for %d things to do", r[0], ticks, boxes)
		}
		if strings.Contains(page, "No drawing:") {
			t.Errorf("%s: a drawing is missing", r[0])
		}
	}
}

// The page wants nothing from outside: no script, no address.
func TestPageStandsAlone(t *testing.T) {
	recipe, shop := "recipes/first", "recipes/shops/bench"
	page := made(t, checked(t, archive(t, recipe, shop), recipe, shop), true).HTML()
	for _, to := range regexp.MustCompile(`href="([^"]*)"?`).FindAllStringSubmatch(page, -1) {
		if !strings.HasPrefix(to[1], "#") || strings.Count(page, ` id="`+to[1][1:]+`"`) != 1 {
			t.Errorf("the page leads to %q", to[1])
		}
	}
	if n := strings.Count(page, "href"); n != strings.Count(page, `href="#`) || n < 10 {
		t.Errorf("%d links", n)
	}
	for _, bad := range []string{"<script", "src=", "url(", "@import"} {
		if strings.Contains(page, bad) {
			t.Errorf("the page has %q in it", bad)
		}
	}
	for _, u := range regexp.MustCompile(`https?://[^"]*`).FindAllString(page, -1) {
		if u != "http://www.w3.org/2000/svg" {
			t.Errorf("the page names %s", u)
		}
	}
}

// Texts of someone else's stay texts: markup in titles and labels opens no element, and marks that
// turn the direction of writing are shown by their number.
func TestHostileTexts(t *testing.T) {
	hostile := `</title><script>alert(1)</script><img src=x> [a](b) \u202e*` + strings.Repeat("W", 300)
	recipe, shop := "recipes/first", "recipes/shops/bench"
	files := archive(t, recipe, shop)
	changed := 0
	for name, raw := range files {
		s := regexp.MustCompile(`(?m)^(\s*title\s*=\s*)"[^"]*"`).ReplaceAllStringFunc(string(raw), func(m string) string {
			changed++
			return m[:strings.IndexByte(m, '"')] + `"` + hostile + `"`
		})
		files[name] = []byte(s)
	}
	if changed < 3 {
		t.Fatalf("only %d titles changed", changed)
	}
	p := made(t, checked(t, files, recipe, shop), true)
	page := p.HTML()
	for _, bad := range []string{"<script", "<img", "\u202e"} {
		if strings.Contains(page, bad) || strings.Contains(p.Markdown(), bad) {
			t.Errorf("%q came through", bad)
		}
	}
	if !strings.Contains(page, "&lt;script&gt;") {
		t.Error("the title is not on the page")
	}
	if strings.Contains(p.Markdown(), "[a](b)") {
		t.Error("a link came through")
	}
	wellFormed(t, page)
}

// wellFormed reads the page with a parser of another kind, tag by tag.
func wellFormed(t *testing.T, page string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict = false
	d.AutoClose = xml.HTMLAutoClose
	d.Entity = xml.HTMLEntity
	for {
		if _, err := d.Token(); err == io.EOF {
			return
		} else if err != nil {
			t.Fatalf("the page does not read: %v", err)
		}
	}
}

func TestSameBytes(t *testing.T) {
	recipe, shop := "recipes/jack", "recipes/shops/club"
	files := archive(t, recipe, shop)
	a, b := made(t, checked(t, files, recipe, shop), true).HTML(), made(t, checked(t, files, recipe, shop), true).HTML()
	if a != b {
		t.Error("made twice it differs")
	}
	wellFormed(t, a)
}

// The digest changes with every file, and with nothing else.
func TestDigest(t *testing.T) {
	recipe, shop := "recipes/first", "recipes/shops/bench"
	files := archive(t, recipe, shop)
	was := DigestOf(checked(t, files, recipe, shop).Build)
	if again := DigestOf(checked(t, files, recipe, shop).Build); again != was {
		t.Error("read again it is another")
	}
	for name := range files {
		old := files[name]
		files[name] = append([]byte("# more\n"), old...)
		if DigestOf(checked(t, files, recipe, shop).Build) == was {
			t.Errorf("%s changed and the digest did not", name)
		}
		files[name] = old
	}
}

func TestNoSuchPart(t *testing.T) {
	recipe, shop := "recipes/jack", "recipes/shops/club"
	c := checked(t, archive(t, recipe, shop), recipe, shop)
	_, err := Make(c, Wanted{Part: "x"})
	if err == nil || err.Error() != `there is no part "x"; there are bar, base, cap, screw` {
		t.Error(err)
	}
	p, err := Make(c, Wanted{Part: "cap"})
	if err != nil {
		t.Fatal(err)
	}
	if s := p.Markdown(); strings.Contains(s, "# Part base") || !strings.Contains(s, "# Part cap") {
		t.Error("the sheet is not of the part asked for alone")
	}
}
