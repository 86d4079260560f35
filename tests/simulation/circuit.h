#pragma once

#include <cstddef>
#include <vector>

/// The simulator's own circuits: resistors, junctions and a meter, solved for their operating point. Figures
/// are in SI units; a test checks them against ngspice.
namespace netmend::simulation {

/// A junction by what a meter shows of it: its drop at a milliampere and 25 °C.
struct Junction {
  double drop = 0.6; ///< V
  double emission = 1.2;
  double series = 10.0; ///< Ω
  double gap = 1.11;    ///< V
  friend bool operator==(const Junction&, const Junction&) = default;
};

/// The same at a temperature: I = Is·(exp((V − I·Rs)/(n·Vt)) − 1).
struct JunctionLaw {
  double saturation = 0.0; ///< A
  double slope = 0.0;      ///< n·Vt, V
  double series = 0.0;     ///< Ω
};
/// Saturation moves with temperature as in SPICE (XTI 3): Is·(T/T0)^(XTI/n)·exp((T/T0 − 1)·Eg/(n·Vt)).
[[nodiscard]] JunctionLaw lawAt(const Junction& junction, double celsius);
/// Current at a voltage across junction and series resistance, and its slope (A/V).
struct JunctionFlow {
  double amperes = 0.0;
  double slope = 0.0;
  double content = 0.0; ///< integral of the current over the voltage, W
};
[[nodiscard]] JunctionFlow flowThrough(const JunctionLaw& law, double volts);

/// What a meter feeds: I = min(test current, (open voltage − V)/output resistance), beside its input
/// resistance.
struct Source {
  double testCurrent = 1e-3;
  double openVolts = 3.0;
  double outputOhms = 500.0;
  double inputOhms = 10e6;
};

/// Nodes are numbered from 0, which is ground.
struct Circuit {
  struct Resistor {
    std::size_t a = 0, b = 0;
    double ohms = 1.0;
  };
  struct Diode {
    std::size_t anode = 0, cathode = 0;
    JunctionLaw law;
  };
  /// A cell with its resistance: drives towards `a`.
  struct Cell {
    std::size_t a = 0, b = 0;
    double volts = 0.0, ohms = 1.0;
  };
  std::size_t nodes = 1;
  std::vector<Resistor> resistors;
  std::vector<Diode> diodes;
  std::vector<Cell> cells;
};

/// Leak to ground of every node, so that none hangs in the air.
inline constexpr double nodeLeakOhms = 1e12;

/// Voltages of all nodes against `black`, with the meter's current into `red`. Newton on the co-content,
/// which is strictly convex, with a decrease in each step.
[[nodiscard]] std::vector<double> operatingPoint(const Circuit& circuit, const Source& meter, std::size_t red,
                                                 std::size_t black = 0);
/// What flows out of the meter at this voltage.
[[nodiscard]] double meterCurrent(const Source& meter, double volts);

} // namespace netmend::simulation
