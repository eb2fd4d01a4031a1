package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var renew = flag.Bool("renew", false, "write the expected reports anew")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"fettle": func() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) },
	})
}

// The scripts of testdata/cli run the command as a person would: exit status, output and
// standard error. "status N command…" holds that a command ends with just that status.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           filepath.Join("..", "..", "testdata", "cli"),
		UpdateScripts: *renew,
		Setup: func(e *testscript.Env) error {
			root, err := filepath.Abs(filepath.Join("..", ".."))
			if err != nil {
				return err
			}
			e.Setenv("NO_COLOR", "1")
			return os.CopyFS(filepath.Join(e.WorkDir, "recipes"), os.DirFS(filepath.Join(root, "recipes")))
		},
		Condition: func(cond string) (bool, error) {
			if cond == "root" {
				return os.Getuid() == 0, nil
			}
			return false, fmt.Errorf("there is no condition %q", cond)
		},
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"status": func(ts *testscript.TestScript, neg bool, args []string) {
				if neg || len(args) < 2 {
					ts.Fatalf("usage: status N command [arguments]")
				}
				err := ts.Exec(args[1], args[2:]...)
				got := "0"
				if err != nil {
					if x, ok := err.(interface{ ExitCode() int }); ok {
						got = string(rune('0' + x.ExitCode()))
					} else {
						ts.Fatalf("%v", err)
					}
				}
				if got != args[0] {
					ts.Fatalf("ended with status %s, not %s", got, args[0])
				}
			},
			"form": func(ts *testscript.TestScript, neg bool, args []string) {
				if neg || len(args) != 2 {
					ts.Fatalf("usage: form FILE how-many-checks")
				}
				checks, err := readForm(ts.ReadFile(args[0]))
				ts.Check(err)
				if fmt.Sprint(checks) != args[1] {
					ts.Fatalf("%d checks are in it, not %s", checks, args[1])
				}
			},
			"listing": func(ts *testscript.TestScript, neg bool, args []string) {
				names, err := listing(ts.MkAbs("."))
				ts.Check(err)
				ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(names), 0o600))
			},
			"pipe": func(ts *testscript.TestScript, neg bool, args []string) {
				ts.Check(syscall.Mkfifo(ts.MkAbs(args[0]), 0o600))
			},
			"large": func(ts *testscript.TestScript, neg bool, args []string) {
				f, err := os.Create(ts.MkAbs(args[0]))
				ts.Check(err)
				_, err = io.CopyN(f, nought{}, 2<<20)
				ts.Check(err)
				ts.Check(f.Close())
			},
		},
	})
}

type nought struct{}

func (nought) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = '\n'
	}
	return len(b), nil
}
