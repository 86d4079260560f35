#pragma once

#include <string_view>

namespace netmend::probing {

/// Well-formed UTF-8 without control characters other than the tab.
[[nodiscard]] bool isPlainText(std::string_view text);

} // namespace netmend::probing
