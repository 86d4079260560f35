#include "netmend/base/error.h"

namespace netmend {

FilePlace FilePlace::atLine(std::size_t line, std::size_t column) {
  FilePlace out;
  out.line = line;
  out.column = column;
  return out;
}

Said FilePlace::said() const {
  Said out;
  if (line > 0 && column > 0)
    out = netmend::said(pattern("core", "line {}, column {}"), line, column);
  else if (line > 0)
    out = netmend::said(pattern("core", "line {}"), line);
  if (!pointer.empty())
    out = out.empty() ? asItIs(pointer) : netmend::said(pattern("core", "{} {}"), out, pointer);
  if (!inside.empty())
    out = out.empty() ? asItIs(inside) : netmend::said(pattern("core", "{}, {}"), inside, out);
  return out;
}

std::string wordsOf(const FilePlace& place) {
  return wordsOf(place.said());
}

Said Error::said() const {
  Said out = message;
  if (!found.empty() && !expected.empty())
    out = netmend::said(pattern("core", "{} (found {}; expected {})"), out, found, expected);
  else if (!found.empty())
    out = netmend::said(pattern("core", "{} (found {})"), out, found);
  else if (!expected.empty())
    out = netmend::said(pattern("core", "{} (expected {})"), out, expected);
  if (!place.empty()) out = netmend::said(pattern("core", "{}: {}"), place.said(), out);
  if (!file.empty()) out = netmend::said(pattern("core", "{}: {}"), file, out);
  return out;
}

} // namespace netmend
