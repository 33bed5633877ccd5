"""Balance and spread of 100 random layouts of discs, counted on rasters of 1,000 pixels a
side and more.

The eight sub-measures of APB and the two entropies of homogeneity are taken
pixel by pixel, as in the procedure published with Redies et al. 2025,
doi:10.3758/s13428-025-02632-3: halves by the middle lines and diagonals, inner
against outer halves of equal area. Discs are painted in order, later ones over
earlier ones, each with its own mass; for homogeneity every disc counts 1.
"""
import random
from pathlib import Path

import numpy as np


def unlike(mass, half):
    total = mass.sum()
    return abs(2 * (mass * half).sum() / total - 1) * 100


def balance(width, height, x, y, owner, discs):
    """DCM, score, and balance by lever arms of what is seen of each disc."""
    masses = []
    for n, (_, _, _, weight) in enumerate(discs, 1):
        own = owner == n
        if own.any():
            masses.append((x[own].mean(), y[own].mean(), own.sum() * weight))
    mx, my, m = np.array(masses).T
    dx, dy = (mx * m).sum() / m.sum() - width / 2, (my * m).sum() / m.sum() - height / 2
    levers = []
    for arm in (mx - width / 2, my - height / 2):
        one, other = (m * np.clip(-arm, 0, None)).sum(), (m * np.clip(arm, 0, None)).sum()
        levers.append(abs(one - other) / max(one, other, 1e-9))
    score = 100 * np.exp(-5 * (abs(dx) + abs(dy)) / ((width + height) / 2))
    return 200 * np.hypot(dx / width, dy / height), score, 100 * (1 - sum(levers) / 2)


def measures(width, height, discs):
    y, x = np.mgrid[0:height, 0:width] + 0.5
    owner = np.zeros((height, width), dtype=int)
    for n, (cx, cy, radius, _) in enumerate(discs, 1):
        owner[(x - cx) ** 2 + (y - cy) ** 2 <= radius**2] = n
    mass = np.array([0, *(weight for *_, weight in discs)])[owner]
    u, v = x / width, y / height

    def side(distance):
        # A pixel on the line itself counts half on either side.
        return np.where(distance == 0, 0.5, distance < 0)

    leg = 1 - np.sqrt(0.5)
    halves = [
        side(u - 0.5),
        side(v - 0.5),
        side(np.round(u - v, 12)),
        side(np.round(u + v - 1, 12)),
        np.abs(u - 0.5) < 0.25,
        np.abs(v - 0.5) < 0.25,
        np.abs(u - v) < leg,
        np.abs(u + v - 1) < leg,
    ]
    parts = [unlike(mass, half) for half in halves]
    black = mass > 0
    entropies = []
    for axis, share in ((0, u[0, :]), (1, v[:, 0])):
        bins = np.bincount((share * 10).astype(int), black.sum(axis=axis), 10)
        p = bins[bins > 0] / bins.sum()
        entropies.append(-(p * np.log10(p)).sum() * 100)
    spread = [*parts, float(np.mean(parts)), float(np.mean(entropies))]
    return [*spread, *balance(width, height, x, y, owner, discs)]


def main():
    pick = random.Random(20_260_904)
    lines = [
        "width,height,discs,left_right,top_bottom,falling,rising,"
        "columns,rows,along_falling,along_rising,apb,homogeneity,dcm,score,levers"
    ]
    for _ in range(100):
        width, height = pick.choice([(1000, 1000), (1200, 1000), (1000, 1250)])
        discs = [
            (
                pick.randrange(width + 1),
                pick.randrange(height + 1),
                pick.randrange(30, 220),
                pick.randrange(1, 11),
            )
            for _ in range(pick.randrange(1, 10))
        ]
        numbers = measures(width, height, discs)
        lines.append(",".join(
            [str(width), str(height), "|".join(" ".join(map(str, d)) for d in discs)]
            + [f"{n:.4f}" for n in numbers]
        ))
    Path(__file__).with_name("spread.csv").write_text("\n".join(lines) + "\n")


main()
