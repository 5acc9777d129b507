"""The ways a sheet becomes a PDF. Each sets fixed dates, so that the same input gives the same file as far as the producer allows."""
import glob, html, os, re, shutil, subprocess, tempfile

DATE = b"D:20240601120000"


def svg(ops, w, h, font="inherit"):
    family = "" if font == "inherit" else f' font-family="{font}"'
    out = [f'<svg xmlns="http://www.w3.org/2000/svg"{family} width="{w}pt" height="{h}pt" viewBox="0 0 {w} {h}">']
    for o in ops:
        if o[0] == "poly":
            _, pts, stroke, lw, fill, closed, dash = o
            d = "M" + "L".join(f"{x:.2f} {y:.2f}" for x, y in pts) + ("Z" if closed else "")
            out.append(f'<path d="{d}" fill="{fill or "none"}" stroke="{stroke or "none"}" stroke-width="{lw}"' + (f' stroke-dasharray="{dash[0]} {dash[1]}"' if dash else "") + "/>")
        else:
            _, x, y, s, size, col, anchor, rot, bold = o
            tr = f' transform="rotate({rot} {x:.2f} {y:.2f})"' if rot else ""
            out.append(f'<text x="{x:.2f}" y="{y:.2f}" font-size="{size}" fill="{col}" text-anchor="{anchor}"{tr}' + (' font-weight="bold"' if bold else "") + f'>{html.escape(s)}</text>')
    return "\n".join(out) + "</svg>"


def fix_dates(path):
    """Dates and file identifiers are overwritten in place, same length, so that offsets stay right."""
    b = open(path, "rb").read()
    b = re.sub(rb"D:\d{14}", lambda m: DATE, b)
    b = re.sub(rb"(/ID\s*\[\s*<)([0-9A-Fa-f]+)(>\s*<)([0-9A-Fa-f]+)(>)", lambda m: m[1] + b"0" * len(m[2]) + m[3] + b"0" * len(m[4]) + m[5], b)
    b = re.sub(rb"(/DocChecksum /)([0-9A-F]{32})", lambda m: m[1] + b"0" * 32, b)
    open(path, "wb").write(b)


def chromium(page, out):
    """Headless Chromium prints an HTML page."""
    with tempfile.TemporaryDirectory() as d:
        f = os.path.join(d, "sheet.html")
        open(f, "w").write(page)
        subprocess.run(["chromium", "--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
                        f"--user-data-dir={d}/profile", "--no-pdf-header-footer", f"--print-to-pdf={out}", "file://" + f],
                       check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=180)
    fix_dates(out)


def weasyprint(page, out, **kw):
    """WeasyPrint: an HTML page set by Pango, written by pydyf."""
    import weasyprint as wp
    wp.HTML(string=page).write_pdf(out, pdf_identifier=b"0" * 16, **kw)


def libreoffice(document, suffix, out):
    """LibreOffice exports a flat ODF text or drawing (or HTML) document."""
    with tempfile.TemporaryDirectory() as d:
        f = os.path.join(d, "sheet" + suffix)
        open(f, "w").write(document)
        subprocess.run(["soffice", "--headless", "--norestore", f"-env:UserInstallation=file://{d}/profile", "--convert-to", "pdf", "--outdir", d, f],
                       check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=180)
        shutil.copy(os.path.join(d, "sheet.pdf"), out)
    fix_dates(out)


def cjk(page, family, number):
    """@font-face rules with Noto Sans CJK cut down to the page's own characters, so that a producer that embeds whole fonts stays small."""
    import base64, io
    from fontTools import subset
    from fontTools.ttLib import TTCollection
    out = []
    for weight, f in (("400", "Regular"), ("700", "Bold")):
        font = TTCollection(f"/usr/share/fonts/opentype/noto/NotoSansCJK-{f}.ttc").fonts[number]
        s = subset.Subsetter(subset.Options(layout_features=[], name_IDs=[1, 2], notdef_outline=True, hinting=False, drop_tables=["VORG", "vhea", "vmtx", "GPOS", "GSUB", "BASE", "DSIG"]))
        s.populate(text="".join(sorted(set(page))))
        s.subset(font)
        font.flavor = None
        font["head"].modified = 3800000000
        font.recalcTimestamp = False
        b = io.BytesIO()
        font.save(b)
        out.append(f"@font-face{{font-family:'{family}';font-weight:{weight};src:url(data:font/otf;base64,{base64.b64encode(b.getvalue()).decode()})}}")
    return "".join(out)


def recompress(path):
    """Object streams and recompressed content: the same page in a smaller file of another structure."""
    import pikepdf
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        pdf.save(path, object_stream_mode=pikepdf.ObjectStreamMode.generate, recompress_flate=True, static_id=True)
