#include "inputs.h"

namespace netmend {

Result<std::vector<Walk>> goodWalksOf(const std::vector<std::string>& files, const std::string& book,
                                      const Lookup* lookup) {
  auto out = loadGoodWalks(files, lookup);
  if (!out || book.empty() || lookup == nullptr) return out;
  const auto opened = JobBook::open(book);
  if (!opened) return failure(opened.error());
  auto kept = keptGoodWalks(*opened, *lookup);
  if (!kept) return kept;
  out->insert(out->end(), kept->begin(), kept->end());
  return out;
}

} // namespace netmend
