#include "joined.h"

namespace netmend {

Said joined(const std::vector<Said>& sentences) {
  Said out;
  for (const Said& sentence : sentences) {
    if (sentence.empty()) continue;
    out = out.empty() ? sentence : said(pattern("core", "{}; {}"), out, sentence);
  }
  return out;
}

} // namespace netmend
