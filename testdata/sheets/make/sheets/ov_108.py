"""ov-108: Orme & Vallon Énergie, French; two tables side by side on the same baselines, a letter-spaced heading, ligatures, coefficient with its own spread in brackets,
names over two header lines, units only in the first row; WeasyPrint."""
import art
from design import Design
from loc import comma
from producers import svg, weasyprint
from record import N

NAME = "ov-108"
L, W, D = "1762", "1134", "30"
design = Design(54, 435, 5, 4, (39.00, .16), (13.95, .06), .045, -.24, 1.762 * 1.134, effd=2)


def record():
    return {
        "maker": "Orme & Vallon Énergie", "series": "OV-108N", "revision": "FT-OV108N-FR-2401", "issued": "2024-01", "language": "fr",
        "cell": {"technology": "topcon", "count": N(108), "arrangement": "6x18", "cut": "half", "width_mm": N(182), "height_mm": N(91), "busbars": N(16)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("24.2"), "front_glass_mm": N("2.0"), "rear_glass_mm": N("2.0"), "cable_mm2": N(4), "cable_length_mm": [N(1200)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "Vallon V4", "frame": "Aluminium anodisé noir"},
        "bifacial": {"factor_pct": N(80), "factor_tolerance_pct": N(10)},
        "thermal": {"nmot_c": N(45), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.045"), "beta_voc_pct_per_k": N("-0.24"), "gamma_pmax_pct_per_k": N("-0.28")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1), "air_mass": N("1.5")}},
        "warranty": {"product_years": N(20), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.4"), "final_output_pct": N("87.4")},
        "packing": {"modules_per_pallet": N(36), "modules_per_container": N(936)},
        "certificates": ["IEC 61215", "IEC 61730", "ISO 9001"],
        "models": [{"name": f"OV-108N-{w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 45, pd=1)} for k, w in enumerate(design.watts)],
    }


CSS = """
@page{size:A4;margin:0} body{margin:0;font:7.4pt/1.3 Lato;color:#23303a} .p{width:210mm;height:297mm;position:relative;overflow:hidden;page-break-after:always} .p:last-child{page-break-after:auto}
.abs{position:absolute} h2{font-size:9.2pt;color:#fff;background:#34495e;margin:0 0 2pt;padding:3pt 6pt} h2.s{letter-spacing:2.6pt}
table{border-collapse:collapse;width:100%} td,th{padding:1.9pt 4pt;text-align:center;border-bottom:.4pt solid #ccd3d8;font-weight:400} td:first-child,th:first-child{text-align:left} th{font-weight:700;border-bottom:1pt solid #34495e}
tr.b td{background:#f1f4ee} .l td{text-align:left} .l td:last-child{text-align:right} sub,sup{font-size:62%;line-height:0} .g{color:#7d9a3b}
"""


def build(rec, out):
    ms = rec["models"]
    q = [("Puissance maximale (P<sub>max</sub>)", "pmax_w", "W"), ("Tension à puissance maximale (V<sub>mp</sub>)", "vmp_v", "V"), ("Courant à puissance maximale (I<sub>mp</sub>)", "imp_a", "A"), ("Tension en circuit ouvert (V<sub>oc</sub>)", "voc_v", "V"), ("Courant de court-circuit (I<sub>sc</sub>)", "isc_a", "A")]

    def one(cond, title, extra=()):
        # two header lines; the unit stands only with the first class
        h = f"<tr><th rowspan=2>{title}</th>" + "<th>OV-108N-</th>" * len(ms) + "</tr><tr>" + "".join(f"<th>{m['name'].split('-')[-1]}</th>" for m in ms) + "</tr>"
        return "<table>" + h + "".join(f"<tr{' class=b' if n % 2 else ''}><td>{a}</td>" + "".join(f"<td>{comma(m[cond][k])}{' ' + u if j == 0 else ''}</td>" for j, m in enumerate(ms)) + "</tr>" for n, (a, k, u) in enumerate(q + list(extra))) + "</table>"

    lst = lambda rows: "<table class=l>" + "".join(f"<tr><td>{a}</td><td>{b}</td></tr>" for a, b in rows) + "</table>"
    draw, dw, dh = art.drawing(L, W, D, 18, 6, h=195, holes=(990, 1300), labels=("Face avant", "Profil", "Face arrière"))
    d = design.diodes[1]
    ivs = art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 240, 160, xlabel="Tension (V)", ylabel="Courant (A)", title="Courbes I-V, OV-108N-440")
    page = f"""<html lang=fr><head><title>OV-108N</title><style>{CSS}</style></head><body>
<div class=p><div class=abs style="left:0;top:0">{svg(art.hero(595.3, 430, rows=9, cols=6, sky=("#fbfbf4","#cddbb2"), cell="#17202b", frame="#22262b", tilt=.3), 595.3, 430, "Lato")}</div>
<div class=abs style="left:14mm;top:12mm;font-size:17pt;font-weight:900;color:#34495e">Orme <span class=g>&amp;</span> Vallon <span style="font-weight:300">Énergie</span></div>
<div class=abs style="left:14mm;top:118mm;background:#fffffff0;padding:8pt 14pt"><div style="font-size:27pt;font-weight:900;color:#34495e">OV-108N</div><div style="font-size:15pt" class=g>435 – 450 W</div><div>Module bifacial biverre, cellules N-TOPCon</div></div>
<div class=abs style="left:14mm;top:160mm;width:96mm"><p style="font-size:9pt;margin:0 0 6pt">Né entre l’orme et le vallon, ce module capte la lumière par ses deux faces. Son verre trempé de part et d’autre le protège des fissures, de la neige et du sel.</p>
{"".join(f'<p style="margin:4pt 0"><b class=g style="font-size:10pt">{a}</b><br>{b}</p>' for a, b in (("Rendement jusqu’à " + comma(ms[-1]["stc"]["efficiency_pct"]) + " %", "Cellules de type N à contacts passivés."), ("Gain bifacial", "Jusqu’à 25 % d’énergie en plus selon le sol."), ("Efficacité par forte chaleur", "Un faible coefficient de température."), ("Charges élevées", "5400 Pa en face avant (neige), 2400 Pa en face arrière (vent).")))}</div>
<div class=abs style="left:116mm;top:160mm;width:80mm"><b style="font-size:10pt">Garantie produit 20 ans<br>Garantie de puissance linéaire 30 ans</b>{svg(art.warranty(30, "1", "0.4", "87.4", "98", "0.55", "84.8", w=225, h=130, colour="#7d9a3b", own="OV-108N", std="Module standard", pct="{} %", comma=True, xlabel="Années"), 225, 130, "Lato")}
<p style="margin:2pt 0">1 % au plus la première année, puis 0,4 % par an ; 87,4 % de la puissance nominale au bout de 30 ans.</p><p><b>Certifications</b><br>IEC 61215, IEC 61730, ISO 9001</p></div>
<div class=abs style="left:14mm;right:14mm;bottom:9mm;font-size:6.5pt;color:#66727c">Orme &amp; Vallon Énergie SAS · 3, chemin du Vallon, 00417 Ormeval · Tél. +00 4 17 55 50 19 · contact@ormevallon.example</div></div>
<div class=p><div style="padding:10mm 14mm 0"><div style="display:flex;justify-content:space-between;margin-bottom:6pt"><b style="font-size:15pt;color:#34495e">OV-108N 435–450 W</b><b style="font-size:11pt">Orme <span class=g>&amp;</span> Vallon</b></div>
<h2 class=s>CARACTÉRISTIQUES ÉLECTRIQUES</h2>
<div style="display:flex;gap:10pt"><div style="flex:1">{one("stc", "STC", [("Rendement du module (%)", "efficiency_pct", "%")])}</div><div style="flex:1">{one("nmot", "NMOT")}</div></div>
<p style="font-size:6pt;margin:3pt 0 8pt">STC : éclairement 1000 W/m², température de cellule 25 °C, AM 1,5. NMOT : 800 W/m², température ambiante 20 °C, AM 1,5, vitesse du vent 1 m/s. Tolérance de mesure de P<sub>max</sub> : ±3 %. Tri positif 0/+5 W.</p>
<div style="display:flex;gap:10pt"><div style="flex:1">
<h2>Caractéristiques mécaniques</h2>{lst([["Cellules", "N-type TOPCon, 182 × 91 mm, 16 barres"], ["Nombre de cellules", "108 (6 × 18), demi-cellules"], ["Dimensions", "1762 × 1134 × 30 mm"], ["Poids", "24,2 kg"], ["Verre avant", "2,0 mm, trempé, antireflet"], ["Verre arrière", "2,0 mm, trempé"], ["Cadre", "Aluminium anodisé noir"], ["Boîte de jonction", "IP68, 3 diodes bypass"], ["Câbles", "4 mm², longueur 1200 mm"], ["Connecteurs", "Vallon V4"]])}</div><div style="flex:1">
<h2>Coefficients de température</h2>{lst([["Température de fonctionnement (NMOT)", "45 °C ± 2 °C"], ["Coefficient de température de P<sub>max</sub>", "(−0,28 ± 0,03) %/°C"], ["Coefficient de température de V<sub>oc</sub>", "(−0,24 ± 0,02) %/°C"], ["Coefficient de température de I<sub>sc</sub>", "(0,045 ± 0,01) %/°C"]])}
<h2 style="margin-top:5pt">Conditions d’utilisation</h2>{lst([["Tension maximale du système", "1500 V CC"], ["Calibre maximal du fusible série", "25 A"], ["Plage de température", "−40 °C à +85 °C"], ["Charge maximale, avant (neige)", "5400 Pa"], ["Charge maximale, arrière (vent)", "2400 Pa"], ["Facteur de bifacialité", "80 % ± 10 %"], ["Classe de protection", "II"]])}</div></div>
<h2 style="margin-top:6pt">Conditionnement</h2>{lst([["Modules par palette", "36"], ["Modules par conteneur 40’ HC", "936"], ["Dimensions de la palette", "1795 × 1125 × 1255 mm, 905 kg"]])}
<div style="display:flex;justify-content:space-between;margin-top:10pt">{svg(draw, dw, dh, "Lato")}{svg(ivs, 240, 160, "Lato")}</div></div>
<div class=abs style="left:14mm;right:14mm;bottom:8mm;font-size:6pt;color:#66727c;display:flex;justify-content:space-between"><span>Document non contractuel. L’installation est réservée aux personnes qualifiées, selon la réglementation locale. Janvier 2024</span><span>{rec['revision']}</span></div></div></body></html>"""
    weasyprint(page, out)
