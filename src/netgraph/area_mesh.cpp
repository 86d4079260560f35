#include "netmend/netgraph/area_mesh.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include <fmt/format.h>

#include "area_slices.h"
#include "netmend/base/plane.h"

namespace netmend {
namespace {

constexpr std::size_t noNode = std::numeric_limits<std::size_t>::max();

bool isUnder(const RoundedShape& shape, Vec p) {
  const auto& core = shape.core;
  const auto radius = static_cast<double>(shape.radius.nm);
  for (std::size_t i = 0, last = core.size() - 1; i < core.size(); last = i++)
    if (distanceToSegment(p, vecOf(core[last]), vecOf(core[i])) <= radius) return true;
  return core.size() > 2 && insideRing(core, p);
}

/// The share of the way from `outer` to `inner` that is outside of the shape, `inner` being under it.
double shareOutside(const RoundedShape& shape, Point outer, Point inner) {
  const auto ox = static_cast<double>(outer.x.nm);
  const auto oy = static_cast<double>(outer.y.nm);
  const auto dx = static_cast<double>(inner.x.nm) - ox;
  const auto dy = static_cast<double>(inner.y.nm) - oy;
  double low = 0.0;
  double high = 1.0;
  for (int step = 0; step < 40; ++step) {
    const double middle = (low + high) / 2;
    (isUnder(shape, {ox + middle * dx, oy + middle * dy}) ? high : low) = middle;
  }
  return low;
}

/// One line of neighbouring links that cross the dual line `crossing`: gives each link the strip of copper
/// nearer to it than to the links beside it, but at most a cell to either side.
template <class IsLink, class Emit>
void shareWidth(const std::vector<Span>& crossing, std::size_t count, const SliceGrid& along, IsLink isLink,
                Emit emit) {
  const auto spanOf = [&](std::size_t k) { return spanAt(crossing, along.at(2 * k)); };
  for (std::size_t k = 0; k < count; ++k) {
    if (!isLink(k)) continue;
    const auto span = spanOf(k);
    if (!span) continue;
    const double at = along.at(2 * k);
    const double cell = 2 * along.step;
    const bool before = k > 0 && isLink(k - 1) && spanOf(k - 1) == span;
    const bool after = k + 1 < count && isLink(k + 1) && spanOf(k + 1) == span;
    const double low = before ? at - cell / 2 : std::max(crossing[*span].from, at - cell);
    const double high = after ? at + cell / 2 : std::min(crossing[*span].to, at + cell);
    if (high > low) emit(k, (high - low) / cell);
  }
}

/// Grid of nodes inside an area: `number[row * columns + column]` or noNode.
struct NodeGrid {
  SliceGrid x;
  SliceGrid y;
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::vector<std::size_t> number;
  [[nodiscard]] std::size_t at(std::size_t column, std::size_t row) const {
    return number[row * columns + column];
  }
};

SliceGrid gridOver(Length from, Length to, Length cell, std::size_t cells) {
  const auto low = static_cast<double>(from.nm);
  const auto high = static_cast<double>(to.nm);
  const auto step = static_cast<double>(cell.nm) / 2;
  return {(low + high) / 2 - static_cast<double>(cells - 1) * step, step, 2 * cells - 1};
}

std::size_t cellsOver(Length extent, Length cell) {
  return std::max<std::size_t>(1, static_cast<std::size_t>((extent.nm + cell.nm - 1) / cell.nm));
}

Point pointAt(const NodeGrid& grid, std::size_t column, std::size_t row) {
  return {Length(std::llround(grid.x.at(2 * column))), Length(std::llround(grid.y.at(2 * row)))};
}

void addNodes(NodeGrid& grid, const Slices& rows, std::vector<Point>& nodes) {
  grid.number.assign(grid.columns * grid.rows, noNode);
  for (std::size_t row = 0; row < grid.rows; ++row)
    for (std::size_t column = 0; column < grid.columns; ++column) {
      if (!spanAt(rows[2 * row], grid.x.at(2 * column))) continue;
      grid.number[row * grid.columns + column] = nodes.size();
      nodes.push_back(pointAt(grid, column, row));
    }
}

void addResistors(const NodeGrid& grid, const Slices& rows, const Slices& columns, AreaMesh& mesh) {
  const auto joined = [](const std::vector<Span>& line, double a, double b) {
    const auto span = spanAt(line, a);
    return span && span == spanAt(line, b);
  };
  const auto add = [&](std::size_t a, std::size_t b, double share) {
    mesh.resistors.push_back({a, b, mesh.perSquare / share});
  };
  for (std::size_t column = 0; column + 1 < grid.columns; ++column)
    shareWidth(
        columns[2 * column + 1], grid.rows, grid.y,
        [&](std::size_t row) {
          return grid.at(column, row) != noNode && grid.at(column + 1, row) != noNode &&
                 joined(rows[2 * row], grid.x.at(2 * column), grid.x.at(2 * column + 2));
        },
        [&](std::size_t row, double share) { add(grid.at(column, row), grid.at(column + 1, row), share); });
  for (std::size_t row = 0; row + 1 < grid.rows; ++row)
    shareWidth(
        rows[2 * row + 1], grid.columns, grid.x,
        [&](std::size_t column) {
          return grid.at(column, row) != noNode && grid.at(column, row + 1) != noNode &&
                 joined(columns[2 * column], grid.y.at(2 * row), grid.y.at(2 * row + 2));
        },
        [&](std::size_t column, double share) {
          add(grid.at(column, row), grid.at(column, row + 1), share);
        });
}

} // namespace

Result<AreaMesh> meshArea(const Polygon& area, Length cell, Length thickness, std::size_t mostNodes) {
  if (cell.nm <= 0)
    return failure({.message = pattern("core", "the cell of a mesh has no size"),
                    .found = said(pattern("core", "{} nm"), cell.nm)});
  Box box;
  for (const auto corner : area.outer)
    box.include(corner);
  AreaMesh mesh{cell, sheetResistance(thickness), {}, {}};
  if (box.empty()) return mesh;
  NodeGrid grid;
  grid.columns = cellsOver(box.size().width, cell);
  grid.rows = cellsOver(box.size().height, cell);
  // Areas fill their boxes badly, but not worse than this without being meshed for nothing.
  if (grid.columns > 4 * mostNodes / grid.rows)
    return failure({.message = pattern("core", "the area is too large for a mesh of this cell"),
                    .found = said(pattern("core", "{} × {} cells"), grid.columns, grid.rows),
                    .expected = said(pattern("core", "at most {}"), 4 * mostNodes)});
  grid.x = gridOver(box.min.x, box.max.x, cell, grid.columns);
  grid.y = gridOver(box.min.y, box.max.y, cell, grid.rows);
  const auto rows = slicesAlongX(area, grid.y);
  const auto columns = slicesAlongY(area, grid.x);
  addNodes(grid, rows, mesh.nodes);
  if (mesh.nodes.size() > mostNodes)
    return failure({.message = pattern("core", "the area needs too many nodes for this cell"),
                    .found = said(pattern("core", "{} nodes"), mesh.nodes.size()),
                    .expected = said(pattern("core", "at most {}"), mostNodes)});
  addResistors(grid, rows, columns, mesh);
  return mesh;
}

Result<std::size_t> addContact(AreaMesh& mesh, const RoundedShape& contact) {
  Box reach;
  for (const auto corner : contact.core) {
    reach.include({corner.x - contact.radius, corner.y - contact.radius});
    reach.include({corner.x + contact.radius, corner.y + contact.radius});
  }
  std::vector<bool> under(mesh.nodes.size());
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i) {
    const auto [x, y] = mesh.nodes[i];
    under[i] = x >= reach.min.x && x <= reach.max.x && y >= reach.min.y && y <= reach.max.y &&
               isUnder(contact, vecOf({x, y}));
  }
  if (std::find(under.begin(), under.end(), true) == under.end())
    return failure({.message = pattern("core", "no node of the mesh lies under the contact"),
                    .found = said(pattern("core", "a cell of {} mm"), fmt::format("{}", mesh.cell.mm()))});
  // Copper under the contact carries nothing: a link that reaches into it is as long as its part outside.
  for (auto& resistor : mesh.resistors) {
    if (under[resistor.a] == under[resistor.b]) continue;
    const auto inner = under[resistor.a] ? resistor.a : resistor.b;
    const auto outer = under[resistor.a] ? resistor.b : resistor.a;
    resistor.value = resistor.value * shareOutside(contact, mesh.nodes[outer], mesh.nodes[inner]);
  }
  const auto node = mesh.nodes.size();
  Box box;
  for (std::size_t i = 0; i < under.size(); ++i) {
    if (!under[i]) continue;
    mesh.resistors.push_back({i, node, Ohms(0)});
    box.include(mesh.nodes[i]);
  }
  mesh.nodes.push_back({(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2});
  return node;
}

Result<Ohms> areaResistance(const Polygon& area, Length thickness, const RoundedShape& from,
                            const RoundedShape& to, Length cell) {
  constexpr int mostHalvings = 3;
  Error last{.message = pattern("core", "the contacts do not hang together through the area")};
  for (int halving = 0; halving <= mostHalvings; ++halving, cell = cell / 2) {
    auto mesh = meshArea(area, cell, thickness);
    if (!mesh) return failure(mesh.error());
    const auto a = addContact(*mesh, from);
    const auto b = a ? addContact(*mesh, to) : a;
    if (!b) {
      last = b.error();
      continue;
    }
    const auto resistance = effectiveResistance(mesh->resistors, *a, *b);
    if (std::isfinite(resistance.value)) return resistance;
    last = {.message = pattern("core", "the contacts do not hang together through the area"),
            .found = said(pattern("core", "necks narrower than {} mm"), fmt::format("{}", cell.mm()))};
  }
  return failure(last);
}

namespace {

std::size_t nearestNode(const AreaMesh& mesh, Point at) {
  const auto nearer = [at](Point a, Point b) { return distance(a, at) < distance(b, at); };
  return static_cast<std::size_t>(std::min_element(mesh.nodes.begin(), mesh.nodes.end(), nearer) -
                                  mesh.nodes.begin());
}

/// The mesh's node for one edge that met the area.
std::size_t contactOf(AreaMesh& mesh, std::size_t gridNodes, const CopperEdge& edge, std::optional<Point> at,
                      std::optional<Point> otherwise) {
  if (!at) at = otherwise;
  if (!at) return 0;
  const Length radius = edge.width.known() ? edge.width.value / 2 : mesh.cell / 2;
  if (const auto node = addContact(mesh, {{*at}, radius})) return *node;
  return std::min(nearestNode(mesh, *at), gridNodes - 1);
}

} // namespace

Result<CopperGraph> withAreaResolved(const CopperGraph& graph, NodeIndex area, const Polygon& polygon,
                                     Length thickness, Length cell) {
  auto mesh = meshArea(polygon, cell, thickness);
  if (!mesh) return failure(mesh.error());
  if (mesh->nodes.empty())
    return failure({.message = pattern("core", "the area is narrower than the mesh everywhere"),
                    .found = said(pattern("core", "a cell of {} mm"), fmt::format("{}", cell.mm()))});
  const auto gridNodes = mesh->nodes.size();
  // The area's own number goes to the mesh's first node, so that all others keep theirs.
  const auto before = boost::num_vertices(graph);
  const auto numberOf = [&](std::size_t node) { return node == 0 ? area : before + node - 1; };
  struct Met {
    NodeIndex from, to;
    CopperEdge edge;
  };
  std::vector<Met> met;
  for (const auto edge : boost::make_iterator_range(boost::edges(graph))) {
    Met item{boost::source(edge, graph), boost::target(edge, graph), graph[edge]};
    const bool atSource = item.from == area;
    const bool atTarget = item.to == area;
    if (atSource && atTarget) continue;
    if (atSource)
      item.from = numberOf(contactOf(*mesh, gridNodes, item.edge, item.edge.from, graph[item.to].at));
    if (atTarget)
      item.to = numberOf(contactOf(*mesh, gridNodes, item.edge, item.edge.to, graph[item.from].at));
    met.push_back(std::move(item));
  }
  CopperGraph result(before + mesh->nodes.size() - 1);
  for (NodeIndex node = 0; node < before; ++node)
    result[node] = graph[node];
  const CopperNode& areaNode = graph[area];
  for (std::size_t i = 0; i < mesh->nodes.size(); ++i)
    result[numberOf(i)] = {NodeKind::area, areaNode.object, mesh->nodes[i], areaNode.layer};
  for (const auto& resistor : mesh->resistors) {
    CopperEdge edge;
    edge.object = areaNode.object;
    edge.from = mesh->nodes[resistor.a];
    edge.to = mesh->nodes[resistor.b];
    edge.layer = areaNode.layer;
    edge.resistance = guessed(resistor.value);
    met.push_back({numberOf(resistor.a), numberOf(resistor.b), std::move(edge)});
  }
  for (auto& item : met) {
    item.edge.index = boost::num_edges(result);
    boost::add_edge(item.from, item.to, std::move(item.edge), result);
  }
  return result;
}

} // namespace netmend
