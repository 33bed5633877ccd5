"""Where points above a table are seen by a pinhole camera, by OpenCV.

A camera hangs over the middle of a frame, looking straight down, its picture
turned by the frame's turn. Each row: middle of the frame, lens above the
table, turn in degrees, points as x, y and height, and where `projectPoints`
puts them, carried back to the table plane by the camera's own scale there.
"""
import math
import random
from pathlib import Path

import cv2
import numpy as np


def main():
    pick = random.Random(20_260_911)
    lines = ["under,height,turn,points,seen"]
    for _ in range(200):
        under = [pick.randrange(200, 1800), pick.randrange(200, 1200)]
        height = pick.uniform(500, 3000)
        turn = pick.choice([0, 90, 180, pick.uniform(0, 360)])
        points = np.array([
            [pick.uniform(-800, 2600), pick.uniform(-800, 2000), pick.uniform(0, 0.8 * height)]
            for _ in range(8)
        ])
        # Table: x right, y down the table, z up. Camera: x right, y down in
        # the picture, z away from the lens, so down to the table.
        c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
        rotation = np.array([[c, s, 0], [-s, c, 0], [0, 0, 1.0]])
        world = points.copy()
        world[:, 2] = height - world[:, 2]
        eye = np.array([under[0], under[1], 0.0])
        focal = 4000.0
        inside = np.array([[focal, 0, 3000], [0, focal, 2000], [0, 0, 1.0]])
        rvec, _ = cv2.Rodrigues(rotation)
        image, _ = cv2.projectPoints(world, rvec, -rotation @ eye, inside, None)
        # Back to the table plane, by the same camera.
        flat = (image[:, 0, :] - [3000, 2000]) * height / focal
        seen = flat @ rotation[:2, :2] + under
        row = [
            " ".join(map(str, under)),
            repr(height),
            repr(turn),
            " ".join(repr(float(v)) for p in points for v in p),
            " ".join(f"{v:.6f}" for p in seen for v in p),
        ]
        lines.append(",".join(row))
    Path(__file__).with_name("projection.csv").write_text("\n".join(lines) + "\n")


main()
