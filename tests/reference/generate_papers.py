"""Judges papers by programs of others and writes papers.csv beside itself.

Poppler reads every PDF (pdfinfo, pdffonts, pdftotext) and rasters it
(pdftoppm, 300 dpi), pypdf reads it strictly; Python's csv reads the list that
`cargo run -p outputs --example judged -- csv` writes, and icalendar the
calendar. Needs poppler-utils, pypdf, icalendar, numpy.

A row says of a file what was found and, as FNV-1a of its bytes, which file that
was; the test beside it makes the file again and holds it to the row.
"""

import csv
import io
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import icalendar
import numpy
import pypdf

HERE = Path(__file__).parent
ROOT = HERE.parent.parent
DPI = 300
MM = DPI / 25.4
PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
SENTENCE = "Print at 100%, not fitted to the page, and measure the bar"


def fnv(data):
    mixed = 0xCBF29CE484222325
    for byte in data:
        mixed = ((mixed ^ byte) * 0x100000001B3) % (1 << 64)
    return f"{mixed:016x}"


def run(*words):
    return subprocess.run(words, check=True, capture_output=True).stdout


def cargo(*words):
    return run("cargo", "run", "--quiet", *words)


def pgm(data):
    magic, size, most, rest = data.split(b"\n", 3)
    assert magic == b"P5" and most == b"255"
    wide, high = map(int, size.split())
    return numpy.frombuffer(rest, numpy.uint8, wide * high).reshape(high, wide)


def bar(page):
    """Length in mm of the longest dark run in the foot of a page."""
    foot = page[-int(22 * MM):] < 128
    best = 0
    for row in foot:
        edges = numpy.flatnonzero(numpy.diff(numpy.concatenate(([0], row.view(numpy.int8), [0]))))
        if len(edges):
            best = max(best, int((edges[1::2] - edges[::2]).max()))
    return best / MM


def margin(page):
    """Least distance in mm of ink from the edge of a page."""
    rows, columns = numpy.nonzero(page < 200)
    high, wide = page.shape
    return min(rows.min(), columns.min(), high - 1 - rows.max(), wide - 1 - columns.max()) / MM


def judged(path, paper):
    pypdf.PdfReader(path, strict=True)
    told = run("pdfinfo", path).decode()
    count = int(re.search(r"Pages:\s+(\d+)", told)[1])
    sizes = run("pdfinfo", "-f", "1", "-l", str(count), path).decode()
    found = re.findall(r"Page\s+\d+ size:\s+([\d.]+) x ([\d.]+)", sizes)
    assert len(found) == count
    off = max(abs(float(n) * 25.4 / 72 - mm) for pair in found for n, mm in zip(pair, paper))
    assert off <= 0.1, f"{path}: a page is {off} mm off"
    fonts = run("pdffonts", path).decode().splitlines()[2:]
    assert fonts, f"{path}: no font"
    for line in fonts:
        assert line.split()[-5:-2] == ["yes", "yes", "yes"], f"not embedded, cut and readable: {line}"
    words = " ".join(run("pdftotext", path, "-").decode().split())
    assert words.count(SENTENCE) == count, f"{path}: the sentence on every page"
    bars, margins = [], []
    for page in range(1, count + 1):
        one = ["-f", str(page), "-l", str(page)]
        raster = pgm(run("pdftoppm", "-gray", "-r", str(DPI), *one, path))
        bars.append(bar(raster))
        margins.append(margin(raster))
    assert all(abs(length - 100) <= 0.2 for length in bars), f"{path}: bars {bars}"
    assert min(margins) >= 10, f"{path}: ink {min(margins)} mm from the edge"
    return [count, f"{off:.3f}", f"{min(bars):.2f}", f"{max(bars):.2f}", f"{min(margins):.2f}"]


def listed(data):
    assert data.startswith(b"\xef\xbb\xbf") and data.count(b"\r\n") == data.count(b"\n") - 1
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline="")))
    for row in rows:
        assert len(row) == 3, row
        for cell in row:
            number = re.fullmatch(r"-?\d+(\.\d+)?", cell)
            assert number or cell[:1] not in ("=", "+", "-", "@", "\t", "\r"), cell
    return [len(rows), "|".join(cell.replace("\n", "/").replace(",", ";") for row in rows for cell in row)]


def dated(data):
    calendar = icalendar.Calendar.from_ical(data.decode())
    events = list(calendar.walk("VEVENT"))
    told = []
    for event in events:
        assert not event.errors, event.errors
        start, end = event["DTSTART"].dt, event["DTEND"].dt
        assert (end - start).days == 1, "a whole day"
        told.append(f"{event['UID']} {start} {event['SUMMARY']}".replace(",", ";"))
    assert len({event["UID"] for event in events}) == len(events), "each has its own UID"
    assert all(len(line) <= 76 for line in data.split(b"\r\n")), "lines are folded"
    return [len(events), "|".join(told)]


def main():
    rows = []
    with tempfile.TemporaryDirectory() as folder:
        for starter in sorted((ROOT / "static/starters").glob("*.json")):
            name = starter.name.removesuffix(".spread.json")
            for paper, size in PAPERS.items():
                out = Path(folder) / f"{name}-{paper}"
                words = ["papers", starter, "-o", out, "--paper", paper, "--only", "crockery", "--pdf"]
                cargo("-p", "overspread", "--", *map(str, words))
                path = out / "crockery.pdf"
                rows.append([f"{name} {paper}", fnv(path.read_bytes()), *judged(str(path), size)])
    with open(HERE / "papers.csv", "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["file", "fnv", "pages", "off_mm", "least_bar", "most_bar", "margin"])
        writer.writerows(rows)
    rows = []
    for kind, judge in [("csv", listed), ("ics", dated)]:
        data = cargo("-p", "outputs", "--example", "judged", "--", kind)
        rows.append([kind, fnv(data), *judge(data)])
    with open(HERE / "formats.csv", "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["file", "fnv", "count", "read"])
        writer.writerows(rows)


if __name__ == "__main__":
    sys.exit(main())
