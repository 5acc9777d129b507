"""kh-h108: 霧ヶ浜ソーラー, Japanese; one class as lists, heterojunction, 公称 terms, 質量, low-light line, JIS conditions, mm and ｋｇ in full-width letters; WeasyPrint."""
import art
from design import Design
from producers import cjk, svg, weasyprint
from record import N

NAME = "kh-h108"
L, W, D = "1722", "1134", "30"
design = Design(54, 440, 5, 1, (40.10, 0), (13.55, 0), .04, -.24, 1.722 * 1.134)


def record():
    return {
        "maker": "霧ヶ浜ソーラー", "series": "KH-H108-440", "revision": "KH-2404-1", "issued": "2024-04", "language": "ja",
        "cell": {"technology": "hjt", "count": N(108), "arrangement": "6x18", "cut": "half"},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("21.5"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1200)], "bypass_diodes": N(3), "junction_box_ip": "IP68"},
        "thermal": {"nmot_c": N(43), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.040"), "beta_voc_pct_per_k": N("-0.240"), "gamma_pmax_pct_per_k": N("-0.260")},
        "limits": {"system_voltage_v": [N(1000)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400)},
        "tolerance": {"power_plus_pct": N(3), "power_minus_pct": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(25), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.30"), "final_output_pct": N("90.3")},
        "packing": {"modules_per_pallet": N(36)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "low_light": {"irradiance_w_m2": N(200), "relative_efficiency_pct": N(98)},
        "models": [{"name": "KH-H108-440", "stc": design.stc(0), "nmot": design.cond(0, .8, 43, pd=1)}],
    }


CSS = """
@page{size:A4;margin:0} body{margin:0;font:8pt/1.45 'Noto Sans CJK JP';color:#26303a} .p{width:210mm;height:297mm;position:relative;overflow:hidden;page-break-after:always} .p:last-child{page-break-after:auto}
.a{position:absolute} h2{font-size:9.5pt;margin:7pt 0 2pt;color:#2b4a7f;border-left:6pt solid #2b4a7f;padding-left:5pt} table{border-collapse:collapse;width:100%} td{padding:1.6pt 4pt;border-bottom:.4pt solid #c4ccd8} td+td{text-align:right} tr:nth-child(odd) td{background:#f2f5fa}
"""


def build(rec, out):
    m = rec["models"][0]
    s, n, t = m["stc"], m["nmot"], rec["thermal"]
    lst = lambda rows: "<table>" + "".join(f"<tr><td>{a}</td><td>{b}</td></tr>" for a, b in rows) + "</table>"
    draw, dw, dh = art.drawing(L, W, D, 18, 6, h=190, holes=(990, 1300), labels=("表面", "側面", "裏面"))
    d = design.diodes[0]
    ivs = art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 235, 150, xlabel="電圧 (V)", ylabel="電流 (A)", title="電流－電圧特性")
    page = f"""<html lang=ja><head><title>KH-H108-440</title><style>{CSS}</style></head><body>
<div class=p><div class=a style="left:0;top:0">{svg(art.hero(595.3, 480, rows=9, cols=6, sky=("#f5f7fb","#c3d1e6"), cell="#0a0d16", frame="#15171a", tilt=.3), 595.3, 480, "Kiri")}</div>
<div class=a style="left:14mm;top:12mm;font-size:18pt;font-weight:700;color:#2b4a7f">霧ヶ浜ソーラー</div>
<div class=a style="left:14mm;top:130mm;background:#2b4a7f;color:#fff;padding:8pt 16pt"><div style="font-size:24pt;font-weight:700;line-height:1.2">KH-H108-440</div><div style="font-size:12pt">ヘテロ接合太陽電池モジュール　公称最大出力 440W</div></div>
<div class=a style="left:14mm;top:178mm;width:92mm"><p style="margin:0;font-size:9pt">霧の浜でも、曇りの朝でも。ヘテロ接合セルは弱い光と夏の暑さに強く、長く安定して発電します。</p>
<h2>特長</h2>モジュール変換効率 {s['efficiency_pct']}%<br>低照度（200W/m²）でも変換効率の98％を維持<br>積雪荷重 5400Pa、風圧荷重 2400Pa<br>出力許容差 0～+3％<h2>保証</h2>製品保証 25年、出力保証 30年（初年度 1％、以降毎年 0.30％、30年後 90.3％）</div>
<div class=a style="left:112mm;top:178mm">{svg(art.warranty(30, "1", "0.30", "90.3", "98", "0.55", "84.8", w=240, h=135, colour="#2b4a7f", own="KH-H108", std="一般的なモジュール", xlabel="年"), 240, 135, "Kiri")}</div>
<div class=a style="left:14mm;right:14mm;bottom:8mm;font-size:6.8pt;color:#667">霧ヶ浜ソーラー株式会社　霧ヶ浜市海岸通 4-17　電話 00-417-555-0190　info@kirigahama.example</div></div>
<div class=p><div style="padding:10mm 14mm 0"><div style="display:flex;justify-content:space-between"><b style="font-size:14pt;color:#2b4a7f">KH-H108-440 仕様</b><b>霧ヶ浜ソーラー</b></div>
<div style="display:flex;gap:12pt"><div style="flex:1"><h2>電気的特性（STC）</h2>{lst([["公称最大出力（Pmax）", s["pmax_w"] + " W"], ["公称最大出力動作電圧（Vmp）", s["vmp_v"] + " V"], ["公称最大出力動作電流（Imp）", s["imp_a"] + " A"], ["公称開放電圧（Voc）", s["voc_v"] + " V"], ["公称短絡電流（Isc）", s["isc_a"] + " A"], ["モジュール変換効率", s["efficiency_pct"] + " %"], ["出力許容差", "0 ～ +3 %"], ["最大システム電圧", "1000 V"], ["最大直列ヒューズ定格", "25 A"]])}
<div style="font-size:6.2pt">STC：放射照度 1000 W/m²、セル温度 25 ℃、AM 1.5</div></div>
<div style="flex:1"><h2>電気的特性（NMOT）</h2>{lst([["最大出力（Pmax）", n["pmax_w"] + " W"], ["最大出力動作電圧（Vmp）", n["vmp_v"] + " V"], ["最大出力動作電流（Imp）", n["imp_a"] + " A"], ["開放電圧（Voc）", n["voc_v"] + " V"], ["短絡電流（Isc）", n["isc_a"] + " A"]])}
<div style="font-size:6.2pt">NMOT：放射照度 800 W/m²、周囲温度 20 ℃、風速 1 m/s</div>
<h2>温度特性</h2>{lst([["公称モジュール動作温度（NMOT）", "43 ± 2 ℃"], ["最大出力温度係数", "−0.260 %/℃"], ["開放電圧温度係数", "−0.240 %/℃"], ["短絡電流温度係数", "0.040 %/℃"], ["動作温度範囲", "−40 ～ +85 ℃"]])}</div></div>
<h2>機械的特性</h2>{lst([["セル種類", "単結晶ヘテロ接合（HJT）ハーフカットセル"], ["セル数", "108（6×18）"], ["外形寸法", "1722 × 1134 × 30 mm"], ["質量", "２１．５ ｋｇ"], ["表面ガラス", "3.2 mm 強化ガラス"], ["端子箱", "IP68、バイパスダイオード 3 個"], ["出力ケーブル", "4 mm²、1200 mm"], ["最大静荷重（表面／裏面）", "5400 Pa／2400 Pa"], ["適合規格", "IEC 61215、IEC 61730"], ["梱包", "36 枚／パレット"]])}
<div style="display:flex;justify-content:space-between;margin-top:10pt">{svg(draw, dw, dh, "Kiri")}{svg(ivs, 235, 150, "Kiri")}</div></div>
<div class=a style="left:14mm;right:14mm;bottom:8mm;font-size:6pt;color:#667;display:flex;justify-content:space-between"><span>設置は有資格者が現地の法規に従って行ってください。仕様は予告なく変更することがあります。2024年4月</span><span>{rec['revision']}</span></div></div></body></html>"""
    page = page.replace("'Noto Sans CJK JP'", "'Kiri'").replace('"Noto Sans CJK JP"', '"Kiri"')
    weasyprint(page.replace("<style>", "<style>" + cjk(page, "Kiri", 0), 1), out)
