package schema

import (
	"bytes"
	"fmt"
	"regexp"
	"sort"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/text"
)

// parseFile reads one file into its blocks. What is wrong with its writing becomes findings;
// false says that nothing of the build may be judged because of them.
func (r *reader) parseFile(name string) (*hclsyntax.Body, bool) {
	src, err := r.files.Read(name, maxFile)
	if err != nil {
		at := text.Place{File: name}
		if _, large := err.(text.TooLarge); large {
			r.say(slipTooLarge, at, fmt.Sprintf("%s is larger than 1 MiB; a recipe or shop is read up to that size", shown(name)))
		} else {
			r.say(slipCannotRead, at, fmt.Sprintf("%s cannot be read: %s", shown(name), err))
		}
		return nil, false
	}
	r.sources.Add(name, src)
	begin := hcl.Pos{Line: 1, Column: 1}
	if bytes.HasPrefix(src, byteOrderMark) {
		begin.Byte = len(byteOrderMark)
		src = src[begin.Byte:]
	}
	if rule, says, at := guardFile(name, src, begin); rule != "" {
		r.say(rule, at, says)
		return nil, false
	}
	file, diags := hclsyntax.ParseConfig(src, name, begin)
	ok := true
	for _, d := range inOrder(diags) {
		if !r.trouble(d) {
			ok = false
			break // what follows the first is most often its echo
		}
	}
	body, isBody := file.Body.(*hclsyntax.Body)
	return body, ok && isBody
}

// inOrder sorts what the parser says by where it says it; it comes in the order of a map.
func inOrder(diags hcl.Diagnostics) hcl.Diagnostics {
	out := make(hcl.Diagnostics, 0, len(diags))
	for _, d := range diags {
		if d.Severity == hcl.DiagError && d.Subject != nil {
			out = append(out, d)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Subject.Start.Byte < out[j].Subject.Start.Byte })
	return out
}

// trouble turns what the parser says into a finding. An attribute written twice leaves the
// file readable; everything else does not.
func (r *reader) trouble(d *hcl.Diagnostic) (readable bool) {
	at := placeOf(*d.Subject)
	if d.Summary == "Attribute redefined" {
		word := string(r.bytes(at))
		if w, _, ok := strings.Cut(word, "="); ok {
			word = strings.TrimSpace(w)
			at.To = at.From + len(word)
		}
		r.say(slipGivenTwice, at, fmt.Sprintf("%s is given twice in this block; the first one is taken", shown(word)))
		return true
	}
	at = r.withinLine(at)
	r.say(slipCannotRead, at, r.readingSentence(d, at))
	return false
}

// withinLine keeps a place on its first line, and off the end of that line.
func (r *reader) withinLine(at text.Place) text.Place {
	b := r.bytes(at)
	if i := bytes.IndexByte(b, '\n'); i >= 0 {
		at.To = at.From + i
	}
	return at
}

var (
	startsWithPoint = regexp.MustCompile(`^\.[0-9]`)
	afterAPoint     = regexp.MustCompile(`(^|[^0-9A-Za-z_\])])\.$`)
	wordThenValue   = regexp.MustCompile(`^\s*([\pL_][\pL\pN_-]*)\s+("|[0-9.\[])`)
	wordColonValue  = regexp.MustCompile(`^\s*([\pL_][\pL\pN_-]*)\s*:`)
)

