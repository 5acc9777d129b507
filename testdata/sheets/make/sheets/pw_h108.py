"""pw-h108: Pellworth Cells, a text layer that lies by omission: single glyphs are drawn as outlines while their neighbours stay text ("25 years" reads "5 years", "1134" reads "34",
"13.55" reads "13."), labels outlined beside live digits, half a line text and the rest a picture. The expected record is what is printed; without looking at the ink the values under _needs_ink
must be refused, not guessed. Cairo."""
import art
from cairo_paper import Paper
from design import Design
from record import N

NAME = "pw-h108"
L, W, D = "1722", "1134", "30"
design = Design(54, 430, 5, 3, (39.60, .15), (13.55, .06), .04, -.24, 1.722 * 1.134)
MARK = "\u0001"  # the glyph after it is drawn as an outline


class Mixed(Paper):
    def text(self, x, y, s, size=7, bold=False, colour="#222222", anchor="start", rot=0, font=None, outline=False):
        if not outline and MARK not in s:
            return super().text(x, y, s, size, bold, colour, anchor, rot, font)
        plain = s.replace(MARK, "")
        w = self.width(plain, size, bold, font)
        x -= {"start": 0, "middle": w / 2, "end": w}[anchor]
        runs, k = [], 0
        while k < len(s):
            if s[k] == MARK:
                runs.append((s[k + 1], True))
                k += 2
            else:
                e = s.find(MARK, k)
                e = len(s) if e < 0 else e
                runs.append((s[k:e], outline))
                k = e
        for t, path in runs:
            if path:
                c, show = self.c, self.c.show_text
                c.show_text = lambda q: (c.text_path(q), c.fill())
                super().text(x, y, t, size, bold, colour, font=font)
                c.show_text = show
            else:
                super().text(x, y, t, size, bold, colour, font=font)
            x += self.width(t, size, bold, font)


    def patch(self, x, y, s, size=7):
        """The words as a picture of 288 dpi."""
        import cairocffi as cairo
        w, h, k = self.width(s, size) + 2, size * 1.4, 4
        im = cairo.ImageSurface(cairo.FORMAT_RGB24, int(w * k), int(h * k))
        c = cairo.Context(im)
        c.scale(k, k)
        c.set_source_rgb(1, 1, 1)
        c.paint()
        c.set_source_rgb(.133, .133, .133)
        c.select_font_face(self.font)
        c.set_font_size(size)
        c.move_to(0, size)
        c.show_text(s)
        self.c.save()
        self.c.translate(x, y - size)
        self.c.scale(1 / k, 1 / k)
        self.c.set_source_surface(im, 0, 0)
        self.c.paint()
        self.c.restore()


def record():
    return {
        "maker": "Pellworth Cells", "series": "PW-H108", "revision": "PWC-H108 Rev 2", "language": "en",
        "cell": {"technology": "hjt", "count": N(108), "arrangement": "6x18", "cut": "half"},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("21.8"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1200)], "bypass_diodes": N(3), "junction_box_ip": "IP68"},
        "thermal": {"nmot_c": N(43), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.04"), "beta_voc_pct_per_k": N("-0.24"), "gamma_pmax_pct_per_k": N("-0.28")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(25), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400)},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(25), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.35"), "final_output_pct": N("88.85")},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"PW-H108-{w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 43, pd=1)} for k, w in enumerate(design.watts)],
        "_needs_ink": ["/warranty/product_years", "/warranty/final_output_pct", "/body/width_mm", "/body/length_mm", "/body/depth_mm", "/body/mass_kg", "/body/bypass_diodes", "/body/cable_length_mm/0", "/models/0/stc/isc_a", "/models/1/stc/isc_a", "/models/1/nmot/vmp_v", "/thermal/nmot_c",
                       "/thermal/nmot_tolerance_c", "/limits/system_voltage_v/0", "/limits/series_fuse_a", "/limits/temperature_min_c", "/limits/temperature_max_c", "/limits/front_load_pa", "/limits/rear_load_pa", "/tolerance/power_plus_w", "/tolerance/power_minus_w"],
    }


BLACK, GOLD = "#15181c", "#b98a2f"


