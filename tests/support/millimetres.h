#pragma once

#include "netmend/base/geometry.h"

namespace netmend::test {

inline Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

inline Ring box(double x0, double y0, double x1, double y1) {
  return {mm(x0, y0), mm(x1, y0), mm(x1, y1), mm(x0, y1)};
}

} // namespace netmend::test
