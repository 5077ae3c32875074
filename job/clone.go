package job

import "reflect"

// Clone copies the job so that nothing of it is shared.
func (j *Job) Clone() *Job {
	c := *j
	detach(plan, reflect.ValueOf(&c).Elem())
	return &c
}

// detach gives a copied struct lists and parts of its own.
func detach(f *form, v reflect.Value) {
	for i := range f.fields {
		fd := &f.fields[i]
		fv := v.Field(fd.index)
		switch fd.shape {
		case shapePart:
			detach(fd.form, fv)
		case shapeOne:
			if !fv.IsNil() {
				own := reflect.New(fd.form.typ)
				own.Elem().Set(fv.Elem())
				detach(fd.form, own.Elem())
				fv.Set(own)
			}
		case shapeList:
			if fv.IsNil() {
				continue
			}
			own := reflect.MakeSlice(fv.Type(), fv.Len(), fv.Len())
			reflect.Copy(own, fv)
			for k := range own.Len() {
				detach(fd.form, own.Index(k))
			}
			fv.Set(own)
		}
	}
}
