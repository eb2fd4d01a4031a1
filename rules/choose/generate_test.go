package choose_test

import (
	"fmt"
	"math/rand"
	"strings"

	"fettle/schema/text"
)

// The generator writes recipes like those of a small workshop: milled blocks with bored,
// tapped and plain holes, a slot and a slit; turned posts with a spigot, a groove, a thread
// and a hole on the axis; plain pins. They are to be made in the shop of recipes/shops/club.
// What is written depends on the seed alone. Lengths are mm.

// writer collects the lines of one file.
type writer struct {
	strings.Builder
	r *rand.Rand
}

func (w *writer) line(depth int, format string, args ...any) {
	w.WriteString(strings.Repeat("  ", depth))
	fmt.Fprintf(w, format, args...)
	w.WriteByte('\n')
}

// pick is one of several.
func pick[T any](w *writer, of ...T) T { return of[w.r.Intn(len(of))] }

// size is a whole multiple of half a millimetre from lo to hi.
func (w *writer) size(lo, hi int) float64 { return float64(lo) + float64(w.r.Intn(2*(hi-lo)+1))/2 }

// operation makes a target; more are further lines of the block.
func (w *writer) operation(makes string, more ...string) {
	w.line(2, "operation {")
	w.line(3, "makes = %s", makes)
	for _, m := range more {
		w.line(3, "%s", m)
	}
	w.line(2, "}")
}

// operationsOf says how many operations the parts of the generator have.
const (
	milledOperations = 20
	turnedOperations = 10
	pinOperations    = 2
)

// milled writes a block with twenty operations in two holdings.
func (w *writer) milled(name string) {
	length, width, height := w.size(44, 70), w.size(20, 24), w.size(12, 14)
	w.line(0, "part %q {", name)
	w.line(1, "material = \"brass\"")
	w.line(1, "length = %g\n  width = %g\n  height = %g\n  edges = 0.2", length, width, height)
	w.line(1, "blank {\n    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }\n  }")
	screw := pick(w, [2]string{"M3", "2.5"}, [2]string{"M4", "3.3"}, [2]string{"M5", "4.2"})
	ream := pick(w, 4, 5, 6)
	var top, front []string
	ops := func(to *[]string, f func()) {
		var whole strings.Builder
		whole, w.Builder = w.Builder, strings.Builder{}
		f()
		*to = append(*to, w.String())
		w.Builder = whole
	}
	// From the top: five holes in a row, drilled; two of them reamed, two threaded; a slot.
	for i := range 5 {
		x := 5 + float64(i)*(length-10)/4
		w.line(1, "hole \"t%d\" {\n    into = \"top\"\n    at = { left = %.1f, front = %.1f }", i, x, width/2)
		hole := fmt.Sprintf("hole.t%d", i)
		switch {
		case i < 2:
			w.line(2, "diameter = \"%d H7\"\n  }", ream)
			ops(&top, func() { w.operation(hole, fmt.Sprintf("to = %.1f", float64(ream)-0.2)) })
			ops(&top, func() { w.operation(hole, `by = "reaming"`) })
		case i < 4:
			w.line(2, "depth = \"through\"\n    thread = { size = %q }\n  }", screw[0])
			ops(&top, func() { w.operation(hole) })
			ops(&top, func() { w.operation(hole + ".thread") })
		default:
			w.line(2, "diameter = %.1f\n    depth = %g\n  }", 2+w.size(0, 2), height-4)
			ops(&top, func() { w.operation(hole, `by = "spotting"`) })
			ops(&top, func() { w.operation(hole) })
		}
	}
	// From the front: four holes, two of them threaded, one deep and slender.
	for i := range 5 {
		x := 9.5 + float64(i)*(length-18)/5
		w.line(1, "hole \"f%d\" {\n    into = \"front\"\n    at = { left = %.1f, bottom = %.1f }", i, x, height/2)
		hole := fmt.Sprintf("hole.f%d", i)
		if i < 4 {
			w.line(2, "depth = %g\n    thread = { size = \"M3\" }\n  }", w.size(6, 8))
			ops(&front, func() { w.operation(hole) })
			ops(&front, func() { w.operation(hole+".thread", `tool = tap.metric`) })
		} else {
			w.line(2, "diameter = 2.2\n    depth = %g\n  }", w.size(5, 9))
			ops(&front, func() { w.operation(hole, `by = "spotting"`) })
			ops(&front, func() { w.operation(hole) })
		}
	}
	w.line(1, "setup \"top\" {\n    hold = vise.machine\n    up = \"top\"\n    jaws = \"back\"")
	w.WriteString(strings.Join(top, ""))
	w.line(2, "deburr {}\n    measure {\n      size = hole.t0.diameter\n    }\n  }")
	w.line(1, "setup \"front\" {\n    hold = vise.machine\n    up = \"front\"\n    jaws = \"top\"")
	w.WriteString(strings.Join(front, ""))
	w.line(2, "deburr {}\n  }\n}\n")
}

