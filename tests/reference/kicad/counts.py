#!/usr/bin/python3
"""Counts of every board of the Debian package kicad-demos, by the CAD program's own library.

Run as  /usr/bin/python3 tests/reference/kicad/counts.py  (packages kicad 6.0.11, kicad-demos);
the lines it prints are the table in tests/reference/kicad_demos_test.cpp.
"""
import glob
import os

import pcbnew

ROOT = "/usr/share/kicad/demos/"
for path in sorted(glob.glob(ROOT + "**/*.kicad_pcb", recursive=True)):
    board = pcbnew.LoadBoard(path)
    tracks = list(board.GetTracks())
    vias = [t for t in tracks if t.GetClass() == "PCB_VIA"]
    kinds = [v.GetViaType() for v in vias]
    arcs = sum(t.GetClass() == "PCB_ARC" for t in tracks)
    pads = list(board.GetPads())
    names = {n.GetNetname() for n in board.GetNetInfo().NetsByNetcode().values()} - {""}
    padded = {p.GetNetname() for p in pads} - {""}
    areas = sum(
        zone.GetFilledPolysList(layer).OutlineCount()
        for zone in board.Zones()
        for layer in zone.GetLayerSet().CuStack()
    )
    box = board.GetBoardEdgesBoundingBox()
    edge = pcbnew.SHAPE_POLY_SET()
    closed = board.GetBoardPolygonOutlines(edge)
    cutouts = sum(edge.HoleCount(i) for i in range(edge.OutlineCount()))
    area = edge.Area() / 1e12 if closed else 0
    # Sums over all pads, tracks and fills catch a turned, mirrored or misplaced item.
    shapes = [p.ShapePos() for p in pads]
    pad_x = sum(p.x for p in shapes) / 1e6
    pad_y = -sum(p.y for p in shapes) / 1e6
    copper = [p for p in pads if p.IsOnCopperLayer() and p.GetAttribute() != pcbnew.PAD_ATTRIB_NPTH]
    pad_area = sum(p.GetEffectivePolygon().Area() for p in copper) / 1e12
    # How wide each pad is on the board, so that a wrong rotation shows.
    box_width = 0
    for pad in copper:
        polygon = pad.GetEffectivePolygon()
        xs = [polygon.CVertex(i).x for i in range(polygon.FullPointCount())]
        box_width += (max(xs) - min(xs)) / 1e6
    length = sum(t.GetLength() for t in tracks if t.GetClass() != "PCB_VIA") / 1e6
    fill_area = sum(
        zone.GetFilledPolysList(layer).Area()
        for zone in board.Zones()
        for layer in zone.GetLayerSet().CuStack()
    ) / 1e12
    back = sum(f.IsFlipped() for f in board.GetFootprints())
    print(
        '{"%s", %d, %d, %d, %d, %d, %d, %d, %d, %d, %d, %d, %d, %.2f,\n   %d, %.6f, %.6f, %.4f, %.4f, %.4f, %.4f},'
        % (
            os.path.relpath(path, ROOT),
            len(board.GetFootprints()),
            len(pads),
            len(tracks) - len(vias) - arcs,
            arcs,
            len(vias),
            len(kinds) - sum(k == pcbnew.VIATYPE_THROUGH for k in kinds),
            len(names),
            len(padded),
            board.GetCopperLayerCount(),
            areas,
            edge.OutlineCount() if closed else 0,
            cutouts,
            area,
            back,
            pad_x,
            pad_y,
            pad_area,
            box_width,
            length,
            fill_area,
        )
    )
