#!/usr/bin/python3
"""What the CAD program's own library makes of shapes.kicad_pcb, a board of our own with every pad shape.

Run as  /usr/bin/python3 tests/reference/kicad/shapes.py  (package kicad 6.0.11); the lines it prints are
the tables in tests/reference/kicad_shapes_test.cpp. Millimetres, y turned up.
"""
import os

import pcbnew

board = pcbnew.LoadBoard(os.path.join(os.path.dirname(os.path.abspath(__file__)), "shapes.kicad_pcb"))
for footprint in board.GetFootprints():
    for pad in footprint.Pads():
        polygon = pad.GetEffectivePolygon()
        points = [polygon.CVertex(i) for i in range(polygon.FullPointCount())]
        hole = pad.GetPosition()
        print(
            '    {"%s", "%s", %.6f, %.6f, %.4f, %.4f, %.4f, %.4f, %.5f},'
            % (
                footprint.GetReference(),
                pad.GetNumber(),
                hole.x / 1e6,
                -hole.y / 1e6,
                min(p.x for p in points) / 1e6,
                -max(p.y for p in points) / 1e6,
                max(p.x for p in points) / 1e6,
                -min(p.y for p in points) / 1e6,
                polygon.Area() / 1e12,
            )
        )
edge = pcbnew.SHAPE_POLY_SET()
print("outline closed:", board.GetBoardPolygonOutlines(edge), "area %.3f" % (edge.Area() / 1e12),
      "cut-outs", edge.HoleCount(0))
