"""What OpenCV says of lengths beside a card or a sheet in a photo.

A camera hangs 0.5 to 1.5 m above a table, leans up to 25 degrees and turns any
way. A bank card, A4 or Letter lies on the table and a thing beside it, whose rim
is 0 to 80 mm up. Corners and ends of the rim are seen by OpenCV's `projectPoints`
and rounded to 1/100 px.

  mm     how far the ends are apart by `getPerspectiveTransform` of the corners
         seen, which is 32 bits wide, in the plane of the card
  true   how long the thing is; `mm` times (lens - rim) / lens
  off    twice the deviation of `mm` over 4000 draws in which every tap is off by
         up to 2 px each way, drawn evenly: NumPy, by the same mapping
"""
import csv
from pathlib import Path

import cv2
import numpy as np

RNG = np.random.default_rng(20261126)
ROWS = 30
DRAWS = 4000
FOCAL = 1700.0
SIZES = {"card": (85.60, 53.98), "a4": (297.0, 210.0), "letter": (279.4, 215.9)}


def camera(middle):
    """Rotation, shift and height of the lens above the table."""
    lean, way, turn = RNG.uniform(0, 25), RNG.uniform(0, 360), RNG.uniform(0, 360)

    def about(axis, degrees):
        return cv2.Rodrigues(np.asarray(axis, float) * np.radians(degrees))[0]

    axis = [np.cos(np.radians(way)), np.sin(np.radians(way)), 0]
    rotation = about(axis, lean) @ about([0, 0, 1], turn) @ np.diag([1.0, -1.0, -1.0])
    away = RNG.uniform(500, 1500)
    shift = np.array([0, 0, away]) - rotation @ np.append(middle, 0)
    return rotation, shift, float((-rotation.T @ shift)[2])


def seen(points, rotation, shift):
    inner = np.array([[FOCAL, 0, 1024], [0, FOCAL, 768], [0, 0, 1]])
    vector, _ = cv2.Rodrigues(rotation)
    return cv2.projectPoints(points, vector, shift, inner, None)[0].reshape(-1, 2)


def length(corners, marks, ends):
    matrix = cv2.getPerspectiveTransform(marks.astype("f4"), corners.astype("f4"))
    there = cv2.perspectiveTransform(ends.reshape(-1, 1, 2).astype("f8"), matrix)
    return float(np.linalg.norm(there[0, 0] - there[1, 0]))


def text(points):
    return ";".join(f"{x:.2f} {y:.2f}" for x, y in points)


def main():
    with Path(__file__).with_name("sizes.csv").open("w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["gauge", "marks", "taps", "rim", "lens", "mm", "true", "off"])
        for gauge, (long, short) in SIZES.items():
            for _ in range(ROWS):
                corners = np.array([[0, 0], [long, 0], [long, short], [0, short]])
                side = RNG.uniform(0, 2 * np.pi)
                middle = np.array([long, short]) / 2 + RNG.uniform(180, 300) * np.array(
                    [np.cos(side), np.sin(side)]
                )
                rim, true = RNG.uniform(0, 80), RNG.uniform(60, 320)
                way = RNG.uniform(0, np.pi)
                half = true / 2 * np.array([np.cos(way), np.sin(way)])
                rotation, shift, lens = camera(np.array([long, short]) / 2)
                ends = np.array([[*(middle - half), rim], [*(middle + half), rim]])
                flat = np.column_stack([corners, np.zeros(4)])
                marks = seen(flat, rotation, shift).round(2)
                taps = seen(ends, rotation, shift).round(2)
                mm = length(corners, marks, taps)
                draws = [
                    length(
                        corners,
                        marks + RNG.uniform(-2, 2, marks.shape),
                        taps + RNG.uniform(-2, 2, taps.shape),
                    )
                    for _ in range(DRAWS)
                ]
                figures = [f"{n:.3f}" for n in (rim, lens, mm, true, 2 * np.std(draws))]
                out.writerow([gauge, text(marks), text(taps), *figures])


main()
