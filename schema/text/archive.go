package text

import (
	"fmt"
	"io/fs"
	"path"
	"sort"
	"strings"
)

// Archive is a Folder kept in memory: the bytes of each file by its path.
type Archive map[string][]byte

// List names the files directly in a folder that end in ".hcl". A folder exists as soon as
// one file lies in it or below it.
func (a Archive) List(folder string) (files, odd []string, err error) {
	folder = path.Clean(folder)
	found := false
	for name := range a {
		clean := path.Clean(name)
		switch {
		case path.Dir(clean) == folder:
			found = true
			if strings.HasSuffix(clean, ".hcl") {
				files = append(files, clean)
			}
		case folder == "." && !path.IsAbs(clean), strings.HasPrefix(clean, folder+"/"):
			found = true
		}
	}
	if !found {
		return nil, nil, fmt.Errorf("%s: %w", folder, fs.ErrNotExist)
	}
	sort.Strings(files)
	return files, nil, nil
}

// Read gives the bytes of a file.
func (a Archive) Read(name string, limit int64) ([]byte, error) {
	b, ok := a[name]
	if !ok {
		return nil, fmt.Errorf("%s: %w", name, fs.ErrNotExist)
	}
	if int64(len(b)) > limit {
		return nil, TooLarge{Name: name, Bytes: int64(len(b))}
	}
	return b, nil
}
