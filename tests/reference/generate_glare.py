"""What a level surface mirrors to a lens over it, by tracing rays.

Random scenes: a lens over the table, a round surface at some height and place,
one window or disc of light, a camera (a disc at the lens), an arm from a mast,
a standing photographer (a cylinder) and at times a black card. Every point of
a fine grid over the surface sends the ray from the lens on by angle in equals
angle out, and the ray is tried against each of these: nothing is projected.
Areas are counted in cells; the error of counting is under a thousandth of the
surface.

The second table moves a surface with the camera and the arm in it by 20 to
200 mm in sixteen directions and traces what share of it still mirrors them.
"""
import math
import random
from pathlib import Path

import numpy as np

CAMERA, ARM, PERSON, TALL = 70.0, 40.0, 225.0, 1700.0
GRID = 900
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
    if scene["card"]:
        x, y, turn, width, height = scene["card"]
        way = direction(turn)
        foot = np.array([x, y, height / 2])
        half = np.array([-way[1], way[0], 0.0]) * width / 2
        rise = np.array([0.0, 0.0, height / 2])
        stop = np.inf * np.ones_like(seen)
        for sign in (1, -1):
            front = np.array([way[0], way[1], 0.0]) * sign
            stop = np.minimum(stop, plate(rays, foot, half, rise, front, False))
        seen[stop < seen] = np.inf
    return np.isfinite(seen)


def camera(scene, rays):
    (px, py, pz), (dx, dy, dz) = rays
    t = (scene["lens"] - pz) / dz
    return np.hypot(px + t * dx - scene["ux"], py + t * dy - scene["uy"]) < CAMERA


def arm(scene, rays):
    (px, py, pz), (dx, dy, dz) = rays
    t = (scene["lens"] - pz) / dz
    way = np.array([scene["ux"] - scene["mx"], scene["uy"] - scene["my"]], dtype=float)
    long = np.linalg.norm(way)
    way /= long
    x, y = px + t * dx - scene["mx"], py + t * dy - scene["my"]
    along, aside = x * way[0] + y * way[1], x * way[1] - y * way[0]
    return (along > 0) & (along < long) & (np.abs(aside) < ARM / 2)


def person(scene, rays):
    (px, py, pz), (dx, dy, dz) = rays
    top = TALL - scene["table"]
    x, y = px - scene["px"], py - scene["py"]
    a, b, c = dx * dx + dy * dy, x * dx + y * dy, x * x + y * y - PERSON**2
    root = b * b - a * c
    with np.errstate(divide="ignore", invalid="ignore"):
        t0, t1 = (-b - np.sqrt(root)) / a, (-b + np.sqrt(root)) / a
        # In the cylinder from t0 to t1, below its top until t2.
        t2 = (top - pz) / dz
        return (root > 0) & (np.maximum(t0, 0) < np.minimum(t1, t2)) & (t1 > 0)


def traced(scene, cx, cy, grid):
    x, y, cell = surface(cx, cy, scene["radius"], grid)
    level = np.full_like(x, scene["level"])
    rise = np.full_like(x, scene["lens"] - scene["level"])
    rays = (x, y, level), (x - scene["ux"], y - scene["uy"], rise)
    return [each(scene, rays) for each in (light, camera, arm, person)], cell


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
    card = " ".join(f"{v:g}" for v in one["card"]) if one["card"] else ""
    return [f"{one[name]:g}" for name in NUMBERS] + [one["shape"], card]


def main():
    here = Path(__file__).parent
    rng = random.Random(20)
    rows = []
    while len(rows) < 200:
        one = scene(rng, len(rows) % 3 == 0)
        hits, cell = traced(one, one["cx"], one["cy"], GRID)
        # One in four may mirror nothing at all.
        if not any(h.any() for h in hits) and len(rows) % 4:
            continue
        rows.append(fields(one) + [f"{h.sum() * cell:.1f}" for h in hits])
    names = NUMBERS + ["shape", "card", "light", "camera", "arm", "photographer"]
    text = "\n".join(",".join(row) for row in [names] + rows)
    (here / "glare.csv").write_text(text + "\n")

    rows = []
    for _ in range(30):
        one = scene(rng, True)
        one["card"], one["level"], one["radius"] = None, 0, rng.randint(60, 105)
        one["ux"], one["uy"] = 600, 450
        one["cx"], one["cy"] = 600 + rng.randint(-25, 25), 450 + rng.randint(-25, 25)
        far = direction(rng.uniform(0, 360)) * rng.uniform(500, 1000)
        one["mx"], one["my"] = round(600 + far[0]), round(450 + far[1])
        shares = []
        for far in range(20, 201, 20):
            for n in range(16):
                turn = 2 * math.pi * n / 16
                x, y = one["cx"] + far * math.cos(turn), one["cy"] + far * math.sin(turn)
                hits, _ = traced(one, round(x), round(y), 240)
                shares.append(f"{(hits[1] | hits[2]).mean():.4f}")
        rows.append([f"{one[name]:g}" for name in NUMBERS] + [" ".join(shares)])
    text = "\n".join(",".join(row) for row in [NUMBERS + ["shares"]] + rows)
    (here / "glare_moves.csv").write_text(text + "\n")


if __name__ == "__main__":
    main()
