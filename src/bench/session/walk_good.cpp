#include <utility>

#include "bench_walk.h"
#include "netmend/casework/good_walks.h"
#include "netmend/probing/walk_file.h"
#include "walk_turn.h"

/// The walk of a good board: in a file of its own while it is under way, then in the book.
namespace netmend {

namespace {

QString readingOf(const Reading& reading) {
  return BenchWalk::tr("reading of the good board at %1").arg(QString::fromStdString(reading.point.label));
}

/// Puts a reading at the end of a session, or takes it from there.
struct AtEnd {
  Reading reading;
  [[nodiscard]] Result<void> put(WalkSession& session) const {
    if (indexOf(session.walk, reading.point) == session.walk.points.size())
      session.walk.points.push_back(reading.point);
    session.walk.readings.push_back(reading);
    session.turn = after(session, reading.point);
    return {};
  }
  [[nodiscard]] Result<void> take(WalkSession& session) const {
    // By its time: what it is called may have changed with the board.
    auto& all = session.walk.readings;
    if (all.empty() || all.back().time != reading.time || all.back().value != reading.value)
      return failure({pattern("core", "the reading is gone already")});
    all.pop_back();
    session.turn = indexOf(session.walk, reading.point);
    return {};
  }
};

} // namespace

std::filesystem::path BenchWalk::goodFile(const std::string& boardUuid) const {
  return job_.folders().store / ("good-walk-" + boardUuid + ".netmend-walk.json");
}

void BenchWalk::resumeGood() {
  goodSession_ = {};
  goodCondition_ = false;
  const BoardUnderWork* board = job_.board();
  if (board == nullptr) return;
  goodSession_.walk = emptyWalk(true);
  std::error_code error;
  // Walked before the board's uuid was made from a SHA-256, it stands under the former one.
  std::filesystem::path file = goodFile(boardUuid());
  if (!std::filesystem::exists(file, error) && !board->formerUuid.empty()) file = goodFile(board->formerUuid);
  if (!std::filesystem::exists(file, error)) return;
  auto walk = readWalkFile(file);
  if (!walk || (walk->boardUuid != boardUuid() && walk->boardUuid != board->formerUuid)) return;
  walk->boardUuid = boardUuid();
  matchToBoard(*walk, *board->lookup);
  // The program ended after this walk went into the book and before its file went: it counts once.
  const auto inBook = [&](const Walk& kept) { return kept.readings == walk->readings; };
  if (std::any_of(job_.goodWalks().begin(), job_.goodWalks().end(), inBook)) {
    std::filesystem::remove(file, error);
    return;
  }
  if (!walk->points.empty())
    if (const Pin* pin = board->board->pins.find(walk->points.front().pin)) part_ = pin->part;
  goodCondition_ = !walk->readings.empty();
  goodSession_ = takenUp(std::move(*walk));
}

void BenchWalk::rememberGood() {
  if (!remembered_.insert(boardUuid()).second) return;
  for (const Reading& reading : goodSession_.walk.readings) {
    const auto [put, take] = goodActs(reading);
    job_.remember(readingOf(reading), put, take);
  }
}

std::pair<BenchJob::Act, BenchJob::Act> BenchWalk::goodActs(const Reading& reading) {
  const AtEnd end{reading};
  const std::string uuid = boardUuid();
  return {
      [this, uuid, end] { return changeGood(uuid, [&](WalkSession& session) { return end.put(session); }); },
      [this, uuid, end] {
        return changeGood(uuid, [&](WalkSession& session) { return end.take(session); });
      }};
}

Result<void> BenchWalk::changeGood(const std::string& uuid, const SessionChange& change) {
  const bool here = boardUuid() == uuid;
  WalkSession after = goodSession_;
  if (!here) {
    auto walk = readWalkFile(goodFile(uuid));
    if (!walk) return failure(walk.error());
    after = resumed(std::move(*walk), {});
  }
  if (auto changed = change(after); !changed) return changed;
  if (auto written = writeWalkFile(goodFile(uuid), after.walk); !written) return written;
  if (!here) return {};
  showGood(std::move(after));
  return {};
}

void BenchWalk::showGood(WalkSession session) {
  goodSession_ = std::move(session);
  good_ = goodCondition_ = true;
  last_.reset();
  weigh();
  judge();
  Q_EMIT changed();
}

Result<void> BenchWalk::takeGood(const Reading& reading) {
  const auto [put, take] = goodActs(reading);
  return job_.perform(readingOf(reading), put, take);
}

bool BenchWalk::keepGood() {
  if (goodSession_.walk.readings.empty()) return false;
  WalkSession kept = goodSession_;
  if (job_.board() != nullptr) kept.walk.boardUuid = boardUuid();
  const auto done = job_.perform(
      tr("walk of a good board"), [this, kept] { return putGoodIntoBook(kept); },
      [this, kept] { return takeGoodOutOfBook(kept); });
  if (!done) job_.fail(done.error());
  return done.has_value();
}

Result<void> BenchWalk::putGoodIntoBook(const WalkSession& kept) {
  if (boardUuid() != kept.walk.boardUuid)
    return failure({pattern("core", "another board is open"), job_.board()->file.string()});
  if (auto put = job_.keepGoodWalk(kept.walk); !put) return put;
  std::error_code error;
  std::filesystem::remove(goodFile(kept.walk.boardUuid), error);
  goodSession_ = begun(true);
  good_ = goodCondition_ = false; // the job's board is next
  last_.reset();
  judge();
  Q_EMIT changed();
  return {};
}

Result<void> BenchWalk::takeGoodOutOfBook(const WalkSession& kept) {
  if (boardUuid() != kept.walk.boardUuid)
    return failure({pattern("core", "another board is open"), job_.board()->file.string()});
  // First the file: a walk that is in both counts once, one that is in neither is lost.
  if (auto written = writeWalkFile(goodFile(kept.walk.boardUuid), kept.walk); !written) return written;
  if (auto taken = job_.takeBackGoodWalk(kept.walk); !taken) {
    std::error_code error;
    std::filesystem::remove(goodFile(kept.walk.boardUuid), error);
    return taken;
  }
  showGood(kept);
  return {};
}

} // namespace netmend
