// Command fettle checks workshop build recipes: it makes every set-up on paper first and
// says what cannot work, and why, in figures.
package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"fettle/cmd/fettle/reckon"
	"fettle/cmd/fettle/report"
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
  fettle sheet FOLDER      write the sheet to take to the machine, as HTML
  fettle sketch FOLDER     draw a part, or one set-up of it, as SVG
  fettle rules             list what is looked for, one rule a line
  fettle why RULE          explain one rule, with the smallest recipe that trips it
  fettle reckon            list the subjects of the trade's arithmetic at the bench
  fettle reckon SUBJECT... answer one question, with its working

After check:
  --shop FOLDER            against this shop; may be given several times
                           (left out: the shops that the recipe names)
  --level LEVEL            advice, scrap, stop or danger: from which level on the
                           exit status is 1 (left out: scrap)
  --format text|json|sarif how to report (left out: text)
  --on YEAR-MONTH-DAY      the day of the check: decides which concessions have ended
  --plain                  no colour

After sheet:
  --part PART              of this part alone
  --format html|md         with pictures, or for a write-up (left out: html)
  --on YEAR-MONTH-DAY      the day that is stamped on it (left out: blank)
  --stale FILE             say whether that sheet is of the files as they are now
  --shop, --out            as after sketch

After sketch:
  --part PART              which part (left out: the only one)
  --setup SETUP            one set-up of it, as the piece is put up
  --step NUMBER            one operation of that, the tool at its deepest, from 1
  --projection first|third of a finished part (left out: first)
  --shop FOLDER            made with this shop (left out: the first that is named)
  --out FILE               write the drawing there (left out: to the output)

Exit status: 0 nothing at or above the level, 1 something is, 2 the files could
not be read, 3 a fault of fettle's own. Of reckon: 0 answered, 1 the answer is
no, 2 the question was not understood.
`

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run carries out one command; it is what main does, without the process around it. What
// breaks outside the check of one recipe is told here, and what cannot be written is told too:
// half a report must not pass for a whole one.
func run(args []string, out, errs io.Writer) (status int) {
	defer func() {
		if e := recover(); e != nil {
			says, stack := fault(e)
			complain(errs, says)
			io.WriteString(errs, stack)
			status = broken
		}
	}()
	page := bufio.NewWriter(out)
	status = command(args, page, onTerminal(out), errs)
	if err := page.Flush(); err != nil {
		complain(errs, "the report could not be written: "+plainly(err).Error())
		status = broken
	}
	return status
}

func command(args []string, out io.Writer, colour bool, errs io.Writer) int {
	if len(args) == 0 {
		fmt.Fprint(out, usage)
		return allClear
	}
	switch args[0] {
	case "check":
		return check(args[1:], out, colour, errs)
	case "rules":
		return listRules(args[1:], out, errs)
	case "why":
		return why(args[1:], out, errs)
	case "reckon":
		status, err := reckon.Run(args[1:], disk{}, out)
		if err != nil {
			complain(errs, sentence(err))
		}
		return status
	case "sheet":
		return shopSheet(args[1:], out, errs)
	case "sketch":
		return drawOne(args[1:], out, errs)
	case "help", "--help":
		fmt.Fprint(out, usage)
		return allClear
	}
	complain(errs, fmt.Sprintf("there is no command %q; there are check, sheet, sketch, rules, why and reckon", args[0]))
	return unreadable
}

// complain writes a sentence about what could not be done. Names from the command line and
// from files may be in it, so it is written with what does not print escaped.
func complain(errs io.Writer, says string) {
	fmt.Fprintf(errs, "fettle: %s\n", report.Safe(says))
}

// fault words what recover gave back, and gives the way there if it was asked for: it is of
// use to a contributor only.
func fault(e any) (says, stack string) {
	if os.Getenv("FETTLE_STACK") != "" {
		stack = string(debug.Stack())
	}
	return fmt.Sprintf("a fault of fettle's own stopped the check (%v)", e), stack
}
