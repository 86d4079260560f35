#pragma once

#include <optional>
#include <string>

#include "netmend/jumper/work_steps.h"

namespace netmend {

/// What a check wants measured, as the book keeps it beside its step. Nothing: empty.
[[nodiscard]] std::string measureText(const std::optional<StepMeasure>& measure);
/// Throws what nlohmann_json or SOCI throw for a damaged entry.
[[nodiscard]] std::optional<StepMeasure> measureFrom(const std::string& text);

} // namespace netmend
