#pragma once

#include <string>
#include <string_view>

#include "folded_notices.h"

namespace netmend::ipc {

[[nodiscard]] std::string_view trimmed(std::string_view text);

/// Operation code of a line, or -1.
[[nodiscard]] int codeOf(std::string_view line);
[[nodiscard]] bool isTestRecord(int code);

/// A record by its columns. The standard counts them in characters of one byte; where names hold others, some
/// writers count bytes and some letters: the fixed letters behind the names show which.
class RecordLine {
public:
  explicit RecordLine(std::string_view text);

  [[nodiscard]] std::string_view text() const { return text_; }
  [[nodiscard]] int code() const { return codeOf(text_); }
  /// As the standard counts them, from 1, both included; blanks around and halves of letters are dropped.
  [[nodiscard]] std::string_view columns(std::size_t first, std::size_t last) const;
  /// From a column to the end of the line.
  [[nodiscard]] std::string_view from(std::size_t column) const { return text_.substr(offset(column)); }
  /// What stands in a column; a blank behind the end of the line.
  [[nodiscard]] char at(std::size_t column) const {
    const std::size_t i = offset(column);
    return i < text_.size() ? text_[i] : ' ';
  }

private:
  [[nodiscard]] std::size_t offset(std::size_t column) const;
  [[nodiscard]] bool fits() const;

  std::string_view text_;
  bool byLetters_ = false;
};

/// The file as UTF-8: what a name's columns cut off in the middle of a letter becomes blank, other bytes that
/// are not UTF-8 are read as Latin-1.
[[nodiscard]] std::string asUtf8(std::string_view content, FoldedNotices& notices);

} // namespace netmend::ipc
