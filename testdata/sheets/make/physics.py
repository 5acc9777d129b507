"""Single-diode model for invented modules, so that their numbers are physically right.

Equations: De Soto, Klein, Beckman, Solar Energy 80 (2006) 78-88; ideality from beta by
dVoc/dT = (Voc - n (Eg0/q + 3kT/q - kT/q T dIsc/Isc dT)) / T with Eg0 the gap extrapolated
linearly to 0 K, 1.206 eV in silicon (Green, Prog. Photovolt. 11 (2003) 333).
"""
import math
from dataclasses import dataclass

K_Q = 8.617333262e-5  # V/K
T0 = 298.15


@dataclass
class Diode:
    il: float
    io: float
    rs: float
    rsh: float
    a: float
    alpha: float  # A/K
    n: float = 1.0
    gap: tuple = (1.121, -0.0002677)  # eV at 25 degC, relative change per K; silicon

    def at(self, g=1.0, t=25.0):
        """The same module at g suns and cell temperature t in degC."""
        k = (t + 273.15) / T0
        eg0, dt = self.gap[0], t - 25.0
        eg = eg0 * (1 + self.gap[1] * dt)
        io = self.io * (k**3 * math.exp(eg0 / (K_Q * T0) - eg / (K_Q * T0 * k)))
        return Diode(g * (self.il + self.alpha * dt), io, self.rs, self.rsh / g, self.a * k, self.alpha, self.n, self.gap)

    def point(self, vj):
        i = self.il - self.io * (math.exp(vj / self.a) - 1) - vj / self.rsh
        return vj - i * self.rs, i

    def _vj(self, f):
        lo, hi = 0.0, self.a * math.log(self.il / self.io + 1)
        for _ in range(200):
            mid = (lo + hi) / 2
            lo, hi = (mid, hi) if f(*self.point(mid)) > 0 else (lo, mid)
        return lo

    @property
    def voc(self):
        return self.point(self._vj(lambda v, i: i))[0]

    @property
    def isc(self):
        lo, hi = 0.0, self.a * 20
        for _ in range(200):
            mid = (lo + hi) / 2
            lo, hi = (mid, hi) if self.point(mid)[0] < 0 else (lo, mid)
        return self.point(lo)[1]

    def mpp(self):
        """(Pmax, Vmp, Imp)"""
        lo, hi, g = 0.0, self.a * math.log(self.il / self.io + 1), (math.sqrt(5) - 1) / 2
        p = lambda vj: (lambda v, i: v * i)(*self.point(vj))
        for _ in range(200):
            c, d = hi - g * (hi - lo), lo + g * (hi - lo)
            lo, hi = (lo, d) if p(c) > p(d) else (c, hi)
        v, i = self.point((lo + hi) / 2)
        return v * i, v, i

    def curve(self, n=60):
        """Points (V, I) from short circuit to open circuit."""
        top = self.a * math.log(self.il / self.io + 1)
        pts = [self.point(top * (k / n) ** 0.35) for k in range(n + 1)]
        pts = [(v, i) for v, i in pts if v >= 0 and i >= 0]
        return [(0.0, self.isc)] + pts + [(self.voc, 0.0)]


def fit(pmax, voc, isc, ns, alpha_pct, beta_pct, shunt=60.0, eg=(1.121, -0.0002677)):
    """The module with these terminal values. shunt = Rsh in units of Voc/Isc. Raises if no Rs >= 0 fits."""
    beta_v = beta_pct / 100 * voc / ns
    n = (voc / ns - beta_v * T0) / (eg[0] * (1 - eg[1] * T0) + K_Q * T0 * (3 - alpha_pct / 100 * T0))
    a, rsh = n * ns * K_Q * T0, shunt * voc / isc

    def make(rs):
        io, il = 0.0, isc
        for _ in range(6):
            il = isc + io * (math.exp(isc * rs / a) - 1) + isc * rs / rsh
            io = (il - voc / rsh) / (math.exp(voc / a) - 1)
        return Diode(il, io, rs, rsh, a, alpha_pct / 100 * isc, n, eg)

    lo, hi = 0.0, 0.2 * voc / isc
    if make(lo).mpp()[0] < pmax:
        raise ValueError(f"fill factor {pmax/voc/isc:.3f} too high for n={n:.3f}")
    for _ in range(60):
        mid = (lo + hi) / 2
        lo, hi = (mid, hi) if make(mid).mpp()[0] > pmax else (lo, mid)
    return make(lo)


def coefficients(d):
    """(alpha, beta, gamma) in %/K of a module, by the model, 15 to 35 degC."""
    c, h = d.at(1, 15), d.at(1, 35)
    return tuple(100 * (x(h) - x(c)) / 20 / x(d) for x in (lambda m: m.isc, lambda m: m.voc, lambda m: m.mpp()[0]))
