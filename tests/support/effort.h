#pragma once

#include <algorithm>
#include <cstddef>

namespace netmend {

/// Whether this is a build with AddressSanitizer and UndefinedBehaviorSanitizer, in which every step takes
/// ten to thirty times as long. Times say nothing there: tests print them and do not judge them.
#ifdef NETMEND_SANITIZED
inline constexpr bool sanitized = true;
#else
inline constexpr bool sanitized = false;
#endif

/// How often a test throws its dice: `full` times, or under the sanitizers a twentieth of that but `atLeast`
/// times, so that every kind of input still comes up. What the sanitizers find, they find in the kinds and
/// not in the thousands.
[[nodiscard]] constexpr int rounds(int full, int atLeast = 1) {
  return sanitized ? std::max(atLeast, full / 20) : full;
}

/// The step of a loop over every place of an input: 1, or under the sanitizers `sparse`. Best a prime, so
/// that it does not keep in step with the input's own pattern.
[[nodiscard]] constexpr std::size_t everyPlace(std::size_t sparse) {
  return sanitized ? sparse : 1;
}

} // namespace netmend
