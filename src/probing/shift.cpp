#include "netmend/probing/shift.h"

#include <algorithm>
#include <cmath>

#include "densities.h"
#include "netmend/probing/comparison.h"

namespace netmend {

using probing::Densities;

namespace {

constexpr double shiftedWalks = 0.01;   ///< share of walks in which it happens; estimated
constexpr double certainty = 100.0;     ///< odds at which it is said
constexpr double tellingRatio = 10.0;   ///< of the likelihoods at which a reading tells by itself
constexpr std::size_t leastTelling = 3; ///< readings

/// One reading of the run: at which place of the walk's order it was put down.
struct Placed {
  std::size_t reading;
  std::size_t place;
};

class ShiftSearch {
public:
  ShiftSearch(const Walk& walk, const std::vector<ProbePoint>& passedOver, const ExpectedTable& expected,
              const ProbingData& data)
      : walk_(walk), expected_(expected), data_(data) {
    for (const ProbePoint& point : walk.points)
      if (std::find(passedOver.begin(), passedOver.end(), point) == passedOver.end()) order_.push_back(point);
  }

  [[nodiscard]] std::optional<Shift> find() const {
    const auto run = lastRun();
    if (run.size() < leastTelling) return std::nullopt;
    const std::optional<Shift> out = best(run, ShiftKind::pinLeftOut);
    const std::optional<Shift> twice = best(run, ShiftKind::pinReadTwice);
    if (!twice || (out && out->evidence >= twice->evidence)) return out;
    return twice;
  }

private:
  /// The last readings that were taken one pin after the other, or one pin again, in the way of the last one.
  [[nodiscard]] std::vector<Placed> lastRun() const {
    std::vector<Placed> run;
    for (std::size_t i = walk_.readings.size(); i-- > 0;) {
      const Reading& reading = walk_.readings[i];
      const auto at = std::find(order_.begin(), order_.end(), reading.point);
      const auto place = static_cast<std::size_t>(at - order_.begin());
      if (at == order_.end() || !sameSetting(reading, walk_.readings.back())) break;
      if (!run.empty() && place > run.back().place) break;
      run.push_back({i, place});
    }
    std::reverse(run.begin(), run.end());
    return run;
  }

  /// Logarithm of how likely the reading is at that place, where a board may be faulty; none: nothing to
  /// compare with.
  [[nodiscard]] std::optional<double> likelihoodAt(const Reading& reading, std::size_t place) const {
    const FaultReadings* faults = data_.rules.find(reading.mode);
    const Expected* expected = expected_.find(order_[place], settingOf(reading));
    if (faults == nullptr || expected == nullptr) return std::nullopt;
    const Densities densities(*expected, findMeter(data_.meters, reading.meter), *faults);
    const double fault = data_.rules.faultPrior;
    if (!reading.value) return std::log(densities.chanceOfOverLimit(fault));
    return std::log(densities.chance(toComparison(reading.mode, *valueAtBenchTemperature(reading)), fault));
  }

  /// The likeliest place at which it began, if that explains the readings clearly better than none.
  [[nodiscard]] std::optional<Shift> best(const std::vector<Placed>& run, ShiftKind kind) const {
    const std::size_t last = order_.size() - 1;
    // Behind the last pin there is none that could have been touched, nor one before the first.
    if (kind == ShiftKind::pinLeftOut && run.back().place == last) return std::nullopt;
    Shift shift{kind, 0, 0, 0.0};
    std::optional<Shift> found;
    for (std::size_t i = run.size(); i-- > 0;) {
      const Placed& each = run[i];
      if (kind == ShiftKind::pinReadTwice && each.place == 0) break;
      const Reading& reading = walk_.readings[each.reading];
      const auto own = likelihoodAt(reading, each.place);
      const auto neighbours =
          likelihoodAt(reading, kind == ShiftKind::pinLeftOut ? each.place + 1 : each.place - 1);
      shift.firstReading = each.reading;
      if (own && neighbours) {
        const double gain = *neighbours - *own;
        shift.evidence += gain;
        if (gain > std::log(tellingRatio)) ++shift.telling;
      }
      // It began with the first reading of a pin.
      if (i > 0 && run[i - 1].place == each.place) continue;
      if (!found || shift.evidence > found->evidence) found = shift;
    }
    if (!found || found->telling < leastTelling) return std::nullopt;
    const double begins = 2.0 * static_cast<double>(order_.size()); // here or there, this way or that
    if (found->evidence < std::log(certainty * begins / shiftedWalks)) return std::nullopt;
    return found;
  }

  const Walk& walk_;
  const ExpectedTable& expected_;
  const ProbingData& data_;
  std::vector<ProbePoint> order_;
};

} // namespace

std::optional<Shift> shiftIn(const Walk& walk, const std::vector<ProbePoint>& passedOver,
                             const ExpectedTable& expected, const ProbingData& data) {
  return ShiftSearch(walk, passedOver, expected, data).find();
}

std::vector<ProbePoint> shiftedBack(const Walk& walk, const std::vector<ProbePoint>& passedOver,
                                    const Shift& shift) {
  std::vector<ProbePoint> order;
  for (const ProbePoint& point : walk.points)
    if (std::find(passedOver.begin(), passedOver.end(), point) == passedOver.end()) order.push_back(point);
  std::vector<ProbePoint> out;
  for (std::size_t i = shift.firstReading; i < walk.readings.size(); ++i) {
    const auto at = std::find(order.begin(), order.end(), walk.readings[i].point);
    out.push_back(shift.kind == ShiftKind::pinLeftOut ? *std::next(at) : *std::prev(at));
  }
  return out;
}

} // namespace netmend
