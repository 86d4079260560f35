// Readings that stand one pin beside where they were taken.
#include "bench_walk.h"
#include "walk_turn.h"

namespace netmend {

QString BenchWalk::shiftWords() const {
  if (!shift_) return {};
  const bool leftOut = shift_->kind == ShiftKind::pinLeftOut;
  const QString from = QString::fromStdString(walk().readings[shift_->firstReading].point.label);
  return leftOut
             ? tr("All from %1 on stand one pin beside: was %1 left out? X moves them on").arg(from)
             : tr("All from %1 on stand one pin beside: was a pin read twice? X moves them back").arg(from);
}

Result<void> BenchWalk::moveShifted() {
  if (!shift_) return failure({pattern("core", "the readings stand where they were taken, as it seems")});
  const std::vector<Reading>& readings = walk().readings;
  const auto to = shiftedBack(walk(), session().passedOver, *shift_);
  const bool leftOut = shift_->kind == ShiftKind::pinLeftOut;
  const std::size_t first = shift_->firstReading;
  const std::size_t turn = indexOf(walk(), (leftOut ? readings[first] : readings.back()).point);
  const QString what = leftOut ? tr("readings moved on by one pin") : tr("readings moved back by one pin");
  if (good_) return moveGood(what, to, turn);
  const auto goingTo = [this, part = part_](std::size_t at) {
    return [this, part, at] {
      if (part_ != part) return;
      badSession_.turn = at;
      last_.reset();
      Q_EMIT changed();
    };
  };
  const std::vector<JobReadingId> moved(kept_.begin() + static_cast<std::ptrdiff_t>(first), kept_.end());
  return job_.moveReadings(what, moved, to, goingTo(turn), goingTo(badSession_.turn));
}

Result<void> BenchWalk::moveGood(const QString& what, const std::vector<ProbePoint>& to, std::size_t turn) {
  const std::size_t first = shift_->firstReading;
  std::vector<ProbePoint> from;
  for (std::size_t i = first; i < goodSession_.walk.readings.size(); ++i)
    from.push_back(goodSession_.walk.readings[i].point);
  const auto moving = [this, uuid = boardUuid(), first](const std::vector<ProbePoint>& points,
                                                        std::size_t at) -> BenchJob::Act {
    return [this, uuid, first, points, at] {
      return changeGood(uuid, [&](WalkSession& session) -> Result<void> {
        if (session.walk.readings.size() < first + points.size())
          return failure({pattern("core", "the reading is gone already")});
        for (std::size_t i = 0; i < points.size(); ++i)
          session.walk.readings[first + i].point = points[i];
        session.turn = at;
        return {};
      });
    };
  };
  return job_.perform(what, moving(to, turn), moving(from, goodSession_.turn));
}

} // namespace netmend
