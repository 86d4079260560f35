#include "netmend/casework/known_values.h"

#include <algorithm>

namespace netmend {

namespace {

/// With the part off, or a track cut, nobody knows what a good board would read.
bool leavesTheBoardWhole(RepairKind kind) {
  return kind == RepairKind::resolder || kind == RepairKind::replacePart || kind == RepairKind::clean;
}

} // namespace

void addKnownValues(RepairAction& action, const ExpectedTable& expected,
                    const std::vector<JobReading>& readings) {
  if (!leavesTheBoardWhole(action.kind)) return;
  for (WorkStep& step : action.steps) {
    if (!step.measure || step.measure->comparable() || step.measure->mode != ReadingMode::diode) continue;
    StepMeasure& measure = *step.measure;
    const auto before = std::find_if(readings.rbegin(), readings.rend(), [&](const JobReading& each) {
      return each.purpose == ReadingPurpose::fault && each.reading.mode == measure.mode &&
             samePoint(each.reading.point, measure.point) && samePoint(each.reading.other, measure.other);
    });
    const ReadingSetting setting = before != readings.rend()
                                       ? settingOf(before->reading)
                                       : ReadingSetting{measure.mode, measure.other, {}, {}};
    const Expected* known = expected.find(measure.point, setting);
    // Boards that differ are no figure to stop the work at.
    if (known == nullptr || known->boards == 0 || known->shown.size() > 1) continue;
    if (!known->shown.empty()) measure.interval = known->shown.front();
    measure.overLimit = known->onlyOverLimit() || known->expectsOverLimit();
  }
}

} // namespace netmend
