"""sm-72: Saltmarsh Modules; a broken text layer: words cut into glyphs or pairs, letter-spaced headings, a row that is one run with spaces for columns, numbers glued to units, the sign ℃ lost, the degree as
a superscript "o" on another baseline, "x" and "X" for ×, a space inside a number, digits half a row off their labels, two rows squeezed into one band, text repeated three times in the
drawing, all kinds of dash, a ligature lost ("e ciency") beside ligature characters; reportlab, Helvetica not embedded beside an embedded face."""
import art
from design import Design
from record import N
from rl import Paper, front

NAME = "sm-72"
L, W, D = "1956", "992", "40"
design = Design(72, 365, 5, 4, (47.60, .2), (9.86, .05), .055, -.29, 1.956 * .992, effd=2)


def record():
    return {
        "maker": "Saltmarsh Modules", "series": "SM72M", "revision": "SMM-72M-0919-EN", "issued": "2019-09", "language": "en",
        "cell": {"technology": "mono-perc", "count": N(72), "arrangement": "6x12", "width_mm": N("158.75"), "height_mm": N("158.75")},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("22.3"), "front_glass_mm": N("3.2"), "cable_mm2": N("4.0"), "cable_length_mm": [N(1400), N(1400)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "frame": "Anodized aluminum alloy"},
        "thermal": {"noct_c": N(45), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.055"), "beta_voc_pct_per_k": N("-0.29"), "gamma_pmax_pct_per_k": N("-0.35")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(20), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400)},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(12), "performance_years": N(25), "first_year_loss_pct": N("2.5"), "annual_loss_pct": N("0.7"), "final_output_pct": N("80.7")},
        "packing": {"modules_per_pallet": N(26), "pallets_per_container": N(24), "modules_per_container": N(624)},
        "certificates": ["IEC 61701", "IEC 61215", "IEC 61730"],
        "models": [{"name": f"SM72M-{w}", "stc": design.stc(k), "noct": design.cond(k, .8, 45, pd=1)} for k, w in enumerate(design.watts)],
    }


INK, ACC, PALE = "#2c3e50", "#e67e22", "#eef1f4"


def build(rec, out):
    p = Paper(out, "SM72M", "open", "open-b")
    ms = rec["models"]
    front(p, "SALTMARSH", "MODULES", "SM72M", "365–380 W mono PERC", "Where the land is flat and wet and the wind is salt, a module earns its frame. The SM72M is tested against all three.",
          [("12 years", "product warranty"), ("25 years", "linear power warranty, 97.5 % in the first year, then −0.7 % a year, 80.7 % at the end"), ("0~+5 W", "power tolerance"), ("IEC 61701", "salt mist, severity 6")],
          art.warranty(25, "2.5", "0.7", "80.7", "90", "0", "80", w=245, h=140, colour=ACC, own="SM72M", std="Traditional warranty"), "IEC 61215, IEC 61730", "Saltmarsh Modules · Dyke End, Saltmarsh · +00 1253 555 012 · info@saltmarsh.example", (INK, ACC),
          art.hero(595.3, 430, rows=12, cols=6, sky=("#eef3f6", "#b4c6d0"), cell="#14264a", frame="#cdd2d6"))
    p.rect(0, 0, 595.3, 44, INK)
    p.text(36, 28, "SM72M 365–380 W", 16, True, "#ffffff")

    def bar(y, s, x=36, w=523):
        p.rect(x, y, w, 14, ACC)
        p.text(x + 5, y + 10, s, 8, True, "#ffffff", space=1.6)  # letter-spaced

    bar(58, "Electrical Characteristics STC")
    y = 72
    p.text(41, y + 9, "Module type", 6.8, True)
    for k, m in enumerate(ms):
        p.glyphs(250 + 80 * k, y + 9, m["name"], 6.8, True, per=2)
    y += 13
    labels = [("Maximum power (Pmax)", "pmax_w", "W"), ("Open circuit voltage (Voc)", "voc_v", "V"), ("Short circuit current (Isc)", "isc_a", "A"), ("Voltage at maximum power (Vmp)", "vmp_v", "V"), ("Current at maximum power (Imp)", "imp_a", "A"), ("Module eﬃciency", "efficiency_pct", "%")]
    for r, (a, k, u) in enumerate(labels):
        if r % 2 == 0:
            p.rect(36, y, 523, 12.5, PALE)
        p.glyphs(41, y + 9, a, 6.8, per=1)  # every label is cut into single glyphs
        if k == "isc_a":  # the whole row is one run, its columns made with spaces
            run = ""
            for j, m in enumerate(ms):
                while p.width(run + " ", 6.8) < 80 * j:
                    run += " "
                run += f"{m['stc'][k]} {u}"
            p.text(250, y + 9, run, 6.8)
        elif k == "imp_a":
            for j, m in enumerate(ms):
                p.glyphs(250 + 80 * j, y + 9, f"{m['stc'][k]}{u}", 6.8, per=2)
        else:
            for j, m in enumerate(ms):
                p.text(250 + 80 * j, y + 9, f"{m['stc'][k]}{u}", 6.8)
        y += 12.5
    p.text(41, y + 9, "Power tolerance", 6.8)
    p.text(400, y + 9, "0~+5W", 6.8, anchor="middle")
    y += 14
    p.text(36, y + 6, "STC: Irradiance 1000W/m^{2}, cell temperature 25", 6, colour="#555555")
    x = 36 + p.width("STC: Irradiance 1000W/m^{2}, cell temperature 25", 6)
    p.text(x + 1, y + 3.6, "o", 3.6, colour="#555555")
    p.text(x + 4, y + 6, "C, AM1.5. Measurement uncertainty of Pmax: ±3%", 6, colour="#555555")
    y += 14
    bar(y, "Electrical Characteristics NOCT")
    y += 14
    p.text(41, y + 9, "Module type", 6.8, True)
    for k, m in enumerate(ms):
        p.text(250 + 80 * k, y + 9, m["name"], 6.8, True)
    y += 13
    for r, (a, k, u) in enumerate(labels[:5]):
        if r % 2 == 0:
            p.rect(36, y, 523, 12.5, PALE)
        p.glyphs(41, y + 9, a, 6.8, per=3)
        for j, m in enumerate(ms):  # the digits half a row above their labels
            p.text(250 + 80 * j, y + 9 - 2.2, f"{m['noct'][k]}{u}", 6.8)
        y += 12.5
    p.text(36, y + 8, "NOCT: Irradiance 800W/m^{2}, ambient temperature 20^{o}C, wind speed 1m/s", 6, colour="#555555")
    y += 18
    top = y
    bar(y, "Temperature Coefficients", 36, 255)
    y += 14
    # ℃ lost: the unit ends after the stroke
    for a, b in (("Temperature coefﬁcient of Pmax", "-0.35%/"), ("Temperature coefﬁcient of Voc", "– 0.29%/"), ("Temperature coefﬁcient of Isc", "+ 0.055%/"), ("NOCT", "45±2")):
        p.text(41, y + 9, a, 6.8)
        p.text(200, y + 9, b, 6.8)
        y += 12
        p.line(36, y, 291, y)
    y += 6
    bar(y, "Operating Conditions", 36, 255)
    y += 14
    for a, b in (("Maximum system voltage", "1500V DC"), ("Operating temperature", "-40~+85"), ("Maximum series fuse", "20 A"), ("Front side load (snow)", "5400Pa"), ("Rear side load (wind)", "2400Pa")):
        p.text(41, y + 9, a, 6.8)
        p.glyphs(200, y + 9, b, 6.8, per=2)
        y += 12
        p.line(36, y, 291, y)
    yl = y
    y = top
    bar(y, "Mechanical Data", 304, 255)
    y += 14
    for a, b in (("Cell type", "Mono PERC 158.75 x 158.75 mm"), ("No. of cells", "72 (6 X 12)"), ("Dimensions", "1956x992x40 mm"), ("Weight", "22. 3kg"), ("Front glass", "3.2 mm tempered"), ("Frame", "Anodized aluminum alloy")):
        p.text(309, y + 9, a, 6.8)
        p.text(390, y + 9, b, 6.8)
        y += 12
        p.line(304, y, 559, y)
    # two rows squeezed into one band
    p.text(309, y + 6.6, "Junction box", 5.6)
    p.text(390, y + 6.6, "IP68, 3 bypass diodes", 5.6)
    p.text(309, y + 12.6, "Cable", 5.6)
    p.text(390, y + 12.6, "4.0 mm^{2}, 2 x 1400 mm", 5.6)
    y += 15
    p.line(304, y, 559, y)
    y += 6
    bar(y, "Packing 40'HC", 304, 255)
    y += 14
    for a, b in (("Modules per pallet", "26 pcs"), ("Pallets per container", "24"), ("Modules per container", "624 pcs")):
        p.text(309, y + 9, a, 6.8)
        p.text(420, y + 9, b, 6.8)
        y += 12
        p.line(304, y, 559, y)
    y = max(y, yl) + 12
    draw, dw, dh = art.drawing(L, W, D, 12, 6, h=220, half=False, holes=(990, 1300))
    for _ in range(3):  # the drawing's lettering stands there three times over
        p.ops([o for o in draw if o[0] == "text"], 30, y)
    p.ops([o for o in draw if o[0] != "text"], 30, y)
    d = design.diodes[1]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g}W/m²" for g in (1000, 800, 600, 400, 200)], 240, 160, title="SM72M-370"), 318, y)
    p.text(36, 806, "Installation by licensed persons under local code. Subject to change. Sept. 2019", 6, colour="#555555", font="Helvetica")
    p.text(559, 806, rec["revision"], 6, anchor="end", colour="#555555", font="Helvetica")
    p.save()
    lose_ligature(out, "FB03")


def lose_ligature(path, code):
    """The ligature's entry in the ToUnicode maps becomes a blank: "efficiency" reads "e ciency"."""
    import pikepdf
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        for o in pdf.objects:
            if isinstance(o, pikepdf.Dictionary) and "/ToUnicode" in o:
                b = o.ToUnicode.read_bytes()
                if f"<{code}>".encode() in b:
                    o.ToUnicode.write(b.replace(f"<{code}>".encode(), b"<0020>"))
        pdf.save(path, static_id=True)
