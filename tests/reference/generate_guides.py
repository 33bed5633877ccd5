"""Mask guides of a small camera, by shapely and by rays.

Reads guides_arms.json, which the tests keep to what the planner lays out: for
each table the camera, the light, and for each exposure the outlines that lie
level in it, each with its height over the table, mm. Grows them, throws their
shadows and parts them from each other by itself: distances by shapely, the
light lost by casting 48 x 48 rays from a place to the source and looking up in
a raster of half a millimetre whether they meet a plate. Writes some rows of
each guide as runs of "value*count".
"""
import json
import math
from pathlib import Path

import cv2
import numpy as np
import shapely

HERE = Path(__file__).parent
QUIET, FEATHER, TAPER = 40.0, 10.0, 40.0
NONE, SEEN = 0.01, 0.10
RAYS = 48
FINE = 2.0  # raster pixels a mm
EVERY = 53  # rows


def lens_height(camera, frame):
    """A thin lens as high as the frame just fills the sensor."""
    wide, high = frame["width"], frame["height"]
    long, short = max(wide, high), min(wide, high)
    sensor = camera["sensor"]
    across = max(long, short * sensor[0] / sensor[1])
    return camera["focal"] * (1 + across / sensor[0]), across


class Plate:
    """What lies level at one height, joined, as a raster."""

    def __init__(self, height, outlines):
        self.height = height
        self.shape = shapely.union_all([shapely.Polygon(o).buffer(0) for o in outlines])
        low_x, low_y, high_x, high_y = self.shape.bounds
        self.low = np.array([low_x - 1, low_y - 1])
        size = [int((high_y - low_y + 2) * FINE) + 1, int((high_x - low_x + 2) * FINE) + 1]
        self.raster = np.zeros(size, np.uint8)
        for part in shapely.get_parts(self.shape):
            rings = [part.exterior, *part.interiors]
            ends = [np.round((np.array(r.coords) - self.low) * FINE * 16).astype(np.int32) for r in rings]
            cv2.fillPoly(self.raster, ends, 1, shift=4)

    def meets(self, places):
        at = np.floor((places - self.low) * FINE + 0.5).astype(np.int32)
        inside = (at >= 0).all(-1) & (at[..., 0] < self.raster.shape[1]) & (at[..., 1] < self.raster.shape[0])
        out = np.zeros(places.shape[:-1], bool)
        out[inside] = self.raster[at[inside][:, 1], at[inside][:, 0]] > 0
        return out


class Light:
    def __init__(self, light, table):
        turn = math.radians(light["clock"])
        out = np.array([math.sin(turn), -math.cos(turn)])
        middle = np.array(table) / 2
        centre = np.append(middle + out * light["distance"], light["height"])
        if light["shape"] == "window":
            self.facing = np.append(-out, 0.0)
            half = light["width"] / 2, light["tall"] / 2
        else:
            away = np.append(middle, 0.0) - centre
            self.facing = away / np.linalg.norm(away)
            half = light["width"] / 2, light["width"] / 2
        aside = np.array([-out[1], out[0], 0.0])
        up = np.cross(aside, self.facing)
        steps = (np.arange(RAYS) + 0.5) / RAYS * 2 - 1
        u, v = np.meshgrid(steps, steps)
        if light["shape"] != "window":
            keep = u**2 + v**2 <= 1
            u, v = u[keep], v[keep]
        u, v = u.ravel()[:, None], v.ravel()[:, None]
        self.points = centre + aside * half[0] * u + up * half[1] * v

    def lost(self, places, plates):
        """Share of the light on a level table that plates take."""
        out = np.zeros(len(places))
        for n, place in enumerate(places):
            ray = self.points - np.append(place, 0.0)
            far = (ray**2).sum(1)
            light = np.maximum(ray[:, 2], 0) * np.maximum(-(ray @ self.facing), 0) / far**2
            met = np.zeros(len(ray), bool)
            for plate in plates:
                up = plate.height < self.points[:, 2]
                share = plate.height / np.where(up, self.points[:, 2], 1.0)
                met |= up & plate.meets(place + ray[:, :2] * share[:, None])
            if light.sum() > 0:
                out[n] = light[met].sum() / light.sum()
        return out


def faded(lost):
    return np.clip((lost - NONE) / (SEEN - NONE), 0, 1)


def rows_of(case):
    camera, frame = case["camera"], case["frame"]
    high_lens, across = lens_height(camera, frame)
    wide, high = camera["pixels"]
    density = max(wide, high) / across
    turn = math.radians(frame["turn"])
    right = np.array([math.cos(turn), math.sin(turn)])
    down = np.array([-right[1], right[0]])
    under = np.array(frame["at"])
    light = Light(case["light"], case["table"])
    own = []
    for exposure in case["exposures"]:
        heights = sorted({h for h, _ in exposure["level"]})
        plates = [Plate(h, [o for z, o in exposure["level"] if z == h]) for h in heights]
        seen = []
        for plate in plates:
            scale = high_lens / (high_lens - plate.height)
            shape = shapely.transform(plate.shape, lambda p, s=scale: under + (p - under) * s)
            seen.append(shape)
        solid = shapely.union_all(seen)
        shapely.prepare(solid)
        own.append((exposure["id"], solid, plates))
    for n, (name, solid, plates) in enumerate(own):
        for y in range(EVERY // 2, high, EVERY):
            px = np.stack([np.arange(wide) + 0.5, np.full(wide, y + 0.5)], 1)
            by = (px - np.array([wide, high]) / 2) / density
            places = under + by[:, :1] * right + by[:, 1:] * down
            points = shapely.points(places)
            away = shapely.distance(points, solid)
            quiet = np.minimum((QUIET + FEATHER - away) / FEATHER, 1)
            shadow = faded(light.lost(places, plates))
            for m, (_, other, others) in enumerate(own):
                if m == n:
                    continue
                off = shapely.distance(points, other)
                shadow = np.minimum(shadow, np.clip(off / TAPER, 0, 1))
                near = np.where((away < QUIET + FEATHER) & (away > 0))[0]
                theirs = np.zeros(wide)
                theirs[near] = faded(light.lost(places[near], others))
                theirs *= np.clip(away / TAPER, 0, 1)
                width = np.maximum(np.minimum(FEATHER, away + off), 1e-12)
                parted = np.clip(0.5 + (off - away) / (2 * width), 0, 1)
                quiet = np.minimum(np.minimum(quiet, parted), 1 - theirs)
            value = np.where(away <= 0, 1, np.clip(np.maximum(quiet, shadow), 0, 1))
            grey = np.round(value * 255).astype(int)
            ends = np.flatnonzero(np.diff(grey)) + 1
            runs = np.split(grey, ends)
            text = " ".join(f"{r[0]}*{len(r)}" if len(r) > 1 else str(r[0]) for r in runs)
            yield f"{case['name']},{name},{y},{text}"


def main():
    cases = json.loads((HERE / "guides_arms.json").read_text())
    lines = ["table,exposure,row,grey"]
    for case in cases:
        lines.extend(rows_of(case))
    (HERE / "guides.csv").write_text("\n".join(lines) + "\n")


main()
