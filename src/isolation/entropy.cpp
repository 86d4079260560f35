#include "entropy.h"

#include <cmath>

namespace netmend {

double entropyBits(const std::vector<double>& weights) {
  double sum = 0.0;
  double weighted = 0.0;
  for (const double w : weights) {
    if (!(w > 0.0)) continue;
    sum += w;
    weighted += w * std::log2(w);
  }
  return sum > 0.0 ? std::max(0.0, std::log2(sum) - weighted / sum) : 0.0;
}

} // namespace netmend
