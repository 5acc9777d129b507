"""House style of Kestrel Ridge Solar: HTML printed by Chromium."""
import art
from producers import svg

CSS = """
@page{size:A4;margin:0} *{box-sizing:border-box} body{margin:0;font:7.5pt/1.25 Lato,sans-serif;color:#222;-webkit-print-color-adjust:exact}
.page{width:210mm;height:296.6mm;position:relative;overflow:hidden;page-break-after:always} .page:last-child{page-break-after:auto}
h1{font-size:30pt;margin:0;font-weight:900;letter-spacing:.2pt} h2{font-size:9.4pt;margin:5pt 0 1.5pt;padding:1.6pt 5pt;background:#0d3b4f;color:#fff;font-weight:700}
table{border-collapse:collapse;width:100%} td,th{padding:1.1pt 4pt;text-align:left;font-weight:400;border-bottom:.35pt solid #c8d2d6;vertical-align:top}
tr:nth-child(even) td{background:#eef4f5} th{background:#d4e3e6;font-weight:700} td.n,th.n{text-align:center} th.n{white-space:nowrap;font-size:6.1pt;padding:1.6pt 0} sub{font-size:70%}
.foot{position:absolute;left:14mm;right:14mm;bottom:8mm;font-size:5.8pt;color:#555;border-top:.6pt solid #0d3b4f;padding-top:3pt;display:flex;justify-content:space-between;gap:12pt}
.claims{display:grid;grid-template-columns:1fr 1fr;gap:9pt 18pt;margin-top:10pt} .claims b{display:block;font-size:10.4pt;color:#0d3b4f}
.big{display:flex;gap:16pt;margin:8pt 0} .big div{background:#f3b221;padding:7pt 11pt;flex:1;font-size:7.4pt} .big b{display:block;font-size:20pt;line-height:1.05;font-weight:900}
.note{font-size:6.1pt;color:#555;margin:2pt 0} .two{display:grid;grid-template-columns:1fr 1fr;gap:12pt}
"""

LOGO = ('<svg width="150pt" height="28pt" viewBox="0 0 150 28"><path d="M2 24 L16 6 L22 14 L28 4 L44 24 Z" fill="#0d3b4f"/><path d="M12 10 Q20 2 34 6 Q24 8 20 13 Z" fill="#f3b221"/>'
        '<text x="50" y="14" font-family="Lato" font-weight="900" font-size="12.5" fill="#0d3b4f">KESTREL RIDGE</text>'
        '<text x="50" y="25" font-family="Lato" font-size="9" letter-spacing="3.3" fill="#0d3b4f">SOLAR</text></svg>')

ADDRESS = "Kestrel Ridge Solar · 14 Ridge Lane, Kestrel Ridge 0417, Northmark · Tel. +00 417 555 0142 · sales@kestrelridge.example · www.kestrelridge.example"


def table(head, rows, widths="", cls=""):
    """rows of cells; a cell is text or (text, colspan)."""
    def cell(c, tag, k):
        t, span = c if isinstance(c, tuple) else (c, 1)
        return f'<{tag}{" class=n" if k else ""}{f" colspan={span}" if span > 1 else ""}>{t}</{tag}>'
    cols = "".join(f'<col style="width:{w}">' for w in widths.split()) if widths else ""
    return (f'<table class="{cls}"><colgroup>{cols}</colgroup>' + ("<tr>" + "".join(cell(c, "th", k) for k, c in enumerate(head)) + "</tr>" if head else "")
            + "".join("<tr>" + "".join(cell(c, "td", k) for k, c in enumerate(r)) + "</tr>" for r in rows) + "</table>")


def electrical(models, cond, names, rows, widths):
    """rows: (label, key); one column a class."""
    return table(["Module type"] + names, [[label] + [m[cond][key] for m in models] for label, key in rows], widths)


def front(title, watts, kind, lead, big, claims, certs, warranty_svg, footer):
    return f"""<div class=page><div style="position:absolute;left:0;right:0;top:0;height:152mm">{svg(art.hero(595.3, 431, rows=12, cols=6), 595.3, 431)}</div>
<div style="position:absolute;left:14mm;top:11mm;background:#ffffffdd;padding:6pt 9pt">{LOGO}</div>
<div style="position:absolute;left:14mm;top:40mm;color:#fff;background:#0d3b4fcc;padding:8pt 14pt"><h1>{title}</h1><div style="font-size:17pt;font-weight:700;color:#f3b221">{watts}</div><div style="font-size:10pt">{kind}</div></div>
<div style="position:absolute;left:14mm;right:14mm;top:155mm"><div class=big>{"".join(f"<div><b>{a}</b>{b}</div>" for a, b in big)}</div>
<p style="font-size:9pt;margin:6pt 0 0">{lead}</p>
<div class=claims>{"".join(f"<div><b>{a}</b>{b}</div>" for a, b in claims)}</div>
<div class=two style="margin-top:12pt"><div>{warranty_svg}</div><div><b style="color:#0d3b4f">Certificates</b><br>{"<br>".join(certs)}
<div style="margin-top:8pt">{MARKS}</div></div></div></div>
<div class=foot><span>{ADDRESS}</span><span>{footer}</span></div></div>"""


MARKS = ('<svg width="120pt" height="30pt" viewBox="0 0 120 30"><circle cx="15" cy="15" r="13" fill="none" stroke="#0d3b4f"/><text x="15" y="14" font-size="5" text-anchor="middle">TYPE</text>'
         '<text x="15" y="20" font-size="5" text-anchor="middle">TESTED</text><rect x="38" y="3" width="24" height="24" fill="none" stroke="#0d3b4f"/><rect x="43" y="8" width="14" height="14" fill="none" stroke="#0d3b4f"/>'
         '<path d="M76 24 L88 4 L100 24 Z" fill="none" stroke="#0d3b4f"/><text x="88" y="21" font-size="6" text-anchor="middle">PV</text></svg>')
