#!/usr/bin/python3
"""figures.py RECORD …: what the records of the demo boards (tests/board/exchange/records) say of tracks, vias, parts,
nets and holes, held against the files themselves, read here with nothing of ours: the format is a list of lists
(dev-docs.kicad.org/en/file-formats/sexpr-pcb), lengths are millimetres with at most six decimals, y points down."""
import decimal, glob, json, os, re, sys

TOKEN = re.compile(r'\s*(?:(\()|(\))|"((?:\\.|[^"\\])*)"|([^\s()]+))', re.S)


def lists(text):
    stack = [[]]
    for opened, closed, quoted, word in TOKEN.findall(text):
        if opened:
            stack.append([])
        elif closed:
            done = stack.pop()
            stack[-1].append(done)
        else:
            stack[-1].append(word or quoted)
    return stack[0][0]


def nm(text):
    return int((decimal.Decimal(text) * 1_000_000).to_integral_value(decimal.ROUND_HALF_EVEN))


def all_of(item, *heads):
    return [x for x in item if isinstance(x, list) and x and x[0] in heads]


def one(item, head):
    found = all_of(item, head)
    return found[0][1:] if found else None


def point_sum(items, head):
    points = [one(i, head) for i in items]
    return {"x": sum(nm(p[0]) for p in points if p), "y": -sum(nm(p[1]) for p in points if p)}


def length_sum(items, head):
    return sum(nm(v[0]) for v in (one(i, head) for i in items) if v)


def drills(pads):
    width = height = 0
    for pad in pads:
        drill = one(pad, "drill")
        sizes = [nm(d) for d in drill or [] if isinstance(d, str) and d != "oval"]
        if pad[2] in ("smd", "connect") or not sizes:
            continue
        width, height = width + sizes[0], height + sizes[-1]
    return {"width": width, "height": height}


def figures(board):
    tracks, vias = all_of(board, "segment", "arc"), all_of(board, "via")
    parts = all_of(board, "footprint", "module")
    pads = [pad for part in parts for pad in all_of(part, "pad")]
    nets = [n for n in all_of(board, "net") if n[1] != "0" and n[2]]
    out = {("tracks", "count"): len(tracks), ("vias", "count"): len(vias), ("parts", "count"): len(parts),
           ("pads", "count"): len(pads), ("nets", "count"): len(nets),
           ("nets", "name", "letters"): sum(len(n[2].encode()) for n in nets),
           ("tracks", "width", "sum"): length_sum(tracks, "width"),
           ("vias", "diameter", "sum"): length_sum(vias, "size"), ("vias", "drill", "sum"): length_sum(vias, "drill")}
    points = [("tracks", "start", tracks, "start"), ("tracks", "end", tracks, "end"),
              ("tracks", "mid", all_of(board, "arc"), "mid"), ("vias", "position", vias, "at"),
              ("parts", "position", parts, "at")]
    for kind, field, items, head in points:
        for axis, value in point_sum(items, head).items():
            out[kind, field, axis, "sum"] = value
    for side, value in drills(pads).items():
        out["pads", "drill", side, "sum"] = value
    return out


def main():
    wrong = compared = 0
    files = {os.path.basename(f): f for f in glob.glob("/usr/share/kicad/demos/*/*.kicad_pcb")}
    for record in sys.argv[1:]:
        for name, recorded in json.load(open(record)).items():
            for path, value in figures(lists(open(files[name], encoding="utf-8").read())).items():
                found = recorded
                for step in path:
                    found = found.get(step, {}) if isinstance(found, dict) else {}
                compared += 1
                if (found or 0) != value:
                    wrong += 1
                    print(f"{name}: {' '.join(path)} is {value}, the record says {found or 0}")
    print(f"{compared} figures compared, {wrong} wrong")
    return 1 if wrong or not compared else 0


if __name__ == "__main__":
    sys.exit(main())
