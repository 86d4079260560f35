#pragma once

#include <vector>

#include "netmend/netgraph/copper_graph.h"

namespace netmend {

/// Resistivity of annealed copper at 20 °C, 1/58 Ω·mm²/m (IEC 60028:1925), in Ω·m.
inline constexpr double copperResistivity = 1e-6 / 58.0;
/// Temperature coefficient at 20 °C, 1/K (IEC 60028:1925).
inline constexpr double copperTemperatureCoefficient = 0.00393;

/// R = ρ·L/(w·t) at the given temperature.
[[nodiscard]] Ohms trackResistance(Length length, Length width, Length thickness,
                                   Celsius temperature = Celsius(20));

/// Barrel of a plated hole: annulus of `plating` around the drill, over `height`.
[[nodiscard]] Ohms viaResistance(Length drill, Length plating, Length height,
                                 Celsius temperature = Celsius(20));

/// A resistor of a network between two of its nodes, numbered from 0.
struct Resistor {
  std::size_t a;
  std::size_t b;
  Ohms value;
};

/// Resistance between two nodes of a network (sparse Cholesky of the Laplacian). Infinite when they do not
/// hang together. Resistances of zero are joined first.
[[nodiscard]] Ohms effectiveResistance(const std::vector<Resistor>& network, std::size_t from,
                                       std::size_t to);

/// The same along copper; edges of unknown resistance count as `unknown`.
[[nodiscard]] Ohms effectiveResistance(const CopperGraph& graph, NodeIndex from, NodeIndex to,
                                       Ohms unknown = Ohms(0));

} // namespace netmend
