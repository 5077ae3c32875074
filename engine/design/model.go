package design

import (
	"cmp"
	"errors"
	"strconv"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/hydro"
	"plashet/engine/layout"
	"plashet/engine/level"
	"plashet/engine/motion"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// model is the job made ready for the engine: what every later part reads.
type model struct {
	book     *catalog.Book
	job      *job.Job
	survey   job.Reduced
	water    hydro.Water
	measured []catalog.Measured
	out      *Result
	pipes    map[job.PipeName]catalog.Pipe // looked up already
	losses   map[job.PipeName]catalog.Loss // likewise, by fitting and size
	curves   map[int]*hydro.Curve          // made already, by the pump's index
	priced   []takeoff.Price               // the job's prices by the names of the list
	unread   []trace.Fault                 // of reading the document
	blind    bool                          // a fault of reading voids the levels
	heeded   []int                         // entries of the job's assumptions that something counts on
	instead  *hydro.Curve                  // takes the place of the pump's curve in a trial run
	laidFrom *layout.Input                 // what the assembly was laid from
	tees     func(path string) unit.Ratio  // in a trial run, what the losses of tees are multiplied by
	unpriced bool                          // a choice from a shelf without prices
	valves   map[string]checked            // of a choice, by run and choice of pipe
	quiet    bool                          // a trial run for a remedy or an option: nothing is told
}

// fault notes an error that voids what depends on it.
func (m *model) fault(path, code string, args ...trace.Arg) {
	if m.quiet {
		return
	}
	args = append(args, trace.At("where", m.job.PlaceOf(path)))
	m.out.Faults = append(m.out.Faults, trace.Fault{Message: trace.Message{Code: code, Args: args}, Path: path})
}

// pipe looks a pipe up, once.
func (m *model) pipe(name job.PipeName) (catalog.Pipe, error) {
	if p, ok := m.pipes[name]; ok {
		return p, nil
	}
	p, err := m.book.FindPipe(name.Kind, name.Size)
	if err == nil {
		m.pipes[name] = p
	}
	return p, err
}

// loss looks a fitting's loss up, once.
func (m *model) loss(fitting, size string) (catalog.Loss, error) {
	key := job.PipeName{Kind: fitting, Size: size}
	if l, ok := m.losses[key]; ok {
		return l, nil
	}
	l, err := m.book.LossMeasured(fitting, size, m.measured)
	if err == nil {
		m.losses[key] = l
	}
	return l, err
}

// refuse notes the error of an engine part, which carries its own message.
func (m *model) refuse(path string, err error) {
	var (
		ce *catalog.Error
		he *hydro.Error
		le *level.Error
		me *motion.Error
		ge *geom.Error
	)
	switch {
	case errors.As(err, &ce):
		m.fault(path, ce.Code, ce.Args...)
	case errors.As(err, &he):
		m.fault(path, he.Code, he.Args...)
	case errors.As(err, &le):
		m.fault(path, le.Code, le.Args...)
	case errors.As(err, &me):
		m.fault(cmp.Or(me.Path, path), me.Code, me.Args...)
	case errors.As(err, &ge):
		m.fault(path, string(ge.Code), trace.Str("name", ge.Name))
	default:
		m.fault(path, CodeRefused, trace.Str("cause", err.Error()))
	}
}

// assume notes a default in force.
func (m *model) assume(path, code string, v unit.Value, src trace.Source, args ...trace.Arg) {
	if m.quiet {
		return
	}
	m.out.Assumptions = append(m.out.Assumptions, trace.Assumption{
		Message: trace.Message{Code: code, Args: append(args, trace.Arg{Name: "value", Value: v})}, Path: path, Value: v, Source: src,
	})
}

func (m *model) find(f trace.Finding) {
	if !m.quiet {
		m.out.Findings = append(m.out.Findings, f)
	}
}

// remark notes a message of an engine part as a finding.
func (m *model) remark(path string, sev trace.Severity, msg trace.Message) {
	msg.Args = append(msg.Args, trace.At("where", m.job.PlaceOf(path)))
	m.find(trace.Finding{Message: msg, Path: path, Severity: sev})
}

func at(path string, i int) string { return path + "/" + strconv.Itoa(i) }

var practice = trace.Source{Title: "common practice, no source", Basis: trace.BasisPractice}

// Defaults of the site. Common practice, no source.
const (
	defaultTemperature unit.Temperature = 15
	defaultHours       unit.Duration    = 24 * unit.Hour
	defaultDays        unit.Ratio       = 365
	exitLoss           unit.Ratio       = 1 // all of the velocity head, Borda-Carnot
	curveReading       unit.Length      = 0.03
)

// start reads what everything else counts on: the survey, the water, the
// fitter's own measures.
func (m *model) start() bool {
	var faults []trace.Fault
	m.survey, faults = m.job.Elevations()
	_ = faults // job.Validate tells them; what they void stays empty here
	t := m.job.Site.WaterTemperature.Or(defaultTemperature)
	if m.job.Site.WaterTemperature.IsZero() {
		m.assume("/site/waterTemperature", AssumeTemperature, unit.Of(t, unit.KindTemperature), practice)
	}
	w, err := hydro.WaterAt(t)
	if err != nil {
		m.refuse("/site/waterTemperature", err)
		return false
	}
	m.water = w
	if !m.quiet {
		m.out.Water = w
	}
	if m.measured != nil {
		return true // a trial run: the fitter's own measures are read already
	}
	m.measured = make([]catalog.Measured, 0, len(m.job.Measured))
	for _, o := range m.job.Measured {
		c := catalog.Measured{Fitting: o.Fitting, Size: o.Size, Socket: o.Socket.SI, ToStop: o.ToStop.SI, Hub: o.Hub.SI, K: o.K.SI, Note: o.Note}
		switch o.Attitudes {
		case "any":
			c.Attitudes = catalog.AttitudesAny
		case "upright":
			c.Attitudes = catalog.AttitudesUpright
		case "level or upright":
			c.Attitudes = catalog.AttitudesLevelOrUpright
		}
		m.measured = append(m.measured, c)
	}
	return true
}

// pump gives the pump the job is designed with.
func (m *model) pump() (int, bool) {
	for i, p := range m.job.Pumps {
		if p.Name == m.job.Use || m.job.Use == "" {
			return i, true
		}
	}
	if len(m.job.Pumps) > 0 {
		m.fault("/use", CodeNoSuchPump, trace.Str("name", m.job.Use))
	} else {
		m.fault("/pumps", CodeNoPump)
	}
	return 0, false
}

// isCheck tells that a fitting is a check valve, by its name.
func isCheck(fitting string) bool { return strings.HasPrefix(fitting, "check valve") }
