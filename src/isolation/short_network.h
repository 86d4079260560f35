#pragma once

#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

#include <Eigen/Core>

#include "netmend/isolation/short_priors.h"
#include "netmend/netgraph/copper_graph.h"

namespace netmend {

/// The graph with its areas taken apart into meshes, as far as they are drawn.
[[nodiscard]] CopperGraph withAreasResolved(const Board& board, CopperGraph graph);

/// How long a way is that nobody has seen: from end to end, at least what a landing takes.
[[nodiscard]] double wayMm(const CopperEdge& edge, Length usual);

/// A place along an edge of the graph.
struct AlongEdge {
  std::size_t edge = 0; ///< its index
  double share = 0.5;   ///< of the way from source to target
};

/// A resistance that is not certain. Of an unknown one `ohms` is the median; `spread` is one standard
/// deviation of its logarithm.
struct UncertainWire {
  std::size_t a = 0;
  std::size_t b = 0;
  double ohms = 0.0;
  double spread = 0.0;
  bool unseenWay = false; ///< shares a scale with all others of them
};

/// What is read at one point with the short at one place, in ohms, the short itself left out: the sum of
/// `copper`, which goes with the thickness of all copper, and of share × resistance of each unknown wire.
struct CopperResponse {
  double copper = 0.0;
  std::vector<std::pair<std::size_t, double>> unknown; ///< index of the wire, share
  Eigen::VectorXd own; ///< by known wire: one standard deviation of what its own error adds
};

/// A line's copper as a network of resistors, with potentials for a current between any two of some nodes.
class ShortNetwork {
public:
  /// `wanted`: nodes of the graph that current goes in, out, or is measured at.
  ShortNetwork(const CopperGraph& graph, const ShortPriors& priors, const std::vector<AlongEdge>& spots,
               const std::vector<NodeIndex>& wanted);

  [[nodiscard]] std::size_t nodeOf(NodeIndex node) const { return ofNode_[node]; }
  [[nodiscard]] std::size_t nodeOfSpot(std::size_t spot) const { return ofSpot_[spot]; }
  [[nodiscard]] const std::vector<UncertainWire>& unknown() const { return unknown_; }

  /// At `at` against `place`, for a current in at `into` and out at `place`. All are wanted nodes.
  [[nodiscard]] CopperResponse response(std::size_t at, std::size_t into, std::size_t place) const;
  /// The same at the medians: V/I.
  [[nodiscard]] double transfer(std::size_t at, std::size_t into, std::size_t place) const;
  /// Of all nodes at the medians.
  [[nodiscard]] Eigen::VectorXd pattern(std::size_t into, std::size_t place) const;

private:
  void addEdge(const CopperEdge& edge, std::size_t a, std::size_t b, const ShortPriors& priors, double part);
  void joinPieces(const ShortPriors& priors);
  void solve(const std::vector<std::size_t>& wanted);
  [[nodiscard]] double potential(std::size_t at, std::size_t source) const {
    return potentials_(row_[at], column_[source]);
  }

  struct Fixed {
    std::size_t a, b;
    double ohms;
  };
  struct Solver;
  std::shared_ptr<const Solver> solver_;
  std::vector<std::size_t> ofNode_;
  std::vector<std::size_t> ofSpot_;
  std::size_t nodes_ = 0;
  std::vector<Fixed> exact_;         ///< of meshes
  std::vector<UncertainWire> known_; ///< tracks, vias, resistors
  std::vector<UncertainWire> unknown_;
  std::vector<Eigen::Index> row_;
  std::vector<Eigen::Index> column_;
  Eigen::MatrixXd potentials_; ///< at the ends of what is not exact, and at wanted nodes, by source
};

} // namespace netmend
