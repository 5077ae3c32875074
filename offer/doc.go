// Package offer prices a job: it takes what the design needs, what the job says
// of labour, expenses, profit and tax, and has engine-free package quote work out
// the price, for the design itself and for every option, each as a whole design
// of its own. Where the rules for an amount differ, it prices both ends and the
// offer stands at the higher one. What changed since an offer was agreed comes as
// a change order.
package offer
