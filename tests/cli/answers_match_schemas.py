"""answers_match_schemas.py NETMEND SOURCE: runs every command with --json and holds its answer against
docs/formats/cli/*.schema.json."""
import json
import pathlib
import subprocess
import sys
import tempfile

import jsonschema

netmend, source = sys.argv[1], pathlib.Path(sys.argv[2])
device = source / "demo" / "device"
board = device / "tide-logger.netmend-board.json"
good = ["--good"] + sorted(str(p) for p in device.glob("good-*.netmend-walk.json"))
faulty = device / "faulty.netmend-walk.json"
seen = set()


def run(*arguments, schema=None, typed=""):
    arguments = [str(a) for a in arguments]
    schema = schema or "-".join(arguments[:2])
    done = subprocess.run([netmend, *arguments, "--json"], input=typed, capture_output=True, text=True)
    answer = json.loads(done.stdout)
    rules = json.loads((source / "docs/formats/cli" / f"{schema}.schema.json").read_text())
    jsonschema.validate(answer, rules)
    seen.add(schema)
    return answer


with tempfile.TemporaryDirectory() as folder:
    folder = pathlib.Path(folder)
    book = folder / "jobs"
    run("board", "import", board, "-o", folder / "copy.netmend-board.json")
    run("board", "summary", board)
    run("board", "check", board)
    # The page's own example, which has to be good by the schema, and for something.
    page = (source / "docs/formats/edits.md").read_text()
    script = "\n".join(l[4:] for l in page.split("\n\n")[2].splitlines())
    jsonschema.validate(json.loads(script), json.loads((source / "docs/formats/netmend-edits.schema.json").read_text()))
    (folder / "drawn.netmend-board.json").write_text('{"format":"netmend-board","version":3,"last_id":0}')
    drawn = json.loads(script)
    drawn["steps"].insert(2, {"line": "C99 100n 0402", "clicks": [[50, 20], [51, 20]]})
    drawn["steps"].insert(0, {"line": "TP1", "clicks": [[1, 1]]})
    for step in drawn["steps"]:
        if step.get("role"):
            step["net"] = "KEY_ROW0"
    run("board", "edit", folder / "drawn.netmend-board.json", typed=json.dumps(drawn))
    run("board", "summary", folder / "drawn.netmend-board.json")
    assert not list(folder.glob("*.journal"))
    run("walk", "record", "--part", "J4", "--pins", 2, "-o", folder / "walk", typed="0.4\nOL\n")
    run("walk", "judge", faulty, "--board", board, *good)
    assert run("walk", "keep", *good[1:], "--book", book) == {"kept": 8, "there_already": 0, "notices": [], "version": 2}
    assert run("walk", "keep", *good[1:], "--book", book)["there_already"] == 8
    job = run("job", "new", "--book", book, "--customer", "c", "--device", "d", "--symptom", "s", "--board", board)["job"]
    run("job", "add", "--book", book, "--job", job, "--walk", faulty, "--reading", "C28.1 0.649", *good)
    line = ["--board", board, "--net", "KEY_COL3", "--book", book, "--job", job, *good]
    run("fault", "isolate", *line)
    run("jumper", "route", *line, "--choose", 1)
    rail = ["--board", board, "--net", "+3V3"]
    short = run("fault", "short", *rail, "--reading", "milliohms C1.1 40", "--warm", "C1")
    assert short["injection"]["start_V"] <= 0.5 and short["readings"] == 1
    assert "injection" not in run("fault", "short", *rail)
    run("job", "add", "--book", book, "--job", job, "--action", "clean", "--target", "J4", "--charge", "work", "--price", "12.50")
    run("job", "show", job, "--book", book)
    run("job", "list", "--book", book)
    run("sheet", "make", "--book", book, "--job", job, "-o", folder / "sheet.pdf")
    run("job", "show", "none", "--book", book, schema="error")

every = {p.name.removesuffix(".schema.json") for p in (source / "docs/formats/cli").glob("*.schema.json")}
if every != seen:
    sys.exit(f"no answer was checked against {sorted(every - seen)}")
print(f"{len(seen)} schemas hold")
