#include "near_ground.h"

#include <algorithm>
#include <cmath>
#include <map>

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/index/rtree.hpp>

#include "netmend/base/plane.h"
#include "netmend/board/shape.h"
#include "netmend/netgraph/net_role.h"

namespace netmend {

namespace {

namespace bg = boost::geometry;
using TreePoint = bg::model::d2::point_xy<double>;
using TreeBox = bg::model::box<TreePoint>;

constexpr int anyLayer = -1;

/// A disc of `radius` swept from a to b.
struct Swept {
  Vec a;
  Vec b;
  double radius = 0.0;
};

TreeBox boxOf(const Swept& s, double more) {
  const double r = s.radius + more;
  return {{std::min(s.a.x, s.b.x) - r, std::min(s.a.y, s.b.y) - r},
          {std::max(s.a.x, s.b.x) + r, std::max(s.a.y, s.b.y) + r}};
}

double gapBetween(const Swept& s, const Swept& t) {
  const auto side = [](Vec a, Vec b, Vec p) { return cross(b - a, p - a) > 0.0; };
  if (side(s.a, s.b, t.a) != side(s.a, s.b, t.b) && side(t.a, t.b, s.a) != side(t.a, t.b, s.b)) return 0.0;
  const double apart = std::min({distanceToSegment(s.a, t.a, t.b), distanceToSegment(s.b, t.a, t.b),
                                 distanceToSegment(t.a, s.a, s.b), distanceToSegment(t.b, s.a, s.b)});
  return std::max(0.0, apart - s.radius - t.radius);
}

std::vector<Swept> sweptOf(const RoundedShape& shape) {
  std::vector<Swept> out;
  const auto radius = static_cast<double>(shape.radius.nm);
  const std::size_t corners = shape.core.size();
  for (std::size_t i = 0; i < (corners < 3 ? 1 : corners); ++i)
    out.push_back({vecOf(shape.core[i]), vecOf(shape.core[(i + 1) % corners]), radius});
  return out;
}

std::vector<Swept> sweptOf(const Board& board, const CopperNode& node) {
  if (const auto* id = std::get_if<PadId>(&node.object)) {
    const Pad* pad = board.pads.find(*id);
    const auto shape = pad != nullptr && node.kind == NodeKind::pad ? padShape(*pad) : std::nullopt;
    return shape ? sweptOf(*shape) : std::vector<Swept>{};
  }
  const auto* id = std::get_if<ViaId>(&node.object);
  const Via* via = id != nullptr && node.kind == NodeKind::viaLayer ? board.vias.find(*id) : nullptr;
  if (via == nullptr) return {};
  return {
      {vecOf(via->position), vecOf(via->position), static_cast<double>(via->diameter.valueOr({}).nm) / 2}};
}

/// Copper of all ground nets, by layer.
class GroundCopper {
public:
  GroundCopper(const Board& board, const BoardGraph& graph, const TreeBox& region) : region_(region) {
    for (const NetGraph& net : graph.nets) {
      const Net* found = board.nets.find(net.net);
      if (found == nullptr || roleOf(*found).valueOr(NetRole::signal) != NetRole::ground) continue;
      addNet(board, net.graph);
    }
    for (auto& [layer, entries] : entries_)
      trees_[layer] = Tree(entries);
  }

  struct Nearest {
    double gap;
    PinId pin;
  };
  [[nodiscard]] std::optional<Nearest> nearest(const std::vector<Swept>& shapes, int layer,
                                               double within) const {
    std::optional<Nearest> best;
    for (const auto& [treeLayer, tree] : trees_) {
      if (layer != anyLayer && treeLayer != anyLayer && treeLayer != layer) continue;
      for (const Swept& shape : shapes)
        for (auto it = tree.qbegin(bg::index::intersects(boxOf(shape, within))); it != tree.qend(); ++it) {
          const double gap = gapBetween(shape, all_[it->second].shape);
          if (gap <= within && (!best || gap < best->gap)) best = Nearest{gap, all_[it->second].pin};
        }
    }
    return best;
  }

private:
  using Entry = std::pair<TreeBox, std::size_t>;
  using Tree = bg::index::rtree<Entry, bg::index::quadratic<16>>;
  struct Piece {
    Swept shape;
    PinId pin; ///< of a part, where it is its pad
  };

  void add(const Swept& shape, int layer, PinId pin) {
    const TreeBox box = boxOf(shape, 0.0);
    if (!bg::intersects(box, region_)) return;
    entries_[layer].emplace_back(box, all_.size());
    all_.push_back({shape, pin});
  }

  void addNet(const Board& board, const CopperGraph& graph) {
    for (const auto node : boost::make_iterator_range(boost::vertices(graph))) {
      const CopperNode& copper = graph[node];
      PinId pin;
      if (const auto* id = std::get_if<PadId>(&copper.object))
        if (const Pad* pad = board.pads.find(*id))
          if (const Pin* found = board.pins.find(pad->pin); found != nullptr && found->part) pin = found->id;
      for (const Swept& shape : sweptOf(board, copper))
        add(shape, copper.layer, pin);
      const auto* id = std::get_if<AreaId>(&copper.object);
      const Area* area = id != nullptr && copper.kind == NodeKind::area ? board.areas.find(*id) : nullptr;
      if (area == nullptr) continue;
      addRing(area->polygon.outer, copper.layer);
      for (const Ring& hole : area->polygon.holes)
        addRing(hole, copper.layer);
    }
    for (const auto edge : boost::make_iterator_range(boost::edges(graph))) {
      const CopperEdge& copper = graph[edge];
      if (copper.kind == EdgeKind::track && copper.from && copper.to)
        add({vecOf(*copper.from), vecOf(*copper.to), static_cast<double>(copper.width.valueOr({}).nm) / 2},
            copper.layer, {});
    }
  }

