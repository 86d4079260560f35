// What the readings of a walk say beside those of good boards.
#include <algorithm>

#include "bench_walk.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/words.h"

namespace netmend {

namespace {

std::vector<StripInterval> intervalsOf(const Expected& expected) {
  std::vector<StripInterval> out;
  for (const ValueInterval& shown : expected.shown)
    out.push_back({shown.lowest, shown.highest});
  return out;
}

} // namespace

void BenchWalk::weigh() {
  job_.setGoodUnderWay(goodSession_.walk);
}

void BenchWalk::rejudgeKept() {
  if (job_.job() == nullptr || job_.job()->state >= JobState::handedOver) return;
  std::vector<JobReading> changed;
  for (std::size_t i = 0; i < kept_.size(); ++i) {
    // What was judged at the time is not unlearned because the good walks are elsewhere now.
    if (!badJudged_.verdicts[i].expected) continue;
    JobReading now =
        toJobReading(badSession_.walk.readings[i], ReadingPurpose::fault, &badJudged_.verdicts[i]);
    now.id = kept_[i];
    for (const JobReading& entry : job_.job()->readings)
      if (entry.id == now.id && entry.judged != now.judged) changed.push_back(now);
  }
  if (!changed.empty()) job_.rejudge(changed);
}

JudgedWalk BenchWalk::judgedBy(const ExpectedTable& table, const Walk& walk) const {
  const BoardUnderWork* board = job_.board();
  return judgeWalk(walk, table, board != nullptr ? board->lookup.get() : nullptr, job_.data().probing);
}

void BenchWalk::judge() {
  badJudged_ = judgedBy(job_.expected(), badSession_.walk);
  recallVerdicts();
  // A good board is held against the others, not against itself.
  judged_ = good_ ? judgedBy(job_.expectedOfKept(), goodSession_.walk) : badJudged_;
  shift_ = shiftIn(walk(), session().passedOver, good_ ? job_.expectedOfKept() : job_.expected(),
                   job_.data().probing);
}

void BenchWalk::recallVerdicts() {
  if (job_.job() == nullptr) return;
  for (std::size_t i = 0; i < kept_.size(); ++i) {
    Verdict& verdict = badJudged_.verdicts[i];
    if (verdict.kind != VerdictKind::nothingToCompare) continue;
    for (const JobReading& entry : job_.job()->readings) {
      if (entry.id == kept_[i] && entry.judged) verdict = entry.judged->verdict;
    }
  }
}

const Expected* BenchWalk::expectedAtDue() const {
  const auto point = due();
  if (!point) return nullptr;
  ReadingSetting setting;
  setting.mode = mode();
  setting.other = session().walk.other;
  setting.condition = session().walk.condition;
  return (good_ ? job_.expectedOfKept() : job_.expected()).find(*point, setting);
}

std::vector<std::size_t> BenchWalk::oddOnes() const {
  std::vector<std::size_t> out;
  if (job_.job() == nullptr) return out;
  const std::vector<Reading>& readings = badSession_.walk.readings;
  for (const JobReading* entry : inForce(job_.job()->readings)) {
    if (!isEvidence(*entry)) continue;
    // It may have been read again elsewhere: then the walk's own reading stands for it.
    const auto own = std::find(kept_.begin(), kept_.end(), entry->id);
    const auto last = std::find_if(readings.rbegin(), readings.rend(), [&](const Reading& reading) {
      return sameMeasurement(reading, entry->reading);
    });
    if (last == readings.rend()) continue;
    const auto at = static_cast<std::size_t>(own != kept_.end() ? own - kept_.begin()
                                                                : std::prev(last.base()) - readings.begin());
    const VerdictKind kind = own != kept_.end() ? badJudged_.verdicts[at].kind : entry->kind();
    if (entry->comesAndGoes || isFlag(kind)) out.push_back(at);
  }
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) {
    return badJudged_.verdicts[a].odds > badJudged_.verdicts[b].odds;
  });
  return out;
}

PinStrip BenchWalk::strip() const {
  PinStrip out;
  const Walk& shown = session().walk;
  out.mode = shown.mode;
  out.points = shown.title;
  out.other = shown.other.label;
  const BoardUnderWork* board = job_.board();
  const ExpectedTable& table = good_ ? job_.expectedOfKept() : job_.expected();
  const auto readingAt = [&](std::size_t i) {
    return StripReading{shown.readings[i].value, judged_.verdicts[i].kind};
  };
  for (const ProbePoint& point : shown.points) {
    StripPin pin;
    const auto dot = point.label.find('.');
    pin.label = dot == std::string::npos ? point.label : point.label.substr(dot + 1);
    if (board != nullptr)
      if (const Pin* p = board->board->pins.find(point.pin); p != nullptr && p->net.known())
        if (const Net* net = board->board->nets.find(p->net.value)) pin.net = net->name;
    const ReadingSetting setting{shown.mode, shown.other, shown.condition, std::nullopt};
    if (const Expected* expected = table.find(point, setting)) {
      pin.expected = intervalsOf(*expected);
      pin.expectedOl = expected->expectsOverLimit();
    }
    for (std::size_t i = 0; i < shown.readings.size(); ++i)
      if (shown.readings[i].point == point && shown.readings[i].mode == shown.mode)
        pin.reading = readingAt(i);
    out.pins.push_back(std::move(pin));
  }
  if (good_) return out;
  // Where it comes and goes, the odd reading is what counts.
  for (const std::size_t i : oddOnes())
    for (std::size_t p = 0; p < shown.points.size(); ++p)
      if (shown.points[p] == shown.readings[i].point && shown.readings[i].mode == shown.mode)
        out.pins[p].reading = readingAt(i);
  return out;
}

} // namespace netmend
