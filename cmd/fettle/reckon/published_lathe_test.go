package reckon

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/schema/printed"
	"fettle/schema/text"
)

// The printed trains, approximations and ratios of screwcutting come out of the command.
func TestPublishedTrains(t *testing.T) {
	checked := 0
	for _, r := range printed.Rows(t, "screwcut.tsv", 5) {
		if r[0] != "train" && r[0] != "approximation" {
			continue
		}
		f := strings.Split(r[1], "; ")
		wheels := strings.NewReplacer(" x ", ",", "/", ",").Replace(f[2])
		d := asked(t, text.Archive{}, "screwcut", f[1], "--screw", f[0], "--wheels", wheels, "--within", "10000")
		ppm, within := 0.0, 1e-9
		if r[0] == "approximation" {
			ppm, within = printed.Figures(t, r[2])[0], printed.Figures(t, r[3])[0]
		}
		if got := d.valued(t, "error"); math.Abs(got-ppm) > within || d.Answer != "yes" {
			t.Errorf("%s: %v ppm, printed %v in %s", r[1], got, ppm, r[4])
		}
		checked++
	}
	if checked != 33+23 {
		t.Errorf("%d rows checked", checked)
	}
}

// The printed set-overs, angles, sine bars, stacks and measurements over rollers come out of the command.
func TestPublishedTapers(t *testing.T) {
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "taper.tsv", 5) {
		in := strings.Fields(r[1])
		var args []string
		value, scale := "", 1.0
		switch r[0] {
		case "set-over":
			in := printed.Figures(t, r[1])
			args, value = []string{fmt.Sprint(12*(in[0]-in[1])/in[2], " in/ft"), "--whole", fmt.Sprint(in[3])}, "set-over"
		case "half angle of ends":
			args, value = []string{"--ends", in[0] + "," + in[1], "--along", in[2]}, "half angle"
		case "taper of angle":
			args, value = []string{in[0] + " deg"}, "on diameter"
		case "half of foot":
			args, value = []string{in[0] + " in/ft"}, "half angle"
		case "slide from face":
			args, value = []string{in[0] + " deg", "--zero", "face"}, "top slide"
		case "sine bar":
			if in[0] == "5" { // inches
				in[0], scale = "127", 25.4
			}
			args, value = []string{in[1] + " deg", "--sine", in[0]}, "stack"
		case "stack":
			args, value = []string{"--stack", in[1], "--slips", in[0]}, "blocks"
			if in[0][0] == 'E' {
				args = append(args, "--units", "in")
			}
			if in[2] != "0" {
				args = append(args, "--wear", in[2])
			}
		case "plug":
			args, value = []string{"--plug", strings.Join(in, ",")}, "included angle"
		case "ring":
			args, value = []string{"--ring", strings.Join(in, ",")}, "half angle"
		case "male dovetail", "female dovetail":
			args, value = []string{in[1] + " deg", "--" + strings.Fields(r[0])[0], in[0] + "," + in[2]}, r[0]
		default:
			continue
		}
		counts[r[0]]++
		d := asked(t, text.Archive{}, append([]string{"taper"}, args...)...)
		if got := d.valued(t, value) / scale; math.Abs(got-printed.Figure(t, r[2])) > printed.Figure(t, r[3])+1e-9 {
			t.Errorf("%s %s: %v, printed %s in %s", r[0], r[1], got, r[2], r[4])
		}
	}
	if counts["stack"] != 17 || counts["set-over"] != 5 || counts["sine bar"] != 7 || counts["half of foot"] != 6 || counts["male dovetail"] != 3 {
		t.Errorf("rows checked: %v", counts)
	}
}

// The printed chords, polygons, arcs and tangents come out of the command.
func TestPublishedGeometry(t *testing.T) {
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "geometry.tsv", 5) {
		in := strings.Fields(r[1])
		var args, values []string
		switch r[0] {
		case "chord":
			args, values = []string{"circle", "--holes", in[0], "--diameter", in[1]}, []string{"chord"}
		case "polygon":
			args, values = []string{"polygon", "--sides", in[0], "--round", in[1]}, []string{"across", "side", "depth"}
		case "round for flats":
			args, values = []string{"polygon", "--sides", in[0], "--across", in[1]}, []string{"round"}
		case "round for bar":
			args, values = []string{"bar", "--widths", in[0] + "," + in[1]}, []string{"round"}
		case "radius of arc":
			args, values = []string{"arc", "--chord", in[0], "--height", in[1]}, []string{"radius"}
		case "chord of height":
			args, values = []string{"arc", "--radius", in[0], "--height", in[1]}, []string{"chord"}
		case "flat":
			args, values = []string{"flat", "--diameter", in[0], "--width", in[1]}, []string{"depth"}
		case "tangent":
			args, values = []string{"tangent", "--radii", in[0] + "," + in[1], "--centres", in[2]}, []string{"outside", "between"}
		case "fillet", "fillet touches":
			args, values = []string{"corner", "--angle", in[0], "--radius", in[1]}, []string{"touches", "off the corner"}
		case "holes":
			args, values = []string{"circle", "--holes", in[0], "--diameter", in[1], "--first", in[2]}, []string{"x 1", "y 1", "x 2", "y 2", "x 3", "y 3"}
		default:
			continue
		}
		counts[r[0]]++
		d := asked(t, text.Archive{}, append([]string{"geometry"}, args...)...)
		for n, want := range printed.Figures(t, r[2]) {
			if n >= len(values) {
				break
			}
			if got := d.valued(t, values[n]); math.Abs(got-want) > printed.Figure(t, r[3])+1e-9 {
				t.Errorf("%s %s: %s %v, printed %v in %s", r[0], r[1], values[n], got, want, r[4])
			}
		}
	}
	if counts["chord"] != 12 || counts["polygon"] != 3 || counts["round for flats"] != 6 || counts["tangent"] != 2 || counts["holes"] != 2 {
		t.Errorf("rows checked: %v", counts)
	}
}

// An answer takes 10 ms at the most, one with three pairs of a full rack less than two seconds: see
// DEVELOPERS.md for what was measured.
func BenchmarkScrewcut(b *testing.B) {
	for b.Loop() {
		ran(b, text.Archive{}, "screwcut", "M8", "--screw", "8 tpi", "--wheels", "20,20,25,30,35,38,40,45,50,55,60,63,65,70,75,80")
	}
}

func BenchmarkTaper(b *testing.B) {
	for b.Loop() {
		ran(b, text.Archive{}, "taper", "12.5 deg", "--sine", "100", "--slips", "M88")
	}
}

func BenchmarkGeometry(b *testing.B) {
	for b.Loop() {
		ran(b, text.Archive{}, "geometry", "circle", "--holes", "60", "--diameter", "80")
	}
}
