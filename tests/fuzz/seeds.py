"""seeds.py SEEDS WORDS: what the fuzzers begin with, a folder and a dictionary (libFuzzer's -dict) for each.

The seeds written by hand are copied from tests/fuzz/seeds; what the project has elsewhere is gathered, so that it stands
once. The words are those of schemas, data files and readers.
"""

import io
import json
import pathlib
import re
import shutil
import sys
import zipfile

here = pathlib.Path(__file__).parent
root = here.parent.parent
seeds, words = map(pathlib.Path, sys.argv[1:])

# In the order of the readers in data_fuzz.cpp.
data_files = ["meters", "pin_kinds", "verdict", "fault_priors", "efforts", "wires", "work_steps", "landings", "zones"]


def put(name, file, content):
    (seeds / name).mkdir(parents=True, exist_ok=True)
    (seeds / name / file).write_bytes(content)


def archive(files, method=zipfile.ZIP_STORED):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as zipped:
        for name, content in files.items():
            zipped.writestr(name, content)
    return out.getvalue()


def strings(value):
    """The keys and texts of a JSON document."""
    if isinstance(value, dict):
        for key, child in value.items():
            yield key
            yield from strings(child)
    elif isinstance(value, list):
        for child in value:
            yield from strings(child)
    elif isinstance(value, str):
        yield value


def schema_words(name):
    """What a schema allows: names of properties and words of enumerations, each as JSON has it."""
    document = json.loads((root / "docs/formats" / name).read_text())

    def walk(value):
        if isinstance(value, dict):
            yield from value.get("properties", {})
            yield from (word for word in value.get("enum", []) if isinstance(word, str))
            for child in value.values():
                yield from walk(child)
        elif isinstance(value, list):
            for child in value:
                yield from walk(child)

    return {f'"{word}"' for word in walk(document)}


def source_words(pattern):
    """The words that readers ask for: short quoted texts in their sources."""
    found = set()
    for file in (root / "src/board/exchange").glob(pattern):
        found.update(re.findall(r'"([A-Za-z_.&*]{2,24})"', file.read_text()))
    return {word for word in found if not word.endswith(".h")}


def write_words(name, entries):
    words.mkdir(parents=True, exist_ok=True)
    escaped = ("".join(c if " " <= c <= "~" and c not in '\\"' else "".join(f"\\x{b:02x}" for b in c.encode())
                       for c in entry) for entry in sorted(entries))
    (words / name).write_text("".join(f'"{entry}"\n' for entry in escaped if entry))


shutil.copytree(here / "seeds", seeds)
for number, name in enumerate(data_files):
    put("data", name, bytes([number]) + (root / "data" / f"{name}.json").read_bytes())
put("walk", "demo", (root / "demo/device/faulty.netmend-walk.json").read_bytes())
put("kicad", "shapes", (root / "tests/reference/kicad/shapes.kicad_pcb").read_bytes())
table = (here / "seeds/csv/comma.csv").read_bytes()
kicad = (here / "seeds/kicad/version-8.kicad_pcb").read_bytes()
put("zip", "stored", archive({"a/points.csv": table}))
put("zip", "packed", archive({"board.kicad_pcb": kicad, "README": b"x"}, zipfile.ZIP_DEFLATED))
put("zip", "two", archive({"a.csv": table, "b.csv": table + b"R2,1,\n"}, zipfile.ZIP_DEFLATED))
put("zip", "none", archive({"photo.png": b"\x89PNG", "d/": b""}))
put("zip", "within", archive({"inner.zip": archive({"a.csv": table})}))

numbers = {"0", "-1", "1e9", "10000000000", "9007199254740991", "18446744073709551615", "0.000001", "1e-9", "1e308"}
board = schema_words("netmend-board.schema.json")
kinds = {'"put"', '"remove"', '"object"', '"changes"', '"layer"', '"part"', '"net"', '"pin"', '"pad"', '"track"', '"via"',
         '"area"', '"zone"'}
write_words("netmend", board | numbers)
write_words("journal", board | kinds | numbers)
write_words("walk", schema_words("netmend-walk.schema.json") | numbers |
            {"point", "value", "mode", "other", "meter", "by", "time", "settling", "skip", "OL", "# specimen: good"})
write_words("data", numbers | {f'"{text}"' for name in data_files
                               for text in strings(json.loads((root / "data" / f"{name}.json").read_text()))
                               if len(text) < 40})
write_words("kicad", numbers | source_words("kicad*.cpp") | {f"({word} " for word in source_words("kicad*.cpp")})
write_words("csv", numbers | source_words("csv*.cpp") | {"x_mm", "y_mm", "\xef\xbb\xbf", "n/c", "\r\n"})
write_words("ipc-d-356a", source_words("ipc*.cpp") | {f"\n{code}" for code in (
    "017", "027", "099", "078", "079", "089", "307", "317", "327", "367", "378", "379", "389", "390", "999", "P  ", "C  ")} |
            {"P  UNITS CUST 0", "P  UNITS SI", "P  NNAME1 ", "A00", "A01", "D0100P", "MD0120U", "R045", "S3", "L01L04", "X-000001"})
write_words("zip", {"a.csv", "b.ipc", "c.kicad_pcb", "../", "PK\x01\x02", "PK\x03\x04", "PK\x05\x06", "PK\x06\x06"})
write_words("reading", {"OL", "open", "skip", "mV", "k", "M", "\u03a9", "\u2126", "\u00b5", "\u00b0C", "4k7", "1e308", "4R7",
                        "volts", "ohm", "V", "\u2212"})
