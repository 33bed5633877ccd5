"""What a level surface mirrors to a lens over it, by tracing rays.

Random scenes: a lens over the table, a round surface at some height and place,
one window or disc of light, a camera (a disc at the lens), an arm from a mast,
a standing photographer (a cylinder), at times a black and a white card and up
to five round things that stand about (piles of cones). Every point of a fine
grid over the surface sends the ray from the lens on by angle in equals angle
out, and each of these is seen where the ray meets it before any other: nothing
is projected. Camera and arm hang at one height and do not hide each other; a
white card counts by the side the middle of the light lies on. Areas are counted
in cells; the error of counting is under a thousandth of the surface.

The second table moves a surface with the camera and the arm in it by 20 to
200 mm in sixteen directions and traces what share of it still mirrors them.
"""
import math
import random
from pathlib import Path

import numpy as np

CAMERA, ARM, PERSON, TALL = 70.0, 40.0, 225.0, 1700.0
GRID = 600
ROOM = (1200.0, 900.0)


def surface(cx, cy, radius, grid):
    step = 2 * radius / grid
    axis = (np.arange(grid) + 0.5) * step - radius
    x, y = np.meshgrid(axis, axis)
    inside = x * x + y * y < radius * radius
    return cx + x[inside], cy + y[inside], step * step


def direction(degrees):
    turn = math.radians(degrees)
    return np.array([math.sin(turn), -math.cos(turn)])


def plate(rays, at, across, up, facing, round_):
    """Distance along each ray to a flat thing met from its front; inf where missed."""
    (px, py, pz), (dx, dy, dz) = rays
    against = dx * facing[0] + dy * facing[1] + dz * facing[2]
    with np.errstate(divide="ignore", invalid="ignore"):
        t = ((at[0] - px) * facing[0] + (at[1] - py) * facing[1] + (at[2] - pz) * facing[2]) / against
        off = np.stack([px + t * dx - at[0], py + t * dy - at[1], pz + t * dz - at[2]])
        u = np.tensordot(across, off, 1) / across.dot(across)
        v = np.tensordot(up, off, 1) / up.dot(up)
        hit = u * u + v * v < 1 if round_ else (np.abs(u) < 1) & (np.abs(v) < 1)
    return np.where((against < 0) & (t > 1e-9) & hit, t, np.inf)


def light(scene, rays):
    middle = np.array(ROOM) / 2
    out = direction(scene["clock"])
    flat = middle + out * scene["distance"]
    at = np.array([flat[0], flat[1], scene["above"]])
    across = np.array([-out[1], out[0], 0.0])
    if scene["shape"] == "window":
        facing = np.array([-out[0], -out[1], 0.0])
        up = np.array([0.0, 0.0, scene["height"] / 2])
    else:
        facing = np.array([middle[0], middle[1], 0.0]) - at
        facing /= np.linalg.norm(facing)
        up = np.cross(across, facing) * scene["width"] / 2
    seen = plate(rays, at, across * scene["width"] / 2, up, facing, scene["shape"] == "disc")
    return seen, at


def sheet(card, rays):
    """Distance to a card from either side."""
    x, y, turn, width, height = card
    way = direction(turn)
    foot = np.array([x, y, height / 2])
    half = np.array([-way[1], way[0], 0.0]) * width / 2
    rise = np.array([0.0, 0.0, height / 2])
    sides = [np.array([way[0], way[1], 0.0]) * sign for sign in (1, -1)]
    return np.minimum(*[plate(rays, foot, half, rise, front, False) for front in sides])


def lit_side(scene, card, at):
    """Whether the lens's mirrored rays meet the side the light lies on."""
    x, y, turn = card[:3]
    way = direction(turn)
    seen = (np.array([scene["ux"] - x, scene["uy"] - y])) @ way
    return seen * ((at[:2] - (x, y)) @ way) > 0


def camera(scene, rays):
    (px, py, pz), (dx, dy, dz) = rays
    t = (scene["lens"] - pz) / dz
    off = np.hypot(px + t * dx - scene["ux"], py + t * dy - scene["uy"])
    return np.where(off < CAMERA, t, np.inf)


def arm(scene, rays):
    (px, py, pz), (dx, dy, dz) = rays
    t = (scene["lens"] - pz) / dz
    way = np.array([scene["ux"] - scene["mx"], scene["uy"] - scene["my"]], dtype=float)
    long = np.linalg.norm(way)
    way /= long
    x, y = px + t * dx - scene["mx"], py + t * dy - scene["my"]
    along, aside = x * way[0] + y * way[1], x * way[1] - y * way[0]
    return np.where((along > 0) & (along < long) & (np.abs(aside) < ARM / 2), t, np.inf)


