#pragma once

#include <string>
#include <string_view>

#include <tl/expected.hpp>

namespace netmend {

/// What went wrong with a file, a reading or a request, in terms the user can act on.
struct Error {
  std::string message;    ///< what is wrong, as a sentence without full stop
  std::string file{};     ///< file name as given by the user; empty if no file is involved
  std::string place{};    ///< "line 12", "line 12, column 7" or a JSON pointer "/pins/3/net"
  std::string found{};    ///< what stands there
  std::string expected{}; ///< what would have been accepted

  /// One line: `board.csv: line 3: unknown side (found "up"; expected top or bottom)`.
  [[nodiscard]] std::string text() const;
};

template <class T> using Result = tl::expected<T, Error>;

/// Shorthand for `return failure({...})` in functions that give a Result.
[[nodiscard]] inline tl::unexpected<Error> failure(Error error) {
  return tl::unexpected<Error>(std::move(error));
}

} // namespace netmend
