package job

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"
)

// TestNameTooLong: however long a name is, one limit is told of it, and no fault
// prints more of it than a line holds.
func TestNameTooLong(t *testing.T) {
	for _, n := range []int{201, 1999, 5000} {
		long := strings.Repeat("n", n)
		_, faults := Read(fmt.Appendf(nil, `{"format": "plashet job", "version": 1, "name": "x", "units": "us", "pumps": [{"name": "%s"}, {"name": "%s"}]}`, long, long))
		if len(faults) < 2 {
			t.Fatal(faults)
		}
		for _, f := range faults {
			for _, a := range f.Args {
				if f.Code == CodeLong && a.Name == "limit" && a.Text != "200" {
					t.Errorf("%d letters: %s are the most", n, a.Text)
				}
				if utf8.RuneCountInString(a.Text) > 100 {
					t.Errorf("%d letters: %s prints %d", n, f.Code, utf8.RuneCountInString(a.Text))
				}
			}
		}
	}
}

// TestWhereOne: an entry of a list is told by the word for one of it.
func TestWhereOne(t *testing.T) {
	j := &Job{}
	for path, want := range map[string]string{"/offer/taxes/0/name": "offer, tax 1, name", "/prices/1/item": "price 2, item", "/vault/obstacles/0/name": "vault, obstacle 1, name"} {
		if got := j.Where(path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
}
