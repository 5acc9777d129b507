"""bg-132: Brzozowy Gaj Solar, Polish; BNPI block and the table of rear-to-front irradiance ratio, bifaciality as three fractions, NMOT, STC | BNPI alternating,
non-breaking spaces, number and unit with a space in between thousands; Chromium."""
import art
from design import Design
from loc import comma
from producers import chromium, svg
from record import N, num

NAME = "bg-132"
L, W, D = "2384", "1303", "33"
design = Design(66, 680, 5, 4, (46.90, .18), (18.22, .06), .045, -.25, 2.384 * 1.303, effd=2)
PHI = .80


def record():
    models = []
    for k, w in enumerate(design.watts):
        d = design.diodes[k]
        m = {"name": f"BG-132T-{w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 43), "bnpi": design.cond(k, 1 + .135 * PHI, 25)}
        if w == 690:
            m["rear_ratio"] = [{"ratio_pct": N(r), **design.cond(k, 1 + r / 100 * PHI, 25)} for r in (10, 20, 30)]
        models.append(m)
    return {
        "maker": "Brzozowy Gaj Solar", "series": "BG-132T", "revision": "BGS/132T/PL/2024-06", "issued": "2024-06", "language": "pl",
        "cell": {"technology": "topcon", "count": N(132), "arrangement": "6x22", "cut": "half", "width_mm": N(210), "height_mm": N(105)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("38.3"), "front_glass_mm": N("2.0"), "rear_glass_mm": N("2.0"), "cable_mm2": N(4), "cable_length_mm": [N(350), N(350)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "Brzoza B4", "frame": "Anodowany stop aluminium"},
        "bifacial": {"factor_pct": N(80)},
        "thermal": {"nmot_c": N(43), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.045"), "beta_voc_pct_per_k": N("-0.25"), "gamma_pmax_pct_per_k": N("-0.29")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(35), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II", "fire_class": "A"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}, "bnpi": {"irradiance_w_m2": N(1000), "rear_irradiance_w_m2": N(135)}},
        "warranty": {"product_years": N(15), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.4"), "final_output_pct": N("87.4")},
        "packing": {"modules_per_pallet": N(33), "pallets_per_container": N(18), "modules_per_container": N(594)},
        "certificates": ["IEC 61215", "IEC 61730", "IEC 61701"],
        "models": models,
    }


CSS = """
@page{size:A4;margin:0} body{margin:0;font:7.3pt/1.27 'Open Sans';color:#20262b;-webkit-print-color-adjust:exact} .p{width:210mm;height:296.6mm;position:relative;overflow:hidden;page-break-after:always} .p:last-child{page-break-after:auto}
.a{position:absolute} h2{font-size:8.8pt;margin:6pt 0 2pt;color:#fff;background:linear-gradient(90deg,#2f6b3c,#8dbb6a);padding:2.6pt 6pt;border-radius:0 6pt 6pt 0} table{border-collapse:collapse;width:100%} td,th{padding:1.3pt 3pt;text-align:center;border-bottom:.4pt dotted #8dbb6a;font-weight:400}
td:first-child,th:first-child{text-align:left} th{font-weight:700;color:#2f6b3c} .l td:last-child{text-align:right} i{font-style:normal;font-size:6pt;color:#555}
"""


def build(rec, out):
    ms = rec["models"]
    q = [("Moc maksymalna P<sub>max</sub> [W]", "pmax_w"), ("Napięcie w punkcie mocy maksymalnej U<sub>mpp</sub> [V]", "vmp_v"), ("Prąd w punkcie mocy maksymalnej I<sub>mpp</sub> [A]", "imp_a"), ("Napięcie obwodu otwartego U<sub>oc</sub> [V]", "voc_v"), ("Prąd zwarcia I<sub>sc</sub> [A]", "isc_a")]
    th = lambda cells, tag="th": "<tr>" + "".join(f"<{tag}{' colspan=' + str(s) if s > 1 else ''}>{c}</{tag}>" for c, s in cells) + "</tr>"
    alt = "<table>" + th([("Typ modułu", 1)] + [(m["name"], 2) for m in ms]) + th([("Warunki", 1)] + [(c, 1) for _ in ms for c in ("STC", "BNPI")])
    alt += "".join(th([(a, 1)] + [(comma(m[c][k]), 1) for m in ms for c in ("stc", "bnpi")], "td") for a, k in q) + th([("Sprawność modułu [%]", 1)] + [(comma(m["stc"]["efficiency_pct"]), 2) for m in ms], "td") + "</table>"
    nm = "<table>" + th([("Typ modułu", 1)] + [(m["name"], 1) for m in ms]) + "".join(th([(a, 1)] + [(comma(m["nmot"][k]), 1) for m in ms], "td") for a, k in q) + "</table>"
    rr = next(m for m in ms if "rear_ratio" in m)["rear_ratio"]
    rt = "<table>" + th([("Stosunek natężenia tył / przód", 1)] + [(r["ratio_pct"] + " %", 1) for r in rr]) + "".join(th([(a, 1)] + [(comma(r[k]), 1) for r in rr], "td") for a, k in q) + "</table>"
    lst = lambda rows: "<table class=l>" + "".join(f"<tr><td>{a}</td><td>{b}</td></tr>" for a, b in rows) + "</table>"
    draw, dw, dh = art.drawing(L, W, D, 22, 6, h=180, holes=(400, 1400), labels=("Przód", "Bok", "Tył"))
    d = design.diodes[2]
    ivs = art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 235, 140, xlabel="Napięcie [V]", ylabel="Prąd [A]", title="BG-132T-690")
    page = f"""<!doctype html><html lang=pl><meta charset=utf-8><title>BG-132T</title><style>{CSS}</style>
<div class=p><div class=a style="left:0;top:0">{svg(art.hero(595.3, 470, rows=11, cols=6, sky=("#f3f8ec","#b7d49b"), cell="#121a24", frame="#b9bec3", tilt=.32), 595.3, 470)}</div>
<div class=a style="left:14mm;top:12mm;font-size:20pt;font-weight:700;color:#2f6b3c">Brzozowy Gaj <span style="font-weight:300">Solar</span></div>
<div class=a style="left:14mm;top:125mm;background:#2f6b3c;color:#fff;padding:8pt 16pt"><span style="font-size:28pt;font-weight:700">BG-132T</span><br><span style="font-size:14pt">680–695 W · moduł dwustronny N-TOPCon</span></div>
<div class=a style="left:14mm;top:172mm;width:92mm;font-size:8.4pt"><b style="color:#2f6b3c;font-size:11pt">Światło z obu stron</b><br>Moduł szkło–szkło dla farm i wiat. Połówkowe ogniwa 210 mm, niskie napięcie, dłuższe łańcuchy.<br><br>
<b>Sprawność do {comma(ms[-1]["stc"]["efficiency_pct"])} %</b><br><b>Zysk z tylnej strony do 30 %</b><br><b>Gwarancja: 15 lat na produkt, 30 lat na moc liniową</b><br><b>Obciążenie: 5400 Pa (śnieg), 2400 Pa (wiatr)</b><br><br>Certyfikaty: IEC 61215, IEC 61730, IEC 61701</div>
<div class=a style="left:112mm;top:172mm">{svg(art.warranty(30, "1", "0.4", "87.4", "98", "0.55", "84.8", w=240, h=135, colour="#2f6b3c", own="BG-132T", std="Moduł standardowy", pct="{} %", comma=True, xlabel="Lata"), 240, 135)}<br><i>Pierwszy rok: utrata do 1 %, potem do 0,4 % rocznie; 87,4 % po 30 latach.</i></div>
<div class=a style="left:14mm;right:14mm;bottom:8mm;font-size:6.4pt;color:#555">Brzozowy Gaj Solar sp. z o.o. · ul. Brzozowa 17, 00-417 Gaj · tel. +00 22 555 01 90 · biuro@brzozowygaj.example</div></div>
<div class=p><div style="padding:8mm 14mm 0"><div style="display:flex;justify-content:space-between;align-items:baseline"><b style="font-size:15pt;color:#2f6b3c">BG-132T 680–695 W</b><b>Brzozowy Gaj Solar</b></div>
<h2>Parametry elektryczne – STC i BNPI</h2>{alt}<i>STC: natężenie promieniowania 1000 W/m², temperatura ogniwa 25 °C, AM 1,5. BNPI: przód 1000 W/m², tył 135 W/m². Niepewność pomiaru P<sub>max</sub> ±3 %.</i>
<h2>Parametry elektryczne – NMOT</h2>{nm}<i>NMOT: 800 W/m², temperatura otoczenia 20 °C, prędkość wiatru 1 m/s.</i>
<h2>Parametry przy dodatkowym oświetleniu tyłu (BG-132T-690)</h2>{rt}
<div style="display:grid;grid-template-columns:1fr 1fr;gap:10pt"><div><h2>Dane mechaniczne</h2>{lst([["Ogniwa", "N-TOPCon 210 × 105 mm, połówkowe"], ["Liczba ogniw", "132 (6 × 22)"], ["Wymiary", "2384 × 1303 × 33 mm"], ["Masa", "38,3 kg"], ["Szkło przednie", "2,0 mm hartowane"], ["Szkło tylne", "2,0 mm hartowane"], ["Rama", "Anodowany stop aluminium"], ["Puszka przyłączeniowa", "IP68, 3 diody obejściowe"], ["Przewody", "4 mm², (+) 350 mm, (−) 350 mm"], ["Złącza", "Brzoza B4"]])}</div>
<div><h2>Temperatura</h2>{lst([["Nominalna temperatura pracy modułu (NMOT)", "43 ± 2 °C"], ["Współczynnik temperaturowy P<sub>max</sub>", "–0,29 %/°C"], ["Współczynnik temperaturowy U<sub>oc</sub>", "–0,25 %/°C"], ["Współczynnik temperaturowy I<sub>sc</sub>", "0,045 %/°C"]])}
<h2>Warunki pracy</h2>{lst([["Maksymalne napięcie systemu", "1500 V DC"], ["Maksymalny prąd bezpiecznika", "35 A"], ["Temperatura pracy", "od –40 °C do +85 °C"], ["Tolerancja mocy", "0 ~ +5 W"], ["Maks. obciążenie statyczne, przód", "5400 Pa"], ["Maks. obciążenie statyczne, tył", "2400 Pa"], ["Klasa ochrony", "II"], ["Klasa palności", "A"]])}</div></div>
<div style="margin-top:4pt"><b style="color:#2f6b3c">Współczynniki dwustronności</b>&nbsp;&nbsp; φ<sub>Uoc</sub>: 0,98 &nbsp; φ<sub>Isc</sub>: 0,81 &nbsp; φ<sub>Pmax</sub>: 0,80 &nbsp;&nbsp;&nbsp; <b style="color:#2f6b3c">Pakowanie (40' HC)</b>&nbsp;&nbsp; 33 szt./paleta, 18 palet, 594 szt./kontener</div>
<div style="display:flex;justify-content:space-between;margin-top:4pt">{svg(draw, dw, dh)}{svg(ivs, 235, 140)}</div></div>
<div class=a style="left:14mm;right:14mm;bottom:6mm;font-size:5.8pt;color:#555;display:flex;justify-content:space-between"><span>Montaż tylko przez osoby uprawnione, zgodnie z przepisami miejscowymi. Dane mogą ulec zmianie. Wydanie 06/2024</span><span>{rec["revision"]}</span></div></div></html>"""
    chromium(page, out)
