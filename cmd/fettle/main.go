// Command fettle checks workshop build recipes: it makes every set-up on paper first and
// says what cannot work, and why, in figures.
package main

import (
	"fmt"
	"io"
	"os"
)

// Exit statuses of a check.
const (
	allClear   = 0 // nothing at or above the chosen level
	found      = 1 // something is
	unreadable = 2 // the files could not be read, or the command was not understood
	broken     = 3 // a fault of fettle's own
)

const usage = `fettle checks a build recipe on paper before metal is cut.

  fettle check FOLDER...   make the build on paper and say what stands in its way
  fettle rules             list what is looked for, one rule a line
  fettle why RULE          explain one rule, with the smallest recipe that trips it

After check:
  --shop FOLDER            against this shop; may be given several times
                           (left out: the shops that the recipe names)
  --level LEVEL            advice, scrap, stop or danger: from which level on the
                           exit status is 1 (left out: scrap)
  --format text|json       how to report (left out: text)
  --on YEAR-MONTH-DAY      the day of the check: decides which concessions have ended
  --plain                  no colour

Exit status: 0 nothing at or above the level, 1 something is, 2 the files could
not be read, 3 a fault of fettle's own.
`

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run carries out one command; it is what main does, without the process around it.
func run(args []string, out, errs io.Writer) int {
	if len(args) == 0 {
		fmt.Fprint(out, usage)
		return allClear
	}
	switch args[0] {
	case "check":
		return check(args[1:], out, errs)
	case "rules":
		return listRules(args[1:], out, errs)
	case "why":
		return why(args[1:], out, errs)
	case "help", "--help":
		fmt.Fprint(out, usage)
		return allClear
	}
	fmt.Fprintf(errs, "fettle: there is no command %q; there are check, rules and why\n", args[0])
	return unreadable
}
