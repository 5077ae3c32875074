package serve

import (
	"context"
	"fmt"
	"sync"
	"time"

	"plashet/app"
)

// Limits on work beside the pages: what is done goes when so many are kept, and
// nobody's forgotten run holds the machine for longer than that.
const (
	mostKept  = 64
	mostWaits = 16
	mostTime  = 10 * time.Minute
)

// Beside does long work in the background, some of it at once. Its zero value
// is not ready: use NewBeside.
type Beside struct {
	ctx  context.Context
	room chan struct{} // one for each run that goes on
	log  func(key string, err error)

	mu    sync.Mutex
	runs  map[string]*run
	order []string // as begun
	all   sync.WaitGroup
}

type run struct {
	app.Run
	stop context.CancelFunc
}

var _ app.Runs = (*Beside)(nil)

// NewBeside makes room for so many runs at once. All end when the context does;
// what fails on our side is told to log.
func NewBeside(ctx context.Context, atOnce int, log func(key string, err error)) *Beside {
	return &Beside{ctx: ctx, room: make(chan struct{}, max(1, atOnce)), log: log, runs: map[string]*run{}}
}

// Start begins work in place of what ran under the key.
func (b *Beside) Start(key, of string, w app.Work) bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	waiting := 0
	for k, r := range b.runs {
		if !r.Done && k != key {
			waiting++
		}
	}
	if waiting >= mostWaits || b.ctx.Err() != nil {
		return false
	}
	if old, ok := b.runs[key]; ok {
		old.stop()
		b.forget(key)
	}
	for i := 0; len(b.order) >= mostKept && i < len(b.order); {
		if k := b.order[i]; b.runs[k].Done {
			b.forget(k)
			continue
		}
		i++
	}
	ctx, stop := context.WithTimeout(b.ctx, mostTime)
	r := &run{stop: stop}
	r.Of, r.Waits = of, true
	b.runs[key], b.order = r, append(b.order, key)
	b.all.Go(func() {
		defer stop()
		b.do(ctx, key, r, w)
	})
	return true
}

// do waits for room and works.
func (b *Beside) do(ctx context.Context, key string, r *run, w app.Work) {
	var result any
	failed := true
	defer func() {
		if p := recover(); p != nil && b.log != nil {
			b.log(key, fmt.Errorf("panic: %v", p))
		}
		b.mu.Lock()
		defer b.mu.Unlock()
		r.Waits, r.Done, r.Failed, r.Result = false, true, failed, result
	}()
	select {
	case b.room <- struct{}{}:
	case <-ctx.Done():
		failed = false
		return
	}
	defer func() { <-b.room }()
	b.mu.Lock()
	r.Waits = false
	b.mu.Unlock()
	result = w(ctx, func(progress string) {
		b.mu.Lock()
		defer b.mu.Unlock()
		r.Progress = progress
	})
	failed = false
}

func (b *Beside) forget(key string) {
	delete(b.runs, key)
	for i, k := range b.order {
		if k == key {
			b.order = append(b.order[:i], b.order[i+1:]...)
			return
		}
	}
}

// Look gives the run of a key.
func (b *Beside) Look(key string) (app.Run, bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	r, ok := b.runs[key]
	if !ok {
		return app.Run{}, false
	}
	return r.Run, true
}

// Stop asks a run to end with what it has.
func (b *Beside) Stop(key string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if r, ok := b.runs[key]; ok {
		r.stop()
	}
}

// Wait waits until all that was begun has ended.
func (b *Beside) Wait() { b.all.Wait() }
