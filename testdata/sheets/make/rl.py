"""A PDF writer with control over every text object: reportlab's canvas, y counted downwards from the top."""
import re
from reportlab.lib.colors import HexColor
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas

DIRS = "/usr/share/fonts/truetype/"
FONTS = {"roboto": "roboto/unhinted/RobotoTTF/Roboto-Regular.ttf", "roboto-b": "roboto/unhinted/RobotoTTF/Roboto-Bold.ttf", "roboto-l": "roboto/unhinted/RobotoTTF/Roboto-Light.ttf",
         "open": "open-sans/OpenSans-Regular.ttf", "open-b": "open-sans/OpenSans-Bold.ttf", "dejavu": "dejavu/DejaVuSans.ttf", "dejavu-b": "dejavu/DejaVuSans-Bold.ttf",
         "narrow": "liberation/LiberationSansNarrow-Regular.ttf", "narrow-b": "liberation/LiberationSansNarrow-Bold.ttf", "serif": "liberation/LiberationSerif-Regular.ttf", "serif-b": "liberation/LiberationSerif-Bold.ttf"}


class Paper:
    def __init__(self, out, title, font="roboto", bold="roboto-b", size=(595.28, 841.89), invariant=True):
        self.c = canvas.Canvas(out, pagesize=size, pageCompression=1, invariant=1)
        self.c.setTitle(title)
        self.c.setCreator("typesetting script")
        self.w, self.h = size
        for f in (font, bold):
            if f in FONTS and f not in pdfmetrics.getRegisteredFontNames():
                pdfmetrics.registerFont(TTFont(f, DIRS + FONTS[f]))
        self.font, self.bold = font, bold

    def use(self, name):
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, DIRS + FONTS[name]))
        return name

    def width(self, s, size, bold=False, font=None):
        font = font or (self.bold if bold else self.font)
        return sum(pdfmetrics.stringWidth(t, font, size * (0.68 if k else 1)) for t, k in runs(s))

    def text(self, x, y, s, size=7, bold=False, colour="#222222", anchor="start", rot=0, font=None, mode=0, space=0):
        """One text object a run; _{..} and ^{..} are runs of their own on another baseline. mode is the PDF text render mode, space the letter space."""
        font = font or (self.bold if bold else self.font)
        if rot or mode:  # render mode and matrix must not leak into what follows
            self.c.saveState()
            self.c.translate(x, self.h - y)
            self.c.rotate(-rot)
            self._runs(0, 0, s, size, font, colour, anchor, mode, space)
            self.c.restoreState()
        else:
            self._runs(x, self.h - y, s, size, font, colour, anchor, mode, space)

    def _runs(self, x, y, s, size, font, colour, anchor, mode, space):
        total = sum(pdfmetrics.stringWidth(t, font, size * (0.68 if k else 1)) + space * len(t) for t, k in runs(s))
        x -= {"start": 0, "middle": total / 2, "end": total}[anchor]
        for t, k in runs(s):
            z = size * (0.68 if k else 1)
            o = self.c.beginText(x, y + {"": 0, "_": -size * 0.18, "^": size * 0.36}[k])
            o.setFont(font, z)
            o.setFillColor(HexColor(colour))
            o.setTextRenderMode(mode)
            o.setCharSpace(space)
            o.textOut(t)
            self.c.drawText(o)
            x += pdfmetrics.stringWidth(t, font, z) + space * len(t)

    def glyphs(self, x, y, s, size=7, bold=False, colour="#222222", per=1):
        """The word cut into pieces of `per` characters, each a text object of its own."""
        for k in range(0, len(s), per):
            self.text(x, y, s[k:k + per], size, bold, colour)
            x += self.width(s[k:k + per], size, bold)

    def lines(self, x, y, w, s, size=7, lead=1.3, **kw):
        """A paragraph broken to the width w; returns the y below it."""
        line = ""
        for word in s.split(" ") + [None]:
            if word is None or line and self.width(line + " " + word, size, kw.get("bold", False)) > w:
                self.text(x, y, line, size, **kw)
                y, line = y + size * lead, word or ""
            else:
                line = (line + " " + word).strip()
        return y

    def rect(self, x, y, w, h, fill=None, stroke=None, lw=0.5):
        self.c.saveState()
        if fill:
            self.c.setFillColor(HexColor(fill))
        if stroke:
            self.c.setStrokeColor(HexColor(stroke))
            self.c.setLineWidth(lw)
        self.c.rect(x, self.h - y - h, w, h, stroke=bool(stroke), fill=bool(fill))
        self.c.restoreState()

    def line(self, x0, y0, x1, y1, colour="#999999", lw=0.4):
        self.c.saveState()
        self.c.setStrokeColor(HexColor(colour))
        self.c.setLineWidth(lw)
        self.c.line(x0, self.h - y0, x1, self.h - y1)
        self.c.restoreState()

    def ops(self, ops, dx=0, dy=0, font=None):
        for o in ops:
            if o[0] == "text":
                _, x, y, s, size, col, anchor, rot, bold = o
                self.text(x + dx, y + dy, s, size, bold, _hex(col), anchor, rot, font)
                continue
            _, pts, stroke, lw, fill, closed, dash = o
            self.c.saveState()
            p = self.c.beginPath()
            p.moveTo(pts[0][0] + dx, self.h - pts[0][1] - dy)
            for x, y in pts[1:]:
                p.lineTo(x + dx, self.h - y - dy)
            if closed:
                p.close()
            if fill:
                self.c.setFillColor(HexColor(_hex(fill)))
            if stroke:
                self.c.setStrokeColor(HexColor(_hex(stroke)))
                self.c.setLineWidth(lw)
            if dash:
                self.c.setDash(*dash)
            self.c.drawPath(p, stroke=bool(stroke), fill=bool(fill))
            self.c.restoreState()

    def table(self, x, y, widths, rows, h=12, size=7, fills=None, rule="#bbbbbb", bold=lambda r, c: r == 0, colour=lambda r, c: "#222222", align=lambda r, c: "start" if c == 0 else "middle", pad=3, up=3.4):
        """Rows of cells (text or (text, span)); returns the y below. A cell's text is set on one line."""
        for r, row in enumerate(rows):
            cx, c = x, 0
            f = fills(r) if fills else None
            if f:
                self.rect(x, y, sum(widths), h, f)
            for cell in row:
                t, span = cell if isinstance(cell, tuple) else (cell, 1)
                cw = sum(widths[c:c + span])
                if t:
                    a = align(r, c)
                    tx = {"start": cx + pad, "middle": cx + cw / 2, "end": cx + cw - pad}[a]
                    self.text(tx, y + h - up, t, size, bold(r, c), colour(r, c), a)
                cx, c = cx + cw, c + span
            y += h
            if rule:
                self.line(x, y, x + sum(widths), y, rule)
        return y

    def next(self):
        self.c.showPage()

    def save(self):
        self.c.save()


