package choose_test

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// Writes a generated recipe of FETTLE_OPERATIONS operations to the folder FETTLE_WRITE, to be
// measured with the command itself.
func TestWriteGenerated(t *testing.T) {
	to := os.Getenv("FETTLE_WRITE")
	if to == "" {
		t.Skip("FETTLE_WRITE names no folder")
	}
	n, err := strconv.Atoi(os.Getenv("FETTLE_OPERATIONS"))
	if err != nil {
		t.Fatal(err)
	}
	files, _ := generated(1, n)
	for name, b := range files {
		name = filepath.Join(to, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, b, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
