package job

import (
	"reflect"
	"strconv"
	"strings"
	"unicode"

	"plashet/engine/trace"
)

// Where tells a place in the job in the job's own words: for
// "/watercourses/0/parts/2/lip/width" it is "watercourse cascade, part 3, lip
// lower, width". It goes as far as the path fits the document; elements without
// a name are counted from 1. A nil job gives the words without the names.
func (j *Job) Where(path string) string { return j.PlaceOf(path).String() }

// PlaceOf tells the same place step by step, for another language.
func (j *Job) PlaceOf(path string) trace.Place {
	var out trace.Place
	f, v := plan, reflect.ValueOf(j).Elem()
	tokens := pointer(path)
	for i := 0; i < len(tokens); i++ {
		word := spaced(tokens[i])
		k := -1
		if f != nil {
			if n, ok := f.byName[tokens[i]]; ok {
				k = n
			}
		}
		if k < 0 { // a field there is not, or one inside a quantity
			f = nil
			out = append(out, trace.Step{Word: word})
			continue
		}
		fd := &f.fields[k]
		f = fd.form
		if v.IsValid() {
			v = v.Field(fd.index)
		}
		name := ""
		switch {
		case fd.shape == shapeList && i+1 < len(tokens):
			i++
			word, name, v = element(word, tokens[i], f, v)
		case fd.shape == shapeOne && v.IsValid() && !v.IsNil():
			v = v.Elem()
			name = nameOf(f, v)
		case fd.shape == shapeOne:
			v = reflect.Value{}
		}
		out = append(out, trace.Step{Word: word, Name: name})
	}
	return out
}

// One is the word for one entry of a list: "price" of "prices", "tax" of "taxes".
func One(list string) string {
	if one, ok := strings.CutSuffix(list, "xes"); ok {
		return one + "x"
	}
	return strings.TrimSuffix(list, "s")
}

// element names one element of a list: by its name, or by its number.
func element(list, index string, f *form, v reflect.Value) (word, name string, elem reflect.Value) {
	word = One(list)
	n, err := strconv.Atoi(index)
	if err != nil {
		return word, index, reflect.Value{}
	}
	if v.IsValid() && n >= 0 && n < v.Len() {
		elem = v.Index(n)
		name = nameOf(f, elem)
	}
	if name == "" {
		name = strconv.Itoa(n + 1)
	}
	return word, name, elem
}

// nameOf gives what tells an element apart, for people.
func nameOf(f *form, v reflect.Value) string {
	names := make([]string, 0, len(f.keys))
	for _, k := range f.keys {
		if s := v.Field(f.fields[k].index).String(); s != "" {
			names = append(names, snippet(s))
		}
	}
	return strings.Join(names, " ")
}

// spaced writes the name of a field as words: "waterTemperature" is "water
// temperature".
func spaced(name string) string {
	var b strings.Builder
	for i, r := range name {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}
