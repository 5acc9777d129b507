"""op-p60: Officine Solari Ponterosso, Italian; two power columns (class and mean power), efficiency as a lower bound, coefficients in V/K and A/K only,
NOCT, symbols in a column, fractions of load by test and design absent, warranty in steps on the front; Cairo."""
import art
from cairo_paper import Paper
from design import Design
from loc import comma
from record import N, num

NAME = "op-p60"
L, W, D = "1650", "992", "40"
design = Design(60, 252.5, 5, 3, (37.40, .2), (8.90, .05), .055, -.32, 1.650 * .992)
classes = (250, 255, 260)


def record():
    models = []
    for k, c in enumerate(classes):
        stc = design.stc(k, pd=1)
        stc["efficiency_pct"] = num(int(c / design.area) / 10, 1)
        models.append({"name": f"OP-P60 {c}", "stc": stc, "noct": design.cond(k, .8, 47, pd=1)})
    return {
        "maker": "Officine Solari Ponterosso", "series": "OP-P60", "revision": "OSP-P60-IT_2014-10", "issued": "2014-10", "language": "it",
        "cell": {"technology": "multi", "count": N(60), "arrangement": "6x10", "width_mm": N(156), "height_mm": N(156)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("18.5"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1000), N(1000)], "bypass_diodes": N(3), "junction_box_ip": "IP65", "connector": "PonteConnect 4", "frame": "Alluminio anodizzato"},
        "thermal": {"noct_c": N(47), "noct_tolerance_c": N(2), "alpha_isc_a_per_k": N("0.0049"), "beta_voc_v_per_k": N("-0.120"), "gamma_pmax_pct_per_k": N("-0.39")},
        "limits": {"system_voltage_v": [N(1000)], "series_fuse_a": N(15), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(10), "performance_years": N(25), "final_output_pct": N(80)},
        "certificates": ["IEC 61215", "IEC 61730", "ISO 9001"],
        "models": models,
    }


RED = "#a3161e"


