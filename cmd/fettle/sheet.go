package main

import (
	"fmt"
	"io"
	"os"
	"regexp"
	"runtime/debug"
	"strings"
	"time"

	"fettle/cmd/fettle/report"
	"fettle/cmd/fettle/sheet"
	"fettle/schema"
)

// sheetOptions are what stands behind `fettle sheet`.
type sheetOptions struct {
	folder, shop, out, format, stale string
	wanted                           sheet.Wanted
	help                             bool
}

// shopSheet writes the sheet to take to the machine, or says whether an old one still holds.
func shopSheet(args []string, out, errs io.Writer) int {
	o, err := sheetWords(args)
	if err != nil {
		complain(errs, err.Error())
		return unreadable
	}
	if o.help {
		fmt.Fprint(out, usage)
		return allClear
	}
	c, status := checkedFor(o, errs)
	if c == nil {
		return status
	}
	if o.stale != "" {
		return stale(o.stale, c, out, errs)
	}
	o.wanted.Pictures = o.format == "html"
	if o.wanted.Pictures { // drawing leaves much behind, and the process ends with it: tidy up a quarter as often
		debug.SetGCPercent(400)
	}
	p, err := sheet.Make(c, o.wanted)
	if err != nil {
		complain(errs, err.Error())
		return unreadable
	}
	if o.format == "md" {
		return deliver(o.out, p.Markdown(), out, errs)
	}
	return deliver(o.out, p.HTML(), out, errs)
}

// checkedFor checks the recipe that a sheet is made of; nil where it cannot be read.
func checkedFor(o sheetOptions, errs io.Writer) (*report.Checked, int) {
	shop := o.shop
	if shop == "" {
		if named, _ := schema.Shops(disk{}, o.folder); len(named) > 0 {
			shop = named[0]
		}
	}
	j := &job{recipe: o.folder, shop: shop}
	j.do(options{on: o.wanted.On})
	switch {
	case j.fault != "":
		complain(errs, j.recipe+": "+j.fault)
		io.WriteString(errs, j.stack)
		return nil, broken
	case j.trouble != "":
		complain(errs, j.trouble)
		return nil, unreadable
	case j.checked.Result == nil:
		complain(errs, o.folder+" could not be read; fettle check says why")
		return nil, unreadable
	}
	return j.checked, allClear
}

// digestOf finds the digest that a sheet was stamped with.
var digestOf = regexp.MustCompile(`name="fettle-digest" content="([0-9a-f]{16})"|with the digest ([0-9a-f]{16})\.`)

// mostSheet is how much of an old sheet is read, in bytes.
const mostSheet = 64 << 20

// stale says whether a sheet was made from the files as they are now.
func stale(name string, c *report.Checked, out, errs io.Writer) int {
	f, err := os.Open(name)
	if err != nil {
		complain(errs, fmt.Sprintf("%s could not be read: %v", name, plainly(err)))
		return unreadable
	}
	defer f.Close()
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() {
		complain(errs, name+" is not a file")
		return unreadable
	}
	raw, err := io.ReadAll(io.LimitReader(f, mostSheet))
	if err != nil {
		complain(errs, fmt.Sprintf("%s could not be read: %v", name, plainly(err)))
		return unreadable
	}
	m := digestOf.FindSubmatch(raw)
	if m == nil {
		complain(errs, name+" is no sheet of fettle's: it has no digest")
		return unreadable
	}
	was := string(m[1]) + string(m[2])
	if is := sheet.DigestOf(c.Build); was != is {
		fmt.Fprintf(out, "%s was made from other files: its digest is %s, and theirs is %s now. Print it anew.\n", report.Safe(name), was, is)
		return found
	}
	fmt.Fprintf(out, "%s was made from the files as they are now.\n", report.Safe(name))
	return allClear
}

func sheetWords(args []string) (o sheetOptions, err error) {
	o.format = "html"
	o.folder, o.help, err = words(args, "a sheet is made of one recipe", o.set)
	if o.help || err != nil {
		return o, err
	}
	if strings.TrimSpace(o.folder) == "" {
		return o, fmt.Errorf("name the folder of a recipe: fettle sheet recipes/first --out clamp.html")
	}
	return o, nil
}

func (o *sheetOptions) set(name, value string) error {
	to := map[string]*string{"--shop": &o.shop, "--part": &o.wanted.Part, "--out": &o.out, "--format": &o.format, "--on": &o.wanted.On, "--stale": &o.stale}[name]
	if to == nil {
		return fmt.Errorf("%q is not known here; there are --shop, --part, --format, --on, --out and --stale", name)
	}
	if value == "" {
		return fmt.Errorf("%s wants a value behind it", name)
	}
	*to = value
	switch name {
	case "--format":
		if value != "html" && value != "md" {
			return fmt.Errorf("%q is no format of a sheet; there are html and md", value)
		}
	case "--on":
		if _, err := time.Parse("2006-01-02", value); err != nil {
			return fmt.Errorf("%q is no day; a day is written year-month-day, such as 2026-11-25", value)
		}
	}
	return nil
}
