package drawing

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// ParseThread reads a thread designation: "M6", "M6x0.75 LH", "Tr8x1.5", "1/4-20 UNC",
// "#10-32 UNF", "3/8-16 BSW", "3/8 BSW", "2 BA", "G1/4".
//
// A diameter in inches with threads per inch and no series ("1.238-20") is read as Unified,
// and a whole number from 0 to 12 before 24 threads or more ("10-32") as a numbered size:
// both are common practice where nothing else is written.
func ParseThread(s string) (Thread, error) {
	r, err := begin(s)
	if err != nil {
		return Thread{}, err
	}
	written := r.all
	core, left, err := hand(r.all)
	if err != nil {
		return Thread{}, err
	}
	if core == "" {
		return Thread{}, fmt.Errorf("%s: a hand, but no thread", said(written))
	}
	r.all = core
	t, err := r.thread()
	if err != nil {
		return Thread{}, err
	}
	t.Left, t.Written = left, strings.TrimSpace(s)
	return t, nil
}

// hand takes "LH", "left hand", "RH" off the end.
func hand(s string) (core string, left bool, err error) {
	low := asciiLower(s)
	for _, h := range []struct {
		word string
		left bool
	}{{"lh", true}, {"left hand", true}, {"left-hand", true}, {"rh", false}, {"right hand", false}, {"right-hand", false}} {
		head, ok := strings.CutSuffix(low, h.word)
		if !ok {
			continue
		}
		trimmed := strings.TrimRight(head, " ")
		trimmed = strings.TrimSuffix(trimmed, "-")
		if trimmed == head && head != "" {
			return "", false, fmt.Errorf("%s: write a blank before the hand", said(s))
		}
		return strings.TrimRight(s[:len(trimmed)], " "), h.left, nil
	}
	return s, false, nil
}

// asciiLower keeps the number of bytes, so that places in one text are places in the other.
func asciiLower(s string) string {
	b := []byte(s)
	for n, c := range b {
		if c >= 'A' && c <= 'Z' {
			b[n] = c + 'a' - 'A'
		}
	}
	return string(b)
}

func (r *reader) thread() (Thread, error) {
	first := r.letters()
	switch strings.ToLower(first) {
	case "m":
		return r.metric("M")
	case "tr":
		return r.metric("Tr")
	case "g":
		return r.pipe("BSP")
	case "r", "rp", "rc":
		return r.pipe("BSPT")
	case "ba":
		r.blank()
		return r.numberBA(r.digits())
	case "":
		return r.inchThread()
	}
	return Thread{}, r.noThread()
}

func (r *reader) noThread() error {
	return fmt.Errorf("%s: not a thread as drawings write it, such as M6, M6x0.75 LH, 1/4-20 UNC, 3/8 BSW or 2 BA", said(r.all))
}

// metric reads what follows "M" or "Tr": "6", "6x0.75", "6 x 0.75".
func (r *reader) metric(series string) (Thread, error) {
	r.blank()
	d, err := r.unsigned()
	if err != nil {
		return Thread{}, err
	}
	t := Thread{Series: series, Diameter: float(d.value)}
	if d.decimals < 0 || t.Diameter <= 0 || t.Diameter > 1000 {
		return Thread{}, fmt.Errorf("%s: not a diameter in mm", said(r.all))
	}
	r.blank()
	if r.take("x") || r.take("X") || r.take("*") {
		r.blank()
		p, err := r.unsigned()
		if err != nil {
			return Thread{}, err
		}
		t.Pitch = float(p.value)
		if p.decimals < 0 || t.Pitch <= 0 || t.Pitch >= t.Diameter {
			return Thread{}, fmt.Errorf("%s: a pitch of %s on a diameter of %s", said(r.all), plain(t.Pitch), plain(t.Diameter))
		}
		r.blank()
	}
	switch rest := r.rest(); {
	case rest == "":
		return t, nil
	case rest[0] == '-':
		return Thread{}, fmt.Errorf("%s: the class %s is written on its own: class = %q", said(r.all), said(rest[1:]), rest[1:])
	case rest[0] == '(' || rest[0] == 'P':
		return Thread{}, fmt.Errorf("%s: threads of more than one start are not read", said(r.all))
	}
	return Thread{}, r.noThread()
}

