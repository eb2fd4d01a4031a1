package cover

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "cover.tsv", 4) {
		counts[f[0]]++
		var got string
		switch f[0] {
		case "costs":
			got = wishes(t, strings.Fields(f[1]))
		case "sets":
			got = fewest(t, sets(strings.Fields(f[1])))
		case "lines":
			n, _ := strconv.Atoi(f[1])
			got = fewest(t, lines(n))
		}
		if got != f[2] {
			t.Errorf("%s %s: %s, printed %s in %s", f[0], f[1], got, f[2], f[3])
		}
	}
	if counts["costs"] != 1 || counts["sets"] != 1 || counts["lines"] != 2 {
		t.Errorf("rows checked: %v", counts)
	}
}

// wishes tells conflicts, corrections and preferred wishes of costs with a limit.
func wishes(t *testing.T, f []string) string {
	var cost []int
	for _, w := range f[:len(f)-2] {
		c, _ := strconv.Atoi(w)
		cost = append(cost, c)
	}
	limit, _ := strconv.Atoi(f[len(f)-1])
	fails := func(wishes []int) bool {
		sum := 0
		for _, i := range wishes {
			sum += cost[i]
		}
		return sum > limit
	}
	c, err := Clashes(len(cost), fails)
	if err != nil || !c.Complete {
		t.Errorf("%v %+v", err, c)
	}
	one := func(s []int) string {
		var out []string
		for _, i := range s {
			out = append(out, strconv.Itoa(i+1))
		}
		return strings.Join(out, "+")
	}
	several := func(s [][]int) string {
		var out []string
		for _, x := range s {
			out = append(out, one(x))
		}
		return strings.Join(out, " ")
	}
	return several(c.Conflicts) + " / " + several(c.Corrections) + " / " + one(Preferred(len(cost), fails))
}

// sets turns sets into needs: each element needs one of the sets that hold it.
func sets(given []string) []Need {
	var needs []Need
	for n, s := range given {
		for e := range strings.SplitSeq(s, ",") {
			i := slices.IndexFunc(needs, func(n Need) bool { return n.Name == e })
			if i < 0 {
				i, needs = len(needs), append(needs, Need{Name: e})
			}
			needs[i].Ways = append(needs[i].Ways, []string{"set " + strconv.Itoa(n)})
		}
	}
	return needs
}

// lines gives the lines of the affine space of a dimension over three elements: three
// points whose sum is nought in every co-ordinate.
func lines(dimension int) []Need {
	points := int(math.Pow(3, float64(dimension)))
	var needs []Need
	for a := range points {
		for b := a + 1; b < points; b++ {
			c, scale := 0, 1
			for x, y := a, b; scale < points; x, y, scale = x/3, y/3, scale*3 {
				c += (6 - x%3 - y%3) % 3 * scale
			}
			if c > b {
				needs = append(needs, Need{fmt.Sprint(a, b, c), [][]string{{strconv.Itoa(a)}, {strconv.Itoa(b)}, {strconv.Itoa(c)}}})
			}
		}
	}
	return needs
}

func fewest(t *testing.T, needs []Need) string {
	a, err := Least(needs, nil, nil)
	if err != nil || !a.Proved || int(a.Cost) != len(a.Get) {
		t.Errorf("%v %+v", err, a)
	}
	for _, n := range needs {
		if !possible(n, a.Get) {
			t.Errorf("%s is not met by %v", n.Name, a.Get)
		}
	}
	return strconv.Itoa(len(a.Get))
}

func possible(n Need, have []string) bool {
	return slices.ContainsFunc(n.Ways, func(w []string) bool {
		return !slices.ContainsFunc(w, func(t string) bool { return !slices.Contains(have, t) })
	})
}

func TestRefused(t *testing.T) {
	way := [][]string{{"a"}}
	if _, err := Least([]Need{{"n", way}}, nil, map[string]int64{"a": -1}); err == nil {
		t.Error("a price below nought")
	}
	if _, err := Least([]Need{{"n", way}}, nil, map[string]int64{"a": MostPrice + 1}); err == nil {
		t.Error("a price above the range")
	}
	if _, err := Least(make([]Need, MostNeeds+1), nil, nil); err == nil {
		t.Error("too many needs")
	}
	never := func([]int) bool { return false }
	for _, n := range []int{-1, Wishes + 1} {
		if _, err := Clashes(n, never); err == nil {
			t.Errorf("%d wishes", n)
		}
	}
	if _, err := Clashes(3, func([]int) bool { return true }); err == nil {
		t.Error("fails without a wish")
	}
	if c, err := Clashes(Wishes, never); err != nil || len(c.Conflicts) != 0 || len(c.Corrections) != 0 || !c.Complete {
		t.Errorf("no clash: %+v (%v)", c, err)
	}
}

