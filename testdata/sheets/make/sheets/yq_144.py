"""yq-144: 云栖谷光电, Chinese; full-width forms and brackets, ℃ as one character, 开路电压 and the like with symbols in full-width brackets, two panels of list data side by side,
descending classes, NOCT, half cells "6×24", 20' and 40' columns; Chromium."""
import art
from design import Design
from producers import chromium, recompress, svg
from record import N

NAME = "yq-144"
L, W, D = "2278", "1134", "35"
design = Design(72, 540, 5, 5, (49.50, .15), (13.75, .05), .048, -.27, 2.278 * 1.134)


def record():
    return {
        "maker": "云栖谷光电", "series": "YQ-144P", "revision": "YQ-144P-CN-V2.0", "issued": "2022-08", "language": "zh",
        "cell": {"technology": "mono-perc", "count": N(144), "arrangement": "6x24", "cut": "half", "width_mm": N(182), "height_mm": N(91)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("27.5"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(300)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "frame": "阳极氧化铝合金"},
        "thermal": {"noct_c": N(45), "noct_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.048"), "beta_voc_pct_per_k": N("-0.270"), "gamma_pmax_pct_per_k": N("-0.320")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0), "measurement_pct": N(3)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "noct": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1), "air_mass": N("1.5")}},
        "warranty": {"product_years": N(12), "performance_years": N(25), "first_year_loss_pct": N(2), "annual_loss_pct": N("0.55"), "final_output_pct": N("84.8")},
        "packing": {"modules_per_pallet": N(31), "pallets_per_container": N(20), "modules_per_container": N(620)},
        "certificates": ["IEC 61215", "IEC 61730", "ISO 9001", "ISO 14001"],
        "models": [{"name": f"YQ-144P-{w}", "stc": design.stc(k), "noct": design.cond(k, .8, 45, pd=1)} for k, w in enumerate(design.watts)],
    }


CSS = """
@page{size:A4;margin:0} body{margin:0;font:7.6pt/1.35 'Noto Sans CJK SC';color:#222;-webkit-print-color-adjust:exact} .p{width:210mm;height:296.6mm;position:relative;overflow:hidden;page-break-after:always} .p:last-child{page-break-after:auto}
.a{position:absolute} h2{font-size:9pt;color:#fff;background:#b3202a;margin:6pt 0 0;padding:1.6pt 6pt} table{border-collapse:collapse;width:100%} td,th{padding:1pt 4pt;text-align:center;border:.4pt solid #e0c9c9;font-weight:400} td:first-child,th:first-child{text-align:left} th{background:#f7e6e6;font-weight:700}
"""


