"""400 random arms of two links, by numerical optimisation.

SLSQP looks for the elbow that lies farthest along a wished direction while it
stays a link's length from shoulder and wrist; the wish is 20 degrees outwards
of straight down, both made square to the line from shoulder to wrist, which is
where an elbow hangs at ease. Another search turns both joints of the arm to
bring the wrist as near as it comes to a place beyond its reach, with the elbow
bent by at most 145 degrees, for how far it stays away. Lengths in mm, y down,
z up. Needs numpy and scipy.
"""
import csv
import random
from pathlib import Path

import numpy as np
from scipy.optimize import minimize


def square(v, along):
    v = v - along * np.dot(v, along)
    return v / np.linalg.norm(v)


def hang(shoulder, wrist, upper, fore, outward):
    along = (wrist - shoulder) / np.linalg.norm(wrist - shoulder)
    down = square(np.array([0, 0, -1.0]), along)
    out = square(outward, along)
    side = out - down * np.dot(out, down)
    side /= np.linalg.norm(side)
    wish = down * np.cos(np.radians(20)) + side * np.sin(np.radians(20))
    held = [
        {"type": "eq", "fun": lambda e: np.dot(e - shoulder, e - shoulder) / upper - upper},
        {"type": "eq", "fun": lambda e: np.dot(wrist - e, wrist - e) / fore - fore},
    ]
    best = None
    for start in (wish, wish + side, wish - side):
        at = (shoulder + wrist) / 2 + start * 150
        found = minimize(lambda e: -np.dot(e, wish), at, constraints=held, method="SLSQP",
                         options={"ftol": 1e-12, "maxiter": 500})
        if found.success and (best is None or found.fun < best.fun):
            best = found
    return best.x


def stays_away(away, upper, fore):
    """How near the wrist comes to a place so far from the shoulder."""
    def miss(bend):
        reach = np.hypot(upper + fore * np.cos(bend), fore * np.sin(bend))
        return (reach - away) ** 2

    tries = [minimize(lambda b: miss(b[0]), [start], bounds=[(0, np.radians(145))])
             for start in (0.1, 1.2, 2.4)]
    return float(np.sqrt(min(t.fun for t in tries)))


def main():
    rng = random.Random(20260905)
    rows = []
    while len(rows) < 400:
        upper, fore = rng.uniform(280, 380), rng.uniform(220, 310)
        shoulder = np.array([rng.uniform(-300, 300), rng.uniform(0, 250), rng.uniform(150, 700)])
        turn = rng.uniform(-np.pi, np.pi)
        outward = np.array([np.cos(turn), np.sin(turn), 0.0])
        way = np.array([rng.gauss(0, 1), rng.gauss(0, 1), rng.gauss(-0.4, 0.6)])
        way /= np.linalg.norm(way)
        # Straight down there is no outwards of down to speak of.
        if abs(way[2]) > 0.95 or abs(np.dot(way, outward)) > 0.95:
            continue
        away = rng.uniform(20, upper + fore + 200)
        wrist = shoulder + way * away
        short = stays_away(away, upper, fore)
        elbow = [0.0, 0.0, 0.0]
        if short < 1e-2:
            short = 0.0
            elbow = hang(shoulder, wrist, upper, fore, outward)
        rows.append([*shoulder, *wrist, upper, fore, *outward[:2], *elbow, short])
    names = "sx sy sz wx wy wz upper fore ox oy ex ey ez short".split()
    out = Path(__file__).with_name("arms.csv")
    with out.open("w", newline="", encoding="utf-8") as f:
        write = csv.writer(f, lineterminator="\n")
        write.writerow(names)
        for row in rows:
            write.writerow([f"{v:.6f}" for v in row])


if __name__ == "__main__":
    main()
