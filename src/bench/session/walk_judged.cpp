// What the readings of a walk say beside those of good boards.
#include <algorithm>

#include "bench_walk.h"
#include "netmend/casework/good_walks.h"
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
  const OpenBoard* board = job_.board();
  if (board == nullptr || goodSession_.walk.readings.empty()) {
    weighing_.cancel();
    // A walk that has just gone into the book stays in force until the book's walks have been weighed with
    // it.
    if (board == nullptr || !job_.weighing()) live_ = nullptr;
    return;
  }
  std::vector<Walk> good = job_.goodWalks();
  good.push_back(goodSession_.walk);
  weighing_.run<ExpectedTable>(
      [good = std::move(good), lookup = board->lookup, kept = board->board, data = &job_.data()](
          const std::stop_token&) { return expectedValues(good, lookup.get(), data->probing); },
      [this](ExpectedTable table) {
        live_ = std::make_shared<const ExpectedTable>(std::move(table));
        judge();
        rejudgeKept();
        Q_EMIT changed();
      });
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
  const OpenBoard* board = job_.board();
  return judgeWalk(walk, table, board != nullptr ? board->lookup.get() : nullptr, job_.data().probing);
}

void BenchWalk::judge() {
  badJudged_ = judgedBy(expected(), badSession_.walk);
  recallVerdicts();
  // A good board is held against the others, not against itself.
  judged_ = good_ ? judgedBy(job_.expected(), goodSession_.walk) : badJudged_;
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
  setting.condition.temperature.reset();
  return (good_ ? job_.expected() : expected()).find(*point, setting);
}

std::vector<std::size_t> BenchWalk::oddOnes() const {
  std::vector<std::size_t> out;
  const Walk& walk = badSession_.walk;
  for (std::size_t i = 0; i < walk.readings.size(); ++i) {
    const bool again =
        std::any_of(walk.readings.begin() + static_cast<std::ptrdiff_t>(i) + 1, walk.readings.end(),
                    [&](const Reading& r) {
                      return r.point == walk.readings[i].point && r.mode == walk.readings[i].mode;
                    });
    if (!again && isFlag(badJudged_.verdicts[i].kind)) out.push_back(i);
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
  const OpenBoard* board = job_.board();
  const ExpectedTable& table = good_ ? job_.expected() : expected();
  const JudgedWalk& judged = judged_;
  for (const ProbePoint& point : shown.points) {
    StripPin pin;
    const auto dot = point.label.find('.');
    pin.label = dot == std::string::npos ? point.label : point.label.substr(dot + 1);
    if (board != nullptr)
      if (const Pin* p = board->board->pins.find(point.pin); p != nullptr && p->net.known())
        if (const Net* net = board->board->nets.find(p->net.value)) pin.net = net->name;
    ReadingSetting setting{shown.mode, shown.other, shown.condition, std::nullopt};
    setting.condition.temperature.reset();
    if (const Expected* expected = table.find(point, setting)) {
      pin.expected = intervalsOf(*expected);
      pin.expectedOl = expected->expectsOverLimit();
    }
    for (std::size_t i = 0; i < shown.readings.size(); ++i) {
      const Reading& reading = shown.readings[i];
      if (reading.point != point || reading.mode != shown.mode) continue;
      const Verdict& verdict = judged.verdicts[i];
      pin.reading = StripReading{reading.value, verdict.kind};
    }
    out.pins.push_back(std::move(pin));
  }
  return out;
}

} // namespace netmend
