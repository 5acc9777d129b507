"""kr-hc108: the clean one. Six classes, STC, NMOT, BNPI, rear gain, every block of the record."""
import art
from design import Design
from producers import chromium, svg
from record import N, num
from sheets import kr

NAME = "kr-hc108"
L, W, D = "1722", "1134", "30"
design = Design(54, 400, 5, 6, (36.88, .17), (13.70, .06), .046, -.275, 1.722 * 1.134)


def record():
    models = []
    for k, w in enumerate(design.watts):
        stc = design.stc(k)
        m = {"name": f"KR-HC108-M10-{w}", "stc": stc, "nmot": design.cond(k, .8, 43, pd=1),
             "bnpi": design.cond(k, 1 + .135 * .70, 25)}
        if w == 410:
            m["rear_gain"] = [design.gain(k, g, stc) for g in (5, 10, 15, 20, 25)]
        models.append(m)
    return {
        "maker": "Kestrel Ridge Solar", "series": "KR-HC108-M10", "revision": "KR-DS-108M10-EN V2.1", "issued": "2024-03", "language": "en",
        "cell": {"technology": "mono-perc", "count": N(108), "arrangement": "6x18", "cut": "half", "width_mm": N(182), "height_mm": N(91), "busbars": N(10)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("24.5"), "front_glass_mm": N("2.0"), "rear_glass_mm": N("2.0"),
                 "cable_mm2": N(4), "cable_length_mm": [N(1200), N(1200)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "KR-Lock 4", "frame": "Anodised aluminium alloy"},
        "bifacial": {"factor_pct": N(70), "factor_tolerance_pct": N(5)},
        "thermal": {"nmot_c": N(43), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.046"), "beta_voc_pct_per_k": N("-0.275"), "gamma_pmax_pct_per_k": N("-0.325")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400),
                   "safety_class": "II", "fire_class": "C"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "voc_pct": N(3), "isc_pct": N(3), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1), "air_mass": N("1.5")},
                       "bnpi": {"irradiance_w_m2": N(1000), "rear_irradiance_w_m2": N(135), "cell_c": N(25)}},
        "warranty": {"product_years": N(12), "performance_years": N(30), "first_year_loss_pct": N(2), "annual_loss_pct": N("0.45"), "final_output_pct": N("84.95")},
        "packing": {"modules_per_pallet": N(36), "pallets_per_container": N(26), "modules_per_container": N(936)},
        "certificates": ["IEC 61215", "IEC 61730", "IEC 61701", "IEC 62716", "IEC TS 62804-1"],
        "low_light": {"irradiance_w_m2": N(200), "relative_efficiency_pct": N(97)},
        "models": models,
    }


