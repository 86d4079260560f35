#pragma once

#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "netmend/base/said.h"

namespace netmend {

/// Where in a file something stands.
struct FilePlace {
  std::string inside{};   ///< of an archive: the file within it; else empty
  std::size_t line = 0;   ///< from 1; 0: does not apply
  std::size_t column = 0; ///< from 1; 0: the whole line
  std::string pointer{};  ///< a JSON pointer, or a name within the file that needs no words

  FilePlace() = default;
  FilePlace(std::string pointerOrName)
      : pointer(std::move(pointerOrName)) {}                       // NOLINT(google-explicit-constructor)
  FilePlace(const char* pointerOrName) : pointer(pointerOrName) {} // NOLINT(google-explicit-constructor)
  [[nodiscard]] static FilePlace atLine(std::size_t line, std::size_t column = 0);

  [[nodiscard]] bool empty() const { return inside.empty() && line == 0 && pointer.empty(); }
  /// "line 12", "line 12, column 7", "line 3 /changes/0", "pins.csv, line 3".
  [[nodiscard]] Said said() const;
};
[[nodiscard]] std::string wordsOf(const FilePlace& place);

/// What a caller acts on.
enum class ErrorCause { other, severalInArchive };

/// What went wrong with a file, a reading or a request, in terms the user can act on.
struct Error {
  Said message;       ///< what is wrong, as a sentence without full stop
  std::string file{}; ///< file name as given by the user; empty if no file is involved
  FilePlace place{};
  Said found{};    ///< what stands there
  Said expected{}; ///< what would have been accepted
  ErrorCause cause = ErrorCause::other;

  /// One line: `board.csv: line 3: unknown side (found "up"; expected top or bottom)`.
  [[nodiscard]] Said said() const;
  [[nodiscard]] std::string text() const { return wordsOf(said()); }
};

template <class T> using Result = tl::expected<T, Error>;

/// Shorthand for `return failure({...})` in functions that give a Result.
[[nodiscard]] inline tl::unexpected<Error> failure(Error error) {
  return tl::unexpected<Error>(std::move(error));
}

} // namespace netmend