// readingSentence says what is wrong with the writing in words of the language, from what
// the parser found and from the text at that place.
func (r *reader) readingSentence(d *hcl.Diagnostic, at text.Place) string {
	here := string(r.bytes(at))
	before, rest, line := r.lineAround(at)
	switch {
	case startsWithPoint.MatchString(rest), afterAPoint.MatchString(before) && rest != "" && rest[0] >= '0' && rest[0] <= '9':
		return "a number starts with a digit: write 0 before the point"
	case strings.HasSuffix(before, ",") && rest == "":
		return "something is missing after the comma"
	}
	switch d.Summary {
	case "Invalid argument name":
		if name := strings.Trim(here, `"`); hclsyntax.ValidIdentifier(name) {
			return fmt.Sprintf("the name of an attribute is written without quotes: %s = …", name)
		}
		return "the name of an attribute is one word, without quotes"
	case "Unclosed configuration block", "Unclosed configuration body":
		return "this block is never closed: a } is missing before the end of the file"
	case "Invalid single-argument block definition":
		return "a block on one line holds one attribute: write each attribute on a line of its own"
	case "Missing newline after block definition":
		return "a new line is wanted after the } of a block"
	case "Argument definition required":
		return "a block on one line holds one attribute, written name = value"
	case "Invalid block definition":
		if m := wordThenValue.FindStringSubmatch(line); m != nil && !strings.Contains(line, "{") {
			return fmt.Sprintf("an equals sign is missing: write %s = …", m[1])
		}
		if strings.Contains(d.Detail, "equals sign") {
			return "a block is written without an equals sign: kind \"label\" { … }"
		}
		return "a block is written kind \"label\" { … }, with the { on the same line"
	case "Argument or block definition required":
		if m := wordThenValue.FindStringSubmatch(line); m != nil {
			return fmt.Sprintf("an equals sign is missing: write %s = …", m[1])
		}
		if m := wordColonValue.FindStringSubmatch(line); m != nil {
			return fmt.Sprintf("an attribute is written with an equals sign: %s = …", m[1])
		}
		if strings.HasPrefix(here, "}") {
			return "this } closes nothing"
		}
		return "here an attribute, name = value, or a block, kind \"label\" { … }, is wanted"
	case "Missing false expression in conditional":
		return "a choice is written condition ? one : other; the colon and the other value are missing"
	case "Unbalanced parentheses", "Unterminated function call", "Missing closing parenthesis":
		return "a ) is missing"
	case "Unterminated tuple constructor expression", "Missing close bracket on index", "Missing close bracket on splat index", "Unclosed index brackets":
		return "a ] is missing"
	case "Missing item separator":
		return "the members of a list are separated by commas"
	case "Missing argument separator":
		return "the figures within the brackets are separated by commas"
	case "Unterminated object constructor expression":
		return "a } is missing"
	case "Missing key/value separator", "Missing attribute value":
		return "within { … } every member is written name = value"
	case "Missing attribute separator":
		return "within { … } on one line, members are separated by commas"
	case "Unterminated string literal", "Unterminated template string", "Invalid multi-line string", "Unexpected end of template":
		return "the text has no closing quote on its line"
	case "Unclosed template interpolation sequence", "Extra characters after interpolation expression":
		return "a } is missing after ${ in the text"
	case "Invalid escape sequence":
		return `a backslash in a text must be followed by n, t, ", or another backslash`
	case "Invalid attribute name", "Attribute name required":
		return "after a point a name is wanted"
	case "Invalid legacy index syntax":
		return `a label with figures and points in it is written in brackets and quotes: kind["the label"]`
	case "Invalid number literal":
		return "this is not a figure"
	case "Unsupported operator":
		switch here {
		case "&", "|":
			return fmt.Sprintf("write %s%s", here, here)
		}
		return fmt.Sprintf("%s is not a sign of calculation", quoted(here))
	case "Invalid character":
		return invalidCharacter(here)
	case "Missing expression", "Invalid expression":
		if here == "" || strings.TrimSpace(here) == "" {
			return "a value is missing after the equals sign"
		}
		return fmt.Sprintf("a value is wanted, but here stands %s", quoted(here))
	}
	return "this cannot be read: a bracket, a quote, a comma or an equals sign is missing or out of place"
}

func invalidCharacter(here string) string {
	switch here {
	case "'", "`":
		return `texts stand in double quotes: "…"`
	case "“", "”", "„":
		return `texts stand in plain quotes: "…"`
	case ";":
		return "attributes are separated by new lines, members by commas, never by semicolons"
	}
	return fmt.Sprintf("the sign %s means nothing outside a text", quoted(here))
}

// lineAround gives the line of a place: what stands before it, what from there on, and all
// of it, without blanks at the ends. Very long lines are cut.
func (r *reader) lineAround(at text.Place) (before, rest, whole string) {
	const cut = 500 // bytes
	b := r.sources.Bytes(at.File)
	from := min(max(at.From, 0), len(b))
	start := bytes.LastIndexByte(b[:from], '\n') + 1
	end := len(b)
	if i := bytes.IndexByte(b[from:], '\n'); i >= 0 {
		end = from + i
	}
	start, end = max(start, from-cut), min(end, from+cut)
	return strings.TrimSpace(string(b[start:from])), strings.TrimSpace(string(b[from:end])), strings.TrimSpace(string(b[start:end]))
}
