"""Checks random boards that the program wrote against the published JSON Schema, and the schema
against the boards: it must know every field, have none that never occurs, and refuse mistakes."""

import copy
import json
import pathlib
import random
import subprocess
import sys
import tempfile

import jsonschema

writer, schema_path = sys.argv[1:3]
schema = json.loads(pathlib.Path(schema_path).read_text(encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)

seed = random.SystemRandom().randrange(2**32)
print("seed", seed)
with tempfile.TemporaryDirectory() as folder:
    subprocess.run([writer, folder, str(seed)], check=True)
    boards = [json.loads(f.read_text(encoding="utf-8")) for f in sorted(pathlib.Path(folder).iterdir())]
assert len(boards) == 12, f"{len(boards)} boards written"
for board in boards:
    validator.validate(board)

lists = sorted(name for name, rule in schema["properties"].items() if rule.get("type") == "array")
for name in lists:
    declared = set(schema["$defs"][name[:-1]]["properties"])
    written = {field for board in boards for thing in board[name] for field in thing}
    assert declared == written, f"{name}: never written {declared - written}, unknown {written - declared}"
declared = set(schema["$defs"]["info"]["properties"])
written = {field for board in boards for field in board["info"]}
assert declared == written, f"info: {declared ^ written}"
words = 0
for name in lists:
    for field, rule in schema["$defs"][name[:-1]]["properties"].items():
        choices = rule.get("anyOf", [rule])[0].get("enum")
        if not choices:
            continue
        values = [thing[field] for board in boards for thing in board[name] if field in thing]
        values = {v["value"] if isinstance(v, dict) else v for v in values}
        # A default is left out of the file.
        missing = set(choices) - values - {"straight"}
        assert not missing, f"{name}.{field}: never written {missing}"
        words += len(choices)
assert words > 60, words

rng = random.Random(seed)
refused = 0
for board in sorted(boards, key=lambda board: board["last_id"])[3:6]:
    for name in lists:
        if not board[name]:
            continue
        for change in ("typo", "no id", "wrong type"):
            bad = copy.deepcopy(board)
            thing = rng.choice(bad[name])
            if change == "typo":
                thing["nane"] = 1
            elif change == "no id":
                del thing["id"]
            else:
                thing[rng.choice([field for field in thing if field != "origin"])] = None
            assert not validator.is_valid(bad), f"{name}: {change} was accepted"
            refused += 1
assert refused > 60, refused
for broken in ({"version": 4}, {"format": "x"}, {"last_id": -1}, {"extra": 0}):
    assert not validator.is_valid({**boards[0], **broken}), broken
print(f"{len(boards)} boards agree with the schema, {refused} spoilt ones do not")
