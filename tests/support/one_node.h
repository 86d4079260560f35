#pragma once

#include <boost/math/tools/toms748_solve.hpp>

#include <cmath>
#include <optional>
#include <span>

#include "netmend/probing/meter_model.h"

/// The meter's and the junctions' model where all hang on one node, solved by bisection: slow and plain, to
/// hold the model against other people's figures.
namespace netmend::test {

/// The voltage at which it takes this current; the current must be above −Is.
inline Volts junctionVoltage(const Junction& junction, Amperes current, Celsius temperature) {
  const double nvt = junction.ideality * thermalVoltage(temperature).value;
  const double is = saturationCurrent(junction, temperature).value;
  return Volts(nvt * std::log1p(current.value / is)) + current * junction.series;
}

/// What the meter shows across junctions and resistors that all sit between its leads. Empty: OL.
inline std::optional<Volts> shownAcross(const MeterSource& source, std::span<const Junction> junctions,
                                        std::span<const Ohms> resistors, Celsius temperature) {
  double conductance = 0.0;
  for (const Ohms r : resistors) {
    if (r.value <= 0.0) return source.testCurrent * source.leadResistance;
    conductance += 1.0 / r.value;
  }
  const auto balance = [&](double v) {
    double i = sourceCurrent(source, Volts(v)).value - conductance * v;
    for (const auto& j : junctions)
      i -= junctionCurrent(j, Volts(v), temperature).current.value;
    return i;
  };
  // At 0 V the source feeds its full current into nothing; at its open-circuit voltage it feeds none.
  std::uintmax_t iterations = 200;
  const auto close = [](double a, double b) { return std::abs(a - b) <= 1e-12; };
  const auto [low, high] =
      boost::math::tools::toms748_solve(balance, 0.0, source.openCircuit.value, close, iterations);
  const Volts across((low + high) / 2.0);
  // The leads' own drop is part of what the meter sees.
  const Amperes fed = std::min(source.testCurrent, (source.openCircuit - across) / source.outputResistance);
  const Volts shown = across + fed * source.leadResistance;
  if (shown > source.displayLimit) return std::nullopt;
  return shown;
}

} // namespace netmend::test
