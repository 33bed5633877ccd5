"""What each exposure of 48 random layouts adds to the combined picture, and
where two of them want the same place, worked out with shapely.

The core gives the outlines of its arms, the plates light meets and where the
lens hangs (`cargo run -p planner --example arm_outlines`); everything after
that is done anew here: each part is drawn out from under the lens at its
height (relief displacement), parts are united and cut to the frame; each plate
is thrown onto the table past the source, a window by its corners and a disc by
a fine ring, and the hulls are united; areas of what both of two exposures add,
and of the shadow of each on the other, follow. `exact` is the penumbra of the
very outlines instead of the hulls of the plates, from pieces of 25 mm.

Written: `regions.jsonl`, the layouts, and `regions.csv`, areas in mm² under the
number of the layout.
"""
import json
import math
import random
import subprocess
from pathlib import Path

from shapely import MultiPoint, Polygon, box, union_all

HERE = Path(__file__).parent
CASES = 48
RING = 360
PIECE = 25.0


def layout(dice):
    ids = iter(range(1, 200))
    wide, deep = dice.randint(1200, 2200), dice.randint(800, 1200)
    frame = min(wide, deep * 3 // 2) - dice.randint(20, 200)
    exposures = [{"id": next(ids)} for _ in range(dice.randint(2, 4))]
    items, hands, seats, people = [], [], [], []
    for exposure in exposures:
        for _ in range(dice.choice([1, 1, 2])):
            side = dice.randrange(4)
            at = [
                [dice.randint(0, wide), deep],
                [dice.randint(0, wide), 0],
                [0, dice.randint(0, deep)],
                [wide, dice.randint(0, deep)],
            ][side]
            seat = {"id": next(ids), "at": at}
            sleeve = {"length": dice.choice(["bare", "rolled", "long"])}
            person = {"id": next(ids), "sleeve": sleeve}
            seats.append(seat)
            people.append(person)
            # Within an arm's length of the place, towards the middle.
            reach = dice.uniform(0.35, 0.62)
            target = [
                round(at[0] + (wide / 2 - at[0]) * reach + dice.uniform(-150, 150)),
                round(at[1] + (deep / 2 - at[1]) * reach + dice.uniform(-150, 150)),
            ]
            hand = {
                "id": next(ids), "person": person["id"], "exposure": exposure["id"],
                "side": dice.choice(["left", "right"]),
                "action": dice.choice(["reach", "rest", "hold", "sprinkle"]),
                "entry": at, "target": target, "height": dice.randint(20, 260),
            }
            # Some have no place at the table and come straight from the edge.
            if dice.random() < 0.6:
                hand["seat"] = seat["id"]
            if dice.random() < 0.3:
                item = {
                    "id": next(ids), "prop": "dinner-plate", "at": [wide // 2, deep // 2],
                    "size": {"shape": "disc", "diameter": dice.randint(90, 280), "rim": 6},
                }
                items.append(item)
                hand["holds"] = item["id"]
            hands.append(hand)
    disc = dice.random() < 0.5
    high = dice.randint(500, 1400)
    light = {
        "clock": dice.randrange(0, 360, 5), "distance": dice.randint(700, 2500),
        "height_above_table": dice.randint(high // 2 + 300, 2200),
        "shape": "disc" if disc else "window", "width": dice.randint(400, 1600), "height": high,
    }
    return {
        "format": "overspread-layout", "version": 0, "id": "0000000000000001", "next_id": 200,
        "table": {"width": wide, "depth": deep},
        "frame": {"at": [wide // 2, deep // 2], "width": frame, "turn": dice.choice([0, 0, 90, 7.5])},
        "light": light, "items": items, "seats": seats, "people": people,
        "exposures": exposures, "hands": hands,
    }


def source(table):
    """Corners of the light: a window upright, a disc turned to the table."""
    light = table["light"]
    turn = math.radians(light["clock"])
    out = (math.sin(turn), -math.cos(turn))
    cx, cy = table["table"]["width"] / 2, table["table"]["depth"] / 2
    x, y = cx + out[0] * light["distance"], cy + out[1] * light["distance"]
    z = light["height_above_table"]
    side = (-out[1], out[0], 0.0)
    if light["shape"] == "window":
        half = (light["width"] / 2, light["height"] / 2)
        up = (0.0, 0.0, 1.0)
        ring = [(-1, -1), (1, -1), (1, 1), (-1, 1)]
    else:
        half = (light["width"] / 2,) * 2
        # Square to the way to the table's centre and to the level line.
        slope = math.atan2(z, light["distance"])
        up = (-out[0] * math.sin(slope), -out[1] * math.sin(slope), math.cos(slope))
        ring = [(math.cos(2 * math.pi * n / RING), math.sin(2 * math.pi * n / RING)) for n in range(RING)]
    return [
        tuple(c + u * half[0] * s + v * half[1] * w for c, s, w in zip((x, y, z), side, up))
        for u, v in ring
    ]


def throw(points, height, lamps, most):
    """Every place that loses light to the hull of points at a height."""
    out = list(points)
    for lx, ly, lz in lamps:
        for x, y in points:
            dx, dy = x - lx, y - ly
            far = math.hypot(dx, dy)
            reach = min(far * height / (lz - height), most) if lz - height > 1 else most
            out.append((x + dx / far * reach, y + dy / far * reach))
    return MultiPoint(out).convex_hull


def frame_of(table):
    frame = table["frame"]
    wide, (x, y) = frame["width"], frame["at"]
    high = wide * 2 / 3
    turn = math.radians(frame["turn"])
    cos, sin = math.cos(turn), math.sin(turn)
    corners = [(-wide / 2, -high / 2), (wide / 2, -high / 2), (wide / 2, high / 2), (-wide / 2, high / 2)]
    return Polygon([(x + a * cos - b * sin, y + a * sin + b * cos) for a, b in corners])


def pieces(outline):
    x0, y0, x1, y1 = outline.bounds
    for n in range(math.ceil((x1 - x0) / PIECE)):
        for m in range(math.ceil((y1 - y0) / PIECE)):
            x, y = x0 + n * PIECE, y0 + m * PIECE
            part = outline.intersection(box(x, y, x + PIECE, y + PIECE))
            for each in getattr(part, "geoms", [part]):
                if each.area > 0:
                    yield list(each.exterior.coords)


def main():
    dice = random.Random(20260909)
    tables = [layout(dice) for _ in range(CASES)]
    lines = [json.dumps(table, separators=(",", ":")) for table in tables]
    told = subprocess.run(
        ["cargo", "run", "-q", "-p", "planner", "--example", "arm_outlines"],
        input="\n".join(lines), text=True, capture_output=True, check=True, cwd=HERE.parent.parent,
    ).stdout.splitlines()
    rows = ["case,first,second,solid,shadow,exact,both,first_on_second,second_on_first"]
    for case, (table, arms) in enumerate(zip(tables, map(json.loads, told))):
        frame, lamps = frame_of(table), source(table)
        most = math.hypot(table["frame"]["width"], table["frame"]["width"] * 2 / 3)
        ux, uy, up = arms["lens"]
        added = []
        for exposure in table["exposures"]:
            solid, shadow, exact = [], [], []
            for hand in arms["hands"]:
                if hand["exposure"] != exposure["id"]:
                    continue
                height = hand["height"]
                grown = up / (up - height)
                for part in hand["parts"]:
                    seen = [(ux + (x - ux) * grown, uy + (y - uy) * grown) for x, y in part]
                    solid.append(Polygon(seen).buffer(0))
                    few = lamps[:: max(1, len(lamps) // 36)]
                    for piece in pieces(Polygon(part).buffer(0)):
                        exact.append(throw(piece, height, few, most))
                shadow += [throw([tuple(p) for p in plate], height, lamps, most) for plate in hand["plates"]]
            added.append([union_all(each).intersection(frame) for each in (solid, shadow, exact)])
        for n, (solid, shadow, exact) in enumerate(added):
            first = table["exposures"][n]["id"]
            rows.append(f"{case},{first},0,{solid.area:.1f},{shadow.area:.1f},{exact.area:.1f},0,0,0")
            for m in range(n + 1, len(added)):
                other, its = added[m][0], added[m][1]
                second = table["exposures"][m]["id"]
                both = solid.intersection(other).area
                on = [shadow.intersection(other).area, its.intersection(solid).area]
                rows.append(f"{case},{first},{second},0,0,0,{both:.1f},{on[0]:.1f},{on[1]:.1f}")
    (HERE / "regions.jsonl").write_text("\n".join(lines) + "\n")
    (HERE / "regions.csv").write_text("\n".join(rows) + "\n")


if __name__ == "__main__":
    main()
