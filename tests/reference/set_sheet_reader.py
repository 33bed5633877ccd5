"""Lays a table from the words of its set sheet alone.

Reads set sheets, one a line, each a JSON array of the SVGs of its pages, and
answers with one line for each: a JSON object of what stands where, by number,
as x and y in mm and the turn in degrees. Knows nothing of the planner: only the
words on the pages and where those stand, as any reader of a page has them.
"""

import json
import sys
import xml.etree.ElementTree as tree

UNITS = {"x cm": 10.0, "x in": 25.4}
# What stands in one column or row, mm of paper.
NEAR = 0.1


def words(page):
    """Each word of a page with where it begins."""
    texts = tree.fromstring(page).iter("{http://www.w3.org/2000/svg}text")
    return [
        (float(node.get("x", 0)), float(node.get("y", 0)), "".join(node.itertext()).strip())
        for node in texts
    ]


def column(row, name, head, after):
    """Where the column of this name nearest to a head begins, on one side of it."""
    found = [x for x, _, text in row if text.startswith(name) and (x > head) == after]
    return min(found, key=lambda x: abs(x - head))


def placed(page):
    """What the lists on a page say of each thing."""
    everything = words(page)
    for x, y, text in everything:
        if text not in UNITS:
            continue
        heads = [word for word in everything if abs(word[1] - y) < NEAR]
        number, down, turn = (
            column(heads, name, x, after)
            for name, after in [("No.", False), ("y", True), ("Turn", True)]
        )
        for across, row, figure in everything:
            if row <= y or abs(across - x) >= NEAR:
                continue
            line = [
                next(cell for a, r, cell in everything if abs(r - row) < NEAR and abs(a - b) < NEAR)
                for b in (number, down, turn)
            ]
            unit = UNITS[text]
            yield line[0], [float(figure) * unit, float(line[1]) * unit, float(line[2].rstrip("°"))]


for sheet in sys.stdin:
    found = {}
    for page in json.loads(sheet):
        for number, place in placed(page):
            if number in found:
                raise SystemExit(f"{number} stands twice")
            found[number] = place
    print(json.dumps(found))
