#pragma once

#include <span>

namespace netmend {

/// What people read of the files in data/ as it comes with the program, for lupdate to find. A shop's own
/// texts are shown as it wrote them.
[[nodiscard]] std::span<const char* const> dataTexts();

} // namespace netmend
