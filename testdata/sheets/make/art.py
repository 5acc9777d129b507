"""Pictures of a sheet as drawing operations, in points, y downwards; renderers for each producer are in producers.py.

("poly", points, stroke, width, fill, closed, dash)  ("text", x, y, s, size, colour, anchor, rotation, bold)
"""


def poly(pts, stroke=None, w=0.6, fill=None, closed=False, dash=None):
    return ("poly", [(float(x), float(y)) for x, y in pts], stroke, w, fill, closed, dash)


def rect(x, y, w, h, stroke=None, lw=0.6, fill=None):
    return poly([(x, y), (x + w, y), (x + w, y + h), (x, y + h)], stroke, lw, fill, True)


def text(x, y, s, size=6, colour="#333", anchor="start", rot=0, bold=False):
    return ("text", float(x), float(y), s, size, colour, anchor, rot, bold)


def axes(w, h, xmax, xstep, ymax, ystep, xlabel, ylabel, comma=False, size=5.5, grid="#ddd", yfmt="{:g}"):
    """Axes with ticks inside a w x h box; returns (ops, to-point function)."""
    l, b, t, r = 26, 22, 8, 8
    X = lambda x: l + (w - l - r) * x / xmax
    Y = lambda y: h - b - (h - b - t) * y / ymax
    ops = []
    k = 0
    while k * xstep <= xmax + 1e-9:
        x = X(k * xstep)
        ops += [poly([(x, Y(0)), (x, Y(ymax))], grid, 0.3), text(x, h - b + 8, f"{k*xstep:g}", size, anchor="middle")]
        k += 1
    k = 0
    while k * ystep <= ymax + 1e-9:
        y = Y(k * ystep)
        ops += [poly([(X(0), y), (X(xmax), y)], grid, 0.3), text(l - 3, y + 2, yfmt.format(k * ystep), size, anchor="end")]
        k += 1
    ops += [poly([(X(0), Y(ymax)), (X(0), Y(0)), (X(xmax), Y(0))], "#333", 0.7)]
    ops += [text((l + w - r) / 2, h - 4, xlabel, size + 0.5, anchor="middle"), text(8, (t + h - b) / 2, ylabel, size + 0.5, anchor="middle", rot=-90)]
    return ops, lambda x, y: (X(x), Y(y))


PALETTE = ["#c0392b", "#e67e22", "#27ae60", "#2980b9", "#8e44ad", "#555"]


def iv(diodes, labels, w=210, h=150, xlabel="Voltage (V)", ylabel="Current (A)", title=None, power=False, label_at=0.35, foot=False):
    """I-V curves of several operating points, each with its label on the curve; optionally the P-V curves with them."""
    vmax = max(d.voc for d in diodes)
    imax = max(d.isc for d in diodes)
    xstep = 50 if vmax > 100 else 10 if vmax > 25 else 5
    ystep = 2 if imax > 7 else 1 if imax > 3 else 0.5
    xm, ym = xstep * (int(vmax / xstep) + 1), ystep * (int(imax * 1.07 / ystep) + 1)
    ops, P = axes(w, h, xm, xstep, ym, ystep, xlabel, ylabel)
    pm = max(d.mpp()[0] for d in diodes) * 1.08
    for d, lab, col in zip(diodes, labels, PALETTE):
        ops.append(poly([P(v, i) for v, i in d.curve()], col, 0.9))
        if power:
            ops.append(poly([P(v, v * i / pm * ym) for v, i in d.curve()], col, 0.5, dash=(2, 1.5)))
        x, y = P(vmax * label_at, d.isc)
        ops.append(text(P(d.voc, 0)[0] - 4, P(0, 0)[1] - 6, lab, 5, col, rot=-80) if foot else text(x, y - 1.5, lab, 5, col))
    if title:
        ops.append(text(w / 2, 6, title, 6.5, anchor="middle", bold=True))
    return ops


def temperature(alpha, beta, gamma, w=210, h=150, xlabel="Cell temperature (°C)", ylabel="Normalised (%)", names=("Isc", "Voc", "Pmax")):
    ops, P = axes(w, h, 100, 25, 140, 20, xlabel, ylabel)
    for c, name, col in zip((alpha, beta, gamma), names, PALETTE[1:]):
        pts = [P(t, 100 + c * (t - 25)) for t in (0, 25, 75, 100)]
        ops += [poly(pts, col, 0.9), text(pts[-1][0] - 14, pts[-1][1] - 2, name, 5.5, col)]
    return ops


