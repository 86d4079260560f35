// What good boards of the job's board read: the walks in the book, and the one under way.
#include <utility>

#include "bench_job.h"
#include "netmend/casework/good_walks.h"

namespace netmend {

void BenchJob::readGoodWalks() {
  good_.clear();
  keptWeighed_ = false;
  auto kept = keptGoodWalks(book_, *board_);
  if (!kept)
    fail(kept.error());
  else
    good_ = std::move(*kept);
  weighGoodWalks();
}

void BenchJob::weighGoodWalks() {
  if (good_.empty() && underWay_.readings.empty()) {
    weighing_.cancel();
    expected_ = expectedOfKept_ = std::make_shared<const ExpectedTable>();
    keptWeighed_ = true;
    return;
  }
  struct Weighed {
    std::shared_ptr<const ExpectedTable> kept;
    std::shared_ptr<const ExpectedTable> all;
  };
  weighing_.run<Weighed>(
      [good = good_, underWay = underWay_, kept = keptWeighed_ ? expectedOfKept_ : nullptr, board = *board_,
       data = &data_](const std::stop_token&) mutable {
        const auto weighed = [&] {
          return std::make_shared<const ExpectedTable>(
              expectedValues(good, board.lookup.get(), data->probing));
        };
        Weighed out{kept ? std::move(kept) : weighed(), nullptr};
        out.all = out.kept;
        if (underWay.readings.empty()) return out;
        good.push_back(std::move(underWay));
        out.all = weighed();
        return out;
      },
      [this](Weighed weighed) {
        expectedOfKept_ = std::move(weighed.kept);
        keptWeighed_ = true;
        expected_ = std::move(weighed.all);
        Q_EMIT goodWalksChanged();
      });
}

void BenchJob::setGoodUnderWay(Walk walk) {
  if (!board_ || (walk.readings.empty() && underWay_.readings.empty())) return;
  underWay_ = std::move(walk);
  weighGoodWalks();
  if (!weighing_.busy()) Q_EMIT goodWalksChanged();
}

Result<void> BenchJob::keepGoodWalk(const Walk& walk) {
  if (!board_) return failure({pattern("core", "no board is open")});
  if (auto kept = book_.addKnownGoodWalk(walk); !kept) return failure(kept.error());
  // What is expected stays as it is until the book's walks have been weighed, this one among them.
  underWay_ = {};
  readGoodWalks();
  Q_EMIT goodWalksChanged();
  return {};
}

Result<void> BenchJob::takeBackGoodWalk(const Walk& walk) {
  if (!board_) return failure({pattern("core", "no board is open")});
  if (auto taken = book_.takeBackKnownGoodWalk(walk); !taken) return taken;
  readGoodWalks();
  Q_EMIT goodWalksChanged();
  return {};
}

} // namespace netmend
