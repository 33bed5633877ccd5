"""Which thing a lens sees at each pixel of 200 random tables of things piled
up, by casting rays.

Boxes and boards turned any way, things standing on boards, bowls on the table
or on a board, empty or with something in them that ends below the rim. A ray
goes from the lens through the middle of each pixel of the frame on the table;
the thing it meets first is the one that is seen, but that a ray which comes
down through the mouth of a bowl meets what lies in it, or else the bowl's
inside. Things in a bowl sink as far as its outer wall is wide enough for them,
at least to its floor, and narrow by a fifth at their very top, as the planner
has it. Written per scene: the frame, the lens above the table, the things
(kind, middle, width, depth, height, turn, what it stands on or 0), which of
them each pixel shows as runs of `id*count`, row by row, 0 for the table, and
the share of pixels that lie within 2 mm of a change of thing.
"""
import math
import random
from pathlib import Path

import numpy as np

from generate_rays import frustum, runs

# Height and width in percent of the whole, foot first, as written down beside
# each thing of the catalogue.
PROFILES = {
    "cylinder": [(0, 100), (100, 100)],
    "water-glass": [(0, 80), (100, 100)],
    "bottle": [(0, 100), (62, 100), (76, 42), (100, 36)],
    "serving-bowl": [(0, 46), (22, 64), (62, 88), (100, 100)],
    "filling": [(0, 100), (95, 100), (100, 80)],
}
KINDS = ["box", *sorted(PROFILES)]
RIM = 12
ACROSS, DOWN = 90, 60
NEAR_EDGE = 2.0


class Thing:
    def __init__(self, kind, x, y, wide, deep, height, turn, on):
        self.kind, self.at, self.size = kind, (x, y), (wide, deep)
        self.height, self.turn, self.on = height, turn, on
        self.base = 0.0

    def reach(self):
        return max(self.size) / 2 if self.kind != "box" else math.hypot(*self.size) / 2


def rests(thing, below):
    if below.kind != "serving-bowl":
        return below.base + below.height
    share = thing.size[0] / below.size[0] * 100
    low = 1.0
    profile = PROFILES["serving-bowl"]
    for (h0, w0), (h1, w1) in zip(profile, profile[1:]):
        if w0 >= share:
            low = h0 / 100
            break
        if w1 >= share:
            low = (h0 + (h1 - h0) * (share - w0) / (w1 - w0)) / 100
            break
    return below.base + max(min(6.0, 0.3 * below.height), below.height * low)


def round_thing(thing, lens, ground):
    profile = PROFILES[thing.kind]
    best = np.full(len(ground), np.inf)
    for (h0, w0), (h1, w1) in zip(profile, profile[1:]):
        low, high = (thing.base + thing.height * h / 100 for h in (h0, h1))
        radii = thing.size[0] * w0 / 200, thing.size[0] * w1 / 200
        best = np.minimum(best, frustum(thing.at, lens, low, high, *radii, ground))
    return best


def box(thing, lens, ground):
    """The same of a turned box: three slabs."""
    c, s = math.cos(math.radians(thing.turn)), math.sin(math.radians(thing.turn))
    eye = np.array([lens[0] - thing.at[0], lens[1] - thing.at[1]])
    way = ground - np.array(lens[:2])
    enter, leave = np.zeros(len(ground)), np.full(len(ground), np.inf)
    slabs = [
        (eye @ [c, s], way @ [c, s], -thing.size[0] / 2, thing.size[0] / 2),
        (eye @ [-s, c], way @ [-s, c], -thing.size[1] / 2, thing.size[1] / 2),
        (lens[2], np.full(len(ground), -lens[2]), thing.base, thing.base + thing.height),
    ]
    with np.errstate(divide="ignore", invalid="ignore"):
        for start, step, low, high in slabs:
            a, b = (low - start) / step, (high - start) / step
            enter = np.maximum(enter, np.minimum(a, b))
            leave = np.minimum(leave, np.maximum(a, b))
    return np.where(enter <= leave, enter, np.inf)


def cast(things, lens, ground):
    first = np.full(len(ground), np.inf)
    seen = np.zeros(len(ground), dtype=int)
    for n, thing in enumerate(things):
        below = things[thing.on - 1] if thing.on else None
        if below is not None and below.kind == "serving-bowl":
            continue
        t = box(thing, lens, ground) if thing.kind == "box" else round_thing(thing, lens, ground)
        nearer = t < first
        first, seen = np.where(nearer, t, first), np.where(nearer, n + 1, seen)
    # Through the mouths of bowls that are seen.
    for n, thing in enumerate(things):
        below = things[thing.on - 1] if thing.on else None
        if below is None or below.kind != "serving-bowl":
            continue
        top = 1 - (below.base + below.height) / lens[2]
        eye = np.array([lens[0] - below.at[0], lens[1] - below.at[1]])
        at = eye + top * (ground - np.array(lens[:2]))
        mouth = (at**2).sum(1) <= (below.size[0] / 2 - RIM) ** 2
        into = mouth & (seen == thing.on) & np.isfinite(round_thing(thing, lens, ground))
        seen = np.where(into, n + 1, seen)
    return seen


