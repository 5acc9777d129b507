"""hg-p60: Harbour Glass Modules, multi, four classes in descending order, bare watts as names, NOCT, units in their own column, inches and pounds beside; LibreOffice."""
import art
from design import Design
from fodt import Doc
from producers import libreoffice
from record import N

NAME = "hg-p60"
L, W, D = "1650", "992", "40"
design = Design(60, 255, 5, 4, (37.60, .18), (8.94, .06), .058, -.33, 1.650 * .992)


def record():
    return {
        "maker": "Harbour Glass Modules", "series": "HG-P60", "revision": "HGM-P60-EN Rev. C 06/2017", "language": "en",
        "cell": {"technology": "multi", "count": N(60), "arrangement": "6x10", "width_mm": N("156.75"), "height_mm": N("156.75"), "busbars": N(5)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("18.6"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(900), N(900)], "bypass_diodes": N(3), "junction_box_ip": "IP67",
                 "connector": "Quay-4 compatible", "frame": "Anodized aluminum"},
        "thermal": {"noct_c": N(45), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.058"), "beta_voc_pct_per_k": N("-0.33"), "gamma_pmax_pct_per_k": N("-0.40")},
        "limits": {"system_voltage_v": [N(1000)], "series_fuse_a": N(15), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400)},
        "tolerance": {"power_plus_pct": N(3), "power_minus_pct": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(10), "performance_years": N(25), "first_year_loss_pct": N("2.5"), "annual_loss_pct": N("0.7"), "final_output_pct": N("80.7")},
        "packing": {"modules_per_pallet": N(26), "pallets_per_container": N(28), "modules_per_container": N(728)},
        "certificates": ["IEC 61215", "IEC 61730", "ISO 9001", "ISO 14001"],
        "low_light": {"irradiance_w_m2": N(200), "relative_efficiency_pct": N("96.5")},
        "models": [{"name": f"HG-P60 {w}", "stc": design.stc(k, vd=1), "noct": design.cond(k, .8, 45, pd=1, vd=1)} for k, w in enumerate(design.watts)],
    }


GREEN, PALE = "#1f6f5c", "#e3efeb"


