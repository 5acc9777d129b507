"""The expected record: numbers keep the literal that is printed."""
import json, re
from decimal import Decimal, ROUND_HALF_UP


class N(str):
    """A number's literal, written into JSON as it stands."""
    def __new__(cls, s):
        s = str(s)
        assert re.fullmatch(r"-?(0|[1-9]\d*)(\.\d+)?", s), s
        return super().__new__(cls, s)


def num(x, d=0):
    """x to d decimals, half up, as a literal."""
    q = Decimal(1).scaleb(-d)
    return N(format(Decimal(repr(round(x, 9))).quantize(q, ROUND_HALF_UP), "f"))


def dumps(x, ind=0):
    pad, pad1 = " " * ind, " " * (ind + 1)
    if isinstance(x, N):
        return str(x)
    if isinstance(x, dict):
        if not x:
            return "{}"
        flat = all(isinstance(v, N) for v in x.values())
        items = [f"{json.dumps(k, ensure_ascii=False)}: {dumps(v, ind + 1)}" for k, v in x.items()]
        if flat and len(items) > 2:
            return "{" + ", ".join(items) + "}"
        return "{\n" + ",\n".join(pad1 + i for i in items) + "\n" + pad + "}"
    if isinstance(x, (list, tuple)):
        if all(isinstance(v, str) for v in x):
            return "[" + ", ".join(dumps(v) for v in x) + "]"
        return "[\n" + ",\n".join(pad1 + dumps(v, ind + 1) for v in x) + "\n" + pad + "]"
    if isinstance(x, (int, float)) and not isinstance(x, bool):
        return str(x)
    return json.dumps(x, ensure_ascii=False)


TOP = ("format maker series revision issued language source cell body bifacial thermal limits tolerance conditions warranty "
       "packing certificates low_light models _planted _needs_ink _converted _note").split()


def dump(rec, path):
    bad = set(rec) - set(TOP)
    assert not bad, bad
    out = {"format": "pvtally.sheet/1"}
    out.update((k, rec[k]) for k in TOP if k in rec)
    with open(path, "w") as f:
        f.write(dumps(out) + "\n")


def at(rec, pointer):
    *way, last = pointer.strip("/").split("/")
    for k in way:
        rec = rec[int(k)] if isinstance(rec, list) else rec[k]
    return rec, (int(last) if isinstance(rec, list) else last)


def plant(rec, pointer, printed, kind):
    """Put a mistake into the record before it is printed, and keep the honest value beside it."""
    node, key = at(rec, pointer)
    rec.setdefault("_planted", []).append({"field": pointer, "printed": N(printed), "honest": node[key], "kind": kind})
    node[key] = N(printed)


def converted(lit, factor, zero=0.0):
    """(lit + zero) * factor with the fewest decimals that stay within half a unit of lit's last digit, as the record keeps converted values."""
    half = 0.5 * 10.0 ** -(len(lit.split(".")[1]) if "." in lit else 0) * abs(factor)
    v = (float(lit) + zero) * factor
    for d in range(1, 10):
        s = f"{v:.{d}f}"
        if abs(float(s) - v) < half:
            break
    return N(s.rstrip("0").rstrip("."))


INCH, LB, PSF = 25.4, 0.45359237, 47.880259
