"""Plane geometry of 1,000 random scenes, by shapely.

Each scene is a frame and three or four polygons on whole millimetres, the
later ones above the earlier ones. Written: what is seen of each within the
frame, the overlap of the first two, their gap, how deep they overlap, and the
area of the hull of all.

How deep the first two overlap is the distance from the origin to the outline
of the set of all moves that make them overlap: the union over pairs of
triangles of the hulls of all differences of their corners.
"""
import math
import random
from pathlib import Path

import shapely
from shapely import Point, Polygon
from shapely.ops import unary_union


def whole(points):
    return [(round(x), round(y)) for x, y in points]


def turned_box(pick, cx, cy, width, depth):
    turn = pick.choice([0, 0, 90, pick.uniform(0, 360)])
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    half = [(-width, -depth), (width, -depth), (width, depth), (-width, depth)]
    return whole([(cx + (x * c - y * s) / 2, cy + (x * s + y * c) / 2) for x, y in half])


def star(pick, cx, cy, reach):
    corners = pick.randrange(3, 9)
    angles = sorted(pick.uniform(0, 2 * math.pi) for _ in range(corners))
    far = [reach * pick.uniform(0.3, 1) for _ in angles]
    return whole([
        (cx + r * math.cos(t), cy + r * math.sin(t)) for r, t in zip(far, angles)
    ])


def polygon(pick):
    cx, cy = pick.uniform(100, 1100), pick.uniform(100, 800)
    while True:
        if pick.random() < 0.5:
            points = turned_box(pick, cx, cy, pick.uniform(40, 500), pick.uniform(40, 300))
        else:
            points = star(pick, cx, cy, pick.uniform(60, 320))
        if Polygon(points).is_valid and Polygon(points).area > 500:
            # Either direction must do.
            return points[::-1] if pick.random() < 0.5 else points


def depth(a, b):
    def corners(shape):
        parts = shapely.constrained_delaunay_triangles(shape)
        return [list(t.exterior.coords)[:-1] for t in parts.geoms]

    moves = unary_union([
        shapely.MultiPoint([(q[0] - p[0], q[1] - p[1]) for p in s for q in t]).convex_hull
        for s in corners(a) for t in corners(b)
    ])
    origin = Point(0, 0)
    return moves.boundary.distance(origin) if moves.contains(origin) else 0.0


def written(points):
    return " ".join(f"{x} {y}" for x, y in points)


def main():
    pick = random.Random(20_260_902)
    lines = ["frame,polygons,visible,overlap,gap,depth,hull"]
    while len(lines) <= 1000:
        frame = turned_box(pick, 600, 450, pick.uniform(600, 1200), pick.uniform(400, 900))
        scene = [polygon(pick) for _ in range(pick.randrange(3, 5))]
        shapes = [Polygon(p) for p in scene]
        seen = []
        for i, shape in enumerate(shapes):
            rest = shape.intersection(Polygon(frame))
            for above in shapes[i + 1:]:
                rest = rest.difference(above)
            seen.append(rest.area)
        a, b = shapes[:2]
        lines.append(",".join([
            written(frame),
            "|".join(written(p) for p in scene),
            " ".join(f"{area:.4f}" for area in seen),
            f"{a.intersection(b).area:.4f}",
            f"{a.distance(b):.6f}",
            f"{depth(a, b):.6f}",
            f"{unary_union(shapes).convex_hull.area:.4f}",
        ]))
    Path(__file__).with_name("scenes.csv").write_text("\n".join(lines) + "\n")


main()
