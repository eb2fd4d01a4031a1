package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"sort"
	"strings"
	"syscall"

	"fettle/schema/text"
)

// disk is the text.Folder on this machine's disk. It only reads.
type disk struct{}

var (
	errNotFolder = errors.New("it is a file, not a folder")
	errNotPlain  = errors.New("it is no plain file")
)

// List names the plain files of a folder that end in ".hcl". A link counts as what it
// leads to. Names that begin with a dot are left out, as "*.hcl" leaves them out: they are
// what editors and file systems keep for themselves.
func (disk) List(folder string) (files, odd []string, err error) {
	info, err := os.Stat(filepath.FromSlash(folder))
	if err != nil {
		return nil, nil, plainly(err)
	}
	if !info.IsDir() {
		return nil, nil, errNotFolder
	}
	entries, err := os.ReadDir(filepath.FromSlash(folder))
	if err != nil {
		return nil, nil, plainly(err)
	}
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".hcl") || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		name := path.Join(folder, e.Name())
		info, err := os.Stat(filepath.FromSlash(name))
		if err != nil || !info.Mode().IsRegular() {
			odd = append(odd, name)
			continue
		}
		files = append(files, name)
	}
	sort.Strings(files)
	sort.Strings(odd)
	return files, odd, nil
}

// Read gives the bytes of a plain file. What the name leads to is looked at before it is
// opened, and again once it is open; should a pipe take its place in between, opening it
// does not wait for a writer.
func (disk) Read(name string, limit int64) ([]byte, error) {
	info, err := os.Stat(filepath.FromSlash(name))
	if err != nil {
		return nil, plainly(err)
	}
	if !info.Mode().IsRegular() {
		return nil, errNotPlain
	}
	if info.Size() > limit {
		return nil, text.TooLarge{Name: name, Bytes: info.Size()}
	}
	f, err := os.OpenFile(filepath.FromSlash(name), os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if err != nil {
		return nil, plainly(err)
	}
	defer f.Close()
	if again, err := f.Stat(); err != nil || !again.Mode().IsRegular() {
		return nil, errNotPlain
	}
	b, err := io.ReadAll(io.LimitReader(f, limit+1))
	if err != nil {
		return nil, plainly(err)
	}
	if int64(len(b)) > limit {
		return nil, text.TooLarge{Name: name, Bytes: int64(len(b))}
	}
	return b, nil
}

// plainly drops the path from the system's error: the sentence around it names the folder
// as it was typed.
func plainly(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
