#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "netmend/base/error.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// A value as somebody typed or a meter sent it, in the mode's SI unit; empty is OL.
struct EnteredValue {
  std::optional<double> value;
  friend bool operator==(const EnteredValue&, const EnteredValue&) = default;
};

/// Reads `0.452`, `.45`, `0,452`, `452m`, `452 mV`, `4.7k`, `4k7`, `12 Ω`, `OL`; upper or lower case (except
/// that `m` is milli and `M` mega), points and commas alike. In diode modes a bare whole number is in
/// millivolts: `452` is 0.452 V, and `2` is 0.002 V, as a short reads; with a point it is volts. In milliohms
/// mode a bare number is in milliohms. Errors: not a number, a unit of another mode, a value no meter shows
/// in that mode.
[[nodiscard]] Result<EnteredValue> parseReadingValue(std::string_view text, ReadingMode mode);

/// The value that `readingText` shows, with as many digits: what is said of it agrees with what is read.
[[nodiscard]] double asShown(double value, ReadingMode mode);

/// As people read it: `0.452 V`, `3 mV`, `4.70 kΩ`, `25.0 °C`, `OL`.
[[nodiscard]] std::string readingText(std::optional<double> value, ReadingMode mode);

} // namespace netmend
