#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "netmend/base/time.h"

namespace netmend::probing {

/// `2026-03-01T09:30:00.000Z` (ISO 8601, UTC).
[[nodiscard]] std::string timeText(Time time);
/// The same, milliseconds optional. Nothing for anything else.
[[nodiscard]] std::optional<Time> timeFrom(std::string_view text);

} // namespace netmend::probing
