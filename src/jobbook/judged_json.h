#pragma once

#include <string>

#include "netmend/jobbook/job.h"

namespace netmend {

/// A verdict and what it rests on, as the book keeps it beside its reading. Not judged: empty.
[[nodiscard]] std::string judgedText(const std::optional<Judged>& judged);
/// Throws what nlohmann_json or SOCI throw for a damaged entry.
[[nodiscard]] std::optional<Judged> judgedFrom(const std::string& text);

} // namespace netmend
