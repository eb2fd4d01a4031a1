package solid

import (
	"fettle/schema/printed"

	"bufio"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// known is one piece of testdata/solid/pieces.tsv or mixed.tsv with what the reference says of it. Source:
// Open CASCADE Technology 7.6.3, a general-purpose modelling kernel; the script and the
// program that made the file stand beside it.
type known struct {
	number string
	words  []string // blank and takes as written
	piece  *Piece
	volume float64
	rays   []knownRay
	tools  []knownTool
}

type knownRay struct {
	from, dir Vec
	spans     []float64
	row       string
}

type knownTool struct {
	t             Turned
	m             Move
	overlap, dist float64
	row           string
}

// shapeOf reads a shape as the reference writes it.
func shapeOf(t *testing.T, s string) Shape {
	t.Helper()
	kind, rest, _ := strings.Cut(s, " ")
	f := printed.Figures(t, rest)
	switch kind {
	case "box":
		return Box(Vec(f[:3]), Vec(f[3:6]))
	case "ball":
		return Ball(Vec(f[:3]), f[3])
	case "column":
		n := int(f[0])
		d := Vec(f[1+3*n : 4+3*n])
		w := d.Unit()
		u := square(w)
		frame := Frame{At: Vec(f[1:4]), U: u, V: w.Cross(u)}
		var outline [][2]float64
		for i := range n {
			v := Vec(f[1+3*i : 4+3*i]).Sub(frame.At)
			outline = append(outline, [2]float64{v.Dot(frame.U), v.Dot(frame.V)})
		}
		s, err := frame.Column(outline, d.Len())
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	u := Vec(f[3:6]).Unit()
	return Cone(Vec(f[:3]), Vec(f[:3]).Add(u.Times(f[6])), f[7], f[8])
}

func readKnown(t *testing.T) []*known {
	t.Helper()
	all := append(readPieces(t, "pieces.tsv"), readPieces(t, "mixed.tsv")...)
	if len(all) < 300 {
		t.Fatalf("only %d pieces to compare with", len(all))
	}
	return all
}

func readPieces(t *testing.T, name string) []*known {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "testdata", "solid", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var all []*known
	for in := bufio.NewScanner(file); in.Scan(); {
		c := strings.Split(in.Text(), "\t")
		if strings.HasPrefix(c[0], "#") {
			continue
		}
		if c[0] == "piece" {
			all = append(all, &known{number: name + " " + c[1]})
			continue
		}
		k := all[len(all)-1]
		switch c[0] {
		case "blank":
			k.piece = Raw(shapeOf(t, c[1]))
			k.words = append(k.words, c[1])
		case "take":
			m := Removal{Take: shapeOf(t, c[1]), By: fmt.Sprint("take ", len(k.words))}
			words := c[1]
			for _, l := range c[2:] {
				m.Less = append(m.Less, shapeOf(t, l))
				words += "\n" + l + "\ncut"
			}
			k.piece = k.piece.Cut(m)
			k.words = append(k.words, words)
		case "volume":
			k.volume = printed.Figures(t, c[1])[0]
		case "ray":
			f := printed.Figures(t, c[1])
			k.rays = append(k.rays, knownRay{Vec(f[:3]), Vec(f[3:6]), printed.Figures(t, c[2]), in.Text()})
		case "tool":
			f := printed.Figures(t, c[1])
			k.tools = append(k.tools, knownTool{
				Turned{f[0], f[1], f[2], f[3], "tool"}, Move{Vec(f[4:7]), Vec(f[7:10])},
				printed.Figures(t, c[2])[0], printed.Figures(t, c[3])[0], in.Text()})
		default:
			t.Fatalf("unknown row %q", in.Text())
		}
	}
	return all
}

func TestVolumesAgainstReference(t *testing.T) {
	worst := 0.0
	for _, k := range readKnown(t) {
		got := k.piece.Volume()
		off := math.Abs(got-k.volume) / math.Abs(k.volume)
		if worst = max(worst, off); off > 1e-4 {
			t.Errorf("piece %s: volume %.6f, reference %.6f, off by %.2g", k.number, got, k.volume, off)
		}
	}
	t.Logf("worst relative error %.2g", worst)
}

func TestRaysAgainstReference(t *testing.T) {
	n, worst := 0, 0.0
	for _, k := range readKnown(t) {
		for _, r := range k.rays {
			n++
			got := k.piece.Line(r.from, r.dir)
			want := cleanSpans(r.spans)
			if len(got) != len(want) {
				t.Errorf("piece %s: %v, reference: %s", k.number, got, r.row)
				continue
			}
			for i := range got {
				off := max(math.Abs(got[i].A-want[i].A), math.Abs(got[i].B-want[i].B))
				if worst = max(worst, off); off > 1e-5 {
					t.Errorf("piece %s: %v, reference: %s", k.number, got, r.row)
				}
			}
		}
	}
	t.Logf("%d rays, worst error %.2g mm", n, worst)
}

// cleanSpans joins the reference's spans that touch and drops those shorter than a Grain, as
// Line does.
func cleanSpans(f []float64) []Span {
	var s scan
	for i := 0; i+1 < len(f); i += 2 {
		if f[i+1]-f[i] >= Grain {
			s.add(Span{A: f[i], B: f[i+1]})
		}
	}
	return s.out
}

func TestToolsAgainstReference(t *testing.T) {
	meet, clear, touch := 0, 0, 0
	for _, k := range readKnown(t) {
		for _, x := range k.tools {
			_, got := k.piece.Meets(x.t, x.m)
			switch {
			case x.overlap > 0.01 && !got:
				t.Errorf("piece %s: clear, reference: %s", k.number, x.row)
			case x.overlap < 1e-9 && x.dist > 2*Grain && got:
				t.Errorf("piece %s: meets, reference: %s", k.number, x.row)
			case x.overlap > 0.01:
				meet++
			case x.dist > 2*Grain:
				clear++
				n := k.piece.Gap(x.t, x.m)
				low := min(x.dist, gapCap)/math.Sqrt2 - 2*gapStep
				if n.Meets || n.Gap > x.dist+Grain || n.Gap < low {
					t.Errorf("piece %s: gap %+v, reference: %s", k.number, n, x.row)
				}
			default:
				touch++
			}
		}
	}
	if meet < 50 || clear < 50 {
		t.Errorf("too few to mean anything: %d meet, %d clear, %d touch", meet, clear, touch)
	}
	t.Logf("%d meet, %d clear, %d touch", meet, clear, touch)
}

// TestReferenceLive builds the reference and asks it again about ten pieces.
func TestReferenceLive(t *testing.T) {
	program := buildReference(t)
	all := readKnown(t)
	for i := 0; i < len(all); i += len(all) / 10 {
		k := all[i]
		var in strings.Builder
		for j, w := range k.words {
			in.WriteString(w + "\n")
			if j > 0 {
				in.WriteString("cut\n")
			}
		}
		in.WriteString("vol\n")
		cmd := exec.Command(program)
		cmd.Stdin = strings.NewReader(in.String())
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		want := printed.Figures(t, string(out))[0]
		if got := k.piece.Volume(); math.Abs(got-want) > 1e-4*want {
			t.Errorf("piece %s: volume %.6f, reference now %.6f", k.number, got, want)
		}
	}
}

// buildReference compiles the reference. It skips where that cannot be done, and fails where
// the surroundings promise that it can (CI=true).
func buildReference(t *testing.T) string {
	t.Helper()
	skip := t.Skipf
	if os.Getenv("CI") == "true" {
		skip = t.Fatalf
	}
	const include = "/usr/include/opencascade"
	if _, err := os.Stat(include); err != nil {
		skip("the reference is not compared live: the headers of Open CASCADE Technology are not installed (Debian: libocct-modeling-algorithms-dev, libocct-modeling-data-dev, libocct-foundation-dev, libocct-visualization-dev)")
	}
	gxx, err := exec.LookPath("g++")
	if err != nil {
		skip("the reference is not compared live: no g++")
	}
	program := filepath.Join(t.TempDir(), "reference")
	args := []string{"-w", "-O0", filepath.Join("..", "..", "testdata", "solid", "reference.cpp"), "-o", program, "-I" + include}
	for _, l := range []string{"TKernel", "TKMath", "TKG2d", "TKG3d", "TKGeomBase", "TKBRep", "TKGeomAlgo", "TKTopAlgo", "TKPrim", "TKBO"} {
		args = append(args, "-l"+l)
	}
	if out, err := exec.Command(gxx, args...).CombinedOutput(); err != nil {
		skip("the reference is not compared live, it does not build: %v\n%s", err, out[max(0, len(out)-1500):])
	}
	return program
}
