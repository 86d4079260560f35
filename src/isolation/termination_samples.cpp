#include "termination_samples.h"

#include <algorithm>
#include <cmath>

#include <boost/math/tools/toms748_solve.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/uniform_01.hpp>

#include "line_solver.h"
#include "statistics.h"

namespace netmend {

namespace {

struct DropRange {
  double least = 0.02;
  double most = 2.5;
};

constexpr double widening = 2.5; ///< of a pin's spread, in every other sample

Junction junctionWithDrop(const FaultPriors& priors, double drop, double emission) {
  Junction junction;
  junction.ideality = emission;
  const double current = priors.dropCurrent.value;
  // A junction of low drop cannot have more across its series resistance.
  junction.series = Ohms(std::min(priors.junctionSeries.value, 0.3 * drop / current));
  const double inner = drop - current * junction.series.value;
  const double slope = thermalVoltage(benchTemperature).value * emission;
  junction.saturation = Amperes(1.0);
  const double atBench = saturationCurrent(junction, benchTemperature).value;
  junction.saturation = Amperes(current / std::expm1(inner / slope) / atBench);
  return junction;
}

class Drawing {
public:
  explicit Drawing(const SampleRequest& request) : request_(request), random_(request.seed) {}

  TerminationSamples draw() {
    const std::size_t samples = result_.samples = request_.samples;
    for (const auto& pin : request_.pins) {
      const auto& shares = pin.termination.shares;
      result_.area.emplace_back(shares.junction > 0.0 ? samples : 0, 0.0);
      result_.siemens.emplace_back(shares.resistive > 0.0 ? samples : 0, 0.0);
    }
    std::vector<double> emissions;
    std::vector<double> boards; // how far this board is from the good ones, in spreads
    for (std::size_t sample = 0; sample < samples; ++sample) {
      drawPins(sample);
      const double drop = request_.priors.drop.value + request_.priors.dropSpread.value * normal();
      emissions.push_back(
          std::clamp(request_.priors.emission + request_.priors.emissionSpread * normal(), 1.0, 2.0));
      result_.shortOhms.emplace_back(std::exp(normal()));
      boards.push_back(normal());
      setJunction(std::clamp(drop, 0.1, DropRange{}.most), emissions.back());
    }
    agreeWithKnown(emissions, boards);
    const double all = logSum(logWeight_);
    for (const double weight : logWeight_)
      result_.weight.push_back(std::exp(weight - all));
    return std::move(result_);
  }

private:
  double normal() { return normal_(random_); }

  /// In every other draw one pin is drawn from a wider distribution: boards hold chips that the shares think
  /// very unlikely, and what a few samples say of them is chance. The weight is the one density over the
  /// mixture of both, at most 2.
  void drawPins(std::size_t sample) {
    std::vector<std::size_t> drawn;
    for (std::size_t pin = 0; pin < request_.pins.size(); ++pin)
      if (request_.pins[pin].termination.shares.none < 1.0) drawn.push_back(pin);
    const double which =
        2.0 * boost::random::uniform_01<double>()(random_) * static_cast<double>(drawn.size());
    double ratios = 0.0;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
      const double factor = normal() * (static_cast<std::size_t>(which) == i ? widening : 1.0);
      ratios += std::exp(0.5 * factor * factor * (1.0 - 1.0 / (widening * widening))) / widening;
      drawPin(request_.pins[drawn[i]].termination, factor, drawn[i], sample);
    }
    logWeight_.push_back(drawn.empty() ? 0.0
                                       : -std::log(0.5 + 0.5 * ratios / static_cast<double>(drawn.size())));
  }

  void drawPin(const PinTermination& termination, double factor, std::size_t pin, std::size_t sample) {
    const double kind = boost::random::uniform_01<double>()(random_);
    if (kind < termination.shares.junction) {
      result_.area[pin][sample] = std::exp(factor * std::log(request_.priors.areaFactor));
    } else if (kind < termination.shares.junction + termination.shares.resistive) {
      double ohms = termination.resistance.value;
      if (termination.throughRail) {
        const double rail = std::min(request_.priors.railOhms.value, ohms);
        ohms += rail * std::expm1(factor * std::log(request_.priors.railFactor));
      }
      result_.siemens[pin][sample] = 1.0 / std::max(ohms, 0.1);
    }
  }