def apart(x, y, reach, things):
    return all(
        math.hypot(x - o.at[0], y - o.at[1]) >= reach + o.reach() + 4
        for o in things
        if not o.on
    )


def standing(pick, kind, x, y, on):
    turn = pick.randrange(0, 360) / 2
    if kind == "box":
        wide, deep = pick.randrange(50, 220), pick.randrange(50, 160)
        return Thing(kind, x, y, wide, deep, pick.randrange(20, 260), turn, on)
    if kind == "serving-bowl":
        wide = pick.randrange(140, 300)
        return Thing(kind, x, y, wide, wide, pick.randrange(50, 130), 0, on)
    wide = pick.randrange(60, 110)
    return Thing(kind, x, y, wide, wide, pick.randrange(80, 280), 0, on)


def scene(pick):
    width = 6 * pick.randrange(150, 265)
    depth = width * 2 // 3
    things = []

    def add(thing):
        if thing.on:
            thing.base = rests(thing, things[thing.on - 1])
        things.append(thing)
        return len(things)

    def filled(bowl):
        of = things[bowl - 1]
        wide = pick.randrange(40, of.size[0] - 2 * RIM - 6)
        food = Thing("filling", *of.at, wide, wide, 4, 0, bowl)
        room = of.base + of.height - rests(food, of) - 4
        if room >= 5:
            food.height = pick.randrange(4, int(room))
            add(food)

    for _ in range(300):
        if sum(not t.on for t in things) == pick.randrange(4, 10):
            break
        x, y = pick.randrange(0, width), pick.randrange(0, depth)
        if pick.random() < 0.45:
            wide, deep = pick.randrange(220, 420), pick.randrange(160, 300)
            board = Thing("box", x, y, wide, deep, pick.randrange(12, 40), pick.randrange(0, 360) / 2, 0)
            if not apart(x, y, board.reach(), things):
                continue
            n = add(board)
            # What stands on it stays within its shorter side, apart.
            c, s = math.cos(math.radians(board.turn)), math.sin(math.radians(board.turn))
            for along in pick.choice([[0], [-0.25, 0.25]]):
                kind = pick.choice(["box", "bottle", "cylinder", "serving-bowl", "water-glass"])
                own = standing(pick, kind, 0, 0, n)
                own.at = (round(x + along * wide * c), round(y + along * wide * s))
                # Rounding must not lift it over the edge, nor over the other.
                if own.reach() > min(deep / 2, wide / (2 if along == 0 else 4)) - 3:
                    continue
                m = add(own)
                if kind == "serving-bowl" and pick.random() < 0.7:
                    filled(m)
            continue
        kind = pick.choice(["box", "bottle", "cylinder", "serving-bowl", "water-glass"])
        own = standing(pick, kind, x, y, 0)
        if apart(x, y, own.reach(), things):
            m = add(own)
            if kind == "serving-bowl" and pick.random() < 0.7:
                filled(m)
    return width, depth, things


def main():
    pick = random.Random(20_260_914)
    lines = ["width,depth,focal,lens,things,seen,edge"]
    while len(lines) <= 200:
        width, depth, things = scene(pick)
        focal = pick.choice([24, 35, 50, 85])
        # 36 × 24 mm filled by the frame: thin lens.
        height = focal * (1 + width / 36)
        if any(t.base + t.height > height - 150 for t in things):
            continue
        lens = (width / 2, depth / 2, height)
        x = (np.arange(ACROSS) + 0.5) * width / ACROSS
        y = (np.arange(DOWN) + 0.5) * depth / DOWN
        ground = np.array([(u, v) for v in y for u in x])
        seen = cast(things, lens, ground)
        edge = np.zeros(len(ground), dtype=bool)
        for n in range(8):
            off = NEAR_EDGE * np.array([math.cos(n * math.pi / 4), math.sin(n * math.pi / 4)])
            edge |= cast(things, lens, ground + off) != seen
        told = [
            (KINDS.index(t.kind), *t.at, *t.size, t.height, t.turn, t.on) for t in things
        ]
        lines.append(",".join([
            str(width), str(depth), str(focal), f"{height:.6f}",
            "|".join(" ".join(map(str, t)) for t in told),
            runs(seen.tolist()),
            f"{edge.mean():.4f}",
        ]))
    Path(__file__).with_name("piled.csv").write_text("\n".join(lines) + "\n")


main()
