"""store-ab-m120: a plain-text specification, German, aligned with spaces and dots, one class."""
from loc import comma
from sheets import ab_m120

NAME, EXT = "store-ab-m120", ".txt"


def record():
    full = ab_m120.record()
    keep = lambda k, *names: {n: full[k][n] for n in names}
    m = full["models"][1]
    return {"maker": full["maker"], "series": full["series"], "language": "de",
            "cell": keep("cell", "technology", "count", "cut"), "body": keep("body", "length_mm", "width_mm", "depth_mm", "mass_kg", "cable_mm2", "bypass_diodes", "junction_box_ip"),
            "thermal": full["thermal"], "limits": keep("limits", "system_voltage_v", "reverse_current_a", "temperature_min_c", "temperature_max_c", "front_load_pa", "rear_load_pa"), "tolerance": keep("tolerance", "power_plus_w", "power_minus_w"),
            "warranty": keep("warranty", "product_years", "performance_years"), "models": [{"name": m["name"], "stc": m["stc"], "nmot": m["nmot"]}]}


def build(rec, out):
    m = rec["models"][0]
    s, n, t = m["stc"], m["nmot"], rec["thermal"]
    L = ["Alder & Brook Photovoltaik", f"Solarmodul {m['name']}, 120 Halbzellen, monokristallin PERC", "", "Artikelnummer 4171-0375    Lagerbestand 412 Stück    Preis auf Anfrage", "", "ELEKTRISCHE DATEN" + " " * 21 + "STC" + " " * 8 + "NMOT", "-" * 56]
    for a, k, u in (("Nennleistung Pmpp", "pmax_w", "W"), ("Spannung bei Nennleistung Umpp", "vmp_v", "V"), ("Strom bei Nennleistung Impp", "imp_a", "A"), ("Leerlaufspannung Uoc", "voc_v", "V"), ("Kurzschlussstrom Isc", "isc_a", "A")):
        L.append(f"{a:<34}{comma(s[k]) + ' ' + u:>10}  {comma(n[k]) + ' ' + u:>10}")
    L += [f"{'Modulwirkungsgrad':<34}{comma(s['efficiency_pct']) + ' %':>10}", "", "WEITERE ANGABEN", "-" * 56]
    for a, b in (("Abmessungen", "1755 x 1038 x 35 mm"), ("Gewicht", "20,3 kg"), ("Anschlussdose", "IP68, 3 Bypassdioden"), ("Kabelquerschnitt", "4,0 mm²"), ("Leistungstoleranz", "0/+5 W"), ("Maximale Systemspannung", "1000 V"), ("Rückstrombelastbarkeit", "20 A"), ("Betriebstemperatur", "-40 °C bis +85 °C"), ("Schneelast / Windlast", "5400 Pa / 2400 Pa"), ("NMOT", "44 °C ± 2 °C"),
                 ("Temperaturkoeffizient Pmpp", comma(t["gamma_pmax_pct_per_k"]) + " %/K"), ("Temperaturkoeffizient Uoc", comma(t["beta_voc_pct_per_k"]) + " %/K"), ("Temperaturkoeffizient Isc", comma(t["alpha_isc_pct_per_k"]) + " %/K"), ("Produktgarantie", "15 Jahre"), ("Leistungsgarantie", "25 Jahre")):
        L.append(a + " " + "." * (34 - len(a)) + " " + b)
    L += ["", "Versand: Palette 1790 x 1120 x 1180 mm, 660 kg. Montage nur durch Fachkräfte."]
    open(out, "w").write("\n".join(L) + "\n")
