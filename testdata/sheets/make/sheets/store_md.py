"""store-ls-144: a distributor's Markdown page, Spanish, four classes in one table, decimal comma, a second table of properties."""
from loc import comma
from sheets import ls_144

NAME, EXT = "store-ls-144", ".md"


def record():
    full = ls_144.record()
    keep = lambda k, *names: {n: full[k][n] for n in names}
    return {"maker": full["maker"], "series": full["series"], "language": "es",
            "cell": keep("cell", "technology", "count", "cut"), "body": keep("body", "length_mm", "width_mm", "depth_mm", "mass_kg", "junction_box_ip", "bypass_diodes"),
            "thermal": keep("thermal", "noct_c", "noct_tolerance_c", "alpha_isc_pct_per_k", "beta_voc_pct_per_k", "gamma_pmax_pct_per_k"), "limits": keep("limits", "system_voltage_v", "series_fuse_a", "temperature_min_c", "temperature_max_c"),
            "warranty": keep("warranty", "product_years", "performance_years"), "models": [{"name": m["name"], "stc": m["stc"]} for m in full["models"]]}


def build(rec, out):
    ms = rec["models"]
    t = rec["thermal"]
    line = lambda cells: "| " + " | ".join(cells) + " |\n"
    s = "# Lumbrera del Sur – LS-144M\n\nMódulo monocristalino PERC de 144 células partidas. Precio por vatio: 0,14. Entrega en 3 días; portes 45,00 por palé.\n\n## Características eléctricas (STC)\n\n"
    s += line(["Modelo"] + [m["name"] for m in ms]) + line(["---"] + ["---:"] * len(ms))
    for a, k in (("Potencia máxima (Pmáx) [W]", "pmax_w"), ("Tensión a potencia máxima (Vmp) [V]", "vmp_v"), ("Corriente a potencia máxima (Imp) [A]", "imp_a"), ("Tensión de circuito abierto (Voc) [V]", "voc_v"), ("Corriente de cortocircuito (Isc) [A]", "isc_a"), ("Eficiencia [%]", "efficiency_pct")):
        s += line([a] + [comma(m["stc"][k]) for m in ms])
    s += "\n## Otros datos\n\n" + line(["Propiedad", "Valor"]) + line(["---", "---"])
    for a, b in (("Dimensiones", "2278 × 1134 × 35 mm"), ("Peso", "28,3 kg"), ("Caja de conexiones", "IP68, 3 diodos de derivación"), ("Tensión máxima del sistema", "1500 V"), ("Fusible máximo en serie", "25 A"), ("Temperatura de funcionamiento", "-40 °C a +85 °C"), ("NOCT", "45 ± 2 °C"),
                 ("Coeficiente de temperatura Pmáx", comma(t["gamma_pmax_pct_per_k"]) + " %/°C"), ("Coeficiente de temperatura Voc", comma(t["beta_voc_pct_per_k"]) + " %/°C"), ("Coeficiente de temperatura Isc", comma(t["alpha_isc_pct_per_k"]) + " %/°C"), ("Garantía de producto", "12 años"), ("Garantía de potencia", "25 años")):
        s += line([a, b])
    open(out, "w").write(s + "\n*Instalación solo por personal autorizado.*\n")
