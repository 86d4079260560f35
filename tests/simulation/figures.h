#pragma once

#include <cstddef>
#include <vector>

namespace netmend::simulation {

/// One claim: what was said of the top repair, and whether it was right.
struct ClaimMade {
  double said = 0.0;
  bool right = false;
};

/// A mean with its standard error.
struct Estimate {
  double value = 0.0;
  double error = 0.0;
  std::size_t of = 0;
};
[[nodiscard]] Estimate meanOf(const std::vector<double>& values);
/// Mean of differences, or of a ratio of two sums over pairs (delta method).
[[nodiscard]] Estimate ratioOf(const std::vector<double>& over, const std::vector<double>& under);

struct Bin {
  double least = 0.0;
  double most = 1.0;
  std::size_t claims = 0;
  double said = 0.0;  ///< mean
  double right = 0.0; ///< share
  double error = 0.0; ///< of the share, as if what was said were true
};
/// Claims by what was said: 0 to 1 in tenths, the last in halves; a bin with fewer than `fewest` joins the
/// next (the last one the one before).
[[nodiscard]] std::vector<Bin> reliability(const std::vector<ClaimMade>& claims, std::size_t fewest = 300);

/// The worst bin: said less right, and right less said, each with that bin's standard error.
struct Calibration {
  Estimate over;
  Estimate under;
};
[[nodiscard]] Calibration worstOf(const std::vector<Bin>& bins);

/// Among claims above `level`: the share that is wrong, less 1 − the mean said when `beyondSaid`.
[[nodiscard]] Estimate wrongAbove(const std::vector<ClaimMade>& claims, double level, bool beyondSaid);

/// Mean of −log2 of what was said of what came true.
[[nodiscard]] Estimate logLoss(const std::vector<ClaimMade>& claims);

} // namespace netmend::simulation
