#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"

namespace netmend {

struct CsvRow {
  std::vector<std::string> cells; ///< without quotes; blanks around unquoted cells are dropped
  std::size_t line = 0;           ///< where it begins
};

struct CsvTable {
  std::vector<CsvRow> rows; ///< rows without any text are left out
  char separator = ',';
};

/// Splits by RFC 4180, with LF, CRLF or CR between rows. The separator is a semicolon or tab when the
/// first row has more of these than commas.
[[nodiscard]] Result<CsvTable> csvRows(std::string_view content, const std::string& file);

} // namespace netmend
