#include "line_framer.h"

#include <fmt/format.h>

namespace netmend {

std::vector<Result<std::string>> LineFramer::add(std::string_view bytes) {
  std::vector<Result<std::string>> lines;
  for (const char c : bytes) {
    if (c == '\n' || c == '\r') {
      if (!line_.empty() && !skipping_) lines.emplace_back(std::move(line_));
      line_.clear();
      skipping_ = false;
    } else if (!skipping_) {
      if (line_.size() == longest_) {
        lines.emplace_back(failure({pattern("core", "a line without end"), "", "", printable(line_),
                                    said(pattern("core", "at most {} characters"), longest_)}));
        line_.clear();
        skipping_ = true;
      } else {
        line_ += c;
      }
    }
  }
  return lines;
}

std::string printable(std::string_view bytes) {
  std::string out;
  for (const char c : bytes.substr(0, 40)) {
    if (c >= 0x20 && c < 0x7F)
      out += c;
    else
      out += fmt::format("\\x{:02X}", static_cast<unsigned char>(c));
  }
  return bytes.size() > 40 ? out + "…" : out;
}

} // namespace netmend
