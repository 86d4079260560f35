#include "netmend/meter/settle_detector.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace netmend {

namespace {

/// How far a line through the samples climbs over their time, and how far they scatter about it.
struct Trend {
  double climb = 0.0;
  double scatter = 0.0;
};

Trend trendOf(const std::deque<MeterSample>& window) {
  const auto n = static_cast<double>(window.size());
  double meanTime = 0.0;
  double meanValue = 0.0;
  for (const auto& sample : window) {
    meanTime += static_cast<double>(sample.time.count()) / n;
    meanValue += *sample.reading.value / n;
  }
  double tt = 0.0;
  double tv = 0.0;
  for (const auto& sample : window) {
    const double t = static_cast<double>(sample.time.count()) - meanTime;
    tt += t * t;
    tv += t * (*sample.reading.value - meanValue);
  }
  if (tt <= 0.0) return {};
  const double slope = tv / tt;
  double squares = 0.0;
  for (const auto& sample : window) {
    const double t = static_cast<double>(sample.time.count()) - meanTime;
    squares += std::pow(*sample.reading.value - meanValue - slope * t, 2);
  }
  const auto span = static_cast<double>((window.back().time - window.front().time).count());
  return {slope * span, std::sqrt(squares / n)};
}

} // namespace

SettleRules settleRulesFor(ReadingMode mode) {
  SettleRules rules;
  switch (mode) {
  case ReadingMode::diode:
  case ReadingMode::diodeReverse:
    break;
  case ReadingMode::ohms:
  case ReadingMode::continuity:
    rules.leastDigit = 0.1;
    break;
  case ReadingMode::milliohms:
    rules.leastDigit = 1e-4;
    break;
  case ReadingMode::volts:
    rules.openLeads = OpenLeads::nearZero;
    break;
  case ReadingMode::dropUnderCurrent:
    rules.openLeads = OpenLeads::unknown;
    rules.leastDigit = 1e-6;
    break;
  case ReadingMode::temperature:
    rules.openLeads = OpenLeads::unknown;
    rules.leastDigit = 0.1;
    break;
  }
  return rules;
}

bool SettleDetector::looksOpen(const MeterValue& reading) const {
  if (!reading.value) return true;
  return rules_.openLeads == OpenLeads::nearZero && std::abs(*reading.value) <= rules_.nearZero;
}

double SettleDetector::digitAt(const MeterValue& reading) const {
  const double finest = std::max(rules_.leastDigit, std::abs(reading.value.value_or(0.0)) / rules_.counts);
  // A meter that writes nothing as plain "0" has not become a coarse one.
  return std::clamp(reading.lastDigit, finest, 10.0 * finest);
}

bool SettleDetector::spansHold() const {
  return window_.size() >= std::max<std::size_t>(rules_.samples, 3) &&
         window_.back().time - window_.front().time >= rules_.hold;
}

bool SettleDetector::creeping() const {
  const auto trend = trendOf(window_);
  // Noise alone makes a line climb too; three times the scatter it does not.
  return std::abs(trend.climb) >= 2.0 * digitAt(window_.back().reading) &&
         std::abs(trend.climb) > 3.0 * trend.scatter;
}

bool SettleDetector::still() const {
  const auto [lowest, highest] =
      std::minmax_element(window_.begin(), window_.end(), [](const MeterSample& a, const MeterSample& b) {
        return *a.reading.value < *b.reading.value;
      });
  return *highest->reading.value - *lowest->reading.value <= bandAt(window_.back().reading);
}

double SettleDetector::settledShare() const {
  if (held_ && !jumped_) return 1.0;
  if (window_.empty()) return 0.0;
  const double band = bandAt(window_.back().reading);
  double lowest = *window_.back().reading.value;
  double highest = lowest;
  std::size_t values = 0;
  auto since = window_.back().time;
  for (auto sample = window_.rbegin(); sample != window_.rend(); ++sample) {
    lowest = std::min(lowest, *sample->reading.value);
    highest = std::max(highest, *sample->reading.value);
    if (highest - lowest > band) break;
    since = sample->time;
    ++values;
  }
  const auto needed = static_cast<double>(std::max<std::size_t>(rules_.samples, 3));
  const auto stood = static_cast<double>((window_.back().time - since).count());
  return std::min(
      {1.0, static_cast<double>(values) / needed, stood / static_cast<double>(rules_.hold.count())});
}

MeterValue SettleDetector::middle() const {
  std::vector<MeterValue> values;
  values.reserve(window_.size());
  for (const auto& sample : window_)
    values.push_back(sample.reading);
  const auto at = values.begin() + static_cast<std::ptrdiff_t>((values.size() - 1) / 2);
  std::nth_element(values.begin(), at, values.end(),
                   [](const MeterValue& a, const MeterValue& b) { return *a.value < *b.value; });
  return *at;
}

void SettleDetector::addOpen(const MeterSample& sample) {
  window_.clear();
  if (!openSince_) openSince_ = sample.time;
  if (held_ && sample.time + sample.span - *openSince_ >= rules_.lift) release();
  // Too short for a lift, the value after it tells whether the probe came down elsewhere.
  jumped_ = held_;
  phase_ = held_ ? SettlePhase::held : SettlePhase::open;
}

