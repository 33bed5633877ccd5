"""Writes the hostile files and links beside this script.

Each name begins with what the planner must say to it: `ok`, or the kind of
problem. Needs Python's standard library only. What is too large to keep is
made by the tests themselves.
"""
import base64
import copy
import json
import pathlib
import random
import zlib

import hostile_dates
import hostile_photos

HERE = pathlib.Path(__file__).parent
SOUND = {
    "format": "overspread-layout",
    "version": 1,
    "id": "00000000000000aa",
    "title": "A board",
    "next_id": 60001,
    "table": {"width": 1200, "depth": 900, "surface": {"colour": "#a27c59"}},
    "frame": {"at": [600, 450], "width": 1050},
    "items": [],
}


def item(number, **more):
    size = {"shape": "disc", "diameter": 10}
    return {"id": number, "at": [1, 1], "size": size} | more


def hand(**more):
    ends = {"entry": [0, 0], "target": [1, 1]}
    return {"id": 5, "person": 6, "exposure": 7} | ends | more


def changed(**more):
    return json.dumps(copy.deepcopy(SOUND) | more)


def in_table(**more):
    return changed(table=SOUND["table"] | more)


def files():
    sound = changed()
    yield "ok-sound", sound
    yield "ok-markup-in-title", changed(title="<script>alert(1)</script>")
    yield "ok-address-in-title", changed(title="javascript:alert(1)")
    yield "ok-turned-writing", changed(title="\u202eevil\u2066\u200f\u061c")
    yield "ok-zero-width", changed(title="pl\u200bate\ufeff\u2060")
    yield "ok-escaped-controls", changed(title="a\u0000b\u0007c\u001b[31m\u009b")
    yield "ok-proto", changed(__proto__={"polluted": True}, constructor={"prototype": 1})
    hurtful = '<img src="x" onerror="alert(1)">'
    dishes = [item(n, name=name) for n, name in enumerate([
        hurtful, "</text><script>globalThis.hurt=1</script>", "javascript:alert(1)",
        "]]>", "&#60;b&#62;", "url(#x)", "\u202e\u2067turned", "pl\u200bate",
    ], 1)]
    crop = {"id": 20, "name": hurtful, "at": [600, 450], "width": 400, "ratio": [1, 1]}
    yield "ok-markup-in-names", changed(
        items=dishes, crops=[crop], client=hurtful, note=hurtful,
        linens=[{"id": 21, "name": hurtful, "at": [600, 450], "size": [100, 100]}],
    )
    yield "ok-nulls", changed(client=None, linens=None, floor=None, based_on=None)
    yield "ok-whole-as-fraction", in_table(height=750.0)
    yield "syntax-empty", ""
    yield "syntax-words", "hello"
    yield "syntax-two-values", sound + sound
    yield "syntax-truncated", sound[: len(sound) // 2]
    yield "syntax-trailing-comma", sound.replace("[]", "[,]")
    yield "syntax-comment", sound + " // done"
    yield "syntax-single-quotes", sound.replace('"', "'")
    yield "syntax-byte-order-mark", "\ufeff" + sound
    yield "syntax-nan", sound.replace("1200", "NaN")
    yield "syntax-infinity", sound.replace("1200", "-Infinity")
    yield "syntax-1e999", sound.replace("1200", "1e999")
    yield "syntax-hexadecimal", sound.replace("1200", "0x4b0")
    yield "syntax-leading-zero", sound.replace("1200", "01200")
    yield "syntax-lone-surrogate", sound.replace("A board", "\\ud800")
    yield "syntax-half-pair", sound.replace("A board", "\\udc00\\ud800")
    yield "syntax-raw-control", sound.replace("A board", "A\u0001board")
    yield "syntax-deep", "[" * 10_000 + "]" * 10_000
    yield "syntax-deep-open", '{"a":' * 10_000
    yield "syntax-deep-extra", changed(later=0).replace(": 0}", ": " + "[" * 500 + "]" * 500 + "}")
    yield "syntax-other-format", changed(format="another-file")
    yield "syntax-random-bytes", random.Random(21).randbytes(2_000)
    # What is sound by the rules of this version is opened to be looked at.
    yield "version-newer", changed(version=1_000, look="moonlit")
    yield "value-null", "null"
    yield "value-list", "[]"
    yield "value-nothing-in-it", "{}"
    yield "value-version-text", changed(version="0")
    yield "value-id-short", changed(id="aa")
    yield "value-id-signed", changed(id="+0000000000000aa")
    yield "value-table-list", changed(table=[])
    yield "value-width-text", in_table(width="1200")
    yield "value-width-true", in_table(width=True)
    yield "value-fraction", in_table(width=0.5)
    yield "value-huge-number", changed(frame={"at": [1e300, 0], "width": 9})
    yield "value-point-long", changed(frame={"at": [1, 2, 3], "width": 9})
    yield "value-point-far", changed(frame={"at": [20_001, 0], "width": 9})
    yield "value-turn-thirds", changed(frame=SOUND["frame"] | {"turn": 0.3})
    yield "value-colour-url", changed(floor={"colour": "url(#x)"})
    yield "value-colour-script", changed(floor={"colour": "javascript:alert(1)"})
    yield "value-colour-markup", changed(floor={"colour": '#fff"/><script>'})
    yield "value-colour-wide-digits", changed(floor={"colour": "#\uff11\uff12\uff13"})
    yield "value-unknown-word", changed(look="gloomy")
    yield "value-unknown-shape", changed(items=[item(1, size={"shape": "star"})])
    yield "value-no-size", changed(items=[{"id": 1, "at": [0, 0]}])
    yield "value-two-points", changed(items=[item(1, size={"shape": "outline", "points": [[0, 0], [1, 1]]})])
    tone = {"srgb": "#000000", "share": 60}
    yield "value-shares", changed(items=[item(1, parts={"rim": {"colours": [tone, tone]}})])
    yield "value-no-tones", changed(items=[item(1, parts={"rim": {"colours": []}})])
    yield "value-crop-both", changed(crops=[{"id": 1, "at": [0, 0], "width": 99, "ratio": [1, 1], "print": [9, 9]}])
    yield "value-doubled-key", sound.replace('"title"', '"id": "00000000000000bb", "title"')
    yield "value-doubled-deep-key", sound.replace('"depth"', '"width": 5, "depth"')
    yield "value-lists-for-words", changed(look=["normal"], units={"cm": 1})
    yield "limit-width-negative", in_table(width=-5)
    yield "limit-version-negative", changed(version=-1)
    yield "limit-width-zero", in_table(width=0)
    yield "limit-width-vast", in_table(width=2**62)
    yield "limit-diameter-negative", changed(items=[item(1, size={"shape": "disc", "diameter": -10})])
    yield "limit-rim", changed(items=[item(1, size={"shape": "disc", "diameter": 10, "rim": 6})])
    yield "limit-id", changed(items=[item(60_001)])
    yield "limit-id-zero", changed(items=[item(0)])
    yield "limit-ratio", changed(frame=SOUND["frame"] | {"ratio": [1, 21]})
    yield "limit-title", changed(title="x" * 81)
    yield "limit-note", changed(note="\u00e9" * 2_001)
    yield "limit-outline", changed(items=[item(1, size={"shape": "outline", "points": [[n, n] for n in range(201)]})])
    yield "limit-people", changed(people=[{"id": n} for n in range(1, 28)])
    yield "limit-extra", changed(later="x" * 64_001)
    yield "value-day-not-there", changed(dates={"on_sale": "2026-02-30"})
    yield "value-day-wide-digits", changed(dates={"on_sale": "\uff12026-09-01"})
    yield from hostile_dates.files(changed)
    yield "value-medium", changed(dates={"medium": "skywriting"})
    yield "limit-hold", changed(items=[item(1, hold_minutes=1_441)])
    yield "limit-stand-in", changed(items=[item(1, stand_in="x" * 81)])
    yield "limit-spare", changed(items=[item(1, spare=1_000)])
    yield "limit-shelf", changed(items=[item(1, shelf="x" * 81)])
    yield "value-source", changed(items=[item(1, source="found")])
    yield "ok-dates-later", changed(dates={"embargo": "noon"})
    yield "limit-print-as-extra", changed(**{"x" * 64_001: 1})
    yield "reference-doubled-id", changed(items=[item(1), item(1)])
    yield "reference-id-of-two-lists", changed(items=[item(1)], groups=[{"id": 1}])
    yield "reference-on-missing", changed(items=[item(1, on=7)])
    yield "reference-on-group", changed(items=[item(1, on=2)], groups=[{"id": 2}])
    yield "reference-on-itself", changed(items=[item(1, on=1)])
    yield "reference-cycle", changed(items=[item(1, on=2), item(2, on=3), item(3, on=1)])
    yield "reference-tail-of-cycle", changed(items=[item(9, on=1), item(1, on=2), item(2, on=1)])
    yield "reference-group", changed(items=[item(1, group=9)])
    yield "reference-hand-alone", changed(hands=[hand()])
    yield "reference-pair-itself", changed(people=[{"id": 6}], exposures=[{"id": 7}], hands=[hand(pair=5)])
    yield "reference-holds", changed(people=[{"id": 6}], exposures=[{"id": 7}], hands=[hand(holds=6)])
    yield "reference-must-show", changed(crops=[{"id": 1, "at": [0, 0], "width": 99, "ratio": [1, 1], "must_show": [1]}])
    yield "reference-over", changed(linens=[{"id": 1, "at": [0, 0], "over": [2]}], items=[item(3)])
    yield "reference-over-cloth", changed(linens=[{"id": 1, "at": [0, 0], "over": [1]}])
    strewn = ["crumbs", "salt", "petals", "seeds", "icing-sugar", "herb-scatter"]
    oval = lambda side: {"shape": "oval", "width": side, "depth": side}
    yield "ok-strewn-200", changed(title="Strewn", items=[
        item(n, prop=strewn[n % 6], at=[n * 37 % 1200, n * 53 % 900], size=oval(400 if n < 200 else 10_000))
        for n in range(1, 201)])
    yield "ok-over-twice-and-in-a-dish", changed(
        linens=[{"id": n, "at": [0, 0], "over": [4, 3, 4]} for n in (1, 2)], items=[item(3), item(4, on=3)])
    yield "limit-over", changed(linens=[{"id": 1, "at": [0, 0], "over": [3] * 801}], items=[item(3)])
    yield "reference-many", changed(items=[item(n, on=60_000) for n in range(1, 801)])
    yield "reference-next-id", changed(next_id=1, items=[item(1)])


def wrapped(body):
    """Letters of a body with a good check sum."""
    check = zlib.crc32(body + len(body).to_bytes(4, "little"))
    whole = body + check.to_bytes(4, "little")
    return base64.urlsafe_b64encode(whole).rstrip(b"=").decode()


def varint(n):
    out = b""
    while n >= 128:
        out += bytes([n & 127 | 128])
        n >>= 7
    return out + bytes([n])


def section(number, data):
    return varint(number) + varint(len(data)) + data


HEAD = section(1, b"\x00" + b"\x00" * 7 + b"\xaa")
HEAD_WITH_IDS = section(1, b"\x10" + b"\x00" * 7 + b"\xaa" + varint(60_001))


def titled(text):
    """The layout itself with a title, its letters written plainly."""
    return section(1, b"\x11" + b"\x00" * 7 + b"\xaa" + varint(len(text)) + text + varint(60_001))


TABLE = section(2, b"\x00" + varint(1_200) + varint(900) + b"\x02" + b"\xa2\x7c\x59")
FRAME = section(4, b"\x00" + varint(1_200) + varint(900) + varint(1_050))
DISC = b"\x00\x0a"


def links():
    def laid(*more, head=HEAD_WITH_IDS):
        return wrapped(b"\x00" + head + TABLE + FRAME + b"".join(more))

    def items(data):
        return laid(section(10, data))

    def two(steps, head=HEAD_WITH_IDS):
        """A sound layout with another version put together by these steps."""
        return laid(section(19, b"\x01a\x01b" + steps), head=head)

    def own(data):
        return varint(len(data) << 1) + data

    def copied(count, where):
        return varint(count << 1 | 1) + where

    sections = HEAD_WITH_IDS + TABLE + FRAME
    thing = b"\x04\x0c\x02\x02" + DISC
    yield "ok-sound", laid(head=HEAD)
    yield "ok-one-item", items(b"\x04\x0c\x02\x02" + DISC)
    yield "ok-unknown-section", laid(section(99, b"later"), section(1_000, b""))
    yield "ok-with-address", "https://planner.example/?a=b#" + laid(head=HEAD)
    for name, title in [
        ("ok-markup-in-title", "<script>alert(1)</script>"),
        ("ok-address-in-title", "javascript:alert(1)"),
        ("ok-turned-writing", "\u202eevil\u2066\u200f\u061c"),
        ("ok-zero-width", "pl\u200bate\ufeff\u2060"),
        ("ok-controls", "a\u0000b\u0007c\u001b[31m\u009b"),
    ]:
        yield name, laid(head=titled(title.encode()))
    yield "ok-proto", items(b"\x04\x00" + varint(9) + b"__proto__" + b"\x02\x02" + DISC)
    yield "ok-stock", laid(section(10, thing), section(20, b"\x0f\x00\x03\x04\x03box"))
    yield "ok-stock-twice", laid(section(10, thing), section(20, b"\x02\x03\x01\x01"))
    yield "ok-stock-before-another", laid(
        section(10, thing), section(19, b"\x01a\x01b" + own(sections)), section(20, b"\x02\x03"))
    yield "reference-stock", laid(section(10, thing), section(20, b"\x03\x0e\x03"))
    yield "limit-stock", laid(section(10, thing), section(20, b"\x02" + varint(1_000)))
    yield "syntax-stock-source", laid(section(10, thing), section(20, b"\x04\x05"))
    yield from hostile_dates.links(lambda rows: laid(section(21, rows)), varint)
    yield "syntax-lone-surrogate", laid(head=titled(b"\xed\xa0\x80"))
    yield "syntax-random-bytes", random.Random(22).randbytes(2_000)
    yield "syntax-empty", ""
    yield "syntax-sharp", "#"
    yield "syntax-padding", laid(head=HEAD) + "="
    yield "syntax-plain-alphabet", "+/+/" * 9
    yield "syntax-space-within", "AAAA AAAA"
    yield "syntax-two-addresses", "a#b#" + laid(head=HEAD)
    yield "syntax-markup", "#<script>alert(1)</script>"
    yield "syntax-not-ascii", "#\u00c4\u202e"
    yield "syntax-only-a-sum", base64.urlsafe_b64encode(b"\x00\x00\x00\x00").rstrip(b"=").decode()
    sound = laid(head=HEAD)
    yield "checksum-cut", sound[:-4]
    yield "checksum-cut-front", sound[4:]
    yield "checksum-altered", sound[:9] + ("B" if sound[9] == "A" else "A") + sound[10:]
    yield "checksum-doubled", sound[:-6] * 2
    dice = random.Random(20)
    yield "checksum-random", base64.urlsafe_b64encode(dice.randbytes(300)).rstrip(b"=").decode()
    yield "version-newer", wrapped(b"\x05" + HEAD)
    yield "syntax-version-long", wrapped(b"\x80\x00" + HEAD)
    yield "syntax-random-body", wrapped(b"\x00" + dice.randbytes(300))
    yield "value-no-sections", wrapped(b"\x00")
    yield "syntax-number-overflow", wrapped(b"\x00" + b"\xff" * 12)
    yield "syntax-section-length", wrapped(b"\x00\x01" + varint(2**39) + b"\x00")
    yield "syntax-section-doubled", laid(section(4, b"\x00\x00\x00\x00"))
    yield "syntax-section-order", wrapped(b"\x00" + TABLE + HEAD)
    yield "syntax-left-over", laid(section(5, b"\x00\x00"))
    yield "syntax-mask", items(b"\x80\x80\x80\x01" + thing[1:])
    yield "syntax-prop", items(b"\x04" + varint(9_999) + b"\x02\x02" + DISC)
    yield "syntax-prop-not-utf8", items(b"\x04\x00\x02\xc3\x28\x02\x02" + DISC)
    yield "syntax-choice", laid(section(5, b"\x01\x09"))
    yield "syntax-size", items(b"\x04\x0c\x02\x02\xf0\x0a")
    yield "syntax-part-ahead", items(b"\x14\x0c\x02\x02" + DISC + varint(50 << 2))
    yield "syntax-text-cut", items(b"\x02\x0c\x02\x02" + varint(7_000) + b"abc")
    yield "limit-text", items(b"\x02\x0c\x02\x02" + varint(2**38) + b"abc")
    yield "limit-points", items(b"\x04\x0c\x02\x02\x03" + varint(2**38))
    yield "limit-ids", laid(section(14, b"\x08\x00\x00\x09" + varint(2**38)))
    yield "limit-items", items(thing * 801)
    yield "limit-diameter", items(b"\x04\x0c\x02\x02\x00" + varint(2**39))
    yield "value-far-away", items(b"\x04\x0c" + varint(2**39) + b"\x02" + DISC)
    yield "value-no-size", items(b"\x00\x0c\x02\x02")
    yield "limit-serial", items(varint(1 << 2 | 1 << 11) + b"\x0c\x02\x02" + DISC + varint(2**39))
    yield "limit-shares", items(b"\x14\x0c\x02\x02" + DISC + b"\x02\x00\x00\x00" + varint(2**39) + b"\x01\x01\x01")
    yield "reference-on", items(varint(1 << 2 | 1 << 10) + b"\x0c\x02\x02" + DISC + b"\x09")
    on = varint(1 << 2 | 1 << 10) + b"\x0c\x02\x02" + DISC
    yield "reference-on-itself", items(on + b"\x01")
    yield "reference-cycle", items(on + b"\x02" + on + b"\x03" + on + b"\x01")
    yield "reference-doubled-id", items(thing + varint(1 << 2 | 1 << 11) + b"\x0c\x02\x02" + DISC + b"\x01")
    yield "limit-copy-negative", laid(section(14, varint(1 << 1 | 1 << 8) + b"\x00\x00\x09\x01\x01\x00\x00\x09\x09"))
    yield "reference-over", laid(section(9, varint(1 << 8) + b"\x02\x02\x09\x09\x01\x07"))
    yield "reference-hand", laid(section(12, b"\x00\x01\x00\x00\x00\x00\x02"))
    yield "value-day-not-there", laid(section(18, b"\x01\x0a2026-02-30"))
    yield "syntax-medium", laid(section(18, b"\x02\x02"))
    yield "reference-next-id", laid(section(10, thing), head=HEAD)
    yield "ok-two", two(own(sections))
    yield "ok-two-copied", two(copied(len(sections), b"\x00"))
    yield "ok-two-markup-in-name", laid(section(19, varint(25) + b"<script>alert(1)</script>" + b"\x02\xc2\xad" + copied(len(sections), b"\x00")))
    yield "syntax-two-nested", two(own(sections + section(19, b"\x00\x00" + own(sections))))
    yield "syntax-two-past-the-end", two(copied(len(sections) + 1, b"\x00"))
    yield "syntax-two-before-the-beginning", two(copied(4, b"\x01"))
    yield "syntax-two-of-nothing", two(b"\x00" + own(sections))
    yield "syntax-two-cut", two(varint(2_000 << 1) + sections)
    yield "syntax-two-no-names", laid(section(19, b""))
    yield "limit-two-name", laid(section(19, varint(321) + b"x" * 321 + b"\x00" + own(sections)))
    yield "limit-two-vast", two(copied(2**38, b"\x00"))
    long = titled(b"x" * 8_000)
    again = copied(8_000, b"\x00") + copied(8_000, b"\xff\x7c") * 130
    yield "limit-two-again-and-again", two(again, head=long)
    yield "version-answer", wrapped(varint(64) + b"\x01" + section(1, b"x"))
    yield "value-two-empty", two(b"")
    yield "reference-two-next-id", two(own(HEAD + TABLE + FRAME + section(10, thing)))


def answers():
    def answer(*parts):
        return wrapped(varint(64) + b"\x01" + b"".join(parts))

    def text(words):
        return varint(len(words)) + words

    identity = bytes(7) + b"\xaa"

    def said(verdict=0, version=2, date=b"2026-05-02", by=b"", more=b""):
        words = text(date) + text(b"") + text(b"") + text(by)
        return section(1, identity + varint(version) + varint(verdict) + words + more)

    def remarks(*each):
        return section(2, b"".join(each))

    def on(thing, tag, words):
        return varint(thing) + text(tag) + text(words)

    def at(x, y, words):
        return b"\x00" + varint(x) + varint(y) + text(words)

    hurtful = b'<img src="x" onerror="alert(1)">'
    whole = answer(said(1, by=b"desk"), remarks(on(4, b"3", b"less"), at(80, 121, b"here")))
    yield "ok-sound", whole
    yield "ok-with-address", "https://example.org/#" + whole
    yield "ok-no-remarks", answer(said())
    yield "ok-markup", answer(said(2, by=hurtful), remarks(on(4, b"<b>3</b>", hurtful), at(0, 0, hurtful)))
    yield "ok-turned-writing", answer(said(by="\u202eevil\u2066".encode()), remarks(at(0, 0, "\u202eevil".encode())))
    yield "ok-controls", answer(said(by=b"a\x00b\x07\x1b[31m"), remarks(at(0, 0, b"\x00\x01")))
    yield "ok-no-text", answer(said(), remarks(on(4, b"", b"")))
    yield "ok-later-section", answer(said(), section(9, b"later"))
    yield "checksum-cut", whole[:-8]
    yield "checksum-altered", whole[:12] + ("B" if whole[12] != "B" else "C") + whole[13:]
    yield "syntax-letters", whole + "="
    yield "version-layout", wrapped(HEAD + TABLE + FRAME)
    yield "version-newer", wrapped(varint(64) + b"\x02" + said())
    yield "version-later-kind", wrapped(varint(65) + b"\x01" + said())
    yield "syntax-nothing-said", answer(remarks(at(0, 0, b"x")))
    yield "syntax-nothing", answer()
    yield "syntax-no-version", wrapped(varint(64))
    yield "syntax-order", answer(remarks(), said())
    yield "syntax-doubled", answer(said(), said())
    yield "syntax-verdict", answer(said(3))
    yield "syntax-verdict-vast", answer(said(2**39))
    yield "syntax-version-vast", answer(said(version=60_001))
    yield "syntax-left-over", answer(said(more=b"\x00"))
    yield "syntax-cut", answer(section(1, identity + b"\x02"))
    yield "syntax-remark-cut", answer(said(), remarks(varint(4) + varint(3) + b"ab"))
    yield "syntax-far-away", answer(said(), remarks(at(2**39, 0, b"x")))
    yield "syntax-thing-vast", answer(said(), remarks(on(60_001, b"", b"x")))
    yield "syntax-not-utf8", answer(said(), remarks(at(0, 0, b"\xc3\x28")))
    yield "limit-remark", answer(said(), remarks(at(0, 0, b"x" * 501)))
    yield "limit-remark-words", answer(said(), remarks(at(0, 0, b"\x80" * 499)))
    yield "limit-tag", answer(said(), remarks(on(4, b"x" * 9, b"x")))
    yield "limit-name", answer(said(by=b"x" * 81))
    yield "limit-remarks", answer(said(), remarks(*[at(0, 0, b"x")] * 61))
    yield "limit-text", answer(section(1, identity + b"\x02\x00" + varint(2**38) + b"abc"))


def main():
    kinds = [
        ("files", files(), "json"),
        ("links", links(), "link"),
        ("answers", answers(), "link"),
        ("photos", hostile_photos.photos(), "jpg"),
    ]
    for kind, made, end in kinds:
        folder = HERE / kind
        folder.mkdir(exist_ok=True)
        for old in folder.iterdir():
            old.unlink()
        for name, text in made:
            data = text if isinstance(text, bytes) else text.encode()
            (folder / f"{name}.{end}").write_bytes(data)


if __name__ == "__main__":
    main()
