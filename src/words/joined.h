#pragma once

#include <vector>

#include "netmend/base/said.h"

namespace netmend {

/// Sentences that stand beside each other: "a; b; c". Empty ones are left out.
[[nodiscard]] Said joined(const std::vector<Said>& sentences);

} // namespace netmend