def warranty(years, first, yearly, final, std_first, std_yearly, std_final, w=230, h=130, colour="#1b6ca8", own="", std="", pct="{}%",
             added="", xlabel="Years", show_first=True, show_final=True, ticks=5, comma=False):
    """The maker's line above the grey one of a "standard module". first .. std_final are printed literals."""
    l, b, t, r = 30, 24, 12, 12
    lo = 70.0
    X = lambda y: l + (w - l - r) * y / years
    Y = lambda p: h - b - (h - b - t) * (p - lo) / (100 - lo)
    ops = []
    own_pts = [(0, 100), (1, 100 - float(first)), (years, float(final))]
    sy = min(25, years)
    std_pts = [(0, 100), (1, float(std_first)), (sy, float(std_final))]
    ops.append(poly([(X(x), Y(y)) for x, y in own_pts] + [(X(years), Y(lo)), (X(0), Y(lo))], None, 0, colour, True))
    ops.append(poly([(X(x), Y(y)) for x, y in std_pts] + [(X(sy), Y(lo)), (X(0), Y(lo))], None, 0, "#b9bfc4", True))
    ops.append(poly([(X(0), t), (X(0), Y(lo)), (X(years), Y(lo))], "#333", 0.7))
    for y in [1] + list(range(ticks, years + 1, ticks)):
        ops += [poly([(X(y), Y(lo)), (X(y), Y(lo) + 3)], "#333", 0.5), text(X(y), Y(lo) + 9, str(y), 5.5, anchor="middle")]
    ops.append(text(l - 3, Y(100) + 2, pct.format("100"), 5.5, anchor="end"))
    sep = lambda lit: str(lit).replace(".", ",") if comma else lit
    f = first and pct.format(sep(_complement(first)))
    if show_first:
        ops.append(text(X(1) + 6, Y(100 - float(first)) - 2, f, 6.5, colour, bold=True))
    if show_final:
        ops.append(text(X(years) - 2, Y(float(final)) - 4, pct.format(sep(final)), 7, colour, "end", bold=True))
    ops.append(text(l - 3, Y(float(std_first)) + 6, pct.format(sep(std_first)), 5.5, "#777", "end"))
    ops.append(text(X(sy) - 3, Y(float(std_final)) + 9, pct.format(sep(std_final)), 6, "#fff", "end"))
    if added:
        ops.append(text(X(years * 0.72), Y(_mid(own_pts, std_pts, years * 0.72)) + 2, added, 5.5, "#fff", "middle"))
    ops += [rect(l + 8, Y(lo) - 22, 7, 5, fill=colour), text(l + 18, Y(lo) - 17, own, 6, "#222")]
    ops += [rect(l + 8, Y(lo) - 11, 7, 5, fill="#8a9299"), text(l + 18, Y(lo) - 6, std, 6, "#222")]
    ops.append(text((l + w - r) / 2, h - 4, xlabel, 6, anchor="middle"))
    return ops


def _mid(a, b, x):
    y = lambda p: p[1][1] + (p[2][1] - p[1][1]) * (x - p[1][0]) / (p[2][0] - p[1][0])
    return (y(a) + y(b)) / 2


def _complement(lit):
    d = len(lit.split(".")[1]) if "." in lit else 0
    return f"{100-float(lit):.{d}f}"


