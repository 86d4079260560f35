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

bool isPassedOver(const WalkSession& session, std::size_t at) {
  const auto& passed = session.passedOver;
  return std::find(passed.begin(), passed.end(), session.walk.points[at]) != passed.end();
}

std::ptrdiff_t readingsAt(const Walk& walk, std::size_t at) {
  return std::count_if(walk.readings.begin(), walk.readings.end(),
                       [&](const Reading& reading) { return reading.point == walk.points[at]; });
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
  session.turn = dueAfterReading(session, at);
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

/// That point, or behind the last one the first that has neither been read nor skipped.
std::size_t orGap(const WalkSession& session, std::size_t at) {
  const Walk& walk = session.walk;
  if (at < walk.points.size()) return at;
  for (std::size_t i = dueFrom(session, 0); i < walk.points.size(); i = dueFrom(session, i + 1)) {
    const auto& skipped = walk.skipped;
    if (readingsAt(walk, i) == 0 &&
        std::find(skipped.begin(), skipped.end(), walk.points[i]) == skipped.end())
      return i;
  }
  return at;
}

} // namespace

std::size_t dueFrom(const WalkSession& session, std::size_t at) {
  while (at < session.walk.points.size() && isPassedOver(session, at))
    ++at;
  return std::min(at, session.walk.points.size());
}

std::size_t dueAfterReading(const WalkSession& session, std::size_t at) {
  std::size_t next = dueFrom(session, at + 1);
  if (readingsAt(session.walk, at) > 1)
    return orGap(session, next); // read again, on purpose, and so perhaps the next one
  while (next < session.walk.points.size() && readingsAt(session.walk, next) > 0)
    next = dueFrom(session, next + 1);
  return orGap(session, next);
}

std::size_t dueAfterSkipping(const WalkSession& session, std::size_t at) {
  return orGap(session, dueFrom(session, at + 1));
}

Result<void> take(WalkSession& session, const ReadingEvent& event, Time now) {
  if (const auto* taken = std::get_if<ValueTaken>(&event)) return takeValue(session, *taken, now);
  if (std::holds_alternative<UndoLast>(event)) return undo(session);
  auto step = stepFrom(session);
  if (std::holds_alternative<PointSkipped>(event)) {
    if (session.finished()) return failure({pattern("core", "no point is due that could be skipped")});
    session.walk.skipped.push_back(session.walk.points[session.turn]);
    session.turn = dueAfterSkipping(session, session.turn);
    step.skippedPoint = true;
  } else if (std::holds_alternative<StepBack>(event)) {
    std::size_t before = session.turn;
    while (before > 0 && isPassedOver(session, before - 1))
      --before;
    if (before == 0) return failure({pattern("core", "this is the first point")});
    session.turn = before - 1;
  } else if (const auto* changed = std::get_if<ModeChanged>(&event)) {
    session.walk.mode = changed->mode;
  }
  session.steps.push_back(step);
  return {};
}

} // namespace netmend
