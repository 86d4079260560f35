#include "netmend/jumper/free_area.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "exact.h"
#include "netmend/board/shape.h"
#include "rings.h"
#include "triangulation.h"

namespace netmend {
namespace {

Length half(Length wire) {
  return Length((wire.nm + 1) / 2);
}

Box placesOf(const Board& board) {
  Box box;
  for (const Pad& pad : board.pads)
    if (pad.position.known()) box.include(pad.position.value);
  for (const Track& track : board.tracks) {
    box.include(track.start);
    box.include(track.end);
  }
  for (const Via& via : board.vias)
    box.include(via.position);
  for (const Zone& zone : board.zones)
    for (const Point p : zone.polygon.outer)
      box.include(p);
  for (const Part& part : board.parts)
    if (part.body.known())
      for (const Point p : part.body.value)
        box.include(p);
  return box;
}

KeepOut edgeOf(Polygon polygon, Length margin) {
  KeepOut edge;
  edge.core = std::move(polygon);
  edge.wallOnly = true;
  edge.margin = margin;
  edge.name.what = KeepOutName::What::boardEdge;
  return edge;
}

/// The outline as keep-outs; a box a little way off everything drawn where none is known.
Result<std::vector<KeepOut>> edgesOf(const Board& board, Length margin, bool& isGuess) {
  std::vector<KeepOut> edges;
  if (board.info.outline.known())
    for (std::size_t i = 0; i < board.info.outline.value.size(); ++i) {
      Polygon polygon;
      polygon.outer = cleaned(board.info.outline.value[i].outer);
      if (polygon.outer.empty()) continue;
      for (const Ring& hole : board.info.outline.value[i].holes)
        if (Ring ring = cleaned(hole); !ring.empty()) polygon.holes.push_back(std::move(ring));
      if (!isSimple(polygon.outer))
        return failure(
            {.message = pattern(
                 "core", "the board's outline crosses or touches itself, so that its inside is unclear"),
             .place = fmt::format("/info/outline/{}", i),
             .found = said(pattern("core", "a ring of {} corners from ({}, {}) mm"), polygon.outer.size(),
                           fmt::format("{:.3f}", polygon.outer[0].x.mm()),
                           fmt::format("{:.3f}", polygon.outer[0].y.mm())),
             .expected = pattern("core", "an outline without crossings")});
      edges.push_back(edgeOf(std::move(polygon), margin));
    }
  isGuess = edges.empty();
  if (!edges.empty()) return edges;
  const Box box = placesOf(board);
  if (box.empty())
    return failure({.message = pattern("core", "no way can be found: nothing on the board has a place"),
                    .expected = pattern("core", "an outline, or pads with coordinates")});
  const Length off(5'000'000);
  const Point a{box.min.x - off, box.min.y - off}, c{box.max.x + off, box.max.y + off};
  edges.push_back(edgeOf({{a, {c.x, a.y}, c, {a.x, c.y}}, {}}, margin));
  edges.back().guessed = true;
  return edges;
}

/// The mesh reaches a little beyond the loop round the board; nobody walks there.
void closeRim(NavigationMesh& mesh) {
  const std::int32_t outside = mesh.region[static_cast<std::size_t>(mesh.locate(mesh.gridOrigin).front())];
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    if (mesh.region[t] == outside) {
      mesh.triangles[t].free = false;
      mesh.region[t] = -1;
    }
}

Box grownBox(const KeepOut& keepOut, Length by) {
  Box box;
  for (const Point p : keepOut.core.outer)
    box.include(p);
  return {{box.min.x - by, box.min.y - by}, {box.max.x + by, box.max.y + by}};
}

} // namespace

Result<FreeArea> buildFreeArea(const Lookup& lookup, Side side, const ZoneRules& rules,
                               const FreeAreaOptions& options) {
  FreeArea area;
  area.side = side;
  area.wire = options.wire;
  area.obstacles = obstaclesOf(lookup, side, rules, options.overrides);
  auto holes = holesAndJoints(lookup.board(), side, rules, options.own);
  auto& to = options.overHoles ? area.passable : area.obstacles.keepOuts;
  std::move(holes.begin(), holes.end(), std::back_inserter(to));
  auto edges = edgesOf(lookup.board(), rules.edgeMargin, area.outlineGuessed);
  if (!edges) return failure(edges.error());

  std::vector<Ring> loops;
  for (const KeepOut& keepOut : area.obstacles.keepOuts)
    for (Ring& loop : grownLoops(keepOut, keepOut.margin + half(options.wire), options.segmentsPerCorner))
      loops.push_back(std::move(loop));
  const Length inset = rules.edgeMargin + half(options.wire);
  Box box;
  for (const KeepOut& edge : *edges) {
    const Size size = grownBox(edge, Length(0)).size();
    if (std::min(size.width, size.height) <= inset * 3)
      return failure({.message = pattern("core", "the board is narrower than a wire with its margins"),
                      .found = said(pattern("core", "{} mm by {} mm"), fmt::format("{:.3f}", size.width.mm()),
                                    fmt::format("{:.3f}", size.height.mm()))});
    loops.push_back(shrunkOutline(edge.core.outer, inset, options.segmentsPerCorner));
    for (const Ring& hole : edge.core.holes) {
      KeepOut cutOut;
      cutOut.core.outer = hole;
      for (Ring& loop : grownLoops(cutOut, inset, options.segmentsPerCorner))
        loops.push_back(std::move(loop));
    }
    area.obstacles.keepOuts.push_back(edge);
    for (const Point p : edge.core.outer)
      box.include(p);
  }
  for (const Ring& loop : loops)
    for (const Point p : loop)
      box.include(p);
  // All round the board nothing is free: one loop out to the box, which the outlines take back inside.
  loops.push_back({box.min, {box.max.x, box.min.y}, box.max, {box.min.x, box.max.y}});
  auto mesh = buildMesh(box, loops);
  if (!mesh) return failure(mesh.error());
  area.mesh = std::move(*mesh);
  closeRim(area.mesh);
  for (const KeepOut& keepOut : area.obstacles.keepOuts)
    area.bounds.push_back(grownBox(keepOut, keepOut.margin + half(options.wire)));
  return area;
}

std::vector<std::size_t> keepOutsNear(const FreeArea& area, Point a, Point b) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < area.bounds.size(); ++i) {
    const Box& box = area.bounds[i];
    const KeepOut& keepOut = area.obstacles.keepOuts[i];
    if (!keepOut.isBoardEdge() && (std::max(a.x, b.x) < box.min.x || std::min(a.x, b.x) > box.max.x ||
                                   std::max(a.y, b.y) < box.min.y || std::min(a.y, b.y) > box.max.y))
      continue;
    if (distanceTo(keepOut, a, b) < keepOut.margin + half(area.wire)) found.push_back(i);
  }
  return found;
}

std::vector<std::size_t> keepOutsAt(const FreeArea& area, Point p) {
  return keepOutsNear(area, p, p);
}

} // namespace netmend