// turned writes a post from the bar with ten operations in two holdings.
func (w *writer) turned(name string) {
	bar := pick(w, 20, 25)
	length, neck := w.size(24, 34), w.size(8, 12)
	hole := pick(w, 3, 4, 5)
	w.line(0, "part %q {", name)
	w.line(1, "material = \"free-cutting steel\"\n  diameter = %d\n  length = %g\n  edges = 0.2", bar, length)
	w.line(1, "blank {\n    bar = true\n  }\n  face \"outside\" {\n    raw = true\n  }")
	w.line(1, "outside \"neck\" {\n    from = %g\n    to = %g\n    diameter = \"12 h9\"\n  }", length-neck-6, length)
	w.line(1, "groove \"relief\" {\n    on = outside.neck\n    from = %g\n    to = %g\n    diameter = 10\n  }", length-neck-6, length-neck-3)
	w.line(1, "chamfer \"lead\" {\n    on = [outside.neck, face.right]\n    size = 1\n  }")
	w.line(1, "hole \"axis\" {\n    into = \"right\"\n    diameter = \"%d H8\"\n    depth = %g\n    bottom = \"point\"\n  }", hole, w.size(6, 10))
	w.line(1, "setup \"from the bar\" {\n    end = \"left\"\n    stick_out = %g", length+8)
	w.operation("face.right")
	w.operation("hole.axis", `by = "spotting"`)
	w.operation("hole.axis", fmt.Sprintf("to = %.1f", float64(hole)-0.2), "down_to = 13")
	w.operation("hole.axis", `by = "reaming"`)
	w.operation("outside.neck", "leaves = 0.5")
	w.operation("outside.neck")
	w.operation("groove.relief")
	w.operation("chamfer.lead")
	w.line(2, "deburr {}\n    measure {\n      size = outside.neck.diameter\n    }")
	w.operation("face.left", `by = "parting"`, "leaves = 0.3")
	w.line(1, "}\n  setup \"second end\" {\n    end = \"right\"\n    grip = %g", neck+2)
	w.operation("face.left")
	w.line(2, "deburr {}\n  }\n}\n")
}

// pin writes a pin with two operations.
func (w *writer) pin(name string) {
	w.line(0, "part %q {", name)
	w.line(1, "material = \"silver steel\"\n  diameter = 5\n  length = %g", w.size(30, 80))
	w.line(1, "blank {\n    over = { left = 1, right = 1 }\n  }\n  face \"outside\" {\n    raw = true\n  }")
	for _, end := range [][2]string{{"left", "right"}, {"right", "left"}} {
		w.line(1, "setup \"%s held\" {\n    end = %q\n    stick_out = 10", end[0], end[0])
		w.operation("face." + end[1])
		w.line(2, "deburr {}\n  }")
	}
	w.line(0, "}\n")
}

// generated writes a recipe of at least so many operations under r, one file a part.
func generated(seed int64, operations int) (files text.Archive, written int) {
	files = text.Archive{"r/head.hcl": []byte("recipe \"made up\" {\n  units = \"mm\"\n  general = \"ISO 2768-m\"\n}\n")}
	r := rand.New(rand.NewSource(seed))
	for i := 0; written < operations; i++ {
		w := &writer{r: r}
		name := fmt.Sprintf("p%04d", i)
		switch {
		case i%3 == 0 && operations-written > turnedOperations:
			w.milled(name)
			written += milledOperations
		case i%3 == 1 || operations-written > pinOperations:
			w.turned(name)
			written += turnedOperations
		default:
			w.pin(name)
			written += pinOperations
		}
		files["r/"+name+".hcl"] = []byte(w.String())
	}
	return files, written
}

// bytesOf is the size of the files below a folder.
func bytesOf(files text.Archive, folder string) (n int) {
	for name, b := range files {
		if strings.HasPrefix(name, folder) {
			n += len(b)
		}
	}
	return n
}
