#pragma once

#include "netmend/board/exchange/import.h"

namespace netmend {

/// Its first row names the columns `part` and `pin`.
[[nodiscard]] bool looksLikePinTable(std::string_view content);

/// A table of pins, `part,pin[,net[,x_mm,y_mm,side]]`; see docs/formats/csv.md.
[[nodiscard]] Result<Imported> readPinTable(const ImportSource& source);

} // namespace netmend
