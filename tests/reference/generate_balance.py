"""Balance of 1,000 random layouts, written a second time from the formulas.

Sources: Hübner & Fillinger 2016 (DCM), Zhang & Xue 2026 (exponential score),
Ngo, Teo & Byrne 2003 (balance by lever arms). Exact fractions are used up to
the last step, so that no order of summation matters.
"""
import math
import random
from fractions import Fraction
from pathlib import Path


def masses(parts, chroma_weight):
    out = []
    for x, y, area, delta_l, delta_c in parts:
        contrast = (delta_l + chroma_weight * delta_c) / 100
        out.append((x, y, area * min(Fraction(1), max(Fraction(1, 10), contrast))))
    return out


def centre(weights):
    total = sum(m for _, _, m in weights)
    return (
        sum(x * m for x, _, m in weights) / total,
        sum(y * m for _, y, m in weights) / total,
    )


def score(width, height, x, y):
    away = abs(x - Fraction(width, 2)) + abs(y - Fraction(height, 2))
    return 100 * math.exp(float(-5 * away / Fraction(width + height, 2)))


def levers(width, height, weights):
    def axis(arm):
        one = sum(m * -arm(x, y) for x, y, m in weights if arm(x, y) < 0)
        other = sum(m * arm(x, y) for x, y, m in weights if arm(x, y) > 0)
        most = max(one, other)
        return abs(one - other) / most if most else Fraction(0)

    across = axis(lambda x, _: x - Fraction(width, 2))
    down = axis(lambda _, y: y - Fraction(height, 2))
    return float(1 - (across + down) / 2)


def main():
    pick = random.Random(20_260_903)
    lines = ["width,height,parts,dx,dy,dcm,s0,s25,s100,levers"]
    for _ in range(1000):
        width, height = pick.choice([(1200, 800), (1000, 1250), (1000, 1000), (900, 1600)])
        parts = [
            (
                pick.randrange(width + 1),
                pick.randrange(height + 1),
                pick.randrange(20, 2000),
                pick.randrange(100),
                pick.randrange(100),
            )
            for _ in range(pick.randrange(1, 9))
        ]
        full = masses(parts, Fraction(1))
        x, y = centre(full)
        dx, dy = x / width - Fraction(1, 2), y / height - Fraction(1, 2)
        scores = [
            score(width, height, *centre(masses(parts, weight)))
            for weight in (Fraction(0), Fraction(1, 4), Fraction(1))
        ]
        numbers = [
            float(dx),
            float(dy),
            200 * math.hypot(float(dx), float(dy)),
            *scores,
            levers(width, height, full),
        ]
        lines.append(",".join(
            [str(width), str(height), "|".join(" ".join(map(str, p)) for p in parts)]
            + [f"{n + 0.0:.9f}" for n in numbers]
        ))
    Path(__file__).with_name("balance.csv").write_text("\n".join(lines) + "\n")


main()
