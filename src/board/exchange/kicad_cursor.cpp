#include "kicad_cursor.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace netmend::kicad {

namespace {

constexpr int deepest = 100;                      // real files nest below 10
constexpr std::int64_t farthest = 10'000'000'000; // nm

constexpr bool isSpace(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

// A quotation mark within a bare word is a part of it: versions 3 and 4 wrote names such as LCD-5"CTS.
constexpr auto endsWord = [] {
  std::array<bool, 256> table{};
  for (const char c : {' ', '\n', '\t', '\r', '(', ')'})
    table[static_cast<unsigned char>(c)] = true;
  return table;
}();

/// Millimetres with at most six decimals, as the format writes them, to whole nanometres without rounding.
std::optional<std::int64_t> plainDecimal(std::string_view text) {
  const char* p = text.data();
  const char* const end = p + text.size();
  const bool negative = p != end && *p == '-';
  if (negative) ++p;
  std::int64_t value = 0;
  const char* const digits = p;
  while (p != end && *p >= '0' && *p <= '9' && p - digits < 9)
    value = value * 10 + (*p++ - '0');
  const bool whole = p != digits;
  int decimals = 0;
  if (p != end && *p == '.') {
    ++p;
    while (p != end && *p >= '0' && *p <= '9' && decimals < 6) {
      value = value * 10 + (*p++ - '0');
      ++decimals;
    }
  }
  if (p != end || (!whole && decimals == 0)) return std::nullopt;
  static constexpr std::array<std::int64_t, 7> scale{1'000'000, 100'000, 10'000, 1'000, 100, 10, 1};
  value *= scale[static_cast<std::size_t>(decimals)];
  return negative ? -value : value;
}

std::optional<double> anyNumber(std::string_view text) {
  if (!text.empty() && text.front() == '+') text.remove_prefix(1);
  double value = 0;
  const auto [end, ec] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (ec != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

} // namespace

void Cursor::skipSpace() {
  while (at_ < text_.size() && isSpace(text_[at_]))
    ++at_;
}

void Cursor::readAtom(Item& item) {
  const char* const data = text_.data();
  const std::size_t size = text_.size();
  if (data[at_] != '"') {
    std::size_t end = at_;
    while (end < size && !endsWord[static_cast<unsigned char>(data[end])])
      ++end;
    item.text = text_.substr(at_, end - at_);
    at_ = end;
    return;
  }
  const std::size_t start = at_ + 1;
  std::size_t end = start;
  while (end < size && data[end] != '"')
    end += data[end] == '\\' ? 2 : 1;
  if (end >= size) {
    fail(pattern("core", "a quoted text has no end"), {}, asItIs("\""));
    item = {};
    return;
  }
  item.quoted = true;
  item.text = text_.substr(start, end - start);
  at_ = end + 1;
}

Item Cursor::next() {
  Item item;
  if (failed_) return item;
  skipSpace();
  itemStart_ = at_;
  if (at_ >= text_.size()) {
    if (depth_ > 0) fail(pattern("core", "the file ends inside a list"), {}, asItIs(")"));
    return item;
  }
  const char c = text_[at_];
  if (c == ')') {
    ++at_;
    if (--depth_ < 0) fail(pattern("core", "a list is closed that was never opened"), asItIs(")"));
    return item;
  }
  if (c != '(') {
    item.kind = Item::Kind::atom;
    readAtom(item);
    return item;
  }
  ++at_;
  if (++depth_ > deepest) {
    fail(pattern("core", "lists are nested too deeply"), {},
         said(pattern("core", "at most {} levels"), deepest));
    return item;
  }
  skipSpace();
  item.kind = Item::Kind::list;
  if (at_ < text_.size() && text_[at_] != '(' && text_[at_] != ')') readAtom(item);
  return item;
}

void Cursor::leave() {
  const int outside = depth_ - 1;
  while (!failed_ && depth_ > outside)
    static_cast<void>(next());
}

std::string_view Cursor::word() {
  const Item item = next();
  if (item.kind == Item::Kind::atom) return item.text;
  fail(pattern("core", "a value is missing"), asItIs(item.kind == Item::Kind::list ? "(" : ")"),
       pattern("core", "a word or a number"));
  return {};
}

std::string_view Cursor::numberText() {
  const Item item = next();
  if (item.kind == Item::Kind::atom) return item.text;
  fail(pattern("core", "a number is missing"), asItIs(item.kind == Item::Kind::list ? "(" : ")"),
       pattern("core", "a number"));
  return {};
}

Length Cursor::length() {
  const std::string_view text = numberText();
  if (failed_) return {};
  std::optional<std::int64_t> nm = plainDecimal(text);
  if (!nm) {
    const auto mm = anyNumber(text);
    if (mm && std::abs(*mm) <= 1e5) nm = std::llround(*mm * 1e6);
    if (!mm) {
      fail(pattern("core", "not a number"), std::string(text.substr(0, 40)), pattern("core", "millimetres"));
      return {};
    }
  }
  if (!nm || *nm > farthest || *nm < -farthest) {
    fail(pattern("core", "a length is out of range"), std::string(text.substr(0, 40)),
         pattern("core", "at most 10000 mm either way"));
    return {};
  }
  return Length(*nm);
}

double Cursor::number() {
  const std::string_view text = numberText();
  if (failed_) return 0;
  const auto value = anyNumber(text);
  if (!value || std::abs(*value) > 1e9) {
    fail(pattern("core", "not a usable number"), std::string(text.substr(0, 40)),
         pattern("core", "a number"));
    return 0;
  }
  return *value;
}

Point Cursor::point() {
  const Length x = length();
  const Length y = length();
  return {x, -y};
}

std::string_view Cursor::onlyWord() {
  const std::string_view value = word();
  leave();
  return value;
}

Length Cursor::onlyLength() {
  const Length value = length();
  leave();
  return value;
}

double Cursor::onlyNumber() {
  const double value = number();
  leave();
  return value;
}

Point Cursor::onlyPoint() {
  const Point value = point();
  leave();
  return value;
}

void Cursor::fail(Said message, Said found, Said expected) {
  if (failed_) return;
  failed_ = true;
  error_.message = std::move(message);
  error_.found = std::move(found);
  error_.expected = std::move(expected);
}

Error Cursor::error(std::string file) const {
  Error result = error_;
  result.file = std::move(file);
  const std::string_view before = text_.substr(0, itemStart_);
  const std::size_t lineStart = before.rfind('\n') + 1; // npos + 1 is 0: the first line
  result.place = FilePlace::atLine(lineAt(itemStart_), itemStart_ - lineStart + 1);
  return result;
}

std::size_t Cursor::lineAt(std::size_t place) const {
  const auto lineBreaks = std::count(text_.begin(), text_.begin() + static_cast<std::ptrdiff_t>(place), '\n');
  return static_cast<std::size_t>(lineBreaks) + 1;
}
void Cursor::expectEnd() {
  if (failed_) return;
  skipSpace();
  itemStart_ = at_;
  if (at_ < text_.size())
    fail(pattern("core", "text follows the end of the board"), std::string(text_.substr(at_, 20)));
}

std::string unescaped(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '\\' || i + 1 == text.size()) {
      result += text[i];
      continue;
    }
    const char c = text[++i];
    result += c == 'n' ? '\n' : c == 't' ? '\t' : c == 'r' ? '\r' : c;
  }
  return result;
}

} // namespace netmend::kicad
