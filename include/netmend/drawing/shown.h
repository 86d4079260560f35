#pragma once

#include <optional>

#include <QString>

#include "netmend/base/error.h"

namespace netmend {

/// What is said, in the language that the program has been set to; English where none is set, or where it
/// lacks the pattern.
/// `picture`: the one that it stands beside.
[[nodiscard]] QString shown(const Said& said, const std::optional<PictureLie>& picture = {});
[[nodiscard]] QString shown(const Error& error);

} // namespace netmend
