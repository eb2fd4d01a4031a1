package schema

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/text"
)

// The guard. The parser trusts its input: a hundred thousand brackets end the process, a text
// full of "$" takes it half a minute. So a file is first taken apart into its words, which
// is safe and takes time in proportion to its length, and the words are counted. What the
// language does not have (loops, here-texts, directives) is refused here too, so that the
// parser never sees it.
const (
	maxFile   = 1 << 20 // bytes
	maxWords  = 300_000 // words and signs of a file: that many fill the largest file written by hand
	maxNested = 64      // brackets within brackets, texts within them counted
	maxSigns  = 256     // signs of one calculation
	maxPieces = 1000    // pieces of one text
	maxDigits = 60      // digits of one figure
	maxPower  = 3       // digits of a power of ten
)

var byteOrderMark = []byte("\xef\xbb\xbf")

// guarded is one level of brackets: what opened it and how many signs its calculation has.
type guarded struct {
	open   hclsyntax.TokenType
	signs  int
	pieces int
}

type guard struct {
	file  string
	stack []guarded
	last  hclsyntax.TokenType
	rule  string // of the trouble found; "" none
	says  string
	at    text.Place
}

// guardFile looks a file over before it is parsed. It gives the first trouble, if any.
func guardFile(file string, src []byte, begin hcl.Pos) (rule, says string, at text.Place) {
	if i := firstBadUTF8(src); i >= 0 {
		return slipCannotRead, "this is not text: save the file as UTF-8", text.Place{File: file, From: begin.Byte + i, To: begin.Byte + i + 1}
	}
	if i := bytes.IndexByte(src, 0); i >= 0 {
		return slipCannotRead, "this is not text: the file holds a zero byte", text.Place{File: file, From: begin.Byte + i, To: begin.Byte + i + 1}
	}
	tokens, _ := hclsyntax.LexConfig(src, file, begin)
	if len(tokens) > maxWords {
		return slipTooLarge, fmt.Sprintf("the file has %d words and signs; at most %d are read", len(tokens), maxWords), placeOf(tokens[maxWords].Range)
	}
	g := guard{file: file, stack: []guarded{{}}}
	for i := range tokens {
		if g.token(&tokens[i]); g.rule != "" {
			return g.rule, g.says, g.at
		}
	}
	return "", "", text.Place{}
}

func firstBadUTF8(src []byte) int {
	if utf8.Valid(src) {
		return -1
	}
	for i := 0; i < len(src); {
		r, n := utf8.DecodeRune(src[i:])
		if r == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
	return -1
}

func (g *guard) refuse(t *hclsyntax.Token, rule, says string) {
	g.rule, g.says = rule, says
	g.at = placeOf(t.Range)
	if t.Type == hclsyntax.TokenOHeredoc {
		g.at.To = g.at.From + len(bytes.TrimRight(t.Bytes, "\r\n"))
	}
}

func (g *guard) top() *guarded { return &g.stack[len(g.stack)-1] }

func (g *guard) token(t *hclsyntax.Token) {
	before := g.last
	g.last = t.Type
	switch t.Type {
	case hclsyntax.TokenOBrace, hclsyntax.TokenOParen, hclsyntax.TokenTemplateInterp, hclsyntax.TokenOQuote:
		g.open(t)
	case hclsyntax.TokenOBrack:
		if before == hclsyntax.TokenIdent || before == hclsyntax.TokenCBrack || before == hclsyntax.TokenCParen {
			g.sign(t) // picks from what stands before it
		}
		g.open(t)
	case hclsyntax.TokenCBrace, hclsyntax.TokenCParen, hclsyntax.TokenCBrack, hclsyntax.TokenTemplateSeqEnd, hclsyntax.TokenCQuote:
		if len(g.stack) > 1 {
			g.stack = g.stack[:len(g.stack)-1]
		}
	case hclsyntax.TokenNewline:
		if o := g.top().open; o == 0 || o == hclsyntax.TokenOBrace {
			g.top().signs = 0
		}
	case hclsyntax.TokenComma:
		g.top().signs = 0
	case hclsyntax.TokenQuotedLit, hclsyntax.TokenStringLit:
		g.piece(t)
	case hclsyntax.TokenNumberLit:
		g.number(t)
	case hclsyntax.TokenOHeredoc:
		g.refuse(t, slipNotLanguage, `texts of several lines are not part of the language: write the text in quotes, "…"`)
	case hclsyntax.TokenTemplateControl:
		g.refuse(t, slipNotLanguage, "%{ is not part of the language; a percent sign before a bracket in a text is written %%{")
	case hclsyntax.TokenEllipsis, hclsyntax.TokenFatArrow, hclsyntax.TokenDoubleColon:
		g.refuse(t, slipNotLanguage, quoted(string(t.Bytes))+" is not part of the language")
	case hclsyntax.TokenIdent:
		if string(t.Bytes) == "for" && (before == hclsyntax.TokenOBrace || before == hclsyntax.TokenOBrack) {
			g.refuse(t, slipNotLanguage, `"for" is not part of the language: write the values one by one, or series(from, to, step)`)
		}
	case hclsyntax.TokenStar:
		if before == hclsyntax.TokenDot || before == hclsyntax.TokenOBrack {
			g.refuse(t, slipNotLanguage, "a star that stands for every member is not part of the language: name the one that is meant")
			return
		}
		g.sign(t)
	case hclsyntax.TokenPlus, hclsyntax.TokenMinus, hclsyntax.TokenSlash, hclsyntax.TokenPercent, hclsyntax.TokenBang,
		hclsyntax.TokenEqualOp, hclsyntax.TokenNotEqual, hclsyntax.TokenLessThan, hclsyntax.TokenLessThanEq,
		hclsyntax.TokenGreaterThan, hclsyntax.TokenGreaterThanEq, hclsyntax.TokenAnd, hclsyntax.TokenOr,
		hclsyntax.TokenQuestion, hclsyntax.TokenColon, hclsyntax.TokenDot:
		g.sign(t)
	}
}

func (g *guard) open(t *hclsyntax.Token) {
	if t.Type == hclsyntax.TokenTemplateInterp {
		g.piece(t)
	}
	g.stack = append(g.stack, guarded{open: t.Type})
	if len(g.stack)-1 > maxNested {
		g.refuse(t, slipTooDeep, fmt.Sprintf("brackets are nested more than %d deep here", maxNested))
	}
}

func (g *guard) sign(t *hclsyntax.Token) {
	if g.top().signs++; g.top().signs > maxSigns {
		g.refuse(t, slipTooLong, fmt.Sprintf("this calculation has more than %d signs: split it into figures with names", maxSigns))
	}
}

func (g *guard) piece(t *hclsyntax.Token) {
	if g.top().pieces++; g.top().pieces > maxPieces {
		g.refuse(t, slipTooLong, fmt.Sprintf("this text has more than %d pieces", maxPieces))
	}
}

// number refuses a figure that would take long to read, or is none.
func (g *guard) number(t *hclsyntax.Token) {
	digits, power, _ := bytes.Cut(bytes.ToLower(t.Bytes), []byte("e"))
	if len(digits) > maxDigits || len(bytes.TrimLeft(bytes.TrimLeft(power, "+-"), "0")) > maxPower {
		g.refuse(t, slipNotAFigure, shown(string(t.Bytes))+" is not a figure that can be reckoned with")
	}
}

// placeOf turns a range of the parser into a place.
func placeOf(r hcl.Range) text.Place {
	return text.Place{File: r.Filename, From: r.Start.Byte, To: r.End.Byte}
}
