"""Charts and mixed patches as a camera would write them.

Each of the 24 patches of the colour chart known in colour-science as BabelColor
Average is rendered from its measured reflectance, so that no chromatic
adaptation stands between chart and picture: reflectance x the light's own
spectrum x the CIE 1931 observer, then sRGB primaries, an exposure that puts a
perfect white's strongest channel at 0.85, and the sRGB curve in 8 bits. The
paper is a flat reflectance of L* 95 (white) or 50 (grey) in the same light.

Lights:
  window    CIE daylight of 5000 K, the camera set to D65
  lamp      black body of 3200 K, the camera set to D65
  balanced  black body of 3200 K brought by the camera to the white of 5000 K
            by CMCCAT2000, as cameras balance part of the way

Noise is Gaussian, sigma 3 of 255, on each channel after the curve.

`photo_charts.csv` has a row for each patch in each light: `pixels` is one
colour without noise, 144 of a patch of 12 x 12 with it; l, a, b is the patch's
published D50 colour brought to D65 by CAT16.

`photo_mixes.csv` has patches of 32 x 32 pixels made of two or three of the
colours in random discs, all with noise; the shares are counted.
"""
from pathlib import Path

import colour
import numpy as np

CHART = "BabelColor Average"
SHAPE = colour.SpectralShape(380, 780, 5)
OBSERVER = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE).values
TO_RGB = np.linalg.inv(np.array([
    [0.4124564, 0.3575761, 0.1804375],
    [0.2126729, 0.7151522, 0.0721750],
    [0.0193339, 0.1191920, 0.9503041],
]))
D65 = np.array([0.95047, 1.0, 1.08883])
D65_XY = D65[:2] / D65.sum()
EXPOSURE = 0.85
SIGMA = 3.0
PAPERS = {"white": 95, "grey": 50}
SIDE = 12
MIX = 32

DAYLIGHT = colour.sd_CIE_illuminant_D_series(
    colour.temperature.CCT_to_xy_CIE_D(5000 * 1.4388 / 1.4380)
).align(SHAPE).values
BLACK_BODY = colour.sd_blackbody(3200, SHAPE).values
FLAT = np.ones(len(DAYLIGHT))


def seen(reflectance, light):
    return (reflectance * light) @ OBSERVER / (light @ OBSERVER[:, 1])


def as_is(xyz):
    return xyz


def balanced(xyz):
    white, wanted = seen(FLAT, BLACK_BODY), seen(FLAT, DAYLIGHT)
    return colour.chromatic_adaptation(
        xyz, white, wanted, method="CMCCAT2000", L_A1=100, L_A2=100
    )


LIGHTS = {
    "window": (DAYLIGHT, as_is),
    "lamp": (BLACK_BODY, as_is),
    "balanced": (BLACK_BODY, balanced),
}


def camera(name):
    """The camera's light of a reflectance, 0 to 1, in linear sRGB."""
    light, balance = LIGHTS[name]

    def linear(reflectance):
        return TO_RGB @ balance(seen(reflectance, light))

    by = EXPOSURE / linear(FLAT).max()
    return lambda reflectance: np.clip(linear(reflectance) * by, 0, 1)


def written(light):
    return 255 * colour.models.eotf_inverse_sRGB(light)


def bytes_of(values):
    return np.clip(np.round(values), 0, 255).astype(int)


def hexed(values):
    return bytes_of(values).astype(np.uint8).tobytes().hex()


def reference():
    chart = colour.CCS_COLOURCHECKERS[CHART]
    white = colour.xy_to_XYZ(chart.illuminant)
    found = {}
    for name, xyy in chart.data.items():
        xyz = colour.chromatic_adaptation(
            colour.xyY_to_XYZ(xyy), white, D65, method="Von Kries", transform="CAT16"
        )
        found[name] = colour.XYZ_to_Lab(xyz, D65_XY)
    return found


def paper(lightness):
    return FLAT * ((lightness + 16) / 116) ** 3


def noisy(pick, values):
    return values + pick.normal(0, SIGMA, values.shape)


def charts(reflectances, known):
    pick = np.random.default_rng(20_261_001)
    lines = ["light,patch,noise,card,paper,pixels,l,a,b"]
    for light in LIGHTS:
        shot = camera(light)
        for card, lightness in PAPERS.items():
            for noise in (0, SIGMA):
                sheet = written(shot(paper(lightness)))
                for name, reflectance in reflectances.items():
                    value, white = written(shot(reflectance)), sheet
                    if noise:
                        if card == "grey":
                            continue
                        value = noisy(pick, np.tile(value, (SIDE * SIDE, 1)))
                        white = noisy(pick, np.tile(sheet, (SIDE * SIDE, 1))).mean(0)
                    lab = [f"{c:.3f}" for c in known[name]]
                    lines.append(",".join([
                        light, name, f"{noise:.0f}", card, hexed(white), hexed(value), *lab,
                    ]))
    return lines


MIXES = [
    ("window", ["dark skin", "white 9.5 (.05 D)"]),
    ("window", ["foliage", "light skin"]),
    ("balanced", ["orange", "neutral 3.5 (1.05 D)"]),
    ("lamp", ["moderate red", "neutral 8 (.23 D)"]),
    ("balanced", ["blue", "yellow green"]),
    ("window", ["black 2 (1.5 D)", "orange yellow"]),
    ("window", ["dark skin", "light skin", "foliage"]),
    ("balanced", ["red", "yellow", "green"]),
    ("lamp", ["neutral 3.5 (1.05 D)", "neutral 6.5 (.44 D)", "moderate red"]),
    ("window", ["blue flower", "white 9.5 (.05 D)", "dark skin"]),
    ("balanced", ["black 2 (1.5 D)", "neutral 5 (.70 D)", "neutral 8 (.23 D)"]),
    ("window", ["orange", "purple", "yellow green"]),
]


def mixes(reflectances, known):
    pick = np.random.default_rng(20_261_002)
    lines = ["light,paper,pixels,shares,tones"]
    across, down = np.meshgrid(np.arange(MIX), np.arange(MIX))
    for light, names in MIXES:
        shot = camera(light)
        owner = np.zeros((MIX, MIX), dtype=int)
        for other in range(1, len(names)):
            wanted = pick.uniform(0.12, 0.4)
            while (owner == other).mean() < wanted:
                x, y = pick.uniform(0, MIX, 2)
                radius = pick.uniform(3, 7)
                owner[(across - x) ** 2 + (down - y) ** 2 < radius**2] = other
        values = np.array([written(shot(reflectances[name])) for name in names])[owner]
        pixels = noisy(pick, values.reshape(-1, 3))
        shares = [f"{100 * (owner == n).mean():.2f}" for n in range(len(names))]
        labs = [" ".join(f"{c:.3f}" for c in known[name]) for name in names]
        lines.append(",".join([
            light,
            hexed(written(shot(paper(PAPERS["white"])))),
            hexed(pixels),
            " ".join(shares),
            "|".join(labs),
        ]))
    return lines


def main():
    spectra = colour.SDS_COLOURCHECKERS[CHART]
    reflectances = {name: sd.copy().align(SHAPE).values for name, sd in spectra.items()}
    known = reference()
    for name, lines in [
        ("photo_charts.csv", charts(reflectances, known)),
        ("photo_mixes.csv", mixes(reflectances, known)),
    ]:
        Path(__file__).with_name(name).write_text("\n".join(lines) + "\n")


main()
