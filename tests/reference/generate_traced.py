"""Outlines of 100 traced things by shapely.

Each row is what a finger may draw round a thing in a photo, in pixels, and the
millimetres in a pixel: blobs of a few waves, stars, rounded boxes, a third of
them running on over their own beginning. `shapely` joins the faces it makes,
keeps the largest part, and says its area, perimeter, width and depth in millimetres; or
that no part is nearly all of it, and the line is to be refused.
"""
import math
import random
from pathlib import Path

from shapely.geometry import LineString, Polygon
from shapely.ops import polygonize, unary_union

LOOPS = 0.05


def radius(kind, pick):
    if kind == "blob":
        waves = [(n, pick.uniform(0, 0.3 / n), pick.uniform(0, math.tau)) for n in range(2, 6)]
        return lambda t: 1 + sum(a * math.cos(n * t + p) for n, a, p in waves)
    if kind == "star":
        n, deep = pick.randrange(3, 9), pick.uniform(0.1, 0.35)
        return lambda t: 1 - deep * abs(math.sin(n * t / 2))
    power = pick.uniform(3, 9)
    return lambda t: (abs(math.cos(t)) ** power + abs(math.sin(t)) ** power) ** (-1 / power)


def drawn(pick):
    kind = pick.choice(["blob", "star", "box"])
    of, late = radius(kind, pick), pick.choice([0, 0, pick.uniform(0.01, 0.05)])
    wide, deep = pick.uniform(80, 500), pick.uniform(80, 500)
    steps = pick.randrange(40, 160)
    line = []
    for i in range(steps):
        share = i / steps * (1 + late)
        t = math.tau * share
        # The hand drifts outwards on its way round.
        r = of(t) * (1 + 0.02 * share)
        line.append((round(600 + wide * r * math.cos(t)), round(600 + deep * r * math.sin(t))))
    return line


def eight(pick):
    wide, deep = pick.uniform(100, 400), pick.uniform(100, 400)
    turns = [math.tau * i / 90 for i in range(90)]
    return [(round(600 + wide * math.cos(t)), round(600 + deep * math.sin(2 * t))) for t in turns]


def outer(line, scale):
    """The largest filled part of what the line goes round, and whether it is nearly all."""
    ring = LineString([(x * scale, y * scale) for x, y in line + line[:1]])
    # Every face of the line cut at its crossings, then those side by side as one.
    whole = unary_union(list(polygonize(unary_union(ring))))
    parts = [Polygon(p.exterior) for p in getattr(whole, "geoms", [whole])]
    best = max(parts, key=lambda p: p.area)
    return best, best.area >= sum(p.area for p in parts) * (1 - LOOPS)


def main():
    pick = random.Random(31)
    lines = ["scale,line,area,perimeter,width,depth"]
    for n in range(100):
        line = eight(pick) if n % 10 == 9 else drawn(pick)
        scale = round(pick.uniform(0.15, 1.2), 4)
        best, one = outer(line, scale)
        text = ";".join(f"{x} {y}" for x, y in line)
        x0, y0, x1, y1 = best.bounds
        figures = [best.area, best.length, x1 - x0, y1 - y0] if one else [0, 0, 0, 0]
        lines.append(",".join([f"{scale}", text] + [f"{figure:.3f}" for figure in figures]))
    Path(__file__).with_name("traced.csv").write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
