"""A second reader of links, written from crate/planner/src/link/FORMAT.md alone.

Reads links, one a line, from standard input and prints for each one line: the
layout as JSON, two with their names where a link carries two, or `refused: `
and why. Needs Python's standard library only.
The tables are read from the page itself, so the page is what is tested.
"""
import base64
import json
import pathlib
import re
import sys
import zlib

from link_rows import date, tell

PAGE = pathlib.Path(__file__).parents[2] / "crate/planner/src/link/FORMAT.md"
ABSENT = object()


class Refused(Exception):
    """Why a link is not read."""


def tables():
    """Sections by number, catalogue ids and common words, as the page lists them."""
    text = PAGE.read_text(encoding="utf-8")
    sections = {}
    for part in re.split(r"^### ", text, flags=re.M)[1:]:
        head, body = part.split("\n", 1)
        number, name = re.match(r"(\d+) ([a-z ]+)", head).groups()
        rows = re.findall(r"^\| `([^`]+)` \| (.+) \| (.+) \|$", body, flags=re.M)
        sections[int(number)] = (name.strip(), re.search(r"at most (\d+)", head), rows)
    ids, words = [block.split() for block in text.split("```")[1::2]]
    return sections, ids, words


SECTIONS, IDS, WORDS = tables()


class Bytes:
    """Bytes read from the front."""

    def __init__(self, data):
        self.data, self.at = data, 0

    def take(self, n):
        if n > len(self.data) - self.at:
            raise Refused("the bytes end too early")
        self.at += n
        return self.data[self.at - n : self.at]

    def more(self):
        return self.at < len(self.data)

    def varint(self):
        n = 0
        for place in range(6):
            byte = self.take(1)[0]
            n |= (byte & 127) << (7 * place)
            if byte < 128:
                if (byte == 0 and place) or n >= 1 << 40:
                    break
                return n
        raise Refused("not a number of this format")

    def signed(self):
        n = self.varint()
        return n // 2 if n % 2 == 0 else -(n + 1) // 2

    def text(self):
        n = self.varint()
        if n > 8000:
            raise Refused("long text")
        rest, out = self.take(n), b""
        while rest:
            first = rest[0]
            if 0x80 <= first <= 0xBF:
                out += WORDS[first - 0x80].encode()
                rest = rest[1:]
            else:
                wide = 1 if first < 0x80 else 2 if first < 0xE0 else 3 if first < 0xF0 else 4
                try:
                    rest[:wide].decode("utf-8")
                except UnicodeDecodeError:
                    raise Refused("not UTF-8") from None
                out += rest[:wide]
                rest = rest[wide:]
        return out.decode("utf-8")

    def word(self, words):
        n = self.varint()
        if n >= len(words):
            raise Refused("an unknown word")
        return words[n]

    def colour(self):
        return "#" + self.take(3).hex()


def size(b):
    head = b.take(1)[0]
    shape = ["disc", "rect", "oval", "outline"][head & 3]
    may = {"disc": 8, "rect": 12, "oval": 8, "outline": 0}[shape]
    if head & ~3 & ~may:
        raise Refused("an unknown size")
    out = {"shape": shape}
    if shape == "disc":
        out["diameter"] = b.varint()
    elif shape != "outline":
        out["width"], out["depth"] = b.varint(), b.varint()
    if shape == "rect":
        out["corner"] = b.varint() if head & 4 else 0
    if shape != "outline":
        out["rim"] = b.varint() if head & 8 else 0
        return out
    x = y = 0
    out["points"] = []
    count = b.varint()
    if count > 200:
        raise Refused("too many points")
    for _ in range(count):
        x, y = x + b.signed(), y + b.signed()
        out["points"].append([x, y])
    return out


