#include "netmend/probing/comparison.h"

#include <algorithm>
#include <cmath>

#include "netmend/probing/meter_model.h"
#include "netmend/probing/reading_entry.h"

namespace netmend {

namespace {

/// Where comparing by difference turns into comparing by ratio; 0: always by difference.
double turn(ReadingMode mode) {
  switch (mode) {
  case ReadingMode::ohms:
  case ReadingMode::continuity:
    return 1.0; // Ω: about what leads and contacts add
  case ReadingMode::milliohms:
  case ReadingMode::dropUnderCurrent:
    return 0.001;
  case ReadingMode::volts:
    return 0.1;
  default:
    return 0.0;
  }
}

} // namespace

double toComparison(ReadingMode mode, double value) {
  const double t = turn(mode);
  return t > 0.0 ? std::asinh(value / t) : value;
}

double fromComparison(ReadingMode mode, double value) {
  const double t = turn(mode);
  return t > 0.0 ? t * std::sinh(value) : value;
}

double comparisonSlope(ReadingMode mode, double value) {
  const double t = turn(mode);
  return t > 0.0 ? 1.0 / std::hypot(value, t) : 1.0;
}

std::optional<double> valueAtBenchTemperature(const Reading& reading) {
  if (!reading.value) return std::nullopt;
  const bool diode = reading.mode == ReadingMode::diode || reading.mode == ReadingMode::diodeReverse;
  if (!diode || !reading.condition.temperature) return reading.value;
  constexpr Celsius bench(25.0);
  const double drop = *reading.value;
  const double share = std::clamp((drop - 0.1) / 0.2, 0.0, 1.0);
  const double slope = junctionTemperatureSlope(Volts(drop), *reading.condition.temperature);
  return drop + share * slope * (bench - *reading.condition.temperature).value;
}

} // namespace netmend
