"""oc-t268: Outer Cape Thin Film, CdTe, models down and quantities across, units in the first row of the head, one merged value per column; WeasyPrint."""
import art
from design import Design
from producers import svg, weasyprint
from record import N

NAME = "oc-t268"
L, W, D = "2024", "1245", "40"
design = Design(268, 450, 5, 5, (222.0, .8), (2.585, .01), .04, -.28, 2.024 * 1.245, shunt=35, vd=1, effd=1, eg=(1.475, -.0003))


def record():
    return {
        "maker": "Outer Cape Thin Film", "series": "OC-T268", "revision": "OCTF 0268 r7", "issued": "2022-09", "language": "en",
        "cell": {"technology": "cdte", "count": N(268)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("35.0"), "front_glass_mm": N("2.8"), "rear_glass_mm": N("2.2"), "cable_mm2": N("2.5"), "cable_length_mm": [N(720)], "bypass_diodes": N(0), "connector": "OC-Latch"},
        "thermal": {"nmot_c": N(45), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.04"), "beta_voc_pct_per_k": N("-0.28"), "gamma_pmax_pct_per_k": N("-0.32")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(5), "reverse_current_a": N(5), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(2400), "rear_load_pa": N(2400)},
        "tolerance": {"power_plus_pct": N(5), "power_minus_pct": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1), "air_mass": N("1.5")}},
        "warranty": {"product_years": N(12), "performance_years": N(30), "first_year_loss_pct": N(2), "annual_loss_pct": N("0.3"), "final_output_pct": N("89.3")},
        "packing": {"modules_per_pallet": N(27), "pallets_per_container": N(22), "modules_per_container": N(594)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"OC-T268-{w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 45, pd=1)} for k, w in enumerate(design.watts)],
    }


CSS = """
@page{size:A4;margin:0} body{margin:0;font:7.6pt/1.3 'Open Sans';color:#1c2b33} .p{width:210mm;height:297mm;position:relative;overflow:hidden;page-break-after:always} .p:last-child{page-break-after:auto}
.abs{position:absolute} h1{font-size:34pt;margin:0;line-height:1} h2{font-size:9pt;color:#0a6f7a;margin:8pt 0 2pt;border-bottom:1.4pt solid #0a6f7a} h2 small{font-weight:400;color:#555;font-size:6.6pt}
table{border-collapse:collapse;width:100%} td,th{padding:1.5pt 3pt;text-align:right;border-bottom:.3pt solid #b9c9cc} th{background:#0a6f7a;color:#fff;font-weight:600;text-align:right;vertical-align:bottom;font-size:6.8pt}
td:first-child,th:first-child{text-align:left} tr.u th{background:#cfe3e5;color:#1c2b33;font-weight:400} .l td{text-align:left}
sub{font-size:65%;line-height:0}
"""


