#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace netmend {

enum class ValueUnit { none, ohm, farad, henry, volt, ampere, hertz };

/// A part's value as a number in its SI unit. `unit` is none when the text does not say.
struct PartValue {
  double magnitude = 0.0;
  ValueUnit unit = ValueUnit::none;
};

/// Reads `4k7`, `0R`, `0R05`, `100n`, `10uF`, `2u2`, `4.7 kΩ`, `33`, `1M`, `16 MHz`; letter-for-point
/// notation as in IEC 60062. Text after the value, separated by space, slash, comma or ±, is ignored
/// (`100n/16V`), and so is a tolerance letter (`4K7J`). `R` says ohm; a bare multiplier (`4k7`, `100n`)
/// says no unit: that is for the part's kind to say. `K` is kilo, `M` mega, `m` milli; a comma between
/// digits is a decimal point. Nothing for text that is no value (`TL072`, `1N4148`).
[[nodiscard]] std::optional<PartValue> parsePartValue(std::string_view text);

} // namespace netmend
