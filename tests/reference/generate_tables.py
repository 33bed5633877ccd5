"""Balance and triangle of 1,000 random laid tables, from the layout on.

The mass of a dish is the sum over its visible parts, and those of what lies on
it, of area times the mean HyAB along the visible outline to what lies just
outside, over 100 and from 0.1 to 1. Areas and lengths are taken with shapely,
exactly; Lab is written out from IEC 61966-2-1 and CIE 15. Scores: Zhang & Xue
2026 (exponential form), and 4*sqrt(3)*area/(sum of squared sides) under its
caps. Every dish is a polygon on whole millimetres, so that no curve is cut
into chords; some lie on others.
"""
import math
import random
from pathlib import Path

from shapely import LineString, Polygon, box, union_all

MATRIX = [
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
]
WHITE = (0.95047, 1.0, 1.08883)


def lab(srgb):
    light = [c / 3294.6 if c <= 10.31475 else ((c / 255 + 0.055) / 1.055) ** 2.4 for c in srgb]

    def root(t):
        return t ** (1 / 3) if t > 216 / 24389 else (24389 / 27 * t + 16) / 116

    x, y, z = (
        root(sum(m * c for m, c in zip(row, light)) / white)
        for row, white in zip(MATRIX, WHITE)
    )
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def hyab(a, b):
    a, b = lab(a), lab(b)
    return abs(a[0] - b[0]) + math.hypot(a[1] - b[1], a[2] - b[2])


def parted(mine, theirs):
    """Mean difference of two mixes, each a list of (colour, share)."""
    pairs = [(hyab(a, b), s * t) for a, s in mine for b, t in theirs]
    return sum(d * w for d, w in pairs) / sum(w for _, w in pairs)


def masses(table, floor, frame, dishes):
    """(root, mass, x, y) of each visible piece on the table; none with slivers."""
    pieces = [(Polygon(points), mix) for _, _, points, mix in dishes]
    out = []
    for n, (shape, mix) in enumerate(pieces):
        above = union_all([s for s, _ in pieces[n + 1:]])
        seen = shape.intersection(frame).difference(above)
        edge = LineString(shape.exterior.coords).intersection(frame).difference(above)
        length = edge.length
        if seen.area > 0 and length < 30:
            return []  # a sliver, which a walk along its outline may miss
        if seen.area == 0:
            continue
        grounds = [*reversed(pieces[:n]), table]
        total, rest = 0.0, edge
        for ground, theirs in grounds:
            total += rest.intersection(ground).length * parted(mix, theirs)
            rest = rest.difference(ground)
        total += rest.length * parted(mix, floor)
        contrast = min(1.0, max(0.1, total / length / 100))
        centre = seen.centroid
        out.append((dishes[n][1], seen.area * contrast, centre.x, centre.y))
    return out


def balance(frame, weights):
    total = sum(m for _, m, _, _ in weights)
    x = sum(m * x for _, m, x, _ in weights) / total
    y = sum(m * y for _, m, _, y in weights) / total
    left, top, right, bottom = frame.bounds
    away = abs(x - (left + right) / 2) + abs(y - (top + bottom) / 2)
    return 100 * math.exp(-5 * away / ((right - left + bottom - top) / 2))


def triangle(frame, weights):
    """Score of the three heaviest dishes, -1 for fewer, and how clear they are."""
    whole = {}
    for root, m, x, y in weights:
        sums = whole.setdefault(root, [0.0, 0.0, 0.0])
        for i, part in enumerate((m, m * x, m * y)):
            sums[i] += part
    heavy = sorted(whole.values(), reverse=True)
    if len(heavy) < 3:
        return -1.0, 99.0
    a, b, c = [(x / m, y / m) for m, x, y in heavy[:3]]
    area = abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2
    squares = sum((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 for p, q in ((a, b), (b, c), (c, a)))
    quality = 4 * math.sqrt(3) * area / squares
    score = 100 * math.sqrt(min(1, quality / 0.75) * min(1, area / (0.11 * frame.area)))
    return score, heavy[2][0] / heavy[3][0] if len(heavy) > 3 else 99.0


def outline(pick, x, y, reach):
    corners = pick.randrange(4, 9)
    while True:
        angles = sorted(pick.uniform(0, 2 * math.pi) for _ in range(corners))
        points = [
            (x + round(reach * pick.uniform(0.6, 1) * math.cos(t)),
             y + round(reach * pick.uniform(0.6, 1) * math.sin(t)))
            for t in angles
        ]
        if Polygon(points).is_valid and Polygon(points).area > reach * reach / 2:
            return points


def mixed(pick):
    def colour():
        return [pick.randrange(256) for _ in range(3)]

    share = pick.choice([100, 100, 30, 60])
    return [(colour(), share)] + ([(colour(), 100 - share)] if share < 100 else [])


def laid(pick):
    """A list of (place it lies on or 0, root, points, mix), numbered from 1."""
    dishes = []
    for _ in range(pick.randrange(3, 8)):
        x, y = pick.randrange(100, 1100), pick.randrange(100, 800)
        reach = pick.randrange(50, 220)
        root = len(dishes) + 1
        dishes.append((0, root, outline(pick, x, y, reach), mixed(pick)))
        if pick.random() < 0.4:
            dishes.append((root, root, outline(pick, x, y, reach // 2), mixed(pick)))
    return dishes


def main():
    pick = random.Random(20_260_907)
    lines = ["table,floor,frame,dishes,balance,triangle,clear"]
    while len(lines) <= 1000:
        table = [pick.randrange(256) for _ in range(3)]
        floor = [pick.randrange(256) for _ in range(3)]
        width = 3 * pick.randrange(200, 420)
        x, y = pick.randrange(500, 700), pick.randrange(350, 550)
        frame = box(x - width / 2, y - width / 3, x + width / 2, y + width / 3)
        dishes = laid(pick)
        weights = masses((box(0, 0, 1200, 900), [(table, 100)]), [(floor, 100)], frame, dishes)
        if not weights:
            continue
        score, clear = triangle(frame, weights)
        written = []
        for on, _, points, mix in dishes:
            first, second = mix[0], (mix[1:] or [([0, 0, 0], 0)])[0]
            numbers = [on, *first[0], first[1], *second[0], second[1]]
            written.append(numbers + [c for p in points for c in p])
        lines.append(",".join([
            " ".join(map(str, table)),
            " ".join(map(str, floor)),
            f"{x} {y} {width}",
            "|".join(" ".join(map(str, d)) for d in written),
            f"{balance(frame, weights):.4f}",
            f"{score:.4f}",
            f"{clear:.4f}",
        ]))
    Path(__file__).with_name("tables.csv").write_text("\n".join(lines) + "\n")


main()
