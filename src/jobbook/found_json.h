#pragma once

#include <optional>
#include <string>

#include "netmend/jobbook/job.h"

namespace netmend {

/// What was found of a suspect, as the book keeps it: all but its share, place and way, which have columns.
[[nodiscard]] std::string suspectText(const JobSuspect& suspect);
/// Fills these in. Throws what nlohmann_json or SOCI throw for a damaged entry.
void readSuspect(const std::string& text, JobSuspect& suspect);

/// The fault that a repair is to mend. None: empty.
[[nodiscard]] std::string foundFaultText(const std::optional<FoundFault>& fault);
[[nodiscard]] std::optional<FoundFault> foundFaultFrom(const std::string& text);

} // namespace netmend
