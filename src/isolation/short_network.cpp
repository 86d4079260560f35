#include "short_network.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include "netmend/board/board.h"
#include "netmend/netgraph/area_mesh.h"
#include "netmend/netgraph/resistance.h"

namespace netmend {

namespace {

constexpr Eigen::Index noRow = -1;

/// Coarse enough for a plane, fine enough for a pour between two pins.
Length cellFor(const Polygon& polygon) {
  constexpr double nodes = 1500.0;
  Box box;
  for (const Point corner : polygon.outer)
    box.include(corner);
  const double cell = std::sqrt(box.size().width.mm() * box.size().height.mm() / nodes);
  return Length::fromMm(std::clamp(cell, 0.2, 3.0));
}

Length foilOf(const Board& board, int layer) {
  if (layer < 0 || static_cast<std::size_t>(layer) >= board.info.layerOrder.size())
    return usualCopperThickness;
  const Layer* found = board.layers.find(board.info.layerOrder[static_cast<std::size_t>(layer)]);
  return found != nullptr ? found->copperThickness.valueOr(usualCopperThickness) : usualCopperThickness;
}

/// One of several that are joined without resistance stands for all.
std::size_t standsFor(std::vector<std::size_t>& parent, std::size_t i) {
  while (parent[i] != i)
    i = parent[i] = parent[parent[i]];
  return i;
}

bool hasNoResistance(const CopperEdge& edge) {
  if (edge.kind == EdgeKind::solderJoint) return true;
  if (edge.kind == EdgeKind::contact) return edge.resistance.valueOr(Ohms(0)).value <= 0.0;
  return edge.kind == EdgeKind::track && edge.resistance.known() && edge.resistance.value.value <= 0.0;
}

} // namespace

double wayMm(const CopperEdge& edge, Length usual) {
  constexpr double least = 1.0;
  if (edge.length.known()) return std::max(least, edge.length.value.mm());
  return edge.from && edge.to ? std::max(least, distance(*edge.from, *edge.to).mm()) : usual.mm();
}

CopperGraph withAreasResolved(const Board& board, CopperGraph graph) {
  const auto before = boost::num_vertices(graph);
  for (NodeIndex node = 0; node < before; ++node) {
    if (graph[node].kind != NodeKind::area) continue;
    const auto* id = std::get_if<AreaId>(&graph[node].object);
    const Area* area = id != nullptr ? board.areas.find(*id) : nullptr;
    if (area == nullptr || area->polygon.outer.size() < 3) continue;
    // An area too narrow for a mesh stays one node.
    if (auto resolved = withAreaResolved(graph, node, area->polygon, foilOf(board, graph[node].layer),
                                         cellFor(area->polygon)))
      graph = *resolved;
  }
  return graph;
}

struct ShortNetwork::Solver {
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower> factors;
};

ShortNetwork::ShortNetwork(const CopperGraph& graph, const ShortPriors& priors,
                           const std::vector<AlongEdge>& spots, const std::vector<NodeIndex>& wanted) {
  std::vector<std::size_t> parent(boost::num_vertices(graph));
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  for (const auto edge : boost::make_iterator_range(boost::edges(graph)))
    if (hasNoResistance(graph[edge]))
      parent[standsFor(parent, boost::source(edge, graph))] = standsFor(parent, boost::target(edge, graph));
  ofNode_.assign(parent.size(), 0);
  std::vector<std::size_t> numberOf(parent.size(), parent.size());
  for (std::size_t i = 0; i < parent.size(); ++i) {
    std::size_t& number = numberOf[standsFor(parent, i)];
    if (number == parent.size()) number = nodes_++;
    ofNode_[i] = number;
  }
  std::map<std::size_t, std::vector<std::size_t>> spotsOf;
  for (std::size_t i = 0; i < spots.size(); ++i)
    spotsOf[spots[i].edge].push_back(i);
  ofSpot_.assign(spots.size(), 0);
  for (const auto edge : boost::make_iterator_range(boost::edges(graph))) {
    const CopperEdge& copper = graph[edge];
    const std::size_t end = ofNode_[boost::target(edge, graph)];
    std::size_t from = ofNode_[boost::source(edge, graph)];
    double share = 0.0;
    auto& along = spotsOf[copper.index];
    std::sort(along.begin(), along.end(),
              [&](std::size_t a, std::size_t b) { return spots[a].share < spots[b].share; });
    for (const std::size_t spot : along) {
      if (hasNoResistance(copper)) {
        ofSpot_[spot] = from;
        continue;
      }
      ofSpot_[spot] = nodes_++;
      addEdge(copper, from, ofSpot_[spot], priors, spots[spot].share - share);
      from = ofSpot_[spot];
      share = spots[spot].share;
    }
    if (!hasNoResistance(copper)) addEdge(copper, from, end, priors, 1.0 - share);
  }
  joinPieces(priors);
  std::vector<std::size_t> nodes = ofSpot_;
  for (const NodeIndex node : wanted)
    nodes.push_back(ofNode_[node]);
  solve(nodes);
}

void ShortNetwork::addEdge(const CopperEdge& edge, std::size_t a, std::size_t b, const ShortPriors& priors,
                           double part) {
  constexpr double least = 1e-7; // two spots at one place
  if (a == b) return;
  const double known = std::max(least, part * edge.resistance.valueOr(Ohms(0)).value);
  const auto unknown = [&](double ohms, double factor, bool isWay) {
    unknown_.push_back({a, b, std::max(least, part * ohms), std::log(factor), isWay});
  };
  const auto way = [&] {
    unknown(priors.unknownWayPerMm.value * wayMm(edge, priors.unknownWayLength), priors.unknownWayFactor,
            true);
  };
  switch (edge.kind) {
  case EdgeKind::contact:
    exact_.push_back({a, b, known});
    return;
  case EdgeKind::track:
    if (!edge.resistance.known()) return way();
    known_.push_back({a, b, known, std::log(priors.trackFactor), false});
    return;
  case EdgeKind::via: {
    const Ohms usual = viaResistance(Length::fromMm(0.3), usualPlating, usualBoardThickness);
    known_.push_back({a, b, std::max(least, part * edge.resistance.valueOr(usual).value),
                      std::log(priors.viaFactor), false});
    return;
  }
  case EdgeKind::part: {
    // A link or fuse of "nought" ohms has milliohms that its value does not say.
    constexpr double tolerance = 0.02;
    constexpr double leastResistor = 0.02;
    if (edge.resistance.valueOr(Ohms(0)).value < leastResistor)
      return unknown(priors.unknownPartOhms.value, priors.unknownPartFactor, false);
    known_.push_back({a, b, known, tolerance, false});
    return;
  }
  case EdgeKind::unknownWay:
    return way();
  case EdgeKind::solderJoint:
    return;
  }
}

/// Pieces of one line belong together, whether or not somebody has seen how.
void ShortNetwork::joinPieces(const ShortPriors& priors) {
  std::vector<std::size_t> piece(nodes_);
  std::iota(piece.begin(), piece.end(), std::size_t{0});
  const auto unite = [&](const auto& wires) {
    for (const auto& wire : wires)
      piece[standsFor(piece, wire.a)] = standsFor(piece, wire.b);
  };
  unite(exact_);
  unite(known_);
  unite(unknown_);
  for (std::size_t node = 1; node < nodes_; ++node) {
    if (standsFor(piece, node) == standsFor(piece, 0)) continue;
    unknown_.push_back({0, node, priors.unknownWayPerMm.value * priors.unknownWayLength.mm(),
                        std::log(priors.unknownWayFactor), true});
    piece[standsFor(piece, node)] = standsFor(piece, 0);
  }
}

void ShortNetwork::solve(const std::vector<std::size_t>& wanted) {
  // Node 0 is held at no potential and has no row: only differences are asked for.
  std::vector<Eigen::Triplet<double>> entries;
  const auto add = [&](const auto& wires) {
    for (const auto& wire : wires) {
      const auto a = static_cast<Eigen::Index>(wire.a) - 1;
      const auto b = static_cast<Eigen::Index>(wire.b) - 1;
      if (a >= 0) entries.emplace_back(a, a, 1.0 / wire.ohms);
      if (b >= 0) entries.emplace_back(b, b, 1.0 / wire.ohms);
      if (a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), -1.0 / wire.ohms);
    }
  };
  add(exact_);
  add(known_);
  add(unknown_);
  const auto size = static_cast<Eigen::Index>(nodes_) - 1;
  auto solver = std::make_shared<Solver>();
  if (size > 0) {
    Eigen::SparseMatrix<double> laplacian(size, size);
    laplacian.setFromTriplets(entries.begin(), entries.end());
    solver->factors.compute(laplacian);
  }
  solver_ = solver;
  row_.assign(nodes_, noRow);
  column_.assign(nodes_, noRow);
  Eigen::Index rows = 0;
  Eigen::Index columns = 0;
  std::vector<std::size_t> kept;
  const auto keep = [&](std::size_t node) {
    if (row_[node] != noRow) return;
    row_[node] = rows++;
    kept.push_back(node);
  };
  std::vector<std::size_t> sources;
  for (const std::size_t node : wanted) {
    keep(node);
    if (column_[node] != noRow) continue;
    column_[node] = columns++;
    sources.push_back(node);
  }
  for (const auto* wires : {&known_, &unknown_})
    for (const UncertainWire& wire : *wires) {
      keep(wire.a);
      keep(wire.b);
    }
  potentials_ = Eigen::MatrixXd::Zero(rows, columns);
  for (std::size_t i = 0; i < sources.size(); ++i) {
    if (sources[i] == 0) continue;
    Eigen::VectorXd current = Eigen::VectorXd::Zero(size);
    current[static_cast<Eigen::Index>(sources[i]) - 1] = 1.0;
    const Eigen::VectorXd solved = solver_->factors.solve(current);
    for (std::size_t k = 0; k < kept.size(); ++k)
      if (kept[k] != 0)
        potentials_(static_cast<Eigen::Index>(k), static_cast<Eigen::Index>(i)) =
            solved[static_cast<Eigen::Index>(kept[k]) - 1];
  }
}

