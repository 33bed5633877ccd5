"""Where OpenCV takes points of one plane, fitted to marks seen in another.

A plane of 1200 x 900 mm is seen by a camera that hangs 0.9 to 2 m above it,
leans up to 35 degrees and turns any way. Marks are drawn within the plane;
where they are seen is rounded to 1/100 px and, for `noise`, off by a Gaussian of
2 px as a finger taps.

  four    4 marks, `getPerspectiveTransform`
  many    5 to 12 marks, `findHomography` over all of them (method 0)
  noise   the same with noise, and from there by SciPy's `least_squares` to the
          end: two of the 40 searches of OpenCV stop up to 19 px short of it,
          outside the marks
  three   3 marks, `getAffineTransform`

`marks` is `x y u v` for each, `asked` is `x y u v` of 9 places of the plane,
where `u v` is where OpenCV's matrix takes them.
"""
import csv
from pathlib import Path

import cv2
import numpy as np
from scipy.optimize import least_squares

RNG = np.random.default_rng(20260907)
ROWS = 40
FOCAL = 3000.0


def camera():
    """3x3 of the plane to pixels."""
    lean, way, turn = RNG.uniform(0, 35), RNG.uniform(0, 360), RNG.uniform(0, 360)

    def about(axis, degrees):
        rotation, _ = cv2.Rodrigues(np.asarray(axis, float) * np.radians(degrees))
        return rotation

    axis = [np.cos(np.radians(way)), np.sin(np.radians(way)), 0]
    rotation = about(axis, lean) @ about([0, 0, 1], turn)
    middle = np.array([600 + RNG.uniform(-200, 200), 450 + RNG.uniform(-150, 150), 0])
    away = np.array([0, 0, RNG.uniform(900, 2000)])
    shift = away - rotation @ middle
    inner = np.array([[FOCAL, 0, 2000], [0, FOCAL, 1500], [0, 0, 1]])
    return inner @ np.column_stack([rotation[:, 0], rotation[:, 1], shift])


def gone(matrix, points):
    return cv2.perspectiveTransform(points.reshape(-1, 1, 2), matrix).reshape(-1, 2)


def bettered(matrix, points, seen):
    """The matrix of least squares near this one."""
    metres = np.diag([1000.0, 1000.0, 1.0])
    start = matrix @ metres
    start = (start / start[2, 2]).ravel()[:8]

    def misses(numbers):
        full = np.append(numbers, 1).reshape(3, 3)
        return (gone(full, points / 1000) - seen).ravel()

    fine = {"xtol": 1e-15, "ftol": 1e-15, "gtol": 1e-15}
    found = least_squares(misses, start, x_scale="jac", **fine)
    return np.append(found.x, 1).reshape(3, 3) @ np.linalg.inv(metres)


def spread(points):
    """Whether every three marks span a good part of the plane."""
    count = len(points)
    for i in range(count):
        for j in range(i):
            for k in range(j):
                a, b = points[i] - points[k], points[j] - points[k]
                if abs(a[0] * b[1] - a[1] * b[0]) < 60_000:
                    return False
    return True


def marks(count):
    # Any three of few marks span a plane; of many, the hull of all does.
    while True:
        points = RNG.uniform([0, 0], [1200, 900], (count, 2)).round()
        if count > 4 or spread(points):
            return points


def text(points, seen, digits):
    pairs = np.column_stack([points, seen])
    return ";".join(" ".join(f"{n:.{digits}f}" for n in row) for row in pairs)


def main():
    places = np.array([[x, y] for y in (0.0, 450.0, 900.0) for x in (0.0, 600.0, 1200.0)])
    path = Path(__file__).with_name("homography.csv")
    with path.open("w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["kind", "marks", "asked"])
        for kind in ("four", "many", "noise", "three"):
            for _ in range(ROWS):
                count = {"four": 4, "three": 3}.get(kind, int(RNG.integers(5, 13)))
                points = marks(count)
                seen = gone(camera(), points)
                if kind == "noise":
                    seen += RNG.normal(0, 2, seen.shape)
                seen = seen.round(2)
                if kind == "three":
                    flat = cv2.getAffineTransform(points.astype("f4"), seen.astype("f4"))
                    matrix = np.vstack([flat, [0, 0, 1]])
                elif kind == "four":
                    matrix = cv2.getPerspectiveTransform(points.astype("f4"), seen.astype("f4"))
                else:
                    matrix, _ = cv2.findHomography(points, seen, 0)
                if kind == "noise":
                    matrix = bettered(matrix, points, seen)
                asked = text(places, gone(matrix, places), 4)
                out.writerow([kind, text(points, seen, 2), asked])


main()
