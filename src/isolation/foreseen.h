#pragma once

#include <cstddef>
#include <vector>

namespace netmend {

/// What a lead would meet in diode mode, the meter's common error with it, the hand's not. Sums to 1.
struct Foreseen {
  std::size_t first = 0;    ///< mV of the first bin
  std::vector<float> share; ///< by millivolt
  float overLimit = 0.0F;
};

} // namespace netmend