  void addRing(const Ring& ring, int layer) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      add({vecOf(ring[i]), vecOf(ring[(i + 1) % ring.size()]), 0.0}, layer, {});
  }

  TreeBox region_;
  std::map<int, std::vector<Entry>> entries_;
  std::map<int, Tree> trees_;
  std::vector<Piece> all_;
};

std::optional<TreeBox> regionOf(const CopperGraph& line, double within) {
  Box box;
  for (const auto node : boost::make_iterator_range(boost::vertices(line)))
    if (line[node].at) box.include(*line[node].at);
  if (box.empty()) return std::nullopt;
  // Pads reach beyond their middle.
  const double more = within + 5e6;
  const Vec low = vecOf(box.min);
  const Vec high = vecOf(box.max);
  return TreeBox{{low.x - more, low.y - more}, {high.x + more, high.y + more}};
}

class NearSearch {
public:
  NearSearch(const Board& board, const GroundCopper& ground, const CopperGraph& line, Length within)
      : board_(board), ground_(ground), line_(line), within_(static_cast<double>(within.nm)) {}

  std::vector<NearGround> search() {
    for (const auto edge : boost::make_iterator_range(boost::edges(line_))) {
      const CopperEdge& copper = line_[edge];
      if (copper.kind == EdgeKind::track && copper.from && copper.to) addTrack(copper);
      // The longest edge of a mesh that meets a node is as long as its cell.
      if (copper.kind == EdgeKind::contact && std::holds_alternative<AreaId>(copper.object) && copper.from)
        cell_ = std::max(cell_, distance(*copper.from, *copper.to).mm());
    }
    for (const auto node : boost::make_iterator_range(boost::vertices(line_)))
      addNode(node);
    return std::move(out_);
  }

private:
  void addTrack(const CopperEdge& copper) {
    constexpr double step = 2.0;
    const double mm = distance(*copper.from, *copper.to).mm();
    const auto pieces = std::max(1.0, std::ceil(mm / step));
    const Vec from = vecOf(*copper.from);
    const Vec way = vecOf(*copper.to) - from;
    const double radius = static_cast<double>(copper.width.valueOr({}).nm) / 2;
    for (double k = 0.0; k < pieces; k += 1.0) {
      const Swept piece{from + way * (k / pieces), from + way * ((k + 1.0) / pieces), radius};
      const auto near = ground_.nearest({piece}, copper.layer, within_);
      if (!near) continue;
      const double share = (k + 0.5) / pieces;
      const Vec middle = from + way * share;
      out_.push_back({copper.object,
                      std::nullopt,
                      {copper.index, share},
                      {Length(std::llround(middle.x)), Length(std::llround(middle.y))},
                      copper.layer,
                      Length(std::llround(near->gap)),
                      mm / pieces,
                      {},
                      {}});
    }
  }

  void addNode(NodeIndex node) {
    const CopperNode& copper = line_[node];
    if (!copper.at) return;
    if (copper.kind == NodeKind::area) {
      const Vec at = vecOf(*copper.at);
      if (const auto near = ground_.nearest({{at, at, cell_ * 5e5}}, copper.layer, within_))
        out_.push_back({copper.object,
                        node,
                        {},
                        *copper.at,
                        copper.layer,
                        Length(std::llround(near->gap)),
                        cell_,
                        {},
                        {}});
      return;
    }
    const auto shapes = sweptOf(board_, copper);
    const auto near = shapes.empty() ? std::nullopt : ground_.nearest(shapes, copper.layer, within_);
    if (!near) return;
    constexpr double mmOfSpot = 1.0;
    out_.push_back({copper.object,
                    node,
                    {},
                    *copper.at,
                    copper.layer,
                    Length(std::llround(near->gap)),
                    mmOfSpot,
                    pinOf(copper),
                    near->pin});
  }

  [[nodiscard]] PinId pinOf(const CopperNode& copper) const {
    const auto* id = std::get_if<PadId>(&copper.object);
    const Pad* pad = id != nullptr ? board_.pads.find(*id) : nullptr;
    return pad != nullptr ? pad->pin : PinId{};
  }

  const Board& board_;
  const GroundCopper& ground_;
  const CopperGraph& line_;
  double within_;
  double cell_ = 0.0; ///< mm, of the coarsest mesh
  std::vector<NearGround> out_;
};

} // namespace

std::vector<NearGround> nearGround(const Board& board, const BoardGraph& boardGraph, const CopperGraph& line,
                                   Length within) {
  const auto region = regionOf(line, static_cast<double>(within.nm));
  if (!region) return {};
  const GroundCopper ground(board, boardGraph, *region);
  return NearSearch(board, ground, line, within).search();
}

} // namespace netmend
