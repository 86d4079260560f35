#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"

namespace netmend {

/// Cuts a stream of bytes into lines, whatever pieces it comes in. LF, CR and CRLF end a line; empty lines
/// are left out. Never holds more than its longest line.
class LineFramer {
public:
  enum class Begin {
    atLine,  ///< the stream begins with a line
    anywhere ///< it may begin within one, whose rest could look like a value: what comes before the first end
             ///< is lost
  };
  explicit LineFramer(Begin begin, std::size_t longest = 256)
      : longest_(longest), skipping_(begin == Begin::anywhere) {}

  /// The lines that these bytes end. An error stands for a line that was too long; it comes as soon as that
  /// is known.
  [[nodiscard]] std::vector<Result<std::string>> add(std::string_view bytes);

private:
  std::size_t longest_;
  bool skipping_;
  std::string line_;
};

/// Bytes of a line as they can be shown in a message: printable ASCII, the rest as `\xNN`, cut after 40.
[[nodiscard]] std::string printable(std::string_view bytes);

} // namespace netmend
