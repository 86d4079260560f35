#pragma once

#include <string>

#include "netmend/jobbook/job.h"

/// What books up to version 3 kept in words, read once, when such a book is brought up to date. This is how
/// those versions wrote; it does not change with what the program says today.
namespace netmend::oldbook {

/// `verdict`: "open", "in range" …; `expected`: "OL", "0.441 V to 0.465 V", several joined by " or ". Not
/// judged, or not known: none.
[[nodiscard]] std::optional<Judged> judgedOf(const std::string& verdict, const std::string& expected,
                                             ReadingMode mode);

} // namespace netmend::oldbook
