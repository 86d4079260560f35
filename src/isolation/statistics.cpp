#include "statistics.h"

#include <algorithm>
#include <limits>

namespace netmend {

double logSum(const double* first, std::size_t count) {
  double greatest = -std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < count; ++i)
    greatest = std::max(greatest, first[i]);
  if (!std::isfinite(greatest)) return greatest;
  double sum = 0.0;
  for (std::size_t i = 0; i < count; ++i)
    sum += std::exp(first[i] - greatest);
  return greatest + std::log(sum);
}

} // namespace netmend
