#!/usr/bin/env python3
"""Documents as the library writes them hold against schemas/json, by a validator that knows nothing of it.

    json_validates.py SCHEMAS SAMPLES-PROGRAM FOLDER COUNT

Unknown members count as faults here, although readers pass over them, so that a schema that forgot a field
does not pass. That the validator notices anything at all is tried with documents that are wrong on purpose.
Exit status 77 (skipped) when Python's jsonschema is not there.
"""

import collections
import copy
import json
import pathlib
import subprocess
import sys

try:
    import jsonschema
except ImportError:
    print("skipped: Python's jsonschema (Debian: python3-jsonschema) is not there")
    sys.exit(77)


def close(schema):
    """The schema without room for members that it does not name."""
    schema = copy.deepcopy(schema)

    def walk(part):
        if isinstance(part, dict):
            if part.get("type") == "object" and "properties" in part:
                part["additionalProperties"] = False
            for value in part.values():
                walk(value)
        elif isinstance(part, list):
            for value in part:
                walk(value)

    walk(schema)
    return schema


def main():
    schemas, program, folder, count = pathlib.Path(sys.argv[1]), sys.argv[2], pathlib.Path(sys.argv[3]), sys.argv[4]
    subprocess.run([program, folder, count], check=True)
    validators = {}
    for kind in ("pit", "report", "bulletin"):
        schema = json.loads((schemas / f"{kind}.schema.json").read_text())
        jsonschema.Draft202012Validator.check_schema(schema)
        validators[kind] = jsonschema.Draft202012Validator(close(schema))
    seen, faults = collections.Counter(), 0
    for path in sorted(folder.glob("*.json")):
        kind = path.name.split(".")[0]
        seen[kind] += 1
        for error in validators[kind].iter_errors(json.loads(path.read_text())):
            faults += 1
            print(f"{path.name}: {'/'.join(map(str, error.absolute_path))}: {error.message[:200]}")
    wrong = [
        {},
        {"pit": []},
        {"pit": {"title": 3}},
        {"pit": {"nose": 3}},
        {"pit": {"layers": [{"hardness_top": "X"}]}},
        {"pit": {"layers": [{"top": {"datum": "surface"}}]}},
        {"pit": {"layers": [{"top": {"value_10um": 1.5, "datum": "surface"}}]}},
        {"pit": {"edited": "yesterday"}},
        {"pit": {"site": {"unreliable": ["nose"]}}},
    ]
    for document in wrong:
        if validators["pit"].is_valid(document):
            faults += 1
            print(f"passed although it is wrong: {document}")
    missing = [kind for kind in validators if seen[kind] == 0]
    print(f"{dict(seen)} documents, {faults} faults{', none of ' + str(missing) if missing else ''}")
    sys.exit(1 if faults or missing else 0)


main()
