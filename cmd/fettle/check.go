package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"runtime/debug"
	"strings"
	"sync"

	"github.com/fatih/color"

	"fettle/cmd/fettle/report"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/finding"
	"fettle/schema/text"
)

// job is one recipe against one shop.
type job struct {
	recipe, shop string
	checked      *report.Checked
	trouble      string // a sentence: nothing could be read
	fault        string // a fault of fettle's own
}

// workers is how many recipes are checked at a time.
const workers = 2

func check(args []string, out, errs io.Writer) int {
	o, err := parse(args)
	if err != nil {
		fmt.Fprintf(errs, "fettle: %v\n", err)
		return unreadable
	}
	status := allClear
	jobs, troubles := spread(o, disk{})
	for _, t := range troubles {
		fmt.Fprintf(errs, "fettle: %s\n", t)
		status = unreadable
	}
	carryOut(jobs, o)
	var all []*report.Checked
	for _, j := range jobs {
		switch {
		case j.fault != "":
			fmt.Fprintf(errs, "fettle: %s: %s\n", j.recipe, j.fault)
			status = max(status, broken)
			continue
		case j.trouble != "":
			fmt.Fprintf(errs, "fettle: %s\n", j.trouble)
			status = max(status, unreadable)
			continue
		}
		all = append(all, j.checked)
		status = max(status, verdict(j.checked, o.level))
	}
	if o.json {
		if err := report.JSON(out, all); err != nil {
			fmt.Fprintf(errs, "fettle: %v\n", err)
			return broken
		}
		return status
	}
	pen := report.Pen{Colour: !o.plain && onTerminal(out)}
	for i, c := range all {
		if i > 0 {
			fmt.Fprintln(out)
		}
		report.Text(out, c, pen)
	}
	return status
}

func onTerminal(out io.Writer) bool {
	f, ok := out.(*os.File)
	return ok && f == os.Stdout && !color.NoColor
}

func verdict(c *report.Checked, level finding.Level) int {
	if !c.Read {
		return unreadable
	}
	status := allClear
	for _, f := range c.Findings {
		if f.Rule == rules.Fault {
			return broken
		}
		if f.Level >= level {
			status = found
		}
	}
	return status
}

// spread pairs every recipe with its shops: those of the command line, else those that the
// recipe names, else none.
func spread(o options, files text.Folder) (jobs []*job, troubles []string) {
	seen := map[string]bool{}
	shops, more := once(o.shops, "shop")
	troubles = append(troubles, more...)
	for _, typed := range o.folders {
		recipe := path.Clean(filepath.ToSlash(typed))
		if seen[recipe] {
			troubles = append(troubles, fmt.Sprintf("the recipe %s is given twice; it is checked once", typed))
			continue
		}
		seen[recipe] = true
		if len(shops) > 0 {
			for _, s := range shops {
				jobs = append(jobs, &job{recipe: recipe, shop: s})
			}
			continue
		}
		named, err := schema.Shops(files, recipe)
		if err != nil || len(named) == 0 {
			jobs = append(jobs, &job{recipe: recipe})
			continue
		}
		for _, s := range named {
			jobs = append(jobs, &job{recipe: recipe, shop: s})
		}
	}
	return jobs, troubles
}

func once(names []string, what string) (out, troubles []string) {
	seen := map[string]bool{}
	for _, typed := range names {
		n := path.Clean(filepath.ToSlash(typed))
		if seen[n] {
			troubles = append(troubles, fmt.Sprintf("the %s %s is given twice; it is used once", what, typed))
			continue
		}
		seen[n] = true
		out = append(out, n)
	}
	return out, troubles
}

// carryOut checks the jobs, a few at a time; each writes only what is its own.
func carryOut(jobs []*job, o options) {
	next := make(chan *job)
	var wait sync.WaitGroup
	for range min(workers, len(jobs)) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for j := range next {
				j.do(o)
			}
		}()
	}
	for _, j := range jobs {
		next <- j
	}
	close(next)
	wait.Wait()
}

// do checks one recipe against one shop. What breaks within it is told as a fault, and the
// other recipes go on.
func (j *job) do(o options) {
	defer func() {
		if e := recover(); e != nil {
			j.fault = fmt.Sprintf("a fault of fettle's own stopped the check (%v)", e)
			if os.Getenv("FETTLE_STACK") != "" {
				j.fault += "\n" + string(debug.Stack())
			}
		}
	}()
	b, slips, err := schema.Load(disk{}, j.recipe, j.shop)
	if err != nil {
		j.trouble = sentence(err)
		return
	}
	c := &report.Checked{Recipe: j.recipe, Shop: j.shop, Build: b, Read: !b.Unread, Slips: slips}
	j.checked = c
	if b.Unread {
		c.Findings = slips
		return
	}
	t, vs, chosen := choose.Choose(b, choose.Effort)
	c.Result = rules.Judge(t, vs, o.on)
	c.Chosen = chosen
	c.Findings = append(append([]finding.Finding{}, slips...), c.Result.Findings...)
}

// sentence words why a folder cannot be read.
func sentence(err error) string {
	var f *schema.FolderError
	if errors.As(err, &f) && f.Err != nil && errors.Is(f.Err, errNotFolder) {
		return f.Folder + " is a file; a " + f.For + " is a folder"
	}
	return strings.TrimSuffix(err.Error(), ".")
}