def build(rec, out):
    p = Mixed(out, "PW-H108", "Liberation Sans")
    ms = rec["models"]
    M = MARK
    p.rect(0, 0, 595.3, 420, BLACK)
    p.ops(art.hero(400, 420, rows=9, cols=6, sky=("#2a2f36", "#15181c"), cell="#04050a", frame="#0b0b0b", tilt=.3), 195, 0)
    p.text(36, 60, "PELLWORTH", 26, True, "#ffffff")
    p.text(36, 78, "C E L L S", 10, colour=GOLD)
    p.text(36, 300, "H108", 40, True, "#ffffff")
    p.text(36, 322, "430–440 W heterojunction", 11, colour="#dddddd")
    y = 470
    for big, small in ((f"{M}25 years", "product warranty"), ("30 years", "linear power warranty"), (f"{M}8{M}8.85 %", "of power after 30 years"), ("0.35 %", "yearly loss after 1 % in the first year")):
        p.text(36, y, big, 21, True, GOLD)
        p.text(180, y, small, 9)
        y += 32
    p.ops(art.warranty(30, "1", "0.35", "88.85", "98", "0.55", "84.8", w=225, h=140, colour=GOLD, own="Pellworth H108", std="Conventional panel", show_final=False, show_first=False), 345, 450)
    p.text(36, 640, "IEC 61215, IEC 61730", 9, True)
    p.text(36, 812, "Pellworth Cells Inc. · 900 Copper Street, Pellworth · +00 31 555 0163 · info@pellworth.example", 7.5, colour="#555555")
    p.next()
    p.rect(0, 0, 595.3, 40, BLACK)
    p.text(36, 26, "PW-H108 430–440 W", 16, True, "#ffffff")

    def bar(y, s, x=36, w=523):
        p.rect(x, y, w, 14, GOLD)
        p.text(x + 5, y + 10, s, 8, True, "#ffffff")
        return y + 14

    def table(y, title, key, rows, holes):
        y = bar(y, title)
        p.text(41, y + 9, "Model", 7, True)
        for k, m in enumerate(ms):
            p.text(300 + 110 * k, y + 9, m["name"], 7, True, anchor="middle")
        y += 13
        for a, q in rows:
            p.text(41, y + 9, a, 7)
            for k, m in enumerate(ms):
                v = m[key][q]
                if (k, q) in holes:
                    v = holes[(k, q)](v)
                p.text(300 + 110 * k, y + 9, v, 7, anchor="middle")
            y += 13
            p.line(36, y, 559, y, "#cccccc")
        return y

    rows = [("Maximum power (Pmax) [W]", "pmax_w"), ("Voltage at Pmax (Vmp) [V]", "vmp_v"), ("Current at Pmax (Imp) [A]", "imp_a"), ("Open circuit voltage (Voc) [V]", "voc_v"), ("Short circuit current (Isc) [A]", "isc_a")]
    out_last2 = lambda v: v[:-2] + M + v[-2] + M + v[-1]
    out_first = lambda v: M + v
    y = table(54, "Electrical data at STC", "stc", rows + [("Module efficiency [%]", "efficiency_pct")], {(0, "isc_a"): out_last2, (1, "isc_a"): out_first})
    p.text(36, y + 8, "STC: 1000 W/m², cell temperature 25 °C, AM 1.5", 6, colour="#555555")
    y = table(y + 16, "Electrical data at NMOT", "nmot", rows, {(1, "vmp_v"): out_last2})
    p.text(36, y + 8, "NMOT: 800 W/m², ambient temperature 20 °C, wind speed 1 m/s", 6, colour="#555555")
    y = bar(y + 18, "Mechanical data")
    for a, b in (("Cells", "108 (6 × 18) heterojunction half cells"), ("Dimensions", f"1722 × {M}1{M}134 × 30 mm"), ("Weight", f"21.{M}8 kg"), ("Front glass", "3.2 mm"), ("Junction box", "IP68,| 3 bypass diodes"), ("Cable", "4 mm²,| 1200 mm")):
        p.text(41, y + 9, a, 7)
        b, _, rest = b.partition("|")
        p.text(250, y + 9, b, 7)
        if rest:  # half a line text, the rest a picture
            p.patch(250 + p.width(b, 7), y + 9, rest, 7)
        y += 13
        p.line(36, y, 559, y, "#cccccc")
    y = bar(y + 10, "Temperature")
    for a, b in (("Temperature coefficient of Pmax", "−0.28 %/°C"), ("Temperature coefficient of Voc", "−0.24 %/°C"), ("Temperature coefficient of Isc", "0.04 %/°C"), ("NMOT", f"{M}4{M}3±2 °C")):
        p.text(41, y + 9, a, 7)
        p.text(250, y + 9, b, 7)
        y += 13
        p.line(36, y, 559, y, "#cccccc")
    y = bar(y + 10, "Limits")
    # labels outlined, digits live
    for a, b in (("Maximum system voltage", "1500 V"), ("Maximum series fuse", "25 A"), ("Operating temperature", "−40 °C to +85 °C"), ("Load, front / rear", "5400 Pa / 2400 Pa"), ("Power tolerance", "0 ~ +5 W")):
        p.text(41, y + 9, a, 7, outline=True)
        p.text(250, y + 9, b, 7)
        y += 13
        p.line(36, y, 559, y, "#cccccc")
    draw, dw, dh = art.drawing(L, W, D, 18, 6, h=190, holes=(990, 1300))
    p.ops([o for o in draw if o[0] == "poly"], 30, y + 12)
    for o in draw:  # the drawing's lettering is outlined too
        if o[0] == "text" and not o[7]:
            p.text(30 + o[1], y + 12 + o[2], o[3], o[4], colour="#333333", anchor=o[6], outline=True)
    d = design.diodes[1]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 235, 150, title="PW-H108-435"), 325, y + 16)
    p.text(36, 815, "Conductors and fuses are chosen by a licensed person under the local code.", 6, colour="#555555")
    p.text(559, 815, rec["revision"], 6, colour="#555555", anchor="end")
    p.save()
