package catalog

import (
	"fmt"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Book holds every table of the catalogue, ready to be asked. It is built
// once by New, never changes, and may be asked from several goroutines.
type Book struct {
	tables map[string]*table

	kinds     map[string]*kind // by name as printed and by folded name
	kindNames []string
	pipes     map[pipeKey]Pipe
	pipeSizes map[string][]string // by kind
	inchOfDN  map[int64]size
	hoseInch  map[size]size // the inch size that a hose's bore goes by

	models    map[string]*model // by name as printed and by folded name
	names     []string          // of fittings with dimensions
	sockets   map[socketKey]Dimension
	laying    map[layingKey]Dimension
	bodySizes map[string][]string // by series
	nominal   map[size]float64    // the nominal inches a size goes by
	threads   map[threadKey]Thread

	losses    map[string][]lossRow // by name of the fitting, best first
	lossNames []string
	fT        map[float64]float64 // by nominal inches; Crane's older table
	fTSource  string

	sets, cures []timedRow
	joints      []jointsRow
	jointRules  map[string][]JointRule // by topic
	holdSmall   Span[unit.Duration]
	holdLarge   Span[unit.Duration]
	holdSmallTo float64 // nominal inches

	twist       unit.Angle
	twistTo     float64 // nominal inches
	twistSource trace.Source
	bevel       Bevel
	damp        Factor
	primer      Factor
	turns, tape Span[float64]
	derates     []derateRow
	threaded    Factor
	expansions  []Expansion
	supports    map[supportKey][]supportRow
	ratings     map[pipeKey]rating
	rules       map[string][]Rule // by topic
	hazen       HazenWilliams
}

// Factor is a number without unit and its source.
type Factor struct {
	Value  unit.Ratio
	Source trace.Source
}

// Span is a value that its source gives as a range (Low equals High where it
// gives one number).
type Span[Q ~float64] struct {
	Low, High Q
	Source    trace.Source
}

// Mid gives the middle of the range.
func (s Span[Q]) Mid() Q { return (s.Low + s.High) / 2 }

// New reads the embedded tables. An error means that the program was built
// with damaged data.
func New() (*Book, error) {
	b := &Book{tables: map[string]*table{}}
	for _, name := range tableNames {
		t, err := readTable(name)
		if err != nil {
			return nil, err
		}
		b.tables[name] = t
	}
	l := &loader{}
	for _, load := range []func(*loader){
		b.loadRatings, b.loadPipes, b.loadHoses, b.loadNominal, b.loadBodies, b.loadThreads, b.loadLosses,
		b.loadJoints, b.loadSupports, b.loadPractice,
	} {
		if load(l); l.err != nil {
			return nil, fmt.Errorf("catalogue: %w", l.err)
		}
	}
	return b, nil
}
