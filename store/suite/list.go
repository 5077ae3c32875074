package suite

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"plashet/store"
)

// ids lists in one page and holds the order against the wanted.
func ids(t *testing.T, s store.Store, q store.Query, want ...string) {
	t.Helper()
	entries, _, err := s.List(ctx, q)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		got = append(got, e.ID)
	}
	if !slices.Equal(got, want) {
		t.Errorf("list %+v is %q, want %q", q, got, want)
	}
}

// lists saves all at one time, so that only the order of the saves is left.
func lists(t *testing.T, s store.Store) {
	const n = 23
	var want []string
	for i := range n {
		id := fmt.Sprintf("d%02d", (i*7)%n)
		put(t, s, id, 0, change(id))
		want = append(want, id)
	}
	put(t, s, "d03", 1, change("again"))
	want = append(slices.DeleteFunc(want, func(id string) bool { return id == "d03" }), "d03")
	slices.Reverse(want)
	if _, err := s.Put(ctx, store.Pumps, "shelf", 0, change("shelf")); err != nil {
		t.Fatal(err)
	}
	var got []string
	q := store.Query{Kind: store.Job, Limit: 5}
	for page := range n {
		entries, more, err := s.List(ctx, q)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			got = append(got, e.ID)
			q.Before = e.Cursor
		}
		if page == 0 {
			e := entries[0]
			c := change("again")
			if e.Kind != store.Job || e.Number != 2 || e.Who != c.Who || !e.When.Equal(c.When) || e.Summary != c.Summary {
				t.Errorf("the entry is %+v", e)
			}
			// A job saved between two pages moves up; the others stay in their
			// places.
			put(t, s, entries[len(entries)-1].ID, 1, change("between"))
		}
		if !more {
			break
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("pages give %q, want %q", got, want)
	}
	ids(t, s, store.Query{Kind: store.Pumps}, "shelf")
	ids(t, s, store.Query{Kind: store.Prices})
	if all, more, err := s.List(ctx, store.Query{Kind: store.Job, Limit: n}); err != nil || len(all) != n || more {
		t.Errorf("a page that just holds all: %d, more %v, %v", len(all), more, err)
	}
}

func searches(t *testing.T, s store.Store) {
	for id, sum := range map[string]store.Summary{
		"umlaut": {Name: "Mühle am Teich", Place: "ÖDHOF"},
		"under":  {Name: "a_b", Place: "50 % off"},
		"plain":  {Name: "axb", Place: "50 x off"},
		"back":   {Name: `a\b`, Place: "two  words"},
	} {
		c := change(id)
		c.Summary = sum
		put(t, s, id, 0, c)
	}
	for text, want := range map[string]string{
		"mühle": "umlaut", "MÜHLE": "umlaut", "ödhof": "umlaut", "_": "under", "%": "under", "x": "plain", `\`: "back", "two words": "back", " two  ": "back",
		"' or 1=1 --": "", "teich ödhof": "", "a_b 50": "",
	} {
		if want == "" {
			ids(t, s, store.Query{Kind: store.Job, Text: text})
			continue
		}
		ids(t, s, store.Query{Kind: store.Job, Text: text}, want)
	}
	ids(t, s, store.Query{Kind: store.Job, Text: strings.Repeat("long ", 100_000)})
	ids(t, s, store.Query{Kind: store.Job, Text: "\x00\xff"})
	// What is sought is what stands there now.
	c := change("renamed")
	put(t, s, "umlaut", 1, c)
	ids(t, s, store.Query{Kind: store.Job, Text: "mühle"})
	ids(t, s, store.Query{Kind: store.Job, Text: "RENAMED"}, "umlaut")
}

func since(t *testing.T, s store.Store) {
	if e, err := s.Since(ctx, 0, 5); err != nil || len(e) != 0 {
		t.Fatal(e, err)
	}
	for i := range 12 {
		put(t, s, fmt.Sprint("d", i), 0, change("x"))
	}
	put(t, s, "d4", 1, change("again"))
	var got []string
	var cursor int64
	for {
		page, err := s.Since(ctx, cursor, 5)
		if err != nil {
			t.Fatal(err)
		}
		if len(page) == 0 {
			break
		}
		for _, e := range page {
			if e.Cursor <= cursor {
				t.Fatal("the cursor does not grow")
			}
			cursor = e.Cursor
			got = append(got, fmt.Sprint(e.ID, ".", e.Number))
		}
	}
	if want := "d0.1 d1.1 d2.1 d3.1 d5.1 d6.1 d7.1 d8.1 d9.1 d10.1 d11.1 d4.2"; strings.Join(got, " ") != want {
		t.Errorf("got %q", got)
	}
}

func places(t *testing.T, s store.Store) {
	if err := s.SetPlace(ctx, "a", "glue", []byte("1")); !errors.Is(err, store.ErrNone) {
		t.Error("a place with nothing:", err)
	}
	put(t, s, "a", 0, change("a"))
	put(t, s, "b", 0, change("b"))
	cursor, _ := s.Since(ctx, 0, 0)
	if v, err := s.Place(ctx, "a", "glue"); err != nil || v != nil {
		t.Error(v, err)
	}
	for _, v := range []string{"one", "two\x00\xff"} {
		if err := s.SetPlace(ctx, "a", "glue", []byte(v)); err != nil {
			t.Fatal(err)
		}
		if got, err := s.Place(ctx, "a", "glue"); err != nil || string(got) != v {
			t.Errorf("got %q, %v", got, err)
		}
	}
	if err := s.SetPlace(ctx, "a", "cut", []byte("x")); err != nil {
		t.Fatal(err)
	}
	if v, err := s.Place(ctx, "b", "glue"); err != nil || v != nil {
		t.Error("another's place:", v, err)
	}
	if n, err := s.Places(ctx, "a"); err != nil || !slices.Equal(n, []string{"cut", "glue"}) {
		t.Error(n, err)
	}
	if err := s.SetPlace(ctx, "a", "cut", nil); err != nil {
		t.Fatal(err)
	}
	if n, err := s.Places(ctx, "a"); err != nil || !slices.Equal(n, []string{"glue"}) {
		t.Error("an empty place stays:", n, err)
	}
	if err := s.SetPlace(ctx, "a", "", []byte("x")); !errors.Is(err, store.ErrName) {
		t.Error(err)
	}
	if err := s.SetPlace(ctx, "a", "x", make([]byte, store.MostPlace+1)); !errors.Is(err, store.ErrLarge) {
		t.Error(err)
	}
	after, _ := s.Since(ctx, 0, 0)
	if !slices.Equal(cursor, after) {
		t.Error("a place is no change of the document")
	}
}

func texts(t *testing.T, s store.Store) {
	for i, text := range []string{"½ ¾ ″ ′", "池と滝", "é é", "🐟", "שלום", "line\nline\ttab", `"'\%_$1`, ""} {
		id := fmt.Sprintf("ü-%d-🐟", i)
		c := store.Change{Who: text, When: noon, What: text, Data: []byte(text), Summary: store.Summary{Name: text, Place: text, Stage: text, Worst: text}}
		put(t, s, id, 0, c)
		r, err := s.Get(ctx, id)
		if err != nil {
			t.Fatal(err)
		}
		same(t, r, id, 1, c)
	}
	// Texts that no database takes are made fit; the bytes stay as they are.
	bad := "a\x00b\xffc"
	r := put(t, s, "bad", 0, store.Change{Who: bad, When: noon, What: strings.Repeat("é", store.MostText), Data: []byte(bad), Summary: store.Summary{Name: bad}})
	got, err := s.Get(ctx, "bad")
	if err != nil {
		t.Fatal(err)
	}
	if got.Who != "a\uFFFDb\uFFFDc" || got.Summary.Name != got.Who || string(got.Data) != bad || got.Who != r.Who || len(got.What) != store.MostText {
		t.Errorf("%+.200v", got)
	}
}

