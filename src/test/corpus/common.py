"""How sellers write a cell: small functions of (set, running number)."""

from book import Col


def whole(s, n):
    """The size as a bare whole number."""
    return int(s["inches"]) if s["inches"] == int(s["inches"]) else s["inches"]


def mark(suffix):
    return lambda s, n: f"{whole(s, n)}{suffix}"


def count(s, n):
    return n


def english(s, n):
    return f"{s['asking']:,.2f}"


def german(s, n):
    return english(s, n).translate(str.maketrans(",.", ".,"))


def french(space):
    return lambda s, n: english(s, n).replace(",", space).replace(".", ",")


def swiss(s, n):
    return english(s, n).replace(",", "'")


def plain(s, n):
    return f"{s['asking']:.2f}"


def constant(v):
    return lambda s, n: v


def after(prefix, how, suffix=""):
    return lambda s, n: prefix + how(s, n) + suffix


def not_tv(maker, what, asking=None, **cells):
    """A row that is no television."""
    return dict(skip=True, must="not a television", cells={"maker": maker, "model": what, "asking": asking, **cells})


def many(g, s, n):
    """The same set n times, each with a serial."""
    return {**s, "serials": [s["serial"]] + [g.serial() for _ in range(n - 1)]}


__all__ = ["Col", "whole", "mark", "count", "english", "german", "french", "swiss", "plain", "constant", "after", "not_tv", "many"]
