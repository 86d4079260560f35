#pragma once

#include <cstddef>
#include <vector>

#include "netmend/base/quantity.h"
#include "netmend/probing/meter_model.h"

/// What a meter meets on a small direct-current network of junctions and resistors.
namespace netmend {

/// The bench temperature at which expected values are kept (netmend/probing/comparison.h).
inline constexpr Celsius benchTemperature{25.0};

using Siemens = Quantity<struct SiemensTag>;

/// A network whose ground, where the meter's other lead is, is no node of it.
struct TestNetwork {
  struct Series {
    std::size_t a;
    std::size_t b;
    Ohms resistance; ///< above zero
  };
  struct Load {
    std::size_t node;
    Ohms resistance; ///< to ground, above zero
  };
  struct Clamp {
    std::size_t node;
    Junction junction; ///< to ground
  };
  std::size_t nodes = 0;
  std::vector<Series> series{};
  std::vector<Load> loads{};
  std::vector<Clamp> clamps{};
};

/// Node voltages with the meter at `probe`; every node also has `leak` to ground, so that a node without a
/// path has a voltage. The solution is the minimum of the co-content (W. Millar, "Some general theorems for
/// non-linear systems possessing resistance", Phil. Mag. 42, 1951; cited from memory), which is strictly
/// convex here, since every current grows with its voltage; damped Newton with a decrease of it in every step
/// (Armijo) therefore always converges.
[[nodiscard]] std::vector<Volts> operatingPoint(const TestNetwork& network, std::size_t probe,
                                                const MeterSource& meter, Celsius temperature,
                                                Ohms leak = Ohms(1e12));

/// `area` times a junction: that many equal ones in parallel.
[[nodiscard]] Junction scaled(const Junction& junction, double area);

/// The voltage where everything hangs on one node: `area` junctions and a load. `saturation` and `thermal`
/// are those of one junction at the temperature in question, so that thousands of points cost one logarithm a
/// step.
struct NodeLoad {
  double area = 0.0;
  Siemens load;
};
struct JunctionAt {
  Amperes saturation;
  Volts slope; ///< n·k·T/q
  Ohms series;
};
[[nodiscard]] JunctionAt junctionAt(const Junction& junction, Celsius temperature);
[[nodiscard]] Volts operatingPoint(const JunctionAt& junction, const NodeLoad& node,
                                   const MeterSource& meter);

} // namespace netmend
