"""ab-t54: Alder & Brook, German; names only as a pattern with bare watts, a rotated row-group title ("Mindestwerte"), efficiencies as lower bounds, units in the label column,
detached minus, stacked symbols, low irradiance table, label-value pairs two to a line, loads as push/pull test and design, rotated edge text; reportlab."""
import art
from design import Design
from loc import comma
from record import N
from rl import Paper

NAME = "ab-t54"
L, W, D = "1762", "1134", "30"
design = Design(54, 430, 5, 4, (38.70, .17), (14.02, .06), .045, -.25, 1.762 * 1.134)


def record():
    return {
        "maker": "Alder & Brook Photovoltaik", "series": "AB-T54", "revision": "AB-T54_2024-05_Rev02_DE", "issued": "2024-05", "language": "de",
        "cell": {"technology": "topcon", "count": N(108), "arrangement": "6x18", "cut": "half"},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("21.1"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1250), N(1250)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "Erlenstecker E4", "frame": "Schwarz eloxiertes Aluminium"},
        "thermal": {"nmot_c": N(43), "nmot_tolerance_c": N(3), "alpha_isc_pct_per_k": N("0.045"), "beta_voc_pct_per_k": N("-0.25"), "gamma_pmax_pct_per_k": N("-0.29")},
        "limits": {"system_voltage_v": [N(1000)], "reverse_current_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(3600), "front_design_load_pa": N(3600), "rear_design_load_pa": N(2400), "safety_class": "II", "fire_class": "C"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3), "voc_pct": N(5), "isc_pct": N(5)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "air_mass": N("1.5")}, "low": {"irradiance_w_m2": N(200), "cell_c": N(25)}},
        "warranty": {"product_years": N(25), "performance_years": N(25), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.4"), "final_output_pct": N("89.4")},
        "packing": {"modules_per_pallet": N(36), "pallets_per_container": N(26), "modules_per_container": N(936)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"AB-T54-{w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 43, pd=1), "low": {"irradiance_w_m2": N(200), **design.cond(k, .2, 25, pd=1, keys=("pmax_w", "voc_v", "isc_a"))}} for k, w in enumerate(design.watts)],
    }


TEAL, SAND = "#20504f", "#efe9dd"


def build(rec, out):
    p = Paper(out, "AB-T54-xxx", "open", "open-b")
    ms = rec["models"]
    p.ops(art.hero(595.3, 420, rows=9, cols=6, sky=("#f6f1e7", "#d9cdb4"), cell="#101418", frame="#111111", tilt=.24))
    p.rect(0, 0, 595.3, 70, TEAL)
    p.text(40, 44, "Alder & Brook", 24, True, "#ffffff")
    p.text(555, 44, "PHOTOVOLTAIK", 9, colour="#d9cdb4", anchor="end", space=2.4)
    p.rect(40, 380, 320, 76, TEAL)
    p.text(56, 418, "AB-T54 430–445", 26, True, "#ffffff")
    p.text(56, 440, "Das N-Typ-Modul für das Wohnhaus", 11, colour="#efe9dd")
    p.lines(40, 485, 500, "Passivierte Kontakte auf n-leitendem Silizium: Das AB-T54 hält, was das Datenblatt verspricht – auch im fünfundzwanzigsten Jahr. Die Halbzellen und drei Bypassdioden sorgen dafür, dass ein Schornstein im Morgenlicht nicht die ganze Anlage bremst.", 9)
    y = 545
    for k, (a, b) in enumerate((("TOPCon-Technologie", "Hohe Erträge durch einen Wirkungsgrad von bis zu " + comma(ms[-1]["stc"]["efficiency_pct"]) + " %."), ("Wetterfest", "Hohe Schneelasten (5400 Pa) und Windlasten (3600 Pa)."), ("25 Jahre Produktgarantie", "Dazu 25 Jahre lineare Leistungsgarantie¹."), ("Schwachlicht", "Ein flacher Verlauf bis 200 W/m^{2} hinab."))):
        x = 40 + 260 * (k % 2)
        p.rect(x, y - 9, 4, 26, "#b4552d")
        p.text(x + 10, y, a, 10, True, TEAL)
        p.text(x + 10, y + 13, b, 7.8)
        y += 44 if k % 2 else 0
    p.text(40, 800, "¹ Bedingungen siehe Rückseite.", 6.5, colour="#666666")
    p.text(555, 800, "Alder & Brook Photovoltaik GmbH · Mühlenbach 9 · 00417 Erlenbrück", 6.5, colour="#666666", anchor="end")
    p.next()

    bar = lambda y, s, x=40, w=500: (p.rect(x, y, w, 13, TEAL), p.text(x + 5, y + 9.4, s, 8, True, "#ffffff"))
    sub = lambda y, s: (p.rect(40, y, 500, 11, SAND), p.text(45, y + 8, s, 6.6))
    bar(30, "MECHANISCHE SPEZIFIKATIONEN")
    y = 44
    for a, b in (("Format", "1762 mm × 1134 mm × 30 mm (inklusive Rahmen)"), ("Gewicht", "21,1 kg"), ("Frontabdeckung", "3,2 mm thermisch vorgespanntes Glas mit Antireflexionstechnologie"), ("Rückabdeckung", "Verbundfolie"), ("Rahmen", "Schwarz eloxiertes Aluminium"), ("Zelle", "6 × 18 monokristalline n-Typ TOPCon-Solarhalbzellen (108 Stück)"),
                 ("Anschlussdose", "60–80 mm × 40–60 mm × 14–18 mm; Schutzart IP68, mit 3 Bypassdioden"), ("Kabel", "4 mm^{2} Solarkabel; (+) ≥ 1250 mm, (–) ≥ 1250 mm"), ("Stecker", "Erlenstecker E4")):
        p.text(45, y + 8.6, a, 6.8, True)
        p.text(120, y + 8.6, b, 6.8)
        y += 11.5
        p.line(40, y, 370, y)
    draw, dw, dh = art.drawing(L, W, D, 18, 6, h=132, holes=(1000,), labels=("", "", ""))
    p.ops(draw, 366, 40)

    y += 16
    bar(y, "ELEKTRISCHE SPEZIFIKATIONEN")
    y += 13
    p.table(40, y, [300, 50, 50, 50, 50], [[("LEISTUNGSKLASSE", 1)] + [m["stc"]["pmax_w"] for m in ms]], 12, 7, fills=lambda r: SAND)
    y += 12
    mid = lambda r, c: "start" if c < 2 else "middle"

    def block(y, title, rows, key, turn):
        sub(y, title)
        y += 11
        top = y
        for a, sy, u, k in rows:
            p.text(64, y + 8.4, a, 6.8, True)
            p.text(232, y + 8.4, sy, 6.8)
            p.text(282, y + 8.4, u, 6.8)
            for n, m in enumerate(ms):
                v = comma(m[key][k])
                if k == "efficiency_pct":
                    v = "≥ " + v
                p.text(365 + 50 * n, y + 8.4, v, 6.8, anchor="middle")
            y += 11
            p.line(58, y, 540, y)
        p.text(50, (top + y) / 2 + p.width(turn, 6.4, True) / 2, turn, 6.4, True, TEAL, rot=-90)
        return y + 2

    q = [("Leistung bei MPP", "P_{MPP}", "[W]", "pmax_w"), ("Kurzschlussstrom", "I_{SC}", "[A]", "isc_a"), ("Leerlaufspannung", "U_{OC}", "[V]", "voc_v"), ("Strom bei MPP", "I_{MPP}", "[A]", "imp_a"), ("Spannung bei MPP", "U_{MPP}", "[V]", "vmp_v")]
    y = block(y, "MINIMALE LEISTUNG BEI STANDARD-TESTBEDINGUNGEN, STC (LEISTUNGSTOLERANZ +5 W / −0 W)", q + [("Wirkungsgrad", "η", "[%]", "efficiency_pct")], "stc", "Mindestwerte")
    y = block(y, "MINIMALE LEISTUNG BEI NENN-MODULBETRIEBSTEMPERATUR, NMOT", q, "nmot", "Mindestwerte")
    y = block(y, "LEISTUNG BEI NIEDRIGER EINSTRAHLUNG (200 W/m^{2}, 25 °C)", [("Leistung bei MPP", "P_{MPP}", "[W]", "pmax_w"), ("Leerlaufspannung", "U_{OC}", "[V]", "voc_v"), ("Kurzschlussstrom", "I_{SC}", "[A]", "isc_a")], "low", "typisch")
    p.text(40, y + 7, "Messtoleranzen P_{MPP} ±3 %; I_{SC}, U_{OC} ±5 % bei STC: 1000 W/m^{2}, 25 °C, AM 1,5 · NMOT: 800 W/m^{2}, Spektrum AM 1,5", 5.8, colour="#555555")
    y += 16
    bar(y, "LEISTUNGSGARANTIE", 40, 240)
    bar(y, "KENNLINIEN", 300, 240)
    p.ops(art.warranty(25, "1", "0.4", "89.4", "97", "0.7", "80.2", w=150, h=105, colour="#b4552d", own="AB-T54", std="Standard in der Branche", pct="{} %", comma=True, xlabel="JAHRE", ticks=10), 36, y + 16)
    p.lines(190, y + 26, 92, "Mindestens 99 % der Nennleistung im ersten Jahr. Danach max. 0,4 % Degradation pro Jahr. Mindestens 95,4 % nach 10 Jahren. Mindestens 89,4 % nach 25 Jahren.", 6.2)
    d = design.diodes[2]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 235, 118, xlabel="SPANNUNG [V]", ylabel="STROM [A]"), 300, y + 14)
    y += 138
    bar(y, "TEMPERATURKOEFFIZIENTEN")
    y += 13

    def pairs(y, items):
        for (a, sy, u, v), (a2, sy2, u2, v2) in items:
            for x, t in ((45, (a, sy, u, v)), (300, (a2, sy2, u2, v2))):
                p.text(x, y + 8.4, t[0], 6.8, True)
                p.text(x + 142, y + 8.4, t[1], 6.8)
                p.text(x + 170, y + 8.4, t[2], 6.8)
                p.text(x + 240, y + 8.4, t[3], 6.8, anchor="end")
            y += 11
            p.line(40, y, 540, y)
        return y + 6

    y = pairs(y, [(("Temperaturkoeffizient I_{SC}", "α", "[%/K]", "+ 0,045"), ("Temperaturkoeffizient U_{OC}", "β", "[%/K]", "− 0,25")), (("Temperaturkoeffizient P_{MPP}", "γ", "[%/K]", "− 0,29"), ("Nenn-Modulbetriebstemperatur", "NMOT", "[°C]", "43 ± 3"))])
    bar(y, "KENNGRÖSSEN ZUR SYSTEMEINBINDUNG")
    y = pairs(y + 13, [(("Maximale Systemspannung", "U_{SYS}", "[V]", "1000"), ("Schutzklasse", "", "", "II")), (("Maximale Rückstrombelastbarkeit", "I_{R}", "[A]", "25"), ("Brandklasse", "", "", "C")), (("Max. zul. Belastung, Druck/Zug", "", "[Pa]", "3600/2400"), ("Zul. Modultemperatur", "", "", "−40 °C – +85 °C")), (("Max. Testbelastung, Druck/Zug", "", "[Pa]", "5400/3600"), ("im Dauerbetrieb", "", "", ""))])
    bar(y, "QUALIFIKATIONEN UND ZERTIFIKATE", 40, 240)
    bar(y, "VERPACKUNG", 300, 240)
    p.text(45, y + 24, "IEC 61215, IEC 61730. Dieses Datenblatt entspricht der DIN EN 50380.", 6.4)
    for k, (a, b) in enumerate((("Anzahl Module pro Palette", "36"), ("Anzahl Paletten pro 40'-HC-Container", "26"), ("Anzahl Module pro 40'-HC-Container", "936"), ("Palettenmaß", "1785 × 1140 × 1250 mm"))):
        p.text(305, y + 23 + 10.5 * k, a, 6.6)
        p.text(535, y + 23 + 10.5 * k, b, 6.6, anchor="end")
    p.text(40, 800, "Hinweis: Den Anweisungen in der Installationsanleitung ist unbedingt Folge zu leisten. Arbeiten nur durch Fachkräfte nach örtlichen Vorschriften.", 6, colour="#555555")
    p.text(40, 818, "Product: AB-T54-xxx (xxx = Leistungsklasse)", 6.5, True)
    p.text(566, 640, "Technische Änderungen vorbehalten © Alder & Brook   Stand 05/2024   " + rec["revision"], 5.4, colour="#777777", rot=-90)
    p.save()
