package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"

	"fettle/cmd/fettle/sheet"
	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/finding"
)

// sketchOptions are what stands behind `fettle sketch`.
type sketchOptions struct {
	folder, shop, out string
	asked             sheet.Asked
	help              bool
}

// drawOne draws a part, a set-up or one step of it.
func drawOne(args []string, out, errs io.Writer) int {
	o, err := sketchWords(args)
	if err != nil {
		complain(errs, err.Error())
		return unreadable
	}
	if o.help {
		fmt.Fprint(out, usage)
		return allClear
	}
	t, told, err := dryRun(o.folder, o.shop)
	if err != nil {
		complain(errs, sentence(err))
		return unreadable
	}
	d, err := sheet.Draw(t, o.asked)
	if err != nil {
		complain(errs, err.Error())
		return unreadable
	}
	if told {
		complain(errs, "the drawing shows what was made on paper; fettle check "+o.folder+" tells what is in the way of the recipe")
	}
	return deliver(o.out, d.SVG(), out, errs)
}

// deliver writes what was made to a file, or to the output where none was named.
func deliver(name, made string, out, errs io.Writer) int {
	if name == "" {
		io.WriteString(out, made)
		return allClear
	}
	if err := os.WriteFile(name, []byte(made), 0o644); err != nil {
		complain(errs, fmt.Sprintf("%s could not be written: %v", name, plainly(err)))
		return unreadable
	}
	return allClear
}

// dryRun makes a recipe on paper against a shop, or the first that it names; told: something stands in the way of
// what is written.
func dryRun(recipe, shop string) (t *eval.Trace, told bool, err error) {
	if shop == "" {
		if named, _ := schema.Shops(disk{}, recipe); len(named) > 0 {
			shop = named[0]
		}
	}
	b, slips, err := schema.Load(disk{}, recipe, shop)
	if err != nil {
		return nil, false, err
	}
	if b.Unread {
		for _, s := range slips {
			return nil, false, fmt.Errorf("%s: %s", s.Place.File, s.Says)
		}
	}
	told = slices.ContainsFunc(slips, func(s finding.Finding) bool { return s.Level >= finding.Stop })
	t, _, _ = choose.Choose(b, choose.Effort)
	return t, told, nil
}

func sketchWords(args []string) (o sketchOptions, err error) {
	o.folder, o.help, err = words(args, "sketch draws from one recipe", o.set)
	if o.help || err != nil {
		return o, err
	}
	switch {
	case strings.TrimSpace(o.folder) == "":
		return o, fmt.Errorf("name the folder of a recipe: fettle sketch recipes/first --part clamp")
	case o.asked.Step > 0 && o.asked.SetUp == "":
		return o, fmt.Errorf("--step counts the operations of a set-up; name it with --setup")
	}
	return o, nil
}

func (o *sketchOptions) set(name, value string) error {
	switch name {
	case "--shop", "--part", "--setup", "--step", "--out", "--projection":
	default:
		return fmt.Errorf("%q is not known here; there are --shop, --part, --setup, --step, --projection and --out", name)
	}
	if value == "" {
		return fmt.Errorf("%s wants a value behind it", name)
	}
	switch name {
	case "--shop":
		o.shop = value
	case "--part":
		o.asked.Part = value
	case "--setup":
		o.asked.SetUp = value
	case "--out":
		o.out = value
	case "--step":
		n, err := strconv.Atoi(value)
		if err != nil || n < 1 {
			return fmt.Errorf("--step wants the number of an operation, from 1; %q is none", value)
		}
		o.asked.Step = n
	case "--projection":
		switch value {
		case "first":
			o.asked.Projection = sketch.FirstAngle
		case "third":
			o.asked.Projection = sketch.ThirdAngle
		default:
			return fmt.Errorf("--projection is first or third, not %q", value)
		}
	}
	return nil
}
