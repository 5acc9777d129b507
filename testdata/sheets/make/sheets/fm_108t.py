"""fm-108t: Fourmile Modules; the text of an older sheet stands under the visible one, hidden in five ways: cut away by a clip path no bigger than a drawing,
in the paper's colour, covered by a later fill, in text render mode 3, and outside the page. A nameplate template in the drawing has its own 1000 V; reportlab."""
import art
from design import Design
from record import N
from rl import Paper, front

NAME = "fm-108t"
L, W, D = "1722", "1134", "30"
design = Design(54, 425, 5, 4, (38.50, .16), (13.86, .06), .045, -.25, 1.722 * 1.134, effd=2)
old = Design(54, 395, 5, 4, (36.80, .17), (13.60, .06), .048, -.275, 1.722 * 1.134, effd=2)


def record():
    return {
        "maker": "Fourmile Modules", "series": "FM-108T", "revision": "FM-108T-EN-F4", "issued": "2024-02", "language": "en",
        "cell": {"technology": "topcon", "count": N(108), "arrangement": "6x18", "cut": "half"},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("22.0"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1200)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "frame": "Anodized aluminium alloy"},
        "thermal": {"noct_c": N(45), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.045"), "beta_voc_pct_per_k": N("-0.25"), "gamma_pmax_pct_per_k": N("-0.29")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400)},
        "tolerance": {"power_plus_pct": N(3), "power_minus_pct": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1), "air_mass": N("1.5")}},
        "warranty": {"product_years": N(15), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.4"), "final_output_pct": N("87.4")},
        "packing": {"modules_per_pallet": N(37), "pallets_per_container": N(26), "modules_per_container": N(962)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"FM-108T-{w}", "stc": design.stc(k), "noct": design.cond(k, .8, 45)} for k, w in enumerate(design.watts)],
    }


INK, ACC, PALE = "#24413a", "#d9a441", "#eef3f0"


