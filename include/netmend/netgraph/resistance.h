#pragma once

#include <cstddef>
#include <vector>

#include "netmend/netgraph/copper_graph.h"

namespace netmend {

/// Resistivity of annealed copper at 20 °C, 1/58 Ω·mm²/m (IEC 60028:1925), in Ω·m.
inline constexpr double copperResistivity = 1e-6 / 58.0;
/// Temperature coefficient at 20 °C, 1/K (IEC 60028:1925).
inline constexpr double copperTemperatureCoefficient = 0.00393;
/// Where the board does not say: foil of one ounce a square foot, and a plated barrel (common practice, no
/// source), board of 1.6 mm.
inline constexpr Length usualCopperThickness{35'000};
inline constexpr Length usualPlating{20'000};
inline constexpr Length usualBoardThickness{1'600'000};

/// A copper resistance known at 20 °C, at another temperature: R·(1 + α·(T − 20 °C)) (IEC 60028:1925).
[[nodiscard]] Ohms atTemperature(Ohms at20, Celsius temperature);

/// R = ρ·L/(w·t) at the given temperature; infinite when there is no cross-section.
[[nodiscard]] Ohms trackResistance(Length length, Length width, Length thickness,
                                   Celsius temperature = Celsius(20));

/// Resistance of a square of foil, ρ/t: 0.4926 mΩ for 35 µm.
[[nodiscard]] Ohms sheetResistance(Length thickness, Celsius temperature = Celsius(20));

/// Barrel of a plated hole: annulus of `plating` around the finished hole `drill`, π·p·(d + p), over
/// `height`; infinite without plating.
[[nodiscard]] Ohms viaResistance(Length drill, Length plating, Length height,
                                 Celsius temperature = Celsius(20));

/// A resistor of a network between two of its nodes, numbered from 0. Not negative; infinite is no
/// connection.
struct Resistor {
  std::size_t a;
  std::size_t b;
  Ohms value;
};

/// Resistance between two nodes of a network (sparse Cholesky of the Laplacian of the piece they are in).
/// Infinite when they do not hang together. Resistances of zero are joined first.
/// Throws std::invalid_argument on a resistance that is negative or not a number.
[[nodiscard]] Ohms effectiveResistance(const std::vector<Resistor>& network, std::size_t from,
                                       std::size_t to);

/// The same along copper; edges of unknown resistance count as `unknown`.
[[nodiscard]] Ohms effectiveResistance(const CopperGraph& graph, NodeIndex from, NodeIndex to,
                                       Ohms unknown = Ohms(0));

} // namespace netmend
