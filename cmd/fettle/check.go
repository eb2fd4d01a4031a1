package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"runtime"
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
	stack        string // the way to it, where it was asked for
}

func check(args []string, out io.Writer, colour bool, errs io.Writer) int {
	o, err := parse(args)
	if err != nil {
		complain(errs, err.Error())
		return unreadable
	}
	if o.help {
		fmt.Fprint(out, usage)
		return allClear
	}
	status := allClear
	jobs, troubles := spread(o, disk{})
	for _, t := range troubles {
		complain(errs, t)
		status = unreadable
	}
	carryOut(jobs, o)
	var all []*report.Checked
	for _, j := range jobs {
		switch {
		case j.fault != "":
			complain(errs, j.recipe+": "+j.fault)
			io.WriteString(errs, j.stack)
			status = max(status, broken)
		case j.trouble != "":
			complain(errs, j.trouble)
			status = max(status, unreadable)
		default:
			all = append(all, j.checked)
			status = max(status, verdict(j.checked, o.level))
		}
	}
	write := map[string]func(io.Writer, []*report.Checked) error{"json": report.JSON, "sarif": report.SARIF}[o.format]
	if write != nil {
		if err := write(out, all); err != nil {
			panic(err) // every value of a report has such a form
		}
		return status
	}
	pen := report.Pen{Colour: colour && !o.plain}
	for _, c := range all {
		report.Text(out, c, pen)
		fmt.Fprintln(out)
	}
	if len(all) > 0 {
		fmt.Fprintln(out, meaning(status, o.level))
	}
	return status
}

// meaning says in a line what the exit status stands for.
func meaning(status int, level finding.Level) string {
	from := "at level " + level.String() + " or above"
	if level == finding.Danger {
		from = "at level danger"
	}
	var says string
	switch status {
	case allClear:
		says = "nothing found " + from
	case found:
		says = "something found " + from
	case unreadable:
		says = "not everything could be read as it was asked for"
	default:
		says = "a fault of fettle's own"
	}
	return fmt.Sprintf("Exit status %d: %s.", status, says)
}

// onTerminal says whether colour may be shown: out is the terminal, and neither NO_COLOR nor
// a terminal without colours speaks against it.
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
	recipes, more := once(o.folders, "recipe", "checked")
	troubles = append(troubles, more...)
	shops, more := once(o.shops, "shop", "used")
	troubles = append(troubles, more...)
	for _, recipe := range recipes {
		against := shops
		if len(against) == 0 {
			// A recipe that cannot be read says so when it is checked.
			against, _ = schema.Shops(files, recipe)
		}
		if len(against) == 0 {
			against = []string{""}
		}
		for _, shop := range against {
			jobs = append(jobs, &job{recipe: recipe, shop: shop})
		}
	}
	return jobs, troubles
}

// once drops folders that were given before, under whatever name.
func once(names []string, what, use string) (out, troubles []string) {
	before := map[string]bool{}
	var known []folder
	for _, typed := range names {
		name := path.Clean(filepath.ToSlash(typed))
		info, err := os.Stat(filepath.FromSlash(name))
		if before[name] {
			troubles = append(troubles, fmt.Sprintf("the %s %s is given twice; it is %s once", what, typed, use))
			continue
		}
		if err == nil {
			if first, again := alike(known, info); again {
				troubles = append(troubles, fmt.Sprintf("%s and %s are the same folder; the %s is %s once", first, typed, what, use))
				continue
			}
			known = append(known, folder{name, info})
		}
		before[name] = true
		out = append(out, name)
	}
	return out, troubles
}

// folder is a folder that was given, and what the disk says of it.
type folder struct {
	name string
	info os.FileInfo
}

// alike finds the folder among those before it that is the same one on the disk.
func alike(before []folder, info os.FileInfo) (string, bool) {
	for _, b := range before {
		if os.SameFile(info, b.info) {
			return b.name, true
		}
	}
	return "", false
}

// carryOut checks the jobs, as many at a time as there are cores; each writes only what is its
// own, so what is printed does not hang on which was done first.
func carryOut(jobs []*job, o options) {
	next := make(chan *job)
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(jobs)) {
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
			j.fault, j.stack = fault(e)
		}
	}()
	b, slips, err := schema.Load(disk{}, j.recipe, j.shop)
	if err != nil {
		j.trouble = sentence(err)
		return
	}
	c := &report.Checked{Recipe: j.recipe, Shop: j.shop, Build: b, Read: !b.Unread}
	j.checked = c
	if b.Unread {
		c.Findings = slips
		return
	}
	t, vs, chosen := choose.Choose(b, choose.Effort)
	c.Result = rules.Judge(t, vs, o.on)
	c.Chosen = chosen
	c.Findings = append(report.Spotted(slips, t), c.Result.Findings...)
}

// sentence words why a folder cannot be read.
func sentence(err error) string {
	var f *schema.FolderError
	if errors.As(err, &f) && f.Err != nil && errors.Is(f.Err, errNotFolder) {
		return f.Folder + " is a file; a " + f.For + " is a folder"
	}
	return strings.TrimSuffix(err.Error(), ".")
}
