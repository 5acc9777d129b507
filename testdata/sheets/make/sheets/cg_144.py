"""cg-144: Çınarlı Güneş Panelleri, Turkish; classes in three stacked panels side by side, each class a block of front, 5, 10, 20 % rows under one head a panel,
model names over the block, decimal comma, ℃ as one character; reportlab."""
import art
from design import Design
from loc import comma
from record import N
from rl import Paper

NAME = "cg-144"
L, W, D = "2278", "1134", "30"
design = Design(72, 565, 5, 6, (51.20, .16), (13.95, .06), .046, -.25, 2.278 * 1.134)
GAINS = (5, 10, 20)


def record():
    models = []
    for k, w in enumerate(design.watts):
        stc = design.stc(k)
        models.append({"name": f"CG-144N-{w}", "stc": stc, "nmot": design.cond(k, .8, 44), "rear_gain": [design.gain(k, g, stc) for g in GAINS]})
    return {
        "maker": "Çınarlı Güneş Panelleri", "series": "CG-144N", "revision": "CGP-144N-TR-R5", "language": "tr",
        "cell": {"technology": "topcon", "count": N(144), "arrangement": "6x24", "cut": "half", "width_mm": N(182), "height_mm": N(91)},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("31.8"), "front_glass_mm": N("2.0"), "rear_glass_mm": N("2.0"), "cable_mm2": N(4), "cable_length_mm": [N(300), N(300)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "Çınar C4", "frame": "Eloksallı alüminyum"},
        "bifacial": {"factor_pct": N(80), "factor_tolerance_pct": N(5)},
        "thermal": {"nmot_c": N(44), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.046"), "beta_voc_pct_per_k": N("-0.25"), "gamma_pmax_pct_per_k": N("-0.29")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(30), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II", "fire_class": "C"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(15), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.4"), "final_output_pct": N("87.4")},
        "packing": {"modules_per_pallet": N(36), "pallets_per_container": N(20), "modules_per_container": N(720)},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": models,
    }


TURQ, NIGHT = "#0e8a8a", "#14293d"


def build(rec, out):
    p = Paper(out, "CG-144N", "dejavu", "dejavu-b")
    ms = rec["models"]
    p.ops(art.hero(595.3, 440, rows=12, cols=6, sky=("#e3f4f4", "#5fb7b7"), cell="#0d1520", frame="#c8ced2", tilt=.25))
    p.rect(0, 0, 595.3, 60, NIGHT)
    p.text(36, 38, "ÇINARLI", 22, True, "#ffffff")
    p.text(150, 38, "GÜNEŞ PANELLERİ", 10, colour="#8fd3d3")
    p.rect(36, 330, 300, 80, TURQ)
    p.text(50, 366, "CG-144N", 28, True, "#ffffff")
    p.text(50, 388, "565–590 W çift yüzlü N-tipi TOPCon", 10, colour="#ffffff")
    p.text(50, 402, "Çift cam, 144 yarım hücre", 8, colour="#ffffff")
    y = 475
    for a, b in (("% " + comma(ms[-1]["stc"]["efficiency_pct"]), "en yüksek modül verimi"), ("15 yıl", "ürün garantisi"), ("30 yıl", "doğrusal güç garantisi"), ("0 / +5 W", "pozitif güç toleransı")):
        p.text(36, y, a, 18, True, TURQ)
        p.text(150, y, b, 9)
        y += 30
    y = p.lines(36, y + 4, 250, "Çınar yaprağı gibi: ışığı iki yüzünden de alır. İlk yıl en çok %1, sonraki yıllarda en çok %0,4 kayıp; 30. yılın sonunda %87,4.", 7.6)
    p.text(36, y + 12, "Sertifikalar: IEC 61215, IEC 61730", 8, True)
    p.ops(art.warranty(30, "1", "0.4", "87.4", "98", "0.55", "84.8", w=250, h=140, colour=TURQ, own="CG-144N", std="Standart modül", pct="%{}", comma=True, xlabel="Yıl"), 310, 465)
    p.text(36, 815, "Çınarlı Güneş Panelleri A.Ş. · Çınar Sok. No: 4, 00417 Çınarlı · Tel: +00 312 555 01 44 · bilgi@cinarligunes.example", 6.5, colour="#555555")
    p.next()
    p.rect(0, 0, 595.3, 40, NIGHT)
    p.text(36, 26, "CG-144N 565–590 W", 15, True, "#ffffff")
    bar = lambda x, y, w, s: (p.rect(x, y, w, 13, TURQ), p.text(x + 4, y + 9.3, s, 7, True, "#ffffff"))
    bar(36, 52, 523, "ELEKTRİKSEL ÖZELLİKLER (STC) VE ARKA YÜZ GÜÇ KAZANCI")
    pw, x0, y0 = 171, 36, 68
    cw = [31, 26, 28, 28, 28, 30]
    end = 0
    for n in range(3):
        x, y = x0 + n * (pw + 5), y0
        p.rect(x, y, pw, 21, "#d7eeee")
        cx = x
        for (a, b), w in zip((("Kazanç", "(%)"), ("Pmaks", "(W)"), ("Vmp", "(V)"), ("Imp", "(A)"), ("Voc", "(V)"), ("Isc", "(A)")), cw):
            p.text(cx + w / 2, y + 9, a, 5.6, True, anchor="middle")
            p.text(cx + w / 2, y + 17, b, 5.6, anchor="middle")
            cx += w
        y += 21
        for m in ms[2 * n: 2 * n + 2]:
            p.rect(x, y, pw, 11, "#eef7f7")
            p.text(x + 4, y + 8, m["name"], 6.2, True)
            y += 11
            for row in [("Ön yüz", m["stc"])] + [(f"+{g['gain_pct']}", g) for g in m["rear_gain"]]:
                cx = x
                for t, w in zip([row[0]] + [comma(row[1][k]) for k in ("pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a")], cw):
                    p.text(cx + w / 2, y + 8, t, 6, anchor="middle")
                    cx += w
                y += 11
                p.line(x, y, x + pw, y, "#b9d9d9", .3)
        end = y
    y = end + 4
    names = ["Modül tipi"] + [m["name"] for m in ms]
    cols = [139] + [64] * 6
    y = p.table(36, y, cols, [names, ["Modül verimi (%)"] + [comma(m["stc"]["efficiency_pct"]) for m in ms]], 11.5, 6.2, rule="#b9d9d9")
    y += 8
    bar(36, y, 523, "ELEKTRİKSEL ÖZELLİKLER (NMOT)")
    q = [("Maksimum güç (Pmaks) [W]", "pmax_w"), ("Maksimum güç gerilimi (Vmp) [V]", "vmp_v"), ("Maksimum güç akımı (Imp) [A]", "imp_a"), ("Açık devre gerilimi (Voc) [V]", "voc_v"), ("Kısa devre akımı (Isc) [A]", "isc_a")]
    y = p.table(36, y + 13, cols, [names] + [[a] + [comma(m["nmot"][k]) for m in ms] for a, k in q], 11.5, 6.2, rule="#b9d9d9")
    p.text(36, y + 8, "STC: 1000 W/m^{2} ışınım, 25 °C hücre sıcaklığı, AM 1,5. NMOT: 800 W/m^{2} ışınım, 20 °C ortam sıcaklığı, 1 m/s rüzgâr hızı.", 5.6, colour="#555555")
    y += 16

    def lst(x, y, w, title, items, h=11.5):
        bar(x, y, w, title)
        y += 13
        for a, b in items:
            p.text(x + 4, y + 8.2, a, 6.2)
            p.text(x + w - 4, y + 8.2, b, 6.2, anchor="end")
            y += h
            p.line(x, y, x + w, y, "#b9d9d9")
        return y + 6

    y1 = lst(36, y, 258, "MEKANİK ÖZELLİKLER", [("Hücre tipi", "N-tipi TOPCon, 182 × 91 mm"), ("Hücre sayısı", "144 yarım hücre (6 × 24)"), ("Boyutlar", "2278 × 1134 × 30 mm"), ("Ağırlık", "31,8 kg"), ("Ön cam", "2,0 mm temperli"), ("Arka cam", "2,0 mm temperli"), ("Çerçeve", "Eloksallı alüminyum"), ("Bağlantı kutusu", "IP68, 3 bypass diyot"), ("Kablo", "4 mm^{2}, 300 mm (+) / 300 mm (−)"), ("Konnektör", "Çınar C4")])
    y2 = lst(301, y, 258, "SICAKLIK KATSAYILARI", [("Nominal modül çalışma sıcaklığı (NMOT)", "44 ± 2 ℃"), ("Pmaks sıcaklık katsayısı", "−0,29 %/℃"), ("Voc sıcaklık katsayısı", "−0,25 %/℃"), ("Isc sıcaklık katsayısı", "+0,046 %/℃")])
    y2 = lst(301, y2 - 2, 258, "ÇALIŞMA KOŞULLARI", [("Maksimum sistem gerilimi", "1500 V DC"), ("Maksimum seri sigorta", "30 A"), ("Çalışma sıcaklığı", "−40 ℃ ~ +85 ℃"), ("Ön yüz statik yük (kar)", "5400 Pa"), ("Arka yüz statik yük (rüzgâr)", "2400 Pa"), ("Güç toleransı", "0 ~ +5 W"), ("Çift yüzlülük", "%80 ± 5"), ("Koruma sınıfı / Yangın sınıfı", "Sınıf II / Sınıf C")])
    y3 = lst(36, y1, 258, "PAKETLEME (40' HC)", [("Palet başına modül", "36"), ("Konteyner başına palet", "20"), ("Konteyner başına modül", "720")])
    y = max(y2, y3)
    draw, dw, dh = art.drawing(L, W, D, 24, 6, h=185, holes=(400, 1400), labels=("Ön", "Yan", "Arka"))
    p.ops(draw, 30, y)
    d = design.diodes[3]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 240, 150, xlabel="Gerilim (V)", ylabel="Akım (A)", title="CG-144N-580"), 310, y + 4)
    p.text(36, 828, "Kurulum yalnızca yetkili kişilerce ve yerel mevzuata göre yapılmalıdır.", 5.8, colour="#555555")
    p.text(559, 828, rec["revision"], 5.8, colour="#555555", anchor="end")
    p.save()
