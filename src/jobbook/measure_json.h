#pragma once

#include <optional>
#include <string>

#include "netmend/jobbook/job.h"

namespace netmend {

/// What a check wants measured, as the book keeps it beside its step. Nothing: empty.
[[nodiscard]] std::string measureText(const std::optional<StepMeasure>& measure);
/// Throws what nlohmann_json or SOCI throw for a damaged entry.
[[nodiscard]] std::optional<StepMeasure> measureFrom(const std::string& text);

/// Places, likewise. None: empty.
[[nodiscard]] std::string pointsText(const std::vector<ProbePoint>& points);
[[nodiscard]] std::vector<ProbePoint> pointsFrom(const std::string& text);

/// What a check read, likewise.
[[nodiscard]] std::string checkReadText(const std::optional<CheckRead>& read);
[[nodiscard]] std::optional<CheckRead> checkReadFrom(const std::string& text);

} // namespace netmend
