// Package quote turns what a job costs into the price a client is offered:
// material, labour, equipment and other costs, waste, contingency, markup or
// margin, tax by rule, rounding, deposit and stages, and what a change after the
// offer comes to. All amounts are decimal; every amount that is shown is whole
// coins, and what is shown adds up to the coin.
//
// Words, as they are used here. Markup is a share of cost put on top: price =
// cost x (1 + markup). Margin is the share of the price that is left when the
// cost is paid: price = cost / (1 - margin). Contingency is a share of cost held
// for what is not foreseen; it is cost. (Common practice, no source.)
//
// The order of reckoning, each amount rounded to coins, half a coin up on the
// magnitude: lines of cost; waste on the groups it is for; contingency on their
// sum; markup or margin, once for each group; the price shared among the scopes
// that the client sees; tax by rule; rounding of the total; deposit and stages.
//
// It knows no job document and no sentences. Bad input never panics: it comes
// back as faults, and what stands on them is left out and said to be.
package quote
