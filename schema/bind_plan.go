package schema

import (
	"fmt"
	"reflect"
	"strings"
	"sync"
	"unicode"

	"fettle/schema/model"
)

// A plan says, for one struct type and one kind of block, which attribute fills which
// field. It is worked out once.
//
//   - A field of type Known[T] is the attribute of its name in small letters (JawWidth is
//     jaw_width) or of its tag, where one of the attribute's forms can be a T. The same
//     word may mean different things in different kinds: Depth of a hole is not one of a
//     kind without depth, and a fly cutter's diameter is two lengths, not a set of sizes.
//   - A struct within is an object: its fields are the members. Said tells whether the
//     attribute was written. A field that is no member takes the value itself where it was
//     not written as an object: TeeSlots.Bare, DownTo.Face.
//   - A slice of structs is a list of objects; one object alone is a list of one.
//   - An embedded struct is as if its fields stood in the outer one.
//   - Pointers, and slices of them, are filled by hand.
type plan struct {
	fields []fieldPlan
}

type fieldPlan struct {
	at     int
	how    fieldWay
	name   string // of the attribute, dotted
	attr   *attr  // nil where the kind has no such attribute, or one of another form
	filler filler // of known and whole
	within *plan  // of embedded, object and objects
	std    model.Value
	stdIs  model.Origin
}

type fieldWay uint8

const (
	fillKnown fieldWay = iota
	fillWhole
	fillSaid
	fillBlock
	fillEmbedded
	fillObject
	fillObjects
)

// filler fills a field of one type Known[T].
type filler struct {
	fits func(form) bool
	fill func(field reflect.Value, v *model.Value) bool
	base func(field reflect.Value, k model.Known[struct{}])
}

// planKey names a plan: the struct and the kind it is filled from.
type planKey struct {
	of   reflect.Type
	kind string
}

var plans sync.Map // of planKey: *plan; filled once, the same whoever comes first

var blockType = reflect.TypeFor[*model.Item]()

func planOf(t reflect.Type, k *kind) *plan {
	key := planKey{t, k.Name}
	if p, ok := plans.Load(key); ok {
		return p.(*plan)
	}
	p, _ := plans.LoadOrStore(key, makePlan(t, "", k.attr, false))
	return p.(*plan)
}

// makePlan pairs the fields of a struct with attributes. The prefix is the object that the
// struct is, with its full stop; fixed says that the object has members of its own in the
// table, so that a field without one takes the whole value.
func makePlan(t reflect.Type, prefix string, find func(string) (*attr, bool), fixed bool) *plan {
	p := &plan{}
	for n := range t.NumField() {
		f := t.Field(n)
		name := f.Tag.Get("attr")
		if name == "" {
			name = snake(f.Name)
		}
		fp := fieldPlan{at: n, name: prefix + name}
		fill, isKnown := fillers()[f.Type]
		a, found := find(name)
		switch {
		case f.Type == blockType:
			fp.how = fillBlock
		case f.Name == "Said" && f.Type.Kind() == reflect.Bool:
			fp.how = fillSaid
		case f.Anonymous && f.Type.Kind() == reflect.Struct:
			fp.how, fp.within = fillEmbedded, makePlan(f.Type, prefix, find, fixed)
		case isKnown:
			fp.filler = fill
			if !found && fixed {
				fp.how, fp.name = fillWhole, strings.TrimSuffix(prefix, ".")
			}
			if found && anyForm(a, fill.fits) {
				fp.attr = a
				fp.std, fp.stdIs = standing(a)
			}
		case f.Type.Kind() == reflect.Struct:
			fp.how, fp.attr = fillObject, a
			fp.within = makePlan(f.Type, fp.name+".", membersOf(a), takesWhole(a))
			if found {
				fp.std, fp.stdIs = standing(a)
			}
		case f.Type.Kind() == reflect.Slice && f.Type.Elem().Kind() == reflect.Struct:
			fp.how, fp.attr = fillObjects, a
			fp.within = makePlan(f.Type.Elem(), fp.name+".", membersOf(a), false)
		default:
			continue
		}
		p.fields = append(p.fields, fp)
	}
	return p
}

