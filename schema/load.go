// Package schema reads a recipe and a shop, written in HCL, into a model.Build.
//
// Reading goes in five steps, each blind to the ones after it. A file is looked over and
// parsed (guard.go, parse.go). Its blocks are planted as a tree of nodes, so that every
// name exists before any is looked up (plant.go). Each attribute is worked out when it is
// first asked for, by its row in the table of kinds (eval.go, refer.go, fit.go). What must
// be said and is not, and what is said twice, is found (decode.go). Last, the nodes become
// the structs of package model (bind.go).
package schema

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

// Trouble says why a folder cannot be read as a recipe or a shop.
type Trouble uint8

const (
	NoSuchFolder  Trouble = iota + 1
	EmptyFolder           // it holds no file that ends in .hcl
	NoHeader              // no recipe or no shop block
	SeveralHeader         // more than one
	WrongFolder           // a shop where a recipe is wanted, or the other way about
	SameFolder            // one folder for both
	SeveralShops          // more than one shop for one build
	Unreadable            // the system refuses
)

// FolderError says that a folder cannot be read as what it was given for: "recipe" or "shop".
type FolderError struct {
	Folder  string
	For     string
	Trouble Trouble
	Also    string // of SeveralHeader: the files of the headers
	Err     error  // of Unreadable
}

func (e *FolderError) Unwrap() error { return e.Err }

func (e *FolderError) Error() string {
	f := shown(e.Folder)
	switch e.Trouble {
	case NoSuchFolder:
		return fmt.Sprintf("there is no folder %s", f)
	case EmptyFolder:
		return fmt.Sprintf("the folder %s holds no file that ends in .hcl", f)
	case NoHeader:
		return fmt.Sprintf("no file in %s has a %s block, so it is no %s", f, e.For, e.For)
	case SeveralHeader:
		return fmt.Sprintf("%s has more than one %s block: %s", f, e.For, shown(e.Also))
	case WrongFolder:
		if e.For == "recipe" {
			return fmt.Sprintf("%s is a shop; a recipe is wanted here", f)
		}
		return fmt.Sprintf("%s is a recipe; a shop is wanted here", f)
	case SameFolder:
		return fmt.Sprintf("%s is given as recipe and as shop: a shop has a folder of its own", f)
	case SeveralShops:
		return "one build is checked against one shop at a time"
	}
	return fmt.Sprintf("the folder %s cannot be read: %v", f, e.Err)
}

// NoShop in place of a shop's folder says that the build is to be read without one.
const NoShop = "-"

// Load reads one recipe, and one shop or none. Without a shop, or with "", the first one
// that the recipe names is taken; with NoShop none is, and every fact of it is not known.
//
// The error is a *FolderError: there was nothing to read. What is wrong within the files
// comes as findings. After one that leaves a file unreadable nothing else is judged, and
// the build is marked Unread: it holds the sources and nothing more.
func Load(files text.Folder, recipe string, shops ...string) (*model.Build, []finding.Finding, error) {
	shop := ""
	switch len(shops) {
	case 0:
	case 1:
		shop = shops[0]
	default:
		return nil, nil, &FolderError{Folder: recipe, For: "recipe", Trouble: SeveralShops}
	}
	r := &reader{files: files, sources: &text.Sources{}}
	if err := r.load(recipe, shop); err != nil {
		return nil, nil, err
	}
	build := r.build()
	finding.Sort(r.finds)
	return build, r.finds, nil
}

// Shops lists the folders of the shops that a recipe names, the usual one first.
func Shops(files text.Folder, recipe string) ([]string, error) {
	r := &reader{files: files, sources: &text.Sources{}}
	f, err := r.folder(recipe, "recipe")
	if err != nil || r.unread {
		return nil, err
	}
	var out []string
	for _, named := range r.namedShops(f) {
		out = append(out, named.folder)
	}
	return out, nil
}

// reader holds one reading.
type reader struct {
	files   text.Folder
	sources *text.Sources
	recipe  *folder
	shop    *folder // nil: none
	finds   []finding.Finding
	said    map[saidKey]bool
	unread  bool    // a file could not be read: nothing else is judged
	stack   []*slot // attributes that are being worked out
}

// folder is a recipe or a shop with its blocks.
type folder struct {
	path   string
	role   string // "recipe" or "shop"
	unit   drawing.Unit
	header *node
	tops   []*node // every block at the top of its files, the header included
	found  index   // the same by kind and label
	given  map[string]*slot
}