def cone(axis, radius, low, high, rays):
    """Distance to a cone between two levels, each with its share of the radius."""
    (px, py, pz), (dx, dy, dz) = rays
    (z0, s0), (z1, s1) = low, high
    first, last = np.maximum((z0 - pz) / dz, 0), (z1 - pz) / dz
    slope = radius * (s1 - s0) / (z1 - z0)
    x, y, wide = px - axis[0], py - axis[1], radius * s0 + slope * (pz - z0)
    a = dx * dx + dy * dy - (slope * dz) ** 2
    b = x * dx + y * dy - wide * slope * dz
    c = x * x + y * y - wide * wide
    inside = a * first * first + 2 * b * first + c <= 0
    with np.errstate(divide="ignore", invalid="ignore"):
        root = np.sqrt(b * b - a * c)
        near, far = (-b - root) / a, (-b + root) / a
        enters = np.where(a > 0, near, far)
        enters = np.where(np.abs(a) < 1e-12, -c / (2 * b), enters)
    enters = np.where(inside, first, np.where(enters > first, enters, np.inf))
    return np.where((first < last) & (enters < last), enters, np.inf)


def person(scene, rays):
    at = (scene["px"], scene["py"])
    top = TALL - scene["table"]
    level = rays[0][2].flat[0] if rays[0][2].size else 0.0
    return cone(at, PERSON, (min(level, top - 1.0), 1.0), (top, 1.0), rays)


def traced(scene, cx, cy, grid):
    x, y, cell = surface(cx, cy, scene["radius"], grid)
    level = np.full_like(x, scene["level"])
    rise = np.full_like(x, scene["lens"] - scene["level"])
    rays = (x, y, level), (x - scene["ux"], y - scene["uy"], rise)
    window, at = light(scene, rays)
    rig = np.minimum(camera(scene, rays), arm(scene, rays))
    stands = person(scene, rays)
    things = np.full_like(x, np.inf)
    for ax, ay, radius, pile in scene["things"]:
        for low, high in zip(pile, pile[1:]):
            things = np.minimum(things, cone((ax, ay), radius, low, high, rays))
    black = sheet(scene["card"], rays) if scene["card"] else np.full_like(x, np.inf)
    white = sheet(scene["white"], rays) if scene["white"] else np.full_like(x, np.inf)
    shown = white if scene["white"] and lit_side(scene, scene["white"], at) else np.full_like(x, np.inf)
    least = np.minimum.reduce
    return [
        np.isfinite(window) & (window < least([black, white, rig, stands, things])),
        np.isfinite(c := camera(scene, rays)) & (c < least([black, white, stands, things])),
        np.isfinite(a := arm(scene, rays)) & (a < least([black, white, stands, things])),
        np.isfinite(stands) & (stands < least([black, white, rig, things])),
        np.isfinite(shown) & (shown < least([black, rig, stands, things])),
    ], cell


PROFILES = [[(0, 1), (1, 1)], [(0, 0.46), (0.22, 0.64), (0.62, 0.88), (1, 1)],
            [(0, 1), (0.26, 1), (0.56, 0.4), (1, 0.46)]]


def beside(rng, one):
    """What else stands about, clear of the surface and of the photographer."""
    one["white"], one["things"] = None, []
    if rng.random() < 0.6:
        # Beyond the surface, more or less across the way there.
        off = np.array([one["cx"] - one["ux"], one["cy"] - one["uy"]], dtype=float)
        way = off / max(np.linalg.norm(off), 1.0) if rng.random() < 0.8 else direction(rng.uniform(0, 360))
        far = np.linalg.norm(off) + one["radius"] + rng.uniform(20, 400)
        turn = math.degrees(math.atan2(way[0], -way[1])) + rng.randint(-30, 30)
        one["white"] = [round(one["ux"] + way[0] * far), round(one["uy"] + way[1] * far),
                        round(turn * 2) / 2 % 360, rng.randint(300, 900), rng.randint(300, 1400)]
    # Nobody stands in a card.
    for name in ("card", "white"):
        if one[name]:
            x, y, turn, width, _ = one[name]
            way = direction(turn)
            off = np.array([one["px"] - x, one["py"] - y])
            aside = max(abs(off @ (-way[1], way[0])) - width / 2, 0)
            if math.hypot(aside, off @ way) < PERSON + 5:
                one[name] = None
    for _ in range(rng.randint(0, 5)):
        radius, height = rng.randint(30, 110), rng.randint(30, 400)
        x, y = rng.randint(100, 1100), rng.randint(100, 800)
        clear = math.hypot(x - one["cx"], y - one["cy"]) > radius + one["radius"]
        clear &= math.hypot(x - one["px"], y - one["py"]) > radius + PERSON
        if clear and height < one["lens"] - 100:
            pile = [(round(z * height, 3), s) for z, s in rng.choice(PROFILES)]
            one["things"].append((x, y, radius, pile))


