package main

import (
	"fmt"
	"io"

	"fettle/cmd/fettle/report"
	"fettle/rules"
	"fettle/schema"
)

// listRules prints every rule on a line: its name, level, what it rests on, and its title.
func listRules(args []string, out, errs io.Writer) int {
	if len(args) > 0 {
		complain(errs, "rules takes nothing behind it")
		return unreadable
	}
	wide := 0
	for _, r := range rules.Catalogue() {
		wide = max(wide, len(r.Name))
	}
	for _, s := range schema.Slips {
		wide = max(wide, len(s.Name))
	}
	fmt.Fprintf(out, "Of the work (%d):\n", len(rules.Catalogue()))
	for _, r := range rules.Catalogue() {
		fmt.Fprintf(out, "  %-*s  %-6s  %-13s  %s\n", wide, r.Name, r.Level, r.Judgement, r.Title)
	}
	fmt.Fprintf(out, "\nOf how recipes and shops are written (%d):\n", len(schema.Slips))
	for _, s := range schema.Slips {
		fmt.Fprintf(out, "  %-*s  %-6s  %-13s  %s\n", wide, s.Name, s.Level, "fact", s.Title)
	}
	return allClear
}

// why explains one rule.
func why(args []string, out, errs io.Writer) int {
	if len(args) != 1 {
		complain(errs, "name one rule: fettle why nut-unwinds; fettle rules lists them")
		return unreadable
	}
	if r := rules.Find(args[0]); r != nil {
		report.Why(out, r)
		return allClear
	}
	for _, s := range schema.Slips {
		if s.Name == args[0] {
			report.WhySlip(out, s)
			return allClear
		}
	}
	for _, n := range rules.Notices {
		if n.Name == args[0] {
			report.WhyNotice(out, n)
			return allClear
		}
	}
	complain(errs, fmt.Sprintf("there is no rule %q; fettle rules lists them", args[0]))
	return unreadable
}
