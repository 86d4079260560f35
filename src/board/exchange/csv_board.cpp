#include "csv_board.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>
#include <utility>

#include "csv_rows.h"
#include "pin_points.h"

namespace netmend {

namespace {

constexpr std::array<std::string_view, 6> columnNames{"part", "pin", "net", "x_mm", "y_mm", "side"};
enum Column : std::size_t { partColumn, pinColumn, netColumn, xColumn, yColumn, sideColumn };

std::string lower(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return result;
}

/// Where each column stands in a row.
using Columns = std::array<std::optional<std::size_t>, columnNames.size()>;

bool isHeader(const CsvRow& row) {
  const auto has = [&](std::string_view name) {
    return std::any_of(row.cells.begin(), row.cells.end(),
                       [&](const std::string& cell) { return lower(cell) == name; });
  };
  return has("part") && has("pin");
}

Result<Columns> namedColumns(const CsvRow& header, const std::string& file, std::vector<Said>& notices) {
  Columns columns;
  for (std::size_t i = 0; i < header.cells.size(); ++i) {
    const auto found = std::find(columnNames.begin(), columnNames.end(), lower(header.cells[i]));
    if (found == columnNames.end()) {
      notices.push_back(
          said(pattern("core", "line {}: the column \"{}\" is not read"), header.line, header.cells[i]));
      continue;
    }
    auto& place = columns[static_cast<std::size_t>(found - columnNames.begin())];
    if (place) {
      return failure({pattern("core", "a column stands twice in the header"), file,
                      FilePlace::atLine(header.line), header.cells[i], pattern("core", "each column once")});
    }
    place = i;
  }
  return columns;
}

struct Fields {
  const CsvRow& row;
  const Columns& columns;

  [[nodiscard]] std::string_view operator[](Column column) const {
    const auto& place = columns[column];
    return place && *place < row.cells.size() ? std::string_view(row.cells[*place]) : std::string_view{};
  }
};

std::optional<Length> millimetres(std::string text, bool decimalComma) {
  if (decimalComma) std::replace(text.begin(), text.end(), ',', '.');
  std::string_view rest = text;
  if (rest.starts_with('+')) rest.remove_prefix(1);
  double mm = 0;
  const auto [end, ec] = std::from_chars(rest.data(), rest.data() + rest.size(), mm);
  if (ec != std::errc{} || end != rest.data() + rest.size() || !std::isfinite(mm) || std::abs(mm) > 1e4)
    return std::nullopt;
  return Length::fromMm(mm);
}

bool meansNotConnected(std::string_view net) {
  const std::string name = lower(net);
  return name == "nc" || name == "n/c" || name == "n.c." || name == "n.c";
}

Result<Fact<PadReach>> sideOf(std::string_view text) {
  const std::string side = lower(text);
  if (side.empty()) return Fact<PadReach>{};
  if (side == "top" || side == "t") return fromFile(PadReach::top);
  if (side == "bottom" || side == "b") return fromFile(PadReach::bottom);
  if (side == "both") return fromFile(PadReach::topAndBottom);
  return failure(
      {pattern("core", "unknown side"), "", "", std::string(text), pattern("core", "top, bottom or both")});
}

Result<PinPoint> pointOf(const Fields& fields, bool decimalComma) {
  PinPoint point;
  point.part = fields[partColumn];
  point.pin = fields[pinColumn];
  if (point.pin.empty())
    return failure({pattern("core", "a row has no pin"), "", "", point.part, asItIs("part,pin")});
  const std::string_view net = fields[netColumn];
  if (meansNotConnected(net))
    point.notConnected = true;
  else
    point.net = net;
  const std::string x(fields[xColumn]);
  const std::string y(fields[yColumn]);
  if (x.empty() != y.empty()) return failure({pattern("core", "only one of x_mm and y_mm is given")});
  if (!x.empty()) {
    const auto xLength = millimetres(x, decimalComma);
    const auto yLength = millimetres(y, decimalComma);
    if (!xLength || !yLength) {
      return failure({pattern("core", "not a usable coordinate"), "", "", asItIs(xLength ? y : x),
                      pattern("core", "millimetres, at most 10000 either way")});
    }
    point.pad.position = fromFile(Point{*xLength, *yLength});
  }
  auto side = sideOf(fields[sideColumn]);
  if (!side) return failure(side.error());
  point.pad.reach = *side;
  return point;
}

/// In a table without a header only what looks like a part's reference and a pin's name makes it one.
bool looksLikePin(const CsvRow& row) {
  constexpr std::size_t mostLetters = 40;
  const auto word = [](const std::string& cell) {
    return cell.size() <= mostLetters && cell.find_first_of(" \t\r\n") == std::string::npos;
  };
  if (row.cells.size() < 2 || row.cells[1].empty() || !word(row.cells[0]) || !word(row.cells[1]))
    return false;
  const std::string& part = row.cells[0];
  const auto is = [](int (*kind)(int)) { return [kind](unsigned char c) { return kind(c) != 0; }; };
  return part.empty() || (is(std::isalpha)(static_cast<unsigned char>(part.front())) &&
                          std::any_of(part.begin(), part.end(), is(std::isdigit)));
}

struct TableReader {
  const ImportSource& source;
  CsvRows rows;
  PinPoints points;
  Columns columns{0, 1, 2, 3, 4, 5};
  std::size_t width = columnNames.size(); ///< cells of a row
  bool header = false;
  std::size_t count = 0;

