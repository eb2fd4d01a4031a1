package main

import (
	"encoding/json"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strings"
)

// The JSON form as a program of someone else's would write it down: a field that is missing, or
// that is not written here, is an error.
type formMargin struct {
	Has, Wants *float64
	Unit       *string
	AtMost     *bool `json:"at_most"`
}

type formFinding struct {
	Rule, Level, Judgement, Cause, File, Says *string
	Line, Column, Length                      *int
	Covers, At                                []string
	Also                                      []struct {
		File, Says           *string
		Line, Column, Length *int
	}
	Margin   *formMargin
	Remedies []struct {
		Title *string
		Edits []struct {
			File, New *string
			From, To  *int
		}
	}
	Spots [][]string
}

type formCheck struct {
	Recipe, Shop              *string
	Parts, Setups, Operations *int
	Findings                  []formFinding
	Chosen                    []struct {
		At              []string
		What, Item, Why *string
	}
	Tightest []struct {
		Rule, What *string
		At         []string
		Margin     *formMargin
	}
	Unknown []struct {
		Fact    *string
		Settles *int
	}
	Asked []struct {
		Rule                 *string
		Clear, Trouble, Open *int
	}
	Questions []struct {
		Rule, Asks *string
		At, For    []string
	}
	NotPlayed []struct {
		At  []string
		Why *string
	} `json:"not_played"`
	Read    *bool
	Excused *int
}

type formDocument struct {
	Format  *int
	Checked []formCheck
}

// readForm reads a report strictly and gives how many checks are in it.
func readForm(s string) (int, error) {
	var d formDocument
	dec := json.NewDecoder(strings.NewReader(s))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&d); err != nil {
		return 0, err
	}
	if _, err := dec.Token(); err != io.EOF {
		return 0, fmt.Errorf("something comes after the document")
	}
	if d.Format == nil || *d.Format != 1 || d.Checked == nil {
		return 0, fmt.Errorf("no format 1")
	}
	for _, c := range d.Checked {
		if c.Recipe == nil || c.Shop == nil || c.Parts == nil || c.Setups == nil || c.Operations == nil || c.Findings == nil ||
			c.Chosen == nil || c.Tightest == nil || c.Unknown == nil || c.Asked == nil || c.Questions == nil || c.NotPlayed == nil ||
			c.Read == nil || c.Excused == nil {
			return 0, fmt.Errorf("a field of a check is missing")
		}
		for _, f := range c.Findings {
			if err := f.whole(); err != nil {
				return 0, err
			}
		}
	}
	return len(d.Checked), nil
}

// whole says what lacks in a finding, and what in it cannot be.
func (f formFinding) whole() error {
	if f.Rule == nil || f.Level == nil || f.Judgement == nil || f.Cause == nil || f.File == nil || f.Says == nil || f.Line == nil ||
		f.Column == nil || f.Length == nil || f.Covers == nil || f.At == nil || f.Also == nil || f.Remedies == nil || f.Spots == nil {
		return fmt.Errorf("a field of a finding is missing")
	}
	if len(f.Spots) > 0 && strings.Join(f.Spots[0], "|") != strings.Join(f.At, "|") {
		return fmt.Errorf("%s is at %q, and its first spot is %q", *f.Rule, f.At, f.Spots[0])
	}
	for _, w := range f.At {
		if !strings.Contains(w, " ") && w != "square_up" {
			return fmt.Errorf("%s is at %q, which does not say of what kind it is", *f.Rule, w)
		}
	}
	if *f.Line > 0 && (*f.Column < 1 || strings.Contains(*f.File, `\`)) {
		return fmt.Errorf("%s stands at %s, line %d, column %d", *f.Rule, *f.File, *f.Line, *f.Column)
	}
	return nil
}

// listing gives every file below a folder with its size and when it was last written to; the
// lists themselves (.list) are left out.
func listing(root string) (string, error) {
	var b strings.Builder
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) == ".list" {
			return err
		}
		info, err := d.Info()
		if err == nil {
			fmt.Fprintln(&b, path, info.Size(), info.ModTime().UnixNano())
		}
		return err
	})
	return b.String(), err
}
