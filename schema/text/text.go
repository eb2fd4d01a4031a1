// Package text keeps the files that were read, and says where in them something stands.
//
// A Place is bytes only, which is cheap to keep by the thousand; a Mark is the line and
// column of it, worked out with one index a file and only for what is printed.
package text

import (
	"sort"
	"unicode/utf8"
)

// Place is where something stands: the bytes From up to, not including, To of one file.
// The zero Place stands nowhere.
type Place struct {
	File     string
	From, To int
}

// None says that the place stands nowhere.
func (p Place) None() bool { return p.File == "" }

// Before orders places by file, then by where they begin, then by where they end.
func (p Place) Before(q Place) bool {
	if p.File != q.File {
		return p.File < q.File
	}
	if p.From != q.From {
		return p.From < q.From
	}
	return p.To < q.To
}

// Mark is a place as a person reads it. Line and Column count from 1; Column and Length
// count code points; Length stays within the line.
type Mark struct {
	File                 string
	Line, Column, Length int
}

// Sources holds every file that was read, by the name it is reported under.
type Sources struct {
	files map[string]*source
}

type source struct {
	bytes []byte
	lines []int // offset of the first byte of each line; made when first asked for
}

// Add keeps the bytes of a file. The bytes must not be changed afterwards.
func (s *Sources) Add(name string, b []byte) {
	if s.files == nil {
		s.files = map[string]*source{}
	}
	s.files[name] = &source{bytes: b}
}

// Bytes gives back a file; nil where it was never read.
func (s *Sources) Bytes(name string) []byte {
	if f := s.files[name]; f != nil {
		return f.bytes
	}
	return nil
}

// Names lists the files in alphabetical order.
func (s *Sources) Names() []string {
	out := make([]string, 0, len(s.files))
	for n := range s.files {
		out = append(out, n)
	}
	sort.Strings(out)
	return out
}

// Mark works out line, column and length of a place. A place in a file that was never
// read, or nowhere, gets line and column 0.
func (s *Sources) Mark(p Place) Mark {
	f := s.files[p.File]
	if f == nil {
		return Mark{File: p.File}
	}
	f.index()
	from := min(max(p.From, 0), len(f.bytes))
	to := min(max(p.To, from), len(f.bytes))
	line := sort.SearchInts(f.lines, from+1) - 1
	start := f.lines[line]
	end := len(f.bytes)
	if line+1 < len(f.lines) {
		end = f.lines[line+1] - 1
	}
	to = max(from, min(to, end))
	return Mark{
		File:   p.File,
		Line:   line + 1,
		Column: utf8.RuneCount(f.bytes[start:from]) + 1,
		Length: utf8.RuneCount(f.bytes[from:to]),
	}
}

// Line gives the text of line n, counted from 1, without its end.
func (s *Sources) Line(file string, n int) string {
	f := s.files[file]
	if f == nil {
		return ""
	}
	f.index()
	if n < 1 || n > len(f.lines) {
		return ""
	}
	end := len(f.bytes)
	if n < len(f.lines) {
		end = f.lines[n] - 1
	}
	b := f.bytes[f.lines[n-1]:end]
	if len(b) > 0 && b[len(b)-1] == '\r' {
		b = b[:len(b)-1]
	}
	return string(b)
}

func (f *source) index() {
	if f.lines != nil {
		return
	}
	f.lines = append(f.lines, 0)
	for i, c := range f.bytes {
		if c == '\n' {
			f.lines = append(f.lines, i+1)
		}
	}
}
