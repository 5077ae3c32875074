"""Opens DXF files with ezdxf, audits them, and prints what is in them as JSON:
version, units, counts by kind and layer, extent, texts, and by layer the closed
lines with area and length, the straight lines with their lengths, and the hatches
with their areas, without and with what is left out of them."""
import json, math, sys

import ezdxf
from ezdxf import bbox

out = {}
for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    audit = doc.audit()
    msp = doc.modelspace()
    found = {
        "version": doc.dxfversion, "units": doc.header["$INSUNITS"], "measurement": doc.header["$MEASUREMENT"],
        "errors": [e.message for e in audit.errors], "fixes": [e.message for e in audit.fixes],
        "layers": sorted(l.dxf.name for l in doc.layers), "kinds": {}, "onlayer": {}, "texts": [], "closed": [], "lines": [], "hatches": [], "unknown": [],
        "extmin": list(doc.header["$EXTMIN"])[:2], "extmax": list(doc.header["$EXTMAX"])[:2],
    }
    shapes = []
    for e in msp:
        kind, layer = e.dxftype(), e.dxf.layer
        found["kinds"][kind] = found["kinds"].get(kind, 0) + 1
        found["onlayer"][layer] = found["onlayer"].get(layer, 0) + 1
        if layer not in doc.layers:
            found["unknown"].append(layer)
        if kind == "TEXT":
            found["texts"].append([e.plain_text(), e.dxf.height, e.dxf.rotation])
            continue
        shapes.append(e)
        if kind == "LINE":
            found["lines"].append([layer, (e.dxf.end - e.dxf.start).magnitude, list(e.dxf.start)[:2], list(e.dxf.end)[:2]])
        if kind == "HATCH":
            rings = [[(x, y) for x, y, *_ in path.vertices] for path in e.paths]
            areas = [abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(r, r[1:] + r[:1]))) / 2 for r in rings]
            xs, ys = [x for x, _ in rings[0]], [y for _, y in rings[0]]
            found["hatches"].append({"layer": layer, "solid": bool(e.dxf.solid_fill), "outer": areas[0], "left": areas[0] - sum(areas[1:]),
                                     "low": [min(xs), min(ys)], "high": [max(xs), max(ys)]})
        if kind == "LWPOLYLINE" and e.closed:
            p = [(x, y) for x, y, *_ in e.get_points()]
            ring = list(zip(p, p[1:] + p[:1]))
            area = abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in ring)) / 2
            long = sum(math.dist(a, b) for a, b in ring)
            xs, ys = [a[0] for a in p], [a[1] for a in p]
            found["closed"].append([layer, area, long, max(xs) - min(xs), max(ys) - min(ys)])
    box = bbox.extents(shapes)
    if box.has_data:
        found["low"], found["high"] = list(box.extmin)[:2], list(box.extmax)[:2]
    out[name.rsplit("/", 1)[-1]] = found
json.dump(out, sys.stdout)