func large(t *testing.T, s store.Store) {
	c := change("large")
	c.Data = bytes.Repeat([]byte("\x00\xff0123456789abcd"), store.MostData/16)
	put(t, s, "a", 0, c)
	r, err := s.Get(ctx, "a")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(r.Data, c.Data) || r.Digest != store.Digest(c.Data) {
		t.Error("the bytes came back changed")
	}
	c.Data = append(c.Data, 0)
	if _, err := s.Put(ctx, store.Job, "a", 1, c); !errors.Is(err, store.ErrLarge) {
		t.Error(err)
	}
}

// ownBytes writes over bytes that went in and came out.
func ownBytes(t *testing.T, s store.Store) {
	c := change("a")
	r := put(t, s, "a", 0, c)
	clear(c.Data)
	clear(r.Data)
	g, err := s.Get(ctx, "a")
	if err != nil {
		t.Fatal(err)
	}
	clear(g.Data)
	v := []byte("v")
	if err := s.SetPlace(ctx, "a", "p", v); err != nil {
		t.Fatal(err)
	}
	clear(v)
	if v, err := s.Place(ctx, "a", "p"); err != nil || string(v) != "v" {
		t.Error(v, err)
	}
	g, err = s.At(ctx, "a", 1)
	if err != nil {
		t.Fatal(err)
	}
	same(t, g, "a", 1, change("a"))
}

func cancelled(t *testing.T, s store.Store) {
	put(t, s, "a", 0, change("a"))
	over, cancel := context.WithCancel(ctx)
	cancel()
	_, err := s.Put(over, store.Job, "a", 1, change("b"))
	errs := []error{err}
	_, err = s.Get(over, "a")
	errs = append(errs, err)
	_, err = s.At(over, "a", 1)
	errs = append(errs, err)
	_, err = s.History(over, "a", 0, 0)
	errs = append(errs, err)
	_, _, err = s.List(over, store.Query{Kind: store.Job})
	errs = append(errs, err)
	_, err = s.Since(over, 0, 0)
	errs = append(errs, err)
	_, err = s.Place(over, "a", "p")
	errs = append(errs, err, s.SetPlace(over, "a", "p", []byte("x")))
	for i, err := range errs {
		if !errors.Is(err, context.Canceled) {
			t.Errorf("call %d: %v", i, err)
		}
	}
	r, err := s.Get(ctx, "a")
	if err != nil || r.Number != 1 {
		t.Error("the store is of no more use, or the save was written:", r.Number, err)
	}
}
