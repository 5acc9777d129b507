"""store-kr-hc108: a shop's page for one class of the Kestrel Ridge HC108, HTML: a definition list and two tables, with prices, parcel data and other products as decoys."""
from record import N, dumps
from sheets import kr_hc108

NAME, EXT = "store-kr-hc108", ".html"


def record():
    full = kr_hc108.record()
    m = {k: v for k, v in full["models"][3].items() if k in ("name", "stc", "nmot")}
    pick = lambda k, *names: {n: full[k][n] for n in names}
    return {
        "maker": full["maker"], "series": full["series"], "language": "en",
        "cell": pick("cell", "technology", "count", "arrangement", "cut"), "body": pick("body", "length_mm", "width_mm", "depth_mm", "mass_kg", "cable_length_mm", "bypass_diodes", "junction_box_ip", "connector"),
        "bifacial": {"factor_pct": N(70)}, "thermal": full["thermal"], "limits": pick("limits", "system_voltage_v", "series_fuse_a", "temperature_min_c", "temperature_max_c", "front_load_pa", "rear_load_pa"),
        "tolerance": pick("tolerance", "power_plus_w", "power_minus_w"), "conditions": {"stc": {"irradiance_w_m2": N(1000), "cell_c": N(25), "air_mass": N("1.5")}, "nmot": {"irradiance_w_m2": N(800), "ambient_c": N(20), "wind_m_s": N(1)}},
        "warranty": pick("warranty", "product_years", "performance_years", "final_output_pct"), "models": [m],
    }


def build(rec, out):
    m = rec["models"][0]
    s, n, t = m["stc"], m["nmot"], rec["thermal"]
    rows = [("Maximum power (Pmax)", "pmax_w", "W"), ("Voltage at maximum power (Vmp)", "vmp_v", "V"), ("Current at maximum power (Imp)", "imp_a", "A"), ("Open-circuit voltage (Voc)", "voc_v", "V"), ("Short-circuit current (Isc)", "isc_a", "A")]
    table = "\n".join(f"      <tr><th scope=\"row\">{a}</th><td>{s[k]}&nbsp;{u}</td><td>{n[k]}&nbsp;{u}</td></tr>" for a, k, u in rows)
    open(out, "w").write(f"""<!doctype html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <title>{m['name']} – buy solar modules – The Ridge Shop</title>
  <style>.hidden{{display:none}} td{{padding:2px 8px}}</style>
  <script>var basket = {{"power": 380, "voc": 41.2, "price": 84.90}};</script>
</head>
<body>
  <nav><a href="/">Home</a> &gt; <a href="/modules">Solar modules</a> &gt; Kestrel Ridge Solar</nav>
  <h1>Kestrel Ridge Solar {m['name']}, {s['pmax_w']} W</h1>
  <p class="price">84.90 per piece, from 36 pieces 79.50. Delivery in 5 to 7 days. Rated 4.6 of 5 by 31 customers.</p>
  <p>Bifacial mono PERC half-cell module with 108 cells (6 &times; 18). 12-year product warranty, 30-year linear power warranty ({rec['warranty']['final_output_pct']}&nbsp;% after 30 years).</p>
  <div class="hidden">Old model: 380 W, Voc 41.20 V, Isc 11.60 A, 1755 x 1038 x 35 mm</div>
  <h2>Electrical data</h2>
  <table>
    <thead><tr><th></th><th>STC</th><th>NMOT</th></tr></thead>
    <tbody>
{table}
      <tr><th scope="row">Module efficiency</th><td colspan="2">{s['efficiency_pct']}&nbsp;%</td></tr>
    </tbody>
  </table>
  <p><small>STC: 1000 W/m&sup2;, cell temperature 25&nbsp;&deg;C, AM 1.5. NMOT: 800 W/m&sup2;, ambient temperature 20&nbsp;&deg;C, wind speed 1 m/s.</small></p>
  <h2>Specifications</h2>
  <dl>
    <dt>Series</dt><dd>KR-HC108-M10</dd>
    <dt>Dimensions (L &times; W &times; H)</dt><dd>1722 &times; 1134 &times; 30 mm</dd>
    <dt>Weight</dt><dd>{rec['body']['mass_kg']} kg</dd>
    <dt>Bifaciality</dt><dd>70&nbsp;%</dd>
    <dt>Junction box</dt><dd>IP68, 3 bypass diodes</dd>
    <dt>Cable</dt><dd>1200 mm / 1200 mm, KR-Lock 4</dd>
    <dt>Max. system voltage</dt><dd>1500 V DC</dd>
    <dt>Max. series fuse</dt><dd>25 A</dd>
    <dt>Power tolerance</dt><dd>0 ~ +5 W</dd>
    <dt>Operating temperature</dt><dd>&minus;40 &deg;C to +85 &deg;C</dd>
    <dt>Static load front / rear</dt><dd>5400 Pa / 2400 Pa</dd>
  </dl>
  <h2>Temperature behaviour</h2>
  <table>
    <tr><td>NMOT</td><td>43 &plusmn; 2 &deg;C</td></tr>
    <tr><td>Temperature coefficient of Pmax</td><td>{t['gamma_pmax_pct_per_k'].replace('-', '&minus;')} %/&deg;C</td></tr>
    <tr><td>Temperature coefficient of Voc</td><td>{t['beta_voc_pct_per_k'].replace('-', '&minus;')} %/&deg;C</td></tr>
    <tr><td>Temperature coefficient of Isc</td><td>{t['alpha_isc_pct_per_k']} %/&deg;C</td></tr>
  </table>
  <h2>Shipping</h2>
  <p>One parcel: 1800 &times; 1180 &times; 90 mm, 27.0 kg. Full pallet of 36 modules: 925 kg.</p>
  <aside><h3>Others also bought</h3><ul><li>Fourmile FM-108T-435, 435 W, 88.00</li><li>Roof hook set, 12 pieces, 5.20 kg</li></ul></aside>
  <footer>The Ridge Shop, 2 Market Square, Ridgeham. Electrical installation only by licensed persons.</footer>
</body>
</html>
""")
