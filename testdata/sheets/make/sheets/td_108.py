"""td-108: Tidewater Photovoltaics; landscape pages stored turned (/Rotate 90) with a crop box off the origin, no class names anywhere (the class is told by the Pmax row),
NMOT in the table's title, NOCT in the temperature row and in the footnote, symbols and units in separate columns, the whole thing a page of one-page lists; Chromium, turned by pikepdf."""
import art
from design import Design
from producers import chromium, svg
from record import N

NAME = "td-108"
L, W, D = "1722", "1134", "30"
design = Design(54, 410, 5, 5, (37.20, .16), (13.78, .06), .048, -.27, 1.722 * 1.134)


def record():
    return {
        "maker": "Tidewater Photovoltaics", "series": "TD-108", "revision": "TDW-108/4", "language": "en",
        "cell": {"technology": "mono-perc", "count": N(108), "arrangement": "6x18", "cut": "half", "width_mm": N(182), "height_mm": N(91)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("21.3"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1100)], "bypass_diodes": N(3), "junction_box_ip": "IP68"},
        "thermal": {"noct_c": N(44), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.048"), "beta_voc_pct_per_k": N("-0.270"), "gamma_pmax_pct_per_k": N("-0.320")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(12), "performance_years": N(25), "first_year_loss_pct": N(2), "annual_loss_pct": N("0.55"), "final_output_pct": N("84.8")},
        "packing": {"modules_per_pallet": N(36), "pallets_per_container": N(26), "modules_per_container": N(936)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"TD-108 {w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 44)} for k, w in enumerate(design.watts)],
    }


CSS = """
@page{size:297mm 210mm;margin:0} body{margin:0;font:7.6pt/1.3 Roboto;color:#1e2a33;-webkit-print-color-adjust:exact} .p{width:297mm;height:209.6mm;position:relative;overflow:hidden;page-break-after:always} .p:last-child{page-break-after:auto}
.a{position:absolute} h2{font-size:9pt;color:#006d77;margin:6pt 0 2pt;border-bottom:1.2pt solid #006d77} table{border-collapse:collapse;width:100%} td{padding:1.6pt 4pt;text-align:center;border-bottom:.3pt solid #b8cdd0} td:first-child{text-align:left} .l td:last-child{text-align:right} i{font-style:normal;font-size:6pt;color:#555}
"""


def build(rec, out):
    import pikepdf
    ms = rec["models"]
    q = [("Maximum power", "Pmax", "W", "pmax_w"), ("Maximum power voltage", "Vmp", "V", "vmp_v"), ("Maximum power current", "Imp", "A", "imp_a"), ("Open circuit voltage", "Voc", "V", "voc_v"), ("Short circuit current", "Isc", "A", "isc_a")]
    tab = lambda c, extra=(): "<table>" + "".join(f"<tr><td>{a}</td><td>{s}</td><td>{u}</td>" + "".join(f"<td>{m[c][k]}</td>" for m in ms) + "</tr>" for a, s, u, k in q + list(extra)) + "</table>"
    lst = lambda rows: "<table class=l>" + "".join(f"<tr><td>{a}</td><td>{b}</td></tr>" for a, b in rows) + "</table>"
    draw, dw, dh = art.drawing(L, W, D, 18, 6, h=165, holes=(990, 1300))
    d = design.diodes[2]
    ivs = art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 220, 140, title="420 W module at 25 °C")
    page = f"""<!doctype html><html lang=en><meta charset=utf-8><title>TD-108</title><style>{CSS}</style>
<div class=p><div class=a style="left:0;top:0">{svg(art.hero(841.9, 380, rows=8, cols=6, sky=("#e5f3f4","#83c5be"), cell="#14213d"), 841.9, 380)}</div>
<div class=a style="left:14mm;top:12mm;font-size:20pt;font-weight:700;color:#006d77">TIDEWATER <span style="font-weight:300">Photovoltaics</span></div>
<div class=a style="left:14mm;top:92mm;background:#006d77;color:#fff;padding:7pt 16pt"><b style="font-size:28pt">TD-108</b><br><span style="font-size:14pt">410 W to 430 W · mono PERC half-cell</span></div>
<div class=a style="left:14mm;top:140mm;width:110mm;font-size:9pt">High water, low water, the module stays. 12-year product warranty and 25-year linear power warranty: 2% at most in the first year, 0.55% a year after that, 84.8% after 25 years.<br><br><b>Certificates:</b> IEC 61215, IEC 61730</div>
<div class=a style="left:170mm;top:138mm">{svg(art.warranty(25, "2", "0.55", "84.8", "97", "0.7", "80.2", w=260, h=140, colour="#006d77", own="TD-108", std="Standard module"), 260, 140)}</div>
<div class=a style="left:14mm;bottom:7mm;font-size:6.6pt;color:#555">Tidewater Photovoltaics · Ebb Lane 2, Tidewater · +00 61 555 0158 · crew@tidewater.example</div></div>
<div class=p><div class=a style="left:14mm;top:9mm;width:150mm"><b style="font-size:15pt;color:#006d77">TD-108</b>
<h2>Electrical parameters at STC</h2>{tab("stc", [("Module efficiency", "η", "%", "efficiency_pct")])}
<h2>Electrical parameters at NMOT</h2>{tab("nmot")}
<i>STC: 1000 W/m², cell temperature 25 °C, AM 1.5; Pmax measurement uncertainty ±3%. NOCT: 800 W/m², ambient 20 °C, wind speed 1 m/s.</i>
<div style="display:flex;gap:16pt;margin-top:4pt">{svg(draw, dw, dh)}</div></div>
<div class=a style="left:176mm;top:14mm;width:107mm"><h2>Temperature</h2>{lst([["Nominal operating cell temperature (NOCT)", "44 ± 2 °C"], ["Temperature coefficient of Pmax", "−0.320 %/°C"], ["Temperature coefficient of Voc", "−0.270 %/°C"], ["Temperature coefficient of Isc", "0.048 %/°C"]])}
<h2>Mechanical</h2>{lst([["Cells", "108 (6 × 18) mono PERC, half cut, 182 × 91 mm"], ["Outer size", "1722 × 1134 × 30 mm"], ["Mass", "21.3 kg"], ["Front glass", "3.2 mm"], ["Junction box", "IP68, 3 diodes"], ["Cable", "4 mm², 1100 mm"]])}
<h2>Limits</h2>{lst([["Maximum system voltage", "1500 V DC"], ["Maximum series fuse", "25 A"], ["Operating temperature", "−40 °C to 85 °C"], ["Power sorting", "0/+5 W"], ["Load, front / rear", "5400 Pa / 2400 Pa"], ["Safety class", "II"]])}
<h2>Packing</h2>{lst([["Modules per pallet", "36"], ["Pallets per 40 ft HC", "26"], ["Modules per 40 ft HC", "936"]])}
<div style="margin-top:6pt">{svg(ivs, 220, 140)}</div></div>
<div class=a style="left:14mm;right:14mm;bottom:6mm;font-size:6pt;color:#555;display:flex;justify-content:space-between"><span>Licensed installation under local code. Subject to change.</span><span>{rec["revision"]}</span></div></div></html>"""
    chromium(page, out)
    with pikepdf.open(out, allow_overwriting_input=True) as pdf:
        for pg in pdf.pages:
            # Stored upright and turned by /Rotate; the media box is larger than the crop box and does not begin at 0.
            w, h = 841.92, 594.96
            pg.contents_coalesce()
            pg.contents_add(b"q 0 1 -1 0 644.96 70 cm\n", prepend=True)
            pg.contents_add(b"\nQ", prepend=False)
            pg.obj.MediaBox = [20, 30, 20 + h + 60, 30 + w + 80]
            pg.obj.CropBox = [50, 70, 50 + h, 70 + w]
            pg.obj.Rotate = 90
        pdf.save(out, static_id=True)
