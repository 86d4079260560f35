#pragma once

#include <chrono>
#include <cstddef>
#include <deque>
#include <optional>
#include <vector>

namespace netmend {

/// When the values of a meter that sends by itself were sent, worked out from when they were found.
///
/// A busy machine hands several over at once, late. The meter's cadence, the middle one of the last steps
/// from one arrival to the next, gives them their spacing back: of values that arrive together the last is
/// placed at the arrival, those before it by one cadence each; and no value lies nearer to the one before it
/// than nine tenths of the cadence, so that a late arrival followed by a punctual one takes nothing from the
/// time between them. Before three steps are known, values that arrive together have the same time.
class SampleClock {
public:
  using Moment = std::chrono::duration<double, std::milli>;

  /// The times of so many values found at `now`, in the order sent; never before an earlier one.
  [[nodiscard]] std::vector<Moment> arrived(Moment now, std::size_t count);
  /// From one value to the next; 0: not known yet.
  [[nodiscard]] Moment cadence() const;

private:
  std::deque<Moment> steps_; ///< from one arrival to the next, a value
  std::optional<Moment> arrival_;
  std::optional<Moment> last_;
};

} // namespace netmend
