"""va-120: Ventos de Aldeia Solar, Portuguese; a spreadsheet: classes out of order, bare watts in the head, a merged value that stands under the middle class,
loads only on the front in large type with number and unit in cells of their own, 2x60 cells, detached minus, look-alike NOCT wording; LibreOffice Calc."""
import art
from design import Design
from fods import Book
from loc import comma
from producers import libreoffice
from record import N

NAME = "va-120"
L, W, D = "1755", "1038", "35"
design = Design(60, 355, 5, 3, (40.60, .2), (11.08, .07), .05, -.27, 1.755 * 1.038)


def record():
    return {
        "maker": "Ventos de Aldeia Solar", "series": "VA-120HC", "revision": "VAS.120HC.PT.05", "language": "pt",
        "cell": {"technology": "mono-perc", "count": N(120), "arrangement": "2x60", "cut": "half"},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N(20), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1150), N(1150)], "bypass_diodes": N(3), "junction_box_ip": "IP67", "connector": "Aldeia A4", "frame": "Alumínio anodizado"},
        "thermal": {"noct_c": N(45), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.05"), "beta_voc_pct_per_k": N("-0.27"), "gamma_pmax_pct_per_k": N("-0.32")},
        "limits": {"system_voltage_v": [N(1000), N(1500)], "series_fuse_a": N(20), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400)},
        "tolerance": {"power_plus_w": N("4.99"), "power_minus_w": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(12), "performance_years": N(25), "first_year_loss_pct": N("2.5"), "annual_loss_pct": N("0.6"), "final_output_pct": N("83.1")},
        "packing": {"modules_per_pallet": N(30), "pallets_per_container": N(26), "modules_per_container": N(780)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"VA-120HC {w}", "stc": design.stc(k), "noct": design.cond(k, .8, 45, vd=1)} for k, w in enumerate(design.watts)],
    }


BLUE, PALE = "#0b4f8a", "#e2edf6"


