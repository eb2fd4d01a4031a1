// Package hostile asks functions what no workshop would ask them: figures that are no number,
// infinite, nought, below nought, absurdly large or small, empty lists and empty words. Tests
// alone use it.
//
// Every exported function of a package stands in a list with arguments that it answers. Each
// figure among these, also within structs and lists, is then put out of all reason, one at a
// time, and some with another. Three things are held:
//
//   - nothing panics, whatever is asked;
//   - what comes without an error (and without a false) holds no figure that is none;
//   - a figure that is not a number is refused, by an error that names it and its range, or by a
//     false; where there is an error, so is one that is infinite or larger than anything.
//
// A bare formula has no way to refuse. Of it is held that finite figures give finite ones, or no
// number where it is undefined, and that out of what is no number no figure is made but nought.
// Its comment must say so.
package hostile

import (
	"fmt"
	"math"
	"math/big"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// Call is a function of the package under test and arguments that it answers.
type Call struct {
	Name string // as it is exported; Type.Method for a method, whose receiver is the first argument
	Func any
	With []any

	// Free are arguments of which a figure out of reason need not be refused, each by the
	// way to it, as failures print it, and each with its reason beside it.
	Free []string

	// Undefined says that the function is a bare formula that gives no number where its figures are
	// out of its range, and that its comment says so.
	Undefined bool

	// Endless says that the comment gives an infinite figure its meaning.
	Endless bool
}

var (
	floats = []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e300, -1e300, 5e-324, 1e9}
	ints   = []int64{0, -1, 1_000_000_007, math.MaxInt64, math.MinInt64}
	words  = []string{"", "\x00", "no such thing", strings.Repeat("9", 400)}
)

// Calls makes every call, once as it stands and once for each figure put out of reason, and holds
// that no exported function of the package in the present folder is left out, save those named in
// without, which take no figures.
func Calls(t *testing.T, calls []Call, without ...string) {
	t.Helper()
	for _, name := range exported(t, ".") {
		if !slices.Contains(without, name) && !slices.ContainsFunc(calls, func(c Call) bool { return c.Name == name }) {
			t.Errorf("%s is exported and not asked", name)
		}
	}
	for _, c := range calls {
		t.Run(c.Name, func(t *testing.T) {
			if answer := c.ask(c.arguments()); !answer.given && !c.asks() || answer.odd != "" || answer.panics != "" {
				t.Fatalf("as it stands: %+v", answer)
			}
			for _, way := range c.ways() {
				if fault := c.fault(way); fault != "" {
					t.Errorf("%s: %s", way.said, fault)
				}
			}
			c.together(t)
		})
	}
}

// fault makes one call with one figure put out of reason, and says what is wrong with what comes
// of it; "" where nothing is.
func (c Call) fault(w way) string {
	args := c.arguments()
	w.put(args)
	answer := c.ask(args)
	switch {
	case answer.panics != "":
		return "panics: " + answer.panics
	case c.Endless && !w.none && answer.odd != "" && answer.odd != "NaN":
		return ""
	case answer.err == "" && answer.odd != "" && !(c.bare() && (w.far || c.Undefined && answer.odd == "NaN")):
		return "gives " + answer.odd
	case strings.Contains(answer.err, "%!"):
		return "a spoilt sentence: " + answer.err
	case w.word != "" && answer.err != "" && !(strings.Contains(answer.err, w.word) && strings.ContainsAny(answer.err, "0123456789")):
		return "the figure or its range is not named: " + answer.err
	case w.huge && c.errs() && answer.given && !c.Endless && !slices.Contains(c.Free, w.path):
		return "is taken, and gives " + answer.all
	case w.none && answer.given && !slices.Contains(c.Free, w.path) && (!c.bare() || answer.made && answer.odd == ""):
		return "is taken, and gives " + answer.all
	}
	return ""
}

// together puts two figures out of reason at once: nothing may panic, and what can be refused may
// hold no figure that is none. Each way is taken with one other.
func (c Call) together(t *testing.T) {
	t.Helper()
	ways := c.ways()
	for i := range ways {
		a, b := ways[i], ways[(31*i+17)%len(ways)]
		if len(a.path) < len(b.path) { // the deeper first: the other may take away what it stands in
			a, b = b, a
		}
		args := c.arguments()
		a.put(args)
		b.put(args)
		answer := c.ask(args)
		switch odd := answer.err == "" && answer.odd != "" && !c.bare() && !c.Endless; {
		case answer.panics != "":
			t.Errorf("%s, %s: panics: %s", a.said, b.said, answer.panics)
		case odd && answer.given:
			t.Errorf("%s, %s: gives %s", a.said, b.said, answer.odd)
		}
	}
}

