"""Where upright cylinders are seen among a camera's pixels, by OpenCV.

A camera hangs over the middle of a frame and looks straight down, turned with
the frame and laid on its side where the frame is higher than wide; its lens is
as high as a thin lens must be for the frame just to fill the sensor. Each row:
the sensor by name, focal length as it is quoted, pixels along long and short
side, frame (ratio, middle, width, turn), cylinders (middle, diameter, height),
and for each the corners of the convex hull of its foot and its top where
`projectPoints` puts them, in pixels from the top left of the picture.
"""
import math
import random
from pathlib import Path

import cv2
import numpy as np

# Long and short side in mm, and how much shorter than quoted the lens is. A
# phone is quoted with the length of equal diagonal on 36 x 24 mm, its 4:3 frame
# being 34.61 x 25.96 mm there; 3.5 is its crop factor.
SENSORS = {
    "full-frame": (36.0, 24.0, 1.0),
    "four-thirds": (17.3, 13.0, 1.0),
    "medium": (43.8, 32.9, 1.0),
    "phone": (34.61 / 3.5, 25.96 / 3.5, 3.5),
}
PIXELS = {
    "full-frame": [(6000, 4000), (9504, 6336)],
    "four-thirds": [(5184, 3888)],
    "medium": [(8256, 6192)],
    "phone": [(4032, 3024)],
}
FOCAL = {"full-frame": [35, 50], "four-thirds": [17, 25], "medium": [45, 63], "phone": [24, 26]}
RATIOS = [(3, 2), (4, 3), (2, 3), (4, 5), (1, 1), (16, 9)]


def scene(pick):
    name = pick.choice(sorted(SENSORS))
    long, short, shorter = SENSORS[name]
    quoted = pick.choice(FOCAL[name])
    pixels = pick.choice(PIXELS[name])
    a, b = pick.choice(RATIOS)
    width = pick.randrange(700, 1600, 10)
    height = width * b / a
    turn = pick.choice([0, 90, 180, 270, pick.randrange(0, 720) / 2])
    middle = (pick.randrange(600, 1200), pick.randrange(500, 900))

    across = max(width, height, min(width, height) * long / short)
    focal = quoted / shorter
    lens = focal * (1 + across / long)
    # One pitch of square pixels on the sensor: that of its tighter side.
    pitch = max(long / pixels[0], short / pixels[1])
    behind = focal * lens / (lens - focal)
    size = pixels if width >= height else pixels[::-1]
    inside = np.array([
        [behind / pitch, 0, size[0] / 2],
        [0, behind / pitch, size[1] / 2],
        [0, 0, 1.0],
    ])
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    # Table: x right, y down the table, z up. Camera: z down to the table.
    rotation = np.array([[c, s, 0], [-s, c, 0], [0, 0, 1.0]])
    rvec, _ = cv2.Rodrigues(rotation)
    shift = -rotation @ np.array([middle[0], middle[1], 0.0])

    things, hulls = [], []
    for _ in range(200):
        if len(things) == 3:
            break
        u, v = pick.uniform(-0.4, 0.4) * width, pick.uniform(-0.4, 0.4) * height
        x, y = round(middle[0] + u * c - v * s), round(middle[1] + u * s + v * c)
        wide, high = pick.randrange(60, 140), pick.randrange(40, 240)
        away = math.hypot(x - middle[0], y - middle[1])
        # Apart, however far they lean; and none that hardly leans at all.
        lean = (away + wide / 2) * high / (lens - high)
        apart = all(math.dist((x, y), o[:2]) > (wide + o[2]) / 2 + lean + o[4] + 5 for o in things)
        if not apart or lean < 4:
            continue
        around = np.arange(720) * math.pi / 360
        ring = np.stack([x + wide / 2 * np.cos(around), y + wide / 2 * np.sin(around)], 1)
        both = np.concatenate([
            np.column_stack([ring, np.full(720, lens)]),
            np.column_stack([ring, np.full(720, lens - high)]),
        ])
        image, _ = cv2.projectPoints(both, rvec, shift, inside, None)
        hull = cv2.convexHull(image[:, 0, :].astype(np.float32))[:, 0, :]
        if (hull < 0).any() or (hull > size).any():
            continue
        things.append((x, y, wide, high, lean))
        hulls.append(hull[:: 8])
    return [
        name, str(quoted), f"{pixels[0]} {pixels[1]}",
        f"{a} {b} {middle[0]} {middle[1]} {width} {turn}",
        "|".join(" ".join(map(str, t[:4])) for t in things),
        "|".join(" ".join(f"{v:.2f}" for p in hull for v in p) for hull in hulls),
    ]


def main():
    pick = random.Random(20_260_913)
    lines = ["sensor,focal,pixels,frame,things,seen"]
    while len(lines) <= 60:
        row = scene(pick)
        if row[4]:
            lines.append(",".join(row))
    Path(__file__).with_name("see_through.csv").write_text("\n".join(lines) + "\n")


main()
