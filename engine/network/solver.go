package network

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Solver is a network made ready for solving many times.
type Solver struct{}

// NewSolver checks and orders a network. Faults name elements by index:
// "/nodes/3", "/links/0"; a faulty element is left out.
func NewSolver(n Network) (*Solver, []trace.Fault) { panic("not built") }

// NewState makes a state of the right size.
func (s *Solver) NewState() *State { panic("not built") }

// Solve finds the steady state. It allocates nothing.
func (s *Solver) Solve(st *State) Stop { panic("not built") }

// SetLevel changes the level of a node (crest, end, water) for the next solve.
func (s *Solver) SetLevel(node int, level unit.Length) { panic("not built") }

// SetLaw changes the law of a part for the next solve.
func (s *Solver) SetLaw(link, part int, law Law) { panic("not built") }

// PartLosses appends the loss of each part of a link at the state's flow.
func (s *Solver) PartLosses(st *State, link int, dst []unit.Head) []unit.Head { panic("not built") }

// Messages gives the reasons of a state as messages with the elements' names.
func (s *Solver) Messages(st *State) []trace.Message { panic("not built") }
