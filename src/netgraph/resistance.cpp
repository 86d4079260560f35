#include "netmend/netgraph/resistance.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include "union_find.h"

namespace netmend {
namespace {

using copper::UnionFind;

constexpr double metresPerNanometre = 1e-9;
const Ohms open(std::numeric_limits<double>::infinity());

double metres(Length length) {
  return static_cast<double>(length.nm) * metresPerNanometre;
}

/// Numbers the nodes that hang together with `from` and not yet joined to `to`, which stays ground.
struct Numbering {
  static constexpr Eigen::Index none = -1;
  std::vector<Eigen::Index> ofNode;
  Eigen::Index count = 0;
};

Numbering numberPiece(UnionFind& joined, UnionFind& piece, std::size_t nodes, std::size_t from,
                      std::size_t to) {
  Numbering numbering{std::vector<Eigen::Index>(nodes, Numbering::none), 0};
  const auto ground = joined.find(to);
  for (std::size_t i = 0; i < nodes; ++i)
    if (joined.find(i) == i && i != ground && piece.find(i) == piece.find(from))
      numbering.ofNode[i] = numbering.count++;
  return numbering;
}

Ohms solve(const std::vector<Resistor>& network, UnionFind& joined, const Numbering& numbering,
           std::size_t from) {
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(network.size() * 4);
  for (const auto& resistor : network) {
    const double value = resistor.value.value;
    if (value == 0.0 || std::isinf(value)) continue;
    const auto a = numbering.ofNode[joined.find(resistor.a)];
    const auto b = numbering.ofNode[joined.find(resistor.b)];
    if (a == b) continue;
    if (a >= 0) entries.emplace_back(a, a, 1.0 / value);
    if (b >= 0) entries.emplace_back(b, b, 1.0 / value);
    // One triangle is enough for the solver.
    if (a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), -1.0 / value);
  }
  Eigen::SparseMatrix<double> laplacian(numbering.count, numbering.count);
  laplacian.setFromTriplets(entries.begin(), entries.end());
  const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower> solver(laplacian);
  if (solver.info() != Eigen::Success) throw std::runtime_error("a resistor network could not be factorised");
  const auto source = numbering.ofNode[joined.find(from)];
  Eigen::VectorXd current = Eigen::VectorXd::Zero(numbering.count);
  current[source] = 1.0;
  const Eigen::VectorXd voltage = solver.solve(current);
  return Ohms(voltage[source]);
}

} // namespace

Ohms atTemperature(Ohms at20, Celsius temperature) {
  return at20 * (1.0 + copperTemperatureCoefficient * (temperature.value - 20.0));
}

Ohms trackResistance(Length length, Length width, Length thickness, Celsius temperature) {
  if (width.nm <= 0 || thickness.nm <= 0) return open;
  return atTemperature(Ohms(copperResistivity * metres(length) / (metres(width) * metres(thickness))),
                       temperature);
}

Ohms sheetResistance(Length thickness, Celsius temperature) {
  return trackResistance(Length(1), Length(1), thickness, temperature);
}

Ohms viaResistance(Length drill, Length plating, Length height, Celsius temperature) {
  if (plating.nm <= 0 || drill.nm < 0) return open;
  const double section = std::numbers::pi * metres(plating) * (metres(drill) + metres(plating));
  return atTemperature(Ohms(copperResistivity * metres(height) / section), temperature);
}

Ohms effectiveResistance(const std::vector<Resistor>& network, std::size_t from, std::size_t to) {
  std::size_t nodes = std::max(from, to) + 1;
  for (const auto& resistor : network) {
    if (!(resistor.value.value >= 0.0))
      throw std::invalid_argument("a resistance is negative or not a number");
    nodes = std::max({nodes, resistor.a + 1, resistor.b + 1});
  }
  UnionFind joined(nodes);
  UnionFind piece(nodes);
  for (const auto& resistor : network) {
    if (std::isinf(resistor.value.value)) continue;
    piece.unite(resistor.a, resistor.b);
    if (resistor.value.value == 0.0) joined.unite(resistor.a, resistor.b);
  }
  if (joined.find(from) == joined.find(to)) return Ohms(0);
  if (piece.find(from) != piece.find(to)) return open;
  return solve(network, joined, numberPiece(joined, piece, nodes, from, to), from);
}

Ohms effectiveResistance(const CopperGraph& graph, NodeIndex from, NodeIndex to, Ohms unknown) {
  std::vector<Resistor> network;
  network.reserve(boost::num_edges(graph));
  for (const auto edge : boost::make_iterator_range(boost::edges(graph)))
    network.push_back(
        {boost::source(edge, graph), boost::target(edge, graph), graph[edge].resistance.valueOr(unknown)});
  return effectiveResistance(network, from, to);
}

} // namespace netmend