void SettleDetector::addUnseen(const MeterSample& sample) {
  if (sample.unseen >= rules_.hold) missed_ = true; // long enough for a whole touch
  if (!held_ || sample.unseen < rules_.lift) return;
  // As after leads too shortly open for a lift: the values tell whether the probe came down elsewhere, unless
  // they are the same there. Nobody gets there in less than twice a lift, but for what was seen of it.
  window_.clear();
  jumped_ = true;
  doubtful_ = doubtful_ || openSince_ || looksOpen(sample.reading) || sample.unseen >= 2 * rules_.lift;
}

void SettleDetector::followUntaken(const MeterSample& sample) {
  if (held_) return;
  const bool open = looksOpen(sample.reading);
  if (open && !untakenSince_) return;
  if (!untakenSince_) untakenSince_ = last_.value_or(sample.time);
  untakenUnseen_ += sample.unseen;
  if (!open)
    ++untakenValues_;
  else
    judgeUntaken(sample.time, untakenValues_);
}

void SettleDetector::judgeUntaken(std::chrono::milliseconds until, std::size_t values) {
  if (untakenSince_ && values < rules_.samples && untakenUnseen_ >= rules_.lift &&
      until - *untakenSince_ >= rules_.hold)
    missed_ = true;
  forgetUntaken();
}

void SettleDetector::forgetUntaken() {
  untakenSince_.reset();
  untakenValues_ = 0;
  untakenUnseen_ = {};
}

void SettleDetector::followJump(const MeterSample& sample) {
  if (!taken_ || jumped_) return;
  if (std::abs(*sample.reading.value - *taken_) <= rules_.jump * bandAt(sample.reading)) {
    taken_ = sample.reading.value;
  } else {
    jumped_ = true;
    window_.clear();
  }
}

void SettleDetector::hold(const MeterValue& reading) {
  held_ = rules_.openLeads != OpenLeads::unknown;
  jumped_ = false;
  doubtful_ = false;
  taken_ = reading.value;
  forgetUntaken();
  phase_ = held_ ? SettlePhase::held : phase_;
}

void SettleDetector::release() {
  held_ = false;
  jumped_ = false;
  doubtful_ = false;
  taken_.reset();
}

void SettleDetector::judgeJump() {
  const auto now = middle();
  if (taken_ && std::abs(*now.value - *taken_) > bandAt(now)) return release();
  if (std::exchange(doubtful_, false)) missed_ = true;
  if (taken_) hold(now); // it has slipped and is back
}

std::optional<SettleDetector::Taken> SettleDetector::add(const MeterSample& sample) {
  if (sample.reading.value && !std::isfinite(*sample.reading.value)) return std::nullopt;
  if (last_ && sample.time < *last_) return std::nullopt;
  if (latest_) {
    addUnseen(sample);
    followUntaken(sample);
  }
  if (last_ && sample.time - *last_ > rules_.gap) interrupt();
  last_ = sample.time;
  latest_ = sample.reading;
  if (looksOpen(sample.reading)) {
    addOpen(sample);
    return std::nullopt;
  }
  openSince_.reset();
  if (held_) followJump(sample);
  window_.push_back(sample);
  while (window_.size() > std::max<std::size_t>(rules_.samples, 3) &&
         window_[1].time <= sample.time - rules_.hold)
    window_.pop_front();
  const bool settled = spansHold() && still() && !creeping();
  if (held_ && settled && jumped_) judgeJump();
  if (held_) {
    phase_ = SettlePhase::held;
    return std::nullopt;
  }
  phase_ = settled                     ? SettlePhase::settled
           : spansHold() && creeping() ? SettlePhase::rising
                                       : SettlePhase::moving;
  if (!settled || rules_.openLeads == OpenLeads::unknown) return std::nullopt;
  const Taken taken{middle(), Settling::settled};
  // What came before these values may have been another touch.
  if (untakenValues_ > window_.size()) judgeUntaken(window_.front().time, untakenValues_ - window_.size());
  hold(taken.reading);
  return taken;
}

std::optional<SettleDetector::Taken> SettleDetector::take() {
  if (!latest_) return std::nullopt;
  Taken taken{*latest_, Settling::unknown};
  if (!latest_->value) {
    // Nothing to lift: the next value is a new touch.
    release();
    phase_ = SettlePhase::open;
    return taken;
  }
  if (!window_.empty() && spansHold()) {
    if (creeping())
      taken.settling = Settling::rising;
    else if (still())
      taken = {middle(), Settling::settled};
  }
  taken.again = held_ && !jumped_;
  hold(taken.reading);
  // Where a value that was not still goes from here says nothing: only a lift ends this touch.
  if (taken.settling != Settling::settled) taken_.reset();
  return taken;
}

void SettleDetector::interrupt() {
  window_.clear();
  openSince_.reset();
  latest_.reset();
  forgetUntaken();
  phase_ = held_ ? SettlePhase::held : SettlePhase::open;
}

void SettleDetector::setRules(const SettleRules& rules) {
  rules_ = rules;
  taken_.reset();
  interrupt();
}

} // namespace netmend
