#pragma once

#include <optional>
#include <string_view>

#include "netmend/probing/reading.h"

/// The words of readings as they stand in files, window and sheet.
namespace netmend {

/// `diode`, `diode reversed`, `ohms`, `milliohms`, `continuity`, `volts`, `drop under current`,
/// `temperature`.
[[nodiscard]] std::string_view word(ReadingMode mode);
[[nodiscard]] std::optional<ReadingMode> readingModeFrom(std::string_view word);
/// `settled`, `rising`, `unknown`.
[[nodiscard]] std::string_view word(Settling settling);
[[nodiscard]] std::optional<Settling> settlingFrom(std::string_view word);
/// `V`, `Ω` or `°C`.
[[nodiscard]] std::string_view unitOf(ReadingMode mode);

} // namespace netmend
