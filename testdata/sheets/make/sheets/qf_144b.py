"""qf-144b: Quarry Field Energy; a row a class with its gain rows under it and the gain label merged over them, head words wrapped and hyphenated over several lines,
"wattage" and "rated power" as two power columns, rear gain with power and efficiency only, "push/pull" loads, warranty only in large type on the front with number and unit as
separate runs, dimensions as letters a to g keyed to the drawing; reportlab."""
import art
from design import Design
from record import N, num
from rl import Paper

NAME = "qf-144b"
L, W, D = "2279", "1134", "30"
design = Design(72, 571, 5, 4, (51.30, .17), (14.02, .06), .046, -.25, 2.279 * 1.134)
CLASSES = (570, 575, 580, 585)
GAINS = (10, 15, 20)


def record():
    models = []
    for k, c in enumerate(CLASSES):
        stc = design.stc(k)
        models.append({"name": f"QF-144B-{c}", "stc": stc, "noct": design.cond(k, .8, 44),
                       "rear_gain": [{"gain_pct": N(g), "pmax_w": num(design.watts[k] * (1 + g / 100)), "efficiency_pct": num(design.watts[k] * (1 + g / 100) / design.area / 10, 1)} for g in GAINS]})
    return {
        "maker": "Quarry Field Energy", "series": "QF-144B", "revision": "QFE 144B EN 2023/3", "language": "en",
        "cell": {"technology": "topcon", "count": N(144), "arrangement": "6x24", "cut": "half"},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("32.5"), "front_glass_mm": N("2.0"), "rear_glass_mm": N("2.0"), "cable_mm2": N(4), "cable_length_mm": [N(300), N(300)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "QuarryLock"},
        "bifacial": {"factor_pct": N(80), "factor_tolerance_pct": N(5)},
        "thermal": {"noct_c": N(44), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.046"), "beta_voc_pct_per_k": N("-0.250"), "gamma_pmax_pct_per_k": N("-0.300")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(30), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400)},
        "tolerance": {"measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(15), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.4"), "final_output_pct": N("87.4")},
        "packing": {"modules_per_pallet": N(36), "modules_per_container": N(720)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": models,
    }


STONE, LIME, PALE = "#3d4048", "#7fb53c", "#f1f3ee"


def build(rec, out):
    p = Paper(out, "QF-144B", "roboto", "roboto-b")
    ms = rec["models"]
    p.rect(0, 0, 595.3, 842, STONE)
    p.ops(art.hero(595.3, 380, rows=12, cols=6, sky=("#d9dcd2", "#9aa58a"), cell="#0e151d", frame="#b8bcc0"), 0, 40)
    p.text(36, 30, "QUARRY FIELD", 16, True, "#ffffff")
    p.text(150, 30, "ENERGY", 16, colour=LIME)
    p.text(36, 470, "QF-144B", 38, True, "#ffffff")
    p.text(36, 492, "Bifacial n-type TOPCon, double glass", 12, colour=LIME)
    for k, (n, u, t) in enumerate((("15", "years", "product warranty"), ("30", "years", "linear power warranty"), ("585", "W", "highest class"), ("≤1", "%", "loss in the first year"), ("0.4", "%", "yearly loss, years 2 to 30"), ("87.4", "%", "of power after 30 years"))):
        x, y = 36 + 180 * (k % 3), 560 + 80 * (k // 3)
        p.text(x, y, n, 34, True, LIME)
        p.text(x + p.width(n, 34, True) + 5, y, u, 14, True, "#ffffff")
        p.text(x, y + 15, t, 8.5, colour="#dddddd")
    p.text(36, 745, "IEC 61215 · IEC 61730", 9, colour="#ffffff")
    p.text(36, 812, "Quarry Field Energy · The Old Quarry, Fieldham · +00 115 555 0162 · hello@quarryfield.example", 7, colour="#bbbbbb")
    p.next()
    p.text(36, 36, "QF-144B", 18, True, STONE)
    p.text(559, 36, "QUARRY FIELD ENERGY", 9, True, LIME, "end")

    def bar(x, y, w, s):
        p.rect(x, y, w, 14, STONE)
        p.text(x + 5, y + 10, s, 8, True, "#ffffff")

    bar(36, 48, 523, "ELECTRICAL DATA")
    # transposed: a row a class, its gain rows below
    heads = [["Module", "type"], ["Watt-", "age", "(W)"], ["Condition"], ["Rated", "power", "Pmpp", "(W)"], ["Rated", "volt-", "age", "Vmpp", "(V)"], ["Rated", "cur-", "rent", "Impp", "(A)"], ["Open", "circuit", "volt-", "age", "Voc (V)"], ["Short", "circuit", "cur-", "rent", "Isc (A)"], ["Module", "effi-", "ciency", "(%)"]]
    cw = [76, 40, 82, 50, 55, 50, 58, 58, 54]
    y = 62
    p.rect(36, y, 523, 44, PALE)
    x = 36
    for h, w in zip(heads, cw):
        for n, s in enumerate(h):
            p.text(x + w / 2, y + 8.5 + 8 * n, s, 6.4, True, anchor="middle")
        x += w
    y += 44
    for m, c in zip(ms, CLASSES):
        top = y
        s, no = m["stc"], m["noct"]
        lines = [["STC"] + [s[k] for k in ("pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a", "efficiency_pct")], ["NOCT"] + [no[k] for k in ("pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a")] + [""]]
        for r in lines:
            x = 36 + cw[0] + cw[1]
            for t, w in zip(r, cw[2:]):
                p.text(x + w / 2, y + 8.4, t, 6.6, anchor="middle")
                x += w
            y += 11
            p.line(36 + cw[0] + cw[1], y, 559, y, "#cccccc", .3)
        g0 = y
        for g in m["rear_gain"]:
            p.text(36 + cw[0] + cw[1] + 64, y + 8.4, g["gain_pct"] + "%", 6.6, anchor="middle")
            x = 36 + cw[0] + cw[1] + cw[2]
            p.text(x + cw[3] / 2, y + 8.4, g["pmax_w"], 6.6, anchor="middle")
            p.text(559 - cw[8] / 2, y + 8.4, g["efficiency_pct"], 6.6, anchor="middle")
            y += 11
            p.line(36 + cw[0] + cw[1] + 45, y, 559, y, "#cccccc", .3)
        for n, s_ in enumerate(("Rear side", "power gain")):  # merged over the gain rows
            p.text(36 + cw[0] + cw[1] + 4, (g0 + y) / 2 - 1 + 7.4 * n, s_, 6.2)
        p.text(36 + cw[0] / 2, (top + y) / 2 + 2, m["name"], 7, True, anchor="middle")
        p.text(36 + cw[0] + cw[1] / 2, (top + y) / 2 + 2, str(c), 7, anchor="middle")
        p.line(36, y, 559, y, STONE, .8)
    p.text(36, y + 8, "STC: 1000 W/m^{2}, cell 25 °C, AM 1.5. NOCT: 800 W/m^{2}, ambient 20 °C, wind 1 m/s. Measurement tolerance ±3%. Rated power is the mean of the production in a wattage.", 6, colour="#555555")
    y += 18

    def lst(x, y, w, title, items):
        bar(x, y, w, title)
        y += 14
        for a, b in items:
            p.text(x + 5, y + 8.6, a, 6.8)
            p.text(x + w - 5, y + 8.6, b, 6.8, anchor="end")
            y += 12
            p.line(x, y, x + w, y, "#cccccc")
        return y + 8

    y1 = lst(36, y, 255, "MECHANICAL DATA", [("Cells", "144 (6×24) n-type TOPCon, half cut"), ("Length (a)", "2279 mm"), ("Width (b)", "1134 mm"), ("Depth (c)", "30 mm"), ("Weight", "32.5 kg"), ("Glass, front / rear", "2.0 mm / 2.0 mm"), ("Junction box", "IP68, 3 diodes"), ("Cables", "4 mm^{2}, +300 mm / −300 mm"), ("Connectors", "QuarryLock"), ("Hole distances (d, e)", "1400 mm, 400 mm"), ("Rear hole width (f)", "1096 mm"), ("Frame flange (g)", "33 mm")])
    y2 = lst(304, y, 255, "TEMPERATURE", [("NOCT", "44 °C (±2 °C)"), ("Voltage (Voc)", "-0.250 %/°C"), ("Current (Isc)", "0.046 %/°C"), ("Power (Pmpp)", "-0.300 %/°C")])
    y2 = lst(304, y2, 255, "LIMITS", [("Operating temperature", "-40...+85 °C"), ("Maximum system voltage", "1500 V"), ("Maximum series fuse", "30 A"), ("Maximum test load, push / pull", "5400 / 2400 Pa"), ("Bifaciality factor", "80 % ± 5 %")])
    y2 = lst(304, y2, 255, "PACKAGING", [("Pieces per pallet / per 40' HC", "36 / 720")])
    y = max(y1, y2) + 2
    draw, dw, dh = art.drawing(L, W, D, 24, 6, h=195, holes=(400, 1400), fmt=lambda s: {"2279": "a", "1134": "b", "30": "c", "1400": "d", "400": "e", "1086": "f"}.get(str(s), ""))
    p.ops(draw, 36, y)
    d = design.diodes[2]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 235, 150, title="QF-144B-580", power=True), 324, y + 10)
    p.text(36, 820, "Read the manual. Licensed installation under local code only.", 6, colour="#555555")
    p.text(559, 820, rec["revision"], 6, anchor="end", colour="#555555")
    p.save()
