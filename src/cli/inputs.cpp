#include "inputs.h"

#include <algorithm>

namespace netmend {

Result<std::vector<Walk>> goodWalksOf(const std::vector<std::string>& files, const std::string& book,
                                      const BoardUnderWork& board) {
  auto out = loadGoodWalks(files, board.lookup.get());
  if (!out || book.empty() || !board.board) return out;
  const auto opened = JobBook::open(book, BookUse::read);
  if (!opened) return failure(opened.error());
  auto kept = keptGoodWalks(*opened, board);
  if (!kept) return kept;
  // A file that is in the book as well is one board, not two.
  for (Walk& walk : *kept)
    if (std::find(out->begin(), out->end(), walk) == out->end()) out->push_back(std::move(walk));
  return out;
}

} // namespace netmend
