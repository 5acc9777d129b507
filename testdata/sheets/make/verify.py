#!/usr/bin/env python3
"""Look for every number of every expected record in the words of its sheet, in any printed form, and report those that are not there.
Also check the numbers against each other where no mistake is planted: product, efficiency, classes on a line, NMOT/NOCT, packing, warranty, mass."""
import glob, json, os, re, subprocess, sys

HERE = os.path.dirname(os.path.abspath(__file__))
OUT = os.path.dirname(HERE)


class Num(float):
    def __new__(cls, s):
        o = float.__new__(cls, s)
        o.s = s
        return o


def leaves(x, p=""):
    if isinstance(x, dict):
        for k, v in x.items():
            if not k.startswith("_"):
                yield from leaves(v, p + "/" + k)
    elif isinstance(x, list):
        for k, v in enumerate(x):
            yield from leaves(v, f"{p}/{k}")
    elif isinstance(x, Num):
        yield p, x


def words(name):
    for ext in (".html", ".md", ".txt"):
        f = os.path.join(OUT, name + ext)
        if os.path.exists(f):
            import html
            t = html.unescape(open(f).read())
            break
    else:
        t = subprocess.run(["pdftotext", "-layout", os.path.join(OUT, name + ".pdf"), "-"], capture_output=True, text=True).stdout
    t = re.sub(r"(?<=\d\.) (?=\d ?kg)", "", t)  # a space inside a number
    t = t.translate({0xFF10 + k: str(k) for k in range(10)} | {0xFF0E: "."})
    return t.replace("\u00a0", " ").replace("−", "-").replace("–", "-").replace("￢", "-")


def forms(p, v):
    s = v.s.lstrip("-")
    out = {s}
    if p.endswith("first_year_loss_pct"):
        d = len(s.split(".")[1]) if "." in s else 0
        out.add(f"{100-v:.{d}f}")
    if p.endswith("relative_efficiency_pct"):
        out.add(f"{100-v:.1f}")
    if "_per_k" in p and ("_v_" in p or "_a_" in p):
        out |= {f"{abs(v)*1000:g}", f"{abs(v)*1000:.1f}"}
    if p.endswith("factor_pct"):
        out.add(f"{v/100:.2f}")
    if p.endswith("cable_length_mm") or "cable_length" in p:
        out.add(f"{v/1000:g}")
    more = set()
    for f in out:
        i, _, d = f.partition(".")
        for k in (i, i[:-3] + "." + i[-3:] if len(i) > 3 else i, i[:-3] + "," + i[-3:] if len(i) > 3 else i):
            more |= {k + ("." + d if d else ""), k + ("," + d if d else "")}
    return more


def find(t, f, neg):
    for m in re.finditer(r"(?<![\d])" + re.escape(f) + r"(?![\d])", t):
        if not neg or "-" in t[max(0, m.start() - 3):m.start()]:
            return True
    return False


def relations(name, r):
    say = lambda *a: print("  ", name, *a)
    b, planted = r.get("body", {}), {x["field"] for x in r.get("_planted", [])}
    for k, m in enumerate(r["models"]):
        for c in ("stc", "nmot", "noct", "bnpi"):
            e = m.get(c) or {}
            if {"pmax_w", "vmp_v", "imp_a"} <= set(e) and not any(f"/models/{k}/{c}" in x for x in planted):
                p = e["vmp_v"] * e["imp_a"]
                tol = .5 * 10 ** -dec(e["vmp_v"]) * e["imp_a"] + .5 * 10 ** -dec(e["imp_a"]) * e["vmp_v"] + .5 * 10 ** -dec(e["pmax_w"]) + 1e-6
                if abs(p - e["pmax_w"]) > tol:
                    say(c, k, "product", p, e["pmax_w"])
        s = m["stc"]
        if "efficiency_pct" in s and "length_mm" in b and not any(f"/models/{k}/stc" in x for x in planted):
            e = s["pmax_w"] / b["length_mm"] / b["width_mm"] * 1e5
            if abs(e - s["efficiency_pct"]) > .5 * 10 ** -dec(s["efficiency_pct"]) + .006:
                say(k, "efficiency", e, s["efficiency_pct"])
        for c, tn in (("nmot", "nmot_c"), ("noct", "noct_c")):
            th = r.get("thermal", {})
            t = th.get(tn) or th.get("noct_c") or th.get("nmot_c")
            if m.get(c) and t and not any(f"/models/{k}/" in x for x in planted):
                p = .8 * (1 + th["gamma_pmax_pct_per_k"] / 100 * (t - 25)) * s["pmax_w"]
                if abs(p / m[c]["pmax_w"] - 1) > .012:
                    say(c, k, "predicted", p, m[c]["pmax_w"])
    w = r.get("warranty", {})
    if {"first_year_loss_pct", "annual_loss_pct", "final_output_pct", "performance_years"} <= set(w):
        e = 100 - w["first_year_loss_pct"] - w["annual_loss_pct"] * (w["performance_years"] - 1)
        if abs(e - w["final_output_pct"]) > .051:
            say("warranty", e, w["final_output_pct"])
    p = r.get("packing", {})
    if {"modules_per_pallet", "pallets_per_container", "modules_per_container"} <= set(p) and p["modules_per_pallet"] * p["pallets_per_container"] != p["modules_per_container"]:
        say("packing", p)
    if "modules_per_container" in p and p["modules_per_container"] * b["mass_kg"] > 28500:
        say("payload", p["modules_per_container"] * b["mass_kg"])
    if "mass_kg" in b:
        d = b["mass_kg"] / b["length_mm"] / b["width_mm"] * 1e6
        glass = 2.5 * (b.get("front_glass_mm", 0) + b.get("rear_glass_mm", 0))
        if not glass + 1.5 < d < glass + 4.5:
            say("mass", round(d, 2), "kg/m2, glass", glass)
    f, isc = r.get("limits", {}).get("series_fuse_a"), max(float(m["stc"]["isc_a"]) for m in r["models"])
    if f and not 1.5 <= f / isc <= 2.6:
        say("fuse", f / isc)


def dec(n):
    return len(n.s.split(".")[1]) if "." in n.s else 0


def main():
    bad = 0
    for f in sorted(glob.glob(os.path.join(OUT, "*.expected.json"))):
        name = re.sub(r"(\.\d)?\.expected\.json$", "", os.path.basename(f))
        r = json.load(open(f), parse_float=Num, parse_int=Num)
        skip = set(r.get("_needs_ink", [])) | set(r.get("_converted", []))
        t = words(name)
        missing = [(p, v.s) for p, v in leaves(r) if p not in skip and not any(find(t, x, v < 0) for x in forms(p, v))]
        print(f"{os.path.basename(f):34} values {sum(1 for _ in leaves(r)):4}  not found {len(missing)}")
        for p, s in missing:
            print("     ", p, s)
        relations(name, r)
        bad += len(missing)
    return bad


main()