def build(rec, out):
    ms, t, lim, war, body = rec["models"], rec["thermal"], rec["limits"], rec["warranty"], rec["body"]
    names = [m["name"] for m in ms]
    best = ms[-1]["stc"]["efficiency_pct"]
    wid = "28% 12% 12% 12% 12% 12% 12%"
    rows = [("Maximum Power (Pmax/W)", "pmax_w"), ("Open Circuit Voltage (Voc/V)", "voc_v"), ("Short Circuit Current (Isc/A)", "isc_a"),
            ("Maximum Power Voltage (Vmp/V)", "vmp_v"), ("Maximum Power Current (Imp/A)", "imp_a")]
    graph = art.warranty(30, war["first_year_loss_pct"], "0.45", war["final_output_pct"], "97.5", "0.7", "80.7", own="KR-HC108-M10", std="Standard module", added="Linear power warranty")
    page1 = kr.front("KR-HC108-M10", "400–425 W", "Bifacial mono PERC half-cell module, glass–glass",
                     "Built for roofs that see weather from both sides. The HC108 pairs ten-busbar half cells with two panes of heat-strengthened glass, so that what the ground reflects is not lost.",
                     [(f"{best}%", "maximum module efficiency"), ("0 ~ +5 W", "positive sorting only"), ("12 years", "product warranty"), ("30 years", "linear power warranty")],
                     [("Light from below", "Up to 25% more power from the rear side, depending on ground and mounting."), ("Half cells, half the loss", "Two halves in parallel keep working when the lower one is shaded."),
                      ("Slow to age", "At most 2% in the first year and 0.45% a year after that; 84.95% after 30 years."),
                      ("Cool in summer", f"Power falls by only {t['gamma_pmax_pct_per_k'].lstrip('-')}% a kelvin."), ("Snow and storm", "Tested to 5400 Pa front and 2400 Pa rear.")],
                     ["IEC 61215, IEC 61730", "IEC 61701 (salt mist), IEC 62716 (ammonia)", "IEC TS 62804-1 (PID)"], svg(graph, 230, 130), rec["revision"])
    draw, dw, dh = art.drawing(L, W, D, 18, 6, h=165, cable="1200")
    d410 = design.diodes[2]
    ivs = art.iv([d410.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 235, 150, title="KR-HC108-M10-410, cell temperature 25 °C", power=True)
    gains = ms[2]["rear_gain"]
    page2 = f"""<div class=page><div style="padding:9mm 14mm 0">
<div style="display:flex;justify-content:space-between;align-items:center">{kr.LOGO}<div style="font-size:14pt;font-weight:900;color:#0d3b4f">KR-HC108-M10 400–425 W</div></div>
<h2>Electrical characteristics at STC*</h2>{kr.electrical(ms, "stc", names, rows + [("Module Efficiency (%)", "efficiency_pct")], wid)}
<h2>Electrical characteristics at NMOT**</h2>{kr.electrical(ms, "nmot", names, rows, wid)}
<h2>Bifacial nameplate irradiance (BNPI***)</h2>{kr.electrical(ms, "bnpi", names, rows, wid)}
<div class=note>* STC: irradiance 1000 W/m², cell temperature 25 °C, AM 1.5. ** NMOT: irradiance 800 W/m², ambient temperature 20 °C, AM 1.5, wind speed 1 m/s. *** BNPI: front 1000 W/m², rear 135 W/m², cell temperature 25 °C.
Measurement uncertainty of Pmax ±3%; tolerance of Voc and Isc ±3%. At 200 W/m², at least 97% of the STC efficiency is reached.</div>
<div class=two><div>
<h2>Mechanical data</h2>{kr.table(None, [["Cell type", "Mono PERC, half cell 182 × 91 mm, 10 busbars"], ["Number of cells", "108 (6 × 18)"], ["Dimensions", f"{L} × {W} × {D} mm"], ["Weight", f"{body['mass_kg']} kg"],
  ["Front glass", "2.0 mm heat-strengthened, anti-reflective"], ["Rear glass", "2.0 mm heat-strengthened"], ["Frame", body["frame"]], ["Junction box", "IP68, 3 bypass diodes"],
  ["Cable", "4 mm², (+) 1200 mm / (−) 1200 mm"], ["Connector", body["connector"]]], "30% 70%")}
<h2>Rear side power gain (KR-HC108-M10-410)</h2>{kr.table(["Gain"] + [f"{g['gain_pct']}%" for g in gains], [[l, *(g[k] for g in gains)] for l, k in rows], "50% 10% 10% 10% 10% 10%")}
</div><div>
<h2>Temperature coefficients</h2>{kr.table(None, [["Nominal module operating temperature (NMOT)", "43 ± 2 °C"], ["Temperature coefficient of Pmax", t["gamma_pmax_pct_per_k"] + " %/°C"], ["Temperature coefficient of Voc", t["beta_voc_pct_per_k"] + " %/°C"],
  ["Temperature coefficient of Isc", "+" + t["alpha_isc_pct_per_k"] + " %/°C"]], "66% 34%")}
<h2>Operating limits</h2>{kr.table(None, [["Maximum system voltage", "1500 V DC (IEC)"], ["Maximum series fuse rating", "25 A"], ["Operating temperature", "−40 °C ~ +85 °C"], ["Power tolerance", "0 ~ +5 W"], ["Bifaciality", "70 ± 5 %"],
  ["Max. static load, front / rear", "5400 Pa / 2400 Pa"], ["Protection class", "Class II"], ["Fire rating", "Class C"]], "55% 45%")}
<h2>Packing (40' HC)</h2>{kr.table(None, [["Modules per pallet", "36"], ["Pallets per container", "26"], ["Modules per container", "936"], ["Pallet size", "1755 × 1120 × 1260 mm"]], "55% 45%")}
</div></div>
<div style="display:flex;justify-content:space-between;margin-top:5pt">{svg(draw, dw, dh)}{svg(ivs, 235, 150)}</div></div>
<div class=foot><span>Values are subject to change without notice. Installation only by qualified persons and according to local code. © 2024-03 Kestrel Ridge Solar</span><span>{rec["revision"]}</span></div></div>"""
    chromium(f'<!doctype html><html lang=en><meta charset=utf-8><title>KR-HC108-M10</title><style>{kr.CSS}</style>{page1}{page2}</html>', out)
