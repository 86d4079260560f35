#include "sample_clock.h"

#include <algorithm>

namespace netmend {

namespace {

constexpr std::size_t stepsKept = 15;
constexpr std::size_t stepsNeeded = 3;
constexpr double leastSpacing = 0.9; ///< of the cadence

} // namespace

SampleClock::Moment SampleClock::cadence() const {
  if (steps_.size() < stepsNeeded) return {};
  std::vector<Moment> sorted(steps_.begin(), steps_.end());
  const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
  std::nth_element(sorted.begin(), middle, sorted.end());
  return *middle;
}

std::vector<SampleClock::Moment> SampleClock::arrived(Moment now, std::size_t count) {
  std::vector<Moment> times;
  if (count == 0) return times;
  if (arrival_) {
    steps_.push_back((now - *arrival_) / static_cast<double>(count));
    if (steps_.size() > stepsKept) steps_.pop_front();
  }
  arrival_ = now;
  const Moment step = cadence();
  for (std::size_t left = count; left-- > 0;) {
    Moment time = now - step * static_cast<double>(left);
    if (last_) time = std::max(time, *last_ + leastSpacing * step);
    last_ = time;
    times.push_back(time);
  }
  return times;
}

} // namespace netmend
