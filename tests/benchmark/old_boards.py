"""Writes boards as version 4 of the CAD program would have: argv = folder for the results, file …

Fills are drawn with a pen as wide as the zone's least width, so that their polygons are smaller by half of it; arcs are
centre, start and angle. Prints the path of each board written; boards without filled zones are left out. The polygons
are made smaller by the CAD program's own library. Exit code 9: it is not installed.
"""
import math
import os
import re
import sys

try:
    import pcbnew
except ImportError:
    sys.exit(9)

NUMBER = r"(-?[\d.]+(?:e-?\d+)?)"
POINT = rf"\s*\(%s {NUMBER} {NUMBER}\)"
ARC = re.compile(r"\((gr_arc|fp_arc)" + POINT % "start" + POINT % "mid" + POINT % "end")
ARC_SEGMENTS = 32  # a full circle, as version 4 was set to at most


def old_arc(match):
    x1, y1, x2, y2, x3, y3 = (float(match.group(i)) for i in range(2, 8))
    twice = 2 * (x1 * (y2 - y3) + x2 * (y3 - y1) + x3 * (y1 - y2))
    if twice == 0:
        return f"({match.group(1).replace('arc', 'line')} (start {x1} {y1}) (end {x3} {y3})"
    a, b, c = x1 * x1 + y1 * y1, x2 * x2 + y2 * y2, x3 * x3 + y3 * y3
    cx = (a * (y2 - y3) + b * (y3 - y1) + c * (y1 - y2)) / twice
    cy = (a * (x3 - x2) + b * (x1 - x3) + c * (x2 - x1)) / twice
    start, mid, end = (math.atan2(y - cy, x - cx) for x, y in ((x1, y1), (x2, y2), (x3, y3)))
    turn = (end - start) % math.tau
    if (mid - start) % math.tau > turn:
        turn -= math.tau
    return f"({match.group(1)} (start {cx:.6f} {cy:.6f}) (end {x1} {y1}) (angle {math.degrees(turn):.6f})"


def list_at(text, start):
    """The list that begins at `start`; brackets within quotes do not count."""
    depth = 0
    for token in re.compile(r'"(?:[^"\\]|\\.)*"|[()]').finditer(text, start):
        depth += {"(": 1, ")": -1}.get(token.group(), 0)
        if depth == 0:
            return text[start : token.end()]
    raise ValueError("a list has no end")


def old_fill(zone, layer):
    polygons = pcbnew.SHAPE_POLY_SET(zone.GetFilledPolysList(layer))
    # A little less, so that necks as narrow as the pen stay one piece.
    polygons.Deflate(zone.GetMinThickness() // 2 - 2000, ARC_SEGMENTS)
    polygons.Fracture(pcbnew.SHAPE_POLY_SET.PM_FAST)
    for i in range(polygons.OutlineCount()):
        chain = polygons.Outline(i)
        corners = (chain.CPoint(k) for k in range(chain.PointCount()))
        points = " ".join(f"(xy {p.x / 1e6:.6f} {p.y / 1e6:.6f})" for p in corners)
        yield f'    (filled_polygon (layer "{pcbnew.BOARD.GetStandardLayerName(layer)}") (pts {points}))\n'


def old_board(path):
    board = pcbnew.LoadBoard(path)
    fills = []
    for zone in board.Zones():
        layers = [] if zone.GetIsRuleArea() else zone.GetLayerSet().Seq()
        fills.append("".join(p for l in layers if zone.HasFilledPolysForLayer(l) for p in old_fill(zone, l)))
    if not any(fills):
        return None
    with open(path, encoding="utf-8") as file:
        text = file.read()
    out, at = [], 0
    zones = [m.start() for m in re.finditer(r"^  \(zone\b", text, re.M)]
    for start, fill in zip((z + 2 for z in zones), fills, strict=True):
        zone = list_at(text, start)
        out.append(text[at:start])
        at = start + len(zone)
        while (k := zone.find("(filled_polygon")) >= 0:
            zone = zone[:k] + zone[k + len(list_at(zone, k)) :]
        zone = re.sub(r"\s*\(filled_areas_thickness \w+\)", "", zone)
        out.append(zone[: zone.rindex(")")] + "\n" + fill + "  )")
    out.append(text[at:])
    text = ARC.sub(old_arc, "".join(out)).replace("(footprint ", "(module ")
    return re.sub(r"\(version \d+\)", "(version 4)", text, count=1)


os.makedirs(sys.argv[1], exist_ok=True)
for path in sys.argv[2:]:
    text = old_board(path)
    if text is None:
        continue
    result = os.path.join(sys.argv[1], "version-4-" + os.path.basename(path))
    with open(result, "w", encoding="utf-8") as file:
        file.write(text)
    try:
        pcbnew.LoadBoard(result)
    except OSError:  # newer things in it than version 4 had
        os.remove(result)
    else:
        print(result, flush=True)
