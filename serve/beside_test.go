package serve

import (
	"context"
	"strconv"
	"testing"
	"time"

	"plashet/app"
)

// until waits for a run to come to a state.
func until(t *testing.T, b *Beside, key string, is func(app.Run) bool) app.Run {
	t.Helper()
	for range 2000 {
		if r, ok := b.Look(key); ok && is(r) {
			return r
		}
		time.Sleep(time.Millisecond)
	}
	r, ok := b.Look(key)
	t.Fatalf("%s stays %+v %v", key, r, ok)
	return r
}

func done(r app.Run) bool { return r.Done }

// stopped works until it is told to stop, then gives what it has.
func stopped(ctx context.Context, tell func(string)) any {
	tell("half way")
	<-ctx.Done()
	return "what there was"
}

func TestBeside(t *testing.T) {
	ctx, end := context.WithCancel(context.Background())
	defer end()
	failed := ""
	b := NewBeside(ctx, 1, func(key string, _ error) { failed = key })
	b.Start("a", "of", stopped)
	if r := until(t, b, "a", func(r app.Run) bool { return r.Progress != "" }); r.Progress != "half way" || r.Done {
		t.Fatal(r)
	}
	b.Start("b", "of", func(context.Context, func(string)) any { return 7 })
	if r, _ := b.Look("b"); !r.Waits || r.Done {
		t.Error("it did not wait for room", r)
	}
	b.Stop("a")
	if r := until(t, b, "a", done); r.Result != "what there was" || r.Failed {
		t.Error(r)
	}
	if r := until(t, b, "b", done); r.Result != 7 {
		t.Error(r)
	}
	b.Start("c", "of", func(context.Context, func(string)) any { panic("our fault") })
	if r := until(t, b, "c", done); !r.Failed || failed != "c" {
		t.Error(r, failed)
	}
	b.Start("d", "of", stopped)
	until(t, b, "d", func(r app.Run) bool { return !r.Waits })
	b.Start("e", "of", stopped)
	b.Stop("e") // while it waits
	if r := until(t, b, "e", done); r.Result != nil || r.Failed {
		t.Error(r)
	}
	b.Start("d", "of", func(context.Context, func(string)) any { return "anew" })
	if r := until(t, b, "d", done); r.Result != "anew" {
		t.Error("the run before was not replaced", r)
	}
	if _, ok := b.Look("none"); ok {
		t.Error("a run that nobody began")
	}
	b.Start("f", "of", stopped)
	end()
	b.Wait()
	if r, _ := b.Look("f"); !r.Done {
		t.Error("it goes on though the program ends")
	}
	if b.Start("g", "of", stopped) {
		t.Error("begun after the end")
	}
}

// What is kept and what may wait has an end.
func TestBesideHasLimits(t *testing.T) {
	ctx, end := context.WithCancel(context.Background())
	defer end()
	b := NewBeside(ctx, 2, nil)
	for i := range mostKept + 20 {
		k := strconv.Itoa(i)
		if !b.Start(k, "of", func(context.Context, func(string)) any { return 1 }) {
			t.Fatal(k)
		}
		until(t, b, k, done)
	}
	if len(b.runs) > mostKept || len(b.order) != len(b.runs) {
		t.Errorf("%d are kept", len(b.runs))
	}
	n := 0
	for ; n < 100 && b.Start("w"+strconv.Itoa(n), "of", stopped); n++ {
	}
	if n != mostWaits {
		t.Errorf("%d wait", n)
	}
}