def build(rec, out):
    ms = rec["models"][::-1]
    q = [("最大功率（Pmax）［W］", "pmax_w"), ("最佳工作电压（Vmp）［V］", "vmp_v"), ("最佳工作电流（Imp）［A］", "imp_a"), ("开路电压（Voc）［V］", "voc_v"), ("短路电流（Isc）［A］", "isc_a")]
    tab = lambda c, extra=(): "<table><tr><th>组件型号</th>" + "".join(f"<th>{m['name']}</th>" for m in ms) + "</tr>" + "".join(f"<tr><td>{a}</td>" + "".join(f"<td>{m[c][k]}</td>" for m in ms) + "</tr>" for a, k in q + list(extra)) + "</table>"
    lst = lambda rows: "<table>" + "".join("<tr>" + "".join(f"<td>{c}</td>" for c in r) + "</tr>" for r in rows) + "</table>"
    draw, dw, dh = art.drawing(L, W, D, 24, 6, h=175, holes=(400, 1400), labels=("正面", "侧面", "背面"))
    d = design.diodes[2]
    ivs = art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 225, 140, xlabel="电压 (V)", ylabel="电流 (A)", title="YQ-144P-550 电流-电压曲线")
    t = rec["thermal"]
    page = f"""<!doctype html><html lang=zh><meta charset=utf-8><title>YQ-144P</title><style>{CSS}</style>
<div class=p><div class=a style="left:0;top:0">{svg(art.hero(595.3, 450, rows=12, cols=6, sky=("#fdf3ea","#efc9a8"), cell="#142142"), 595.3, 450)}</div>
<div class=a style="left:14mm;top:12mm;font-size:20pt;font-weight:700;color:#b3202a">云栖谷光电</div>
<div class=a style="left:14mm;top:40mm"><div style="font-size:28pt;font-weight:700">YQ-144P</div><div style="font-size:15pt;color:#b3202a">540～560 W</div><div>单晶 PERC 半片组件</div></div>
<div class=a style="left:14mm;right:14mm;top:164mm;display:flex;gap:8pt">{"".join(f'<div style="flex:1;border-top:3pt solid #b3202a;padding-top:3pt"><b style="font-size:15pt;color:#b3202a">{a}</b><br>{b}</div>' for a, b in ((ms[0]["stc"]["efficiency_pct"] + "%", "组件最高效率"), ("0～+5 W", "正功率公差"), ("12 年", "产品质保"), ("25 年", "线性功率质保")))}</div>
<div class=a style="left:14mm;top:190mm;width:88mm;font-size:8.4pt"><b>产品特点</b><br>半片技术，降低热斑风险，弱光下亦有出色表现。通过 5400 Pa 雪载和 2400 Pa 风载测试。首年衰减不超过 2%，此后每年不超过 0.55%，第 25 年末输出功率不低于标称功率的 84.8%。<br><br><b>认证</b><br>IEC 61215、IEC 61730、ISO 9001、ISO 14001</div>
<div class=a style="left:110mm;top:188mm">{svg(art.warranty(25, "2", "0.55", "84.8", "97", "0.7", "80.2", w=245, h=135, colour="#b3202a", own="YQ-144P", std="行业标准组件", xlabel="年"), 245, 135)}</div>
<div class=a style="left:14mm;right:14mm;bottom:8mm;font-size:6.6pt;color:#666">云栖谷光电有限公司　云栖谷镇溪畔路 17 号　电话：+00 571 5550 0190　sales@yunqigu.example</div></div>
<div class=p><div style="padding:8mm 14mm 0"><div style="display:flex;justify-content:space-between;align-items:baseline"><b style="font-size:14pt;color:#b3202a">YQ-144P　540～560 W</b><b>云栖谷光电</b></div>
<h2>电性能参数（STC）</h2>{tab("stc", [("组件效率［％］", "efficiency_pct")])}<div style="font-size:6pt">STC：辐照度 1000 W/m²，电池温度 25 ℃，大气质量 AM 1.5。功率测量不确定度 ±3％。</div>
<h2>电性能参数（NOCT）</h2>{tab("noct")}<div style="font-size:6pt">NOCT：辐照度 800 W/m²，环境温度 20 ℃，大气质量 AM 1.5，风速 1 m/s。</div>
<div style="display:grid;grid-template-columns:1fr 1fr;gap:10pt"><div><h2>机械参数</h2>{lst([["电池片", "单晶 PERC，182 mm × 91 mm"], ["电池片数量", "144（6×24）半片"], ["组件尺寸", "2278 mm × 1134 mm × 35 mm"], ["重量", "27.5 kg"], ["前玻璃", "3.2 mm 镀膜钢化玻璃"], ["边框", "阳极氧化铝合金"], ["接线盒", "IP68，3 个旁路二极管"], ["电缆", "4 mm²，300 mm"]])}</div>
<div><h2>温度参数</h2>{lst([["标称工作温度（NOCT）", "45 ± 2 ℃"], ["最大功率温度系数", t["gamma_pmax_pct_per_k"] + " %/℃"], ["开路电压温度系数", t["beta_voc_pct_per_k"] + " %/℃"], ["短路电流温度系数", "+" + t["alpha_isc_pct_per_k"] + " %/℃"]])}
<h2>工作参数</h2>{lst([["最大系统电压", "DC 1500 V"], ["最大保险丝额定电流", "25 A"], ["工作温度", "-40 ℃ ～ +85 ℃"], ["功率公差", "0 ～ +5 W"], ["正面最大静载荷", "5400 Pa"], ["背面最大静载荷", "2400 Pa"], ["安全等级", "Ⅱ 级"]])}</div></div>
<h2>包装</h2>{lst([["集装箱", "20′ GP", "40′ HQ"], ["每托组件数", "31", "31"], ["每箱托数", "5", "20"], ["每箱组件数", "155", "620"]])}
<div style="display:flex;justify-content:space-between;margin-top:8pt">{svg(draw, dw, dh)}{svg(ivs, 225, 140)}</div></div>
<div class=a style="left:14mm;right:14mm;bottom:6mm;font-size:5.8pt;color:#666;display:flex;justify-content:space-between"><span>产品规格如有变更，恕不另行通知。安装须由具备资质的人员按当地规范进行。2022年08月</span><span>{rec["revision"]}</span></div></div></html>"""
    chromium(page, out)
    recompress(out)
