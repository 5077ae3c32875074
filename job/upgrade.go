package job

import (
	"slices"
	"strconv"

	"plashet/engine/trace"
)

// step brings the raw document from one version to the next. It changes names
// and places, never what was typed: a field keeps its line in the file. What
// it does not know it leaves alone, for the decoder to report.
type step func(d *decoder, root *node)

// steps lists the steps, from version 0 on; one for each version but the
// newest. A step is never changed once its newer version has been written by a
// released program; testdata/v<n> holds documents of each version for ever.
var steps = [Version]step{
	fromDraft,
}

// Upgrade gives an older document in the newest version's canonical form, and
// the version it was in. With faults in the document it gives none.
func Upgrade(data []byte) (upgraded []byte, from int, faults []trace.Fault) {
	j, _, d := decode(data)
	if faults = d.finish(j); len(faults) > 0 {
		return nil, d.from, faults
	}
	upgraded, err := Encode(j)
	if err != nil { // cannot happen: Decode keeps nothing that Encode refuses
		return nil, d.from, []trace.Fault{{Message: trace.Message{Code: CodeUnreadable, Args: []trace.Arg{trace.Str("found", err.Error())}}}}
	}
	return upgraded, d.from, nil
}

func (d *decoder) upgrade(root *node, from int) {
	d.from = from
	for v := from; v < Version; v++ {
		steps[v](d, root)
	}
	root.get("version").text = strconv.Itoa(Version)
}

// fromDraft leads from version 0, the draft of the document, to version 1:
// "pump" is now "use", "falls" are now "watercourses".
func fromDraft(d *decoder, root *node) {
	d.rename(root, "pump", "use")
	d.rename(root, "falls", "watercourses")
}

// rename gives a field its new name. Where the new name stands too, the old
// field is told and left out.
func (d *decoder) rename(n *node, old, now string) {
	held := n.get(now) != nil
	n.members = slices.DeleteFunc(n.members, func(m member) bool {
		if held && m.name == old {
			d.push(old)
			d.add(m.at, CodeUpgradeHeld, trace.Str("field", old), trace.Str("near", now))
			d.pop()
		}
		return held && m.name == old
	})
	for i := range n.members {
		if n.members[i].name == old {
			n.members[i].name = now
		}
	}
}