  void setJunction(double drop, double emission) {
    result_.junction.push_back(junctionWithDrop(request_.priors, drop, emission));
    result_.bench.push_back(junctionAt(result_.junction.back(), benchTemperature));
  }

  void replaceJunction(std::size_t sample, double drop, double emission) {
    result_.junction[sample] = junctionWithDrop(request_.priors, drop, emission);
    result_.bench[sample] = junctionAt(result_.junction[sample], benchTemperature);
  }

  [[nodiscard]] const LinePin* pinOf(const KnownGood& known) const {
    for (const auto& pin : request_.pins)
      if (pin.pin == known.pin) return &pin;
    return nullptr;
  }

  [[nodiscard]] double spreadOf(const KnownGood& known) const {
    return known.spread.value > 0.0 ? known.spread.value : request_.priors.boardSpread.value;
  }

  /// The most certain known value that is one.
  [[nodiscard]] const KnownGood* leading() const {
    const KnownGood* best = nullptr;
    for (const auto& known : request_.knownGood)
      if (known.value && pinOf(known) && (!best || spreadOf(known) < spreadOf(*best))) best = &known;
    return best;
  }

  /// The drop of one junction with which the line reads `target`: its reading grows with it.
  bool scaleTo(const FragmentSolver& solver, std::size_t sample, double target, double emission) {
    const auto excess = [&](double drop) {
      replaceJunction(sample, drop, emission);
      return solver.volts(sample, request_.meter).value - target;
    };
    const DropRange range;
    const double atLeast = excess(range.least);
    const double atMost = excess(range.most);
    if (atLeast > 0.0 || atMost < 0.0) return false;
    std::uintmax_t steps = 40;
    const auto found = boost::math::tools::toms748_solve(
        excess, range.least, range.most, atLeast, atMost,
        [](double low, double high) { return high - low < 1e-7; }, steps);
    const double drop = 0.5 * (found.first + found.second);
    replaceJunction(sample, drop, emission);
    logWeight_[sample] += logNormal(drop, request_.priors.drop.value, request_.priors.dropSpread.value);
    return true;
  }

  void agreeWithKnown(const std::vector<double>& emissions, const std::vector<double>& boards) {
    const auto whole = [&](const LinePin& pin) {
      return fragmentOf(request_.cells, request_.pins, {}, false, request_.cells.super[pin.cell]);
    };
    std::vector<char> scaled(request_.samples, 0);
    const KnownGood* first = leading();
    if (first) {
      const Fragment fragment = whole(*pinOf(*first));
      const FragmentSolver solver(fragment, result_);
      for (std::size_t sample = 0; sample < request_.samples; ++sample) {
        const double target = std::max(0.0, first->value->value + spreadOf(*first) * boards[sample]);
        const Junction before = result_.junction[sample];
        scaled[sample] = scaleTo(solver, sample, target, emissions[sample]) ? 1 : 0;
        if (scaled[sample]) continue;
        result_.junction[sample] = before;
        result_.bench[sample] = junctionAt(before, benchTemperature);
      }
    }
    for (const auto& known : request_.knownGood) {
      const LinePin* pin = pinOf(known);
      if (!pin) continue;
      const Fragment fragment = whole(*pin);
      const FragmentSolver solver(fragment, result_);
      const double sigma = std::hypot(spreadOf(known), request_.priors.readingSpread.value);
      for (std::size_t sample = 0; sample < request_.samples; ++sample) {
        if (&known == first && scaled[sample]) continue;
        const double volts = solver.volts(sample, request_.meter).value;
        logWeight_[sample] +=
            std::log(voltsLikelihood(known.value ? std::optional(known.value->value) : std::nullopt, volts,
                                     sigma, request_.meter.displayLimit.value, request_.priors.slippedShare));
      }
    }
  }

  const SampleRequest& request_;
  boost::random::mt19937_64 random_; ///< Boost's dice fall alike everywhere, and faster
  boost::random::normal_distribution<double> normal_;
  std::vector<double> logWeight_;
  TerminationSamples result_;
};

} // namespace

TerminationSamples drawTerminations(const SampleRequest& request) {
  return Drawing(request).draw();
}

} // namespace netmend
