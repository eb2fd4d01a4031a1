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
	at, says := r.readingSentence(d, at)
	r.say(slipCannotRead, at, says)
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
	wordThenValue   = regexp.MustCompile(`^([\pL_][\pL\pN_-]*)\s+("|[0-9.\[])`)
	wordColonValue  = regexp.MustCompile(`^\s*([\pL_][\pL\pN_-]*)\s*:`)
)

// readingSentence says what is wrong with the writing in words of the language, from what
// the parser found and from the text at that place, which it may move to the word at fault.
func (r *reader) readingSentence(d *hcl.Diagnostic, at text.Place) (text.Place, string) {
	before, rest, line := r.lineAround(at)
	switch {
	case startsWithPoint.MatchString(rest), afterAPoint.MatchString(before) && rest != "" && rest[0] >= '0' && rest[0] <= '9':
		return at, "a number starts with a digit: write 0 before the point"
	case strings.HasSuffix(before, ",") && rest == "":
		return at, "something is missing after the comma"
	case strings.HasSuffix(before, "*") && strings.HasPrefix(rest, "*"):
		return at, "there is no sign for a power: write x * x"
	}
	switch d.Summary {
	case "Invalid argument name":
		at = r.wholeText(at)
		if name := strings.Trim(string(r.bytes(at)), `"`); hclsyntax.ValidIdentifier(name) {
			return at, fmt.Sprintf("the name of an attribute is written without quotes: %s = …", name)
		}
		return at, "the name of an attribute is one word, without quotes"
	case "Invalid block definition", "Argument or block definition required":
		return r.noBlock(d, at, line)
	case "Missing expression", "Invalid expression":
		if here := string(r.bytes(at)); strings.TrimSpace(here) != "" {
			return at, fmt.Sprintf("a value is wanted, but here stands %s", quoted(here))
		}
		return at, "a value is missing"
	case "Unsupported operator":
		if here := string(r.bytes(at)); here == "&" || here == "|" {
			return at, fmt.Sprintf("two conditions are joined by %s%s, not by %s", here, here, here)
		}
		return at, quoted(string(r.bytes(at))) + " is not a sign of calculation"
	case "Invalid character":
		return at, invalidCharacter(string(r.bytes(at)))
	}
	if says, ok := readingSentences[d.Summary]; ok {
		return at, says
	}
	return at, "this cannot be read: a bracket, a quote, a comma or an equals sign is missing or out of place"
}

// readingSentences are the parser's complaints that need no look at the text.
var readingSentences = map[string]string{
	"Unclosed configuration block":                    "this block is never closed: a } is missing before the end of the file",
	"Unclosed configuration body":                     "this block is never closed: a } is missing before the end of the file",
	"Invalid single-argument block definition":        "a block on one line holds one attribute: write each attribute on a line of its own",
	"Argument definition required":                    "a block on one line holds one attribute, written name = value",
	"Missing newline after block definition":          "a new line is wanted after the } of a block",
	"Missing false expression in conditional":         "a choice is written condition ? one : other; the colon and the other value are missing",
	"Unbalanced parentheses":                          "a ) is missing",
	"Unterminated function call":                      "a ) is missing",
	"Missing closing parenthesis":                     "a ) is missing",
	"Unterminated tuple constructor expression":       "a ] is missing",
	"Missing close bracket on index":                  "a ] is missing",
	"Unclosed index brackets":                         "a ] is missing",
	"Missing item separator":                          "the members of a list are separated by commas",
	"Missing argument separator":                      "the figures within the brackets are separated by commas",
	"Unterminated object constructor expression":      "a } is missing",
	"Missing key/value separator":                     "within { … } every member is written name = value",
	"Missing attribute value":                         "within { … } every member is written name = value",
	"Missing attribute separator":                     "within { … } on one line, members are separated by commas",
	"Unterminated string literal":                     "the text has no closing quote on its line",
	"Unterminated template string":                    "the text has no closing quote on its line",
	"Invalid multi-line string":                       "the text has no closing quote on its line",
	"Unexpected end of template":                      "the text has no closing quote on its line",
	"Unclosed template interpolation sequence":        "a } is missing after ${ in the text",
	"Extra characters after interpolation expression": "a } is missing after ${ in the text",
	"Invalid escape sequence":                         `a backslash in a text must be followed by n, t, ", or another backslash`,
	"Invalid attribute name":                          "after a point a name is wanted",
	"Attribute name required":                         "after a point a name is wanted",
	"Invalid legacy index syntax":                     `a label with figures and points in it is written in brackets and quotes: kind["the label"]`,
	"Invalid number literal":                          "this is not a figure",
}

// noBlock says what is wrong with a line that is neither an attribute nor a block.
func (r *reader) noBlock(d *hcl.Diagnostic, at text.Place, line string) (text.Place, string) {
	if m := wordThenValue.FindStringSubmatch(line); m != nil && !strings.Contains(line, "{") {
		at = r.firstWord(at, m[1])
		if _, _, block := kindAnywhere(m[1]); block && m[2] == `"` {
			return at, "the { of a block stands on the same line as its label"
		}
		return at, fmt.Sprintf("an equals sign is missing: write %s = …", m[1])
	}
	if m := wordColonValue.FindStringSubmatch(line); m != nil {
		return at, fmt.Sprintf("an attribute is written with an equals sign: %s = …", m[1])
	}
	switch {
	case strings.HasPrefix(string(r.bytes(at)), "}"):
		return at, "this } closes nothing"
	case strings.Contains(d.Detail, "equals sign") && d.Summary == "Invalid block definition":
		return at, `a block is written without an equals sign: kind "label" { … }`
	}
	return at, `here an attribute, name = value, or a block, kind "label" { … }, is wanted`
}

// firstWord is the place of the word that the line of a place begins with.
func (r *reader) firstWord(at text.Place, word string) text.Place {
	b := r.sources.Bytes(at.File)
	start := bytes.LastIndexByte(b[:min(at.From, len(b))], '\n') + 1
	if i := bytes.Index(b[start:], []byte(word)); i >= 0 {
		return text.Place{File: at.File, From: start + i, To: start + i + len(word)}
	}
	return at
}

// wholeText stretches the place of an opening quote to the closing one on its line.
func (r *reader) wholeText(at text.Place) text.Place {
	b := r.sources.Bytes(at.File)
	if at.To-at.From != 1 || at.To > len(b) || b[at.From] != '"' {
		return at
	}
	if i := bytes.IndexAny(b[at.To:], "\"\n"); i >= 0 && b[at.To+i] == '"' {
		at.To += i + 1
	}
	return at
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
