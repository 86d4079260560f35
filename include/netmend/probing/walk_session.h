#pragma once

#include <vector>

#include "netmend/base/error.h"
#include "netmend/probing/reading_source.h"
#include "netmend/probing/walk.h"

namespace netmend {

/// A walk under way. A value: copy it to keep a state.
struct WalkSession {
  Walk walk;
  std::size_t turn = 0; ///< index into `walk.points` whose reading is due; size(): all done

  /// What one event changed, so that it can be taken back.
  struct Step {
    std::size_t turnBefore = 0;
    ReadingMode modeBefore = ReadingMode::diode;
    bool tookReading = false;
    bool skippedPoint = false;
    bool addedPoint = false;
  };
  std::vector<Step> steps;
  std::vector<ProbePoint> passedOver{}; ///< never due by themselves: whoever wants one goes there

  [[nodiscard]] bool finished() const { return turn >= walk.points.size(); }
};

/// The first point from `at` on that is not passed over; size(): none.
[[nodiscard]] std::size_t dueFrom(const WalkSession& session, std::size_t at);
/// What is due after the last reading, which is at point `at`: the next point, or, where that reading filled
/// a gap, the next one without a reading. Behind the last point what was left out is due.
[[nodiscard]] std::size_t dueAfterReading(const WalkSession& session, std::size_t at);
/// The same after point `at` was skipped.
[[nodiscard]] std::size_t dueAfterSkipping(const WalkSession& session, std::size_t at);

/// Takes one event in. A value with a label goes to that point (which is added if the list lacks it) and the
/// walk goes on after it; one without goes to the point whose turn it is. Errors leave the session as it was:
/// no point is due, nothing to undo, nothing before the first point.
[[nodiscard]] Result<void> take(WalkSession& session, const ReadingEvent& event, Time now);

} // namespace netmend