def build(rec, out):
    b = Book("Liberation Sans")
    order = [rec["models"][k] for k in (2, 0, 1)]
    H = dict(fill=BLUE, bold=True, colour="#ffffff")
    C = dict(align="center", line="#b8c8d6")
    Lb = dict(line="#b8c8d6")
    big = dict(bold=True, size=26, colour=BLUE, align="end")
    unit = dict(bold=True, size=12, colour=BLUE)
    small = dict(size=9, colour="#555555")
    hero = art.hero(515, 330, rows=10, cols=6, sky=("#eaf4fb", "#8cc0e6"), cell="#1a2b52")
    graph = art.warranty(25, "2.5", "0.6", "83.1", "97", "0.8", "77.8", w=225, h=125, colour=BLUE, own="VA-120HC", std="Módulo padrão", pct="{} %", comma=True, xlabel="Anos")
    rows = [(44, [("VENTOS DE ALDEIA", dict(bold=True, size=22, colour=BLUE), 4), ("solar", dict(size=20, colour="#5aa02c"), 2)]), (336, [""]),
            (40, [("VA-120HC   355 · 360 · 365 W", dict(bold=True, size=22, colour=BLUE), 6)]), (18, [("Módulo de meia célula monocristalina PERC", dict(size=11), 6)]), (14, [""])]
    for v, u, t in (("5400", "Pa", "de carga de neve na face frontal"), ("2400", "Pa", "de carga de vento na face posterior"), ("12", "anos", "de garantia do produto"), ("25", "anos", "de garantia linear de potência")):
        rows.append((36, [(v, big), (u, unit), (t, small, 2)]))
    rows += [(20, [""]), (13, [("97,5 % no primeiro ano; depois, perda anual de 0,6 % no máximo; 83,1 % ao fim de 25 anos.", dict(size=8), 6)]), (13, [("Certificados: IEC 61215, IEC 61730", dict(size=8, bold=True), 6)]), (40, [""]),
             (12, [("Ventos de Aldeia Solar, Lda. · Largo do Moinho 2, 00417 Aldeia dos Ventos · Tel. +00 210 555 018 · geral@ventosdealdeia.example", dict(size=7, colour="#555555"), 6)])]
    b.sheet("frente", [110, 60, 95, 95, 95, 80], rows, [(0, 46, hero, 515, 330), (285, 470, graph, 225, 125)])

    q = [("Potência máxima", "Pmáx", "W", "pmax_w"), ("Tensão à potência máxima", "Vmp", "V", "vmp_v"), ("Corrente à potência máxima", "Imp", "A", "imp_a"), ("Tensão de circuito aberto", "Voc", "V", "voc_v"), ("Corrente de curto-circuito", "Isc", "A", "isc_a")]
    rows = [(26, [("VA-120HC", dict(bold=True, size=18, colour=BLUE), 3), ("Ficha técnica", dict(size=12, align="end"), 3)]), (6, [""])]

    def head(title):
        rows.append((14, [(title, H, 3)] + [(m["stc"]["pmax_w"], dict(H, align="center")) for m in order]))

    def line(a, s, u, vals):
        rows.append((12.5, [(a, Lb), (s, C), (u, C)] + [(v, C) for v in vals]))

    head("Características elétricas – STC*")
    for a, s, u, k in q:
        line(a, s, u, [comma(m["stc"][k]) for m in order])
    line("Eficiência do módulo", "η", "%", [comma(m["stc"]["efficiency_pct"]) for m in order])
    line("Tolerância de potência", "", "W", ["", "0 ~ +4,99", ""])
    line("Tensão máxima do sistema", "", "V", ["", "1000 / 1500", ""])
    line("Fusível máximo em série", "", "A", ["", "20", ""])
    rows.append((6, [""]))
    head("Características elétricas – NOCT**")
    for a, s, u, k in q:
        line(a, s, u, [comma(m["noct"][k]) for m in order])
    rows += [(10, [("* Irradiância 1000 W/m², temperatura da célula 25 °C, AM 1,5.  ** Irradiância 800 W/m², temperatura ambiente 20 °C, velocidade do vento 1 m/s.", dict(size=6), 6)]), (8, [""])]

    def pair(title, items):
        rows.append((14, [(title, H, 6)]))
        for a, v in items:
            rows.append((12.5, [(a, Lb, 2), (v, dict(line="#b8c8d6"), 4)]))
        rows.append((7, [""]))

    pair("Características mecânicas", [("Células", "Monocristalinas PERC, 2 × 60 meias células (120)"), ("Dimensões", "1755 × 1038 × 35 mm"), ("Peso", "20 kg"), ("Vidro", "3,2 mm temperado com antirreflexo"), ("Moldura", "Alumínio anodizado"), ("Caixa de junção", "IP67, 3 díodos de bypass"), ("Cabos", "4 mm², 1150 mm (+), 1150 mm (−)"), ("Conectores", "Aldeia A4")])
    pair("Características térmicas", [("Temperatura nominal de operação da célula", "45 ± 2 °C (NOCT)"), ("Coeficiente de temperatura de Pmáx", "- 0,32 %/°C"), ("Coeficiente de temperatura de Voc", "- 0,27 %/°C"), ("Coeficiente de temperatura de Isc", "+ 0,05 %/°C"), ("Temperatura de funcionamento", "- 40 °C a + 85 °C")])
    pair("Embalagem (contentor 40' HC)", [("Módulos por palete", "30"), ("Paletes por contentor", "26"), ("Módulos por contentor", "780")])
    top = sum(h for h, _ in rows)
    draw, dw, dh = art.drawing(L, W, D, 20, 6, h=190, holes=(1000, 1300), labels=("Frente", "Lado", "Verso"))
    d = design.diodes[1]
    ivs = art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 225, 150, xlabel="Tensão (V)", ylabel="Corrente (A)", title="VA-120HC 360")
    rows += [(205, [""]), (10, [("A instalação deve ser feita por pessoal habilitado e segundo as normas locais. Dados sujeitos a alteração.", dict(size=6), 4), (rec["revision"], dict(size=6, align="end"), 2)])]
    b.sheet("verso", [140, 60, 40, 98, 98, 98], rows, [(0, top + 6, draw, dw, dh), (300, top + 20, ivs, 225, 150)])
    libreoffice(b.xml("VA-120HC"), ".fods", out)