func membersOf(a *attr) func(string) (*attr, bool) {
	if a == nil {
		return func(string) (*attr, bool) { return nil, false }
	}
	return a.member
}

// takesWhole says that an attribute may be written otherwise than as an object.
func takesWhole(a *attr) bool {
	return a != nil && anyForm(a, func(f form) bool { return f.Kind != formObject })
}

func anyForm(a *attr, fits func(form) bool) bool {
	for _, f := range a.Forms {
		if fits(f) {
			return true
		}
	}
	return false
}

// snake gives the attribute that a field is named after: JawWidth is jaw_width.
func snake(field string) string {
	var b strings.Builder
	for n, r := range field {
		if unicode.IsUpper(r) && n > 0 {
			b.WriteByte('_')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

// bound makes a struct of package model from an item of a kind that the table has.
func bound[T any](i *model.Item) *T {
	out := new(T)
	k := theTable().byName[i.Kind]
	if k == nil {
		panic(fmt.Sprintf("no kind is called %q", i.Kind))
	}
	v := reflect.ValueOf(out).Elem()
	planOf(v.Type(), k).fill(v, source{item: i, attrs: i.Attrs, here: true})
	return out
}

// source is what a struct is filled from: the attributes of an item, or the members of an
// object in it.
type source struct {
	item  *model.Item
	attrs []model.Attr
	whole *model.Attr // the object itself; nil for an item, or where it is not written
	here  bool        // written; what stands where nothing is written is filled in only then
}

func (p *plan) fill(v reflect.Value, from source) {
	for n := range p.fields {
		fp := &p.fields[n]
		field := v.Field(fp.at)
		switch fp.how {
		case fillBlock:
			field.Set(reflect.ValueOf(from.item))
		case fillEmbedded:
			fp.within.fill(field, from)
		case fillSaid:
			field.SetBool(from.whole != nil)
		case fillKnown:
			fp.known(field, from, fp.written(from))
		case fillObject:
			a := fp.written(from)
			fp.within.fill(field, from.into(a))
			if a == nil && from.here {
				fp.standingWhole(field)
			}
		case fillObjects:
			fp.list(field, from)
		}
	}
	p.takeWhole(v, from)
}

// takeWhole gives the value of an attribute that was not written as an object to the first
// field that can hold it.
func (p *plan) takeWhole(v reflect.Value, from source) {
	taken := from.whole == nil || from.whole.Value.Kind == model.Object
	for n := range p.fields {
		fp := &p.fields[n]
		if fp.how != fillWhole {
			continue
		}
		var a *model.Attr
		if !taken && fp.filler.fill(v.Field(fp.at), &from.whole.Value) {
			a, taken = from.whole, true
		}
		fp.base(v.Field(fp.at), from, a, a != nil)
	}
}

// standingWhole fills the field of an object that takes the whole value with what leaving
// the attribute out stands for: bought is "no".
func (fp *fieldPlan) standingWhole(v reflect.Value) {
	if fp.stdIs == model.Unknown {
		return
	}
	for n := range fp.within.fields {
		w := &fp.within.fields[n]
		if w.how == fillWhole && w.filler.fill(v.Field(w.at), &fp.std) {
			v.Field(w.at).FieldByName("From").Set(reflect.ValueOf(fp.stdIs))
			return
		}
	}
}

// written finds the attribute of a field among those that were written; nil if it is not.
func (fp *fieldPlan) written(from source) *model.Attr {
	if fp.attr == nil {
		return nil
	}
	if from.whole == nil {
		for n := range from.attrs {
			if from.attrs[n].Name == fp.attr.Name {
				return &from.attrs[n]
			}
		}
		return nil
	}
	return memberOf(from.attrs, fp.attr.last())
}

// into goes into an object.
func (from source) into(a *model.Attr) source {
	if a == nil {
		return source{item: from.item}
	}
	return source{item: from.item, attrs: a.Value.Object, whole: a, here: a.Value.Kind == model.Object}
}

// known fills one figure: as written, or as it stands where nothing is written.
func (fp *fieldPlan) known(field reflect.Value, from source, a *model.Attr) {
	if a != nil {
		fp.base(field, from, a, fp.filler.fill(field, &a.Value))
		return
	}
	fp.base(field, from, nil, false)
	if from.here && fp.attr != nil && fp.stdIs != model.Unknown && fp.filler.fill(field, &fp.std) {
		field.FieldByName("From").Set(reflect.ValueOf(fp.stdIs))
	}
}

// base notes where a figure is from, and what it is a fact of.
func (fp *fieldPlan) base(field reflect.Value, from source, a *model.Attr, ok bool) {
	k := model.Known[struct{}]{At: from.item.At, Of: from.item, Attr: fp.name}
	if a != nil {
		k.At = a.Value.At
		if k.At.None() {
			k.At = a.At
		}
	}
	if ok {
		k.From = model.Written
	}
	fp.filler.base(field, k)
}

func (fp *fieldPlan) list(field reflect.Value, from source) {
	a := fp.written(from)
	if a == nil {
		return
	}
	members := a.Value.List
	if a.Value.Kind == model.Object {
		members = []model.Value{a.Value}
	}
	out := reflect.MakeSlice(field.Type(), 0, len(members))
	for n := range members {
		if members[n].Kind != model.Object {
			continue
		}
		one := reflect.New(field.Type().Elem()).Elem()
		fp.within.fill(one, from.into(&model.Attr{Name: a.Name, Word: a.Word, At: a.At, Value: members[n]}))
		out = reflect.Append(out, one)
	}
	field.Set(out)
}

// fillers has a filler for each T of Known[T] in package model.
var fillers = sync.OnceValue(func() map[reflect.Type]filler {
	all := map[reflect.Type]filler{}
	reads(all, asNumber, formLength, formDimension, formAngle, formNumber, formWhole, formFigure)
	reads(all, asWhole, formWhole)
	reads(all, asYesNo, formYesNo)
	reads(all, asText, formText, formWord)
	reads(all, asSize, formLength, formDimension)
	reads(all, asThread, formThread)
	reads(all, asTaper, formTaper)
	reads(all, asFeed, formFeed)
	reads(all, asMaterial, formMaterial)
	reads(all, asPosition, formPlace)
	reads(all, asSizes, formSizes, formLength)
	reads(all, asSpeeds, formSpeeds)
	reads(all, asDepth, formLength, formDimension)
	reads(all, asShank, formTaper, formLength)
	reads(all, asTail, formThread)
	reads(all, asNose, formThread)
	reads(all, asLeadScrew, formLength)
	reads(all, asRef, formRef)
	readsList(all, asNumbers, formLength, formNumber, formAngle, formWhole)
	readsList(all, asTexts, formText, formWord)
	readsList(all, asThreads, formThread)
	readsList(all, asLeads, formWord)
	readsList(all, asPositions, formPlace)
	readsList(all, asRefs, formRef)
	return all
})

// reads enters the filler of Known[T], with the forms of the table that can be a T.
func reads[T any](all map[reflect.Type]filler, read func(*model.Value) (T, bool), forms ...formKind) {
	enter(all, read, func(f form) bool { return hasKind(forms, f.Kind) })
}

// readsList enters the filler of a list. Of an attribute that takes one or several, one
// form alone is enough.
func readsList[T any](all map[reflect.Type]filler, read func(*model.Value) (T, bool), forms ...formKind) {
	enter(all, read, func(f form) bool {
		if f.Kind == formList {
			return hasKind(forms, f.Of.Kind)
		}
		return f.Kind == formRef && hasKind(forms, formRef) || f.Kind == formPlace && hasKind(forms, formPlace)
	})
}

func hasKind(forms []formKind, k formKind) bool {
	for _, f := range forms {
		if f == k {
			return true
		}
	}
	return false
}

func enter[T any](all map[reflect.Type]filler, read func(*model.Value) (T, bool), fits func(form) bool) {
	all[reflect.TypeFor[model.Known[T]]()] = filler{
		fits: fits,
		fill: func(field reflect.Value, v *model.Value) bool {
			x, ok := read(v)
			if ok {
				field.Addr().Interface().(*model.Known[T]).V = x
			}
			return ok
		},
		base: func(field reflect.Value, b model.Known[struct{}]) {
			k := field.Addr().Interface().(*model.Known[T])
			k.From, k.At, k.Of, k.Attr = b.From, b.At, b.Of, b.Attr
		},
	}
}
