#pragma once

#include <optional>

#include "netmend/base/quantity.h"
#include "netmend/probing/meter.h"

/// What a meter does to a circuit and what a junction answers. Formulas in docs/methods/probing.md.
namespace netmend {

/// Boltzmann constant over elementary charge, V/K (exact since the SI of 2019; CODATA 2018).
inline constexpr double boltzmannOverCharge = 1.380649e-23 / 1.602176634e-19;

/// kT/q: 25.85 mV at 300 K.
[[nodiscard]] Volts thermalVoltage(Celsius temperature);

/// A meter as a source: it feeds I = min(testCurrent, (openCircuit − V)/outputResistance), with its own
/// input resistance across the leads, so that an open node has an operating point.
struct MeterSource {
  Amperes testCurrent{1e-3};
  Volts openCircuit{3.0};
  Ohms outputResistance{500.0};
  Ohms inputResistance{10e6};
  Ohms leadResistance{0.0};
  Volts displayLimit{2.0}; ///< above: OL
};

/// The source that a meter is in diode or ohms mode; nothing for modes that feed no current. The output
/// resistance is not in a meter's data: it is taken such that the source still feeds its full current at
/// its display limit.
[[nodiscard]] std::optional<MeterSource> meterSource(const MeterProfile& meter, ReadingMode mode);

/// Current that the meter feeds into a node at `voltage`, less what its own input resistance takes.
[[nodiscard]] Amperes sourceCurrent(const MeterSource& source, Volts voltage);
/// dI/dV of the same, in siemens; never positive.
[[nodiscard]] double sourceSlope(const MeterSource& source, Volts voltage);

/// A p-n junction: I = Is·(exp((V − I·Rs)/(n·Vt)) − 1), forward current positive. `saturation` holds at 27 °C
/// and follows temperature as Is·(T/Tn)^(xti/n)·exp(Eg/(n·Vt)·(T/Tn − 1)).
struct Junction {
  Amperes saturation{1e-14};
  double ideality = 1.0;
  Ohms series{0.0};
  Volts bandGap{1.11};
  double xti = 3.0;
};

[[nodiscard]] Amperes saturationCurrent(const Junction& junction, Celsius temperature);

struct CurrentAndSlope {
  Amperes current;
  double slope = 0.0; ///< dI/dV, siemens
};
/// The current at this voltage, with series resistance by the Lambert W function (Boost.Math).
[[nodiscard]] CurrentAndSlope junctionCurrent(const Junction& junction, Volts voltage, Celsius temperature);

/// How a junction's forward drop moves with temperature at constant current, V/K, from the model:
/// (V − Eg − xti·Vt)/T, with V the drop less I·Rs.
[[nodiscard]] double junctionTemperatureSlope(Volts drop, Celsius temperature, Volts bandGap = Volts(1.11),
                                              double xti = 3.0);

} // namespace netmend
