#pragma once

#include <vector>

#include <Eigen/Core>

#include "short_network.h"

namespace netmend {

/// Readings in ohms with what the meter may be wrong by.
struct MeasuredOhms {
  Eigen::VectorXd ohms;
  Eigen::MatrixXd covariance; ///< repeatability on the diagonal, common errors everywhere
};

/// Something positive of which only the order of magnitude is known: log-normal.
struct PositivePrior {
  double median = 1.0;
  double spread = 1.0;    ///< one standard deviation of its logarithm
  bool unseenWay = false; ///< times the scale of all ways
};

/// What is read, by reading: R_short + κ·copper + Σ share·unknown, with errors of single tracks and vias.
struct ShortEquations {
  PositivePrior shorted;
  PositivePrior thickness;            ///< κ
  PositivePrior ways;                 ///< a scale that all ways have that nobody has seen
  std::vector<PositivePrior> unknown; ///< wires that a reading knows of
  Eigen::VectorXd copper;             ///< by reading
  Eigen::MatrixXd shares;             ///< reading × unknown
  Eigen::MatrixXd own;                ///< reading × known wire
};

/// What readings leave of the unknowns, and how well they fit. The likeliest values are found by Gauss-Newton
/// in the logarithms, so that none is negative; about them the evidence is Laplace's approximation, but for
/// up to `depth` directions that are left wide, along which it is summed up (Gauss-Hermite).
struct ShortFit {
  double logEvidence = 0.0;
  Eigen::VectorXd unknowns;   ///< likeliest: R_short, κ, scale of ways, unknown wires with it
  Eigen::MatrixXd covariance; ///< of their logarithms, the wires' without that scale
};
[[nodiscard]] ShortFit fitShort(const ShortEquations& equations, const MeasuredOhms& measured, int depth = 0);

/// log of the density of all readings with at most one of them slipped, which then is anything from 0.1 mΩ to
/// 100 Ω (log-uniform).
[[nodiscard]] double evidenceWithSlip(const ShortEquations& equations, const MeasuredOhms& measured,
                                      double slipped, int depth);

} // namespace netmend
