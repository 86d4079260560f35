#include "simulation/figures.h"

#include <algorithm>
#include <cmath>

namespace netmend::simulation {

Estimate meanOf(const std::vector<double>& values) {
  Estimate out{0.0, 0.0, values.size()};
  if (values.empty()) return out;
  const auto n = static_cast<double>(values.size());
  for (const double v : values)
    out.value += v / n;
  double square = 0.0;
  for (const double v : values)
    square += (v - out.value) * (v - out.value);
  if (values.size() > 1) out.error = std::sqrt(square / (n - 1.0) / n);
  return out;
}

Estimate ratioOf(const std::vector<double>& over, const std::vector<double>& under) {
  const Estimate a = meanOf(over), b = meanOf(under);
  Estimate out{b.value != 0.0 ? a.value / b.value : 0.0, 0.0, over.size()};
  if (b.value == 0.0) return out;
  std::vector<double> left;
  for (std::size_t i = 0; i < over.size(); ++i)
    left.push_back((over[i] - out.value * under[i]) / b.value);
  out.error = meanOf(left).error;
  return out;
}

std::vector<Bin> reliability(const std::vector<ClaimMade>& claims, std::size_t fewest) {
  const std::vector<double> edges{0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0};
  std::vector<Bin> out;
  Bin open{0.0, 0.0};
  const auto join = [](Bin& bin, const Bin& other) {
    bin.most = other.most;
    bin.claims += other.claims;
    bin.said += other.said;
    bin.right += other.right;
  };
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    Bin bin{edges[i], edges[i + 1]};
    for (const ClaimMade& claim : claims)
      if (claim.said >= edges[i] && (claim.said < edges[i + 1] || i + 2 == edges.size())) {
        ++bin.claims;
        bin.said += claim.said;
        bin.right += claim.right ? 1.0 : 0.0;
      }
    join(open, bin);
    if (open.claims < fewest) continue;
    out.push_back(open);
    open = {edges[i + 1], edges[i + 1]};
  }
  if (open.claims > 0 || out.empty()) {
    if (out.empty())
      out.push_back(open);
    else
      join(out.back(), open);
  }
  for (Bin& bin : out) {
    const double n = std::max<double>(1.0, static_cast<double>(bin.claims));
    bin.said /= n;
    bin.right /= n;
    bin.error = std::sqrt(std::max(0.0, bin.said * (1.0 - bin.said)) / n);
  }
  return out;
}

Calibration worstOf(const std::vector<Bin>& bins) {
  Calibration out;
  out.over.value = out.under.value = -1.0;
  // By how far beyond the errors: a small bin is not the worst for being small.
  for (const Bin& bin : bins) {
    const double over = bin.said - bin.right;
    if (over - 2 * bin.error > out.over.value - 2 * out.over.error) out.over = {over, bin.error, bin.claims};
    if (-over - 2 * bin.error > out.under.value - 2 * out.under.error)
      out.under = {-over, bin.error, bin.claims};
  }
  return out;
}

Estimate wrongAbove(const std::vector<ClaimMade>& claims, double level, bool beyondSaid) {
  std::vector<double> wrong;
  for (const ClaimMade& claim : claims)
    if (claim.said > level)
      wrong.push_back((claim.right ? 0.0 : 1.0) - (beyondSaid ? 1.0 - claim.said : 0.0));
  return meanOf(wrong);
}

Estimate logLoss(const std::vector<ClaimMade>& claims) {
  std::vector<double> bits;
  for (const ClaimMade& claim : claims) {
    const double said = std::clamp(claim.said, 1e-4, 1.0 - 1e-4);
    bits.push_back(-std::log2(claim.right ? said : 1.0 - said));
  }
  return meanOf(bits);
}

} // namespace netmend::simulation
