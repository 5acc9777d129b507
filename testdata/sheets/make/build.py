#!/usr/bin/env python3
"""Build the invented sheets: build.py [--say] [NAME…]. Writes NAME.pdf and NAME.expected.json beside this folder."""
import importlib, os, sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, HERE)
OUT = os.path.dirname(HERE)
from record import dump


def main():
    args = [a for a in sys.argv[1:] if not a.startswith("--")]
    for f in sorted(os.listdir(os.path.join(HERE, "sheets"))):
        mod = f[:-3]
        if not f.endswith(".py") or f == "__init__.py":
            continue
        m = importlib.import_module("sheets." + mod)
        if not hasattr(m, "NAME") or args and m.NAME not in args:
            continue
        print(m.NAME)
        if "--say" in sys.argv and hasattr(m, "design"):
            m.design.say()
        rec = m.record()
        parts = rec if isinstance(rec, list) else [rec]
        m.build(rec, os.path.join(OUT, m.NAME + getattr(m, "EXT", ".pdf")))
        for k, r in enumerate(parts, 1):
            dump(r, os.path.join(OUT, m.NAME + (f".{k}" if k > 1 else "") + ".expected.json"))


main()
