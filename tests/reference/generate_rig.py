"""200 random rigs on one stand, by statics done another way.

Masses stand on three feet at 120 degrees. Whether the stand holds: a linear
program asks for upward forces of the feet, none below nothing, that balance
weight and moments. The slope on which it tips: gravity is turned by bisection
towards each side until that program has no answer. The margin about a side:
its triangle's barycentric coordinate of each mass, which is its lever over the
triangle's height. The bag at the hub and the counterweight that give a margin
of 2: bisection on their mass. Lengths in mm, masses in g.

The lens is 50 mm on 36 mm with a frame 1050 mm wide over a table 750 mm high,
its middle at (600, 450); the arm runs 100 mm above the sensor, the stand's own
centre is at a third of the arm's height and the bag 300 mm above the floor.
"""
import csv
import math
import random
from pathlib import Path

import numpy as np
from scipy.optimize import linprog

LENS = np.array([600.0, 450.0])
OUT = 50 * (1 + 1050 / 36)
SENSOR = 750 + OUT + 1 / (1 / 50 - 1 / OUT)
ARM = SENSOR + 100


def stands(feet, masses, slope=(0.0, 0.0)):
    """Whether forces of the feet can balance the masses on such a slope."""
    # Sliding is left to friction: only moments about the floor matter. On a
    # slope gravity's line through each mass meets the floor shifted by slope
    # times its height.
    total = sum(m for m, _, _ in masses)
    meets = [np.array(at) + np.array(slope) * z for _, at, z in masses]
    rows = [[1, 1, 1], [f[0] for f in feet], [f[1] for f in feet]]
    right = [1.0, sum(m * p[0] for (m, _, _), p in zip(masses, meets)) / total,
             sum(m * p[1] for (m, _, _), p in zip(masses, meets)) / total]
    return linprog([0, 0, 0], A_eq=rows, b_eq=right, bounds=[(0, None)] * 3).status == 0


def margins(feet, masses):
    """Margin and outward bearing about the side opposite each foot."""
    found = []
    square = np.array([[f[0] for f in feet], [f[1] for f in feet], [1, 1, 1]])
    shares = [np.linalg.solve(square, [at[0], at[1], 1.0]) for _, at, _ in masses]
    middle = sum(feet) / 3
    for n in range(3):
        holds = sum(m * s[n] for (m, _, _), s in zip(masses, shares) if s[n] > 0)
        tips = -sum(m * s[n] for (m, _, _), s in zip(masses, shares) if s[n] < 0)
        away = middle - feet[n]
        bearing = math.degrees(math.atan2(away[0], -away[1])) % 360
        found.append((min(100.0, holds / tips) if tips > 0 else 100.0, bearing))
    return found


def tilt(feet, masses):
    """Least slope, degrees, on which it tips; only for what stands."""
    least = 90.0
    for _, bearing in margins(feet, masses):
        way = np.array([math.sin(math.radians(bearing)), -math.cos(math.radians(bearing))])
        low, high = 0.0, 20.0
        for _ in range(60):
            middle = (low + high) / 2
            if stands(feet, masses, way * middle):
                low = middle
            else:
                high = middle
        least = min(least, math.degrees(math.atan(low)))
    return least


def needed(feet, masses, place, height):
    """Least mass there that gives a margin of 2; nothing when none up to 200 kg does."""
    good = lambda m: min(m for m, _ in margins(feet, masses + [(m, place, height)])) >= 2
    # The masses that do are one stretch: look for one of them first.
    start = next((m for m in np.linspace(0, 200_000, 2001) if good(m)), None)
    if start is None:
        return ""
    low, high = max(0.0, start - 100), start
    if good(low):
        return low
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if good(middle) else (middle, high)
    return high


def main():
    dice = random.Random(20260)
    rows = []
    while len(rows) < 200:
        x, y = dice.randint(-900, 2100), dice.randint(-900, 1900)
        mast = np.array([float(x), float(y)])
        reach = float(np.hypot(*(LENS - mast)))
        if reach < 50:
            continue
        along = (LENS - mast) / reach
        under = dice.random() < 0.4
        half = dice.randint(0, 719)
        bearing = math.degrees(math.atan2(along[0], -along[1])) if under else half / 2
        radius = dice.randint(300, 800)
        legs = [np.array([math.sin(math.radians(bearing + t)), -math.cos(math.radians(bearing + t))])
                for t in (0, 120, 240)]
        feet = [mast + leg * radius for leg in legs]
        stand, length = dice.randint(2000, 14000), dice.randint(500, 2500)
        arm, load = dice.randint(300, 3000), dice.randint(500, 8000)
        masses = [(load, LENS, SENSOR), (arm, LENS - along * length / 2, ARM), (stand, mast, ARM / 3)]
        weight, behind = (dice.randint(500, 9000), dice.randint(50, 800)) if dice.random() < 0.4 else ("", "")
        if weight:
            masses.append((weight, mast - along * behind, ARM))
        hung = dice.choice(["", "hub", "lead-leg", "rear-legs"])
        bag = dice.randint(1000, 16000) if hung else ""
        out = min(300, radius)
        if hung == "hub":
            masses.append((bag, mast, 300))
        elif hung == "lead-leg":
            masses.append((bag, mast + legs[0] * out, 300))
        elif hung:
            masses += [(bag / 2, mast + leg * out, 300) for leg in legs[1:]]
        found = margins(feet, masses)
        margin, way = min(found)
        total = sum(m for m, _, _ in masses)
        centre = sum(m * np.array(at) for m, at, _ in masses) / total
        up = stands(feet, masses)
        assert up == (margin >= 1), (margin, up)
        rows.append([x, y, "" if under else half, radius, stand, length, arm, load, weight, behind,
                     bag, hung, f"{margin:.9f}", f"{way:.6f}", f"{centre[0]:.6f}", f"{centre[1]:.6f}",
                     f"{tilt(feet, masses):.6f}" if up else "",
                     "" if (b := needed(feet, masses, mast, 300)) == "" else f"{b:.4f}",
                     "" if (b := needed(feet, masses, mast - along * 300, ARM)) == "" else f"{b:.4f}"])
    names = ["x", "y", "lead", "radius", "stand", "length", "arm", "load", "weight", "behind", "bag",
             "hung", "margin", "way", "centre_x", "centre_y", "tilt", "hub", "counterweight"]
    with open(Path(__file__).with_name("rig.csv"), "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(names)
        writer.writerows(rows)


main()
