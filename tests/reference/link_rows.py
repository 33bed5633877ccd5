"""What rows of a link say of other parts of its layout, for `link_decoder.py`."""


def tell(layout, rows):
    """Gives linens and items what is said of them; what is not there gets a thing on it, as wrong."""
    things = {thing.get("id"): thing for name in ("items", "linens") for thing in reversed(layout[name])}
    for row in rows:
        of = row.pop("of")
        if of not in things:
            lost = {"id": 60_000, "at": [0, 0], "size": {"shape": "disc", "diameter": 1}, "on": of}
            layout["items"].append(lost)
        things.get(of, {}).update(row)
    for thing in things.values():
        if thing.get("spare") == 0:
            del thing["spare"]


def date(layout, rows):
    """Gives the dates what is told of their steps and of seasons."""
    steps, seasons = {}, []
    for row in rows:
        step, days = row.pop("step", None), row.pop("days", None)
        if step is not None and days is not None:
            steps[step] = days
        if row:
            seasons.append(row)
    told = {"steps": steps, "seasons": seasons}
    told = {name: said for name, said in told.items() if said}
    if told:
        layout["dates"] = layout.get("dates", {}) | told
