#pragma once

#include <vector>

#include "netmend/base/quantity.h"

namespace netmend {

/// A systematic error that all diode readings of a job share, as nodes of a quadrature.
struct CommonError {
  double offset = 0.0; ///< V
  double weight = 1.0;
};
/// By the trapezium rule, as good as exact for smooth bells where the step (in standard deviations) is not
/// wider than they are.
[[nodiscard]] std::vector<CommonError> commonErrors(Volts standardUncertainty, double step);

} // namespace netmend
