#include "short_measured.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace netmend {

namespace {

/// What a point of a short that is none of the known reads beside the short itself.
constexpr PositivePrior anywhere{0.01, 1.1, true};

PositivePrior priorOf(double median, double factor) {
  constexpr double least = 1e-3;
  return {median, std::max(least, std::log(factor)), false};
}

/// Meters do not say what of their limit is gain and what offset: all of it is common.
double commonError(const ShortModel& model, ReadingMode mode, double value) {
  const auto own = uncertaintyOf(model.meter, mode, value);
  constexpr double otherwise = 0.01; // of a meter without data for the mode
  return own ? own->calibration : otherwise * std::abs(value);
}

} // namespace

double repeatOf(const ShortModel& model, double ohms, std::optional<Amperes> injected) {
  if (!injected) {
    const auto own = uncertaintyOf(model.meter, ReadingMode::milliohms, ohms);
    return std::hypot(model.priors.repeatOhms.value, own ? own->resolution : 0.0);
  }
  const auto own = uncertaintyOf(model.meter, ReadingMode::volts, ohms * injected->value);
  return std::hypot(model.priors.repeatVolts.value, own ? own->resolution : 0.0) / injected->value;
}

ShortReadings::ShortReadings(const ShortModel& model, const std::vector<ShortObservation>& observations)
    : model_(model) {
  const auto count = static_cast<Eigen::Index>(observations.size());
  measured_.ohms.resize(count);
  Eigen::VectorXd common(count);
  Eigen::VectorXd repeat(count);
  for (Eigen::Index i = 0; i < count; ++i) {
    const ShortObservation& one = observations[static_cast<std::size_t>(i)];
    const bool drop = one.reading.mode == ReadingMode::dropUnderCurrent;
    const double current = drop ? one.reading.injected->value : 1.0;
    points_.push_back(one.point);
    drops_.push_back(drop);
    measured_.ohms[i] = *one.reading.value / current;
    common[i] =
        commonError(model, drop ? ReadingMode::volts : ReadingMode::milliohms, *one.reading.value) / current;
    repeat[i] = repeatOf(model, measured_.ohms[i], drop ? one.reading.injected : std::optional<Amperes>{});
  }
  measured_.covariance = common * common.transpose();
  measured_.covariance.diagonal() += repeat.cwiseAbs2();
}

PositivePrior ShortReadings::priorOfWire(std::size_t place, std::size_t wire) const {
  if (isNone(place)) return anywhere;
  const UncertainWire& unknown = model_.network.unknown()[wire];
  return {unknown.ohms, std::max(1e-3, unknown.spread), unknown.unseenWay};
}

CopperResponse ShortReadings::responseAt(std::size_t place, std::size_t point, bool drop) const {
  if (isNone(place)) return {0.0, {{point, 1.0}}, Eigen::VectorXd(0)};
  const std::size_t at = model_.pointNode[point];
  return model_.network.response(at, drop ? *model_.intoNode : at, model_.placeNode[place]);
}

std::vector<std::size_t> ShortReadings::wiresOf(std::size_t place) const {
  std::set<std::size_t> wires;
  for (std::size_t i = 0; i < points_.size(); ++i)
    for (const auto& [wire, share] : responseAt(place, points_[i], drops_[i]).unknown)
      wires.insert(wire);
  return {wires.begin(), wires.end()};
}

ShortEquations ShortReadings::equations(std::size_t place) const {
  const ShortPriors& priors = model_.priors;
  const auto wires = wiresOf(place);
  const auto rows = static_cast<Eigen::Index>(points_.size());
  ShortEquations out;
  out.shorted = priorOf(priors.shortResistance.value, priors.shortFactor);
  out.thickness = priorOf(1.0, priors.thicknessFactor);
  out.ways = priorOf(1.0, priors.unknownLineFactor);
  for (const std::size_t wire : wires)
    out.unknown.push_back(priorOfWire(place, wire));
  out.copper = Eigen::VectorXd::Zero(rows);
  out.shares = Eigen::MatrixXd::Zero(rows, static_cast<Eigen::Index>(wires.size()));
  for (Eigen::Index i = 0; i < rows; ++i) {
    const auto reading = static_cast<std::size_t>(i);
    const CopperResponse response = responseAt(place, points_[reading], drops_[reading]);
    out.copper[i] = response.copper;
    for (const auto& [wire, share] : response.unknown)
      out.shares(i, std::lower_bound(wires.begin(), wires.end(), wire) - wires.begin()) = share;
    out.own.conservativeResize(rows, response.own.size());
    if (out.own.cols() > 0) out.own.row(i) = response.own; // without columns there is no memory to look into
  }
  return out;
}

std::vector<ShortReadings::Expected>
ShortReadings::foretell(std::size_t place, const std::vector<std::size_t>& points, bool drop) const {
  const auto wires = wiresOf(place);
  const ShortFit fit = fitShort(equations(place), measured_);
  std::vector<Expected> all;
  for (const std::size_t point : points) {
    const CopperResponse response = responseAt(place, point, drop);
    Expected out;
    Eigen::VectorXd slope = Eigen::VectorXd::Zero(fit.unknowns.size());
    slope[0] = fit.unknowns[0];
    slope[1] = fit.unknowns[1] * response.copper;
    for (const auto& [wire, share] : response.unknown) {
      const auto known = std::lower_bound(wires.begin(), wires.end(), wire);
      if (known != wires.end() && *known == wire) {
        const Eigen::Index i = known - wires.begin() + 3;
        slope[i] = fit.unknowns[i] * share;
        if (priorOfWire(place, wire).unseenWay) slope[2] += slope[i];
        continue;
      }
      // Mean and variance of a log-normal.
      const PositivePrior prior = priorOfWire(place, wire);
      const double square = prior.spread * prior.spread;
      const double scale = prior.unseenWay ? fit.unknowns[2] : 1.0;
      const double mean = share * scale * prior.median * std::exp(0.5 * square);
      if (prior.unseenWay) slope[2] += mean;
      out.mean += mean;
      out.variance += mean * mean * std::expm1(square);
    }
    for (Eigen::Index i = 0; i < slope.size(); ++i)
      if (i != 2) out.mean += slope[i];
    out.variance += slope.dot(fit.covariance * slope) + response.own.squaredNorm();
    all.push_back(out);
  }
  return all;
}

} // namespace netmend
