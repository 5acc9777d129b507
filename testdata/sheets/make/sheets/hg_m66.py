"""hg-m66: Harbour Glass Modules; every class has two names (1000 V and 1500 V), split over two head lines ("HGM…/" over "500/QX"), coefficients printed per class in mV/°C and mA/°C
beside the relative ones, PTC rating, a low irradiance line as a loss, stacked values (IEC over UL voltage, front over rear load), a storage mass as decoy, opens without a password though
encrypted; LibreOffice, then pikepdf."""
import art
from design import Design
from fodt import Doc
from producers import libreoffice
from record import N, num

NAME = "hg-m66"
L, W, D = "2094", "1134", "35"
design = Design(66, 490, 5, 4, (45.30, .18), (13.72, .05), .048, -.27, 2.094 * 1.134)


def ptc(k):
    d = design.diodes[k]
    eta = design.watts[k] / design.area / 1000
    return d.at(1, 20 + 1.25 * 25 * (1 - eta / .9)).mpp()[0]


def record():
    models = []
    for k, w in enumerate(design.watts):
        d = design.diodes[k]
        models.append({"name": f"HGM1000/{w}/QX", "aliases": [f"HGM1500/{w}/QX"], "stc": design.stc(k), "noct": design.cond(k, .8, 45, pd=1), "ptc_w": num(ptc(k), 1),
                       "thermal": {"alpha_isc_a_per_k": num(.00048 * d.isc, 4), "beta_voc_v_per_k": num(-.0027 * d.voc, 4)}})
    return {
        "maker": "Harbour Glass Modules", "series": "HGM-66", "revision": "HGM-M66-EN Rev. A 02/2022", "language": "en",
        "cell": {"technology": "mono-perc", "count": N(132), "arrangement": "6x22", "cut": "half", "width_mm": N(182), "height_mm": N(91)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("25.8"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(350), N(350)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "Quay-4 compatible", "frame": "Anodized aluminum"},
        "thermal": {"noct_c": N(45), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.048"), "beta_voc_pct_per_k": N("-0.27"), "gamma_pmax_pct_per_k": N("-0.32")},
        "limits": {"system_voltage_v": [N(1000), N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_pct": N(3), "power_minus_pct": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(12), "performance_years": N(25), "first_year_loss_pct": N("2.5"), "annual_loss_pct": N("0.6"), "final_output_pct": N("83.1")},
        "packing": {"modules_per_pallet": N(31), "pallets_per_container": N(22), "modules_per_container": N(682)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "low_light": {"irradiance_w_m2": N(200), "relative_efficiency_pct": N("96.5")},
        "models": models,
    }


GREEN, PALE = "#1f6f5c", "#e3efeb"


def build(rec, out):
    import pikepdf
    d = Doc("DejaVu Sans", size=6.6)
    ms = rec["models"]
    x, w = 40, 515
    d.picture(0, 0, art.hero(595.3, 430, rows=11, cols=6, sky=("#eaf3f1", "#8fbfb1"), cell="#101c30"), 595.3, 430)
    d.frame(x, 30, 240, 40, d.p("HARBOUR GLASS", size=17, bold=True, colour=GREEN) + d.p("M O D U L E S", size=8, colour=GREEN), fill="#ffffff", pad=6)
    d.frame(x, 345, 330, 60, d.p("HGM-66 Series", size=24, bold=True, colour="#ffffff") + d.p("490 W · 495 W · 500 W · 505 W", size=13, colour="#ffffff"), fill=GREEN, pad=8)
    d.frame(x, 450, 250, 200, d.p("132 half cells, mono PERC", size=13, bold=True, colour=GREEN, space=5) + "".join(d.p("■  " + s, size=8, space=3) for s in ("Two system voltages, one frame", "Power tolerance 0 ~ +3 %", "Tested to 5400 Pa in front, 2400 Pa at the rear", "Efficiency loss from 1000 W/m^{2} to 200 W/m^{2}: 3.5 %")))
    d.frame(320, 450, 235, 20, d.p("12-year product warranty", size=10, bold=True, colour=GREEN) + d.p("25-year linear power warranty", size=10, bold=True, colour=GREEN))
    d.picture(320, 485, art.warranty(25, "2.5", "0.6", "83.1", "97", "0.7", "80.2", colour=GREEN, own="HGM-66", std="Standard module", pct="{} %"), 230, 130)
    d.frame(320, 622, 235, 30, d.p("97.5 % in the first year; degradation of 0.6 % a year; 83.1 % at year 25.", size=7))
    d.frame(x, 690, w, 30, d.p("Certificates: IEC 61215 · IEC 61730", size=8.5, bold=True))
    foot = "Harbour Glass Modules Ltd. · Slipway 3, Saltmere Harbour SH2 · +00 88 555 0190 · hello@harbourglass.example"
    d.frame(x, 790, w, 20, d.p(foot, size=6.5, colour="#555555"))
    d.page = 2
    d.frame(x, 28, w, 26, d.p("HGM-66   490–505 W", size=16, bold=True, colour=GREEN))
    band = lambda r, c: GREEN if r < 2 else (PALE if r % 2 else None)
    white = lambda r, c: "#ffffff" if r < 2 else None
    watts = [m["stc"]["pmax_w"] for m in ms]
    head = lambda t: [[(t, 1, 2)] + ["HGM1000/"] * 4, [None] + [f"{v}/QX" for v in watts]]
    q = [("Maximum power P_{max} [W]", "pmax_w"), ("Maximum power voltage V_{mp} [V]", "vmp_v"), ("Maximum power current I_{mp} [A]", "imp_a"), ("Open circuit voltage V_{oc} [V]", "voc_v"), ("Short circuit current I_{sc} [A]", "isc_a")]
    cols = [195, 80, 80, 80, 80]
    stc = head("Electrical data at STC") + [[a] + [m["stc"][k] for m in ms] for a, k in q] + [["Module efficiency [%]"] + [m["stc"]["efficiency_pct"] for m in ms], ["PTC rating [W]"] + [m["ptc_w"] for m in ms],
           ["Temperature coefficient V_{oc} [mV/°C]"] + [num(1000 * float(m["thermal"]["beta_voc_v_per_k"]), 1).replace("-", "−") for m in ms], ["Temperature coefficient I_{sc} [mA/°C]"] + [num(1000 * float(m["thermal"]["alpha_isc_a_per_k"]), 1) for m in ms]]
    noct = head("Electrical data at NOCT") + [[a] + [m["noct"][k] for m in ms] for a, k in q]
    d.frame(x, 58, w, 100, d.table(stc, cols, fills=band, colour=white, bold_rows=(0, 1)) + d.p("STC: irradiance 1000 W/m^{2}, cell temperature 25 °C, AM 1.5. All classes also as HGM1500/xxx/QX for 1500 V systems.", size=5.6))
    d.frame(x, 250, w, 100, d.table(noct, cols, fills=band, colour=white, bold_rows=(0, 1)) + d.p("NOCT: irradiance 800 W/m^{2}, ambient temperature 20 °C, wind speed 1 m/s.", size=5.6))
    one = lambda rows, cw: d.table(rows, cw, fills=lambda r, c: GREEN if r == 0 else (PALE if r % 2 == 0 else None), colour=lambda r, c: "#ffffff" if r == 0 else None, bold_rows=(0,), align=lambda r, c: "left")
    d.frame(x, 372, 262, 100, one([["Mechanical data", ""], ["Cells", "132 (6 × 22) mono PERC half cells, 182 × 91 mm"], ["Dimensions", "2094 × 1134 × 35 mm"], ["Weight", "25.8 kg"], ["Glass", "3.2 mm, tempered"], ["Frame", "Anodized aluminum"], ["Junction box", "IP68, 3 bypass diodes"], ["Cables", "4 mm^{2}, (+) 350 mm, (−) 350 mm"], ["Connector", "Quay-4 compatible"]], [82, 180]))
    d.frame(312, 372, 243, 100, one([["Limits and temperatures", ""], ["Maximum system voltage", "1000 V (HGM1000)\n1500 V (HGM1500)"], ["Max. static load", "5400 Pa (front)\n2400 Pa (rear)"], ["Max. series fuse", "25 A"], ["Operating temperature", "−40 °C to +85 °C"], ["Safety class", "II"], ["NOCT", "45 ± 2 °C"], ["Temperature coefficient P_{max}", "−0.32 %/°C"], ["Temperature coefficient V_{oc}", "−0.27 %/°C"], ["Temperature coefficient I_{sc}", "+0.048 %/°C"]], [130, 113]))
    d.frame(x, 505, 262, 40, one([["Packing (40' HC)", ""], ["Modules per pallet / pallets / modules", "31 / 22 / 682"], ["Pallet gross weight", "850 kg"]], [160, 102]))
    draw, dw, dh = art.drawing(L, W, D, 22, 6, h=195, holes=(1100, 1400))
    d.picture(x, 565, draw, dw, dh)
    m = design.diodes[2]
    d.picture(330, 575, art.iv([m.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 225, 150, title="500 W class"), 225, 150)
    d.frame(x, 790, w, 20, d.p("Electrical work only by licensed persons under the rules of the place. Values may change without notice.   " + rec["revision"], size=5.8, colour="#555555"))
    libreoffice(d.xml("HGM-66"), ".fodt", out)
    with pikepdf.open(out, allow_overwriting_input=True) as pdf:
        pdf.save(out, encryption=pikepdf.Encryption(user="", owner="quay", R=3, aes=False, metadata=False, allow=pikepdf.Permissions(modify_other=False)), static_id=True)
