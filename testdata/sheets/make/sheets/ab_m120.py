"""ab-m120: Alder & Brook Photovoltaik, German, decimal comma and thousands dot, en dash as minus with a space, symbols and units in columns of their own,
a pallet size beside the module's, tolerance row merged and centred, lorry and container columns; LibreOffice."""
import art
from design import Design
from fodt import Doc
from loc import comma, dot3
from producers import libreoffice
from record import N

NAME = "ab-m120"
L, W, D = "1755", "1038", "35"
design = Design(60, 370, 5, 3, (40.86, .18), (11.42, .07), .048, -.272, 1.755 * 1.038)


def record():
    return {
        "maker": "Alder & Brook Photovoltaik", "series": "AB-M120", "revision": "AB-M120-DE-03", "issued": "2021-09", "language": "de",
        "cell": {"technology": "mono-perc", "count": N(120), "arrangement": "6x20", "cut": "half", "width_mm": N(166), "height_mm": N(83)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("20.3"), "front_glass_mm": N("3.2"), "cable_mm2": N("4.0"), "cable_length_mm": [N(1100), N(1100)], "bypass_diodes": N(3), "junction_box_ip": "IP68",
                 "connector": "Erlenstecker E4", "frame": "schwarz eloxierte Aluminiumlegierung"},
        "thermal": {"nmot_c": N(44), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.048"), "beta_voc_pct_per_k": N("-0.272"), "gamma_pmax_pct_per_k": N("-0.32")},
        "limits": {"system_voltage_v": [N(1000)], "reverse_current_a": N(20), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II", "fire_class": "C"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1), "air_mass": N("1.5")}},
        "warranty": {"product_years": N(15), "performance_years": N(25), "first_year_loss_pct": N(2), "annual_loss_pct": N("0.55"), "final_output_pct": N("84.8")},
        "packing": {"modules_per_pallet": N(31), "modules_per_container": N(806)},
        "certificates": ["IEC 61215", "IEC 61730", "IEC 61701", "IEC 62716"],
        "low_light": {"irradiance_w_m2": N(200), "relative_efficiency_pct": N("97.5")},
        "models": [{"name": f"AB-M120-{w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 44, pd=1)} for k, w in enumerate(design.watts)],
    }


RED, GREY = "#8c1d2c", "#eceae6"


def build(rec, out):
    d = Doc("Open Sans", "de", "DE", 7.2)
    ms = rec["models"]
    x, w = 42, 511
    d.frame(0, 0, 595.3, 96, d.p(" ", size=12) + d.p("\u00a0\u00a0\u00a0\u00a0\u00a0\u00a0Alder & Brook", size=24, bold=True, colour=RED) + d.p("\u00a0"*16 + "P H O T O V O L T A I K", size=8.5, colour="#555555"))
    d.picture(0, 96, art.hero(595.3, 330, rows=10, cols=6, sky=("#f0eee9", "#c4bcae"), cell="#16181c", frame="#1c1c1c", tilt=.3), 595.3, 330)
    d.frame(x, 330, 250, 70, d.p("AB-M120", size=28, bold=True, colour="#ffffff") + d.p("370 W / 375 W / 380 W", size=13, colour="#ffffff") + d.p("Halbzellenmodul, monokristallin, PERC", size=8.5, colour="#ffffff"), fill=RED, pad=9)
    left = [("Ertrag, der bleibt", "Höchstens 2 % Leistungsverlust im ersten Jahr, danach höchstens 0,55 % pro Jahr."), ("Stark gegen Schnee", "Geprüft bis 5.400 Pa Schneelast und 2.400 Pa Windsog."), ("Gutes Schwachlichtverhalten", "97,5 % des STC-Wirkungsgrades bei 200 W/m^{2}."), ("Positive Sortierung", "Sie bekommen 0 bis 5 W mehr, nie weniger.")]
    d.frame(x, 448, 250, 200, "".join(d.p(a, size=10.5, bold=True, colour=RED, space=1) + d.p(b, size=8.2, space=6) for a, b in left))
    d.frame(320, 448, 233, 46, d.p("15 Jahre Produktgarantie", size=11, bold=True, colour=RED) + d.p("25 Jahre lineare Leistungsgarantie", size=11, bold=True, colour=RED))
    d.picture(320, 490, art.warranty(25, "2", "0.55", "84.8", "97", "0.7", "80.2", w=235, h=135, colour=RED, own="AB-M120", std="Standardmodul", comma=True, pct="{} %", xlabel="Jahre"), 235, 135)
    d.frame(320, 630, 233, 24, d.p("Nach 25 Jahren mindestens 84,8 % der Nennleistung.", size=7.5, italic=True))
    d.frame(x, 690, w, 40, d.p("Zertifikate", size=9, bold=True, colour=RED) + d.p("IEC 61215 · IEC 61730 · IEC 61701 (Salznebel) · IEC 62716 (Ammoniak)"))
    d.frame(x, 780, w, 30, d.p("Alder & Brook Photovoltaik GmbH · Mühlenbach 9 · 00417 Erlenbrück · Telefon +00 (0)4171 555 08-0 · post@alderbrook.example", size=6.8, colour="#555555"))

    d.page = 2
    d.frame(x, 28, 330, 40, d.p("AB-M120", size=20, bold=True, colour=RED) + d.p("370 W / 375 W / 380 W", size=10))
    d.frame(400, 34, 153, 24, d.p("Alder & Brook", size=13, bold=True, colour=RED, align="right"))
    band = lambda r, c: RED if r == 0 else (GREY if c > 1 and r % 2 else None)
    white = lambda r, c: "#ffffff" if r == 0 else None
    names = [f"AB-M120-{m['stc']['pmax_w']}" for m in ms]
    q = [("Nennleistung", "P_{MPP}", "[W]", "pmax_w"), ("Spannung bei Nennleistung", "U_{MPP}", "[V]", "vmp_v"), ("Strom bei Nennleistung", "I_{MPP}", "[A]", "imp_a"), ("Leerlaufspannung", "U_{OC}", "[V]", "voc_v"), ("Kurzschlussstrom", "I_{SC}", "[A]", "isc_a")]
    cols = [140, 46, 40, 95, 95, 95]
    al = lambda r, c: "left" if c < 3 else "center"
    stc = [["Elektrische Daten unter STC", "", ""] + names] + [[a, b, u] + [comma(m["stc"][k]) for m in ms] for a, b, u, k in q] + [["Modulwirkungsgrad", "η", "[%]"] + [comma(m["stc"]["efficiency_pct"]) for m in ms], ["Leistungstoleranz", "", "[W]", ("0 / +5", 3), None, None]]
    nm = [["Elektrische Daten unter NMOT", "", ""] + names] + [[a, b, u] + [comma(m["nmot"][k]) for m in ms] for a, b, u, k in q]
    d.frame(x, 80, w, 100, d.table(stc, cols, fills=band, colour=white, bold_rows=(0,), align=al) + d.p("STC: 1000 W/m^{2}, 25 °C Zelltemperatur, AM 1,5. Messunsicherheit P_{MPP} ±3 %.", size=6))
    d.frame(x, 208, w, 90, d.table(nm, cols, fills=band, colour=white, bold_rows=(0,), align=al) + d.p("NMOT: 800 W/m^{2}, 20 °C Umgebungstemperatur, AM 1,5, Windgeschwindigkeit 1 m/s.", size=6))
    t = lambda rows, cw: d.table(rows, cw, fills=lambda r, c: RED if r == 0 else None, colour=white, bold_rows=(0,), align=lambda r, c: "left")
    d.frame(x, 310, 255, 60, t([["Temperaturdaten", "", ""], ["Betriebstemperaturbereich", "", "– 40 °C bis + 85 °C"], ["Nennbetriebstemperatur (NMOT)", "", "44 °C ± 2 °C"], ["Temperaturkoeffizient Leistung", "P_{MPP}", "– 0,32 %/°C"], ["Temperaturkoeffizient Spannung", "U_{OC}", "– 0,272 %/°C"], ["Temperaturkoeffizient Strom", "I_{SC}", "0,048 %/°C"]], [133, 37, 85]))
    d.frame(x, 398, 255, 60, t([["Systemintegration", ""], ["Maximale Systemspannung", "1.000 V"], ["Rückstrombelastbarkeit", "20 A"], ["Schutzklasse", "II"], ["Max. Belastung, Druck / Sog", "5.400 Pa / 2.400 Pa"], ["Brandklasse", "C"]], [133, 122]))
    d.frame(307, 310, 246, 60, t([["Mechanische Daten", ""], ["Solarzellen", "120 monokristalline PERC-Halbzellen (6 × 20)"], ["Zellgröße", "166 mm × 83 mm"], ["Abmessungen (L × B × H)", "1.755 mm × 1.038 mm × 35 mm"], ["Gewicht", "20,3 kg"], ["Frontglas", "3,2 mm gehärtetes Solarglas"], ["Rückseite", "Verbundfolie, schwarz"], ["Rahmen", "schwarz eloxierte Aluminiumlegierung"],
              ["Anschlussdose", "IP68, 3 Bypassdioden"], ["Kabel", "4,0 mm^{2}; 1.100 mm (+) / 1.100 mm (–)"], ["Steckverbinder", "Erlenstecker E4"]], [92, 154]))
    d.frame(307, 458, 246, 60, t([["Logistik", "LKW", "Container 40' HC"], ["Module pro Palette", "31", "31"], ["Module gesamt", "930", "806"], ["Maße Palette (L/B/H)", "1.790/1.120/1.180 mm", ""], ["Gewicht Palette", "ca. 660 kg", ""]], [92, 84, 70]))
    draw, dw, dh = art.drawing(L, W, D, 20, 6, h=188, holes=(1000, 1300), fmt=lambda s: dot3(s), labels=("Vorderseite", "Seite", "Rückseite"))
    d.picture(x, 530, draw, dw, dh)
    m = design.diodes[1]
    d.picture(325, 560, art.iv([m.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 228, 150, xlabel="Spannung [V]", ylabel="Strom [A]", title="AB-M120-375"), 228, 150)
    d.frame(x, 745, w, 40, d.p("Alle Angaben nach EN 50380. Technische Änderungen vorbehalten. Die Montageanleitung ist zu beachten; Elektroarbeiten nur durch Fachkräfte nach den örtlichen Vorschriften.", size=6, colour="#555555"))
    d.frame(x, 790, 300, 20, d.p("© Alder & Brook Photovoltaik GmbH, Stand 09/2021", size=6, colour="#555555"))
    d.frame(400, 790, 153, 20, d.p(rec["revision"], size=6, colour="#555555", align="right"))
    libreoffice(d.xml("AB-M120"), ".fodt", out)