def build(rec, out):
    d = Doc("Liberation Sans", size=7.6)
    ms = rec["models"][::-1]
    x, w = 40, 515
    d.picture(0, 0, art.hero(595.3, 400, rows=10, cols=6, sky=("#eef3ea", "#a9c9b8"), cell="#1d3f86", frame="#d7dadd"), 595.3, 400)
    d.frame(x, 30, 240, 40, d.p("HARBOUR GLASS", size=20, bold=True, colour=GREEN) + d.p("M O D U L E S", size=9, colour=GREEN), fill="#ffffff", pad=6)
    d.frame(x, 335, 330, 60, d.p("HG-P60 Series", size=26, bold=True, colour="#ffffff") + d.p("255 W · 260 W · 265 W · 270 W", size=14, colour="#ffffff"), fill=GREEN, pad=8)
    d.frame(x, 430, 250, 200, d.p("60-cell polycrystalline module", size=15, bold=True, colour=GREEN, space=5) + d.p("The P60 has left our harbour hall since 2009, glass by glass. It is neither the newest nor the lightest module on the quay, only one that still does what its label says.", size=9, space=6)
            + "".join(d.p("■  " + s, size=9, space=3) for s in ("Positive power tolerance: 0 to +3 %", "Five busbars, 16.5 % maximum module efficiency", "Snow load up to 5400 Pa, wind load up to 2400 Pa", "100 % electroluminescence inspection", "Salt mist and ammonia tested")))
    d.frame(320, 430, 235, 20, d.p("Linear performance warranty", size=11, bold=True, colour=GREEN) + d.p("10-year product warranty · 25-year linear performance warranty", size=7.5))
    d.picture(320, 462, art.warranty(25, "2.5", "0.7", "80.7", "90", "0", "80", colour=GREEN, own="HG-P60", std="Industry step warranty", pct="{} %"), 230, 130)
    d.frame(320, 596, 235, 30, d.p("97.5 % in the first year, thereafter max. 0.7 % degression per year, 80.7 % after 25 years.", size=7, italic=True))
    d.frame(x, 660, w, 60, d.p("Certificates", size=11, bold=True, colour=GREEN, space=3) + d.p("IEC 61215 · IEC 61730 · ISO 9001 · ISO 14001", size=8.5))
    foot = "Harbour Glass Modules Ltd. · Slipway 3, Saltmere Harbour SH2 · +00 88 555 0190 · hello@harbourglass.example"
    d.frame(x, 790, w, 24, d.p(foot, size=7.5, colour="#ffffff"), fill=GREEN, pad=4)

    d.page = 2
    d.frame(0, 0, 595.3, 52, d.p(" ", size=10) + d.p("\u00a0\u00a0\u00a0\u00a0\u00a0\u00a0HG-P60   255–270 W", size=18, bold=True, colour="#ffffff"), fill=GREEN)
    band = lambda r, c: GREEN if r == 0 else (PALE if r % 2 == 0 else None)
    head = lambda r, c: "#ffffff" if r == 0 else None
    rows = [("Maximum power", "P_{max}", "W", "pmax_w"), ("Voltage at maximum power", "V_{mp}", "V", "vmp_v"), ("Current at maximum power", "I_{mp}", "A", "imp_a"), ("Open circuit voltage", "V_{oc}", "V", "voc_v"), ("Short circuit current", "I_{sc}", "A", "isc_a")]
    cols = [150, 45, 40, 70, 70, 70, 70]
    stc = [["ELECTRICAL DATA | STC", "", ""] + [f"{m['stc']['pmax_w']} W" for m in ms]]
    stc += [[a, b, u] + [m["stc"][k] for m in ms] for a, b, u, k in rows] + [["Module efficiency", "η", "%"] + [m["stc"]["efficiency_pct"] for m in ms], ["Power tolerance", "", "%", ("0 ~ +3", 4), None, None, None]]
    noct = [["ELECTRICAL DATA | NOCT", "", ""] + [f"{m['stc']['pmax_w']} W" for m in ms]] + [[a, b, u] + [m["noct"][k] for m in ms] for a, b, u, k in rows]
    d.frame(x, 66, w, 120, d.table(stc, cols, fills=band, colour=head, bold_rows=(0,)) + d.p("STC: irradiance 1000 W/m^{2}, cell temperature 25 °C, air mass 1.5. Typical relative efficiency at 200 W/m^{2} and 25 °C: 96.5 % of the STC efficiency.", size=6))
    d.frame(x, 198, w, 90, d.table(noct, cols, fills=band, colour=head, bold_rows=(0,)) + d.p("NOCT: irradiance 800 W/m^{2}, ambient temperature 20 °C, wind speed 1 m/s.", size=6))
    mech = [["MECHANICAL DATA", ""], ["Solar cells", "polycrystalline 156.75 × 156.75 mm, 5 busbars"], ["Cell arrangement", "60 cells (6 × 10)"], ["Dimensions", "1650 × 992 × 40 mm (64.96 × 39.06 × 1.57 inches)"], ["Weight", "18.6 kg (41.0 lb)"], ["Glass", "3.2 mm (0.13 inches) solar glass"],
            ["Back sheet", "white"], ["Frame", "Anodized aluminum"], ["Junction box", "IP67 with 3 bypass diodes"], ["Cables", "4 mm^{2}, 2 × 900 mm"], ["Connector", "Quay-4 compatible"]]
    temp = [["TEMPERATURE", ""], ["NOCT", "45 °C (±2 °C)"], ["Temperature coefficient of P_{max}", "−0.40 %/K"], ["Temperature coefficient of V_{oc}", "−0.33 %/K"], ["Temperature coefficient of I_{sc}", "0.058 %/K"]]
    lim = [["MAXIMUM RATINGS", ""], ["Operating temperature", "−40 to +85 °C"], ["Maximum system voltage", "1000 V DC"], ["Max. series fuse rating", "15 A"], ["Snow load, front", "5400 Pa"], ["Wind load, rear", "2400 Pa"]]
    pack = [["PACKING", "20' GP", "40' HQ"], ["Modules per pallet", "26", "26"], ["Pallets per container", "12", "28"], ["Modules per container", "312", "728"]]
    t = lambda rows_, cw: d.table(rows_, cw, fills=band, colour=head, bold_rows=(0,))
    d.frame(x, 300, 290, 150, t(mech, [85, 205]))
    d.frame(345, 300, 210, 150, t(temp, [130, 80]))
    d.frame(345, 380, 210, 100, t(lim, [130, 80]))
    d.frame(345, 474, 210, 60, t(pack, [110, 50, 50]))
    draw, dw, dh = art.drawing(L, W, D, 10, 6, h=205, half=False, holes=(860, 1300), inch=True)
    d.picture(x, 480, draw, dw, dh)
    m = design.diodes[1]
    d.picture(330, 548, art.iv([m.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 225, 140, title="260 W module"), 225, 140)
    d.frame(x, 745, w, 30, d.p("Read the installation manual before use. Electrical work only by licensed persons under the rules of the place. Specifications may change without notice.", size=6))
    d.frame(x, 790, w, 24, d.p(foot + "      " + rec["revision"], size=6.5, colour="#ffffff"), fill=GREEN, pad=4)
    libreoffice(d.xml("HG-P60"), ".fodt", out)
