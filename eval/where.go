package eval

import (
	"fettle/schema/model"
	"fettle/schema/text"
)

// Place is where a finding about the cut belongs: the first of the named attributes that
// is written in its step or its set-up, else the step itself, else the set-up.
func (k *Cut) Place(attrs ...string) text.Place {
	if k.Step.Step != nil {
		if at, ok := written(k.Step.Step.Item, attrs); ok {
			return at
		}
	}
	if at, ok := written(k.Step.Work.SetUp.Item, attrs); ok {
		return at
	}
	if k.Step.Step != nil {
		return k.Step.Step.Item.At
	}
	return k.Step.Work.SetUp.Item.At
}

// Place is where a finding about the holding belongs: the first of the named attributes
// that is written in the set-up, else its head.
func (h *Holding) Place(attrs ...string) text.Place {
	if at, ok := written(h.Work.SetUp.Item, attrs); ok {
		return at
	}
	return h.Work.SetUp.Item.At
}

// Place is where a finding about the measurement belongs.
func (m *Measurement) Place(attrs ...string) text.Place {
	if at, ok := written(m.Step.Step.Item, attrs); ok {
		return at
	}
	return m.Step.Step.Item.At
}

func written(i *model.Item, attrs []string) (text.Place, bool) {
	for _, name := range attrs {
		if a := i.Attr(name); a != nil {
			return a.Value.At, true
		}
	}
	return text.Place{}, false
}

// ToolPath names the tool of a cut for causes: "slitting_saw.fine".
func (k *Cut) ToolPath() string {
	if k.Choice.Tool.Cutter == nil {
		return ""
	}
	return k.Choice.Tool.Path()
}

// Place is where a finding about an operation on a lathe belongs: the first of the named
// attributes that is written in its step or its set-up, else the step itself.
func (k *Turn) Place(attrs ...string) text.Place {
	for _, i := range []*model.Item{k.Step.Step.Item, k.Step.Work.SetUp.Item} {
		if at, ok := written(i, attrs); ok {
			return at
		}
	}
	return k.Step.Step.Item.At
}

// ToolPath names the tool of an operation on a lathe: "turning_tool.knife".
func (k *Turn) ToolPath() string { return k.Choice.Tool.Path() }

// Place is where a finding about a holding on a lathe belongs: the first of the named
// attributes that is written in the set-up, else its head.
func (h *Chucking) Place(attrs ...string) text.Place {
	if at, ok := written(h.Work.SetUp.Item, attrs); ok {
		return at
	}
	return h.Work.SetUp.Item.At
}
