package main

import (
	"fmt"
	"strings"
	"time"

	"fettle/schema/finding"
)

// options are what stands behind `fettle check`.
type options struct {
	folders []string
	shops   []string
	level   finding.Level
	format  string // "text", "json", "sarif"
	on      string // year-month-day, or "" where the day was not said
	plain   bool
	help    bool
	said    map[string]bool // flags that were given
}

// parse reads flags and folders in any order. A flag's value may stand behind it or after
// an equals sign; "--" ends the flags.
func parse(args []string) (options, error) {
	o := options{level: finding.Scrap, said: map[string]bool{}, format: "text"}
	for len(args) > 0 {
		word := args[0]
		args = args[1:]
		if word == "--" {
			o.folders = append(o.folders, args...)
			break
		}
		if !strings.HasPrefix(word, "-") {
			o.folders = append(o.folders, word)
			continue
		}
		name, value, given := strings.Cut(word, "=")
		if !strings.HasPrefix(name, "--") {
			return o, fmt.Errorf("%q is not known here: the words before a value have two dashes, such as --shop; a folder of that name is written ./%s", word, word)
		}
		if word == "--help" {
			return options{help: true}, nil
		}
		if name == "--plain" {
			if given {
				return o, fmt.Errorf("--plain takes no value")
			}
			o.plain = true
			continue
		}
		if !given {
			if len(args) > 0 && known(name) {
				value, args, given = args[0], args[1:], true
			}
		}
		if err := o.set(name, value, given); err != nil {
			return o, err
		}
	}
	for _, f := range append(append([]string{}, o.folders...), o.shops...) {
		if strings.TrimSpace(f) == "" {
			return o, fmt.Errorf("a folder without a name was given; the folder one is in is written \".\"")
		}
	}
	if len(o.folders) == 0 {
		return o, fmt.Errorf("name the folder of a recipe: fettle check recipes/first")
	}
	return o, nil
}

func known(name string) bool {
	switch name {
	case "--shop", "--level", "--format", "--on":
		return true
	}
	return false
}

func (o *options) set(name, value string, given bool) error {
	if !known(name) {
		return fmt.Errorf("%q is not known here; there are --shop, --level, --format, --on and --plain", name)
	}
	if !given || value == "" {
		return fmt.Errorf("%s wants a value behind it", name)
	}
	if name != "--shop" && o.said[name] {
		return fmt.Errorf("%s is given twice", name)
	}
	o.said[name] = true
	switch name {
	case "--shop":
		o.shops = append(o.shops, value)
	case "--level":
		l, ok := finding.ParseLevel(value)
		if !ok {
			return fmt.Errorf("%q is no level; there are advice, scrap, stop and danger", value)
		}
		o.level = l
	case "--format":
		switch value {
		case "text", "json", "sarif":
			o.format = value
		default:
			return fmt.Errorf("%q is no format; there are text, json and sarif", value)
		}
	case "--on":
		if _, err := time.Parse("2006-01-02", value); err != nil {
			return fmt.Errorf("%q is no day; a day is written year-month-day, such as 2026-11-25", value)
		}
		o.on = value
	}
	return nil
}

// words reads the flags and the one folder that stand behind a verb, in any order; a flag's value may stand
// behind it or after an equals sign. set takes a flag; only says what the verb does with one recipe.
func words(args []string, only string, set func(name, value string) error) (folder string, help bool, err error) {
	said := map[string]bool{}
	for len(args) > 0 {
		word := args[0]
		args = args[1:]
		if word == "--help" {
			return "", true, nil
		}
		if !strings.HasPrefix(word, "-") {
			if folder != "" {
				return "", false, fmt.Errorf("%s; %q and %q were given", only, folder, word)
			}
			folder = word
			continue
		}
		name, value, given := strings.Cut(word, "=")
		if !given && len(args) > 0 {
			value, args = args[0], args[1:]
		}
		if said[name] {
			return "", false, fmt.Errorf("%s is given twice", name)
		}
		said[name] = true
		if err := set(name, value); err != nil {
			return "", false, err
		}
	}
	return folder, false, nil
}
