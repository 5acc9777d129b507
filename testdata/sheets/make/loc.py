"""Printed forms of a literal in other places: decimal comma, thousands dot, the dashes that stand for minus."""


def comma(lit):
    return str(lit).replace(".", ",")


def dot3(lit, sep="."):
    """1755 -> 1.755"""
    s = str(lit)
    return s[:-3] + sep + s[-3:] if len(s) > 3 else s


def minus(lit, sign="−"):
    return str(lit).replace("-", sign)
