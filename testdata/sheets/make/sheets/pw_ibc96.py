"""pw-ibc96: Pellworth Cells, one class as label-value pairs two to a line, absolute coefficients (mV, mA, with lost nothing), dimensions in mm and inch,
per-cable lengths, UL and IEC voltage stacked; Cairo."""
import art
from cairo_paper import Paper
from design import Design
from record import N

NAME = "pw-ibc96"
L, W, D = "1559", "1046", "46"
design = Design(96, 345, 5, 1, (68.2, 0), (6.39, 0), .045, -.245, 1.559 * 1.046, shunt=80)


def record():
    return {
        "maker": "Pellworth Cells", "series": "PW-B96-345", "revision": "PWC-0345-B Rev 4", "issued": "2018-05", "language": "en",
        "cell": {"technology": "ibc", "count": N(96), "arrangement": "8x12", "width_mm": N(125), "height_mm": N(125)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("18.6"), "front_glass_mm": N("3.2"), "cable_length_mm": [N(1200)], "cable_mm2": N(4), "bypass_diodes": N(3), "junction_box_ip": "IP65", "connector": "PW-T4", "frame": "Black anodised"},
        "thermal": {"noct_c": N(45), "noct_tolerance_c": N(2), "alpha_isc_a_per_k": N("0.0029"), "beta_voc_v_per_k": N("-0.1671"), "gamma_pmax_pct_per_k": N("-0.29")},
        "limits": {"system_voltage_v": [N(600), N(1000)], "series_fuse_a": N(15), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_pct": N(5), "power_minus_pct": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(25), "performance_years": N(25), "first_year_loss_pct": N(2), "annual_loss_pct": N("0.25"), "final_output_pct": N(92)},
        "certificates": ["IEC 61215", "IEC 61730", "UL 1703"],
        "models": [{"name": "PW-B96-345", "stc": design.stc(0, vd=1), "noct": design.cond(0, .8, 45, vd=1)}],
    }


BLACK, GOLD = "#15181c", "#b98a2f"


def build(rec, out):
    p = Paper(out, "PW-B96-345", "DejaVu Sans")
    m = rec["models"][0]
    stc, noct = m["stc"], m["noct"]
    p.rect(0, 0, 595.3, 300, BLACK)
    p.ops(art.hero(360, 300, rows=12, cols=8, sky=("#2a2f36", "#15181c"), cell="#050608", frame="#0b0b0b", tilt=.3), 235, 0)
    p.rect(0, 296, 595.3, 4, GOLD)
    p.text(36, 60, "PELLWORTH", 26, True, "#ffffff")
    p.text(36, 78, "C E L L S", 10, colour=GOLD)
    p.text(36, 190, "B96 345 W", 30, True, "#ffffff")
    p.text(36, 210, "Back contact module, all black", 11, colour="#dddddd")
    y = p.lines(36, 330, 240, "No wires on the face, nothing in the light's way. The B96 carries both contacts of its 96 n-type back-contact cells behind them, on solid copper that bends rather than breaks.", 8.5)
    for big, small in (("21.2 %", "panel efficiency"), ("25 years", "product and power warranty"), ("+5/−0 %", "power tolerance"), ("92 %", "of power after 25 years")):
        y += 30
        p.text(36, y, big, 21, True, GOLD)
        p.text(150, y, small, 9)
    p.text(310, 330, "Power warranty", 11, True)
    p.ops(art.warranty(25, "2", "0.25", "92", "97", "0.7", "80.2", w=245, h=140, colour=GOLD, own="Pellworth B96", std="Conventional panel"), 310, 336)
    p.lines(310, 490, 245, "At least 98 % in the first year, no more than 0.25 % less a year after that, 92 % at the end of year 25.", 7, colour="#555555")
    p.text(310, 540, "Certificates", 11, True)
    p.text(310, 555, "IEC 61215, IEC 61730, UL 1703", 8)
    p.rect(0, 790, 595.3, 52, BLACK)
    p.text(36, 812, "Pellworth Cells Inc. · 900 Copper Street, Pellworth · +00 31 555 0163 · info@pellworth.example", 7.5, colour="#ffffff")
    p.text(36, 826, "May 2018", 7, colour="#bbbbbb")
    p.next()
    p.rect(0, 0, 595.3, 40, BLACK)
    p.text(36, 26, "PW-B96-345", 17, True, "#ffffff")
    p.text(559, 26, "DATASHEET", 10, True, GOLD, "end")

    def pairs(y, title, items, lead=13.5):
        p.text(36, y, title, 9.5, True, GOLD)
        y += 4
        p.line(36, y, 559, y, BLACK, .8)
        for k in range(0, len(items), 2):
            y += lead
            for (a, b), x in zip(items[k:k + 2], (36, 306)):
                p.text(x, y - 3, a, 7)
                p.text(x + 253, y - 3, b, 7, True, anchor="end")
            p.line(36, y + 1, 559, y + 1, "#cccccc")
        return y + 22

    y = pairs(66, "Electrical data at STC (1000 W/m², AM 1.5, 25 °C)", [("Nominal power (Pnom)", f"{stc['pmax_w']} W"), ("Power tolerance", "+5/−0 %"), ("Rated voltage (Vmpp)", f"{stc['vmp_v']} V"), ("Rated current (Impp)", f"{stc['imp_a']} A"),
              ("Open-circuit voltage (Voc)", f"{stc['voc_v']} V"), ("Short-circuit current (Isc)", f"{stc['isc_a']} A"), ("Panel efficiency", f"{stc['efficiency_pct']} %"), ("Maximum series fuse", "15 A"), ("Maximum system voltage", "600 V UL & 1000 V IEC"), ("Protection class", "II")])
    y = pairs(y, "Electrical data at NOCT (800 W/m², 20 °C ambient, wind 1 m/s)", [("Nominal power (Pnom)", f"{noct['pmax_w']} W"), ("NOCT", "45 °C ± 2 °C"), ("Rated voltage (Vmpp)", f"{noct['vmp_v']} V"), ("Rated current (Impp)", f"{noct['imp_a']} A"), ("Open-circuit voltage (Voc)", f"{noct['voc_v']} V"), ("Short-circuit current (Isc)", f"{noct['isc_a']} A")])
    y = pairs(y, "Temperature coefficients", [("Power temp. coefficient", "−0.29 % / °C"), ("Voltage temp. coefficient (Voc)", "−167.1 mV / °C"), ("Current temp. coefficient (Isc)", "2.9 mA / °C"), ("Operating temperature", "−40 °C to +85 °C")])
    y = pairs(y, "Mechanical data", [("Solar cells", "96 back contact monocrystalline, n-type"), ("Arrangement", "8 × 12, 125 × 125 mm"), ("Dimensions", "1559 × 1046 × 46 mm"), ("in inches", "61.4 × 41.2 × 1.8 in"), ("Weight", "18.6 kg (41.0 lbs)"), ("Front glass", "3.2 mm tempered, anti-reflective"),
              ("Junction box", "IP65, 3 bypass diodes"), ("Connector", "PW-T4"), ("Cable", "4 mm², 1200 mm"), ("Frame", "Black anodised"), ("Snow load (front)", "5400 Pa"), ("Wind load (rear)", "2400 Pa")])
    draw, dw, dh = art.drawing(L, W, D, 12, 8, h=205, half=False, holes=(715, 1220), inch=True, labels=("Front", "Edge", "Back"))
    p.ops(draw, 30, y)
    d = design.diodes[0]
    p.ops(art.iv([d.at(1, 50), d.at(1), d.at(.8), d.at(.5), d.at(.2)], ["1000 W/m² at 50 °C", "1000 W/m²", "800 W/m²", "500 W/m²", "200 W/m²"], 240, 170), 325, y)
    p.text(36, 815, "Refer to the safety and installation guide. Conductors and fuses are chosen by a licensed person under the local code.", 6, colour="#555555")
    p.text(559, 815, rec["revision"], 6, colour="#555555", anchor="end")
    p.save()
