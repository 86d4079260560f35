#pragma once

#include <string>
#include <string_view>

#include "netmend/board/exchange/import.h"

/// Questions to the table of formats.
namespace netmend {

/// The format whose content this is; null: none.
[[nodiscard]] const BoardFormat* formatByContent(std::string_view content);

/// With its point, in lower case; empty: none.
[[nodiscard]] std::string lastExtension(const std::string& file);

/// Whether a file of this name may be a board.
[[nodiscard]] bool hasBoardExtension(const std::string& file);

} // namespace netmend
