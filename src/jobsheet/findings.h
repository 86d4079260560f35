#pragma once

#include <optional>
#include <vector>

#include "netmend/drawing/pin_strip.h"
#include "netmend/jobbook/job.h"

namespace netmend {

/// What was read at one place in one way: as found, and after the repair. The latest of each.
struct ReadingPair {
  const JobReading* before = nullptr;
  const JobReading* after = nullptr;
  [[nodiscard]] const JobReading& any() const { return before != nullptr ? *before : *after; }
};

/// In the order of the first reading. Only readings of the same place, other lead, mode and condition are
/// put beside each other; the board's temperature does not hinder. Readings of purpose `check` are left out,
/// but for those at a place that was walked.
[[nodiscard]] std::vector<ReadingPair> pairReadings(const std::vector<JobReading>& readings);

/// A strip for each connector and way of measuring in the job's readings. A connector is what stands
/// before the point in `J4.11`. The bars are what each reading was judged by.
[[nodiscard]] std::vector<PinStrip> stripsOf(const std::vector<ReadingPair>& pairs);

} // namespace netmend
