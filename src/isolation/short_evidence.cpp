#include "short_evidence.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>

#include "statistics.h"

namespace netmend {

namespace {

/// A slipped probe reads anything in this range, log-uniform.
constexpr double leastSlipped = 1e-4;
constexpr double mostSlipped = 1e2;

/// The unknowns as logarithms in units of their priors' spread.
struct Whitened {
  static constexpr Eigen::Index common = 3; ///< R_short, κ, scale of ways; then wires
  Eigen::VectorXd median;
  Eigen::VectorXd spread;
  Eigen::VectorXd scaled; ///< 1 for what goes with the scale of ways

  explicit Whitened(const ShortEquations& e) {
    const auto count = static_cast<Eigen::Index>(e.unknown.size()) + common;
    median.resize(count);
    spread.resize(count);
    scaled.resize(count);
    const auto put = [&](Eigen::Index i, const PositivePrior& prior) {
      median[i] = prior.median;
      spread[i] = prior.spread;
      scaled[i] = prior.unseenWay ? 1.0 : 0.0;
    };
    put(0, e.shorted);
    put(1, e.thickness);
    put(2, e.ways);
    for (std::size_t i = 0; i < e.unknown.size(); ++i)
      put(static_cast<Eigen::Index>(i) + common, e.unknown[i]);
  }
  [[nodiscard]] Eigen::VectorXd values(const Eigen::VectorXd& z) const {
    return median.array() * (spread.array() * z.array() + spread[2] * z[2] * scaled.array()).exp();
  }
};

/// How each reading moves with each unknown.
Eigen::MatrixXd designOf(const ShortEquations& e) {
  Eigen::MatrixXd out(e.copper.size(), e.shares.cols() + Whitened::common);
  out.col(0).setOnes();
  out.col(1) = e.copper;
  out.col(2).setZero();
  out.rightCols(e.shares.cols()) = e.shares;
  return out;
}

/// Where the short would be if the priors' medians held.
double startFor(const ShortEquations& e, const Eigen::MatrixXd& design, const Whitened& white,
                const MeasuredOhms& measured) {
  constexpr double mostSteps = 3.0;
  const Eigen::VectorXd rest =
      measured.ohms - design.rightCols(design.cols() - 1) * white.median.tail(white.median.size() - 1);
  const double guess = rest.size() > 0 ? rest.mean() : e.shorted.median;
  const double least = 0.05 * (measured.ohms.size() > 0 ? measured.ohms.minCoeff() : guess);
  return std::clamp(std::log(std::max({guess, least, 1e-9}) / e.shorted.median) / e.shorted.spread,
                    -mostSteps, mostSteps);
}

MeasuredOhms without(const MeasuredOhms& all, Eigen::Index left) {
  MeasuredOhms out;
  const Eigen::Index count = all.ohms.size() - 1;
  out.ohms.resize(count);
  out.covariance.resize(count, count);
  for (Eigen::Index i = 0; i < count; ++i) {
    out.ohms[i] = all.ohms[i + (i >= left)];
    for (Eigen::Index k = 0; k < count; ++k)
      out.covariance(i, k) = all.covariance(i + (i >= left), k + (k >= left));
  }
  return out;
}

Eigen::MatrixXd withoutRow(const Eigen::MatrixXd& all, Eigen::Index left) {
  Eigen::MatrixXd out(all.rows() - 1, all.cols());
  if (all.cols() == 0) return out; // which has no memory to look into
  for (Eigen::Index i = 0; i < out.rows(); ++i)
    out.row(i) = all.row(i + (i >= left));
  return out;
}

ShortEquations without(const ShortEquations& all, Eigen::Index left) {
  ShortEquations out = all;
  out.copper = withoutRow(all.copper, left);
  out.shares = withoutRow(all.shares, left);
  out.own = withoutRow(all.own, left);
  return out;
}

/// Cost of the unknowns in units of their priors' spread: −log of what readings and priors say together.
class ShortCost {
public:
  ShortCost(const ShortEquations& e, const MeasuredOhms& measured)
      : white_(e), noise_(measured.covariance + e.own * e.own.transpose()) {
    const Eigen::MatrixXd design = designOf(e);
    scaled_ = noise_.matrixL().solve(design);
    target_ = noise_.matrixL().solve(measured.ohms);
    start_ = Eigen::VectorXd::Zero(design.cols());
    start_[0] = startFor(e, design, white_, measured);
  }

