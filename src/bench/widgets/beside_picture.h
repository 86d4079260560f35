#pragma once

#include <optional>

#include <QString>

#include "netmend/base/said.h"

namespace netmend {

/// How the picture of the board lies that the window shows beside its text; none: no picture is seen. The
/// window sets it, as it sets the language, and then has its pages say their places again.
void setPictureBeside(const std::optional<PictureLie>& picture);

/// `shown`, with right and left as they are in the picture beside it.
[[nodiscard]] QString besidePicture(const Said& said);

} // namespace netmend
