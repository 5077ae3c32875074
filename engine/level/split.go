package level

import "math"

// water is what pond and vault hold.
type water struct{ pond, vault float64 }

func (w water) sum() float64 { return w.pond + w.vault }

// place is pond and vault with their levels.
type place struct {
	water
	zPond, zVault float64
}

// basin is pond and vault together: how water settles between them.
type basin struct {
	in     *Inputs
	weir   *sillWeir // nil without a sill
	screen float64
	low    float64 // level below which the pump takes no more from the vault
}

// pondVolume is the pond's water at a level: nothing where less was measured
// than the drawing has below it.
func (b *basin) pondVolume(z float64) float64 { return max(0, float64(b.in.Pond.Volume(lengthOf(z)))) }

// pondFloor is the level of the empty pond.
func (b *basin) pondFloor() float64 { return b.pondLevel(0) }

func (b *basin) vaultVolume(z float64) float64 {
	if b.in.Vault == nil {
		return 0
	}
	return float64(b.in.Vault.Body.Volume(lengthOf(z)))
}

func (b *basin) pondLevel(v float64) float64 {
	z, _ := b.in.Pond.Level(volumeOf(v))
	return float64(z)
}

func (b *basin) placed(zPond, zVault float64) place {
	p := place{water: water{b.pondVolume(zPond), b.vaultVolume(zVault)}, zPond: max(zPond, b.pondFloor()), zVault: zVault}
	if b.in.Vault == nil {
		p.zVault = p.zPond
	}
	return p
}

// apart gives pond and vault the levels of what each holds.
func (b *basin) apart(w water) place {
	p := place{water: w, zPond: b.pondLevel(w.pond)}
	p.zVault = p.zPond
	if b.in.Vault != nil {
		z, _ := b.in.Vault.Body.Level(volumeOf(w.vault))
		p.zVault = float64(z)
	}
	return p
}

// common puts a total into pond and vault at levels that differ by what behind
// tells: the vault's level for the pond's. The sum grows with the pond's level,
// so it has one root, looked for from lowest up.
func (b *basin) common(total, lowest float64, behind func(float64) (level, grows float64)) place {
	if b.in.Vault == nil {
		z := b.pondLevel(total)
		return b.placed(z, z)
	}
	// With the vault empty the pond would stand highest.
	highest := b.pondLevel(total - b.vaultVolume(math.Inf(-1)))
	z := newtonRoot(func(z float64) (over, slope float64) {
		pond, area := b.in.Pond.Filled(lengthOf(z))
		if pond < 0 { // see pondVolume
			pond, area = 0, 0
		}
		level, grows := behind(z)
		vault, plan := b.in.Vault.Body.Filled(lengthOf(level))
		if plan == 0 {
			grows = 0 // however fast its level grows under its floor
		}
		return float64(pond+vault) - total, float64(area) + float64(plan)*grows
	}, lowest, max(lowest, highest))
	level, _ := behind(z)
	return b.placed(z, level)
}

// floor is a level of the pond below which pond and open vault, which stands
// lower by drop, are both empty.
func (b *basin) floor(drop float64) float64 {
	z := b.pondFloor()
	if b.in.Vault != nil {
		z = min(z, float64(b.in.Vault.Body.Floor())+drop)
	}
	return z
}

// steady gives pond and vault in steady running with all of the flow, for the
// water in both. With a sill two ranges join without a step as the water gets
// less: the weir drowned and the vault a little below the pond; the weir just
// free, the pond steady at what it needs and the vault drawn from the sill down
// to the pump's least level. With less than that no steady running is possible
// (see solver.run); the pond is then told as if it went on falling.
func (b *basin) steady(total float64) place {
	if b.weir == nil {
		return b.common(total, b.floor(b.screen), func(z float64) (level, grows float64) { return z - b.screen, 1 })
	}
	needed := b.weir.needed()
	full := b.pondVolume(needed)
	top := b.weir.crest - b.screen
	switch low := b.drawn(); {
	case total >= full+b.vaultVolume(top):
		return b.common(total, needed, func(z float64) (level, grows float64) {
			level, grows = b.weir.behind(z)
			return level - b.screen, grows
		})
	case total >= full+b.vaultVolume(low):
		z, _ := b.in.Vault.Body.Level(volumeOf(total - full))
		return b.placed(needed, min(top, float64(z)))
	default:
		return b.placed(b.pondLevel(total-b.vaultVolume(low)), low)
	}
}

// drawn is the vault's level when the pump has drawn it down.
func (b *basin) drawn() float64 {
	if b.weir == nil {
		return b.low
	}
	return min(b.low, b.weir.crest-b.screen)
}

func same(z float64) (level, grows float64) { return z, 1 }

// rest lets pond and vault come to rest from what each holds: above the sill
// they share a level, below it each keeps its own.
func (b *basin) rest(w water) place {
	if b.weir == nil {
		return b.common(w.sum(), b.floor(0), same)
	}
	crest := b.weir.crest
	pond, vault := b.pondVolume(crest), b.vaultVolume(crest)
	if w.sum() >= pond+vault {
		return b.common(w.sum(), crest, same)
	}
	// At most one of the two can stand above the sill: the excess runs over.
	whole := w.sum()
	held := min(w.vault, vault)
	if whole-held > pond {
		held = whole - pond
	}
	return b.apart(water{whole - held, held})
}
