"""kr-hc144-demo: the demo, with four planted mistakes that the families stc/ and thermal/ must find."""
import art
from design import Design
from producers import chromium, svg
from record import N, plant
from sheets import kr

NAME = "kr-hc144-demo"
L, W, D = "2278", "1134", "35"
design = Design(72, 535, 5, 5, (49.20, .16), (13.72, .05), .048, -.270, 2.278 * 1.134, effd=2)


def record():
    rec = {
        "maker": "Kestrel Ridge Solar", "series": "KR-HC144-M10", "revision": "KR-DS-144M10-EN V1.4", "issued": "2023-11", "language": "en",
        "cell": {"technology": "mono-perc", "count": N(144), "arrangement": "6x24", "cut": "half", "width_mm": N(182), "height_mm": N(91)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("27.8"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(400), N(200)],
                 "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "KR-Lock 4", "frame": "Anodised aluminium alloy, silver"},
        "thermal": {"nmot_c": N(43), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.048"), "beta_voc_pct_per_k": N("-0.270"), "gamma_pmax_pct_per_k": N("-0.320")},
        "limits": {"system_voltage_v": [N(1000), N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1), "air_mass": N("1.5")}},
        "warranty": {"product_years": N(12), "performance_years": N(25), "first_year_loss_pct": N(2), "annual_loss_pct": N("0.55"), "final_output_pct": N("84.8")},
        "packing": {"modules_per_pallet": N(31), "pallets_per_container": N(20), "modules_per_container": N(620)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"KR-HC144-M10-{w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 43, pd=1)} for k, w in enumerate(design.watts)],
    }
    ms = rec["models"]
    imp = ms[1]["stc"]["imp_a"]
    plant(rec, "/models/1/stc/imp_a", imp.replace("13.0", "13.5", 1), "one digit wrong")
    vmp, voc = ms[2]["stc"]["vmp_v"], ms[2]["stc"]["voc_v"]
    plant(rec, "/models/2/stc/vmp_v", voc, "vmp and voc swapped")
    plant(rec, "/models/2/stc/voc_v", vmp, "vmp and voc swapped")
    plant(rec, "/models/3/stc/efficiency_pct", "22.19", "not Pmax over area")
    plant(rec, "/thermal/beta_voc_pct_per_k", "0.270", "minus sign lost")
    return rec


def build(rec, out):
    ms, t, war, body = rec["models"], rec["thermal"], rec["warranty"], rec["body"]
    names = [m["name"] for m in ms]
    wid = "30% 14% 14% 14% 14% 14%"
    rows = [("Rated Maximum Power (Pmax) [W]", "pmax_w"), ("Maximum Power Voltage (Vmp) [V]", "vmp_v"), ("Maximum Power Current (Imp) [A]", "imp_a"), ("Open Circuit Voltage (Voc) [V]", "voc_v"), ("Short Circuit Current (Isc) [A]", "isc_a")]
    graph = art.warranty(25, war["first_year_loss_pct"], "0.55", war["final_output_pct"], "97", "0.7", "80.2", own="KR-HC144-M10", std="Standard module", added="Added value")
    page1 = kr.front("KR-HC144-M10", "535–555 W", "Mono PERC half-cell module for ground and flat roof",
                     "The HC144 is the plain workhorse of the ridge: 144 half cells behind 3.2 mm of glass, a stiff frame, and sorting that only ever rounds down.",
                     [(f"{ms[-1]['stc']['efficiency_pct']}%", "maximum module efficiency"), ("0 ~ +5 W", "power tolerance"), ("12 years", "product warranty"), ("25 years", "linear power warranty")],
                     [("Low cost per watt", "Large format for fewer rows, fewer clamps and fewer connectors."), ("Shade tolerant", "Two half strings keep each other going."),
                      ("Strong frame", "Certified for 5400 Pa snow and 2400 Pa wind load."), ("Quiet degradation", "No more than 2% in the first year, 0.55% a year after that.")],
                     ["IEC 61215, IEC 61730"], svg(graph, 230, 130), rec["revision"])
    draw, dw, dh = art.drawing(L, W, D, 24, 6, h=215, holes=(400, 1400))
    mid = design.diodes[2]
    ivs = art.iv([mid.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 240, 150, title="I-V curves, KR-HC144-M10-545")
    ivt = art.iv([mid.at(1, c) for c in (10, 25, 50, 75)], [f"{c} °C" for c in (10, 25, 50, 75)], 240, 150, title="I-V curves at 1000 W/m²", foot=True)
    el = lambda cond, extra=(): kr.electrical(ms, cond, names, rows + list(extra), wid)
    page2 = f"""<div class=page><div style="padding:9mm 14mm 0">
<div style="display:flex;justify-content:space-between;align-items:center">{kr.LOGO}<div style="font-size:14pt;font-weight:900;color:#0d3b4f">KR-HC144-M10 535–555 W</div></div>
<div class=two><div>
<h2>Mechanical characteristics</h2>{kr.table(None, [["Cells", "Mono PERC 182 × 91 mm, half cell"], ["No. of cells", "144 (6 × 24)"], ["Dimensions", f"{L} × {W} × {D} mm"], ["Weight", f"{body['mass_kg']} kg"], ["Front glass", "3.2 mm tempered, AR coated"], ["Back sheet", "White, fluorine-free"],
  ["Frame", body["frame"]], ["Junction box", "IP68, 3 bypass diodes"], ["Output cables", "4 mm², +400 mm / −200 mm"], ["Connector", body["connector"]]], "30% 70%")}
<h2>Maximum ratings</h2>{kr.table(None, [["Maximum system voltage", "1000 V / 1500 V DC (IEC)"], ["Maximum series fuse rating", "25 A"], ["Operating temperature", "−40 °C to +85 °C"], ["Front side maximum static load", "5400 Pa"], ["Rear side maximum static load", "2400 Pa"], ["Safety class", "II"]], "55% 45%")}
</div><div style="text-align:center;padding-top:8pt">{svg(draw, dw, dh)}</div></div>
<h2>Electrical data (STC: 1000 W/m², 25 °C, AM 1.5)</h2>{el("stc", [("Module Efficiency [%]", "efficiency_pct")])}
<h2>Electrical data (NMOT: 800 W/m², ambient 20 °C, AM 1.5, wind 1 m/s)</h2>{el("nmot")}
<div class=note>Measurement uncertainty of Pmax ±3%. Module efficiency is maximum power divided by the outer area of the module.</div>
<div class=two><div>
<h2>Temperature characteristics</h2>{kr.table(None, [["NMOT", "43 ± 2 °C"], ["Temperature coefficient of Pmax", t["gamma_pmax_pct_per_k"] + " %/K"], ["Temperature coefficient of Voc", t["beta_voc_pct_per_k"] + " %/K"], ["Temperature coefficient of Isc", t["alpha_isc_pct_per_k"] + " %/K"]], "60% 40%")}
</div><div><h2>Packing (40' HQ)</h2>{kr.table(None, [["Modules per pallet", "31 pcs"], ["Pallets per container", "20"], ["Modules per container", "620 pcs"], ["Pallet weight", "914 kg"]], "60% 40%")}</div></div>
<div style="display:flex;justify-content:space-between;margin-top:9pt">{svg(ivs, 240, 150)}{svg(ivt, 240, 150)}</div></div>
<div class=foot><span>Values are subject to change without notice. Installation only by qualified persons and according to local code. © 2023-11 Kestrel Ridge Solar</span><span>{rec["revision"]}</span></div></div>"""
    chromium(f'<!doctype html><html lang=en><meta charset=utf-8><title>KR-HC144-M10</title><style>{kr.CSS}</style>{page1}{page2}</html>', out)
