#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"

namespace netmend {

/// Why this cannot be a text file, with its place: not UTF-8, or zero bytes in it. Nothing for good text.
[[nodiscard]] std::optional<Error> textFault(std::string_view content, const std::string& file);

/// Length in bytes of the UTF-8 letter that starts here; 0 if none does. Not for empty text.
[[nodiscard]] std::size_t letterLength(std::string_view rest);

/// Whether it begins with a byte order mark of UTF-16, of either order.
[[nodiscard]] bool isUtf16(std::string_view content);

/// UTF-16 with its byte order mark as UTF-8 without one. Fails, with the letter's number, on half a letter.
[[nodiscard]] Result<std::string> utf8FromUtf16(std::string_view content, const std::string& file);

/// The text without the byte order mark that some editors put in front.
[[nodiscard]] std::string_view withoutMark(std::string_view content);

/// Calls `use(line, number)` for each line without its line break (LF, CRLF or CR), counted from 1,
/// until it gives false.
template <class Use> void forEachLine(std::string_view content, Use use) {
  std::size_t at = 0;
  std::size_t number = 1;
  while (at < content.size()) {
    const std::size_t end = std::min(content.find_first_of("\r\n", at), content.size());
    if (!use(content.substr(at, end - at), number++)) return;
    at = end + 1;
    if (end + 1 < content.size() && content[end] == '\r' && content[end + 1] == '\n') ++at;
  }
}

} // namespace netmend
