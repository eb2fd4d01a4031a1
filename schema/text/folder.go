package text

// Folder is what files are read from: the disk, or a test's archive. Names are paths with
// forward slashes.
type Folder interface {
	// List names the regular files directly in a folder that end in ".hcl", in
	// alphabetical order, and those that end so but are not regular files.
	List(folder string) (files, odd []string, err error)
	// Read gives the bytes of a file that List named. It refuses files over limit bytes
	// with TooLarge.
	Read(name string, limit int64) ([]byte, error)
}

// TooLarge is the error of a file over the limit it was read with.
type TooLarge struct {
	Name  string
	Bytes int64
}

func (e TooLarge) Error() string { return e.Name + " is too large to be a recipe" }
