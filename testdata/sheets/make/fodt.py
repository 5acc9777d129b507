"""Flat ODF text documents for LibreOffice: frames placed on the page, tables in frames."""
import base64
from html import escape
from producers import svg

NS = ('xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" '
      'xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" '
      'xmlns:draw="urn:oasis:names:tc:opendocument:xmlns:drawing:1.0" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0" '
      'xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0" xmlns:xlink="http://www.w3.org/1999/xlink"')


class Doc:
    def __init__(self, font="Liberation Sans", lang="en", country="GB", size=8):
        self.font, self.lang, self.country, self.size = font, lang, country, size
        self.styles, self.body, self.n, self.known = [], [], 0, {}
        self.page = 1

    def _style(self, xml):
        """xml with {} for the style's name; equal styles are shared."""
        if xml not in self.known:
            self.n += 1
            self.known[xml] = f"s{self.n}"
            self.styles.append(xml.format(name=self.known[xml]))
        return self.known[xml]

    def para(self, size=None, bold=False, colour="#222222", align="left", space=0, italic=False):
        return self._style(f'<style:style style:name="{{name}}" style:family="paragraph"><style:paragraph-properties fo:text-align="{align}" fo:margin-top="0pt" fo:margin-bottom="{space}pt"/>'
                           f'<style:text-properties fo:font-size="{size or self.size}pt" fo:color="{colour}"' + (' fo:font-weight="bold"' if bold else "") + (' fo:font-style="italic"' if italic else "") + "/></style:style>")

    def span(self, s):
        """_{x} is a subscript, ^{x} a superscript."""
        out, k = "", 0
        sub = self._style('<style:style style:name="{name}" style:family="text"><style:text-properties style:text-position="-25% 65%"/></style:style>')
        sup = self._style('<style:style style:name="{name}" style:family="text"><style:text-properties style:text-position="33% 65%"/></style:style>')
        while k < len(s):
            if s[k:k + 2] in ("_{", "^{"):
                e = s.index("}", k)
                out += f'<text:span text:style-name="{sub if s[k] == "_" else sup}">{escape(s[k+2:e])}</text:span>'
                k = e + 1
            else:
                out += escape(s[k])
                k += 1
        return out.replace("\n", "<text:line-break/>").replace("\t", "<text:tab/>")

    def p(self, s, **kw):
        return f'<text:p text:style-name="{self.para(**kw)}">{self.span(s)}</text:p>'

    def frame(self, x, y, w, h, inner, fill=None, border=None, pad=0):
        """A text frame at x, y (points from the page's top left) on the current page."""
        g = self._style(f'<style:style style:name="{{name}}" style:family="graphic" style:parent-style-name="Frame"><style:graphic-properties style:horizontal-pos="from-left" style:horizontal-rel="page" style:vertical-pos="from-top" style:vertical-rel="page" '
                        f'fo:padding="{pad}pt" fo:border="{border or "none"}" ' + (f'fo:background-color="{fill}" draw:fill="solid" draw:fill-color="{fill}"' if fill else 'draw:fill="none"') + ' style:wrap="run-through" style:run-through="foreground"/></style:style>')
        self.n += 1
        self.body.append((self.page, f'<draw:frame draw:style-name="{g}" draw:name="f{self.n}" text:anchor-type="paragraph" svg:x="{x}pt" svg:y="{y}pt" svg:width="{w}pt" draw:z-index="{self.n}">'
                         f'<draw:text-box fo:min-height="{h}pt">{inner}</draw:text-box></draw:frame>'))

    def picture(self, x, y, ops, w, h):
        data = base64.b64encode(svg(ops, w, h, self.font).encode()).decode()
        g = self._style('<style:style style:name="{name}" style:family="graphic" style:parent-style-name="Frame"><style:graphic-properties style:horizontal-pos="from-left" style:horizontal-rel="page" style:vertical-pos="from-top" style:vertical-rel="page" style:wrap="run-through" style:run-through="foreground"/></style:style>')
        self.n += 1
        self.body.append((self.page, f'<draw:frame draw:style-name="{g}" draw:name="g{self.n}" text:anchor-type="paragraph" svg:x="{x}pt" svg:y="{y}pt" svg:width="{w}pt" svg:height="{h}pt" draw:z-index="{self.n}">'
                         f'<draw:image draw:mime-type="image/svg+xml"><office:binary-data>{data}</office:binary-data></draw:image></draw:frame>'))

    def table(self, rows, widths, size=None, fills=(), line="#999999", pad=1.2, bold_rows=(), bold_cols=(), align=None, colour=None, valign="middle", grid=False):
        """rows of cells: text, or (text, colspan[, rowspan]), or None for a covered cell. fills: function (row, col) -> colour or None."""
        self.n += 1
        name, total = f"t{self.n}", sum(widths)
        st = [f'<style:style style:name="{name}" style:family="table"><style:table-properties style:width="{total}pt" table:align="left" fo:margin="0pt"/></style:style>']
        for k, w in enumerate(widths):
            st.append(f'<style:style style:name="{name}.c{k}" style:family="table-column"><style:table-column-properties style:column-width="{w}pt"/></style:style>')
        out = [f'<table:table table:name="{name}" table:style-name="{name}">'] + [f'<table:table-column table:style-name="{name}.c{k}"/>' for k in range(len(widths))]
        for r, row in enumerate(rows):
            out.append("<table:table-row>")
            for c, cell in enumerate(row):
                if cell is None:
                    out.append("<table:covered-table-cell/>")
                    continue
                t, cs, rs = (list(cell) + [1, 1])[:3] if isinstance(cell, tuple) else (cell, 1, 1)
                fill = fills(r, c) if callable(fills) else None
                b = f'fo:border="0.3pt solid {line}"' if grid else f'fo:border-bottom="0.3pt solid {line}"'
                cst = self._style(f'<style:style style:name="{{name}}" style:family="table-cell"><style:table-cell-properties fo:padding="{pad}pt" fo:padding-left="3pt" {b} style:vertical-align="{valign}"' + (f' fo:background-color="{fill}"' if fill else "") + "/></style:style>")
                al = align(r, c) if align else ("left" if c == 0 else "center")
                col = (colour(r, c) if colour else None) or "#222222"
                out.append(f'<table:table-cell table:style-name="{cst}"' + (f' table:number-columns-spanned="{cs}"' if cs > 1 else "") + (f' table:number-rows-spanned="{rs}"' if rs > 1 else "") + ' office:value-type="string">'
                           + self.p(t, size=size, bold=r in bold_rows or c in bold_cols, align=al, colour=col) + "</table:table-cell>")
            out.append("</table:table-row>")
        self.styles += st
        return "".join(out) + "</table:table>" + f'<text:p text:style-name="{self.para(size=1)}"/>'

    def xml(self, title, pages=2):
        brk = self._style('<style:style style:name="{name}" style:family="paragraph"><style:paragraph-properties fo:break-before="page"/><style:text-properties fo:font-size="2pt"/></style:style>')
        first = self.para(size=2)
        text = "".join(f'<text:p text:style-name="{brk if k else first}">' + "".join(b for p, b in self.body if p == k + 1) + "</text:p>" for k in range(pages))
        return (f'<?xml version="1.0" encoding="UTF-8"?><office:document {NS} office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.text">'
                f'<office:meta><dc:title xmlns:dc="http://purl.org/dc/elements/1.1/">{escape(title)}</dc:title></office:meta>'
                f'<office:font-face-decls><style:font-face style:name="{self.font}" svg:font-family="\'{self.font}\'"/></office:font-face-decls>'
                f'<office:styles><style:default-style style:family="paragraph"><style:text-properties style:font-name="{self.font}" style:font-name-asian="{self.font}" fo:font-size="{self.size}pt" style:font-size-asian="{self.size}pt" fo:language="{self.lang}" fo:country="{self.country}"/></style:default-style><style:style style:name="Frame" style:family="graphic"/></office:styles>'
                f'<office:automatic-styles><style:page-layout style:name="pl"><style:page-layout-properties fo:page-width="595.3pt" fo:page-height="841.9pt" fo:margin="20pt"/></style:page-layout>{"".join(self.styles)}</office:automatic-styles>'
                f'<office:master-styles><style:master-page style:name="Standard" style:page-layout-name="pl"/></office:master-styles>'
                f'<office:body><office:text>{text}</office:text></office:body></office:document>')