def build(rec, out):
    p = Paper(out, "FM-108T")
    ms = rec["models"]
    front(p, "FOURMILE", "MODULES", "FM-108T", "425–440 W · N-type TOPCon · half cells", "Four miles of fence, four rows of modules, one family. The 108T is the sixth generation of the same quiet idea: nothing that can come loose.",
          [("22.5 %", "maximum efficiency"), ("15 + 30", "15-year product and 30-year linear power warranty"), ("0 ~ +3 %", "power tolerance; at most 1 % loss in the first year, then 0.4 % a year"), ("5400 / 2400 Pa", "snow and wind, tested")],
          art.warranty(30, "1", "0.4", "87.4", "97", "0.7", "80.2", w=245, h=140, colour=ACC, own="FM-108T", std="Standard module"), "IEC 61215, IEC 61730", "Fourmile Modules Co. · 4 Mile Road, Fourmile · +00 406 555 0133 · office@fourmile.example", (INK, ACC),
          art.hero(595.3, 430, rows=9, cols=6, sky=("#f3f1e6", "#c9d2b0"), cell="#111a22", frame="#22262a"))

    rows = [("Maximum Power (Pmax)", "pmax_w", "W"), ("Maximum Power Voltage (Vmp)", "vmp_v", "V"), ("Maximum Power Current (Imp)", "imp_a", "A"), ("Open-circuit Voltage (Voc)", "voc_v", "V"), ("Short-circuit Current (Isc)", "isc_a", "A")]

    def electrical(y, names, blocks, eff, style):
        cw = [155] + [46] * 8
        t = [[("Module Type", 1)] + [(n, 2) for n in names], ["", *["STC", "NOCT"] * 4]]
        t += [[a] + [f"{b[k]}{u}" for pair in blocks for b in pair] for a, k, u in rows]
        t += [[("Module Efficiency STC", 1)] + [(e + "%", 2) for e in eff]]
        return p.table(36, y, cw, t, 12.5, 6.8, **style)

    # 1. the older sheet's electrical table in ordinary grey, cut away by a clip path
    p.c.saveState()
    path = p.c.beginPath()
    path.rect(300, p.h - 520, 14, 9)
    p.c.clipPath(path, stroke=0, fill=0)
    ob = [(old.stc(k), old.cond(k, .8, 45)) for k in range(4)]
    electrical(64, [f"FM-108P-{w}" for w in old.watts], ob, [a["efficiency_pct"] for a, _ in ob], dict(rule=None))
    for k, (a, b) in enumerate((("Weight", "21.3 kg"), ("Dimensions", "1708×1134×35 mm"), ("Packing", "31 pcs/pallet, 806 pcs/40'HQ"), ("Maximum Series Fuse Rating", "20A"))):
        p.text(40, 250 + 12 * k, a, 6.8)
        p.text(160, 250 + 12 * k, b, 6.8)
    p.c.restoreState()
    # 2. the paper's colour
    p.text(40, 398, "Weight 21.3 kg (47.0 lb)   Front Glass 2.8 mm   FM-108P-395~410", 6.8, colour="#ffffff")
    # 3. to be covered by the band of a later fill
    for k, s in enumerate(("Temperature Coefficients of Pmax  -0.35%/°C", "Temperature Coefficients of Voc  -0.275%/°C", "Temperature Coefficients of Isc  0.048%/°C")):
        p.text(310, 217 + 12.5 * k, s, 6.8)
    # 4. render mode 3, the superseded revision
    p.text(559, 806, "FM-108P-EN-F1", 6.5, anchor="end", mode=3)
    # 5. outside the page
    p.text(36, -40, "FM-108P-395 395 W Vmp 30.80 V Voc 36.80 V", 7)

    p.rect(0, 0, 595.3, 44, INK)
    p.text(36, 28, "FM-108T 425–440 W", 16, True, "#ffffff")
    y = electrical(62, [m["name"] for m in ms], [(m["stc"], m["noct"]) for m in ms], [m["stc"]["efficiency_pct"] for m in ms], dict(fills=lambda r: PALE if r % 2 else "#ffffff"))
    p.text(36, y + 8, "STC: irradiance 1000 W/m^{2}, cell temperature 25 °C, AM=1.5.   NOCT: irradiance 800 W/m^{2}, ambient temperature 20 °C, AM=1.5, wind speed 1 m/s.", 6, colour="#555555")
    y += 20

    def lst(x, y, w, title, items):
        p.rect(x, y, w, 14, INK)
        p.text(x + 5, y + 10, title, 8, True, "#ffffff")
        y += 14
        for k, (a, b) in enumerate(items):
            p.rect(x, y, w, 12.5, PALE if k % 2 else "#ffffff")
            p.text(x + 5, y + 9, a, 6.8)
            p.text(x + w * .52, y + 9, b, 6.8)
            y += 12.5
        return y + 8

    y1 = lst(36, y, 255, "Mechanical Characteristics", [("Cell Type", "N-type TOPCon, half cut"), ("No. of cells", "108 (6×18)"), ("Dimensions", "1722×1134×30 mm"), ("Weight", "22.0 kg (48.5 lb)"), ("Front Glass", "3.2 mm, anti-reflection coating"), ("Frame", "Anodized aluminium alloy"), ("Junction Box", "IP68 rated, 3 diodes"), ("Output Cables", "4 mm^{2}, 1200 mm")])
    y2 = lst(304, y, 255, "Temperature Characteristics", [("Temperature Coefficient of Pmax", "-0.29%/°C"), ("Temperature Coefficient of Voc", "-0.25%/°C"), ("Temperature Coefficient of Isc", "0.045%/°C"), ("Nominal Operating Cell Temperature", "45±2°C (NOCT)")])
    y2 = lst(304, y2, 255, "Maximum Ratings", [("Operating Temperature", "-40°C~+85°C"), ("Maximum System Voltage", "1500VDC (IEC)"), ("Maximum Series Fuse Rating", "25A"), ("Power Tolerance", "0~+3%"), ("Snow load front / wind load rear", "5400 Pa / 2400 Pa")])
    lst(36, y1, 255, "Packing", [("Pieces per pallet", "37"), ("Pallets per 40'HQ container", "26"), ("Pieces per 40'HQ container", "962")])
    draw, dw, dh = art.drawing(L, W, D, 18, 6, h=195, holes=(990, 1400), nameplate=["FM-___", "Pmax ___ W", "System 1000V", "Fuse 20A"])
    p.ops(draw, 36, 505)
    d = design.diodes[2]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 225, 150, title="FM-108T-435", power=True), 340, 510)
    p.ops(art.temperature(.045, -.25, -.29, 225, 110), 340, 665)
    p.text(36, 806, "Only for qualified installers; local codes apply. Specifications subject to change. © 2024-02", 6, colour="#555555")
    p.text(559, 806, rec["revision"], 6.5, anchor="end", colour="#555555")
    p.save()
