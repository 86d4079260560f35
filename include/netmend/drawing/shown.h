#pragma once

#include <string>
#include <string_view>

#include <QString>

#include "netmend/base/error.h"

namespace netmend {

/// What is said, in the language that the program has been set to; English where none is set, or where it
/// lacks the pattern.
[[nodiscard]] QString shown(const Said& said);
[[nodiscard]] QString shown(const Error& error);

/// What the core still says in text of its own (a word of an enumeration, a step) in the language that the
/// program has been set to. Files, job book and command line keep the English.
[[nodiscard]] QString shown(std::string_view english);
[[nodiscard]] inline QString shown(const std::string& english) {
  return shown(std::string_view(english));
}
[[nodiscard]] inline QString shown(const char* english) {
  return shown(std::string_view(english));
}

} // namespace netmend
