package text

import "testing"

// Columns and lengths count code points, and a length stays within its line.
func TestMark(t *testing.T) {
	var s Sources
	s.Add("a", []byte("één = ½\nzwei\r\ndrei"))
	for _, c := range []struct {
		from, to             int
		line, column, length int
	}{
		{0, 5, 1, 1, 3},  // één is five bytes
		{8, 10, 1, 7, 1}, // ½ is two
		{8, 16, 1, 7, 1}, // cut at the end of the line
		{11, 15, 2, 1, 4},
		{17, 21, 3, 1, 4},
		{21, 21, 3, 5, 0}, // the end of the file
		{90, 99, 3, 5, 0}, // past it
		{-3, -1, 1, 1, 0},
	} {
		m := s.Mark(Place{"a", c.from, c.to})
		if m.Line != c.line || m.Column != c.column || m.Length != c.length {
			t.Errorf("bytes %d to %d: %+v, not %d:%d+%d", c.from, c.to, m, c.line, c.column, c.length)
		}
	}
	if m := s.Mark(Place{"b", 0, 1}); m.Line != 0 {
		t.Errorf("a file never read has line %d", m.Line)
	}
	if l := s.Line("a", 2); l != "zwei" {
		t.Errorf("line 2 is %q", l)
	}
	if l := s.Line("a", 4); l != "" {
		t.Errorf("line 4 is %q", l)
	}
}

// Edits come in any order; overlaps and edits outside the file are refused.
func TestApply(t *testing.T) {
	src := []byte("abcdef")
	out, err := Apply(src, []Edit{{"f", 4, 6, "Z"}, {"f", 0, 1, "AA"}, {"f", 2, 2, "-"}})
	if err != nil || string(out) != "AAb-cdZ" {
		t.Errorf("%q %v", out, err)
	}
	for _, bad := range [][]Edit{{{"f", 0, 3, ""}, {"f", 2, 4, ""}}, {{"f", 3, 9, ""}}, {{"f", 4, 2, ""}}, {{"f", -1, 2, ""}}} {
		if _, err := Apply(src, bad); err == nil {
			t.Errorf("%v was not refused", bad)
		}
	}
	if string(src) != "abcdef" {
		t.Error("the bytes given were changed")
	}
}

func TestArchive(t *testing.T) {
	a := Archive{"r/b.hcl": []byte("b"), "r/a.hcl": []byte("aa"), "r/x.txt": nil, "s/c.hcl": nil}
	files, _, err := a.List("r")
	if err != nil || len(files) != 2 || files[0] != "r/a.hcl" {
		t.Errorf("%v %v", files, err)
	}
	if _, _, err := a.List("q"); err == nil {
		t.Error("a folder that is not there was listed")
	}
	if _, err := a.Read("r/a.hcl", 1); err == nil {
		t.Error("a file over the limit was read")
	}
}
