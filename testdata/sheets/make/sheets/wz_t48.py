"""wz-t48: Waterkant Zonnestroom, Dutch; models down in descending order, quantities across, STC and NMOT in one transposed table each, dimensions only in the drawing,
fonts not embedded (standard 14), decimal comma, Wp, kg beside; fpdf2."""
import art
from design import Design
from fpdf import FPDF
from loc import comma
from record import N
import datetime, re
from cairo_paper import rgb
from rl import runs

NAME = "wz-t48"
L, W, D = "1762", "1134", "30"
design = Design(48, 440, 5, 4, (34.90, .14), (15.98, .07), .046, -.25, 1.762 * 1.134)


def record():
    return {
        "maker": "Waterkant Zonnestroom", "series": "WZ-T48", "revision": "WZ-T48-NL-0224", "issued": "2024-02", "language": "nl",
        "cell": {"technology": "topcon", "count": N(96), "cut": "half"},
        "body": {"length_mm": N(L), "width_mm": N(W), "depth_mm": N(D), "mass_kg": N("21.5"), "front_glass_mm": N("3.2"), "cable_mm2": N(4), "cable_length_mm": [N(1200)], "bypass_diodes": N(3), "junction_box_ip": "IP68", "connector": "Kade 4"},
        "thermal": {"nmot_c": N(43), "nmot_tolerance_c": N(2), "alpha_isc_pct_per_k": N("0.046"), "beta_voc_pct_per_k": N("-0.25"), "gamma_pmax_pct_per_k": N("-0.29")},
        "limits": {"system_voltage_v": [N(1500)], "series_fuse_a": N(30), "temperature_min_c": N(-40), "temperature_max_c": N(85), "front_load_pa": N(5400), "rear_load_pa": N(2400), "safety_class": "II"},
        "tolerance": {"power_plus_w": N(5), "power_minus_w": N(0)},
        "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": {"product_years": N(25), "performance_years": N(30), "first_year_loss_pct": N(1), "annual_loss_pct": N("0.4"), "final_output_pct": N("87.4")},
        "certificates": ["IEC 61215", "IEC 61730"],
        "models": [{"name": f"WZ-T48-{w}", "stc": design.stc(k), "nmot": design.cond(k, .8, 43)} for k, w in enumerate(design.watts)],
    }


class Paper(FPDF):
    def __init__(self, title):
        super().__init__(unit="pt", format="A4")
        self.set_auto_page_break(False)
        self.set_creation_date(datetime.datetime(2024, 6, 1, 12, tzinfo=datetime.timezone.utc))
        self.set_title(title)

    def t(self, x, y, s, size=7, bold=False, colour="#222222", anchor="start", rot=0):
        self.set_text_color(*[int(255 * c) for c in rgb(colour)])
        w = 0
        for part, k in runs(s):
            self.set_font("Helvetica", "B" if bold else "", size * (.68 if k else 1))
            w += self.get_string_width(part)
        x0 = {"start": 0, "middle": -w / 2, "end": -w}[anchor]

        def go(ox, oy):
            px = ox
            for part, k in runs(s):
                self.set_font("Helvetica", "B" if bold else "", size * (.68 if k else 1))
                self.text(px, oy + {"": 0, "_": size * .2, "^": -size * .35}[k], part)
                px += self.get_string_width(part)
        if rot:
            with self.rotation(-rot, x, y):
                go(x + x0, y)
        else:
            go(x + x0, y)

    def box(self, x, y, w, h, fill):
        self.set_fill_color(*[int(255 * c) for c in rgb(fill)])
        self.rect(x, y, w, h, style="F")

    def rule(self, x0, y0, x1, y1, colour="#a9bcc4", lw=.4):
        self.set_draw_color(*[int(255 * c) for c in rgb(colour)])
        self.set_line_width(lw)
        self.line(x0, y0, x1, y1)

    def ops(self, ops, dx=0, dy=0):
        for o in ops:
            if o[0] == "text":
                _, x, y, s, size, col, anchor, rot, bold = o
                self.t(x + dx, y + dy, s, size, bold, col, anchor, rot)
                continue
            _, pts, stroke, lw, fill, closed, dash = o
            p = [(x + dx, y + dy) for x, y in pts]
            if fill:
                self.set_fill_color(*[int(255 * c) for c in rgb(fill)])
                self.set_line_width(.01)
                self.polygon(p, style="F")
            if stroke:
                self.set_draw_color(*[int(255 * c) for c in rgb(stroke)])
                self.set_line_width(lw)
                if dash:
                    self.set_dash_pattern(*dash)
                (self.polygon(p, style="D") if closed else self.polyline(p))
                if dash:
                    self.set_dash_pattern()


