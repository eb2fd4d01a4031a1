package sheet

// Page is a sheet ready to be written, in blocks that are the same whatever it is written as.
type Page struct {
	Title  string
	Stamp  Stamp
	Blocks []Block
}

// Kind is what a block is.
type Kind uint8

const (
	Heading  Kind = iota // Level and Words; ID where something points to it
	Para                 // Words; Loud where they are a finding
	Caution              // Words, in the usual words of the trade
	List                 // Rows of one word each
	Table                // Head and Rows
	Facts                // Rows of label and value
	Tick                 // an operation to tick off: Words, then Rows of label and value; ID
	Margin               // a bar: Words, and Share left over
	Picture              // SVG; Words says what it shows
	Part                 // begins a part or set-up on a page of its own: ID
	Contents             // Rows of words and the ID that each points to
	Later                // the place of a drawing still to be made; none is left on a page that is done
)

// Block is one piece of a page.
type Block struct {
	Kind  Kind
	Level int // of a heading, from 1
	ID    string
	Words string
	Head  []string
	Rows  [][]string
	SVG   string
	Loud  bool     // of a paragraph: it is not to be overlooked
	Small bool     // of a picture: several stand side by side
	True  bool     // of a picture: it is printed as large as it is drawn
	Share float64  // of a margin: what is left over, in parts of what is wanted
	Unit  string   // of what is written down there; "" mm
	Box   string   // of a tick: what is to be written down when it is made; "" nothing
	Boxes []string // of which of several things it is written down; empty: of one
}

func (p *Page) add(b ...Block) { p.Blocks = append(p.Blocks, b...) }

func (p *Page) heading(level int, id, words string) {
	p.add(Block{Kind: Heading, Level: level, ID: id, Words: words})
}

func (p *Page) para(words string) { p.add(Block{Kind: Para, Words: words}) }

func (p *Page) facts(rows [][]string) {
	if len(rows) > 0 {
		p.add(Block{Kind: Facts, Rows: rows})
	}
}

func (p *Page) table(head []string, rows [][]string) {
	if len(rows) > 0 {
		p.add(Block{Kind: Table, Head: head, Rows: rows})
	}
}

// boxes are the labels of what is written down, one for each thing that is made.
func (k *Block) boxes() (out []string) {
	if k.Box == "" {
		return nil
	}
	if len(k.Boxes) < 2 {
		return []string{k.Box}
	}
	for _, of := range k.Boxes {
		out = append(out, k.Box+", "+of)
	}
	return out
}

// unit is that of what is written down in the box of a tick.
func (k *Block) unit() string {
	if k.Unit == "" {
		return "mm"
	}
	return k.Unit
}
