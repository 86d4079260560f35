"""Checks a walk that the program wrote against the published JSON Schema, and that the schema refuses mistakes."""

import copy
import json
import pathlib
import sys

import jsonschema

walk, schema = (json.loads(pathlib.Path(name).read_text(encoding="utf-8")) for name in sys.argv[1:3])
jsonschema.Draft7Validator.check_schema(schema)
validator = jsonschema.Draft7Validator(schema)
validator.validate(walk)

spoilt = []
for path, value in ((("version",), 2), (("format",), "x"), (("nane",), 1), (("mode",), "amperes"),
                    (("readings", 0, "value"), "0L"), (("readings", 0, "time"), "today"),
                    (("readings", 0, "nane"), 1), (("entered", 0, "value"), "OL"), (("points", 0), {}),
                    (("condition", "powered"), "yes")):
    bad = copy.deepcopy(walk)
    at = bad
    for step in path[:-1]:
        at = at[step]
    at[path[-1]] = value
    spoilt.append(path)
    assert not validator.is_valid(bad), f"{path} = {value!r} was accepted"
declared = set(schema["properties"])
assert declared == set(walk), f"never written or not in the schema: {declared ^ set(walk)}"
