#include <algorithm>

#include "copper_shape.h"
#include "kicad_reader.h"
#include "netmend/board/shape.h"

namespace netmend::kicad {

namespace {

// Corners of the board's edge over all its pieces; real boards have thousands.
constexpr std::size_t mostEdgePoints = 1'000'000;

void addEdge(KicadReader& r, Path path) {
  r.edgePoints += path.points.size();
  if (r.edgePoints > mostEdgePoints) {
    r.in.fail(pattern("core", "the board's edge has too many corners"), {},
              said(pattern("core", "at most {}"), mostEdgePoints));
    return;
  }
  r.edges.push_back({std::move(path.points), path.closed});
}

/// Copper that is drawn rather than routed. It is real, and belongs to no net by name.
void addCopper(KicadReader& r, const Graphic& g, const Path& path, Fact<LayerId> layer) {
  std::vector<Polygon> polygons = path.closed && g.filled ? filledShape(path.points, g.width)
                                                          : strokeOf(path.points, path.closed, g.width);
  if (polygons.empty())
    r.count(pattern("core", "lines without width drawn on copper layers, left out"), g.place);
  for (Polygon& polygon : polygons) {
    Area area;
    area.id = r.board().newId<AreaId>();
    area.polygon = std::move(polygon);
    area.layer = layer;
    if (g.net) area.net = itemNet(r, g.net);
    area.origin = Origin::file;
    if (!area.net.known())
      r.count(pattern("core", "drawn copper shapes without a net, read as areas whose net is unknown"),
              g.place);
    r.board().areas.put(std::move(area));
  }
}

} // namespace

void addDrawing(KicadReader& r, const Graphic& g, Point origin, Degrees rotation) {
  for (const std::string_view layer : g.layers) {
    const bool edge = layer == "Edge.Cuts";
    const auto copper = r.copperLayers.find(layer);
    if (!edge && copper == r.copperLayers.end()) continue;
    Path path = pathOf(g, edge ? Length(5000) : Length(1000));
    for (Point& p : path.points)
      p = placed(origin, rotation, p);
    if (edge)
      addEdge(r, std::move(path));
    else
      addCopper(r, g, path, fromFile(copper->second));
  }
}

} // namespace netmend::kicad
