// Package seeded makes random tests of laws draw the same cases in every run, so that a change that
// has nothing to do with a law cannot fail by a draw. A test package imports it for its effect alone.
// New cases are drawn by hand, with go test -rapid.seed=0 or any other figure.
package seeded

import (
	"flag"

	_ "pgregory.net/rapid" // whose flags must be there before they are set
)

func init() {
	if err := flag.Set("rapid.seed", "1"); err != nil {
		panic(err) // the flag has another name now: the tests would be random again
	}
}
