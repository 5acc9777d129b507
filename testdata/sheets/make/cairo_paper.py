"""Cairo's PDF surface through cairocffi: text as glyph runs placed by Cairo's toy interface, fonts subset by Cairo."""
import math, re
import cairocffi as cairo
from rl import runs


def rgb(c):
    c = c[1:] if len(c) == 7 else "".join(ch * 2 for ch in c[1:])
    return tuple(int(c[i:i + 2], 16) / 255 for i in (0, 2, 4))


class Paper:
    def __init__(self, out, title, font="DejaVu Sans", size=(595.28, 841.89)):
        self.s = cairo.PDFSurface(out, *size)
        self.s.set_metadata(cairo.PDF_METADATA_TITLE, title)
        self.s.set_metadata(cairo.PDF_METADATA_CREATE_DATE, "2024-06-01T12:00:00Z")
        self.c, self.font, self.w, self.h = cairo.Context(self.s), font, *size

    def _face(self, size, bold, font=None):
        self.c.select_font_face(font or self.font, cairo.FONT_SLANT_NORMAL, cairo.FONT_WEIGHT_BOLD if bold else cairo.FONT_WEIGHT_NORMAL)
        self.c.set_font_size(size)

    def width(self, s, size=7, bold=False, font=None):
        w = 0
        for t, k in runs(s):
            self._face(size * (.68 if k else 1), bold, font)
            w += self.c.text_extents(t)[4]
        return w

    def text(self, x, y, s, size=7, bold=False, colour="#222222", anchor="start", rot=0, font=None):
        c = self.c
        c.save()
        c.translate(x, y)
        if rot:
            c.rotate(math.radians(rot))
        px = -{"start": 0, "middle": .5, "end": 1}[anchor] * self.width(s, size, bold, font)
        c.set_source_rgb(*rgb(colour))
        for t, k in runs(s):
            self._face(size * (.68 if k else 1), bold, font)
            c.move_to(px, {"": 0, "_": size * .18, "^": -size * .36}[k])
            c.show_text(t)
            px += c.text_extents(t)[4]
        c.restore()

    def lines(self, x, y, w, s, size=7, lead=1.32, **kw):
        line = ""
        for word in s.split(" ") + [None]:
            if word is None or line and self.width(line + " " + word, size, kw.get("bold", False)) > w:
                self.text(x, y, line, size, **kw)
                y, line = y + size * lead, word or ""
            else:
                line = (line + " " + word).strip()
        return y

    def rect(self, x, y, w, h, fill=None, stroke=None, lw=.5):
        self.ops([("poly", [(x, y), (x + w, y), (x + w, y + h), (x, y + h)], stroke, lw, fill, True, None)])

    def line(self, x0, y0, x1, y1, colour="#999999", lw=.4):
        self.ops([("poly", [(x0, y0), (x1, y1)], colour, lw, None, False, None)])

    def ops(self, ops, dx=0, dy=0, font=None):
        c = self.c
        for o in ops:
            if o[0] == "text":
                _, x, y, s, size, col, anchor, rot, bold = o
                self.text(x + dx, y + dy, s, size, bold, col, anchor, rot, font)
                continue
            _, pts, stroke, lw, fill, closed, dash = o
            c.save()
            c.move_to(pts[0][0] + dx, pts[0][1] + dy)
            for x, y in pts[1:]:
                c.line_to(x + dx, y + dy)
            if closed:
                c.close_path()
            if fill:
                c.set_source_rgb(*rgb(fill))
                c.fill_preserve()
            if stroke:
                c.set_source_rgb(*rgb(stroke))
                c.set_line_width(lw)
                c.set_dash(list(dash) if dash else [])
                c.stroke_preserve()
            c.new_path()
            c.restore()

    def next(self):
        self.c.show_page()

    def save(self):
        self.s.finish()
