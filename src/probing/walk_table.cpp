#include "walk_table.h"

#include <algorithm>
#include <array>
#include <map>

#include <fmt/format.h>

#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "plain_text.h"
#include "time_text.h"

namespace netmend::probing {

namespace {

constexpr std::size_t mostRows = 1'000'000;

std::string_view trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t\r");
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t\r") - from + 1);
}

/// One row cut into cells, quotes as in RFC 4180. Nothing when a quote is not closed.
std::optional<std::vector<std::string>> cells(std::string_view row, char separator) {
  std::vector<std::string> out(1);
  bool quoted = false;
  for (std::size_t i = 0; i < row.size(); ++i) {
    const char c = row[i];
    if (quoted) {
      if (c != '"')
        out.back() += c;
      else if (i + 1 < row.size() && row[i + 1] == '"')
        out.back() += row[++i];
      else
        quoted = false;
    } else if (c == '"' && trimmed(out.back()).empty()) {
      out.back().clear();
      quoted = true;
    } else if (c == separator) {
      out.emplace_back();
    } else {
      out.back() += c;
    }
  }
  if (quoted) return std::nullopt;
  for (auto& cell : out)
    cell = std::string(trimmed(cell));
  return out;
}

class TableReader {
public:
  TableReader(std::string_view text, const std::string& file) : text_(text), file_(file) {
    if (text_.starts_with("\xEF\xBB\xBF")) text_.remove_prefix(3);
  }

  Result<Walk> read() {
    while (!text_.empty()) {
      const auto end = text_.find('\n');
      const auto row = trimmed(text_.substr(0, end));
      text_.remove_prefix(end == std::string_view::npos ? text_.size() : end + 1);
      ++line_;
      if (row.empty()) continue;
      if (!isPlainText(row)) return wrong(pattern("core", "not text in UTF-8"), {}, asItIs("UTF-8"));
      const Result<void> taken = row.front() == '#' ? takeRemark(trimmed(row.substr(1)))
                                 : columns_.empty() ? takeHeader(row)
                                                    : takeRow(row);
      if (!taken) return failure(taken.error());
    }
    if (columns_.empty()) {
      ++line_;
      return wrong(pattern("core", "no header"), "",
                   pattern("core", "a row of column names with at least point and value"));
    }
    return walk_;
  }

private:
  tl::unexpected<Error> wrong(Said message, std::string_view found, Said expected) const {
    return failure({std::move(message), file_, FilePlace::atLine(line_),
                    found.empty() ? "" : fmt::format("\"{}\"", found.substr(0, 80)), std::move(expected)});
  }

  /// `# serial: 0042` above the header tells about the walk; other remarks are remarks.
  Result<void> takeRemark(std::string_view text) {
    const auto colon = text.find(':');
    if (colon == std::string_view::npos || !columns_.empty()) return {};
    const auto key = trimmed(text.substr(0, colon));
    const std::string value(trimmed(text.substr(colon + 1)));
    const std::map<std::string_view, std::string*> texts{
        {"title", &walk_.title},      {"board", &walk_.boardName}, {"revision", &walk_.boardRevision},
        {"serial", &walk_.serial},    {"meter", &walk_.meter},     {"by", &walk_.by},
        {"other", &walk_.other.label}};
    if (const auto it = texts.find(key); it != texts.end()) {
      *it->second = value;
    } else if (key == "specimen") {
      const auto specimen = specimenFrom(value);
      if (!specimen)
        return wrong(pattern("core", "unknown state of the specimen"), value,
                     pattern("core", "good, faulty or unknown"));
      walk_.specimen = *specimen;
    } else if (key == "mode") {
      const auto mode = readingModeFrom(value);
      if (!mode)
        return wrong(pattern("core", "unknown mode"), value, pattern("core", "a mode such as diode or ohms"));
      walk_.mode = *mode;
    }
    return {};
  }

