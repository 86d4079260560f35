#include "netmend/probing/expected.h"

namespace netmend {

const Expected* ExpectedTable::find(const Reading& reading) const {
  const auto at = points_.find(reading);
  return at ? &expected_[*at] : nullptr;
}

const Expected* ExpectedTable::find(const ProbePoint& point, const ReadingSetting& setting) const {
  const auto at = points_.find(point, setting);
  return at ? &expected_[*at] : nullptr;
}

void ExpectedTable::put(const ProbePoint& point, const ReadingSetting& setting, Expected expected) {
  const auto at = points_.add(point, setting);
  if (at >= expected_.size()) expected_.resize(at + 1);
  expected_[at] = std::move(expected);
}

} // namespace netmend