def scene(rng, near):
    uniform = rng.uniform
    ux, uy = 600 + rng.randint(-200, 200), 450 + rng.randint(-150, 150)
    lens = rng.randint(900, 2200)
    # Either by the lens, or where something is likely to be mirrored.
    reach = 60 if near else 420
    cx, cy = ux + rng.randint(-reach, reach), uy + rng.randint(-reach, reach)
    shape = rng.choice(["window", "disc"])
    clock = rng.randint(0, 719) / 2
    distance = rng.randint(350, 1500)
    card = None
    if rng.random() < 0.5:
        way = direction(clock)
        far = distance * uniform(0.4, 0.9)
        card = [
            round(600 + way[0] * far + uniform(-150, 150)),
            round(450 + way[1] * far + uniform(-150, 150)),
            rng.randint(0, 719) / 2,
            rng.randint(200, 900),
            rng.randint(200, 1400),
        ]
    far = direction(uniform(0, 360)) * uniform(500, 1000)
    stand = direction(uniform(0, 360)) * uniform(350, 900)
    return {
        "ux": ux, "uy": uy, "lens": lens, "cx": cx, "cy": cy,
        "radius": rng.randint(40, 180), "level": rng.randint(0, 140),
        "shape": shape, "clock": clock, "distance": distance,
        "above": rng.randint(100, 1600), "width": rng.randint(200, 1600),
        "height": rng.randint(200, 1800), "card": card, "table": rng.randint(400, 900),
        "mx": round(ux + far[0]), "my": round(uy + far[1]),
        "px": round(ux + stand[0]), "py": round(uy + stand[1]),
    }


NUMBERS = ["ux", "uy", "lens", "cx", "cy", "radius", "level", "clock", "distance", "above",
           "width", "height", "table", "mx", "my", "px", "py"]


def fields(one):
    cards = [" ".join(f"{v:g}" for v in one[c]) if one[c] else "" for c in ("card", "white")]
    pile = lambda levels: " ".join(f"{z:g} {s:g}" for z, s in levels)
    things = ";".join(f"{x} {y}|disc {r}|{pile(levels)}" for x, y, r, levels in one["things"])
    return [f"{one[name]:g}" for name in NUMBERS] + [one["shape"], *cards, things]


def main():
    here = Path(__file__).parent
    rng, more = random.Random(20), random.Random(21)
    rows = []
    while len(rows) < 200:
        one = scene(rng, len(rows) % 3 == 0)
        beside(more, one)
        hits, cell = traced(one, one["cx"], one["cy"], GRID)
        # One in four may mirror nothing at all.
        if not any(h.any() for h in hits) and len(rows) % 4:
            continue
        rows.append(fields(one) + [f"{h.sum() * cell:.1f}" for h in hits])
    names = NUMBERS + ["shape", "card", "white", "things",
                       "light", "camera", "arm", "photographer", "whitecard"]
    text = "\n".join(",".join(row) for row in [names] + rows)
    (here / "glare.csv").write_text(text + "\n")

    rows = []
    for _ in range(30):
        one = scene(rng, True)
        one["card"], one["level"], one["radius"] = None, 0, rng.randint(60, 105)
        one["white"], one["things"] = None, []
        one["ux"], one["uy"] = 600, 450
        one["cx"], one["cy"] = 600 + rng.randint(-25, 25), 450 + rng.randint(-25, 25)
        far = direction(rng.uniform(0, 360)) * rng.uniform(500, 1000)
        one["mx"], one["my"] = round(600 + far[0]), round(450 + far[1])
        shares = []
        for far in range(20, 201, 20):
            for n in range(16):
                turn = 2 * math.pi * n / 16
                x, y = one["cx"] + far * math.cos(turn), one["cy"] + far * math.sin(turn)
                # Nobody stands by.
                alone = {**one, "px": 90_000, "py": 90_000}
                hits, _ = traced(alone, round(x), round(y), 240)
                shares.append(f"{(hits[1] | hits[2]).mean():.4f}")
        rows.append([f"{one[name]:g}" for name in NUMBERS] + [" ".join(shares)])
    text = "\n".join(",".join(row) for row in [NUMBERS + ["shares"]] + rows)
    (here / "glare_moves.csv").write_text(text + "\n")


if __name__ == "__main__":
    main()