// A workshop's question in words: one drill unlocks two jobs, the boring head is of no use
// without its bar, and a need without any way is named and does not stop the rest.
func TestInWords(t *testing.T) {
	needs := []Need{
		{"pilot hole", [][]string{{"drill 5"}}},
		{"oil hole", [][]string{{"drill 5"}, {"drill 5.1"}}},
		{"bore", [][]string{{"boring head", "bar"}, {"reamer 20", "drill 19.5"}}},
		{"face", [][]string{{"fly cutter"}}},
		{"gear", nil},
	}
	have := []string{"fly cutter", "reamer 20"}
	a, err := Least(needs, have, nil)
	if err != nil || fmt.Sprint(a) != "{[drill 19.5 drill 5] 2 2 true [gear]}" {
		t.Errorf("%v %v", a, err)
	}
	if a, _ := Least(needs, have, map[string]int64{"drill 19.5": 30, "bar": 2, "boring head": 9}); fmt.Sprint(a.Get, a.Cost) != "[bar boring head drill 5] 12" {
		t.Errorf("by price: %v", a)
	}
	if got := fmt.Sprint(Unlocks(needs, have)); got != "[{drill 5 [pilot hole oil hole]} {drill 19.5 [bore]} {drill 5.1 [oil hole]}]" {
		t.Error(got)
	}
}

func draw(t *rapid.T) (needs []Need, price map[string]int64) {
	price = map[string]int64{}
	for i := range 7 {
		price[strconv.Itoa(i)] = int64(rapid.IntRange(0, 9).Draw(t, "price"))
	}
	for n := range rapid.IntRange(0, 8).Draw(t, "needs") {
		need := Need{Name: strconv.Itoa(n)}
		for range rapid.IntRange(1, 4).Draw(t, "ways") {
			var way []string
			for range rapid.IntRange(1, 3).Draw(t, "things") {
				way = append(way, strconv.Itoa(rapid.IntRange(0, 6).Draw(t, "thing")))
			}
			need.Ways = append(need.Ways, way)
		}
		needs = append(needs, need)
	}
	return needs, price
}

// The least set is the least of all sets, tried one by one; the order of the needs does not
// matter; and a thing unlocks what is possible with it and was not before.
func TestAllSets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		needs, price := draw(t)
		a, err := Least(needs, []string{"6"}, price)
		if err != nil || !a.Proved {
			t.Fatal(err, a)
		}
		best, count := int64(math.MaxInt64), 0
		for bits := range 64 {
			have, cost := []string{"6"}, int64(0)
			for i := range 6 {
				if bits&(1<<i) != 0 {
					have, cost = append(have, strconv.Itoa(i)), cost+price[strconv.Itoa(i)]
				}
			}
			if !slices.ContainsFunc(needs, func(n Need) bool { return !possible(n, have) }) &&
				(cost < best || cost == best && len(have)-1 < count) {
				best, count = cost, len(have)-1
			}
		}
		if a.Cost != best || a.Bound != best || len(a.Get) != count {
			t.Fatalf("%v: %+v, all sets %d with %d", needs, a, best, count)
		}
		turned, _ := Least(rapid.Permutation(needs).Draw(t, "turned"), []string{"6"}, price)
		if !slices.Equal(turned.Get, a.Get) {
			t.Fatalf("%v, in another order %v", a.Get, turned.Get)
		}
		for _, u := range Unlocks(needs, []string{"6"}) {
			for _, n := range needs {
				opens := possible(n, []string{"6", u.Thing}) && !possible(n, []string{"6"})
				if opens != slices.Contains(u.Needs, n.Name) {
					t.Fatalf("%v and need %s", u, n.Name)
				}
			}
		}
	})
}

// Conflicts and corrections are those found by trying all sets of wishes.
func TestAllWishes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 7).Draw(t, "wishes")
		var bad []int
		for range rapid.IntRange(0, 5).Draw(t, "clashes") {
			if n > 0 {
				bad = append(bad, rapid.IntRange(1, 1<<n-1).Draw(t, "clash"))
			}
		}
		failing := func(bits int) bool { return slices.ContainsFunc(bad, func(b int) bool { return b&^bits == 0 }) }
		c, err := Clashes(n, func(w []int) bool {
			bits := 0
			for _, i := range w {
				bits |= 1 << i
			}
			return failing(bits)
		})
		if err != nil || !c.Complete {
			t.Fatal(err)
		}
		var conflicts, corrections []uint64
		for bits := range 1 << n {
			if failing(bits) {
				conflicts = append(conflicts, uint64(bits))
			}
			if !failing((1<<n - 1) &^ bits) {
				corrections = append(corrections, uint64(bits))
			}
		}
		if got, want := fmt.Sprint(c.Conflicts, c.Corrections), fmt.Sprint(listed(least64(conflicts)), listed(least64(corrections))); got != want {
			t.Fatalf("%s, by trying %s", got, want)
		}
	})
}

// least64 keeps the sets that hold no other, by comparing each with each.
func least64(sets []uint64) (out []uint64) {
	for _, s := range sets {
		if !slices.ContainsFunc(sets, func(o uint64) bool { return o != s && o&^s == 0 }) {
			out = append(out, s)
		}
	}
	return out
}

func BenchmarkWorkshop(b *testing.B) {
	var needs []Need // sixty operations, three ways each of a tool and a holder
	for i := range 60 {
		n := Need{Name: strconv.Itoa(i)}
		for k := range 3 {
			n.Ways = append(n.Ways, []string{"tool " + strconv.Itoa((i*7+k*11)%25), "holder " + strconv.Itoa((i+k*3)%6)})
		}
		needs = append(needs, n)
	}
	for b.Loop() {
		if a, err := Least(needs, nil, nil); err != nil || !a.Proved {
			b.Fatal(err, a)
		}
	}
}
