"""Heads of photos that a planner may be given, for `generate.py`."""


def photos():
    """Heads of photos (ITU-T T.81, annex B): in printing inks, or not."""
    start, scan = b"\xff\xd8", b"\xff\xda\x00\x08\x01\x01\x00\x00\x3f\x00"

    def segment(marker, body, length=None):
        size = len(body) + 2 if length is None else length
        return bytes([0xFF, marker]) + size.to_bytes(2, "big") + body

    def frame(channels, marker=0xC0):
        each = b"".join(bytes([number + 1, 0x11, 0]) for number in range(channels))
        return segment(marker, b"\x08\x00\x10\x00\x10" + bytes([channels]) + each)

    jfif = segment(0xE0, b"JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00")
    turned = segment(0xE1, b"Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00\x00\x00")
    astray = segment(0xE1, b"Exif\x00\x00MM\x00\x2a\xff\xff\xff\xff" + b"\xff\xc0" * 20)
    adobe = segment(0xEE, b"Adobe\x00\x64\x00\x00\x00\x00\x02")
    yield "inks-baseline", start + adobe + frame(4) + scan
    yield "inks-progressive", start + jfif + turned + frame(4, 0xC2) + scan
    yield "inks-fill-before-marker", start + b"\xff\xff\xff" + adobe + b"\xff\xff" + frame(4)
    yield "inks-far-down", start + segment(0xFE, b"\xff" * 65_000) * 3 + frame(4)
    yield "inks-cut-after-channels", start + frame(4)[:10]
    yield "plain-three", start + jfif + frame(3) + scan
    yield "plain-grey", start + jfif + frame(1) + scan
    yield "plain-frame-within-notes", start + astray + frame(3)
    yield "plain-notes-without-end", start + segment(0xE1, b"Exif\x00\x00", length=65_535)
    yield "plain-length-nought", start + segment(0xE1, b"", length=0) + frame(4)
    yield "plain-length-one", start + segment(0xE1, b"", length=1) + frame(4)
    yield "plain-inks-after-end", start + b"\xff\xd9" + frame(4)
    yield "plain-inks-after-scan", start + scan + frame(4)
    yield "plain-only-fill", start + b"\xff" * 4_000
    yield "plain-nothing", b""
    yield "plain-no-photo", b"\x89PNG\r\n\x1a\n" + frame(4)
