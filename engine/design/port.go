package design

import (
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// pumpBody fills the pump in the attitude that the assembly names, or in its
// first one, which is then an assumption.
func (m *model) pumpBody(pumpIndex int, in *layout.Input) bool {
	pump, wanted := &m.job.Pumps[pumpIndex], m.job.Assembly.Attitude
	path := at("/pumps", pumpIndex)
	for i := range pump.Attitudes {
		t := &pump.Attitudes[i]
		if t.Name != wanted && wanted != "" {
			continue
		}
		if wanted == "" {
			m.assume("/assembly/attitude", AssumeAttitude, unit.Value{}, leftEmpty, trace.Str("name", pump.Name), trace.Str("attitude", t.Name))
		}
		end, ok := m.port(pump, path+"/port")
		if !ok {
			return false
		}
		in.Pump = m.body(pump, t, end, path)
		return true
	}
	m.fault("/assembly/attitude", CodeAttitude, trace.Str("name", pump.Name))
	return false
}

// body gives the pump in one of its attitudes.
func (m *model) body(pump *job.Pump, t *job.Attitude, outlet layout.End, path string) layout.Pump {
	return layout.Pump{
		Name: pump.Name, Port: vec(t.Port), Points: way(t.Points), Outlet: outlet, Path: path,
		Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, geom.Vec3{X: float64(t.Length.SI), Y: float64(t.Width.SI), Z: float64(t.Height.SI)})},
	}
}

// way gives the direction of a port's word, before the pump is turned.
func way(word string) geom.Vec3 {
	switch word {
	case "up":
		return geom.Vec3{Z: 1}
	case "down":
		return geom.Vec3{Z: -1}
	case "left":
		return geom.Vec3{X: -1}
	case "right":
		return geom.Vec3{X: 1}
	case "front":
		return geom.Vec3{Y: -1}
	case "back":
		return geom.Vec3{Y: 1}
	}
	return geom.Vec3{}
}

// port makes the pump's outlet, its size written as the catalogue does.
func (m *model) port(pump *job.Pump, path string) (layout.End, bool) {
	p := &pump.Port
	size, socket := strings.TrimSpace(p.Size), layout.Measure{}
	switch {
	case size == "":
	case threadStandard(p.Thread) != "":
		t, err := m.thread(p.Thread, size)
		if err != nil {
			m.fault(path+"/size", CodePortSize, m.portSize(pump)...)
			return layout.End{}, false
		}
		size = t.Size
	case p.Thread == "socket" || p.Thread == "spigot":
		if pipe, err := m.pipe(job.PipeName{Kind: m.job.Assembly.Pipe.Kind, Size: size}); err == nil {
			size = pipe.Size
		}
		// The depth of a pump's socket is on no sheet: a coupling's stands for it.
		if c, err := m.book.Fitting("coupling", size, m.measured); err == nil {
			socket = layout.Measure{Length: c.Socket.Length, Source: c.Socket.Source, Least: c.Socket.MeasureFirst}
		}
	}
	end, ok := layout.Port(p.Thread, size, socket)
	if !ok || size == "" {
		m.fault(path, CodePort, trace.Str("name", pump.Name))
		return layout.End{}, false
	}
	return end, true
}

// threadStandard gives the table of a port's thread; "" for other connections.
func threadStandard(thread string) string {
	switch {
	case strings.HasPrefix(thread, "NPT "):
		return "NPT"
	case strings.HasPrefix(thread, "BSP"): // the sizes of both families are alike
		return "BSPT"
	}
	return ""
}

// thread reads the size of a pipe thread: in inches ("1-1/2"), with the letter
// of its family before it ("G 1-1/2", "R 1-1/2", "Rp 1-1/2"), or as a DN.
func (m *model) thread(thread, text string) (catalog.Thread, error) {
	low := strings.ToLower(text)
	for _, letter := range []string{"npt", "rp", "rc", "r", "g"} {
		if rest, ok := strings.CutPrefix(low, letter); ok {
			text = strings.TrimSpace(rest)
			break
		}
	}
	return m.book.FindThread(threadStandard(thread), text)
}

// portSize tells what a size that is no thread's may have been meant for.
func (m *model) portSize(pump *job.Pump) []trace.Arg {
	p := &pump.Port
	args := []trace.Arg{trace.Str("name", pump.Name), trace.Str("size", p.Size), trace.Str("thread", p.Thread)}
	plain := strings.TrimSpace(strings.TrimSuffix(strings.TrimLeft(strings.ToLower(p.Size), "d "), "mm"))
	if t, err := m.thread(p.Thread, "DN "+plain); err == nil {
		args = append(args, trace.Str("dn", plain), trace.Str("inch", t.Size))
	}
	if f, err := m.book.Fitting("female adapter", "d"+plain, nil); err == nil {
		args = append(args, trace.Str("pipe", plain), trace.Str("usual", f.Ends[0].Size))
	}
	return args
}
