#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"

namespace netmend {

struct CsvRow {
  std::vector<std::string> cells; ///< without quotes; blanks around unquoted cells are dropped
  std::size_t line = 0;           ///< where it begins
};

/// Gives the rows of a table one after the other, split by RFC 4180, with LF, CRLF or CR between them. The
/// separator is a semicolon or tab when the first row has more of these than commas.
class CsvRows {
public:
  CsvRows(std::string_view content, std::string file);

  [[nodiscard]] char separator() const { return separator_; }
  /// The next row that has any text; nothing at the end.
  [[nodiscard]] Result<std::optional<CsvRow>> next();

private:
  [[nodiscard]] bool atBreak() const { return content_[at_] == '\n' || content_[at_] == '\r'; }
  void overBreak();
  [[nodiscard]] Result<std::string> quotedCell();
  [[nodiscard]] Result<std::string> cell();
  [[nodiscard]] Result<CsvRow> row();

  std::string_view content_;
  std::string file_;
  char separator_;
  std::size_t at_ = 0;
  std::size_t line_ = 1; ///< follows the line breaks, also those inside quotes
};

} // namespace netmend
