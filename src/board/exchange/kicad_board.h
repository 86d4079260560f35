#pragma once

#include "netmend/board/exchange/import.h"

namespace netmend {

[[nodiscard]] bool looksLikeKicadBoard(std::string_view content);

/// A board file of the CAD suite, version 3 on; see docs/formats/kicad.md for what is read.
[[nodiscard]] Result<Imported> readKicadBoard(const ImportSource& source);

} // namespace netmend