def drawing(L, W, D, rows, cols, h=190, unit="", holes=(790, 1400), inch=False, extra=True, labels=("Front", "Side", "Rear"), half=True, fmt=str,
            frame="#444", cable=None, nameplate=None):
    """Front, side and rear view with dimensions; L, W, D and holes are printed literals."""
    s = (h - 46) / float(L)
    w = float(W) * s
    d = max(float(D) * s, 3)
    ops, x, y = [], 30, 22
    dim = lambda v: fmt(v) + unit + (f" ({float(v)/25.4:.1f} in)" if inch else "")

    def hdim(x0, x1, yy, v):
        return [poly([(x0, yy), (x1, yy)], "#333", 0.35), poly([(x0, yy - 2), (x0, yy + 2)], "#333", 0.35), poly([(x1, yy - 2), (x1, yy + 2)], "#333", 0.35),
                text((x0 + x1) / 2, yy - 1.5, dim(v), 4.8, anchor="middle")]

    def vdim(y0, y1, xx, v):
        return [poly([(xx, y0), (xx, y1)], "#333", 0.35), poly([(xx - 2, y0), (xx + 2, y0)], "#333", 0.35), poly([(xx - 2, y1), (xx + 2, y1)], "#333", 0.35),
                text(xx - 1.5, (y0 + y1) / 2, dim(v), 4.8, anchor="middle", rot=-90)]

    H = float(L) * s
    ops.append(rect(x, y, w, H, frame, 0.8, "#fbfbfb"))
    cw, ch = (w - 4) / cols, (H - (6 if half else 4)) / rows
    for c in range(cols):
        for r in range(rows):
            gap = 2 if half and r >= rows / 2 else 0
            ops.append(rect(x + 2 + c * cw + 0.3, y + 2 + gap + r * ch + 0.2, cw - 0.7, ch - 0.6, None, 0, "#23395d"))
    ops += hdim(x, x + w, y - 6, W) + vdim(y, y + H, x - 8, L)
    ops.append(text(x + w / 2, y + H + 9, labels[0], 5.5, anchor="middle"))
    x2 = x + w + 22
    ops.append(rect(x2, y, d, H, frame, 0.6, "#ddd"))
    ops += hdim(x2, x2 + d, y - 6, D)
    ops.append(text(x2 + d / 2, y + H + 9, labels[1], 5.5, anchor="middle"))
    x3 = x2 + d + 34
    ops.append(rect(x3, y, w, H, frame, 0.8, "#fff"))
    ops.append(rect(x3 + 3, y + 3, w - 6, H - 6, "#999", 0.3, "#f4f4f4"))
    for k in range(3):
        ops.append(rect(x3 + w * (0.25 + 0.25 * k) - 3, y + H / 2 - 3, 6, 6, "#333", 0.4, "#222"))
    if extra:
        for n, hole in enumerate(holes):
            a = float(hole) * s
            ops += vdim(y + (H - a) / 2, y + (H + a) / 2, x3 - 6 - 7 * n, hole)
            for sx in (x3 + 2, x3 + w - 2):
                for yy in (y + (H - a) / 2, y + (H + a) / 2):
                    ops.append(rect(sx - 0.7, yy - 2, 1.4, 4, "#333", 0.3))
    ops += hdim(x3, x3 + w, y - 6, str(int(float(W)) - 48))
    if cable:
        ops += hdim(x3 + w * 0.25, x3 + w * 0.25 + 30, y + H * 0.62, cable)
    if nameplate:
        ops += [rect(x3 + w * 0.3, y + H * 0.75, w * 0.4, 16, "#888", 0.3, "#fff")] + [text(x3 + w * 0.32, y + H * 0.75 + 5 + 4 * k, t, 2.2) for k, t in enumerate(nameplate)]
    ops.append(text(x3 + w / 2, y + H + 9, labels[2], 5.5, anchor="middle"))
    return ops, x3 + w + 12, h


def hero(w, h, rows=12, cols=6, sky=("#dfeaf5", "#9fc0de"), cell="#152640", frame="#c9ced4", tilt=0.28):
    """The picture of the front page: a module seen from below, its cells as a vector grid."""
    ops = [rect(0, 0, w, h, None, 0, sky[0])]
    for k in range(24):
        ops.append(rect(0, h * k / 48, w, h / 44, None, 0, _mix(sky[1], sky[0], k / 24)))
    ops.append(poly([(0, h * 0.86), (w * 0.3, h * 0.8), (w * 0.62, h * 0.87), (w, h * 0.78), (w, h), (0, h)], None, 0, _mix(sky[1], "#3c5a3a", 0.6), True))
    A, B, C, D = (w * 0.18, h * 0.95), (w * 0.44, h * 0.08), (w * 0.97, h * 0.16), (w * (0.97 - tilt), h * 1.02)
    P = lambda u, v: tuple((A[i] * (1 - u) * (1 - v) + D[i] * u * (1 - v) + B[i] * (1 - u) * v + C[i] * u * v) for i in (0, 1))
    ops.append(poly([A, B, C, D], "#8a9199", 1, frame, True))
    e = 0.02
    for c in range(cols):
        for r in range(rows):
            u0, u1 = e + (1 - 2 * e) * c / cols + 0.004, e + (1 - 2 * e) * (c + 1) / cols - 0.004
            v0, v1 = e + (1 - 2 * e) * r / rows + 0.003, e + (1 - 2 * e) * (r + 1) / rows - 0.003
            ops.append(poly([P(u0, v0), P(u1, v0), P(u1, v1), P(u0, v1)], None, 0, _mix(cell, "#6d8fb8", 0.55 * (r / rows) ** 2 * (c + 1) / cols), True))
            for q in (0.33, 0.66):
                u = u0 + (u1 - u0) * q
                ops.append(poly([P(u, v0), P(u, v1)], "#aab7c6", 0.15))
    return ops


def _mix(a, b, t):
    p = lambda c: [int(c[i:i + 2], 16) for i in (1, 3, 5)]
    return "#" + "".join(f"{round(x*(1-t)+y*t):02x}" for x, y in zip(p(a), p(b)))


def shift(ops, dx, dy):
    return [(o[0], [(x + dx, y + dy) for x, y in o[1]], *o[2:]) if o[0] == "poly" else (o[0], o[1] + dx, o[2] + dy, *o[3:]) for o in ops]
