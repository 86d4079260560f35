#pragma once

#include <cstddef>
#include <map>
#include <vector>

#include "circuit.h"
#include "line_cells.h"
#include "line_fragment.h"

/// Each class as circuits with unknowns.
namespace netmend {

/// Something that is not known, with its distribution before any reading.
struct LineUnknown {
  /// Of a drop: what share lies below each edge of the bins, edge by edge, by technology; then those of a
  /// high drop, and of none. Empty: a resistance, even in its logarithm between these:
  std::vector<float> below;
  std::vector<float> high;
  std::vector<float> none;
  double least = 0.0;
  double most = 0.0;

  [[nodiscard]] bool isDrop() const { return !below.empty(); }
};

/// The circuits that a class makes of the line.
struct ClassNetwork {
  std::vector<std::size_t> unknowns;  ///< into `LineNetworks::unknowns`; values come in this order
  std::vector<Circuit> circuits;      ///< each once
  std::vector<std::size_t> circuitAt; ///< [below·supers + super]
  std::vector<Circuit> good;          ///< the board before the fault, by known-good value
};

struct LineNetworks {
  std::vector<Technology> technologies;
  std::vector<LineUnknown> unknowns;
  std::vector<ClassNetwork> ofClass; ///< none of these: empty
};

struct NetworkRequest {
  const LineCells& cells;
  const std::vector<LinePin>& pins;
  const std::vector<FaultEffect>& effects;
  const std::vector<std::size_t>& goodSupers; ///< where a good board's value is known
  const FaultPriors& priors;
  const LineBench& bench;
};
[[nodiscard]] LineNetworks lineNetworks(const NetworkRequest& request);

} // namespace netmend
