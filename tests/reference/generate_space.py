"""The largest empty rectangle and circle of 200 random layouts, by brute force.

Each layout is a sheet of 600 by 400 mm with three to nine discs and turned
boxes. Rectangle: every pair of rows of a raster of 2 mm and the longest run
of columns that is free in all rows between them. Circle: the place of a 4 mm
grid that is farthest from every thing and edge by the exact distance to discs
and boxes, then of finer and finer grids about all that may be farther still.
"""
import math
import random
from pathlib import Path

import numpy as np

WIDTH, DEPTH, CELL = 600, 400, 2


def off(things, x, y):
    """Distance of places to the nearest thing or edge; negative inside."""
    far = np.minimum(np.minimum(x, WIDTH - x), np.minimum(y, DEPTH - y))
    for kind, cx, cy, a, b, turn in things:
        if kind == "disc":
            own = np.hypot(x - cx, y - cy) - a
        else:
            c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
            dx, dy = x - cx, y - cy
            u, v = np.abs(dx * c + dy * s) - a / 2, np.abs(-dx * s + dy * c) - b / 2
            own = np.hypot(np.maximum(u, 0), np.maximum(v, 0)) + np.minimum(np.maximum(u, v), 0)
        far = np.minimum(far, own)
    return far


def rectangle(things):
    y, x = np.mgrid[0:DEPTH:CELL, 0:WIDTH:CELL] + CELL / 2
    taken = off(things, x.astype(float), y.astype(float)) < 0
    rows, columns = taken.shape
    best = 0
    for top in range(rows):
        run = np.zeros(columns, dtype=bool)
        for bottom in range(top, rows):
            run |= taken[bottom]
            depth = bottom - top + 1
            if (rows - top) * columns <= best or run.all():
                break
            ends = np.flatnonzero(np.concatenate(([True], run, [True])))
            best = max(best, (int(np.diff(ends).max()) - 1) * depth)
    return best * CELL * CELL


def circle(things):
    y, x = (g.astype(float).ravel() for g in np.mgrid[0:DEPTH + 1:4, 0:WIDTH + 1:4])
    step = 4.0
    while step > 0.02:
        far = off(things, x, y)
        # Nothing within half a step of a place is farther than this allows.
        may = far >= far.max() - step * math.sqrt(2) / 2 - 1e-9
        grid = np.arange(-2, 3) * (step / 4)
        gx, gy = (g.ravel() for g in np.meshgrid(grid, grid))
        x, y = (x[may, None] + gx).ravel(), (y[may, None] + gy).ravel()
        step /= 4
    return float(off(things, x, y).max())


def main():
    pick = random.Random(20)
    lines = ["things,rectangle,radius"]
    while len(lines) <= 200:
        things = []
        for _ in range(pick.randrange(3, 10)):
            cx, cy = pick.randrange(0, WIDTH), pick.randrange(0, DEPTH)
            if pick.random() < 0.5:
                things.append(("disc", cx, cy, pick.randrange(20, 110), 0, 0))
            else:
                size = pick.randrange(20, 260), pick.randrange(20, 160)
                things.append(("box", cx, cy, *size, pick.choice([0, 0, 90, pick.randrange(180)])))
        text = ";".join(" ".join(map(str, thing)) for thing in things)
        lines.append(f"{text},{rectangle(things)},{circle(things):.2f}")
    Path(__file__).with_name("space.csv").write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