  Result<void> takeHeader(std::string_view row) {
    for (const char c : {';', '\t', ','}) {
      if (row.find(c) == std::string_view::npos) continue;
      separator_ = c;
      break;
    }
    const auto names = cells(row, separator_);
    if (!names) return wrong(pattern("core", "a quote is not closed"), row, {});
    static constexpr std::array<std::string_view, 8> known{"point", "value", "mode", "other",
                                                           "meter", "by",    "time", "settling"};
    for (std::size_t i = 0; i < names->size(); ++i) {
      const auto& name = (*names)[i];
      const auto* it = std::find(known.begin(), known.end(), name);
      if (it == known.end()) {
        return wrong(pattern("core", "unknown column"), name,
                     pattern("core", "point, value, mode, other, meter, by, time or settling"));
      }
      if (!columns_.emplace(*it, i).second) return wrong(pattern("core", "column named twice"), name, {});
    }
    for (const std::string_view needed : {"point", "value"})
      if (!columns_.contains(needed))
        return wrong(pattern("core", "column missing"), row, std::string(needed));
    width_ = names->size();
    return {};
  }

  Result<void> takeRow(std::string_view row) {
    if (walk_.points.size() >= mostRows)
      return wrong(pattern("core", "too many rows"), "", pattern("core", "at most a million"));
    const auto row_cells = cells(row, separator_);
    if (!row_cells) return wrong(pattern("core", "a quote is not closed"), row, {});
    if (row_cells->size() != width_)
      return wrong(said(pattern("core", "{} cells"), row_cells->size()), row,
                   said(pattern("core", "{} cells"), width_));
    const auto cell = [&](std::string_view name) -> std::string {
      const auto it = columns_.find(name);
      return it == columns_.end() ? std::string() : (*row_cells)[it->second];
    };
    Reading reading;
    reading.point.label = cell("point");
    if (reading.point.label.empty())
      return wrong(pattern("core", "no point"), row, pattern("core", "the name of a point such as J4.11"));
    walk_.points.push_back(reading.point);
    if (cell("value").empty() || cell("value") == "skip") {
      walk_.skipped.push_back(reading.point);
      return {};
    }
    const auto orElse = [](const std::string& text, const std::string& fallback) {
      return text.empty() ? fallback : text;
    };
    reading.other.label = orElse(cell("other"), walk_.other.label);
    reading.meter = orElse(cell("meter"), walk_.meter);
    reading.by = orElse(cell("by"), walk_.by);
    const auto mode = cell("mode").empty() ? walk_.mode : readingModeFrom(cell("mode"));
    if (!mode)
      return wrong(pattern("core", "unknown mode"), cell("mode"),
                   pattern("core", "a mode such as diode or ohms"));
    reading.mode = *mode;
    if (!cell("settling").empty()) {
      const auto settling = settlingFrom(cell("settling"));
      if (!settling)
        return wrong(pattern("core", "unknown word"), cell("settling"),
                     pattern("core", "settled, rising or unknown"));
      reading.settling = *settling;
    }
    if (!cell("time").empty()) {
      const auto time = timeFrom(cell("time"));
      if (!time)
        return wrong(pattern("core", "not a time"), cell("time"),
                     pattern("core", "a time in UTC such as 2026-03-01T09:30:00Z"));
      reading.time = *time;
    }
    const auto value = parseReadingValue(cell("value"), reading.mode);
    if (!value) return wrong(value.error().message, cell("value"), value.error().expected);
    reading.value = value->value;
    walk_.readings.push_back(std::move(reading));
    return {};
  }

  std::string_view text_;
  std::string file_;
  std::size_t line_ = 0;
  char separator_ = ',';
  std::size_t width_ = 0;
  std::map<std::string_view, std::size_t> columns_;
  Walk walk_;
};

} // namespace

Result<Walk> walkFromTable(std::string_view text, const std::string& file) {
  return TableReader(text, file).read();
}

} // namespace netmend::probing