def part(b, parts):
    head = b.varint()
    count = head & 3
    if count == 0:
        if head == 0:
            return ABSENT
        if head // 4 > len(parts):
            raise Refused("an unknown part")
        return parts[head // 4 - 1]
    if head >> (2 + 2 * count):
        raise Refused("an unknown part")
    left, tones = 100, []
    for n in range(count):
        srgb = b.colour()
        share = b.varint() if n + 1 < count else left
        left -= share
        origin = head >> (2 + 2 * n) & 3
        if origin > 2:
            raise Refused("an unknown origin")
        name = ["guess", "photo", "measured"][origin]
        tones.append({"srgb": srgb, "share": share, "origin": name})
    parts.append({"colours": tones})
    return parts[-1]


def states(b, section):
    out, before = [], 0
    count = b.varint()
    if count > 800:
        raise Refused("too many states")
    for _ in range(count):
        before += b.signed() + 1
        head = b.take(1)[0]
        if head & 128 and head & 112:
            raise Refused("an unknown state")
        word = ["as-set", "absent", "moved", "changed"][head & 3]
        state = {"item": before, "state": word}
        if head & 4:
            state["at"] = read_field("place", "at", b, section, {})
        if head & 8:
            state["turn"] = read_field("turn", "turn", b, section, {})
        if head & 240:
            state["parts"] = {}
        for bit, name in [(16, "rim"), (32, "well"), (64, "food")]:
            if head & bit:
                put(state["parts"], name, part(b, section["parts"]))
        out.append(state)
    return out


def find(obj, key):
    for step in key.split("."):
        if not isinstance(obj, dict) or step not in obj:
            return ABSENT
        obj = obj[step]
    return obj


def put(obj, key, value):
    if value is ABSENT:
        return
    *outer, last = key.split(".")
    for step in outer:
        obj = obj.setdefault(step, {})
    obj[last] = value


def read_field(kind, key, b, section, before):
    """One stored field."""
    if kind.startswith("choice: "):
        return b.word(kind[8:].split(", "))
    if kind == "place":
        x, y = section["place"]
        section["place"] = [x + b.signed(), y + b.signed()]
        return list(section["place"])
    if kind == "serial":
        last = find(before, key)
        return b.signed() + 1 + (0 if last is ABSENT else last)
    if kind == "turn":
        half = b.varint()
        return half // 2 if half % 2 == 0 else half / 2
    if kind == "prop":
        n = b.varint()
        if n > len(IDS):
            raise Refused("an unknown id")
        return IDS[n - 1] if n else b.text()
    if kind == "ids":
        n = b.varint()
        if n > 800:
            raise Refused("too many ids")
        return [b.varint() for _ in range(n)]
    if kind == "part":
        return part(b, section["parts"])
    if kind == "states":
        return states(b, section)
    simple = {
        "whole": b.varint, "signed": b.signed, "colour": b.colour, "text": b.text,
        "flag": lambda: True, "identity": lambda: b.take(8).hex(), "size": lambda: size(b),
        "pair": lambda: [b.varint(), b.varint()], "area": lambda: [b.signed() for _ in range(4)],
    }
    return simple[kind]()


def usual_value(usual, key, obj, before, twin):
    """What a field holds that is not stored."""
    if usual.startswith("twin, "):
        if twin is not None:
            return find(twin, key)
        usual = usual[6:]
    if usual == "absent":
        return ABSENT
    if usual == "next":
        last = find(before, key)
        return 1 + (0 if last is ABSENT else last)
    if usual == "prop name":
        return obj["prop"].replace("-", " ")
    return json.loads(usual)


def read_object(rows, b, section, done):
    mask = b.varint()
    optional = [key for key, _, usual in rows if usual != "always"]
    if mask >> len(optional):
        raise Refused("an unknown mark")
    stored = {key for n, key in enumerate(optional) if mask >> n & 1}
    before = done[-1] if done else {}
    obj = {}
    for key, kind, usual in rows:
        if usual == "always" or key in stored:
            put(obj, key, read_field(kind, key, b, section, before))
    same = [old for old in done if "prop" in obj and old.get("prop") == obj["prop"]]
    twin = same[-1] if same else None
    for key, kind, usual in rows:
        if usual != "always" and key not in stored:
            put(obj, key, usual_value(usual, key, obj, before, twin))
    return obj


def split(b):
    """Bytes of the sections by number, and of all before that of the other version."""
    found, last, start, before = {}, 0, b.at, b""
    while b.more():
        at = b.at
        number = b.varint()
        if number <= last:
            raise Refused("sections out of order")
        if number == 19:
            before = b.data[start:at]
        last = number
        found[number] = b.take(b.varint())
    return found, before


def other_version(old, data):
    """Two names and the sections of the other version."""
    b = Bytes(data)
    names = []
    for _ in range(2):
        at = b.at
        if b.varint() > 320:
            raise Refused("a long name")
        b.at = at
        names.append(b.text())
    new, end = b"", 0
    while b.more():
        step = b.varint()
        count = step // 2
        if count == 0:
            raise Refused("an empty step")
        if len(new) + count > 1_000_000:
            raise Refused("a vast other version")
        if step % 2 == 0:
            new += b.take(count)
            continue
        at = end + b.signed()
        end = at + count
        if at < 0 or end > len(old):
            raise Refused("a copy from outside")
        new += old[at:end]
    return names, new


def body_of(link):
    fragment = link.strip()
    if "#" in fragment:
        fragment = fragment.split("#", 1)[1]
    if not re.fullmatch(r"[A-Za-z0-9_-]+", fragment) or len(fragment) % 4 == 1:
        raise Refused("letters a link does not have, or cut")
    data = base64.urlsafe_b64decode(fragment + "=" * (-len(fragment) % 4))
    if base64.urlsafe_b64encode(data).rstrip(b"=").decode() != fragment:
        raise Refused("stray bits")
    if len(data) < 5:
        raise Refused("cut")
    body, given = data[:-4], data[-4:]
    check = zlib.crc32(body + len(body).to_bytes(4, "little"))
    if check.to_bytes(4, "little") != given:
        raise Refused("check sum")
    return body


def layouts_of(link):
    """The layout of a link; of one that carries two, their names and both."""
    b = Bytes(body_of(link))
    version = b.varint()
    if version > 1:
        raise Refused(f"version {version}")
    found, before = split(b)
    layout = assembled(found)
    if 19 not in found:
        return layout
    names, sections = other_version(before, found[19])
    other, _ = split(Bytes(sections))
    if 19 in other:
        raise Refused("two versions where one may be")
    return {"names": names, "layouts": [layout, assembled(other)]}


def assembled(found):
    parts = []
    layout = {"format": "overspread-layout", "version": 1}
    for number, (name, most, rows) in SECTIONS.items():
        section = {"place": [0, 0], "parts": parts}
        if most is None:
            if number in found:
                b = Bytes(found[number])
                obj = read_object(rows, b, section, [])
                if b.more():
                    raise Refused("bytes left over")
            else:
                obj = {}
                for key, _, usual in rows:
                    if usual != "always":
                        put(obj, key, usual_value(usual, key, obj, {}, None))
            if number == 1:
                layout.update(obj)
            elif obj or name != "dates":
                layout[name] = obj
            continue
        b, done = Bytes(found.get(number, b"")), []
        while b.more():
            if len(done) == int(most.group(1)):
                raise Refused("too many objects")
            done.append(read_object(rows, b, section, done))
        optional = name in ("groups", "people", "hands", "exposures", "intended", "cards", "seats")
        if name == "stock":
            tell(layout, done)
        elif name == "dated":
            date(layout, done)
        elif done or not optional:
            layout[name] = done
    return layout


def main():
    for line in sys.stdin:
        try:
            print(json.dumps(layouts_of(line)))
        except Refused as why:
            print(f"refused: {why}")


if __name__ == "__main__":
    main()
