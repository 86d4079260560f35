#pragma once

#include "netmend/board/exchange/import.h"

namespace netmend {

/// Above any board, below what would eat the memory.
inline constexpr std::size_t mostTableBytes = 64u << 20;
inline constexpr std::size_t mostTablePins = 200'000;

[[nodiscard]] Error tableTooLarge(const std::string& file, std::uintmax_t bytes);

/// Its first row names the columns `part` and `pin`.
[[nodiscard]] bool looksLikePinTable(std::string_view content);

/// A table of pins, `part,pin[,net[,x_mm,y_mm,side]]`; see docs/formats/csv.md.
/// Refused as soon as it is longer than the limits above.
[[nodiscard]] Result<Imported> readPinTable(const ImportSource& source);

} // namespace netmend