  explicit TableReader(const ImportSource& s) : source(s), rows(s.content, s.file), points(s) {}

  Result<void> readFirst(const CsvRow& row) {
    header = isHeader(row);
    if (!header) return readRow(row);
    std::vector<Said> notices;
    auto named = namedColumns(row, source.file, notices);
    if (!named) return failure(named.error());
    for (Said& notice : notices)
      points.notice(std::move(notice));
    columns = *named;
    width = row.cells.size();
    return {};
  }

  Result<void> readRow(const CsvRow& row) {
    const FilePlace place = FilePlace::atLine(row.line);
    if (!header && !looksLikePin(row)) {
      return failure({pattern("core", "there are no columns for part and pin"), source.file, place,
                      row.cells.front().substr(0, 40),
                      pattern("core", "a first row part,pin[,net[,x_mm,y_mm,side]], or rows like J4,1,GND")});
    }
    const bool tooLong = row.cells.size() > width &&
                         std::any_of(row.cells.begin() + static_cast<std::ptrdiff_t>(width), row.cells.end(),
                                     [](const std::string& c) { return !c.empty(); });
    if (tooLong || row.cells.size() < 2) {
      return failure({tooLong ? pattern("core", "a row has too many columns")
                              : pattern("core", "a row has too few columns"),
                      source.file, place, said(pattern("core", "{} columns"), row.cells.size()),
                      asItIs("part,pin[,net[,x_mm,y_mm,side]]")});
    }
    if (++count > mostTablePins) {
      return failure({pattern("core", "the table is too long"),
                      source.file,
                      place,
                      {},
                      said(pattern("core", "at most {} pins"), mostTablePins)});
    }
    auto point = pointOf({row, columns}, rows.separator() != ',');
    if (!point) {
      Error error = point.error();
      error.file = source.file;
      error.place = place;
      return failure(std::move(error));
    }
    if (auto added = points.add(*point, place); !added) return failure(added.error());
    if (source.options.progress.stopped())
      return failure({pattern("core", "reading was stopped"), source.file});
    return {};
  }
};

} // namespace

Error tableTooLarge(const std::string& file, std::uintmax_t bytes) {
  return {pattern("core", "the table is too large"), file, "", said(pattern("core", "{} bytes"), bytes),
          said(pattern("core", "at most {} bytes"), mostTableBytes)};
}

bool looksLikePinTable(std::string_view content) {
  CsvRows rows(content.substr(0, content.find_first_of("\r\n")), {});
  const auto first = rows.next();
  return first && *first && isHeader(**first);
}

Result<Imported> readPinTable(const ImportSource& source) {
  if (source.content.size() > mostTableBytes)
    return failure(tableTooLarge(source.file, source.content.size()));
  TableReader reader(source);
  const auto breaks = std::count(source.content.begin(), source.content.end(), '\n');
  const std::size_t rows = std::min(static_cast<std::size_t>(breaks) + 1, mostTablePins);
  reader.points.board().pins.reserve(rows);
  reader.points.board().pads.reserve(rows);
  bool first = true;
  while (true) {
    auto row = reader.rows.next();
    if (!row) return failure(row.error());
    if (!*row) break;
    auto read = std::exchange(first, false) ? reader.readFirst(**row) : reader.readRow(**row);
    if (!read) return failure(std::move(read.error()));
  }
  if (first)
    return failure({pattern("core", "the table has no rows"), source.file, "", {}, asItIs("part,pin")});
  return reader.points.finish();
}

} // namespace netmend
