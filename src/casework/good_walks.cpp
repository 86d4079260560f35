#include "netmend/casework/good_walks.h"

#include "netmend/probing/walk_file.h"

namespace netmend {

Result<std::vector<Walk>> loadWalks(const std::vector<std::string>& files, const Lookup* lookup) {
  std::vector<Walk> out;
  for (const auto& file : files) {
    auto walk = readWalkFile(file);
    if (!walk) return failure(walk.error());
    if (lookup != nullptr) matchToBoard(*walk, *lookup);
    out.push_back(std::move(*walk));
  }
  return out;
}

Result<std::vector<Walk>> loadGoodWalks(const std::vector<std::string>& files, const Lookup* lookup) {
  auto out = loadWalks(files, lookup);
  if (!out) return out;
  for (auto& walk : *out) {
    if (walk.specimen == Specimen::faulty)
      return failure({pattern("core", "is the walk of a faulty board and cannot say what a good one reads"),
                      walk.title});
    walk.specimen = Specimen::good;
  }
  return out;
}

Result<std::vector<Walk>> keptGoodWalks(const JobBook& book, const BoardUnderWork& board) {
  const std::string& uuid = board.board->info.uuid;
  std::vector<Walk> out;
  if (!board.formerUuid.empty()) {
    auto former = book.knownGoodWalks(board.formerUuid);
    if (!former) return former;
    out = std::move(*former);
    // The same content under another name: its pins are these.
    for (Walk& walk : out)
      walk.boardUuid = uuid;
  }
  auto kept = book.knownGoodWalks(uuid);
  if (!kept) return kept;
  out.insert(out.end(), std::make_move_iterator(kept->begin()), std::make_move_iterator(kept->end()));
  for (Walk& walk : out)
    matchToBoard(walk, *board.lookup);
  return out;
}

ExpectedTable expectedValues(const std::vector<Walk>& good, const Lookup* lookup, const ProbingData& data) {
  return expectedFromWalks(good, lookup, data.kinds, data.meters, {data.rules.variants, {}});
}

} // namespace netmend