func (r *reader) load(recipe, shop string) (err error) {
	if r.recipe, err = r.folder(recipe, "recipe"); err != nil {
		return err
	}
	if shop == "" {
		var at text.Place
		if shop, at = r.usualShop(); shop == "" {
			return nil
		}
		if r.shop, err = r.folder(shop, "shop"); err != nil {
			r.say(slipUnknownSupply, at, "the recipe's usual shop cannot be read: "+err.Error())
			r.shop = nil
		}
		return nil
	}
	if shop == NoShop {
		return nil
	}
	if path.Clean(shop) == path.Clean(recipe) {
		return &FolderError{Folder: shop, For: "shop", Trouble: SameFolder}
	}
	r.shop, err = r.folder(shop, "shop")
	return err
}

type namedShop struct {
	folder string
	at     text.Place
}

// namedShops reads the shops that a recipe's header names, as paths from where the recipe
// folder's own path starts.
func (r *reader) namedShops(f *folder) []namedShop {
	if f.header == nil {
		return nil
	}
	s := f.header.named["shop"]
	if s == nil {
		return nil
	}
	v := r.read(s).v
	list := []model.Value{v}
	if v.Kind == model.List {
		list = v.List
	}
	var out []namedShop
	for _, v := range list {
		switch {
		case v.Kind != model.Text:
		case path.IsAbs(v.Text) || strings.Contains(v.Text, `\`) || strings.Contains(v.Text, ":"):
			r.say(slipWrongValue, v.At, fmt.Sprintf("a shop is named by the way to its folder from this one, such as \"../shops/attic\"; %s is not that", quoted(v.Text)))
		case path.Join(f.path, v.Text) == path.Clean(f.path):
			r.say(slipWrongValue, v.At, "a shop has a folder of its own; this names the folder of the recipe")
		default:
			out = append(out, namedShop{path.Join(f.path, v.Text), v.At})
		}
	}
	return out
}

func (r *reader) usualShop() (string, text.Place) {
	if r.unread {
		return "", text.Place{}
	}
	named := r.namedShops(r.recipe)
	if len(named) == 0 {
		return "", text.Place{}
	}
	return named[0].folder, named[0].at
}

// folder reads the files of a folder and plants their blocks.
func (r *reader) folder(dir, role string) (*folder, error) {
	names, odd, err := r.files.List(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, &FolderError{Folder: dir, For: role, Trouble: NoSuchFolder}
	case err != nil:
		return nil, &FolderError{Folder: dir, For: role, Trouble: Unreadable, Err: err}
	case len(names) == 0 && len(odd) == 0:
		return nil, &FolderError{Folder: dir, For: role, Trouble: EmptyFolder}
	}
	f := &folder{path: dir, role: role}
	for _, name := range odd {
		r.say(slipNotAFile, text.Place{File: name}, fmt.Sprintf("%s is no plain file and is not read", shown(name)))
	}
	before := r.unread
	names = slices.Clone(names)
	slices.Sort(names)
	for _, name := range names {
		body, ok := r.parseFile(name)
		if !ok {
			r.unread = true
			continue
		}
		r.plantFile(f, name, body)
	}
	if r.unread && !before {
		return f, nil
	}
	if err := r.findHeader(f); err != nil {
		return nil, err
	}
	return f, nil
}

// findHeader finds the one header of a folder and reads its units.
func (r *reader) findHeader(f *folder) error {
	var heads []*node
	other := false
	for _, n := range f.tops {
		switch {
		case n.kind.Name == f.role:
			heads = append(heads, n)
		case n.kind.Where == "header":
			other = true
		}
	}
	switch {
	case len(heads) == 0 && other:
		return &FolderError{Folder: f.path, For: f.role, Trouble: WrongFolder}
	case len(heads) == 0:
		return &FolderError{Folder: f.path, For: f.role, Trouble: NoHeader}
	case len(heads) > 1:
		var at []string
		for _, h := range heads {
			m := r.sources.Mark(h.item.At)
			at = append(at, fmt.Sprintf("%s line %d", m.File, m.Line))
		}
		return &FolderError{Folder: f.path, For: f.role, Trouble: SeveralHeader, Also: all(at)}
	}
	f.header = heads[0]
	if s := f.header.named["units"]; s != nil && r.read(s).v.Text == "in" {
		f.unit = drawing.Inch
	}
	for _, n := range f.tops {
		n.setUnit(f.unit)
	}
	return nil
}