// pipe reads the size behind "G" or "R".
func (r *reader) pipe(series string) (Thread, error) {
	r.blank()
	size, v, err := r.sizeWord()
	if err != nil {
		return Thread{}, err
	}
	if !r.done() || v.Sign() <= 0 || v.Cmp(big.NewRat(20, 1)) > 0 {
		return Thread{}, r.noThread()
	}
	return Thread{Series: series, Size: size}, nil
}

func (r *reader) numberBA(digits string) (Thread, error) {
	n, err := strconv.ParseUint(digits, 10, 8)
	if err != nil || n > 25 || !r.done() {
		return Thread{}, fmt.Errorf("%s: BA threads are numbered from 0 to 25", said(r.all))
	}
	return Thread{Series: "BA", Size: strconv.FormatUint(n, 10)}, nil
}

// inchSeries are the words behind an inch size, and the series they mean.
var inchSeries = map[string]string{
	"un": "UN", "uns": "UN", "unc": "UNC", "unf": "UNF", "unef": "UNEF",
	"bsw": "BSW", "whit": "BSW", "whitworth": "BSW", "bsf": "BSF", "me": "ME", "bsb": "BSB", "brass": "BSB",
	"bsp": "BSP", "bspp": "BSP", "bspt": "BSPT", "npt": "NPT",
}

// sizeWord takes a size in inches and gives it as it is said: "1/4", "1 1/8", "1.238".
func (r *reader) sizeWord() (string, *big.Rat, error) {
	f, err := r.unsigned()
	if err != nil {
		return "", nil, err
	}
	if f.decimals >= 0 {
		return strings.TrimSuffix(f.value.FloatString(max(f.decimals, 0)), "."), f.value, nil
	}
	if w, ok := fractionWords(float(f.value)); ok {
		return w, f.value, nil
	}
	return f.value.RatString(), f.value, nil
}

// inchThread reads "1/4-20 UNC", "#10-32", "3/8 in BSW", "1/4 x 40 ME", "2 BA".
func (r *reader) inchThread() (Thread, error) {
	numbered := r.take("#")
	size, diameter, err := r.sizeWord()
	if err != nil {
		return Thread{}, r.noThread()
	}
	if !numbered {
		r.unit()
	}
	tpi, hasPitch, err := r.threadsPerInch()
	if err != nil {
		return Thread{}, err
	}
	r.blank()
	from := r.at
	word := strings.ToLower(r.letters())
	if r.blank(); !r.done() {
		return Thread{}, r.noThread()
	}
	if word == "ba" && !hasPitch && !numbered {
		return r.numberBA(size)
	}
	series, ok := inchSeries[word]
	switch {
	case word == "" && hasPitch:
		series = "UN"
	case word == "" || !ok:
		r.at = from
		return Thread{}, r.noThread()
	case (series == "UN" || series == "ME") && !hasPitch:
		return Thread{}, fmt.Errorf("%s: say its threads per inch, as in 1/4-32", said(r.all))
	}
	t := Thread{Series: series, Size: size}
	if hasPitch {
		t.Pitch = float(new(big.Rat).Quo(big.NewRat(254, 10), tpi))
	}
	unified := strings.HasPrefix(series, "UN")
	if unified && !numbered && hasPitch && isNumber(diameter) && tpi.Cmp(big.NewRat(24, 1)) >= 0 {
		numbered = true
	}
	switch {
	case numbered && (!unified || !isNumber(diameter)):
		return Thread{}, fmt.Errorf("%s: numbered sizes run from #0 to #12 and are Unified", said(r.all))
	case numbered:
		t.Size = "#" + size
	case diameter.Sign() <= 0 || diameter.Cmp(big.NewRat(40, 1)) > 0:
		return Thread{}, fmt.Errorf("%s: not a diameter in inches", said(r.all))
	case series == "BSP" || series == "BSPT" || series == "NPT": // the size is that of the pipe
	default:
		t.Diameter = float(new(big.Rat).Mul(diameter, inInches.mm))
	}
	if t.Diameter > 0 && t.Pitch >= t.Diameter {
		return Thread{}, fmt.Errorf("%s: the pitch would be %s mm on a diameter of %s mm", said(r.all), plain(t.Pitch), plain(t.Diameter))
	}
	return t, nil
}

