#pragma once

#include <string>
#include <string_view>

#include "netmend/base/error.h"
#include "netmend/probing/walk.h"

namespace netmend::probing {

/// A walk written as a table; docs/formats/walk.md.
[[nodiscard]] Result<Walk> walkFromTable(std::string_view text, const std::string& file);

} // namespace netmend::probing