// answer is what came of a call.
type answer struct {
	given       bool   // no error, and no false among the results
	err, panics string // what was said
	odd         string // a figure that is none
	made        bool   // a figure that is neither nought nor none
	all         string
}

func (c Call) ask(args []reflect.Value) (a answer) {
	defer func() {
		if r := recover(); r != nil {
			a = answer{panics: fmt.Sprint(r)}
		}
	}()
	a.given = true
	for _, out := range reflect.ValueOf(c.Func).Call(args) {
		if err, ok := out.Interface().(error); ok {
			a.given, a.err = false, "?"+err.Error()
		}
		if out.Kind() == reflect.Bool && !out.Bool() && !c.errs() {
			a.given = false
		}
		a.read(out, 0)
	}
	return a
}

// bare says that a function has no way to refuse: neither an error nor a yes or no.
func (c Call) bare() bool {
	f := reflect.TypeOf(c.Func)
	for i := range f.NumOut() {
		if o := f.Out(i); o.Kind() == reflect.Bool || o.Kind() == reflect.Interface {
			return false
		}
	}
	return true
}

// errs says that a function may give an error, so that a yes or no besides is part of its answer.
func (c Call) errs() bool {
	f := reflect.TypeOf(c.Func)
	return f.NumOut() > 0 && f.Out(f.NumOut()-1).Kind() == reflect.Interface
}

// asks says that a function answers yes or no and nothing else: a no is no refusal.
func (c Call) asks() bool {
	f := reflect.TypeOf(c.Func)
	return f.NumOut() == 1 && f.Out(0).Kind() == reflect.Bool
}

// read notes the figures of a result.
func (a *answer) read(v reflect.Value, deep int) {
	if deep > 12 {
		return
	}
	if v.CanInt() || v.CanUint() {
		a.made = a.made || !v.IsZero()
		a.all += fmt.Sprint(v) + " "
		return
	}
	switch v.Kind() {
	case reflect.Float64:
		x := v.Float()
		a.all += fmt.Sprint(x, " ")
		if math.IsNaN(x) || math.IsInf(x, 0) {
			a.odd = fmt.Sprint(x)
		} else if x != 0 {
			a.made = true
		}
	case reflect.String:
		a.made = a.made || v.Len() > 0
		a.all += v.String() + " "
	case reflect.Struct:
		for i := range v.NumField() {
			a.read(v.Field(i), deep+1)
		}
	case reflect.Slice, reflect.Array:
		for i := range min(v.Len(), 1000) {
			a.read(v.Index(i), deep+1)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			a.read(v.Elem(), deep+1)
		}
	case reflect.Func:
		a.walk(v, deep)
	}
}

// walk goes through the first lines of a table that is given line by line.
func (a *answer) walk(v reflect.Value, deep int) {
	if f := v.Type(); v.IsNil() || f.NumIn() != 1 || f.In(0).Kind() != reflect.Func || f.NumOut() != 0 {
		return
	}
	lines := 0
	v.Call([]reflect.Value{reflect.MakeFunc(v.Type().In(0), func(in []reflect.Value) []reflect.Value {
		for _, x := range in {
			a.read(x, deep+1)
		}
		lines++
		return []reflect.Value{reflect.ValueOf(lines < 1000)}
	})})
}

// arguments gives the arguments afresh, so that one call does not spoil the next.
func (c Call) arguments() (out []reflect.Value) {
	f := reflect.TypeOf(c.Func)
	for i, x := range c.With {
		of := f.In(min(i, f.NumIn()-1))
		if f.IsVariadic() && i >= f.NumIn()-1 {
			of = of.Elem()
		}
		v := reflect.New(of).Elem()
		if x != nil {
			v.Set(fresh(reflect.ValueOf(x).Convert(of)))
		}
		out = append(out, v)
	}
	return out
}

// fresh copies what lists and pointers lead to.
func fresh(v reflect.Value) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				out.Field(i).Set(fresh(v.Field(i)))
			}
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
			for i := range v.Len() {
				out.Index(i).Set(fresh(v.Index(i)))
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			out.Index(i).Set(fresh(v.Index(i)))
		}
	case reflect.Pointer:
		if !v.IsNil() && v.Type() != rat {
			out.Set(reflect.New(v.Type().Elem()))
			out.Elem().Set(fresh(v.Elem()))
		}
	}
	return out
}

