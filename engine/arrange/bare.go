package arrange

// bareChain makes the chain of an order's elbows alone. It has no less room than
// any chain with valve and union among them: a joint that one of these may part
// can be of any length, even where a spigot would go straight into a socket, and
// no piece of pipe is too long for the pieces at hand, because it may become two.
// Nil where the pieces do not go together.
func (w *worker) bareChain(o *order) *chain {
	parts := o.parts(-1, -1, false)
	c := w.chain(o, parts)
	if c == nil || o.check == nil && o.union == nil {
		return c
	}
	c.parted = true
	for i := len(o.start); i <= min(len(parts)-len(o.tail), len(parts)-1); i++ {
		if c.slot[i] < 0 && c.made[i] == nil {
			c.slot[i] = c.vars - 1 // the slide stays last
			c.vars++
		}
	}
	return c
}
