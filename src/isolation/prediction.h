#pragma once

#include "model.h"

namespace netmend {

/// As `predictDiode` with other log weights of the samples.
[[nodiscard]] Prediction predictWith(const Isolation& isolation, std::size_t place, std::size_t faultClass,
                                     const double* weights);

} // namespace netmend
