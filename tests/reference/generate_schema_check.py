"""What a JSON Schema validator of its own makes of our files.

Writes `schema_verdicts.csv` beside this script: for each file the CRC-32 of its
bytes, whether `layout.schema.json` accepts it, and whether it still does when
no unknown field is allowed. Needs the PyPI package jsonschema.
"""
import copy
import csv
import json
import pathlib
import sys
import zlib

import jsonschema

HERE = pathlib.Path(__file__).parent
TOP = HERE.parents[1]
SCHEMA = HERE / "layout.schema.json"
FILES = [
    *sorted((TOP / "static/starters").glob("*.json")),
    *sorted((HERE.parent / "golden").glob("version-*/*.spread.json")),
    *sorted((HERE.parent / "hostile/files").glob("*.json")),
]


def closed(schema):
    """The same schema, unknown fields refused."""
    if isinstance(schema, list):
        return [closed(s) for s in schema]
    if not isinstance(schema, dict):
        return schema
    out = {key: closed(value) for key, value in schema.items()}
    if out.get("type") == "object" and "properties" in out:
        out["additionalProperties"] = False
    return out


def refuse(word):
    raise ValueError(f"{word} is no JSON")


def main():
    sys.setrecursionlimit(100_000)
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    plain = jsonschema.Draft202012Validator(schema)
    strict = jsonschema.Draft202012Validator(closed(copy.deepcopy(schema)))
    with (HERE / "schema_verdicts.csv").open("w", encoding="utf-8", newline="") as out:
        rows = csv.writer(out, lineterminator="\n")
        rows.writerow(["file", "crc32", "json", "schema", "no_unknown_fields"])
        rows.writerow([SCHEMA.relative_to(TOP), f"{zlib.crc32(SCHEMA.read_bytes()):08x}", 1, 1, 1])
        for path in FILES:
            data = path.read_bytes()
            verdict = [0, 0, 0]
            try:
                value = json.loads(data.decode("utf-8"), parse_constant=refuse)
                verdict = [1, int(plain.is_valid(value)), int(strict.is_valid(value))]
            except (ValueError, RecursionError):
                pass
            rows.writerow([path.relative_to(TOP), f"{zlib.crc32(data):08x}", *verdict])


if __name__ == "__main__":
    main()
