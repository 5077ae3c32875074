package job

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"plashet/engine/unit"
)

// shape says how a field is written in the file.
type shape uint8

const (
	shapeText  shape = iota // a text
	shapeBool               // true or false
	shapeWhole              // a whole number
	shapeEntry              // a quantity: text, bare number or object
	shapeLevel              // an elevation: the same, or a survey point with an offset
	shapeMoney              // an amount: text or bare number
	shapePart               // an object with fields of its own
	shapeList               // a list of such objects
	shapeOne                // one of the kinds an object may be: a pointer to an object
)

// field is what the tags of one struct field say. Decoder, encoder, schema and
// docs all work from it.
type field struct {
	name    string // in the file
	index   int    // in the struct
	shape   shape
	must    bool // want:"must"
	key     bool // key:"yes": tells its list's elements apart
	kind    unit.Kind
	limited bool
	lo, hi  float64  // range, SI
	words   []string // one-of
	doc, eg string
	form    *form // of shapePart, shapeList, shapeOne
}

// leaf tells that the field has no fields of its own.
func (f *field) leaf() bool { return f.form == nil }

// form is the plan of one struct type.
type form struct {
	typ    reflect.Type
	name   string // of the Go type: "CurvePoint"
	fields []field
	byName map[string]int
	union  bool // all fields are kinds the object may be; exactly one is given
	keys   []int
}

// plan is the document's form, compiled once from the tags and never changed.
var plan = compile(reflect.TypeFor[Job](), map[reflect.Type]*form{})

var (
	typeLevel    = reflect.TypeFor[Level]()
	typeMoney    = reflect.TypeFor[Money]()
	typeQuantity = reflect.TypeFor[quantity]()
)

// compile reads the tags of a struct. A tag that makes no sense is a
// programmer's mistake and panics when the program starts.
func compile(t reflect.Type, done map[reflect.Type]*form) *form {
	if f, ok := done[t]; ok {
		return f
	}
	f := &form{typ: t, name: t.Name(), byName: map[string]int{}, union: true}
	done[t] = f
	for i := range t.NumField() {
		fd := compileField(t, t.Field(i), done)
		fd.index = i
		f.union = f.union && fd.shape == shapeOne
		f.byName[fd.name] = len(f.fields)
		if fd.key {
			f.keys = append(f.keys, len(f.fields))
		}
		f.fields = append(f.fields, fd)
	}
	if len(f.byName) != len(f.fields) || len(f.fields) == 0 || len(f.fields) > 64 {
		panic("job: " + t.Name() + " has no fields, too many, or two of one name")
	}
	return f
}

func compileField(owner reflect.Type, sf reflect.StructField, done map[reflect.Type]*form) field {
	bad := func(what string) { panic(fmt.Sprintf("job: field %s.%s: %s", owner.Name(), sf.Name, what)) }
	name, _, _ := strings.Cut(sf.Tag.Get("json"), ",")
	fd := field{
		name: name, doc: sf.Tag.Get("doc"), eg: sf.Tag.Get("eg"),
		must: sf.Tag.Get("want") == "must", key: sf.Tag.Get("key") == "yes",
	}
	if w := sf.Tag.Get("one-of"); w != "" {
		fd.words = strings.Split(w, ",")
	}
	if lim := sf.Tag.Get("range"); lim != "" {
		lo, hi, _ := strings.Cut(lim, "..")
		var errLo, errHi error
		fd.lo, errLo = strconv.ParseFloat(lo, 64)
		fd.hi, errHi = strconv.ParseFloat(hi, 64)
		if errLo != nil || errHi != nil || !(fd.lo < fd.hi) {
			bad("range is not low..high")
		}
		fd.limited = true
	}
	if name == "" || fd.doc == "" {
		bad("has no name or no doc")
	}
	switch t := sf.Type; {
	case t == typeMoney:
		fd.shape = shapeMoney
	case reflect.PointerTo(t).Implements(typeQuantity):
		fd.shape = shapeEntry
		if t == typeLevel {
			fd.shape = shapeLevel
		}
		kind, ok := unit.KindByName(sf.Tag.Get("kind"))
		if q := reflect.New(t).Interface().(quantity); !ok || kind.Dim() != q.dim() {
			bad("kind does not fit the quantity")
		}
		if !fd.limited {
			bad("a quantity needs a range")
		}
		fd.kind = kind
	case t.Kind() == reflect.String:
		fd.shape = shapeText
	case t.Kind() == reflect.Bool:
		fd.shape = shapeBool
	case t.Kind() == reflect.Int:
		fd.shape, fd.kind = shapeWhole, unit.KindCount
		if !fd.limited {
			bad("a whole number needs a range")
		}
	case t.Kind() == reflect.Struct:
		fd.shape, fd.form = shapePart, compile(t, done)
	case t.Kind() == reflect.Slice && t.Elem().Kind() == reflect.Struct:
		fd.shape, fd.form = shapeList, compile(t.Elem(), done)
	case t.Kind() == reflect.Pointer && t.Elem().Kind() == reflect.Struct:
		fd.shape, fd.form = shapeOne, compile(t.Elem(), done)
	default:
		bad("has a type the document does not know")
	}
	return fd
}