def _hex(c):
    return "#" + "".join(ch * 2 for ch in c[1:]) if len(c) == 4 else c


def runs(s):
    """[(text, "" or "_" or "^")]"""
    out = []
    for part in re.split(r"([_^]\{[^}]*\})", s):
        if part:
            out.append((part[2:-1], part[0]) if re.fullmatch(r"[_^]\{[^}]*\}", part) else (part, ""))
    return out


def front(p, maker, line, title, sub, lead, claims, graph, certs, address, colours, hero, at=330):
    """A plain front page: picture, name, lead, claims, warranty graph, certificates, address."""
    ink, accent = colours
    p.ops(hero)
    p.rect(0, 0, p.w, 56, ink)
    p.text(36, 36, maker, 20, True, "#ffffff")
    p.text(p.w - 36, 36, line, 9, colour=accent, anchor="end", space=1.2)
    p.rect(36, at, max(p.width(title, 26, True), p.width(sub, 10)) + 32, 66, ink)
    p.text(50, at + 34, title, 26, True, "#ffffff")
    p.text(50, at + 54, sub, 10, colour="#ffffff")
    y = p.lines(36, 480, 240, lead, 9) + 8
    for a, b in claims:
        p.text(36, y, a, 12, True, accent if accent != "#ffffff" else ink)
        y = p.lines(36, y + 12, 240, b, 8) + 6
    p.ops(graph, 310, 470)
    p.text(320, 640, "Certificates", 10, True, ink)
    p.text(320, 654, certs, 8)
    p.text(36, p.h - 28, address, 6.8, colour="#555555")
    p.next()
