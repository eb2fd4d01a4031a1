package schema

import (
	"io/fs"
	"strings"
	"testing"

	"fettle/schema/text"
)

// vanishing is a folder of which one file is listed and gone, or half gone, once it is read.
type vanishing struct {
	text.Archive
	name string
	left []byte // what of it can still be read; nil: nothing
}

func (v vanishing) Read(name string, limit int64) ([]byte, error) {
	if name == v.name {
		if v.left != nil {
			return v.left, nil
		}
		return nil, fs.ErrNotExist
	}
	return v.Archive.Read(name, limit)
}

// A file that was there when the folder was listed and is gone when it is read is told of at its
// name, and nothing is judged as if it had never been there.
func TestFileVanishes(t *testing.T) {
	files := text.Archive{
		"r/a.hcl": []byte("recipe \"r\" {\n  units = \"mm\"\n}\n"),
		"r/b.hcl": []byte("part \"p\" {\n  length = 10\n  diameter = 5\n}\n"),
		"s/a.hcl": []byte("shop \"s\" {\n  units = \"mm\"\n}\n"),
		"s/b.hcl": []byte("vise \"v\" {\n  jaw_width = 100\n}\n"),
	}
	for name, body := range files {
		for _, left := range [][]byte{nil, {}, body[:len(body)/2]} {
			b, finds, err := Load(vanishing{files, name, left}, "r", "s")
			if err != nil { // a header that is gone, in a sentence
				if !strings.Contains(err.Error(), name[:1]) {
					t.Errorf("%s: %v", name, err)
				}
				continue
			}
			if len(left) == 0 && left != nil {
				continue // an empty file says nothing, and is a file all the same
			}
			if !b.Unread || len(finds) == 0 {
				t.Errorf("%s cut to %d bytes: read as if nothing were wrong", name, len(left))
			}
			for _, f := range finds {
				if f.Place.File != name {
					t.Errorf("%s is gone, and %s is told of: %s", name, f.Place.File, f.Says)
				}
			}
		}
	}
}
