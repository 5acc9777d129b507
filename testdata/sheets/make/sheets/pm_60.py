"""pm-60: Prairie Mast Energy, United States style on Letter paper; inches, pounds, psf, AWG and degrees Fahrenheit only, 600/1000 V, UL fire type, model names as a pattern with bare watts; LibreOffice."""
import art
from design import Design
from fodt import Doc
from producers import libreoffice
from record import INCH, LB, PSF, N, converted

NAME = "pm-60"
L, W, D = "66.3", "39.4", "1.57"
area = 66.3 * 39.4 * .0254 ** 2
design = Design(60, 300, 5, 4, (39.60, .2), (9.68, .05), .05, -.29, area)


def record():
    return {
        "maker": "Prairie Mast Energy", "series": "PM60M", "revision": "PME-60M-US-1018", "issued": "2018-10", "language": "en",
        "cell": {"technology": "mono-perc", "count": N(60), "arrangement": "6x10"},
        "body": {"length_mm": converted(L, INCH), "width_mm": converted(W, INCH), "depth_mm": converted(D, INCH), "mass_kg": converted("41.9", LB), "front_glass_mm": converted("0.126", INCH), "cable_length_mm": [converted("39.4", INCH)], "bypass_diodes": N(3), "junction_box_ip": "IP67", "connector": "MastLink"},
        "thermal": {"noct_c": converted("113", 1 / 1.8, -32), "noct_tolerance_c": converted("3.6", 1 / 1.8), "alpha_isc_pct_per_k": N("0.05"), "beta_voc_pct_per_k": N("-0.29"), "gamma_pmax_pct_per_k": N("-0.35")},
        "limits": {"system_voltage_v": [N(1000)], "series_fuse_a": N(20), "temperature_min_c": converted("-40", 1 / 1.8, -32), "temperature_max_c": converted("185", 1 / 1.8, -32), "front_load_pa": converted("113", PSF), "rear_load_pa": converted("50", PSF), "fire_class": "Type 1"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": converted("68", 1 / 1.8, -32), "wind_m_s": N(1), "air_mass": N("1.5")}},
        "warranty": {"product_years": N(12), "performance_years": N(25), "first_year_loss_pct": N("2.5"), "annual_loss_pct": N("0.7"), "final_output_pct": N("80.7")},
        "certificates": ["UL 1703", "IEC 61215"],
        "_converted": ["/body/length_mm", "/body/width_mm", "/body/depth_mm", "/body/mass_kg", "/body/front_glass_mm", "/body/cable_length_mm/0", "/thermal/noct_c", "/thermal/noct_tolerance_c",
                       "/limits/temperature_min_c", "/limits/temperature_max_c", "/limits/front_load_pa", "/limits/rear_load_pa", "/conditions/noct/ambient_c"],
        "models": [{"name": f"PM60M-{w}", "stc": design.stc(k, vd=1), "noct": design.cond(k, .8, 45, vd=1)} for k, w in enumerate(design.watts)],
    }


OX, GOLD = "#7a1f1f", "#e8b93c"


def build(rec, out):
    d = Doc("Lato", "en", "US", 7.8)
    ms = rec["models"]
    W_, H_ = 612, 792
    d.picture(0, 0, art.hero(612, 400, rows=10, cols=6, sky=("#fdf6e3", "#e2b56a"), cell="#17254a", frame="#d0d3d6"), 612, 400)
    d.frame(36, 24, 300, 36, d.p("PRAIRIE MAST", size=22, bold=True, colour=OX) + d.p("E N E R G Y", size=9, colour=OX))
    d.frame(36, 310, 260, 70, d.p("PM60M", size=30, bold=True, colour=GOLD) + d.p("300 W | 305 W | 310 W | 315 W", size=13, colour="#ffffff") + d.p("60-cell mono PERC module", size=9, colour="#ffffff"), fill=OX, pad=9)
    d.frame(36, 425, 260, 200, "".join(d.p(a, size=11, bold=True, colour=OX) + d.p(b, size=8.5, space=6) for a, b in (("Made for wide skies", "Hail, dust, and a wind that starts three counties away."), ("Positive sorting", "0 to +5 W on every module."), ("Strong", "113 psf snow load, 50 psf wind load."), ("12-year product warranty", "25-year linear power warranty: 97.5% in the first year, 0.7% a year after that, 80.7% in year 25."))))
    d.picture(320, 425, art.warranty(25, "2.5", "0.7", "80.7", "90", "0", "80", w=250, h=140, colour=OX, own="PM60M", std="Conventional warranty"), 250, 140)
    d.frame(320, 580, 250, 30, d.p("Listed to UL 1703, IEC 61215 · Fire performance Type 1", size=8))
    d.frame(36, 750, 540, 20, d.p("Prairie Mast Energy LLC · 1 Mast Road, Prairie Mast · (000) 555-0117 · sales@prairiemast.example", size=7.5, colour="#555555"))
    d.page = 2
    d.frame(36, 26, 540, 26, d.p("PM60M-xxx   Electrical and mechanical data", size=15, bold=True, colour=OX))
    band = lambda r, c: OX if r == 0 else ("#f6efe0" if r % 2 == 0 else None)
    white = lambda r, c: "#ffffff" if r == 0 else None
    q = [("Nominal Power - P_{max} (Wp)", "pmax_w"), ("Nominal Power Voltage - V_{mpp} (V)", "vmp_v"), ("Nominal Power Current - I_{mpp} (A)", "imp_a"), ("Open Circuit Voltage - V_{oc} (V)", "voc_v"), ("Short Circuit Current - I_{sc} (A)", "isc_a")]
    cols = [190, 45, 45, 45, 45]
    stc = [["ELECTRICAL DATA @ STC", ("Product Code: PM60M-xxx", 4), None, None, None]] + [[a] + [m["stc"][k] for m in ms] for a, k in q]
    stc.insert(2, ["Watt Class Sorting (W)"] + ["-0/+5"] * 4)
    stc += [["Panel Efficiency (%)"] + [m["stc"]["efficiency_pct"] for m in ms]]
    noct = [["ELECTRICAL DATA @ NOCT", ("Product Code: PM60M-xxx", 4), None, None, None]] + [[a] + [m["noct"][k] for m in ms] for a, k in q]
    # the right column, in a coloured box as such sheets have it
    right = [["GENERAL DATA", ""], ["Cell type", "60 mono PERC cells, 6 strings of 10"], ["Dimensions", '66.3" x 39.4" x 1.57"'], ["Weight", "41.9 lbs"], ["Glass", '0.126" solar glass'], ["Junction box", "IP67, 3 bypass diodes"], ["Cable", '12 AWG, 39.4"'], ["Connector", "MastLink"]]
    lim = [["MAXIMUM RATINGS", ""], ["Operational temperature", "-40 ... +185°F"], ["Maximum system voltage", "1000 V"], ["Snow load (front)", "113 psf"], ["Wind load (rear)", "50 psf"], ["Max series fuse rating", "20 A"], ["Fire type", "Type 1"]]
    temp = [["TEMPERATURE RATINGS", ""], ["NOCT", "113°F (±3.6°F)"], ["Temp. coefficient P_{max}", "-0.35 %/°C"], ["Temp. coefficient V_{oc}", "-0.29 %/°C"], ["Temp. coefficient I_{sc}", "0.05 %/°C"]]
    t = lambda rows, cw: d.table(rows, cw, fills=band, colour=white, bold_rows=(0,), align=lambda r, c: "left" if c == 0 else "right", size=7.2)
    d.frame(36, 60, 370, 100, d.table(stc, cols, fills=band, colour=white, bold_rows=(0,)) + d.p("Values at standard test conditions (air mass AM 1.5, irradiance 1000 W/m^{2}, cell temperature 25°C). xxx indicates the nominal power class (P_{max}).", size=6))
    d.frame(36, 200, 370, 90, d.table(noct, cols, fills=band, colour=white, bold_rows=(0,)) + d.p("Nominal operating cell temperature (800 W/m^{2}, air mass AM 1.5, windspeed 1 m/s, ambient temperature 68°F).", size=6))
    d.frame(418, 60, 160, 90, t(right, [62, 98]))
    d.frame(418, 190, 160, 90, t(lim, [92, 68]))
    d.frame(418, 300, 160, 70, t(temp, [92, 68]))
    draw, dw, dh = art.drawing("1684", "1001", "40", 10, 6, h=230, half=False, holes=(), extra=False, fmt=lambda s: {"1684": '66.3"', "1001": '39.4"', "40": '1.57"', "953": '37.5"'}[s])
    d.picture(40, 330, draw, dw, dh)
    m = design.diodes[1]
    d.picture(40, 575, art.iv([m.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 250, 155, title="PM60M-305"), 250, 155)
    d.frame(320, 620, 256, 60, d.p("Caution: read the safety and installation manual. All wiring and over-current protection by licensed electricians under the National Electrical Code and local code.", size=7))
    d.frame(36, 750, 540, 20, d.p("Specifications are subject to change without notice. October 2018    " + rec["revision"], size=6.5, colour="#555555"))
    libreoffice(d.xml("PM60M").replace('fo:page-width="595.3pt" fo:page-height="841.9pt"', 'fo:page-width="612pt" fo:page-height="792pt"'), ".fodt", out)
