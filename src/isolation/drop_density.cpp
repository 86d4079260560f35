#include "drop_density.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "netmend/probing/meter_model.h"
#include "statistics.h"

namespace netmend {

namespace {

constexpr double centresApart = 1.5; ///< in spreads: a row of bells so far apart is even to some per cent

double binEdge(std::size_t i) {
  return DropDensity::first + DropDensity::step * static_cast<double>(i);
}

/// Adds a share of a distribution given by how much of it lies below a voltage.
template <class Below> void add(DropDensity& density, double share, const Below& below) {
  double last = 0.0;
  for (std::size_t i = 0; i < DropDensity::bins; ++i) {
    const double here = below(binEdge(i + 1));
    density.mass[i] += static_cast<float>(share * (here - last));
    last = here;
  }
  density.high += static_cast<float>(share * (1.0 - last));
}

DropDensity nothing() {
  DropDensity density;
  density.none = 0.0F;
  return density;
}

} // namespace

SoftMinimum::SoftMinimum(double emission, Ohms series, Amperes current, Celsius temperature)
    : slope_(emission * thermalVoltage(temperature).value), seriesDrop_((current * series).value) {
  table_.reserve(reach + 1);
  for (std::size_t millivolts = 0; millivolts <= reach; ++millivolts) {
    const double apart = 1e-3 * static_cast<double>(millivolts);
    // x is the lower one's share of the current: both are at the same voltage.
    const auto excess = [&](double x) {
      return slope_ * std::log(x / (1.0 - x)) + seriesDrop_ * (2.0 * x - 1.0) - apart;
    };
    double low = 0.5;
    double high = 1.0 - 1e-9;
    for (int step = 0; step < 50; ++step) {
      const double middle = 0.5 * (low + high);
      (excess(middle) < 0.0 ? low : high) = middle;
    }
    table_.push_back(-slope_ * std::log(low) - seriesDrop_ * (low - 1.0));
  }
}

double SoftMinimum::belowOne(std::size_t count) const {
  const auto n = static_cast<double>(count);
  return slope_ * std::log(n) + seriesDrop_ * (1.0 - 1.0 / n);
}

DropDensity composed(const DropDensity& a, const DropDensity& b, const SoftMinimum& softMinimum) {
  constexpr std::size_t n = DropDensity::bins;
  constexpr auto band = static_cast<std::size_t>(1e-3 * SoftMinimum::reach / DropDensity::step);
  std::array<double, n> sum{};
  for (std::size_t apart = 0; apart < band; ++apart) {
    const double down = softMinimum.below(DropDensity::step * static_cast<double>(apart)) / DropDensity::step;
    const auto whole = static_cast<std::size_t>(down);
    const auto part = static_cast<float>(down - static_cast<double>(whole));
    std::array<float, n> both{};
    for (std::size_t i = 0; i + apart < n; ++i)
      both[i] = a.mass[i] * b.mass[i + apart] + (apart > 0 ? b.mass[i] * a.mass[i + apart] : 0.0F);
    for (std::size_t i = 0; i + apart < n; ++i) {
      const std::size_t at = i > whole ? i - whole : 0;
      sum[at] += static_cast<double>(both[i] * (1.0F - part));
      sum[at > 0 ? at - 1 : 0] += static_cast<double>(both[i] * part);
    }
  }
  double restA = static_cast<double>(a.high) + static_cast<double>(a.none);
  double restB = static_cast<double>(b.high) + static_cast<double>(b.none);
  for (std::size_t i = n; i-- > 0;) {
    if (i + band < n) {
      restA += static_cast<double>(a.mass[i + band]);
      restB += static_cast<double>(b.mass[i + band]);
    }
    sum[i] += static_cast<double>(a.mass[i]) * restB + static_cast<double>(b.mass[i]) * restA;
  }
  DropDensity result;
  std::transform(sum.begin(), sum.end(), result.mass.begin(), [](double m) { return static_cast<float>(m); });
  result.high = a.high * (b.high + b.none) + a.none * b.high;
  result.none = a.none * b.none;
  return result;
}

DropDensity lowered(const DropDensity& density, double by) {
  if (!(by > 0.0)) return density;
  DropDensity result;
  result.high = density.high;
  result.none = density.none;
  const double down = by / DropDensity::step;
  const auto whole = static_cast<std::size_t>(down);
  const auto part = static_cast<float>(down - static_cast<double>(whole));
  for (std::size_t i = 0; i < DropDensity::bins; ++i) {
    const std::size_t at = i > whole ? i - whole : 0;
    result.mass[at] += density.mass[i] * (1.0F - part);
    result.mass[at > 0 ? at - 1 : 0] += density.mass[i] * part;
  }
  return result;
}

std::vector<Technology> technologies(const FaultPriors& priors) {
  std::vector<Technology> result;
  double own = 1.0;
  const auto& main = priors.drops.front();
  for (const auto& alike : priors.alike) {
    own -= alike.share;
    const double wide = main.to.value - main.from.value;
    const auto count =
        static_cast<std::size_t>(std::max(1.0, std::ceil(wide / (centresApart * alike.spread.value))));
    for (std::size_t i = 0; i < count; ++i)
      result.push_back({alike.share / static_cast<double>(count), true,
                        main.from.value + wide * (static_cast<double>(i) + 0.5) / static_cast<double>(count),
                        alike.spread.value});
  }
  result.push_back({own, false, 0.0, 0.0});
  return result;
}

DropDensity clampDensity(const FaultPriors& priors, const Technology& technology, Amperes current) {
  // Data hold at `dropCurrent`.
  const double shift = priors.emission * thermalVoltage(Celsius(25.0)).value *
                       std::log(current.value / priors.dropCurrent.value);
  DropDensity result = nothing();
  const double own = technology.alike ? priors.ownInAlike : 1.0;
  for (const auto& drop : priors.drops) {
    // Even between its ends, which nobody knows to a few hundredths.
    constexpr double soft = 0.02;
    const auto integral = [&](double z) {
      return z * normalBelow(z) + std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
    };
    const double wide = drop.to.value - drop.from.value;
    add(result, own * drop.share, [&](double volts) {
      const double at = volts - shift;
      return soft * (integral((at - drop.from.value) / soft) - integral((at - drop.to.value) / soft)) / wide;
    });
  }
  if (technology.alike)
    add(result, 1.0 - own,
        [&](double volts) { return normalBelow((volts - technology.centre - shift) / technology.spread); });
  return result;
}

DropDensity resistiveDensity(const FaultPriors& priors, Amperes current, Volts limit) {
  const double least = priors.leastInput.value * current.value;
  const double most = priors.mostPullUp.value * current.value;
  const double decades = std::log(most / least);
  const auto below = [&](double volts) {
    return std::clamp(std::log(std::max(volts, 1e-9) / least) / decades, 0.0, 1.0);
  };
  DropDensity result = nothing();
  add(result, 1.0, below);
  const double shown = below(std::max(limit.value, DropDensity::last));
  result.none = static_cast<float>(1.0 - shown);
  result.high = std::max(0.0F, result.high - result.none);
  return result;
}

DropDensity mixed(double shareA, const DropDensity& a, double shareB, const DropDensity& b) {
  DropDensity result;
  const auto mix = [&](float x, float y) {
    return static_cast<float>(shareA) * x + static_cast<float>(shareB) * y;
  };
  for (std::size_t i = 0; i < DropDensity::bins; ++i)
    result.mass[i] = mix(a.mass[i], b.mass[i]);
  result.high = mix(a.high, b.high);
  result.none = mix(a.none, b.none) + static_cast<float>(1.0 - shareA - shareB);
  return result;
}

} // namespace netmend
