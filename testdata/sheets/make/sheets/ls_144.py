"""ls-144: Lumbrera del Sur, Spanish; classes descending, names on two header lines, units glued to the values and the tolerance in each voltage and current cell,
absolute coefficients beside the relative ones, NOCT, 20 ft and 40 ft; Chromium."""
import art
from design import Design
from loc import comma, dot3
from producers import chromium, svg
from record import N, num

NAME = "ls-144"
L, W, D = "2278", "1134", "35"
design = Design(72, 540, 5, 4, (49.40, .16), (13.80, .05), .050, -.28, 2.278 * 1.134)


def record():
    mid = design.diodes[0]
    return {
        "maker": "Lumbrera del Sur", "series": "LS-144M", "revision": "LS144M-ES-v3", "language": "es",
        "cell": {"technology": "mono-perc", "count": N(144), "arrangement": "6x24", "cut": "half", "width_mm": N(182), "height_mm": N(91)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("28.3"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(300), N(300)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "Lumbre L4", "frame": "Aleación de aluminio anodizado"},
        "thermal": {"noct_c": N(45), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.050"), "alpha_isc_a_per_k": N("0.0069"), "beta_voc_pct_per_k": N("-0.280"), "beta_voc_v_per_k": N("-0.138"), "gamma_pmax_pct_per_k": N("-0.330"), "gamma_pmax_w_per_k": N("-1.78")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_pct": N(3), "power_minus_pct": N(0), "voc_pct": N(3), "isc_pct": N(4)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(12), "performance_years": N(25), "first_year_loss_pct": N("2.5"), "annual_loss_pct": N("0.6"), "final_output_pct": N("83.1")},
        "packing": {"modules_per_pallet": N(31), "pallets_per_container": N(20), "modules_per_container": N(620)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"LS-144M/{w}", "stc": design.stc(k), "noct": design.cond(k, .8, 45, pd=1)} for k, w in enumerate(design.watts)],
    }


CSS = """
@page{size:A4;margin:0} body{margin:0;font:7.6pt/1.28 'Roboto Condensed';color:#2b1d12;-webkit-print-color-adjust:exact} .p{width:210mm;height:296.6mm;position:relative;overflow:hidden;page-break-after:always} .p:last-child{page-break-after:auto}
.a{position:absolute} h2{font-size:10pt;color:#c4481d;margin:7pt 0 2pt;text-transform:uppercase;border-left:5pt solid #f0a830;padding-left:5pt} table{border-collapse:collapse;width:100%} td,th{padding:1.6pt 2pt;border:.4pt solid #d8c8b4;text-align:center;font-weight:400}
td:first-child,th:first-child{text-align:left;padding-left:4pt} th{background:#f0a830;font-weight:700} table.e{table-layout:fixed} table.e td{padding:1.6pt 0;white-space:nowrap} table.e td:first-child{padding-left:4pt} table.e td+td,table.e th+th{border-left:0;border-right:0;text-align:right;font-size:8.6pt;letter-spacing:.05pt;padding:1.2pt 0}
"""


