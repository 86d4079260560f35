#pragma once

#include "netmend/base/said.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// `diode`, `ohms` …
[[nodiscard]] Said nameOf(ReadingMode mode);

} // namespace netmend
