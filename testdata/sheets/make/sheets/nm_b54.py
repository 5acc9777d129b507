"""nm-b54: Northmere Solar; ten classes, model names split between the row head and the columns, the series named only on the front, label-value pairs where the first value touches the
second label, a neighbour table at another row pitch, sizes with their own tolerances, inch and metre beside each other, "109 ± 5.4 °F (43 ± 3 °C)", "within +3-0% tolerance", a dash that
is no minus, "< 1 %", "wind / snow" in that order, decoys (class 2 frame, appearance class B, ±3 % on weight, connector IP67, storage mass); technology in other words on the two pages;
standard fonts, not embedded; reportlab."""
import art
from design import Design
from record import N
from rl import Paper, front

NAME = "nm-b54"
L, W, D = "1762", "1134", "30"
design = Design(54, 405, 5, 10, (37.60, .16), (13.62, .055), .045, -.25, 1.762 * 1.134)


def record():
    return {
        "maker": "Northmere Solar", "series": "Mere B54", "revision": "NMS-B54-0725-E", "issued": "2025-07", "language": "en",
        "cell": {"technology": "topcon", "count": N(108), "arrangement": "6x18", "cut": "half"},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("21.8"), "front_glass_mm": N("3.2"), "cable_length_mm": [N(900), N(1200)], "cable_mm2": N(4), "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "MereLink"},
        "thermal": {"noct_c": N(43), "noct_tolerance_c": N(3), "alpha_isc_pct_per_k": N("0.045"), "beta_voc_pct_per_k": N("-0.25"), "gamma_pmax_pct_per_k": N("-0.29")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(25), "reverse_current_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400)},
        "tolerance": {"power_plus_pct": N(3), "power_minus_pct": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(15), "performance_years": N(25), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.4"), "final_output_pct": N("89.4")},
        "packing": {"modules_per_pallet": N(36), "pallets_per_container": N(26), "modules_per_container": N(936)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"NM-B54-{w}", "stc": design.stc(k, vd=1), "noct": design.cond(k, .8, 43, pd=1, vd=1)} for k, w in enumerate(design.watts)],
    }


INK, ACC, PALE = "#1d3557", "#e63946", "#f1f5f9"


def build(rec, out):
    p = Paper(out, "Mere B54", "Helvetica", "Helvetica-Bold")
    ms = rec["models"]
    front(p, "NORTHMERE", "SOLAR", "Mere B54", "Ten classes, 405 W to 450 W, n-type TOPCon half cells", "Ten power classes from one line, each sorted within three per cent and never below its label. Choose the one the roof asks for.",
          [("15 years", "product warranty"), ("25 years", "linear power warranty"), ("< 1 %", "loss in the first year"), ("- 0.4 %", "a year, annual degradation - 0.4 % at most, 89.4 % after 25 years")],
          art.warranty(25, "1", "0.4", "89.4", "97.5", "0.7", "80.7", w=245, h=140, colour=ACC, own="Mere B54", std="Standard module"), "IEC 61215, IEC 61730", "Northmere Solar · Mere Bank 5, Northmere · +00 161 555 0147 · desk@northmere.example", (INK, ACC),
          art.hero(595.3, 430, rows=9, cols=6, sky=("#e8f1f8", "#8fb8d8"), cell="#0d1420", frame="#1c1f24"))
    p.rect(0, 0, 595.3, 36, INK)
    p.text(36, 24, "Technical data", 15, True, "#ffffff")

    def bar(x, y, w, s):
        p.rect(x, y, w, 13, INK)
        p.text(x + 5, y + 9.4, s, 8, True, "#ffffff")
        return y + 13

    q = [("Rated power (Pmpp) [W]", "pmax_w"), ("Optimum operating voltage (Vmpp) [V]", "vmp_v"), ("Optimum operating current (Impp) [A]", "imp_a"), ("Open circuit voltage (Voc) [V]", "voc_v"), ("Short circuit current (Isc) [A]", "isc_a")]
    cw = [143] + [38] * 10
    y = bar(36, 46, 523, "Electrical data at STC")
    rows = [["Module type NM-B54-"] + [m["name"].split("-")[-1] for m in ms]] + [[a] + [m["stc"][k] for m in ms] for a, k in q] + [["Module efficiency [%]"] + [m["stc"]["efficiency_pct"] for m in ms]]
    y = p.table(36, y, cw, rows, 11.5, 6.6, fills=lambda r: PALE if r % 2 else None)
    p.text(36, y + 8, "STC: irradiance 1000 W/m², cell temperature 25 °C, AM 1.5. Power within +3-0% tolerance.", 6, colour="#555555")
    y = bar(36, y + 14, 523, "Electrical data at NOCT")
    rows = [["Module type NM-B54-"] + [m["name"].split("-")[-1] for m in ms]] + [[a] + [m["noct"][k] for m in ms] for a, k in q]
    y = p.table(36, y, cw, rows, 11.5, 6.6, fills=lambda r: PALE if r % 2 else None)
    p.text(36, y + 8, "NOCT: irradiance 800 W/m², ambient temperature 20 °C, wind speed 1 m/s.", 6, colour="#555555")
    y += 16
    top = bar(36, y, 330, "General data")
    bar(376, y, 183, "Packing (40' HC)")
    # pairs, two to a line; the first value ends where the second label begins
    y = top
    for a, b, c, d_ in (("Cells", "108 mono half cells (6 × 18)", "Weight (±3 %)", "21.8 kg"), ("Dimensions", "1762±2mm×1134±2mm×30±1mm", "Front glass", "3.2 mm"), ("Junction box", "IP68, three bypass diodes", "Connector", "MereLink, IP67"), ("Cables 4 mm²", '35.4" + 47.2" (0.9 + 1.2 m)', "Frame", "class 2, black"), ("Cell look", "Appearance class B", "Hail", "25 mm, 23 m/s")):
        p.text(41, y + 8.6, a, 6.8, True)
        p.text(218, y + 8.6, b, 6.8, anchor="end")
        p.text(219.4, y + 8.6, c, 6.8, True)
        p.text(361, y + 8.6, d_, 6.8, anchor="end")
        y += 12
        p.line(36, y, 366, y)
    y2 = top
    for a, b in (("Modules per pallet", "36"), ("Pallets per container", "26"), ("Modules per container", "936"), ("Pallet mass", "825 kg")):
        p.text(381, y2 + 11, a, 6.8)
        p.text(554, y2 + 11, b, 6.8, anchor="end")
        y2 += 16.5  # another pitch than the neighbour's
        p.line(376, y2, 559, y2)
    y = max(y, y2) + 8
    t1 = bar(36, y, 255, "Temperature")
    t2 = bar(304, y, 255, "Limits")
    for a, b in (("NOCT", "109 ± 5.4 °F (43 ± 3 °C)"), ("Temperature coefficient Pmpp (γ)", "(-0.29±0.03)%/°C"), ("Temperature coefficient Voc (β)", "(-0.25±0.02)%/°C"), ("Temperature coefficient Isc (α)", "(0.045±0.015)%/°C"), ("Operating temperature", "-40 °F to +185 °F (-40 °C to +85 °C)")):
        p.text(41, t1 + 8.6, a, 6.8)
        p.text(286, t1 + 8.6, b, 6.8, anchor="end")
        t1 += 12
        p.line(36, t1, 291, t1)
    for a, b in (("Maximum system voltage", "DC 1500 V"), ("Max. over-current protection rating", "25 A"), ("Max. reverse current", "25 A"), ("Max. load, wind / snow", "2400 / 5400 Pa"), ("Storage", "max. 2 pallets high, 1650 kg")):
        p.text(309, t2 + 8.6, a, 6.8)
        p.text(554, t2 + 8.6, b, 6.8, anchor="end")
        t2 += 12
        p.line(304, t2, 559, t2)
    y = t1 + 12
    draw, dw, dh = art.drawing(L, W, D, 18, 6, h=200, holes=(990, 1400), inch=True)
    p.ops(draw, 32, y)
    d = design.diodes[5]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 225, 150, title="NM-B54-430", power=True), 338, y)
    p.ops(art.iv([d.at(1, c) for c in (10, 25, 50, 75)], [f"{c} °C" for c in (10, 25, 50, 75)], 225, 110, foot=True), 338, y + 150)
    p.text(36, 818, "For licensed installers; local code decides on conductors, fuses and structure. Issue of July 2025; subject to change.", 6, colour="#555555")
    p.text(559, 818, rec["revision"], 6, anchor="end", colour="#555555")
    p.save()