def build(rec, out):
    ms = rec["models"][::-1]
    tol = {"voc_v": " ± 3 %", "isc_a": " ± 4 %"}
    q = [("Potencia máxima (Pmáx)", "pmax_w", "W"), ("Tensión en el punto de máxima potencia (Vmp)", "vmp_v", "V"), ("Corriente en el punto de máxima potencia (Imp)", "imp_a", "A"), ("Tensión de circuito abierto (Voc)", "voc_v", "V"), ("Corriente de cortocircuito (Isc)", "isc_a", "A")]

    def tab(cond, extra=()):
        h = "<tr><th style='width:61%'>Modelo</th>" + "".join(f"<th>LS-144M/<br>{m['stc']['pmax_w']}</th>" for m in ms) + "</tr>"
        return "<table class=e>" + h + "".join(f"<tr><td>{a}</td>" + "".join(f"<td>{comma(m[cond][k])} {u}{tol.get(k, '') if cond == 'stc' else ''}</td>" for m in ms) + "</tr>" for a, k, u in q + list(extra)) + "</table>"

    lst = lambda rows: "<table>" + "".join("<tr>" + "".join(f"<td>{c}</td>" for c in r) + "</tr>" for r in rows) + "</table>"
    draw, dw, dh = art.drawing(L, W, D, 24, 6, h=190, holes=(400, 1400), unit="", fmt=dot3, labels=("Anverso", "Perfil", "Reverso"))
    d = design.diodes[0]
    ivs = art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 230, 150, xlabel="Tensión (V)", ylabel="Corriente (A)", title="LS-144M/540, 25 °C")
    t = rec["thermal"]
    page = f"""<!doctype html><html lang=es><meta charset=utf-8><title>LS-144M</title><style>{CSS}</style>
<div class=p><div class=a style="left:0;top:0">{svg(art.hero(595.3, 520, rows=12, cols=6, sky=("#fff3d6","#f3b15a"), cell="#1b2540", frame="#d8d8d8"), 595.3, 520)}</div>
<div class=a style="left:14mm;top:12mm;font-size:21pt;font-weight:700;color:#c4481d">LUMBRERA <span style="font-weight:300">del Sur</span></div>
<div class=a style="left:14mm;top:38mm;font-size:40pt;font-weight:700;line-height:1">LS-144M<div style="font-size:18pt">540 W – 555 W</div><div style="font-size:10pt;font-weight:400">Módulo monocristalino PERC de célula partida</div></div>
<div class=a style="left:14mm;right:14mm;top:188mm;display:grid;grid-template-columns:1fr 1fr 1fr;gap:10pt;font-size:8pt">{"".join(f'<div style="border-top:3pt solid #f0a830;padding-top:3pt"><b style="font-size:15pt;color:#c4481d">{a}</b><br>{b}</div>' for a, b in ((comma(ms[0]["stc"]["efficiency_pct"]) + " %", "eficiencia máxima del módulo"), ("12 años", "de garantía de producto"), ("25 años", "de garantía de potencia lineal"), ("0/+3 %", "tolerancia de potencia positiva"), ("5.400 Pa", "carga de nieve en la cara frontal"), ("2.400 Pa", "carga de viento en la cara posterior")))}</div>
<div class=a style="left:14mm;top:226mm">{svg(art.warranty(25, "2.5", "0.6", "83.1", "96", "0.75", "78.0", w=250, h=130, colour="#c4481d", own="Lumbrera LS-144M", std="Módulo estándar", pct="{} %", comma=True, xlabel="Años"), 250, 130)}</div>
<div class=a style="left:108mm;top:230mm;width:88mm"><b>Garantía</b><p style="margin:2pt 0">97,5 % de la potencia el primer año; después, una degradación anual no mayor de 0,6 %; 83,1 % a los 25 años.</p><b>Certificados</b><p style="margin:2pt 0">IEC 61215 · IEC 61730</p></div>
<div class=a style="left:14mm;right:14mm;bottom:7mm;font-size:6.6pt">Lumbrera del Sur S. L. · Camino de la Lumbrera 12, 00417 Valdesol · Tel. +00 955 55 01 90 · hola@lumbrera.example</div></div>
<div class=p><div style="padding:9mm 14mm"><div style="display:flex;justify-content:space-between;align-items:baseline"><b style="font-size:17pt;color:#c4481d">LS-144M</b><b>LUMBRERA del Sur</b></div>
<h2>Características eléctricas (STC)</h2>{tab("stc", [("Eficiencia del módulo", "efficiency_pct", "%")])}<div style="font-size:6pt">STC: irradiancia 1.000 W/m², temperatura de célula 25 °C, AM 1,5. Tolerancia de potencia: 0/+3 %.</div>
<h2>Características eléctricas (NOCT)</h2>{tab("noct")}<div style="font-size:6pt">NOCT: irradiancia 800 W/m², temperatura ambiente 20 °C, velocidad del viento 1 m/s.</div>
<div style="display:grid;grid-template-columns:1fr 1fr;gap:12pt"><div>
<h2>Datos mecánicos</h2>{lst([["Dimensiones", "2.278 × 1.134 × 35 mm"], ["Peso", "28,3 kg"], ["Células", "144 (6 × 24) monocristalinas PERC, célula partida"], ["Tamaño de célula", "182 × 91 mm"], ["Vidrio frontal", "3,2 mm templado"], ["Marco", "Aleación de aluminio anodizado"], ["Caja de conexiones", "IP68, 3 diodos de derivación"], ["Cable", "4 mm², 2 × 300 mm"], ["Conector", "Lumbre L4"]])}
</div><div><h2>Coeficientes de temperatura</h2>{lst([["Temperatura nominal de operación (NOCT)", "45 ± 2 °C", ""], ["Coeficiente de temperatura Isc", comma(t["alpha_isc_pct_per_k"]) + " %/°C", "6,9 mA/°C"], ["Coeficiente de temperatura Voc", comma(t["beta_voc_pct_per_k"]) + " %/°C", "-138 mV/°C"], ["Coeficiente de temperatura Pmáx", comma(t["gamma_pmax_pct_per_k"]) + " %/°C", "-1,78 W/°C"]])}
<h2>Límites</h2>{lst([["Tensión máxima del sistema", "1.500 V CC"], ["Fusible máximo en serie", "25 A"], ["Temperatura de funcionamiento", "-40 °C a +85 °C"], ["Carga máxima frontal / posterior", "5.400 Pa / 2.400 Pa"], ["Clase de protección", "Clase II"]])}</div></div>
<h2>Embalaje</h2>{lst([["Contenedor", "20 ft GP", "40 ft HC"], ["Módulos por palé", "31", "31"], ["Palés por contenedor", "5", "20"], ["Módulos por contenedor", "155", "620"]])}
<div style="display:flex;justify-content:space-between;margin-top:9pt">{svg(draw, dw, dh)}{svg(ivs, 230, 150)}</div></div>
<div class=a style="left:14mm;right:14mm;bottom:7mm;font-size:6pt;display:flex;justify-content:space-between"><span>Datos sujetos a cambios sin previo aviso. La instalación corresponde a personal autorizado según la normativa local.</span><span>{rec["revision"]}</span></div></div></html>"""
    chromium(page, out)