// example is a text as the field may be written, in the units and marks of the
// system. The tags' examples are in US units; the metric ones are converted from
// them.
func (f *field) example(s unit.System) string {
	switch {
	case f.shape == shapeMoney:
		return typedExample(f.eg, unit.Style{Marks: s.Marks(), Currency: noCurrency})
	case f.shape == shapeLevel && s.Is(unit.Metric):
		return f.marked(f.metricLevel(s), s)
	case f.shape == shapeEntry && s.Is(unit.Metric) && f.kind.UnitName(unit.US) != f.kind.UnitName(unit.Metric):
		read, err := unit.Parse(f.eg, f.kind, unit.US)
		if err != nil { // cannot happen: a test reads every example
			return f.kind.Example(s)
		}
		return f.marked(unit.Value{SI: read.SI, Kind: f.kind}.Format(s.Base()), s)
	case f.eg != "" && (f.shape == shapeEntry || f.shape == shapeLevel):
		return f.marked(f.eg, s)
	case f.eg != "":
		return f.eg
	case len(f.words) > 0:
		return f.words[0]
	case f.shape == shapeBool:
		return "true"
	}
	return f.kind.Example(s)
}

// marked writes an example with the marks that the job's numbers are shown with,
// where what is typed so is read as that number: “0,76 m”, but “243.840 m” where a
// comma could part thousands.
func (f *field) marked(eg string, s unit.System) string {
	text := s.Marks().Write(eg)
	_, typed, _ := splitLevel(text)
	_, plain, _ := splitLevel(eg)
	own, err := unit.Parse(typed, f.kind, s)
	meant, bad := unit.Parse(plain, f.kind, s.Base())
	if err == nil && bad == nil && own.SI == meant.SI {
		return text
	}
	return s.Typed().Marks().Write(eg)
}

// metricLevel is the example of a level with its offset in millimetres.
func (f *field) metricLevel(s unit.System) string {
	point, offset, _ := splitLevel(f.eg)
	read, err := unit.Parse(offset, f.kind, unit.US)
	if err != nil {
		return f.eg // without an offset
	}
	sign := "+"
	if read.SI < 0 {
		sign = "-"
	}
	return "@" + point + " " + sign + " " + unit.Value{SI: math.Abs(read.SI), Kind: unit.KindTape}.Format(s.Base())
}

// words lists the names of the fields.
func (f *form) words() []string {
	names := make([]string, len(f.fields))
	for i := range f.fields {
		names[i] = f.fields[i].name
	}
	return names
}

// known lists the names of the fields for a message.
func (f *form) known() string { return strings.Join(f.words(), ", ") }

// names lists the fields of a set.
func (f *form) names(set uint64) string {
	var in []string
	for i := range f.fields {
		if set&(1<<i) != 0 {
			in = append(in, f.fields[i].name)
		}
	}
	return strings.Join(in, ", ")
}
