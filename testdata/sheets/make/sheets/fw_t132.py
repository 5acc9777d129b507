"""fw-t132: Fennmoor Solar Works, bifacial TOPCon, five classes, STC | NMOT alternating under each model, efficiency merged over the pair,
subscripts as runs of their own, a rear gain table whose class only a footnote names, test and design loads; reportlab."""
import art
from design import Design
from record import N
from rl import Paper

NAME = "fw-t132"
L, W, D = "2382", "1134", "30"
design = Design(66, 590, 5, 5, (47.40, .20), (15.62, .06), .046, -.250, 2.382 * 1.134)


def record():
    models = []
    for k, w in enumerate(design.watts):
        stc = design.stc(k)
        m = {"name": f"FW-T132-{w}B", "stc": stc, "nmot": design.cond(k, .8, 44)}
        if w == 600:
            m["rear_gain"] = [design.gain(k, g, stc) for g in (5, 10, 15, 20, 25)]
        models.append(m)
    return {
        "maker": "Fennmoor Solar Works", "series": "FW-T132-B", "revision": "FSW-T132B-2024.2-EN", "language": "en",
        "cell": {"technology": "topcon", "count": N(132), "arrangement": "6x22", "cut": "half", "width_mm": N("182.2"), "height_mm": N(105)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("32.6"), "front_glass_mm": N("2.0"), "rear_glass_mm": N("2.0"), "cable_mm2": N(4), "cable_length_mm": [N(350), N(250), N(1300)], "bypass_diodes": N(3), "junction_box_ip": "IP68",
                 "connector": "Reedmace C4", "frame": "Anodized aluminium alloy"},
        "bifacial": {"factor_pct": N(80), "factor_tolerance_pct": N(5)},
        "thermal": {"nmot_c": N(44), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.046"), "beta_voc_pct_per_k": N("-0.250"), "gamma_pmax_pct_per_k": N("-0.290")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(30), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "front_design_load_pa": N(3600), "rear_design_load_pa": N(1600), "safety_class": "II", "fire_class": "C"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1), "air_mass": N("1.5")}},
        "warranty": {"product_years": N(15), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.40"), "final_output_pct": N("87.4")},
        "packing": {"modules_per_pallet": N(36), "pallets_per_container": N(20), "modules_per_container": N(720)},
        "certificates": ["IEC 61215", "IEC 61730", "ISO 9001", "ISO 14001", "ISO 45001"],
        "models": models,
    }


INK, SUN, PALE = "#3b2352", "#e2725b", "#f3edf6"


def build(rec, out):
    p = Paper(out, "FW-T132-B")
    ms = rec["models"]
    # front
    p.rect(0, 0, 595.3, 842, "#ffffff")
    p.ops(art.hero(595.3, 470, rows=11, cols=6, sky=("#f7ece6", "#e9c3a8"), cell="#0e1320", frame="#2a2a2e", tilt=.34))
    p.rect(0, 0, 210, 842, INK)
    p.text(28, 60, "FENNMOOR", 22, True, "#ffffff")
    p.text(28, 76, "SOLAR WORKS", 9, colour=SUN, space=3.2)
    p.text(28, 200, "FW-T132-B", 30, True, "#ffffff")
    p.text(28, 228, "590~610W", 22, colour=SUN)
    p.text(28, 246, "N-type TOPCon bifacial module", 10, colour="#ffffff")
    y = 330
    for big, small in (("22.6%", "max. module efficiency"), ("-0.290%/°C", "temperature coefficient of power"), ("80±5%", "bifaciality"), ("15 / 30", "years product / linear power warranty")):
        p.text(28, y, big, 22, True, SUN)
        p.text(28, y + 13, small, 8.5, colour="#ffffff")
        y += 56
    p.text(28, 640, "Certificates", 10, True, "#ffffff")
    for k, s in enumerate(("IEC 61215 / IEC 61730", "ISO 9001 / ISO 14001 / ISO 45001", "Class C fire rating")):
        p.text(28, 656 + 12 * k, s, 8, colour="#ffffff")
    for k, s in enumerate(("Fennmoor Solar Works plc", "Dyke Road 7, Fennmoor FM4 2QX", "+00 1632 555 017", "post@fennmoor.example")):
        p.text(28, 765 + 11 * k, s, 7.5, colour="#cbbfd6")
    p.text(240, 505, "The moor is flat. The yield is not.", 17, True, INK)
    y = p.lines(240, 524, 320, "The T132-B gathers light on both faces. Rectangular cells fill a frame of the common height, so that the rows stay as they are while every row gives more. Passivated contacts keep the loss low: 1% in the first year, 0.40% a year after that.", 9)
    for a, b in (("High power, common size", "Up to 610 W at 2382 mm × 1134 mm."), ("Both faces earn", "Up to 25% more from the rear side, according to ground and height."), ("Calm in the heat", "A low coefficient and NMOT of 44 °C keep the summer's yield."), ("Load", "5400 Pa snow and 2400 Pa wind (test loads).")):
        y += 6
        p.text(240, y, a, 9.5, True, SUN)
        y = p.lines(240, y + 12, 150, b, 8)
    p.text(405, 600, "30-year linear warranty", 8.5, True, INK)
    p.ops(art.warranty(30, "1", "0.40", "87.4", "98", "0.55", "84.8", w=170, h=125, colour=SUN, own="FW-T132-B", std="Conventional PERC module", ticks=10), 400, 604)
    p.text(240, 815, "Specifications may change without notice.", 6.5, colour="#777777")
    p.next()
    # back
    p.rect(0, 0, 595.3, 46, INK)
    p.text(36, 29, "FW-T132-B 590~610W", 17, True, "#ffffff")
    p.text(560, 29, "FENNMOOR SOLAR WORKS", 9, True, SUN, "end")
    head = lambda x, y, w, s: (p.rect(x, y, w, 14, SUN), p.text(x + 5, y + 10, s, 8.5, True, "#ffffff"))
    y0 = 58
    head(36, y0, 523, "Electrical Characteristics")
    cw = [133] + [39] * 10
    names = [("Module Type", 1)] + [(m["name"], 2) for m in ms]
    rows = [names, ["Testing Condition"] + ["STC", "NMOT"] * 5]
    for label, key in (("Maximum Power (P_{max}/W)", "pmax_w"), ("Open Circuit Voltage (V_{oc}/V)", "voc_v"), ("Short Circuit Current (I_{sc}/A)", "isc_a"), ("Voltage at Maximum Power (V_{mp}/V)", "vmp_v"), ("Current at Maximum Power (I_{mp}/A)", "imp_a")):
        rows.append([label] + [m[c][key] for m in ms for c in ("stc", "nmot")])
    rows.append([("Module Efficiency (%)", 1)] + [(m["stc"]["efficiency_pct"], 2) for m in ms])
    y = p.table(36, y0 + 14, cw, rows, 12.5, 6.8, fills=lambda r: PALE if r % 2 else None, bold=lambda r, c: r == 0)
    p.text(36, y + 8, "STC: AM1.5, 1000 W/m^{2}, 25 °C.   NMOT: AM1.5, 800 W/m^{2}, 20 °C, 1 m/s.   Test uncertainty for P_{max}: ±3%.", 6, colour="#555555")
    y += 18
    head(36, y, 255, "Electrical characteristics with rear side power gain^{1}")
    gains = next(m for m in ms if "rear_gain" in m)["rear_gain"]
    grow = [["Gain", "P_{max}/W", "V_{oc}/V", "I_{sc}/A", "V_{mp}/V", "I_{mp}/A"]] + [[g["gain_pct"] + "%", g["pmax_w"], g["voc_v"], g["isc_a"], g["vmp_v"], g["imp_a"]] for g in gains]
    ye = p.table(36, y + 14, [40, 43, 43, 43, 43, 43], grow, 12, 6.8, fills=lambda r: PALE if r % 2 else None)
    p.text(36, ye + 8, "^{1} For FW-T132-600B. The gain depends on ground, height and tilt.", 6, colour="#555555")
    head(304, y, 255, "Operating Parameters")
    op = [["Operational Temperature", "-40 °C ~ +85 °C"], ["Power Output Tolerance", "0 ~ +5 W"], ["Maximum System Voltage", "DC1500V (IEC)"], ["Maximum Series Fuse Rating", "30A"], ["Nominal Module Operating Temperature", "44±2 °C"], ["Protection Class", "Class II"], ["Fire Rating", "Class C"], ["Bifaciality", "80±5%"]]
    yr = p.table(304, y + 14, [145, 110], op, 11.5, 6.8, bold=lambda r, c: False)
    y = max(ye + 16, yr + 8)
    head(36, y, 255, "Mechanical Parameters")
    me = [["Cell", "N-type TOPCon, 182.2 × 105 mm"], ["Cell Orientation", "132 (6×22), half cells"], ["Junction Box", "IP68, three diodes"], ["Output Cable", "4 mm^{2}, +350, -250 mm / ±1300 mm"], ["Connector", "Reedmace C4"], ["Glass", "Dual glass, 2.0+2.0 mm heat strengthened"], ["Frame", "Anodized aluminium alloy"], ["Weight", "32.6 kg"], ["Dimension", "2382×1134×30 mm"], ["Packaging", "36 pcs per pallet / 144 pcs per 20'GP / 720 pcs per 40'HC"]]
    me[-1][1] = "36 pcs/pallet; 20 pallets, 720 pcs/40'HC"
    ym = p.table(36, y + 14, [75, 180], me, 11.5, 6.8, bold=lambda r, c: False)
    head(304, y, 255, "Temperature Ratings (STC)")
    yt = p.table(304, y + 14, [165, 90], [["Temperature Coefficient of I_{sc}", "+0.046%/°C"], ["Temperature Coefficient of V_{oc}", "-0.250%/°C"], ["Temperature Coefficient of P_{max}", "-0.290%/°C"]], 11.5, 6.8, bold=lambda r, c: False)
    head(304, yt + 8, 255, "Mechanical Loading")
    p.table(304, yt + 22, [165, 90], [["Front Side Test Load / Design Load", "5400 Pa / 3600 Pa"], ["Rear Side Test Load / Design Load", "2400 Pa / 1600 Pa"], ["Hailstone Test", "25 mm at 23 m/s"]], 11.5, 6.8, bold=lambda r, c: False)
    draw, dw, dh = art.drawing(L, W, D, 22, 6, h=225, holes=(790, 1400), unit="")
    p.ops(draw, 36, ym + 6)
    p.text(36 + dw - 20, ym + 12, "Unit: mm", 6, anchor="end")
    m = design.diodes[2]
    p.ops(art.iv([m.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 235, 130, title="I-V and P-V, FW-T132-600B", power=True), 330, ym + 6)
    p.ops(art.temperature(.046, -.25, -.29, 235, 110), 330, ym + 140)
    p.rect(0, 812, 595.3, 30, INK)
    p.text(36, 830, "Please read the installation instructions before use. Local electrical codes apply.", 6.5, colour="#ffffff")
    p.text(559, 830, rec["revision"], 6.5, colour="#ffffff", anchor="end")
    p.save()
