#include "csv_rows.h"

#include <algorithm>

#include <fmt/format.h>

namespace netmend {

namespace {

char separatorOf(std::string_view content) {
  std::size_t commas = 0, semicolons = 0, tabs = 0;
  bool quoted = false;
  for (const char c : content) {
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == '\n' || c == '\r') {
      if (commas + semicolons + tabs > 0) break;
      continue;
    }
    commas += c == ',' ? 1 : 0;
    semicolons += c == ';' ? 1 : 0;
    tabs += c == '\t' ? 1 : 0;
  }
  if (semicolons > commas) return ';';
  return tabs > commas ? '\t' : ',';
}

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

/// Walks the content once; `line` follows the line breaks, also those inside quotes.
struct Splitter {
  std::string_view content;
  std::string file;
  char separator;
  std::size_t at = 0;
  std::size_t line = 1;

  [[nodiscard]] bool atBreak() const { return content[at] == '\n' || content[at] == '\r'; }

  void overBreak() {
    const bool pair = content[at] == '\r' && at + 1 < content.size() && content[at + 1] == '\n';
    at += pair ? 2 : 1;
    ++line;
  }

  Result<std::string> quotedCell() {
    const std::size_t start = line;
    std::string cell;
    ++at;
    while (at < content.size()) {
      if (content[at] == '"') {
        if (at + 1 >= content.size() || content[at + 1] != '"') break;
        ++at; // a doubled quote is one
      } else if (content[at] == '\n') {
        ++line;
      }
      cell += content[at++];
    }
    if (at >= content.size())
      return failure({"a quoted cell has no end", file, fmt::format("line {}", start), "", "\""});
    ++at;
    while (at < content.size() && content[at] == ' ' && content[at] != separator)
      ++at;
    if (at < content.size() && content[at] != separator && !atBreak()) {
      return failure({"text follows a quoted cell", file, fmt::format("line {}", line),
                      std::string(content.substr(at, 1)), "the separator or the end of the row"});
    }
    return cell;
  }

  Result<std::string> cell() {
    const std::size_t first = content.find_first_not_of(' ', at);
    if (first != std::string_view::npos && content[first] == '"') {
      at = first;
      return quotedCell();
    }
    const std::size_t start = at;
    while (at < content.size() && content[at] != separator && !atBreak())
      ++at;
    return trimmed(content.substr(start, at - start));
  }

  Result<CsvRow> row() {
    CsvRow result{{}, line};
    while (true) {
      auto text = cell();
      if (!text) return failure(text.error());
      result.cells.push_back(std::move(*text));
      if (at >= content.size()) return result;
      if (atBreak()) {
        overBreak();
        return result;
      }
      ++at; // the separator
    }
  }
};

} // namespace

Result<CsvTable> csvRows(std::string_view content, const std::string& file) {
  CsvTable table{{}, separatorOf(content)};
  Splitter splitter{content, file, table.separator};
  while (splitter.at < content.size()) {
    auto row = splitter.row();
    if (!row) return failure(row.error());
    const bool empty = std::all_of(row->cells.begin(), row->cells.end(),
                                   [](const std::string& cell) { return cell.empty(); });
    if (!empty) table.rows.push_back(std::move(*row));
  }
  return table;
}

} // namespace netmend
