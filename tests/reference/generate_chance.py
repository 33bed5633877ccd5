"""What chance gives of triangles, by an independent count: a million triples
drawn with numpy, sides by distance, areas by Heron's formula.

Beside each counted percentile stands the one on record, simulated once apart
from both programs. The run fails when the two are further apart than agreed:
2 score points, or, for quality and area, a share of 2 in 100 drawn.
"""
from pathlib import Path

import numpy as np

SHARES = [5, 25, 50, 75, 95]
DRAWN = 1_000_000

# Percentiles on record: of the quality 4*sqrt(3)*A/(a^2+b^2+c^2) and the area
# of random triangles in a unit square, and of S4 of the same.
ON_RECORD = {
    "quality": [0.051, 0.258, 0.518, 0.774, 0.958],
    "area": [0.0043, 0.024, 0.056, 0.110, 0.214],
    "triangle score": [6, 29, 59, 90, 100],
}
SCORES = ("triangle score",)
WITHIN = 2


def drawn(pick):
    corners = pick.random((DRAWN, 3)) + 1j * pick.random((DRAWN, 3))
    a, b, c = np.abs(corners - np.roll(corners, 1, axis=1)).T
    half = (a + b + c) / 2
    area = np.sqrt(np.clip(half * (half - a) * (half - b) * (half - c), 0, None))
    quality = 4 * np.sqrt(3) * area / (a * a + b * b + c * c)
    score = 100 * np.sqrt(np.clip(quality / 0.75, 0, 1) * np.clip(area / 0.11, 0, 1))
    return {"quality": quality, "area": area, "triangle score": score}


def main():
    lines = ["measure,share,on_record,counted"]
    for measure, values in drawn(np.random.default_rng(20_261_126)).items():
        counted = np.percentile(values, SHARES)
        for share, recorded, found in zip(SHARES, ON_RECORD[measure], counted):
            if measure in SCORES:
                off = abs(found - recorded)
            else:
                off = abs((values < recorded).mean() * 100 - share)
            assert off <= WITHIN, f"{measure}, {share}: {found} counted, {recorded} on record"
            lines.append(f"{measure},{share},{recorded},{found:.5f}")
    Path(__file__).with_name("chance.csv").write_text("\n".join(lines) + "\n")


main()
