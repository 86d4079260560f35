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

/// How the picture of the board lies that the window shows beside its text; none: no picture is seen. The
/// window sets it, as it sets the language, and then has its pages say their places again.
void setPictureBeside(const std::optional<PictureLie>& picture);
/// `shown`, with right and left as they are in the picture beside it.
[[nodiscard]] QString besidePicture(const Said& said);

} // namespace netmend
