package reckon

import (
	"fmt"
	"strconv"
	"strings"

	"fettle/schema/drawing"
)

// Several subjects take lists of words with a grammar of their own: items parted by semicolons
// or commas, each with a few words. What they share is here.

// mostItems bounds how many items a list of words may have.
const mostItems = 1000

// items parts a list at a sign and takes blanks off; an empty item is an error.
func items(words, sign, what string) ([]string, error) {
	parts := strings.Split(strings.Trim(strings.TrimSpace(words), sign), sign)
	if len(parts) > mostItems {
		return nil, fmt.Errorf("%d %ss are more than the %d that are taken", len(parts), what, mostItems)
	}
	var out []string
	for _, p := range parts {
		p = strings.Join(strings.Fields(p), " ")
		if p == "" {
			return nil, fmt.Errorf("an empty %s stands in %s: %ss are parted by %q", what, quoted(words), what, sign)
		}
		out = append(out, p)
	}
	return out, nil
}

// times reads "3 x 120" as 3 and "120"; without a count 1.
func times(item string) (n int, rest string, err error) {
	before, after, ok := strings.Cut(item, " x ")
	if !ok {
		return 1, item, nil
	}
	n, err = strconv.Atoi(strings.TrimSpace(before))
	if err != nil || n < 1 || n > 5000 {
		return 0, "", fmt.Errorf("%s is no count from 1 to 5000: write 3 x 120", quoted(before))
	}
	return n, strings.TrimSpace(after), nil
}

// length reads a length above 0 of at most a kilometre, mm.
func length(words, what string, bare drawing.Unit) (float64, error) {
	mm, err := drawing.ParseLength(words, bare)
	if err != nil {
		return 0, fmt.Errorf("%s is no %s: %w", quoted(words), what, err)
	}
	if !(mm > 0) || mm > 1e6 {
		return 0, fmt.Errorf("%s is no %s: it must lie above 0 and be 1000000 mm at most", quoted(words), what)
	}
	return mm, nil
}

// reply gathers an answer.
type reply struct {
	Ask
	out Answer
}

func (p *reply) say(format string, args ...any) {
	p.out.Says = append(p.out.Says, fmt.Sprintf(format, args...))
}

func (p *reply) step(format string, args ...any) {
	p.out.Steps = append(p.out.Steps, fmt.Sprintf(format, args...))
}

func (p *reply) value(name string, x float64, unit, from string) {
	p.out.Values = append(p.out.Values, figure(name, x, unit, from))
}