NAVY, ORANGE = "#12355b", "#f26b21"


def build(rec, out):
    p = Paper("WZ-T48")
    ms = rec["models"][::-1]
    p.add_page()
    p.ops(art.hero(595.3, 420, rows=8, cols=6, sky=("#eef6f9", "#a5c8dc"), cell="#0c141d", frame="#101418", tilt=.26))
    p.box(0, 400, 595.3, 70, NAVY)
    p.t(40, 48, "WATERKANT", 22, True, NAVY)
    p.t(40, 64, "ZONNESTROOM", 10, False, ORANGE)
    p.t(40, 432, "WZ-T48", 26, True, "#ffffff")
    p.t(40, 455, "440 - 455 Wp | 96 halve cellen | N-type TOPCon", 12, False, "#ffffff")
    y = 510
    for a, b in (("Voor elk dak aan het water", "Bestand tegen zout, wind en meeuwen. Sneeuwlast tot 5400 Pa, windlast tot 2400 Pa."), ("Meer per vierkante meter", "Moduleefficiëntie tot " + comma(ms[0]["stc"]["efficiency_pct"]) + " %."), ("25 jaar productgarantie", "30 jaar lineaire vermogensgarantie: eerste jaar max. 1 % verlies, daarna max. 0,4 % per jaar."), ("Alleen positief", "Vermogenstolerantie 0/+5 Wp.")):
        p.t(40, y, a, 11, True, ORANGE)
        p.t(40, y + 13, b, 8)
        y += 34
    p.ops(art.warranty(30, "1", "0.4", "87.4", "98", "0.55", "84.8", w=240, h=130, colour=ORANGE, own="WZ-T48", std="Standaard module", pct="{} %", comma=True, xlabel="Jaar"), 36, 640)
    p.t(330, 670, "Certificaten", 10, True, NAVY)
    p.t(330, 684, "IEC 61215, IEC 61730", 8)
    p.t(40, 815, "Waterkant Zonnestroom B.V. - Kade 11, 0417 WK Waterkant - +00 10 555 01 74 - info@waterkant.example", 7, colour="#555555")
    p.add_page()
    p.t(40, 40, "WZ-T48", 18, True, NAVY)
    p.t(555, 40, "Waterkant Zonnestroom", 9, True, ORANGE, "end")

    def table(y, title, key, extra):
        p.box(40, y, 515, 14, NAVY)
        p.t(45, y + 10, title, 8, True, "#ffffff")
        y += 14
        heads = [("Type", ""), ("Nominaal", "vermogen"), ("Spanning bij", "max. vermogen"), ("Stroom bij", "max. vermogen"), ("Nullast-", "spanning"), ("Kortsluit-", "stroom")] + ([("Module-", "efficiëntie")] if extra else [])
        sym = ["", "P_{max} (Wp)", "U_{mpp} (V)", "I_{mpp} (A)", "U_{oc} (V)", "I_{sc} (A)"] + (["(%)"] if extra else [])
        keys = ["pmax_w", "vmp_v", "imp_a", "voc_v", "isc_a"] + (["efficiency_pct"] if extra else [])
        xs = [45] + [150 + 65 * k for k in range(len(heads) - 1)]
        p.box(40, y, 515, 31, "#e3ebf0")
        for x, (h1, h2), s in zip(xs, heads, sym):
            a = "start" if x == 45 else "middle"
            p.t(x, y + 9, h1, 6.6, True, anchor=a)
            p.t(x, y + 17, h2, 6.6, True, anchor=a)
            p.t(x, y + 26, s, 6.6, anchor=a)
        y += 31
        for m in ms:
            p.t(45, y + 9.5, m["name"], 7.2, True)
            for x, k in zip(xs[1:], keys):
                p.t(x, y + 9.5, comma(m[key][k]), 7.2, anchor="middle")
            y += 13
            p.rule(40, y, 555, y)
        return y + 8

    y = table(58, "Elektrische gegevens bij STC (1000 W/m², celtemperatuur 25 °C, AM 1,5)", "stc", True)
    y = table(y, "Elektrische gegevens bij NMOT (800 W/m², omgevingstemperatuur 20 °C, windsnelheid 1 m/s)", "nmot", False)

    def lst(x, y, w, title, items):
        p.box(x, y, w, 14, NAVY)
        p.t(x + 5, y + 10, title, 8, True, "#ffffff")
        y += 14
        for a, b in items:
            p.t(x + 5, y + 9.5, a, 7.2)
            p.t(x + w * .55, y + 9.5, b, 7.2)
            y += 13
            p.rule(x, y, x + w, y)
        return y + 8

    y1 = lst(40, y, 255, "Mechanische gegevens", [("Cellen", "96 halve N-type TOPCon-cellen"), ("Gewicht", "21,5 kg"), ("Glas", "3,2 mm gehard, antireflectie"), ("Achterzijde", "zwarte folie"), ("Aansluitdoos", "IP68, 3 bypassdiodes"), ("Kabel", "4 mm², lengte 1200 mm"), ("Connector", "Kade 4")])
    y2 = lst(305, y, 250, "Temperatuurgegevens", [("NMOT", "43 °C (±2 °C)"), ("Temperatuurcoëfficiënt P_{max}", "-0,29 %/°C"), ("Temperatuurcoëfficiënt U_{oc}", "-0,25 %/°C"), ("Temperatuurcoëfficiënt I_{sc}", "0,046 %/°C")])
    y2 = lst(305, y2 - 3, 250, "Grenswaarden", [("Maximale systeemspanning", "1500 V DC"), ("Maximale zekering", "30 A"), ("Bedrijfstemperatuur", "-40 °C tot +85 °C"), ("Sneeuw- / windlast", "5400 / 2400 Pa"), ("Vermogenstolerantie", "0/+5 Wp"), ("Beschermingsklasse", "II")])
    y = max(y1, y2) + 4
    p.box(40, y, 515, 14, NAVY)
    p.t(45, y + 10, "Afmetingen (mm)", 8, True, "#ffffff")
    draw, dw, dh = art.drawing(L, W, D, 16, 6, h=215, holes=(790, 1300), labels=("Voorzijde", "Zijkant", "Achterzijde"))
    p.ops(draw, 40, y + 16)
    d = design.diodes[1]
    p.ops(art.iv([d.at(g) for g in (1, .8, .6, .4, .2)], [f"{g} W/m²" for g in (1000, 800, 600, 400, 200)], 203, 150, xlabel="Spanning (V)", ylabel="Stroom (A)", title="WZ-T48-445"), 352, y + 40)
    p.t(40, 815, "Installatie uitsluitend door vakbekwame personen en volgens de plaatselijke voorschriften. Wijzigingen voorbehouden. Februari 2024", 6.2, colour="#555555")
    p.t(555, 815, rec["revision"], 6.2, colour="#555555", anchor="end")
    p.output(out)
