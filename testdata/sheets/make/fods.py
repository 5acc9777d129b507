"""Flat ODF spreadsheets for LibreOffice Calc: a sheet a page, merged cells, pictures on the grid."""
import base64
from html import escape
from fodt import NS
from producers import svg


class Book:
    def __init__(self, font="Liberation Sans", size=7.5):
        self.font, self.size, self.styles, self.known, self.n, self.sheets = font, size, [], {}, 0, []

    def style(self, fill=None, bold=False, size=None, colour="#222222", align="start", line=None, wrap=False):
        key = (fill, bold, size, colour, align, line, wrap)
        if key not in self.known:
            name = f"c{len(self.known)}"
            self.known[key] = name
            self.styles.append(f'<style:style style:name="{name}" style:family="table-cell"><style:table-cell-properties style:vertical-align="middle" fo:padding="1pt"' + (f' fo:background-color="{fill}"' if fill else "") + (f' fo:border-bottom="0.4pt solid {line}"' if line else "")
                               + (' fo:wrap-option="wrap"' if wrap else "") + f'/><style:paragraph-properties fo:text-align="{align}"/><style:text-properties style:font-name="{self.font}" fo:font-family="{self.font}" fo:font-size="{size or self.size}pt" fo:color="{colour}"' + (' fo:font-weight="bold"' if bold else "") + "/></style:style>")
        return self.known[key]

    def sheet(self, name, widths, rows, pictures=()):
        """rows: (height, [cell]) where a cell is None (covered), "" or (text, style dict, colspan)."""
        self.n += 1
        t = f"t{self.n}"
        for k, w in enumerate(widths):
            self.styles.append(f'<style:style style:name="{t}c{k}" style:family="table-column"><style:table-column-properties style:column-width="{w}pt"/></style:style>')
        self.styles.append(f'<style:style style:name="{t}" style:family="table" style:master-page-name="Default"><style:table-properties table:display="true"/></style:style>')
        out = [f'<table:table table:name="{name}" table:style-name="{t}">']
        if pictures:
            out.append("<table:shapes>")
            for x, y, ops, w, h in pictures:
                data = base64.b64encode(svg(ops, w, h, self.font).encode()).decode()
                out.append(f'<draw:frame svg:x="{x}pt" svg:y="{y}pt" svg:width="{w}pt" svg:height="{h}pt"><draw:image draw:mime-type="image/svg+xml"><office:binary-data>{data}</office:binary-data></draw:image></draw:frame>')
            out.append("</table:shapes>")
        out += [f'<table:table-column table:style-name="{t}c{k}"/>' for k in range(len(widths))]
        for h, cells in rows:
            rs = f"r{str(h).replace('.', '_')}"
            if rs not in self.known:
                self.known[rs] = rs
                self.styles.append(f'<style:style style:name="{rs}" style:family="table-row"><style:table-row-properties style:row-height="{h}pt" style:use-optimal-row-height="false"/></style:style>')
            out.append(f'<table:table-row table:style-name="{rs}">')
            for c in cells:
                if c is None:
                    out.append("<table:covered-table-cell/>")
                elif c == "":
                    out.append("<table:table-cell/>")
                else:
                    text, st, span = (*c, 1)[:3] if isinstance(c, tuple) else (c, {}, 1)
                    out.append(f'<table:table-cell table:style-name="{self.style(**st)}" office:value-type="string"' + (f' table:number-columns-spanned="{span}" table:number-rows-spanned="1"' if span > 1 else "") + f"><text:p>{escape(text)}</text:p></table:table-cell>" + "<table:covered-table-cell/>" * (span - 1))
            out.append("</table:table-row>")
        self.sheets.append("".join(out) + "</table:table>")

    def xml(self, title):
        return (f'<?xml version="1.0" encoding="UTF-8"?><office:document {NS} office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.spreadsheet">'
                f'<office:meta><dc:title xmlns:dc="http://purl.org/dc/elements/1.1/">{escape(title)}</dc:title></office:meta>'
                f'<office:font-face-decls><style:font-face style:name="{self.font}" svg:font-family="\'{self.font}\'"/></office:font-face-decls>'
                f'<office:automatic-styles><style:page-layout style:name="pl"><style:page-layout-properties fo:page-width="595.3pt" fo:page-height="841.9pt" fo:margin="28pt" style:print="objects drawings" style:scale-to="100%"/>'
                f'<style:header-style/><style:footer-style/></style:page-layout>{"".join(self.styles)}</office:automatic-styles>'
                f'<office:master-styles><style:master-page style:name="Default" style:page-layout-name="pl"><style:header style:display="false"/><style:footer style:display="false"/></style:master-page></office:master-styles>'
                f'<office:body><office:spreadsheet>{"".join(self.sheets)}</office:spreadsheet></office:body></office:document>')
