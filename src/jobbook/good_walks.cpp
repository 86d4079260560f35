// Walks of good boards: for all jobs on boards of their kind.
#include "book_work.h"
#include "netmend/jobbook/job_book.h"
#include "netmend/probing/walk_file.h"

namespace netmend {

Result<bool> JobBook::addKnownGoodWalk(const Walk& walk) {
  return guarded(path_, [&]() -> Result<bool> {
    if (walk.specimen != Specimen::good)
      return failure({pattern("core", "only the walk of a board marked good can be kept as known good"),
                      path_.string(), "", walk.title});
    const std::string content = walkToText(walk);
    const long long added = timeNow().time_since_epoch().count();
    soci::statement insert =
        (session_->prepare << "insert into known_good_walk (board_uuid, added, content) "
                              "select :board_uuid, :added, :content where not exists (select 1 from "
                              "known_good_walk where board_uuid = :board_uuid and content = :content)",
         soci::use(walk.boardUuid, "board_uuid"), soci::use(added, "added"), soci::use(content, "content"));
    insert.execute(true);
    return insert.get_affected_rows() > 0;
  });
}

Result<void> JobBook::takeBackKnownGoodWalk(const Walk& walk) {
  return guarded(path_, [&]() -> Result<void> {
    const std::string content = walkToText(walk);
    soci::statement removal =
        (session_->prepare
             << "delete from known_good_walk where board_uuid = :board_uuid and content = :content",
         soci::use(walk.boardUuid), soci::use(content));
    removal.execute(true);
    if (removal.get_affected_rows() == 0)
      return failure(
          {pattern("core", "the book has no such walk of a good board"), path_.string(), "", walk.title});
    return {};
  });
}

Result<std::vector<Walk>> JobBook::knownGoodWalks(const std::string& boardUuid) const {
  return guarded(path_, [&]() -> Result<std::vector<Walk>> {
    std::string content;
    soci::statement rows =
        (session_->prepare
             << "select content from known_good_walk where board_uuid = :board_uuid order by id",
         soci::use(boardUuid), soci::into(content));
    rows.execute();
    std::vector<Walk> out;
    while (rows.fetch()) {
      auto walk = walkFromText(content, path_.string());
      if (!walk) return failure(walk.error());
      out.push_back(std::move(*walk));
    }
    return out;
  });
}

} // namespace netmend