var rat = reflect.TypeFor[*big.Rat]()

// way is one figure put out of reason.
type way struct {
	path, said string
	none       bool   // it is not a number
	far        bool   // it is not finite, or so large or small that a product leaves what a float holds
	huge       bool   // it is infinite, or larger than anything
	word       string // how a refusal writes it, of what is not finite
	put        func(args []reflect.Value)
}

// ways lists what is put out of reason.
func (c Call) ways() (out []way) {
	for i, a := range c.arguments() {
		reach := func(args []reflect.Value) reflect.Value { return args[i] }
		if i == 0 && strings.Contains(c.Name, ".") && a.Kind() == reflect.Pointer {
			a, reach = a.Elem(), func(args []reflect.Value) reflect.Value { return args[0].Elem() } // a method's receiver is there
		}
		spoil(fmt.Sprint(i), a, reach, &out)
	}
	return out
}

// spoil enters the ways for a value and all within it; reach finds it among fresh arguments.
func spoil(path string, v reflect.Value, reach func([]reflect.Value) reflect.Value, out *[]way) {
	put := func(x any, none, far bool) {
		w := way{path: path, said: fmt.Sprintf("argument %s = %.40v", path, x), none: none, far: far}
		if f, ok := x.(float64); ok {
			w.huge = math.Abs(f) > 1e200
			if none {
				w.word = "NaN"
			} else if math.IsInf(f, 0) {
				w.word = "Inf"
			}
		}
		w.put = func(args []reflect.Value) {
			to := reach(args)
			if x == nil {
				to.SetZero()
				return
			}
			to.Set(reflect.ValueOf(x).Convert(to.Type()))
		}
		*out = append(*out, w)
	}
	switch {
	case v.Type() == rat:
		put(nil, false, false)
		for _, s := range []string{"0", "-1", "1e300", "1e-300", "-1e300"} {
			r, _ := new(big.Rat).SetString(s)
			put(r, false, true)
		}
	case v.Kind() == reflect.Float64:
		for _, x := range floats {
			put(x, math.IsNaN(x), x != 0 && !(math.Abs(x) > 1e-9 && math.Abs(x) < 1e8))
		}
	case v.CanInt():
		for _, n := range ints {
			put(n, false, false)
		}
	case v.CanUint():
		for _, n := range []uint64{0, 7, 200, math.MaxUint64} {
			put(n, false, false)
		}
	case v.Kind() == reflect.String:
		for _, w := range words {
			put(w, false, false)
		}
	default:
		within(path, v, reach, put, out)
	}
}

func within(path string, v reflect.Value, reach func([]reflect.Value) reflect.Value, put func(any, bool, bool), out *[]way) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				spoil(path+"."+f.Name, v.Field(i), func(a []reflect.Value) reflect.Value { return reach(a).Field(i) }, out)
			}
		}
	case reflect.Slice, reflect.Array:
		if v.Kind() == reflect.Slice {
			put(nil, false, false)
		}
		for i := range min(v.Len(), 2) {
			spoil(fmt.Sprintf("%s[%d]", path, i), v.Index(i), func(a []reflect.Value) reflect.Value { return reach(a).Index(i) }, out)
		}
	case reflect.Pointer:
		put(nil, false, false)
		if !v.IsNil() {
			spoil(path, v.Elem(), func(a []reflect.Value) reflect.Value { return reach(a).Elem() }, out)
		}
	case reflect.Map:
		put(nil, false, false)
		if v.Type().Elem().Kind() == reflect.Float64 {
			for _, x := range floats {
				put(spoilt(v, x), math.IsNaN(x), false)
			}
		}
		if v.Type().Elem().Kind() == reflect.Int64 {
			for _, x := range ints {
				put(spoilt(v, x), false, false)
			}
		}
	case reflect.Func, reflect.Interface:
		put(nil, false, false)
	}
}

// spoilt is a map with one figure in every place.
func spoilt(v reflect.Value, x any) any {
	out := reflect.MakeMap(v.Type())
	for _, k := range v.MapKeys() {
		out.SetMapIndex(k, reflect.ValueOf(x))
	}
	return out.Interface()
}
