#include "text.h"

#include <algorithm>
#include <cstdint>
#include <cstring>

#include <fmt/format.h>

namespace netmend {

namespace {

/// Eight bytes at a time while all are plain ASCII without zeros.
std::size_t plainRun(std::string_view text, std::size_t at) {
  while (at + 8 <= text.size()) {
    std::uint64_t word = 0;
    std::memcpy(&word, text.data() + at, 8);
    constexpr std::uint64_t high = 0x8080808080808080U;
    constexpr std::uint64_t ones = 0x0101010101010101U;
    if (((word | (word - ones)) & high) != 0) break;
    at += 8;
  }
  return at;
}

} // namespace

std::size_t letterLength(std::string_view rest) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(rest[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return 1;
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || rest.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i)
    if ((byte(i) & 0xC0U) != 0x80) return 0;
  // Overlong forms, surrogates, and what lies beyond Unicode.
  if (first == 0xE0 && byte(1) < 0xA0) return 0;
  if (first == 0xED && byte(1) > 0x9F) return 0;
  if (first == 0xF0 && byte(1) < 0x90) return 0;
  if (first == 0xF4 && byte(1) > 0x8F) return 0;
  return length;
}

std::optional<Error> textFault(std::string_view content, const std::string& file) {
  std::size_t at = 0;
  while ((at = plainRun(content, at)) < content.size()) {
    const std::size_t length = content[at] == '\0' ? 0 : letterLength(content.substr(at));
    if (length > 0) {
      at += length;
      continue;
    }
    const auto line =
        std::count(content.begin(), content.begin() + static_cast<std::ptrdiff_t>(at), '\n') + 1;
    return Error{
        content[at] == '\0' ? pattern("core", "is a binary file") : pattern("core", "is not UTF-8 text"),
        file, FilePlace::atLine(static_cast<std::size_t>(line)),
        said(pattern("core", "byte 0x{}"), fmt::format("{:02X}", static_cast<unsigned char>(content[at]))),
        pattern("core", "text in UTF-8")};
  }
  return std::nullopt;
}

bool isUtf16(std::string_view content) {
  return content.starts_with("\xFF\xFE") || content.starts_with("\xFE\xFF");
}

Result<std::string> utf8FromUtf16(std::string_view content, const std::string& file) {
  const bool littleEndian = content.starts_with("\xFF\xFE");
  const auto unit = [&](std::size_t i) {
    const auto first = static_cast<unsigned char>(content[2 * i]);
    const auto second = static_cast<unsigned char>(content[2 * i + 1]);
    return static_cast<std::uint32_t>(littleEndian ? first | (second << 8) : (first << 8) | second);
  };
  const std::size_t units = content.size() / 2;
  std::string out;
  out.reserve(units + units / 8);
  const auto put = [&](std::uint32_t byte) { out += static_cast<char>(byte); };
  std::size_t line = 1;
  bool whole = content.size() % 2 == 0;
  for (std::size_t i = 1; i < units; ++i) {
    std::uint32_t letter = unit(i);
    const bool high = letter >= 0xD800 && letter < 0xDC00;
    const bool pair = high && i + 1 < units && unit(i + 1) >= 0xDC00 && unit(i + 1) < 0xE000;
    if (letter >= 0xD800 && letter < 0xE000 && !pair) {
      whole = false;
      break;
    }
    if (pair) letter = 0x10000 + ((letter - 0xD800) << 10) + (unit(++i) - 0xDC00);
    if (letter == '\n') ++line;
    if (letter < 0x80) {
      put(letter);
    } else if (letter < 0x800) {
      put(0xC0 | (letter >> 6));
      put(0x80 | (letter & 0x3F));
    } else if (letter < 0x10000) {
      put(0xE0 | (letter >> 12));
      put(0x80 | ((letter >> 6) & 0x3F));
      put(0x80 | (letter & 0x3F));
    } else {
      put(0xF0 | (letter >> 18));
      put(0x80 | ((letter >> 12) & 0x3F));
      put(0x80 | ((letter >> 6) & 0x3F));
      put(0x80 | (letter & 0x3F));
    }
  }
  if (!whole)
    return failure({pattern("core", "half a letter in UTF-16 text"), file,
                    FilePlace::atLine(static_cast<std::size_t>(line))});
  return out;
}

std::string_view withoutMark(std::string_view content) {
  if (content.starts_with("\xEF\xBB\xBF")) content.remove_prefix(3);
  return content;
}

} // namespace netmend
