"""How long one line of twelve elements takes by the libraries, beside ours in
the same run, in three ways: the elements one by one as laws.py has them; and
twice as somebody who wants speed would write it, the losses on one bore summed
beforehand and the lip's formula in place."""

import json
import subprocess
from math import pi
from timeit import repeat

from fluids.friction import Colebrook
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

import laws

GOAL = 50  # times as fast as the libraries


def line(job):
    """The excess of the pump's head over what the line needs, of one bore:
    with fluids' default Colebrook (by Lambert's W) and scipy's curve, and with
    fluids' quick Colebrook (Clamond) and the curve's cubics taken by hand."""
    nu = laws.viscosity(job["celsius"])
    parts, lip = job["links"][0]["parts"], job["nodes"][1]
    pipes = [p for p in parts if p["kind"] == "pipe"]
    bore, rough = pipes[0]["bore"], pipes[0]["roughness"]
    if any(p.get("bore", bore) != bore for p in parts) or any(p["roughness"] != rough for p in pipes):
        raise ValueError("the timed line is of one bore")
    length, k = sum(p["length"] for p in pipes), sum(p.get("k", 0) for p in parts)
    knots, heads = zip(*next(p["curve"] for p in parts if p["kind"] == "pump"))
    curve = PchipInterpolator(knots, heads)
    cubics = [tuple(map(float, c)) for c in curve.c.T]
    lift, crest = lip["level"] - job["nodes"][0]["level"], lip["c"] * lip["width"]
    rel, per_q, square = rough / bore, 4 / (pi * bore * nu), 1 / (2 * laws.G * (pi / 4 * bore**2)**2)

    def plain(q):
        f = Colebrook(q * per_q, rel)
        return curve(q) - lift - (q / crest)**(2 / 3) - (f * length / bore + k) * square * q * q

    def quick(q):
        i = 0
        while q >= knots[i + 1]:
            i += 1
        u = q - knots[i]
        a, b, c, d = cubics[i]
        f = Colebrook(q * per_q, rel, tol=-1)
        return ((a * u + b) * u + c) * u + d - lift - (q / crest)**(2 / 3) - (f * length / bore + k) * square * q * q

    return plain, quick, knots[-1]


def report(job, way, engine):
    """Ours and the libraries' in turn, the least of each: the pace of a busy
    machine changes from second to second."""
    plain, quick, end = line(job)
    lift = job["nodes"][0]["level"]  # the outlet's level is in the way's own loss
    ways = {
        "element by element": lambda q: lift - way.loss(q),
        "summed by hand, Colebrook by Lambert's W": plain,
        "summed by hand, Colebrook by Clamond, curve's cubics by hand": quick,
    }
    best, ours = dict.fromkeys(ways, float("inf")), {"freshNs": float("inf"), "nearNs": float("inf")}
    for _ in range(4):
        once = json.loads(subprocess.run([engine, "-time"], check=True, capture_output=True).stdout)
        ours = {k: min(v, once[k]) for k, v in ours.items()}
        for name, excess in ways.items():
            q = brentq(excess, 1e-3, end * 0.999999, xtol=1e-12)
            if not abs(q - job["flows"][0]) <= 1e-9:
                raise SystemExit(f"timed line: ours {job['flows'][0]!r}, {name} {q!r} m3/s")
            took = min(repeat(lambda: brentq(excess, 1e-3, end * 0.999999, xtol=1e-12), number=30, repeat=15)) / 30
            best[name] = min(best[name], took)
    print(f"line of 12 elements: ours {ours['freshNs']:.0f} ns; {ours['nearNs']:.0f} ns from the answer for a level 1 cm off")
    for name, took in best.items():
        times = took * 1e9 / ours["freshNs"]
        print(f"  fluids and scipy's brentq, {name}: {took * 1e6:.1f} us, {times:.0f} times as long"
              f"{'' if times >= GOAL else f' (goal {GOAL})'}")
