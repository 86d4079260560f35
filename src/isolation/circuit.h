#pragma once

#include <cstddef>
#include <limits>
#include <memory>
#include <vector>

#include <boost/container/small_vector.hpp>

#include "drop_density.h"
#include "netmend/probing/meter_model.h"

/// What a lead meets on a piece of the line, as a function of what is not known of it.
namespace netmend {

/// Values of what is not known: forward drops in V (infinite: no junction), and
/// logarithms of resistances in Ω.
using UnknownValues = boost::container::small_vector<double, 8>;
inline constexpr double noDrop = std::numeric_limits<double>::infinity();
inline constexpr std::size_t noUnknown = std::numeric_limits<std::size_t>::max();

/// Nodes joined by resistances as a tree; the lead is held at node 0, its other end is ground.
struct Circuit {
  struct Node {
    std::vector<std::size_t> drops; ///< unknowns: junctions to ground
    double siemens = 0.0;           ///< known loads to ground
    std::size_t leak = noUnknown;   ///< unknown: a resistance to ground
  };
  struct Link {
    std::size_t a = 0;
    std::size_t b = 0;
    double ohms = 0.0;
    std::size_t unknown = noUnknown; ///< a resistance on top of `ohms`
  };
  std::vector<Node> nodes{1};
  std::vector<Link> links;
  /// Volts under the source at which drops are given, where one number decides: for a node with a load by its
  /// drop; for two nodes without loads, above the drop at node 0, by how much higher the other one is.
  std::shared_ptr<const std::vector<double>> table;
};

/// A source, and what all junctions of a line have in common.
struct LineBench {
  MeterSource source;
  Amperes reference;  ///< at which forward drops are given
  double slope = 0.0; ///< n·k·T/q, V
  Ohms series;        ///< of a junction; its drop at the test current is part of the forward drop
  SoftMinimum softMinimum;
};

/// Volts at node 0; infinite where nothing carries the current. Grows with each unknown, but for a drop or
/// leak behind a growing resistance between nodes, whose reading grows with it too.
/// Its table, if it can have one: a look at it costs a twentieth of solving the circuit.
[[nodiscard]] std::shared_ptr<const std::vector<double>> circuitTable(const Circuit& circuit,
                                                                      const LineBench& bench);

[[nodiscard]] double voltsAt(const Circuit& circuit, const UnknownValues& values, const LineBench& bench);

} // namespace netmend
