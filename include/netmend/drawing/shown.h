#pragma once

#include <QString>

#include "netmend/base/error.h"

namespace netmend {

/// What is said, in the language that the program has been set to; English where none is set, or where it
/// lacks the pattern.
[[nodiscard]] QString shown(const Said& said);
[[nodiscard]] QString shown(const Error& error);

} // namespace netmend
