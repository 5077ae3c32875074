"""Solves the jobs that main.go has written a second time and compares
every flow. Only general-purpose libraries are used: fluids for the friction
factor, scipy for roots and for the pump's curve, numpy for the linear step.

The way is another than the engine's: unknown are the heads at the junctions
alone, each link's flow is the root of its own loss at the difference of heads
(scipy's brentq), and the sums of flow at the junctions are brought to zero by
scipy's root (hybr), with Newton's steps after it."""

import json
import sys
from collections import Counter

import numpy as np
from scipy.optimize import brentq, root

import laws
import pace

REL, ABS = 1e-6, 1e-9  # m3/s: how far two flows may differ, either will do
BALANCED = 2e-12       # m3/s: what may be left at a junction when the search is called done


class Way:
    """A link, with the outlet it ends at where it is the only one there."""

    def __init__(self, job, link, nu):
        self.a, self.b = link["from"], link["to"]
        self.forth = self.back = True
        self.laws, self.pipes, pump = [], [], False
        for p in link["parts"]:
            sign = -1 if p.get("reverse") else 1
            if p["kind"] == "shut":
                self.forth = self.back = False
                continue
            make = {"pipe": laws.Pipe, "pump": laws.Pump}.get(p["kind"], laws.Minor)
            law = make(p, nu)
            self.laws.append((sign, law))
            if p["kind"] == "pipe":
                self.pipes.append(law)
            if p["kind"] in ("check", "pump"):
                self.forth, self.back = self.forth and sign > 0, self.back and sign < 0
        for end, sign in ((self.b, 1), (self.a, -1)):
            if job["nodes"][end]["kind"] in ("lip", "end"):
                self.laws.append((sign, laws.Air(job["nodes"][end], nu)))
                self.forth, self.back = self.forth and sign > 0, self.back and sign < 0
        self.size = 1e-3

    def loss(self, q):
        return sum(s * law.loss(s * q) for s, law in self.laws)

    def flow(self, dh):
        """Flow at the drop of head from a to b, and its rise with the drop."""
        at0 = self.loss(0.0)
        sign = 1 if dh > at0 else -1
        if dh == at0 or (sign > 0 and not self.forth) or (sign < 0 and not self.back):
            return 0.0, 0.0
        far = self.size
        while sign * (self.loss(sign * far) - dh) < 0:
            far *= 2
        ends = sorted((0.0, sign * far))
        q = brentq(lambda x: self.loss(x) - dh, *ends, xtol=1e-18, rtol=1e-15)
        self.size = max(2 * abs(q), 1e-6)
        step = min(max(abs(q) * 1e-6, 1e-12), abs(q) / 2) or 1e-12
        return q, 2 * step / (self.loss(q + step) - self.loss(q - step))


def solve(job):
    """The flows of a job, and what is left at the worst junction."""
    nu = laws.viscosity(job["celsius"])
    ways = [Way(job, l, nu) for l in job["links"]]
    heads = np.array([x["level"] for x in job["nodes"]])
    row = {v: i for i, v in enumerate(i for i, x in enumerate(job["nodes"]) if x["kind"] == "junction")}
    for i, x in enumerate(job["nodes"]):
        if x["kind"] in ("lip", "end"):
            heads[i] = 0  # the level is in the way's own loss
    flows = np.zeros(len(ways))

    def sums(x):
        for v, i in row.items():
            heads[v] = x[i]
        f, j = np.zeros(len(row)), np.zeros((len(row), len(row)))
        for k, w in enumerate(ways):
            flows[k], g = w.flow(heads[w.a] - heads[w.b])
            for v, s in ((w.a, -1), (w.b, 1)):
                if v in row:
                    f[row[v]] += s * flows[k]
                    for u, t in ((w.a, 1), (w.b, -1)):
                        if u in row:
                            j[row[v], row[u]] += s * t * g
        return f, j

    if not row:
        sums(())
        return flows, 0.0, ways
    start = np.full(len(row), 2.0) + 0.1 * np.arange(len(row))
    x = root(sums, start, jac=True, method="hybr", options={"xtol": 1e-14}).x
    left, j = sums(x)
    for _ in range(200):  # where hybr ends short: Newton's steps, halved until the sums shrink
        if np.abs(left).max() < BALANCED:
            break
        step = np.linalg.solve(j - 1e-9 * np.eye(len(row)), -left)
        size = np.linalg.norm(left)
        for _ in range(40):
            f, jj = sums(x + step)
            if np.linalg.norm(f) < size:
                break
            step = step / 2
        else:
            break
        x, left, j = x + step, f, jj
    left, _ = sums(x)
    return flows, np.abs(left).max(), ways


def compare(name, job, seen):
    """The worst difference in a job as a part of what is allowed, and faults."""
    faults, worst = [], 0.0
    if not job["converged"]:
        faults.append(f"{name}: no answer of ours")
    theirs, left, ways = solve(job)
    if not left < 1e-10:
        faults.append(f"{name}: scipy's search ends with {left:.1e} m3/s left at a junction")
    if len(job["flows"]) != len(theirs):
        faults.append(f"{name}: {len(job['flows'])} flows of ours, {len(theirs)} links")
    for k, (ours, other) in enumerate(zip(job["flows"], theirs)):
        far = abs(ours - other) / max(ABS, REL * abs(other))
        worst = max(worst, far) if far == far else float("inf")
        if not far <= 1:
            faults.append(f"{name}, link {k}: ours {ours!r}, theirs {other!r} m3/s")
        seen["flows"] += 1
        seen["no flow"] += other == 0
        for p in ways[k].pipes:
            re = p.reynolds(other)
            if re > 0:
                seen["laminar" if re <= 2000 else "bridge" if re < 4000 else "turbulent"] += 1
    for node in job["nodes"]:
        seen["lips"] += node["kind"] == "lip"
    seen.update(set(job.get("why", [])))
    return worst, faults


def teeth(job):
    """A flow that is off by three times what is allowed must be found."""
    wrong = dict(job, flows=[q * (1 + 3 * REL) for q in job["flows"]])
    if not compare("teeth", wrong, Counter())[1]:
        sys.exit("the comparison passes a flow that is wrong")


MUST_SEE = ("no flow", "laminar", "bridge", "turbulent", "lips", "network.link.held", "network.pump.stalled", "network.outlet.dry")


def main():
    data = json.load(sys.stdin)
    seen, worst, kinds, faults = Counter(), 0.0, Counter(), []
    if len(data["jobs"]) < 200:
        faults.append(f"only {len(data['jobs'])} jobs: the comparison is of 200 or more")
    for i, job in enumerate(data["jobs"] + [data["timed"]]):
        far, bad = compare(f"job {i} ({job['kind']})", job, seen)
        kinds[job["kind"]] += 1
        worst = max(worst, far)
        faults += bad
    faults += [f"no job shows: {what}" for what in MUST_SEE if not seen[what]]
    print(f"seed {data['seed']}: {sum(kinds.values())} jobs:", ", ".join(f"{n} {k}" for k, n in kinds.items()))
    print("seen:", ", ".join(f"{n} {k}" for k, n in sorted(seen.items())))
    print(f"worst difference: {worst:.2g} of what is allowed ({REL:g} of the flow or {ABS:g} m3/s)")
    if faults:
        sys.exit("\n".join(faults) + f"\n{len(faults)} differences")
    teeth(data["timed"])
    pace.report(data["timed"], solve(data["timed"])[2][0], sys.argv[1])


if __name__ == "__main__":
    main()
