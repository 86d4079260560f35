#include "csv_rows.h"

#include <algorithm>

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

} // namespace

CsvRows::CsvRows(std::string_view content, std::string file)
    : content_(content), file_(std::move(file)), separator_(separatorOf(content)) {}

void CsvRows::overBreak() {
  const bool pair = content_[at_] == '\r' && at_ + 1 < content_.size() && content_[at_ + 1] == '\n';
  at_ += pair ? 2 : 1;
  ++line_;
}

Result<std::string> CsvRows::quotedCell() {
  const std::size_t start = line_;
  std::string cell;
  ++at_;
  while (at_ < content_.size()) {
    if (content_[at_] == '"') {
      if (at_ + 1 >= content_.size() || content_[at_ + 1] != '"') break;
      ++at_; // a doubled quote is one
    } else if (content_[at_] == '\n') {
      ++line_;
    }
    cell += content_[at_++];
  }
  if (at_ >= content_.size())
    return failure(
        {pattern("core", "a quoted cell has no end"), file_, FilePlace::atLine(start), {}, asItIs("\"")});
  ++at_;
  while (at_ < content_.size() && content_[at_] == ' ' && content_[at_] != separator_)
    ++at_;
  if (at_ < content_.size() && content_[at_] != separator_ && !atBreak()) {
    return failure({pattern("core", "text follows a quoted cell"), file_, FilePlace::atLine(line_),
                    std::string(content_.substr(at_, 1)),
                    pattern("core", "the separator or the end of the row")});
  }
  return cell;
}

Result<std::string> CsvRows::cell() {
  const std::size_t first = content_.find_first_not_of(' ', at_);
  if (first != std::string_view::npos && content_[first] == '"') {
    at_ = first;
    return quotedCell();
  }
  const std::size_t start = at_;
  while (at_ < content_.size() && content_[at_] != separator_ && !atBreak())
    ++at_;
  return trimmed(content_.substr(start, at_ - start));
}

Result<CsvRow> CsvRows::row() {
  CsvRow result{{}, line_};
  while (true) {
    auto text = cell();
    if (!text) return failure(text.error());
    result.cells.push_back(std::move(*text));
    if (at_ >= content_.size()) return result;
    if (atBreak()) {
      overBreak();
      return result;
    }
    ++at_; // the separator
  }
}

Result<std::optional<CsvRow>> CsvRows::next() {
  while (at_ < content_.size()) {
    auto read = row();
    if (!read) return failure(read.error());
    const bool empty = std::all_of(read->cells.begin(), read->cells.end(),
                                   [](const std::string& cell) { return cell.empty(); });
    if (!empty) return std::optional(std::move(*read));
  }
  return std::optional<CsvRow>{};
}

} // namespace netmend
