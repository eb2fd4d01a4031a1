package reckon

import (
	"io"
	"strings"
	"unicode/utf8"
)

// writeList names the subjects, one a line.
func writeList(w io.Writer) {
	p := &page{}
	p.line("fettle reckon SUBJECT ... answers a question of the bench, with its working:")
	p.gap()
	long := 0
	for _, s := range subjects {
		long = max(long, utf8.RuneCountInString(s.Name))
	}
	for _, s := range subjects {
		p.hang(2, s.Name, s.Title, long+4)
	}
	p.gap()
	p.para(0, "", "fettle reckon SUBJECT --help says what a subject takes, with examples.")
	p.gap()
	p.para(0, "", exits(""))
	p.write(w)
}

// exits says what the exit status stands for.
func exits(no string) string {
	if no == "" {
		no = "the answer is no, such as where nothing serves"
	}
	return "Exit status: 0 answered, 1 " + no + ", 2 the question was not understood or the shop not read, 3 a fault of fettle's own."
}

// writeUsage is the page of one subject.
func (s *Subject) writeUsage(w io.Writer) {
	p := &page{}
	p.para(0, "", s.Name+": "+s.Title)
	p.gap()
	p.para(2, "fettle reckon "+s.Name+" ", s.takes())
	p.gap()
	for _, x := range s.Words {
		p.want(x)
	}
	for _, x := range s.Flags {
		p.want(x)
	}
	p.gap()
	p.line("As every subject:")
	for _, x := range common {
		p.want(x)
	}
	p.gap()
	p.line("Examples:")
	for _, e := range s.Examples {
		p.example("  fettle reckon "+s.Name, e)
	}
	p.gap()
	p.para(0, "", exits(s.No))
	p.write(w)
}

// example writes a command; where it is too long for a line, it goes on in the next behind the
// stroke that a shell takes for that.
func (p *page) example(line string, args []string) {
	for _, a := range args {
		a = commandLine([]string{a})
		if utf8.RuneCountInString(line)+1+utf8.RuneCountInString(a)+2 > wide {
			p.line(line + " \\")
			line = "     "
		}
		line += " " + a
	}
	p.line(line)
}

func (s *Subject) takes() string {
	var out []string
	add := func(shown string, needed bool) {
		if !needed {
			shown = "[" + shown + "]"
		}
		out = append(out, shown)
	}
	for _, w := range s.Words {
		add(w.Name, w.Needed)
	}
	for _, w := range s.Flags {
		add(flagLine(w), w.Needed)
	}
	return strings.Join(append(out, "[--shop FOLDER]"), " ")
}

func flagLine(w Want) string {
	switch {
	case w.isWord():
		return w.Name
	case w.Name == "shop":
		return "--shop FOLDER"
	}
	return strings.TrimSpace(w.shown() + " " + w.stands())
}

const usageColumn = 22

func (p *page) want(w Want) {
	says := w.Says
	if w.Kind != Text && w.Kind != Texts && w.Kind != OneOf && w.Kind != YesNo {
		says += "; " + w.wanted()
	}
	p.hang(2, flagLine(w), says, usageColumn)
}

// commandLine writes words so that they can be typed again: those with blanks or signs that a
// shell reads in quotes.
func commandLine(words []string) string {
	var out []string
	for _, w := range words {
		if strings.ContainsAny(w, " #'\"$&;|<>()*?\\") {
			w = `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, `$`, `\$`).Replace(w) + `"`
		}
		out = append(out, w)
	}
	return strings.Join(out, " ")
}
