package design_test

import (
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
)

// A job without a pump, and one whose pump in use is not among those given, get
// one sentence each, the one that is true of them.
func TestNoPumpIsToldOnce(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ doc, code string }{
		{`{"format":"plashet job","version":1,"name":"bare","units":"us"}`, design.CodeNoPump},
		{`{"format":"plashet job","version":1,"name":"bare","units":"us","use":"B","pumps":[{"name":"A"}]}`, design.CodeNoSuchPump},
	} {
		j, _ := job.Read([]byte(c.doc))
		if j == nil {
			t.Fatal("not read:", c.doc)
		}
		told := []string{}
		for _, f := range design.Solve(book, j).Faults {
			if f.Code == design.CodeNoPump || f.Code == design.CodeNoSuchPump {
				told = append(told, f.Code)
			}
		}
		if len(told) != 1 || told[0] != c.code {
			t.Errorf("%s: told %v, wanted %s once", c.doc, told, c.code)
		}
	}
}