def build(rec, out):
    ms, s = rec["models"], rec["thermal"]
    cap = "OUTER CAPE"

    def across(cond, extra):
        head = ["Model", "Nominal power", "Voltage at P<sub>MAX</sub>", "Current at P<sub>MAX</sub>", "Open circuit voltage", "Short circuit current"] + (["Efficiency"] if extra else [])
        units = ["", "P<sub>MAX</sub> (W)", "V<sub>MAX</sub> (V)", "I<sub>MAX</sub> (A)", "V<sub>OC</sub> (V)", "I<sub>SC</sub> (A)"] + (["(%)"] if extra else [])
        keys = ["pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a"] + (["efficiency_pct"] if extra else [])
        return ("<table><tr>" + "".join(f"<th>{h}</th>" for h in head) + "</tr><tr class=u>" + "".join(f"<th>{u}</th>" for u in units) + "</tr>"
                + "".join(f"<tr><td>{m['name']}</td>" + "".join(f"<td>{m[cond][k]}</td>" for k in keys) + "</tr>" for m in ms) + "</table>")

    lst = lambda rows: "<table class=l>" + "".join(f"<tr><td>{a}</td><td>{b}</td></tr>" for a, b in rows) + "</table>"
    draw, dw, dh = art.drawing(L, W, D, 1, 67, h=190, half=False, holes=(400, 1200))
    d = design.diodes[2]
    ivs = art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 240, 150, title="OC-T268-460 at 25 °C")
    page = f"""<html lang=en><head><title>OC-T268</title><style>{CSS}</style></head><body>
<div class=p><div class=abs style="left:0;top:0">{svg(art.hero(595.3, 520, rows=3, cols=48, sky=("#e4f3f3","#7fb8c4"), cell="#0b1518", frame="#20292c", tilt=.2), 595.3, 520)}</div>
<div class=abs style="left:14mm;top:12mm;font-size:16pt;font-weight:700;color:#0a6f7a">{cap} <span style="font-weight:300">THIN FILM</span></div>
<div class=abs style="left:14mm;top:150mm;color:#fff"><h1>OC-T268</h1><div style="font-size:16pt">450–470 Watts · thin film CdTe module</div></div>
<div class=abs style="left:14mm;top:190mm;width:95mm"><p style="font-size:9.5pt;margin:0">Grown in one piece on glass, without wafers and without solder. The T268 keeps its power where it is hot and wet.</p>
<h2>Why thin film</h2><ul style="margin:3pt 0;padding-left:11pt"><li>Less loss on hot days: −0.32 %/°C</li><li>No cell cracking, no LID, no LeTID</li><li>{ms[-1]['stc']['efficiency_pct']}% module efficiency</li><li>30-year linear performance warranty: 98% start, −0.3% a year, 89.3% in year 30</li><li>12-year limited product warranty</li></ul>
<h2>Certificates</h2>IEC 61215, IEC 61730 (1500 V)</div>
<div class=abs style="left:116mm;top:190mm">{svg(art.warranty(30, "2", "0.3", "89.3", "97.5", "0.7", "80.7", w=235, h=140, colour="#0a6f7a", own="OC-T268", std="Typical module"), 235, 140, "Open Sans")}</div>
<div class=abs style="left:14mm;right:14mm;bottom:8mm;font-size:6.5pt;color:#666">Outer Cape Thin Film · Lighthouse Yard 1, Outer Cape · +00 207 555 0111 · module@outercape.example</div></div>
<div class=p><div style="padding:9mm 14mm">
<div style="display:flex;justify-content:space-between"><b style="font-size:15pt;color:#0a6f7a">OC-T268</b><span>{cap} THIN FILM</span></div>
<h2>Ratings at Standard Test Conditions <small>(1000 W/m², AM 1.5, 25 °C); power tolerance −0/+5 %; all other values ±10 %</small></h2>{across("stc", True)}
<h2>Ratings at Nominal Module Operating Temperature <small>NMOT 45 ± 2 °C (800 W/m², 20 °C air temperature, AM 1.5, 1 m/s wind)</small></h2>{across("nmot", False)}
<div style="display:flex;gap:14pt"><div style="flex:1">
<h2>Mechanical description</h2>{lst([["Length", "2024 mm"], ["Width", "1245 mm"], ["Thickness", "40 mm, with frame"], ["Weight", "35.0 kg"], ["Area", "2.52 m²"], ["Leadwire", "2.5 mm², 720 mm (+) and bulkhead (−)"], ["Connectors", "OC-Latch"], ["Bypass diode", "0"], ["Cell type", "Thin film CdTe semiconductor, 268 cells"], ["Front glass", "2.8 mm heat strengthened"], ["Back glass", "2.2 mm heat strengthened"], ["Load rating, front / back", "2400 Pa / 2400 Pa"]])}</div><div style="flex:1">
<h2>Temperature characteristics</h2>{lst([["Module operating temperature range", "−40 to +85 °C"], ["Temperature coefficient of P<sub>MAX</sub>", "−0.32 %/°C"], ["Temperature coefficient of V<sub>OC</sub>", "−0.28 %/°C"], ["Temperature coefficient of I<sub>SC</sub>", "+0.04 %/°C"]])}
<h2>Limits</h2>{lst([["Maximum system voltage", "1500 V"], ["Limiting reverse current", "5 A"], ["Maximum series fuse", "5 A"]])}
<h2>Packaging <small>40-foot container</small></h2>{lst([["Modules per pack", "27"], ["Packs per container", "22"], ["Modules per container", "594"]])}</div></div>
<div style="display:flex;justify-content:space-between;margin-top:12pt">{svg(draw, dw, dh, "Open Sans")}{svg(ivs, 240, 150, "Open Sans")}</div></div>
<div class=abs style="left:14mm;right:14mm;bottom:8mm;font-size:6pt;color:#666;display:flex;justify-content:space-between"><span>Conductors, fuses and structure are chosen by licensed persons under local code. September 2022</span><span>{rec['revision']}</span></div></div></body></html>"""
    weasyprint(page, out)
