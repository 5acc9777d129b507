"""kr-duo: Kestrel Ridge Solar; two series on one sheet (two records), their electrical tables stacked, their mechanical values in two columns of one table; Chromium."""
import art
from design import Design
from producers import chromium, svg
from record import N
from sheets import kr

NAME = "kr-duo"
A = dict(series="KR-HC96-N", L="1762", W="1134", D="30", mass="21.4", count=96, arr="6x16", pallet=36, container=936, cont_p=26, design=Design(48, 430, 5, 3, (34.30, .14), (15.84, .07), .045, -.25, 1.762 * 1.134, effd=2))
B = dict(series="KR-HC120-N", L="2172", W="1134", D="35", mass="27.1", count=120, arr="6x20", pallet=31, container=682, cont_p=22, design=Design(60, 530, 5, 3, (42.90, .16), (15.62, .06), .045, -.25, 2.172 * 1.134, effd=2))


def one(s):
    d = s["design"]
    return {
        "maker": "Kestrel Ridge Solar", "series": s["series"], "revision": "KR-DS-N-EN V1.0", "issued": "2024-06", "language": "en",
        "cell": {"technology": "topcon", "count": N(s["count"]), "arrangement": s["arr"], "cut": "half"},
        "body": {"length_mm": N(s["L"]), "width_mm": N(s["W"]), "depth_mm": N(s["D"]), "mass_kg": N(s["mass"]), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1200)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "KR-Lock 4", "frame": "Anodised aluminium alloy"},
        "thermal": {"nmot_c": N(44), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.045"), "beta_voc_pct_per_k": N("-0.250"), "gamma_pmax_pct_per_k": N("-0.290")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(30), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(20), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.40"), "final_output_pct": N("87.4")},
        "packing": {"modules_per_pallet": N(s["pallet"]), "pallets_per_container": N(s["cont_p"]), "modules_per_container": N(s["container"])},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"{s['series']}-{w}", "stc": d.stc(k), "nmot": d.cond(k, .8, 44, pd=1)} for k, w in enumerate(d.watts)],
    }


def record():
    return [one(A), one(B)]


def build(recs, out):
    rows = [("Maximum Power (Pmax) [W]", "pmax_w"), ("Open Circuit Voltage (Voc) [V]", "voc_v"), ("Short Circuit Current (Isc) [A]", "isc_a"), ("Voltage at Maximum Power (Vmp) [V]", "vmp_v"), ("Current at Maximum Power (Imp) [A]", "imp_a")]

    def block(r):
        ms = r["models"]
        wid = "28% 12% 12% 12% 12% 12% 12%"
        head = [r["series"]] + [(m["name"], 2) for m in ms]
        body = [["Condition"] + ["STC", "NMOT"] * 3] + [[a] + [m[c][k] for m in ms for c in ("stc", "nmot")] for a, k in rows] + [["Module Efficiency [%]"] + [(m["stc"]["efficiency_pct"], 2) for m in ms]]
        return kr.table(head, body, wid)

    graph = art.warranty(30, "1", "0.40", "87.4", "98", "0.55", "84.8", own="Kestrel Ridge N series", std="Standard module", added="Added value")
    page1 = kr.front("KR-HC96-N / KR-HC120-N", "430–440 W / 530–540 W", "N-type TOPCon half-cell modules, one frame style, two sizes", "One cell, two sizes: the small one for the roof a person can carry a module onto, the large one for the yard.",
                     [(recs[1]["models"][-1]["stc"]["efficiency_pct"] + "%", "maximum module efficiency"), ("0 ~ +5 W", "power tolerance"), ("20 years", "product warranty"), ("30 years", "linear power warranty")],
                     [("One family", "The same connectors, clamps and torque for both."), ("N-type", "No boron–oxygen degradation; at most 1% in the first year, 0.40% a year after that."), ("Strong", "5400 Pa front, 2400 Pa rear."), ("Cool", "NMOT of 44 °C.")],
                     ["IEC 61215, IEC 61730"], svg(graph, 230, 130), recs[0]["revision"])
    a, b = A, B
    two = lambda k, l, f=lambda v: v: [l, f(a[k]), f(b[k])]
    mech = [["Number of cells", "96 (6 × 16)", "120 (6 × 20)"], ["Dimensions", "1762 × 1134 × 30 mm", "2172 × 1134 × 35 mm"], two("mass", "Weight", lambda v: v + " kg"), ["Modules per pallet", "36", "31"], ["Pallets per container (40' HC)", "26", "22"], ["Modules per container (40' HC)", "936", "682"]]
    both = [["Cell type", "N-type TOPCon, half cells"], ["Front glass", "3.2 mm tempered, AR coated"], ["Frame", "Anodised aluminium alloy"], ["Junction box", "IP68, 3 bypass diodes"], ["Cable", "4 mm², 1200 mm"], ["Connector", "KR-Lock 4"]]
    lim = [["Maximum system voltage", "1500 V DC"], ["Maximum series fuse rating", "30 A"], ["Operating temperature", "−40 °C ~ +85 °C"], ["Power tolerance", "0 ~ +5 W"], ["Max. static load, front / rear", "5400 Pa / 2400 Pa"], ["Protection class", "Class II"]]
    temp = [["NMOT", "44 ± 2 °C"], ["Temperature coefficient of Pmax", "−0.290 %/°C"], ["Temperature coefficient of Voc", "−0.250 %/°C"], ["Temperature coefficient of Isc", "+0.045 %/°C"]]
    d1, w1, h1 = art.drawing(a["L"], a["W"], a["D"], 16, 6, h=180, holes=(990,), labels=("KR-HC96-N", "", ""))
    d2, w2, h2 = art.drawing(b["L"], b["W"], b["D"], 20, 6, h=180, holes=(1400,), labels=("KR-HC120-N", "", ""))
    page2 = f"""<div class=page><div style="padding:9mm 14mm 0"><div style="display:flex;justify-content:space-between;align-items:center">{kr.LOGO}<div style="font-size:14pt;font-weight:900;color:#0d3b4f">KR-HC96-N and KR-HC120-N</div></div>
<h2>Electrical characteristics of KR-HC96-N</h2>{block(recs[0])}
<h2>Electrical characteristics of KR-HC120-N</h2>{block(recs[1])}
<div class=note>STC: irradiance 1000 W/m², cell temperature 25 °C, AM 1.5. NMOT: irradiance 800 W/m², ambient temperature 20 °C, wind speed 1 m/s. Measurement uncertainty of Pmax ±3%.</div>
<h2>Mechanical data by series</h2>{kr.table(["", "KR-HC96-N", "KR-HC120-N"], mech, "40% 30% 30%")}
<div class=two><div><h2>Common mechanical data</h2>{kr.table(None, both, "40% 60%")}</div><div><h2>Operating limits</h2>{kr.table(None, lim, "55% 45%")}</div></div>
<h2>Temperature coefficients (both series)</h2>{kr.table(None, temp, "50% 50%")}
<div style="display:flex;justify-content:space-between;margin-top:8pt">{svg(d1, w1, h1)}{svg(d2, w2, h2)}</div></div>
<div class=foot><span>Values are subject to change without notice. Installation only by qualified persons and according to local code. © 2024-06 Kestrel Ridge Solar</span><span>{recs[0]["revision"]}</span></div></div>"""
    chromium(f'<!doctype html><html lang=en><meta charset=utf-8><title>KR-HC-N</title><style>{kr.CSS} h1{{font-size:24pt}}</style>{page1}{page2}</html>', out)
