#include "good_readings.h"

#include <cmath>

#include "netmend/probing/comparison.h"
#include "netmend/probing/reading_entry.h"

namespace netmend::probing {

GoodReadings::GoodReadings(std::span<const Walk> walks, const std::vector<MeterProfile>& meters,
                           const std::string& boardUuid)
    : walks_(walks) {
  for (std::size_t w = 0; w < walks.size(); ++w) {
    if (walks[w].specimen != Specimen::good) continue;
    for (std::size_t i = 0; i < walks[w].readings.size(); ++i) {
      const Reading& reading = walks[w].readings[i];
      if (reading.settling == Settling::rising) continue;
      if (walks[w].boardUuid == boardUuid) {
        take(w, i, reading, meters);
      } else {
        Reading byLabel = reading; // its pin ids are another board description's
        byLabel.point.pin = PinId{};
        byLabel.other.pin = PinId{};
        take(w, i, byLabel, meters);
      }
    }
  }
}

void GoodReadings::take(std::size_t walk, std::size_t index, const Reading& reading,
                        const std::vector<MeterProfile>& meters) {
  const auto point = points_.add(reading);
  if (point >= at_.size()) at_.resize(point + 1);
  GoodReading good{walk, index, valueAtBenchTemperature(reading)};
  if (good.value) {
    const auto* meter = findMeter(meters, reading.meter);
    const auto u = meter != nullptr ? uncertaintyOf(*meter, reading.mode, *good.value) : std::nullopt;
    const double slope = comparisonSlope(reading.mode, *good.value);
    const double hidden = (u ? u->resolution : 0.0) * slope;
    good.leastVariance = hidden * hidden;
    good.calibration = u ? std::hypot(u->calibration, u->leads) * slope : 0.0;
    good.value = toComparison(reading.mode, *good.value);
  }
  auto& all = at_[point];
  if (!all.empty() && all.back().walk == walk)
    all.back() = good; // measured again
  else
    all.push_back(good);
}

} // namespace netmend::probing
