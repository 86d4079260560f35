#pragma once

#include <nlohmann/json.hpp>

#include "netmend/base/error.h"

namespace netmend {

/// Turns a document of version `from` step by step into one of `boardFileVersion`. What an old version
/// does not allow is an error, and so is what cannot be carried over.
[[nodiscard]] Result<void> upgradeBoardDocument(nlohmann::json& document, int from);

} // namespace netmend
