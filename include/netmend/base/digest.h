#pragma once

#include <string>
#include <string_view>

namespace netmend {

/// SHA-256 (FIPS 180-4) of these bytes, as 64 lower-case hexadecimal digits.
[[nodiscard]] std::string sha256(std::string_view bytes);

} // namespace netmend
