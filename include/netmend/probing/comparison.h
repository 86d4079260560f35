#pragma once

#include <optional>
#include <string>

#include "netmend/probing/reading.h"

/// Readings are compared on a scale on which good boards spread alike: volts of a junction and degrees as
/// they are, resistances and rail voltages by ratio, which near zero turns into a difference: x →
/// asinh(x/x0).
namespace netmend {

[[nodiscard]] double toComparison(ReadingMode mode, double value);
[[nodiscard]] double fromComparison(ReadingMode mode, double value);
/// d(comparison)/d(value): what turns an uncertainty of the reading into one on the scale.
[[nodiscard]] double comparisonSlope(ReadingMode mode, double value);

/// The value that the reading would have at 25 °C: a diode drop moves with temperature as its junction does
/// (meter_model.h), below 0.1 V not at all, with a smooth way between. Other modes, and readings whose
/// temperature is unknown, stay.
[[nodiscard]] std::optional<double> valueAtBenchTemperature(const Reading& reading);

} // namespace netmend