  [[nodiscard]] const Whitened& white() const { return white_; }
  [[nodiscard]] const Eigen::VectorXd& start() const { return start_; }
  [[nodiscard]] double operator()(const Eigen::VectorXd& z) const {
    return 0.5 * (target_ - scaled_ * white_.values(z)).squaredNorm() + 0.5 * z.squaredNorm();
  }
  [[nodiscard]] Eigen::VectorXd gradient(const Eigen::VectorXd& z) const {
    return z - slopes(z).transpose() * (target_ - scaled_ * white_.values(z));
  }
  /// Gauss-Newton: positive definite everywhere.
  [[nodiscard]] Eigen::MatrixXd hessian(const Eigen::VectorXd& z) const {
    const Eigen::MatrixXd slope = slopes(z);
    Eigen::MatrixXd out = slope.transpose() * slope;
    out.diagonal().array() += 1.0;
    return out;
  }
  /// What the densities of the readings are to be divided by.
  [[nodiscard]] double logNoise() const {
    return target_.size() == 0
               ? 0.0
               : noise_.matrixLLT().diagonal().array().log().sum() +
                     0.5 * static_cast<double>(target_.size()) * std::log(2.0 * std::numbers::pi);
  }

private:
  /// d(reading)/dz = design · value · spread, in units of the noise.
  [[nodiscard]] Eigen::MatrixXd slopes(const Eigen::VectorXd& z) const {
    const Eigen::VectorXd values = white_.values(z);
    Eigen::MatrixXd out = scaled_ * (values.array() * white_.spread.array()).matrix().asDiagonal();
    out.col(2) = white_.spread[2] * (scaled_ * (values.array() * white_.scaled.array()).matrix());
    return out;
  }

