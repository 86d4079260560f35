#include "inputs.h"

#include <set>

#include "netmend/probing/walk_file.h"

namespace netmend {

Result<std::vector<Walk>> goodWalksOf(const std::vector<std::string>& files, const std::string& book,
                                      const Lookup* lookup) {
  auto out = loadGoodWalks(files, lookup);
  if (!out || book.empty() || lookup == nullptr) return out;
  const auto opened = JobBook::open(book);
  if (!opened) return failure(opened.error());
  auto kept = keptGoodWalks(*opened, *lookup);
  if (!kept) return kept;
  // A file that is in the book as well is one board, not two.
  std::set<std::string> given;
  for (const Walk& walk : *out)
    given.insert(walkToText(walk));
  for (Walk& walk : *kept)
    if (!given.contains(walkToText(walk))) out->push_back(std::move(walk));
  return out;
}

} // namespace netmend
