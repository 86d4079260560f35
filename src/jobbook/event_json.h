#pragma once

#include <string>

#include "netmend/base/words.h"
#include "netmend/jobbook/job_book.h"

namespace netmend {

/// Also the names of their tables.
inline constexpr std::array<Word<JobEvent::Entry>, 4> entryWords{
    {{JobEvent::Entry::reading, "reading"},
     {JobEvent::Entry::repairAction, "repair_action"},
     {JobEvent::Entry::photo, "photo"},
     {JobEvent::Entry::charge, "charge"}}};

/// What happened, without its time; empty: as it is written in a book of an older version.
[[nodiscard]] std::string eventText(const JobEvent& event);
/// Throws what nlohmann_json or SOCI throw for a damaged entry.
[[nodiscard]] JobEvent eventFrom(const std::string& text);

} // namespace netmend
