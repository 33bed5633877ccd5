"""What is seen of polygons painted over each other, pixel by pixel, and what
the colours come down to.

Reads JSON from standard input: `corners` of the picture (top left, top right,
bottom left), `across` in pixels, and `pieces` bottom to top, each with an
`outline` and `tones` of L*, a*, b* and share. The first piece is the floor and
covers everything. Fills by the non-zero rule at the middle of every pixel.
Prints the share of the picture each piece is seen on, of each family of hues,
and of each group of tones nearer than HyAB 10, the largest first, as the head
of crate/planner/src/readings/colour.rs describes them. Needs Python's standard
library only.
"""
import json
import math
import sys


def crossings(points, rows):
    """For each row of pixels, where a closed line crosses its middle, and which way."""
    out = {}
    for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1]):
        way = 1 if by > ay else -1
        low, high = (ay, by) if ay < by else (by, ay)
        for row in range(max(0, math.ceil(low - 0.5)), min(rows, math.ceil(high - 0.5))):
            x = ax + (bx - ax) * (row + 0.5 - ay) / (by - ay)
            out.setdefault(row, []).append((x, way))
    return out


def painted(asked):
    (x0, y0), (x1, y1), (x2, y2) = asked["corners"]
    wide, deep = math.hypot(x1 - x0, y1 - y0), math.hypot(x2 - x0, y2 - y0)
    scale = asked["across"] / wide
    columns, rows = asked["across"], round(deep * scale)

    def place(x, y):
        x, y = x - x0, y - y0
        along = (x * (x1 - x0) + y * (y1 - y0)) / wide
        return along * scale, (x * (x2 - x0) + y * (y2 - y0)) / deep * scale

    picture = [[0] * columns for _ in range(rows)]
    for n, piece in enumerate(asked["pieces"][1:], 1):
        line = [place(x, y) for x, y in piece["outline"]]
        for row, met in crossings(line, rows).items():
            winding, since = 0, None
            for x, way in sorted(met):
                before, winding = winding, winding + way
                if before == 0:
                    since = x
                elif winding == 0:
                    a = max(0, math.ceil(since - 0.5))
                    b = min(columns, math.ceil(x - 0.5))
                    if a < b:
                        picture[row][a:b] = [n] * (b - a)
    counts = [0] * len(asked["pieces"])
    for row in picture:
        for n in row:
            counts[n] += 1
    return [c / (rows * columns) for c in counts]


def family(l, a, b):
    if math.hypot(a, b) < 10:
        return "neutral"
    hue = math.degrees(math.atan2(b, a)) % 360
    return "green" if 110 <= hue < 200 else "cool" if 200 <= hue < 330 else "warm"


def main():
    asked = json.load(sys.stdin)
    seen = painted(asked)
    tones = []
    families = dict.fromkeys(["warm", "green", "cool", "neutral"], 0)
    for share, piece in zip(seen, asked["pieces"]):
        whole = sum(tone[3] for tone in piece["tones"])
        for l, a, b, part in piece["tones"]:
            tones.append((share * part / whole, (l, a, b)))
            families[family(l, a, b)] += share * part / whole
    groups = []
    for share, lab in sorted((t for t in tones if t[0] > 0), key=lambda t: (-t[0], t[1])):
        off = [abs(lab[0] - g[1][0]) + math.dist(lab[1:], g[1][1:]) for g in groups]
        if off and min(off) < 10:
            groups[off.index(min(off))][0] += share
        else:
            groups.append([share, lab])
    groups.sort(key=lambda g: -g[0])
    json.dump({"seen": seen, "families": families, "groups": [g[0] for g in groups]}, sys.stdout)


if __name__ == "__main__":
    main()
