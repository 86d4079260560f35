#include "netmend/probing/walk_session.h"

#include <algorithm>

namespace netmend {

namespace {

WalkSession::Step stepFrom(const WalkSession& session) {
  WalkSession::Step step;
  step.turnBefore = session.turn;
  step.modeBefore = session.walk.mode;
  return step;
}

Result<void> takeValue(WalkSession& session, const ValueTaken& taken, Time now) {
  auto step = stepFrom(session);
  Walk& walk = session.walk;
  std::size_t at = session.turn;
  const PinId pin = taken.whole ? taken.whole->point.pin : PinId{};
  if (!taken.label.empty() || pin) {
    // The same label may stand in the list twice: the next one from here on is meant.
    const auto named = [&](const ProbePoint& p) {
      return pin && p.pin ? p.pin == pin : !taken.label.empty() && p.label == taken.label;
    };
    const auto here = walk.points.begin() + static_cast<std::ptrdiff_t>(std::min(at, walk.points.size()));
    auto it = std::find_if(here, walk.points.end(), named);
    if (it == walk.points.end()) it = std::find_if(walk.points.begin(), walk.points.end(), named);
    at = static_cast<std::size_t>(it - walk.points.begin());
    if (it == walk.points.end()) {
      walk.points.push_back({pin, taken.label});
      step.addedPoint = true;
    }
  } else if (session.finished()) {
    return failure({pattern("core", "no point is due: name one before the value")});
  }
  Reading reading;
  if (taken.whole) {
    reading = *taken.whole;
  } else {
    reading.other = walk.other;
    reading.mode = taken.mode.value_or(walk.mode);
    reading.meter = walk.meter;
    reading.by = walk.by;
    reading.condition = walk.condition;
    reading.time = now;
  }
  reading.point = walk.points[at];
  reading.value = taken.value;
  reading.settling = taken.settling;
  walk.readings.push_back(std::move(reading));
  session.turn = at + 1;
  step.tookReading = true;
  session.steps.push_back(step);
  return {};
}

Result<void> undo(WalkSession& session) {
  if (session.steps.empty()) return failure({pattern("core", "nothing to take back")});
  const auto step = session.steps.back();
  session.steps.pop_back();
  session.turn = step.turnBefore;
  session.walk.mode = step.modeBefore;
  if (step.tookReading) session.walk.readings.pop_back();
  if (step.addedPoint) session.walk.points.pop_back();
  if (step.skippedPoint) session.walk.skipped.pop_back();
  return {};
}

} // namespace

Result<void> take(WalkSession& session, const ReadingEvent& event, Time now) {
  if (const auto* taken = std::get_if<ValueTaken>(&event)) return takeValue(session, *taken, now);
  if (std::holds_alternative<UndoLast>(event)) return undo(session);
  auto step = stepFrom(session);
  if (std::holds_alternative<PointSkipped>(event)) {
    if (session.finished()) return failure({pattern("core", "no point is due that could be skipped")});
    session.walk.skipped.push_back(session.walk.points[session.turn]);
    ++session.turn;
    step.skippedPoint = true;
  } else if (std::holds_alternative<StepBack>(event)) {
    if (session.turn == 0) return failure({pattern("core", "this is the first point")});
    --session.turn;
  } else if (const auto* changed = std::get_if<ModeChanged>(&event)) {
    session.walk.mode = changed->mode;
  }
  session.steps.push_back(step);
  return {};
}

} // namespace netmend
