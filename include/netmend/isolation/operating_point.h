#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "netmend/base/quantity.h"

/// What a meter reads on a small direct-current network of junctions and resistors.
namespace netmend {

using Siemens = Quantity<struct SiemensTag>;

/// k·T/q at 300 K (CODATA 2018: k = 1.380649e-23 J/K, q = 1.602176634e-19 C).
inline constexpr Volts thermalVoltage300K{0.025851999786};

/// I = Is·(exp((V − I·Rs)/(n·Vt)) − 1), from a node to ground.
struct JunctionModel {
  Amperes saturation{1e-14};
  double emission = 1.0;
  Ohms series{0.0};
  Volts thermal = thermalVoltage300K;
};

/// The current at this voltage: Newton in u = (V − I·Rs)/(n·Vt) from above, where the function is convex and
/// increasing, so that each step comes down towards the root and none goes past it.
[[nodiscard]] Amperes junctionCurrent(const JunctionModel& junction, Volts voltage);
/// The voltage at this current; closed form. The current must be above −Is.
[[nodiscard]] Volts junctionVoltage(const JunctionModel& junction, Amperes current);

/// The meter as a source: I = min(test current, (open-circuit voltage − V)/output resistance), less what its
/// own input resistance takes.
struct MeterDrive {
  Amperes testCurrent{1e-3};
  Volts openCircuit{3.2};
  Ohms outputResistance{100.0};
  Ohms inputResistance{1e7};
};
[[nodiscard]] Amperes driveCurrent(const MeterDrive& meter, Volts voltage);

/// A network whose ground is no node of it.
struct TestNetwork {
  struct Series {
    std::size_t a;
    std::size_t b;
    Ohms resistance;
  };
  struct Load {
    std::size_t node;
    Ohms resistance; ///< to ground
  };
  struct Clamp {
    std::size_t node;
    JunctionModel junction; ///< to ground
  };
  std::size_t nodes = 0;
  std::vector<Series> series; ///< resistances must be above zero
  std::vector<Load> loads;
  std::vector<Clamp> clamps;
};

/// Node voltages with the meter at `probe`; every node also has `leak` to ground, so that a node without a
/// path has a voltage. The solution is the minimum of the co-content (Millar, "Some general theorems for
/// non-linear systems possessing resistance", Phil. Mag. 42, 1951), a strictly convex function; damped Newton
/// with a decrease of it in every step (Armijo) therefore always converges.
[[nodiscard]] std::vector<Volts> operatingPoint(const TestNetwork& network, std::size_t probe,
                                                const MeterDrive& meter, Ohms leak = Ohms(1e12));

/// The same where everything hangs on one node: parallel junctions of one kind are one of their total area.
/// `area` multiplies the junction's saturation current and divides its series resistance.
[[nodiscard]] Volts operatingPoint(const JunctionModel& junction, double area, Siemens load,
                                   const MeterDrive& meter);

} // namespace netmend
