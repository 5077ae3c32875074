package job

import (
	"reflect"
	"strconv"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Sort is how a field is filled in.
type Sort string

// The sorts.
const (
	SortText     Sort = "text"
	SortWord     Sort = "word" // one of Field.Words
	SortYes      Sort = "yes"  // true or empty
	SortWhole    Sort = "whole"
	SortQuantity Sort = "quantity"
	SortLevel    Sort = "level" // a quantity, or a survey point with an offset
	SortMoney    Sort = "money"
	SortPart     Sort = "part" // has fields of its own
	SortList     Sort = "list" // of such parts
	SortKind     Sort = "kind" // one of the kinds its parent may be
)

// Field is one field of an object of the job as a form needs it.
type Field struct {
	Path    string // JSON pointer
	Name    string // in the file
	Label   string // the same as words
	Sort    Sort
	Kind    unit.Kind // of a quantity
	Words   []string  // of SortWord
	Must    bool
	Doc     string
	Example string // in the job's units
	Limits  string // likewise; "" where there are none
	Text    string // what stands there as typed, "" when empty
	Filled  bool   // it, or something in it, is filled
	Count   int    // of SortList
	Names   []string

	SI                      float64 // of a quantity; of a level with a point, the offset
	Bare                    bool    // a quantity typed as a number without unit
	Source, Tolerance, Note string  // of a quantity
}

// Fields lists the fields of the object at a path in document order; nil where
// no object can stand. The path need not be filled: then the fields are empty.
func (j *Job) Fields(path string) []Field {
	f, v := j.object(path)
	if f == nil {
		return nil
	}
	list := make([]Field, 0, len(f.fields))
	for i := range f.fields {
		fd := &f.fields[i]
		fv := reflect.New(f.typ.Field(fd.index).Type).Elem()
		if v.IsValid() {
			fv = v.Field(fd.index)
		}
		list = append(list, j.field(path, fd, fv))
	}
	return list
}

// object goes to the object at a path; the value is not valid where the job has
// none there.
func (j *Job) object(path string) (*form, reflect.Value) {
	f, v := plan, reflect.ValueOf(j).Elem()
	tokens := pointer(path)
	for i := 0; i < len(tokens); i++ {
		k, ok := f.byName[tokens[i]]
		if !ok || f.fields[k].form == nil {
			return nil, reflect.Value{}
		}
		fd := &f.fields[k]
		f = fd.form
		if v.IsValid() {
			v = v.Field(fd.index)
		}
		switch {
		case fd.shape == shapeOne && v.IsValid():
			v = v.Elem() // not valid of nil
		case fd.shape == shapeList:
			i++
			if i == len(tokens) {
				return nil, reflect.Value{}
			}
			n, err := strconv.Atoi(tokens[i])
			if (err != nil || n < 0) && tokens[i] != "-" {
				return nil, reflect.Value{}
			}
			if v.IsValid() && err == nil && n < v.Len() {
				v = v.Index(n)
			} else {
				v = reflect.Value{}
			}
		}
	}
	return f, v
}

var sorts = map[shape]Sort{
	shapeText: SortText, shapeBool: SortYes, shapeWhole: SortWhole, shapeEntry: SortQuantity, shapeLevel: SortLevel,
	shapeMoney: SortMoney, shapePart: SortPart, shapeList: SortList, shapeOne: SortKind,
}

func (j *Job) field(parent string, fd *field, v reflect.Value) Field {
	s := j.System()
	x := Field{
		Path: parent + "/" + escape(fd.name), Name: fd.name, Label: spaced(fd.name), Sort: sorts[fd.shape], Kind: fd.kind, Words: fd.words,
		Must: fd.must, Doc: fd.doc,
	}
	if len(fd.words) > 0 {
		x.Sort = SortWord
	}
	switch fd.shape {
	case shapePart:
		x.Filled = !fd.form.empty(v)
		return x
	case shapeOne:
		x.Filled = !v.IsNil()
		return x
	case shapeList:
		x.Count, x.Filled = v.Len(), v.Len() > 0
		for i := range v.Len() {
			x.Names = append(x.Names, nameOf(fd.form, v.Index(i)))
		}
		return x
	}
	x.Example, x.Limits = fd.example(s), fd.limits(s)
	x.Text = fd.plain(v)
	x.Filled = x.Text != ""
	if fd.shape == shapeEntry || fd.shape == shapeLevel {
		if v.CanAddr() {
			r := v.Addr().Interface().(quantity).load()
			x.SI, x.Bare, x.Source, x.Tolerance, x.Note = r.SI, r.Bare, string(r.Source), r.Tolerance, r.Note
		}
	}
	return x
}

// plain is what stands in a field exactly as typed.
func (f *field) plain(v reflect.Value) string {
	switch f.shape {
	case shapeText:
		return v.String()
	case shapeBool:
		if v.Bool() {
			return "true"
		}
	case shapeWhole:
		if n := v.Int(); n != 0 {
			return strconv.FormatInt(n, 10)
		}
	case shapeMoney:
		return v.Interface().(Money).Text
	case shapeEntry, shapeLevel:
		return v.Addr().Interface().(quantity).load().Text
	}
	return ""
}

// Remove takes the element of a list, or the part, at a path out of the job:
// Remove("/runs/1"). What names it elsewhere stays and is told by Validate.
func (j *Job) Remove(path string) *trace.Fault {
	list, i, m := j.element(path)
	if m == nil {
		list.Set(reflect.AppendSlice(list.Slice3(0, i, i), list.Slice(i+1, list.Len())))
		return nil
	}
	return &trace.Fault{Message: *m, Path: path}
}

// Move brings the element of a list at a path to another place in it, counted
// from 0: the others keep their order.
func (j *Job) Move(path string, to int) *trace.Fault {
	list, i, m := j.element(path)
	if m != nil {
		return &trace.Fault{Message: *m, Path: path}
	}
	to = min(max(to, 0), list.Len()-1)
	step := 1
	if to < i {
		step = -1
	}
	swap := reflect.Swapper(list.Interface())
	for ; i != to; i += step {
		swap(i, i+step)
	}
	return nil
}

// element finds the list and the number of the element at a path.
func (j *Job) element(path string) (reflect.Value, int, *trace.Message) {
	tokens := pointer(path)
	nowhere := func() (reflect.Value, int, *trace.Message) {
		return reflect.Value{}, 0, &trace.Message{Code: CodeSetNowhere, Args: []trace.Arg{trace.Str("found", snippet(path)), trace.At("where", j.PlaceOf(path))}}
	}
	if len(tokens) < 2 {
		return nowhere()
	}
	parent := ""
	for _, t := range tokens[:len(tokens)-2] {
		parent += "/" + escape(t)
	}
	f, v := j.object(parent)
	if f == nil || !v.IsValid() {
		return nowhere()
	}
	k, ok := f.byName[tokens[len(tokens)-2]]
	n, err := strconv.Atoi(tokens[len(tokens)-1])
	if !ok || err != nil || f.fields[k].shape != shapeList || n < 0 || n >= v.Field(f.fields[k].index).Len() {
		return nowhere()
	}
	return v.Field(f.fields[k].index), n, nil
}
