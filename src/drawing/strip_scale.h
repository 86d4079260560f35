#pragma once

#include <vector>

#include <QString>

#include "netmend/drawing/pin_strip.h"

namespace netmend {

struct StripTick {
  double value;
  QString text;
};

/// Where a value stands between bottom (0) and top (1): evenly for volts and temperatures, by decades
/// for resistances.
struct StripScale {
  double low = 0.0;
  double high = 1.0;
  bool decades = false;
  std::vector<StripTick> ticks;

  /// Clamped to 0 … 1.
  [[nodiscard]] double share(double value) const;
};

/// Takes in all readings and expected values of the strip, with round ends.
[[nodiscard]] StripScale stripScale(const PinStrip& strip);

} // namespace netmend
