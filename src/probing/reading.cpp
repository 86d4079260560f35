#include "netmend/probing/reading.h"

namespace netmend {

bool samePoint(const ProbePoint& a, const ProbePoint& b) {
  return a.pin && b.pin ? a.pin == b.pin : a.label == b.label;
}

bool sameCondition(const Condition& a, const Condition& b) {
  return a.powered == b.powered && a.plugged == b.plugged && a.lifted == b.lifted && a.handling == b.handling;
}

bool sameMeasurement(const Reading& a, const Reading& b) {
  return samePoint(a.point, b.point) && sameSetting(a, b);
}

ReadingSetting settingOf(const Reading& reading) {
  return {reading.mode, reading.other, reading.condition, reading.injected};
}

} // namespace netmend
