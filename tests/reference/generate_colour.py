"""Colour differences of 1,000 random sRGB pairs.

Lab, HyAB and CIEDE2000 are those of colour-science. The columns named `own` use the seven-digit matrix and the white of the planner;
`default` and those beginning with `d` leave both to the library. Contrast is written out from the
definitions of relative luminance and contrast ratio in WCAG 2.1, with the
0.03928 printed there.
"""
import random
from pathlib import Path

import colour
import numpy as np

MATRIX = np.array([
    [0.4124564, 0.3575761, 0.1804375],
    [0.2126729, 0.7151522, 0.0721750],
    [0.0193339, 0.1191920, 0.9503041],
])
WHITE = np.array([0.95047, 1.0, 1.08883])
# Lab in colour-science wants the white as chromaticity.
WHITE_XY = WHITE[:2] / WHITE.sum()
PROFILE = colour.RGB_COLOURSPACES["sRGB"]


def linear(srgb):
    return colour.models.eotf_sRGB(np.array(srgb) / 255)


def own_lab(light):
    return colour.XYZ_to_Lab(MATRIX @ light, WHITE_XY)


def default_lab(srgb):
    xyz = colour.sRGB_to_XYZ(np.array(srgb) / 255)
    return colour.XYZ_to_Lab(xyz, PROFILE.whitepoint)


def hyab(x, y):
    return float(colour.delta_E(x, y, method="HyAB"))


def luminance(srgb):
    def channel(c):
        c /= 255
        return c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4

    r, g, b = map(channel, srgb)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(x, y):
    low, high = sorted([luminance(x), luminance(y)])
    return (high + 0.05) / (low + 0.05)


def main():
    pick = random.Random(20_260_901)
    lines = ["x,y,l,a,b,dl,da,db,own,default,ciede2000,contrast"]
    for _ in range(1000):
        # Half of the pairs lie close together, where edges get lost.
        x = [pick.randrange(256) for _ in range(3)]
        if pick.random() < 0.5:
            y = [min(255, max(0, c + pick.randrange(-40, 41))) for c in x]
        else:
            y = [pick.randrange(256) for _ in range(3)]
        lab_x, lab_y = own_lab(linear(x)), own_lab(linear(y))
        numbers = [
            *lab_x,
            *default_lab(x),
            hyab(lab_x, lab_y),
            hyab(default_lab(x), default_lab(y)),
            float(colour.delta_E(lab_x, lab_y, method="CIE 2000")),
            contrast(x, y),
        ]
        text = ["#%02x%02x%02x" % tuple(c) for c in (x, y)]
        # Eight digits: half of the tolerance is room for the last one.
        lines.append(",".join(text + [f"{n + 0.0:.8f}" for n in numbers]))
    Path(__file__).with_name("colour.csv").write_text("\n".join(lines) + "\n")


main()