def build(rec, out):
    p = Paper(out, "OP-P60", "Liberation Sans Narrow")
    ms = rec["models"]
    p.rect(0, 0, 595.3, 842, "#f4f0ea")
    p.ops(art.hero(595.3, 400, rows=10, cols=6, sky=("#e9eff5", "#8fb3d6"), cell="#1c3f92", frame="#cfd3d8"), 0, 90)
    p.text(40, 50, "OFFICINE SOLARI", 15, True, "#333333")
    p.text(40, 74, "PONTEROSSO", 24, True, RED)
    p.rect(300, 120, 296, 92, RED)
    p.text(318, 158, "OP-P60", 32, True, "#ffffff")
    p.text(318, 180, "Classi 250 · 255 · 260", 14, colour="#ffffff")
    p.text(318, 200, "Modulo policristallino a 60 celle", 11, colour="#f4f0ea")
    y = 520
    for a, b in (("Tolleranza solo positiva", "Da 0 a +5 W su ogni modulo."), ("Costruito per la neve", "Carico massimo verificato fino a 5400 Pa."), ("Alta resa con poca luce", "Misurato in laboratorio a 200 W/m²."), ("Garanzia", "10 anni sul prodotto; 90 % della potenza per 10 anni, 80 % per 25 anni.")):
        p.text(40, y, a, 12, True, RED)
        p.text(40, y + 14, b, 9.5)
        y += 36
    # step warranty, drawn by hand
    ops = [art.rect(330, 530, 210, 100, "#333333", .6, "#ffffff"), art.poly([(330, 552), (414, 552), (414, 574), (540, 574), (540, 630), (330, 630)], None, 0, RED, True), art.text(336, 548, "100 %", 6), art.text(370, 562, "90 %", 8, "#ffffff", bold=True), art.text(480, 585, "80 %", 8, "#ffffff", bold=True)]
    ops += [art.text(330 + 8.4 * k, 639, str(k), 6, anchor="middle") for k in (0, 10, 25)] + [art.text(435, 648, "Anni", 6.5, anchor="middle")]
    p.ops(ops)
    p.text(40, 730, "Certificazioni: IEC 61215, IEC 61730, ISO 9001", 9, True)
    p.text(40, 800, "Officine Solari Ponterosso S.p.A. · Via del Ponte Rosso 8, 00417 Ponterosso · Tel. +00 0432 555 019 · info@ponterosso.example", 8, colour="#555555")
    p.next()
    p.rect(0, 0, 595.3, 44, RED)
    p.text(40, 29, "OP-P60", 20, True, "#ffffff")
    p.text(555, 29, "Scheda tecnica", 11, colour="#ffffff", anchor="end")

    def block(y, title, rows):
        p.rect(40, y, 515, 14, "#d9d2c6")
        p.text(45, y + 10, title, 8.5, True)
        y += 14
        for label, sy, u, vals, *gap in rows:
            p.text(45, y + 10, label, 8)
            p.text(240, y + 10, sy, 8)
            p.text(285, y + 10, u, 8)
            for k, v in enumerate(vals):
                p.text(375 + 70 * k, y + 10, v, 8, anchor="middle")
            y += 13.5
            p.line(40, y, 555, y, "#b9b1a4")
        return y + 10

    q = [("Potenza media", "P_{MPP}", "[W]", "pmax_w"), ("Corrente di corto circuito", "I_{SC}", "[A]", "isc_a"), ("Tensione a vuoto", "V_{OC}", "[V]", "voc_v"), ("Corrente alla massima potenza", "I_{MPP}", "[A]", "imp_a"), ("Tensione alla massima potenza", "V_{MPP}", "[V]", "vmp_v")]
    rows = lambda c: [(a, s, u, [comma(m[c][k]) for m in ms]) for a, s, u, k in q]
    cls = ("CLASSE DI POTENZA (+5 W / −0 W)", "", "[W]", [str(c) for c in classes])
    y = block(62, "DATI ELETTRICI – STC (1000 W/m², 25 °C, AM 1,5)", [cls] + rows("stc") + [("Efficienza", "η", "[%]", ["≥ " + comma(m["stc"]["efficiency_pct"]) for m in ms])])
    y = block(y, "DATI ELETTRICI – NOCT (800 W/m², 20 °C, vento 1 m/s)", [("CLASSE DI POTENZA (+5 W / −0 W)", "", "[W]", [str(c) for c in classes])] + rows("noct"))
    p.text(40, y - 2, "Tolleranza di misura della potenza ±3 %. La potenza media è quella della produzione di ogni classe.", 6.5, colour="#555555")
    y += 10

    def lst(x, y, w, title, items):
        p.rect(x, y, w, 14, "#d9d2c6")
        p.text(x + 5, y + 10, title, 8.5, True)
        y += 14
        for a, b in items:
            p.text(x + 5, y + 10, a, 8)
            p.text(x + w - 5, y + 10, b, 8, anchor="end")
            y += 13
            p.line(x, y, x + w, y, "#b9b1a4")
        return y + 10

    y1 = lst(40, y, 255, "DATI MECCANICI", [("Dimensioni", "1650 × 992 × 40 mm"), ("Peso", "18,5 kg"), ("Celle", "60 (6 × 10) policristalline 156 × 156 mm"), ("Vetro frontale", "3,2 mm temprato"), ("Cornice", "Alluminio anodizzato"), ("Scatola di giunzione", "IP65, 3 diodi di bypass"), ("Cavi", "4 mm², 2 × 1000 mm"), ("Connettori", "PonteConnect 4")])
    y2 = lst(310, y, 245, "COEFFICIENTI DI TEMPERATURA", [("NOCT", "47 ± 2 °C"), ("Coefficiente di temperatura I_{SC}", "0,0049 A/K"), ("Coefficiente di temperatura V_{OC}", "−0,120 V/K"), ("Coefficiente di temperatura P_{MPP}", "−0,39 %/K")])
    lst(310, y2 - 4, 245, "VALORI LIMITE", [("Tensione massima di sistema", "1000 V"), ("Fusibile massimo in serie", "15 A"), ("Temperatura di esercizio", "da −40 °C a +85 °C"), ("Carico massimo neve / vento", "5400 Pa / 2400 Pa"), ("Classe di protezione", "II")])
    draw, dw, dh = art.drawing(L, W, D, 10, 6, h=205, half=False, holes=(860, 1250), labels=("Fronte", "Lato", "Retro"))
    p.ops(draw, 34, y1 + 14)
    d = design.diodes[1]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 235, 150, xlabel="Tensione (V)", ylabel="Corrente (A)", title="OP-P60 classe 255"), 318, y1 + 34)
    p.text(40, 815, "L'installazione è riservata a personale abilitato secondo le norme locali. Dati soggetti a modifiche. Ottobre 2014", 6.5, colour="#555555")
    p.text(555, 815, rec["revision"], 6.5, colour="#555555", anchor="end")
    p.save()