  Whitened white_;
  Eigen::LLT<Eigen::MatrixXd> noise_;
  Eigen::MatrixXd scaled_;
  Eigen::VectorXd target_;
  Eigen::VectorXd start_;
};

/// The least cost among z + free·u (Levenberg and Marquardt's damping).
Eigen::VectorXd leastIn(const ShortCost& cost, Eigen::VectorXd z, const Eigen::MatrixXd& free) {
  double now = cost(z);
  double damping = 1e-3;
  constexpr int mostSteps = 60;
  constexpr double settled = 1e-9;
  constexpr double longestStep = 2.0;
  for (int step = 0; step < mostSteps && damping < 1e12; ++step) {
    Eigen::MatrixXd hessian = free.transpose() * cost.hessian(z) * free;
    hessian.diagonal() *= 1.0 + damping;
    Eigen::VectorXd move = -free * hessian.llt().solve(free.transpose() * cost.gradient(z));
    const double longest = move.cwiseAbs().maxCoeff();
    if (longest > longestStep) move *= longestStep / longest;
    const double then = cost(z + move);
    if (!(then <= now)) {
      damping *= 10.0;
      continue;
    }
    z += move;
    const bool done = now - then < settled * (1.0 + std::abs(then)) && longest < 1e-4;
    now = then;
    damping = std::max(1e-9, damping * 0.2);
    if (done) break;
  }
  return z;
}

/// Nodes and weights of the Gauss-Hermite rule of seven points for a standard normal distribution (Abramowitz
/// and Stegun 25.10, scaled by √2).
constexpr std::array<double, 7> hermiteNodes{-3.750439717725742, -2.366759410734541, -1.154405394739968, 0.0,
                                             1.154405394739968,  2.366759410734541,  3.750439717725742};
constexpr std::array<double, 7> hermiteWeights{5.482688559722184e-4, 0.03075712396758651, 0.2401231786050127,
                                               0.4571428571428571,   0.2401231786050127,  0.03075712396758651,
                                               5.482688559722184e-4};

/// log ∫ exp(−cost) over z + free·u, the priors' normalisation included: Laplace's approximation but for up
/// to `depth` directions that the readings leave widest, along which the sum is taken.
double logIntegral(const ShortCost& cost, const Eigen::VectorXd& start, const Eigen::MatrixXd& free,
                   int depth) {
  if (free.cols() == 0)
    return -cost(start) - 0.5 * static_cast<double>(start.size()) * std::log(2.0 * std::numbers::pi);
  const Eigen::VectorXd least = leastIn(cost, start, free);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> shape(free.transpose() * cost.hessian(least) * free);
  const double fixed = static_cast<double>(start.size() - free.cols());
  // What is known to some per cent is as good as Gaussian, whatever is left of its prior.
  const Eigen::MatrixXd directions = free * shape.eigenvectors();
  const Eigen::VectorXd widths = shape.eigenvalues().cwiseSqrt().cwiseInverse();
  Eigen::Index widest = 0;
  const double left = (cost.white().spread.asDiagonal() * directions * widths.asDiagonal())
                          .colwise()
                          .norm()
                          .maxCoeff(&widest);
  constexpr double narrow = 0.2;
  if (depth == 0 || left < narrow)
    return -cost(least) - 0.5 * shape.eigenvalues().array().log().sum() -
           0.5 * fixed * std::log(2.0 * std::numbers::pi);
  const double width = widths[widest];
  const Eigen::VectorXd along = directions.col(widest);
  Eigen::MatrixXd rest(start.size(), free.cols() - 1);
  rest << directions.leftCols(widest), directions.rightCols(free.cols() - 1 - widest);
  std::vector<double> terms;
  for (std::size_t k = 0; k < hermiteNodes.size(); ++k) {
    const double t = hermiteNodes[k];
    terms.push_back(std::log(hermiteWeights[k] * width) + 0.5 * t * t +
                    0.5 * std::log(2.0 * std::numbers::pi) +
                    logIntegral(cost, least + along * (t * width), rest, depth - 1));
  }
  return logSum(terms);
}

} // namespace

ShortFit fitShort(const ShortEquations& equations, const MeasuredOhms& measured, int depth) {
  const ShortCost cost(equations, measured);
  const Eigen::Index unknowns = cost.start().size();
  const Eigen::MatrixXd all = Eigen::MatrixXd::Identity(unknowns, unknowns);
  const Eigen::VectorXd z = leastIn(cost, cost.start(), all);
  const Eigen::VectorXd& spread = cost.white().spread;
  ShortFit out;
  out.logEvidence = logIntegral(cost, z, all, depth) - cost.logNoise();
  out.unknowns = cost.white().values(z);
  out.covariance = spread.asDiagonal() * cost.hessian(z).llt().solve(all) * spread.asDiagonal();
  return out;
}

double evidenceWithSlip(const ShortEquations& equations, const MeasuredOhms& measured, double slipped,
                        int depth) {
  const Eigen::Index count = measured.ohms.size();
  const double held = std::log1p(-slipped);
  std::vector<double> cases{fitShort(equations, measured, depth).logEvidence +
                            held * static_cast<double>(count)};
  for (Eigen::Index i = 0; i < count && slipped > 0.0; ++i) {
    const double density = 1.0 / (std::abs(measured.ohms[i]) * std::log(mostSlipped / leastSlipped));
    const double rest =
        count == 1 ? 0.0 : fitShort(without(equations, i), without(measured, i), 0).logEvidence;
    cases.push_back(std::log(slipped * density) + held * static_cast<double>(count - 1) + rest);
  }
  return logSum(cases);
}

} // namespace netmend
