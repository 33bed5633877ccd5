"""Dates that are wrong, or odd and right, for `generate.py`."""


def files(changed):
    """Files; `changed` makes one of a sound one."""
    yield "value-day-of-no-leap-year", changed(dates={"on_sale": "2100-02-29"})
    yield "value-day-in-year-0", changed(dates={"on_sale": "0000-01-01"})
    yield "value-day-in-year-9999", changed(dates={"on_sale": "9999-12-31"})
    yield "limit-step-days", changed(dates={"steps": {"shoot": 731}})
    yield "limit-step-days-before", changed(dates={"steps": {"food": -1}})
    yield "value-steps-list", changed(dates={"steps": [14, 7, 3]})
    yield "value-season-without-months", changed(dates={"seasons": [{"food": "peas"}]})
    yield "value-season-of-nothing", changed(dates={"seasons": [{"months": [1, 2]}]})
    yield "value-season-month-13", changed(dates={"seasons": [{"food": "peas", "months": [0, 13]}]})
    yield "reference-season-twice", changed(dates={"seasons": [{"food": "peas", "months": [5, 7]}] * 2})
    yield "limit-seasons", changed(
        dates={"seasons": [{"food": f"food {n}", "months": [5, 7]} for n in range(201)]})
    yield "ok-season-of-what-is-not-there", changed(
        dates={"seasons": [{"food": "sea kale", "months": [11, 2], "from": "the coast"}]})


def links(laid, varint):
    """Links; `laid` makes one with this section 21."""
    yield "ok-dated", laid(b"\x03\x04" + varint(100) + b"\x0c\x32\x05\x07")
    yield "ok-dated-days-alone", laid(b"\x02\x05\x01\x03")
    yield "ok-dated-twice", laid(b"\x03\x03\x05\x03\x03\x02")
    yield "limit-dated", laid(b"\x03\x04" + varint(731))
    yield "limit-dated-rows", laid(b"\x03\x03\x05" * 207)
    yield "value-dated-months", laid(b"\x0c\x32\x00\x0d")
    yield "value-dated-food-alone", laid(b"\x04\x32")
    yield "reference-dated-season-twice", laid(b"\x0c\x32\x05\x07\x0c\x32\x05\x07")
    yield "syntax-dated-step", laid(b"\x01\x06")
    yield "syntax-dated-mask", laid(b"\x10")
