//go:build unix

package arrange_test

import (
	"context"
	"fmt"
	"testing"

	"plashet/engine/arrange"
)

// measured are the searches whose work is measured: the family as a contractor's
// search has it, with play asked for, what would mend a vault in it where nothing
// fits; one of its vaults with short pipe and a coupling; of the standing set those that
// take longest.
func measured(b *testing.B) (names []string, inputs []arrange.Input) {
	book := newBook(b)
	add := func(name string, i arrange.Input) { names, inputs = append(names, name), append(inputs, i) }
	for _, v := range family(b) {
		i := v.input(b, book)
		i.Rules.Play = true
		add(v.Name, i)
		if v.Name == "rack" { // no piece of pipe is long: two are joined
			_, c := stock(b, book, v.Size, v.Flow, []string{"coupling"})
			c[0].Cost = prices["elbow 90"]
			i.Fittings = append(i.Fittings, c...)
			i.Pipes[0].AtHand = inches(7)
			add("rack coupled", i)
		}
	}
	for _, d := range standing(b) {
		switch d.seed {
		case 7255, 151, 14226:
			v, ok := d.vault(b, book)
			if !ok {
				b.Fatalf("%s gives no vault", d)
			}
			v.input.Rules.Brief = true
			add(fmt.Sprintf("standing %d", d.seed), v.input)
		case 456, 4376: // nothing fits: what is short is explained
			v, ok := d.vault(b, book)
			if !ok {
				b.Fatalf("%s gives no vault", d)
			}
			add(fmt.Sprintf("explained %d", d.seed), v.input)
		}
	}
	return names, inputs
}

// BenchmarkSearch tells the processor time of all cores together, which a busy
// machine changes least, beside the time by the clock: on one core and on two. What
// the second core gains is the clock's of the one over the clock's of the other, on a
// machine that has nothing else to do.
func BenchmarkSearch(b *testing.B) {
	names, inputs := measured(b)
	for k, i := range inputs {
		for _, cores := range []int{1, 2} {
			i.Rules.Cores = cores
			b.Run(fmt.Sprintf("%s/cores=%d", names[k], cores), func(b *testing.B) {
				b.ReportAllocs()
				before, nodes := cpu(b), 0
				for b.Loop() {
					out := arrange.Search(context.Background(), i, nil)
					nodes += out.Tally.Nodes
				}
				b.ReportMetric((cpu(b)-before).Seconds()/float64(b.N), "cpu-s/op")
				b.ReportMetric(float64(nodes)/float64(b.N), "nodes/op")
			})
		}
	}
}
