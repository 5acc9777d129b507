#!/usr/bin/env python3
"""Build testdata/sheets/bad: files that a reader must refuse with a clear error."""
import os, sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, HERE)
BAD = os.path.join(os.path.dirname(HERE), "bad")
import art, cairo_paper, pikepdf
from rl import Paper
from sheets import pw_ibc96


def at(name):
    return os.path.join(BAD, name)


def manual(out):
    p = Paper(out, "Installation manual", "Helvetica", "Helvetica-Bold")
    p.text(50, 60, "5  Mounting", 16, True)
    y = 84
    for s in ("Mount the modules only on a substructure that is dry, level and earthed. Two persons carry a module by its frame, never by the junction box or the cables. Keep a gap of at least 10 mm between neighbours and 100 mm to the roof, so that air can pass.",
              "Tighten the clamps evenly. Use the torque given by the maker of the clamps; check it again after one year. Do not drill the frame, do not walk on the glass.",
              "Connectors of different makes must not be mated. Route the cables so that no water can run along them into the connector, and fix them at least every 50 cm.",
              "Work only in daylight with the string open. Cover the modules before you connect them. Electrical work is done by licensed persons under the rules of the place."):
        y = p.lines(50, y, 480, s, 10) + 8
    p.text(50, y + 12, "Step", 9, True)
    p.table(50, y + 18, [60, 300], [["Step", "What to do"], ["1", "Lay out the rails"], ["2", "Fix the middle clamps loosely"], ["3", "Set the module, align, tighten"]], 14, 9)
    p.text(297, 800, "17", 9, anchor="middle")
    p.save()


class Outlines(cairo_paper.Paper):
    """Every letter as a path: a sheet without a text layer."""
    def text(self, x, y, s, *a, **kw):
        c = self.c
        show, c.show_text = c.show_text, None
        try:
            c.show_text = lambda t: (c.text_path(t), c.fill())
            super().text(x, y, s, *a, **kw)
        finally:
            c.show_text = show


def main():
    os.makedirs(BAD, exist_ok=True)
    open(at("empty.pdf"), "wb").close()
    open(at("notapdf.pdf"), "w").write("<html><body><h1>404</h1><p>The datasheet you asked for has moved.</p></body></html>\n")
    sheet = os.path.join(os.path.dirname(HERE), "pw-ibc96.pdf")
    whole = open(sheet, "rb").read()
    open(at("truncated.pdf"), "wb").write(whole[: len(whole) * 2 // 5])
    manual(at("manual-page.pdf"))
    with pikepdf.open(at("manual-page.pdf")) as pdf:
        pdf.save(at("encrypted.pdf"), encryption=pikepdf.Encryption(user="ridge", owner="kestrel", R=3, aes=False, metadata=False), static_id=True)
    paper, pw_ibc96.Paper = pw_ibc96.Paper, Outlines
    pw_ibc96.build(pw_ibc96.record(), at("notext.pdf"))
    pw_ibc96.Paper = paper
    with pikepdf.open(at("notext.pdf"), allow_overwriting_input=True) as pdf:
        del pdf.pages[0]
        pdf.save(at("notext.pdf"), static_id=True, recompress_flate=True)
    with pikepdf.new() as pdf:
        one = pdf.make_stream(b"0.5 g 100 100 200 300 re f")
        for _ in range(2000):
            pdf.pages.append(pikepdf.Page(pikepdf.Dictionary(Type=pikepdf.Name.Page, MediaBox=[0, 0, 595, 842], Contents=one, Resources=pikepdf.Dictionary())))
        pdf.save(at("pages-2000.pdf"), object_stream_mode=pikepdf.ObjectStreamMode.generate, static_id=True)


main()
