#include "ipc_line.h"

#include <algorithm>
#include <array>

#include "text.h"

namespace netmend::ipc {

namespace {

bool isInside(char c) { // a letter, not its first byte
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80;
}

std::string_view wholeLetters(std::string_view text) {
  while (!text.empty() && isInside(text.front()))
    text.remove_prefix(1);
  std::size_t last = text.size();
  while (last > 0 && isInside(text[last - 1]))
    --last;
  if (last > 0 && letterLength(text.substr(last - 1)) == 0) text = text.substr(0, last - 1);
  return text;
}

/// How many bytes stand here of a letter that is not whole; 0 where none begins.
std::size_t halfLetter(std::string_view rest) {
  const auto first = static_cast<unsigned char>(rest.front());
  if (first < 0xC2 || first > 0xF4) return 0;
  const std::size_t whole = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  std::size_t length = 1;
  while (length < whole && length < rest.size() && isInside(rest[length]))
    ++length;
  return length;
}

/// Ends of the columns of names: net, net that runs on, part, pin.
constexpr std::array<std::size_t, 4> nameEnds{17, 20, 26, 31};

void appendLine(std::string& out, std::string_view line, std::size_t number, FoldedNotices& notices) {
  for (std::size_t at = 0; at < line.size();) {
    const std::string_view rest = line.substr(at);
    if (const std::size_t length = letterLength(rest); length > 0) {
      out += rest.substr(0, length);
      at += length;
      continue;
    }
    const std::size_t half = halfLetter(rest);
    const bool cut = half > 0 && (codeOf(line) >= 0 ? std::find(nameEnds.begin(), nameEnds.end(),
                                                                at + half) != nameEnds.end()
                                                    : half == rest.size());
    if (cut) {
      notices.add(pattern("core", "names that end in half a letter, which is left out"),
                  FilePlace::atLine(number).said());
      out.append(half, ' ');
      at += half;
      continue;
    }
    notices.add(pattern("core", "bytes that are not UTF-8, read as Latin-1"),
                FilePlace::atLine(number).said());
    const auto byte = static_cast<unsigned char>(rest.front());
    out += static_cast<char>(0xC0U | (byte >> 6U));
    out += static_cast<char>(0x80U | (byte & 0x3FU));
    ++at;
  }
}

} // namespace

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blanks = " \t\x1A"; // the last ends a text file on some systems
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

int codeOf(std::string_view line) {
  if (line.size() < 3) return -1;
  int code = 0;
  for (const char c : line.substr(0, 3)) {
    if (c < '0' || c > '9') return -1;
    code = code * 10 + (c - '0');
  }
  return code;
}

bool isTestRecord(int code) {
  return code == 317 || code == 327 || code == 367 || code == 307 || code == 17 || code == 27 || code == 67;
}

RecordLine::RecordLine(std::string_view text) : text_(text) {
  const bool plain = std::all_of(text.begin(), text.end(), [](char c) { return (c & 0x80) == 0; });
  if (plain || fits()) return;
  byLetters_ = true;
  byLetters_ = fits();
}

bool RecordLine::fits() const {
  const int code = codeOf(text_);
  if (code == 378) return at(19) == 'L';
  return at(39) == 'A' || at(38) == 'A' || at(42) == 'X';
}

std::size_t RecordLine::offset(std::size_t column) const {
  if (!byLetters_) return std::min(column - 1, text_.size());
  std::size_t at = 0;
  for (; column > 1 && at < text_.size(); --column)
    at += std::max<std::size_t>(letterLength(text_.substr(at)), 1);
  return std::min(at, text_.size());
}

std::string_view RecordLine::columns(std::size_t first, std::size_t last) const {
  const std::size_t begin = offset(first);
  return trimmed(wholeLetters(text_.substr(begin, offset(last + 1) - begin)));
}

std::string asUtf8(std::string_view content, FoldedNotices& notices) {
  std::string out;
  out.reserve(content.size() + content.size() / 8);
  forEachLine(content, [&](std::string_view line, std::size_t number) {
    appendLine(out, line, number, notices);
    out += '\n';
    return true;
  });
  return out;
}

} // namespace netmend::ipc
