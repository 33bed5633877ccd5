"""Where 200 runners hang over the edges of random tables, by shapely.

Each runner is a rectangle about a place on the table. Its middle line leaves
the table at each end where it crosses the table's outline; what is past that
is the drop. What is seen from above is the rectangle within the table.
Lengths in mm, turns in degrees clockwise on a table whose y runs down.
"""
import math
import random
from pathlib import Path

from shapely import affinity
from shapely.geometry import LineString, Point, box


def main():
    pick = random.Random(39)
    lines = ["table,width,depth,corner,x,y,size_x,size_y,turn,drop_low,drop_high,seen"]
    while len(lines) <= 200:
        kind = pick.choice(["rect", "rect", "round"])
        width = pick.randrange(900, 2600, 10)
        depth = width if kind == "round" else pick.randrange(700, 1300, 10)
        corner = 0 if kind == "round" else pick.choice([0, 0, 60, 150])
        if kind == "round":
            table = Point(width / 2, width / 2).buffer(width / 2, quad_segs=720)
        elif corner:
            table = box(corner, corner, width - corner, depth - corner).buffer(corner, quad_segs=180)
        else:
            table = box(0, 0, width, depth)
        x = round(width / 2 + pick.uniform(-0.15, 0.15) * width)
        y = round(depth / 2 + pick.uniform(-0.15, 0.15) * depth)
        long, broad = pick.randrange(800, 3200, 10), pick.randrange(250, 420, 10)
        size = (long, broad) if pick.random() < 0.5 else (broad, long)
        turn = pick.choice([0, 90, 180, pick.randrange(0, 720) / 2])
        cloth = affinity.translate(box(-size[0] / 2, -size[1] / 2, size[0] / 2, size[1] / 2), x, y)
        # Clockwise on a page whose y runs down is anticlockwise with y up.
        cloth = affinity.rotate(cloth, turn, origin=(x, y))
        along = math.radians(turn + (0 if size[0] >= size[1] else 90))
        drops = []
        for end in (-1, 1):
            tip = (x + end * math.cos(along) * long / 2, y + end * math.sin(along) * long / 2)
            half = LineString([(x, y), tip])
            drops.append(half.length - half.intersection(table).length)
        seen = cloth.intersection(table).area
        lines.append(
            f"{kind},{width},{depth},{corner},{x},{y},{size[0]},{size[1]},{turn},"
            f"{drops[0]:.2f},{drops[1]:.2f},{seen:.0f}"
        )
    Path(__file__).with_name("linen.csv").write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
