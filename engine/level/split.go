package level

import "math"

// water is what pond and vault hold.
type water struct{ pond, vault float64 }

func (w water) sum() float64 { return w.pond + w.vault }

// place is pond and vault with their levels.
type place struct {
	water
	zPond, zVault float64
	missing       float64
}

// basin is pond and vault together: how water settles between them.
type basin struct {
	in     *Inputs
	weir   *sillWeir // nil without a sill
	screen float64
	low    float64 // level below which the pump takes no more from the vault
}

func (b *basin) pondVolume(z float64) float64 { return float64(b.in.Pond.Volume(lengthOf(z))) }

func (b *basin) vaultVolume(z float64) float64 {
	if b.in.Vault == nil {
		return 0
	}
	return float64(b.in.Vault.Body.Volume(lengthOf(z)))
}

// pondLevel gives the level for a volume; what is short of an empty pond is
// missing.
func (b *basin) pondLevel(v float64) (z, missing float64) {
	level, ok := b.in.Pond.Level(volumeOf(v))
	if !ok {
		missing = b.pondVolume(float64(level)) - v
	}
	return float64(level), missing
}

func (b *basin) placed(zPond, zVault float64) place {
	return place{water: water{b.pondVolume(zPond), b.vaultVolume(zVault)}, zPond: zPond, zVault: zVault}
}

// pondWith puts all but the vault's water in the pond.
func (b *basin) pondWith(total, zVault float64) place {
	vault := b.vaultVolume(zVault)
	z, missing := b.pondLevel(total - vault)
	p := b.placed(z, zVault)
	p.missing = missing
	return p
}

// common puts a total into pond and vault at levels that differ by what behind
// tells: the vault's level for the pond's. The sum grows with the pond's level,
// so it has one root.
func (b *basin) common(total, lowest float64, behind func(float64) float64) place {
	if b.in.Vault == nil {
		z, missing := b.pondLevel(total)
		p := b.placed(z, z)
		p.missing = missing
		return p
	}
	// With the vault empty the pond would stand highest.
	highest, _ := b.pondLevel(total - b.vaultVolume(math.Inf(-1)))
	z := root(func(z float64) float64 { return b.pondVolume(z) + b.vaultVolume(behind(z)) - total }, lowest, max(lowest, highest))
	p := b.placed(z, behind(z))
	if short := p.sum() - total; short > emptySlack*math.Abs(total) && z <= lowest {
		p.missing = short
	}
	return p
}

// running gives pond and vault in steady running with a total, the vault having
// held before at most prior. Three ranges join without a step as the total
// falls: the weir drowned and the vault a little below the pond; the weir just
// free, the pond steady at what it needs and the vault drawn from the sill down
// to the pump's least level; the vault down there and the pond below what the
// weir needs: starved.
func (b *basin) running(total, prior float64) place {
	if b.weir == nil {
		return b.common(total, float64(b.in.Pond.Floor()), func(z float64) float64 { return z - b.screen })
	}
	needed := b.weir.needed()
	full := b.pondVolume(needed)
	top := b.weir.crest - b.screen
	low := min(b.low, top)
	switch {
	case total >= full+b.vaultVolume(top):
		return b.common(total, needed, func(z float64) float64 { return b.weir.behind(z) - b.screen })
	case total >= full+b.vaultVolume(low):
		z, _ := b.in.Vault.Body.Level(volumeOf(total - full))
		return b.placed(needed, min(top, float64(z)))
	}
	if v := b.vaultVolume(low); v > prior {
		z, _ := b.in.Vault.Body.Level(volumeOf(prior))
		low = float64(z)
	}
	return b.pondWith(total, low)
}

// rest lets pond and vault come to rest from what each holds: above the sill
// they share a level, below it each keeps its own.
func (b *basin) rest(w water) place {
	if b.weir == nil {
		return b.common(w.sum(), float64(b.in.Pond.Floor()), func(z float64) float64 { return z })
	}
	crest := b.weir.crest
	pond, vault := b.pondVolume(crest), b.vaultVolume(crest)
	if w.sum() >= pond+vault {
		return b.common(w.sum(), crest, func(z float64) float64 { return z })
	}
	// At most one of the two can stand above the sill: the excess runs over.
	total := w.sum()
	held := min(w.vault, vault)
	if total-held > pond {
		held = total - pond
	}
	z, _ := b.in.Vault.Body.Level(volumeOf(held))
	return b.pondWith(total, float64(z))
}
