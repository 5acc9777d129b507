"""From a design (cells, lines through the classes, coefficients) to the models of a record."""
from physics import fit, coefficients
from record import num, N


class Design:
    def __init__(self, ns, p0, dp, n, voc, isc, alpha, beta, area, shunt=60.0, vd=2, idc=2, effd=1, eg=(1.121, -0.0002677)):
        """voc and isc are (first class, step) pairs; area in m2."""
        self.area, self.vd, self.idc, self.effd = area, vd, idc, effd
        self.diodes = [fit(p0 + dp * k, voc[0] + voc[1] * k, isc[0] + isc[1] * k, ns, alpha, beta, shunt, eg) for k in range(n)]
        self.watts = [p0 + dp * k for k in range(n)]
        self.ns = ns

    def say(self):
        for w, d in zip(self.watts, self.diodes):
            p, v, i = d.mpp()
            a, b, g = coefficients(d)
            print(f"  {w} W Vmp {v:.2f} Imp {i:.2f} Voc {d.voc:.2f} Isc {d.isc:.2f} FF {p/d.voc/d.isc:.3f} eff {p/self.area/10:.2f} "
                  f"Voc/cell {d.voc/self.ns:.3f} n {d.n:.3f} Rs {d.rs:.3f} a {a:.3f} b {b:.3f} g {g:.3f}")

    def block(self, d, pd=0, vd=None, idc=None, keys=("pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a")):
        vd, idc = self.vd if vd is None else vd, self.idc if idc is None else idc
        p, v, i = d.mpp()
        all_ = {"pmax_w": num(p, pd), "vmp_v": num(v, vd), "imp_a": num(i, idc), "voc_v": num(d.voc, vd), "isc_a": num(d.isc, idc)}
        return {k: all_[k] for k in keys}

    def stc(self, k, **kw):
        b = self.block(self.diodes[k], **kw)
        b["efficiency_pct"] = num(self.watts[k] / self.area / 10, self.effd)
        return b

    def cond(self, k, g, t, **kw):
        return self.block(self.diodes[k].at(g, t), **kw)

    def gain(self, k, pct, stc, pd=0):
        """Rear gain as makers print it: current carries it, the voltages are those of STC."""
        f = 1 + pct / 100
        v, i = self.diodes[k].mpp()[1:]
        return {"gain_pct": N(pct), "pmax_w": num(self.watts[k] * f, pd), "vmp_v": stc["vmp_v"], "imp_a": num(i * f, self.idc),
                "voc_v": stc["voc_v"], "isc_a": num(self.diodes[k].isc * f, self.idc)}
