#include "ipc_record.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "netmend/board/board.h"

namespace netmend::ipc {

namespace {

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

/// Walks the lettered fields behind the fixed columns. Leading zeros may be blanks, a plus too.
struct Fields {
  std::string_view text;

  void skipBlanks() {
    while (!text.empty() && text.front() == ' ')
      text.remove_prefix(1);
  }
  [[nodiscard]] bool at(char letter) {
    skipBlanks();
    return !text.empty() && text.front() == letter;
  }
  void step() { text.remove_prefix(1); }

  /// A number of at most fifteen digits; nothing when there is none.
  std::optional<std::int64_t> number() {
    std::string_view rest = text;
    while (!rest.empty() && rest.front() == ' ')
      rest.remove_prefix(1);
    const bool negative = !rest.empty() && rest.front() == '-';
    if (!rest.empty() && (rest.front() == '-' || rest.front() == '+')) rest.remove_prefix(1);
    while (!rest.empty() && rest.front() == ' ')
      rest.remove_prefix(1);
    std::int64_t value = 0;
    std::size_t digits = 0;
    while (digits < rest.size() && digits < 15 && isDigit(rest[digits]))
      value = value * 10 + (rest[digits++] - '0');
    if (digits == 0) return std::nullopt;
    rest.remove_prefix(digits);
    text = rest;
    return negative ? -value : value;
  }
};

constexpr std::string_view tooLong = "longer than a board can be";

tl::unexpected<Error> bad(Said message, std::string_view found, Said expected) {
  return failure({std::move(message), "", "", std::string(found.substr(0, 40)), std::move(expected)});
}

/// What the file counts, as a length that a board can have.
Result<Length> lengthFrom(std::int64_t count, const Units& units, std::string_view line) {
  const Length length(count * units.step);
  if (length > largestLength || length < -largestLength)
    return bad(std::string(tooLong), line, pattern("core", "at most 10 m either way"));
  return length;
}

/// `D0300P` in columns 33 to 38.
Result<void> readHole(TestRecord& record, const RecordLine& line, const Units& units) {
  const std::string_view hole = line.columns(33, 38);
  if (hole.empty()) return {};
  const char last = hole.back();
  if (last == 'P' || last == 'U') record.plated = last == 'P';
  if (hole.front() != 'D') return {};
  Fields fields{hole.substr(1)};
  const auto size = fields.number();
  if (!size || *size < 0)
    return bad(pattern("core", "a hole without a size"), hole,
               pattern("core", "D and four digits in columns 33 to 37"));
  if (*size == 0) return {};
  const auto drill = lengthFrom(*size, units, hole);
  if (!drill) return failure(drill.error());
  record.drill = *drill;
  return {};
}

Result<void> readPlace(TestRecord& record, Fields& fields, const Units& units) {
  const std::string_view text = fields.text;
  if (fields.at('A')) {
    fields.step();
    const auto access = fields.number();
    if (!access || *access < 0 || *access > 99)
      return bad(pattern("core", "an access side without number"), fields.text,
                 pattern("core", "A00 to A99"));
    record.access = static_cast<int>(*access);
  }
  if (!fields.at('X'))
    return bad(pattern("core", "a record without place"), fields.text,
               pattern("core", "X and Y in columns 42 to 57"));
  fields.step();
  const auto x = fields.number();
  if (!x || !fields.at('Y'))
    return bad(pattern("core", "a record without place"), fields.text,
               pattern("core", "X and Y in columns 42 to 57"));
  fields.step();
  const auto y = fields.number();
  if (!y)
    return bad(pattern("core", "a record without place"), fields.text,
               pattern("core", "X and Y in columns 42 to 57"));
  const auto xLength = lengthFrom(*x, units, text);
  const auto yLength = lengthFrom(*y, units, text);
  if (!xLength || !yLength) return failure(xLength ? yLength.error() : xLength.error());
  record.position = Point{*xLength, *yLength};
  return {};
}

/// Size, rotation, mask and the layers of a 307; each may be missing.
Result<void> readFeature(TestRecord& record, Fields& fields, const Units& units) {
  const std::string_view text = fields.text;
  for (const auto& [letter, size] : {std::pair{'X', &record.width}, std::pair{'Y', &record.length}}) {
    if (!fields.at(letter)) continue;
    fields.step();
    const auto length = lengthFrom(std::max<std::int64_t>(fields.number().value_or(0), 0), units, text);
    if (!length) return failure(length.error());
    *size = *length;
  }
  if (fields.at('R')) {
    fields.step();
    const auto turn = static_cast<double>(fields.number().value_or(0));
    record.rotation = Degrees(units.radians ? turn / 100 * 57.29577951308232 : turn);
  }
  if (fields.at('S')) {
    fields.step();
    const auto mask = fields.number();
    if (mask && *mask >= 0 && *mask <= 3) record.mask = static_cast<int>(*mask);
  }
  for (int* layer : {&record.fromLayer, &record.toLayer}) {
    if (!fields.at('L')) return {};
    fields.step();
    *layer = static_cast<int>(std::clamp<std::int64_t>(fields.number().value_or(0), 0, 99));
  }
  return {};
}

bool isPlaceholder(std::string_view text) {
  return text == "NOREF" || text == "NPIN";
}

} // namespace

std::optional<Units> unitsFrom(std::string_view value) {
  value = trimmed(value);
  if (value == "SI") return Units{1000, false};
  if (!value.starts_with("CUST")) return std::nullopt;
  value = trimmed(value.substr(4));
  if (value.empty() || value == "0") return Units{2540, false};
  if (value == "1") return Units{1000, false};
  if (value == "2") return Units{2540, true};
  return std::nullopt;
}

Result<TestRecord> testRecord(const RecordLine& line, const Units& units) {
  TestRecord record;
  record.kind = line.code();
  // Columns 18 to 20 are to be blank; some writers let a long name run on.
  record.netRunsOn = line.at(18) != ' ' && line.at(17) != ' ';
  record.net = line.columns(4, record.netRunsOn ? 20 : 17);
  record.reference = line.columns(21, 26);
  record.pin = line.columns(28, 31);
  if (isPlaceholder(record.reference)) record.reference.clear();
  if (isPlaceholder(record.pin)) record.pin.clear();
  record.midpoint = line.at(32) == 'M';
  if (auto hole = readHole(record, line, units); !hole) return failure(hole.error());
  if (line.from(39).empty())
    return bad(pattern("core", "a record is cut short"), line.text(), pattern("core", "at least 57 columns"));
  // Some writers are a column short of the standard before the access side.
  Fields fields{line.from(line.at(38) == 'A' ? 38 : 39)};
  if (auto place = readPlace(record, fields, units); !place) return failure(place.error());
  if (auto feature = readFeature(record, fields, units); !feature) return failure(feature.error());
  return record;
}

Result<void> addCoordinates(Drawn& drawn, std::string_view text, const Units& units, bool mayMiss) {
  Fields fields{text};
  std::optional<Point> last;
  if (!drawn.runs.empty() && !drawn.runs.back().empty()) last = drawn.runs.back().back();
  while (true) {
    fields.skipBlanks();
    if (fields.text.empty()) return {};
    if (fields.at('*')) {
      fields.step();
      if (!drawn.runs.empty() && !drawn.runs.back().empty()) drawn.runs.emplace_back();
      continue;
    }
    std::optional<std::int64_t> x, y;
    const bool hasX = fields.text.front() == 'X';
    if (hasX) {
      fields.step();
      x = fields.number();
    }
    // A blank ends a coordinate: "X50000 Y275000" are two, the second with the x before it.
    const bool hasY = !fields.text.empty() && fields.text.front() == 'Y';
    if (hasY) {
      fields.step();
      y = fields.number();
    }
    if ((!hasX && !hasY) || (hasX && !x) || (hasY && !y))
      return bad(pattern("core", "not a coordinate"), fields.text, pattern("core", "X and Y with digits"));
    const auto xLength = lengthFrom(x.value_or(0), units, text);
    const auto yLength = lengthFrom(y.value_or(0), units, text);
    if (!xLength || !yLength) return failure(xLength ? yLength.error() : xLength.error());
    if (!drawn.pen) {
      drawn.pen = Size{*xLength, *yLength};
      continue;
    }
    if (!last && (!x || !y)) {
      if (!mayMiss)
        return bad(pattern("core", "the first coordinate is not complete"), text, pattern("core", "X and Y"));
      drawn.penIsCorner = true;
      last = Point{drawn.pen->width, drawn.pen->height};
      drawn.runs.push_back({*last});
    }
    const Point p{x ? *xLength : last->x, y ? *yLength : last->y};
    if (drawn.runs.empty()) drawn.runs.emplace_back();
    drawn.runs.back().push_back(p);
    last = p;
  }
}

} // namespace netmend::ipc
