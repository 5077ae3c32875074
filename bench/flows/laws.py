"""The elements of a job by general-purpose libraries: friction by fluids'
Colebrook, pump curves by scipy's PchipInterpolator. What is ours is repeated
here from its documentation: the cubic bridge between Re 2,000 and 4,000
(engine/hydro/friction.go), the cubics near zero flow (law.go, minor.go,
lip.go), the continuation of a pump's curve past its points (curve.go)."""

from math import copysign, pi, sqrt, log

from fluids.friction import Colebrook
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

G = 9.80665
LN10 = log(10)


def viscosity(celsius):
    """Kinematic viscosity, m2/s: IAPWS SR6-08 equation 7 over Kell 1975 equation 16."""
    x = (celsius + 273.15) / 300
    dynamic = 1e-6 * (280.68 * x**-1.9 + 511.45 * x**-7.7 + 61.131 * x**-19.6 + 0.45903 * x**-40)
    t = celsius
    kell = (999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12)
    return dynamic / (sum(c * t**i for i, c in enumerate(kell)) / (1 + 16.879850e-3 * t))


class Pipe:
    def __init__(self, p, nu):
        self.d, self.length, self.nu = p["bore"], p["length"], nu
        self.rel = p.get("roughness", 0) / self.d
        self.area = pi / 4 * self.d**2
        self.g1 = self.s1 = None

    def reynolds(self, q):
        return abs(q) / self.area * self.d / self.nu

    def friction(self, re):
        if re <= 2000:
            return 64 / re
        if re >= 4000:
            return Colebrook(re, self.rel)
        if self.g1 is None:  # the far end of the bridge: f Re2 there and its slope
            f = Colebrook(4000, self.rel)
            s = LN10 / 18.574 * self.rel * 4000 + LN10 / (2 * sqrt(f))
            self.g1 = f * 4000**2
            self.s1 = self.g1 / 4000 * 2 * s / (1 + s)
        t = (re - 2000) / 2000
        g = ((2 * t**3 - 3 * t**2 + 1) * 128000 + (t**3 - 2 * t**2 + t) * 2000 * 64
             + (3 * t**2 - 2 * t**3) * self.g1 + (t**3 - t**2) * 2000 * self.s1)
        return g / re**2

    def loss(self, q):
        if q == 0:
            return 0.0
        v = q / self.area
        return self.friction(self.reynolds(q)) * self.length / self.d * v * abs(v) / (2 * G)


class Minor:
    """(K + K1/Re) v2/2g; the part with K is a cubic below Re 100."""

    def __init__(self, p, nu):
        self.d, self.k, self.k1, self.nu = p["bore"], p.get("k", 0), p.get("k1", 0), nu
        self.area = pi / 4 * self.d**2

    def loss(self, q):
        v = q / self.area
        re = abs(v) * self.d / self.nu
        if re >= 100:
            return (self.k + self.k1 / re) * v * abs(v) / (2 * G)
        x = re / 100
        v100 = 100 * self.nu / self.d
        near_zero = self.k * v100**2 / (2 * G) * (x / 2 + x**3 / 2)
        return copysign(near_zero, q) + self.k1 * self.nu / self.d * v / (2 * G)


class Pump:
    """Minus the head of the curve; past its last point a parabola."""

    def __init__(self, p, nu):
        q, h = zip(*p["curve"])
        self.first, self.last = q[0], q[-1]
        self.curve = PchipInterpolator(q, h)
        slope = self.curve.derivative()
        self.h0, self.d0 = h[0], float(slope(q[0]))
        self.h1, self.d1 = h[-1], float(slope(q[-1]))
        self.fall = h[0] / q[-1]**2

    def loss(self, q):
        if q > self.last:
            u = q - self.last
            return -(self.h1 + u * (self.d1 - u * self.fall))
        if q < self.first:
            u = self.first - q
            return -(self.h0 + u * (self.fall * u - self.d0))
        return -float(self.curve(q))


class Lip:
    """The head over a crest of a width that rises by the tilt; a cubic below 1 mm."""

    def __init__(self, x):
        self.cl, self.tilt = x["c"] * x["width"], x.get("tilt", 0)
        self.film_q = self.flow(1e-3)
        slope = self.flow_slope(1e-3) * 1e-3 / self.film_q
        self.a, self.b = (3 - slope) / 2, (slope - 1) / 2

    def flow(self, h):
        if self.tilt == 0:
            return self.cl * h**1.5
        return 0.4 * self.cl / self.tilt * (h**2.5 - max(h - self.tilt, 0)**2.5)

    def flow_slope(self, h):
        if self.tilt == 0:
            return 1.5 * self.cl * h**0.5
        return self.cl / self.tilt * (h**1.5 - max(h - self.tilt, 0)**1.5)

    def loss(self, q):
        if q == 0:
            return 0.0
        if self.tilt == 0 and q >= self.film_q:
            return (q / self.cl)**(2 / 3)
        if q >= self.film_q:
            high = (q / self.cl)**(2 / 3) + self.tilt
            return brentq(lambda h: self.flow(h) - q, 1e-3 * (1 - 1e-12), high * (1 + 1e-12), xtol=1e-17, rtol=1e-15)
        y = q / self.film_q
        return 1e-3 * brentq(lambda x: x * (self.a + self.b * x * x) - y, 0, 1.0001, xtol=1e-17, rtol=1e-15)


class Air:
    """The level of the water in a node that spills: over its crest, at its
    end, or at the pipe that pours in from above."""

    def __init__(self, x, nu):
        self.level, self.law = x["level"], Lip(x) if x["kind"] == "lip" else Minor(x, nu)
        self.inlet = x["inlet"] if x.get("pours") else None

    def loss(self, q):
        h = self.level + self.law.loss(q)
        return h if self.inlet is None else max(h, self.inlet)
