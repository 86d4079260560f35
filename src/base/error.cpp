#include "netmend/base/error.h"

namespace netmend {

std::string Error::text() const {
  std::string out;
  if (!file.empty()) out += file + ": ";
  if (!place.empty()) out += place + ": ";
  out += message;
  if (!found.empty() && !expected.empty())
    out += " (found " + found + "; expected " + expected + ")";
  else if (!found.empty())
    out += " (found " + found + ")";
  else if (!expected.empty())
    out += " (expected " + expected + ")";
  return out;
}

} // namespace netmend
