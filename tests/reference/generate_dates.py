"""Plans back from days on sale, and their calendar files as PyPI icalendar reads
them; writes dates.csv beside itself. Exact. Needs icalendar.

Days are counted by Python's datetime and calendar. The terminal command makes a
calendar file of a layout with each row's dates; icalendar must read from it the
same days, whole, each with words and a UID of its own, and of the same plan the
same UIDs again. A row says as FNV-1a which file that was, its moment of making set
to a fixed one.
"""

import calendar
import csv
import datetime
import json
import random
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import icalendar

HERE = Path(__file__).parent
ROOT = HERE.parent.parent
STEPS = ["brief", "approval", "props", "food", "shoot", "deliver"]
# Usual days before the shoot, after it for the last; the shoot itself is four
# months before it is on sale in print, four weeks before it is online.
USUAL = {"brief": 30, "approval": 14, "props": 7, "food": 3, "deliver": 14}
EDGES = ["2000-01-01", "2024-02-29", "2026-06-30", "2027-07-31", "2028-06-29", "2100-03-01", "2199-12-31"]
TITLE = "Süppe; fish 魚 and bread: a title long enough that its line is folded"
# What keeps the direction of a name inside it.
ISOLATES = dict.fromkeys([0x2068, 0x2069])
MADE = re.compile(rb"DTSTAMP:\d{8}T\d{6}Z")


def fnv(data):
    mixed = 0xCBF29CE484222325
    for byte in data:
        mixed = ((mixed ^ byte) * 0x100000001B3) % (1 << 64)
    return f"{mixed:016x}"


def months_before(day, months):
    year, month = divmod(day.year * 12 + day.month - 1 - months, 12)
    last = calendar.monthrange(year, month + 1)[1]
    return day.replace(year=year, month=month + 1, day=min(day.day, last))


def planned(on_sale, medium, told):
    days = datetime.timedelta
    usual = months_before(on_sale, 4) if medium == "print" else on_sale - days(weeks=4)
    shoot = on_sale - days(told["shoot"]) if "shoot" in told else usual
    plan = []
    for step in STEPS:
        far = days(told.get(step, USUAL.get(step, 0)))
        plan.append(shoot if step == "shoot" else shoot + far if step == "deliver" else shoot - far)
    return plan + [on_sale]


def made(path, folder):
    command = ["cargo", "run", "--quiet", "-p", "overspread", "--", "papers", path, "-o", folder]
    subprocess.run([*command, "--only", "dates", "--ics"], check=True, capture_output=True)
    return (Path(folder) / "dates.ics").read_bytes()


def judged(data, plan, title):
    events = list(icalendar.Calendar.from_ical(data.decode()).walk("VEVENT"))
    assert len(events) == len(plan)
    for event, day in zip(events, plan):
        assert not event.errors, event.errors
        assert event["DTSTART"].dt == day and event["DTEND"].dt == day + datetime.timedelta(1), event
        words = str(event["SUMMARY"]).translate(ISOLATES)
        assert words.endswith(": " + title), words
        assert event["TRANSP"] == "TRANSPARENT", "the day stays free"
    assert all("DESCRIPTION" in event for event in events[:-1]), "every figure says what it rests on"
    assert len({event["UID"] for event in events}) == len(events), "each has its own UID"
    assert all(len(line) <= 76 for line in data.split(b"\r\n")), "lines are folded"
    return [str(event["UID"]) for event in events]


def main():
    chance = random.Random(20_261_126)
    rows, known = [], None
    with tempfile.TemporaryDirectory() as folder:
        for n in range(60):
            if n < len(EDGES):
                on_sale = datetime.date.fromisoformat(EDGES[n])
            else:
                on_sale = datetime.date(2000, 1, 1) + datetime.timedelta(chance.randrange(73_049))
            medium = chance.choice(["print", "web"])
            told = {step: chance.randrange(chance.choice([5, 60, 731])) for step in STEPS if chance.random() < 0.5}
            title = TITLE if n % 2 else f"Supper {n}"
            layout = {
                "format": "overspread-layout", "version": 1, "id": "00000000000000d8", "title": title,
                "table": {"width": 1200, "depth": 900}, "frame": {"at": [600, 450], "width": 1050},
                "dates": {"on_sale": str(on_sale), "medium": medium, "steps": told},
            }
            path = Path(folder) / "layout.json"
            path.write_text(json.dumps(layout), encoding="utf-8")
            data = made(str(path), folder)
            plan = planned(on_sale, medium, told)
            uids = judged(data, plan, title)
            assert known in (None, uids), "the same layout keeps its UIDs"
            known = uids
            days = " ".join(f"{day} {day.isoweekday()}" for day in plan)
            told = [told.get(step, "") for step in STEPS]
            rows.append([on_sale, medium, title, *told, days, fnv(MADE.sub(b"DTSTAMP:20260101T000000Z", data))])
    with open(HERE / "dates.csv", "w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["on_sale", "medium", "title", *STEPS, "days", "fnv"])
        writer.writerows(rows)


if __name__ == "__main__":
    sys.exit(main())
