package arrange

// limber is a pattern of elbows whose angles are left open: of one leg, of all, or of
// the pump too. From seeds all round the bearings are sought at which its bones
// close: the first that closes from each seed, which is an end of all that do, and
// the one with the least pipe near by.
type limber struct {
	joints
	standing int
	kit      *kit
	base     *compass
	fills    []*fill
	seeds    []bearing
	step     float64 // rad: half of what seeds stand apart
	brief    bool    // where a seed closes, it is not closing that wants other angles: few are tried
	out      []way
	programs int
}

// unlock seeks the bearings at which patterns close and gives a way for each.
func (s *search) unlock(list []*limber) (out []way, programs int) {
	s.share(len(list), func(w *worker, i int) { w.unlock(list[i]) })
	for _, l := range list {
		out, programs = append(out, l.out...), programs+l.programs
	}
	return out, programs
}

// wayAt gives the way of a bearing.
func (s *search) wayAt(l *limber, b *found) way {
	v := way{standing: l.standing, kit: l.kit, turned: b.turned, compass: s.along(l, &b.bearing), fills: b.fills, odd: true}
	for i := range b.dirs {
		v.seq = append(v.seq, i)
	}
	return v
}

// How far the angles are let go.
type pass uint8

const (
	byCompass pass = iota // legs along the compass, and single rolled pairs
	byAngle               // legs anywhere
	byYaw                 // and the pump turned anyhow
)

// mostAngles is how many angles are sought together.
const mostAngles = 2

// limbersOf lists the patterns of n elbows with their angles left open.
func (s *search) limbersOf(p pass, n int, front []Layout) (list []*limber) {
	yaw := p == byYaw
	unknown := n - 2
	if yaw {
		unknown++
	}
	if s.glued.any() || unknown > mostAngles || unknown < 0 && n > 0 && !yaw {
		return nil
	}
	for i := range s.in.Standings {
		st := &s.in.Standings[i]
		turns := st.turnsOf()
		if i < len(s.idle) && s.idle[i] {
			continue
		}
		if yaw {
			if !st.turnable() {
				continue
			}
			turns = turns[:1] // the seeds go all round
		}
		for ki := range s.kits[i] {
			k := &s.kits[i][ki]
			if k.joined() {
				continue // where the stock is what fails no angle is sought, and a coupling mends nothing else
			}
			have, some := k.has(n)
			for pattern := range 1 << n {
				elbows, ok := elbowsOf(pattern, n, have)
				if !ok || !some {
					continue
				}
				fills := s.fills(&way{kit: k}, uint64(1<<n|pattern), n, st.Pump.Outlet, front)
				if len(fills) == 0 {
					continue
				}
				for _, turned := range turns {
					l := &limber{standing: i, kit: k, base: s.compassOf(i, turned), fills: fills}
					l.joints = joints{turns: elbows, free: make([]bool, n+1), yaw: yaw, port: st.Pump.Points.Unit()}
					for leg := 1; leg < n; leg++ {
						l.free[leg] = true
					}
					l.seed(turned, s.hole.Axis, max(unknown, 1))
					list = append(list, l)
				}
			}
		}
	}
	return list
}

// turnable tells that the pump may be turned by any angle.
func (s *Standing) turnable() bool { return len(s.Turns) == 0 && !s.Fixed }

// elbowsOf gives the elbows of a number's digits to the base of two; false where one
// of them is not at hand.
func elbowsOf(pattern, n int, have [2]bool) (out []turn, ok bool) {
	for i := range n {
		t := turn(pattern >> (n - 1 - i) & 1)
		if !have[t] {
			return nil, false
		}
		out = append(out, t)
	}
	return out, true
}