// isNumber says whether a figure can be the number of a Unified size: 0 to 12.
func isNumber(v *big.Rat) bool { return v.IsInt() && v.Sign() >= 0 && v.Cmp(big.NewRat(12, 1)) <= 0 }

// threadsPerInch takes "-20", " x 40", "-11 1/2", "-8 tpi".
func (r *reader) threadsPerInch() (*big.Rat, bool, error) {
	from := r.at
	r.blank()
	if !r.take("-") && !r.take("x") && !r.take("X") {
		r.at = from
		return nil, false, nil
	}
	r.blank()
	f, err := r.unsigned()
	if err != nil {
		return nil, false, err
	}
	if f.value.Cmp(big.NewRat(1, 1)) < 0 || f.value.Cmp(big.NewRat(400, 1)) > 0 {
		return nil, false, fmt.Errorf("%s: not a number of threads per inch", said(r.all))
	}
	before := r.at
	r.blank()
	if strings.ToLower(r.letters()) != "tpi" {
		r.at = before
	}
	return f.value, true, nil
}

func plain(x float64) string { return strconv.FormatFloat(math.Round(x*1e4)/1e4, 'f', -1, 64) }

// String says the thread as drawings write it: "M6", "M6x0.75 LH", "1/4-20 UNC", "2 BA".
func (t Thread) String() string {
	var w string
	switch t.Series {
	case "":
		return t.Written
	case "M", "Tr":
		w = t.Series + plain(t.Diameter)
		if t.Pitch > 0 && !t.Coarse {
			w += "x" + plain(t.Pitch)
		}
	case "BA":
		w = t.Size + " BA"
	case "BSP":
		w = "G" + t.Size
	case "BSPT":
		w = "R" + t.Size
	default:
		w = t.Size
		if t.Pitch > 0 {
			w += "-" + plain(25.4/t.Pitch)
		}
		if t.Series != "UN" {
			w += " " + t.Series
		}
	}
	if t.Left {
		w += " LH"
	}
	return w
}

// form is the profile and basis of a series: threads of one form, diameter and pitch are
// one thread, whatever series it was taken from (ASME B1.1: 7/16-20 is UNF and also UN).
// The Whitworth series share theirs (BS 84).
func (t Thread) form() string {
	switch t.Series {
	case "UN", "UNC", "UNF", "UNEF":
		return "Unified"
	case "BSW", "BSF", "ME", "BSB":
		return "Whitworth"
	}
	return t.Series
}

// Same says whether two designations mean one thread: form, diameter, pitch and hand. Both
// should have their diameter and pitch from the handbook first; "M12" without a pitch is
// not known to be "M12x1.75".
func (t Thread) Same(o Thread) bool {
	if t.form() != o.form() || t.Left != o.Left || math.Abs(t.Pitch-o.Pitch) > sameThread {
		return false
	}
	if t.Diameter == 0 || o.Diameter == 0 {
		return t.Size == o.Size && t.Series == o.Series
	}
	return math.Abs(t.Diameter-o.Diameter) <= sameThread
}

// sameThread is how far two diameters or pitches may differ and be one, in mm: above the
// error of 25.4 divided by a figure, below the difference of any two threads.
const sameThread = 1e-6

// Fits says whether a screw of one thread goes into a hole of the other. The hand counts.
func (t Thread) Fits(o Thread) bool { return t.Same(o) }