double ShortNetwork::transfer(std::size_t at, std::size_t into, std::size_t place) const {
  return potential(at, into) - potential(at, place) - potential(place, into) + potential(place, place);
}

CopperResponse ShortNetwork::response(std::size_t at, std::size_t into, std::size_t place) const {
  // Of a wire's resistance the reading takes the product of the currents that one ampere from either point to
  // the place sends through it (Tellegen's theorem).
  const auto product = [&](const UncertainWire& wire) {
    const auto current = [&](std::size_t source) {
      return (potential(wire.a, source) - potential(wire.b, source) - potential(wire.a, place) +
              potential(wire.b, place)) /
             wire.ohms;
    };
    const double first = current(at);
    return at == into ? first * first : first * current(into);
  };
  constexpr double nothing = 1e-9;
  CopperResponse out;
  out.copper = transfer(at, into, place);
  for (std::size_t i = 0; i < unknown_.size(); ++i) {
    const double share = product(unknown_[i]);
    if (std::abs(share) < nothing) continue;
    out.unknown.emplace_back(i, share);
    out.copper -= share * unknown_[i].ohms;
  }
  out.own.resize(static_cast<Eigen::Index>(known_.size()));
  for (std::size_t i = 0; i < known_.size(); ++i)
    out.own[static_cast<Eigen::Index>(i)] = known_[i].ohms * known_[i].spread * product(known_[i]);
  return out;
}

Eigen::VectorXd ShortNetwork::pattern(std::size_t into, std::size_t place) const {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(nodes_));
  if (nodes_ < 2) return out;
  Eigen::VectorXd current = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(nodes_) - 1);
  if (into != 0) current[static_cast<Eigen::Index>(into) - 1] += 1.0;
  if (place != 0) current[static_cast<Eigen::Index>(place) - 1] -= 1.0;
  out.tail(current.size()) = solver_->factors.solve(current);
  const double ground = out[static_cast<Eigen::Index>(place)];
  out.array() -= ground;
  return out;
}

} // namespace netmend
