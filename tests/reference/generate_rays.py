"""Which thing a lens sees at each pixel of 200 random tables, by casting rays.

Things stand free on a table, round about an upright axis and made of frusta:
cylinders, tumblers, bottles, carafes, stem glasses. A ray goes from the lens
through the middle of each pixel of the frame on the table; the thing it meets
first is the one that is seen. Written per scene: the frame, the lens above the
table, the things, which of them each pixel shows as runs of `id*count`, row by
row, 0 for the table, and the share of pixels that lie within 2 mm of a change
of thing, found by casting each ray's neighbours 2 mm off it.
"""
import math
import random
from pathlib import Path

import numpy as np

# Height and width in percent of the whole, foot first, as written down beside
# each thing of the catalogue.
PROFILES = {
    "cylinder": [(0, 100), (100, 100)],
    "water-glass": [(0, 80), (100, 100)],
    "bottle": [(0, 100), (62, 100), (76, 42), (100, 36)],
    "oil-carafe": [(0, 100), (26, 100), (56, 40), (100, 46)],
    "wine-glass": [(0, 78), (3, 76), (6, 12), (44, 12), (60, 80), (80, 100), (100, 86)],
}
ACROSS, DOWN = 90, 60
NEAR_EDGE = 2.0


def frustum(foot, lens, low, high, r0, r1, ground):
    """Least share of the way from the lens to the ground points at which each
    ray meets the closed frustum; infinite where it passes by."""
    eye = np.array([lens[0] - foot[0], lens[1] - foot[1]])
    way = ground - np.array(lens[:2])
    height = lens[2]
    best = np.full(len(ground), np.inf)
    # Side: |eye + t·way| = r(z), z = height·(1 − t), r linear in z.
    slope = (r1 - r0) / (high - low)
    a0 = r0 + slope * (height - low)
    b0 = -slope * height
    a = (way**2).sum(1) - b0 * b0
    b = 2 * (way @ eye - a0 * b0)
    c = eye @ eye - a0 * a0
    root = b * b - 4 * a * c
    with np.errstate(divide="ignore", invalid="ignore"):
        for sign in (-1, 1):
            t = (-b + sign * np.sqrt(root)) / (2 * a)
            z = height * (1 - t)
            fits = (root >= 0) & (t > 0) & (z >= low) & (z <= high) & (a0 + b0 * t >= 0)
            best = np.where(fits & (t < best), t, best)
    for z, r in ((low, r0), (high, r1)):
        t = 1 - z / height
        inside = ((eye + t * way) ** 2).sum(1) <= r * r
        best = np.where(inside & (t < best), t, best)
    return best


def cast(things, lens, ground):
    first = np.full(len(ground), np.inf)
    seen = np.zeros(len(ground), dtype=int)
    for n, (prop, x, y, diameter, height) in enumerate(things):
        profile = PROFILES[prop]
        for (h0, w0), (h1, w1) in zip(profile, profile[1:]):
            low, high = height * h0 / 100, height * h1 / 100
            radii = diameter * w0 / 200, diameter * w1 / 200
            t = frustum((x, y), lens, low, high, *radii, ground)
            nearer = t < first
            first, seen = np.where(nearer, t, first), np.where(nearer, n + 1, seen)
    return seen


def scene(pick):
    width = 6 * pick.randrange(135, 265)
    depth = width * 2 // 3
    things = []
    for _ in range(400):
        if len(things) == pick.randrange(8, 25):
            break
        prop = pick.choice(sorted(PROFILES))
        diameter = pick.randrange(60, 110) if prop != "cylinder" else pick.randrange(60, 320)
        height = pick.randrange(20, 320) if prop == "cylinder" else pick.randrange(90, 320)
        x, y = pick.randrange(0, width), pick.randrange(0, depth)
        clear = all(
            math.hypot(x - ox, y - oy) >= (diameter + od) / 2 + 4 for _, ox, oy, od, _ in things
        )
        if clear:
            things.append((prop, x, y, diameter, height))
    return width, depth, things


def runs(ids):
    out, at = [], 0
    while at < len(ids):
        end = at
        while end < len(ids) and ids[end] == ids[at]:
            end += 1
        out.append(f"{ids[at]}*{end - at}")
        at = end
    return " ".join(out)


def main():
    pick = random.Random(20_260_912)
    lines = ["width,depth,focal,lens,things,seen,edge"]
    for _ in range(200):
        width, depth, things = scene(pick)
        focal = pick.choice([24, 35, 50, 85])
        # 36 × 24 mm filled by the frame: thin lens.
        height = focal * (1 + width / 36)
        lens = (width / 2, depth / 2, height)
        x = (np.arange(ACROSS) + 0.5) * width / ACROSS
        y = (np.arange(DOWN) + 0.5) * depth / DOWN
        ground = np.array([(u, v) for v in y for u in x])
        seen = cast(things, lens, ground)
        edge = np.zeros(len(ground), dtype=bool)
        for n in range(8):
            off = NEAR_EDGE * np.array([math.cos(n * math.pi / 4), math.sin(n * math.pi / 4)])
            edge |= cast(things, lens, ground + off) != seen
        row = [
            str(width), str(depth), str(focal), f"{height:.6f}",
            "|".join(" ".join(map(str, (sorted(PROFILES).index(t[0]), *t[1:]))) for t in things),
            runs(seen.tolist()),
            f"{edge.mean():.4f}",
        ]
        lines.append(",".join(row))
    Path(__file__).with_name("rays.csv").write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
