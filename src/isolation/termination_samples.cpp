#include "termination_samples.h"

#include <algorithm>
#include <cmath>
#include <random>

#include "line_solver.h"
#include "statistics.h"

namespace netmend {

namespace {

struct DropRange {
  double least = 0.02;
  double most = 2.5;
};

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
    result_.samples = request_.samples;
    result_.pins = request_.pins.size();
    std::vector<double> drops;
    std::vector<double> emissions;
    for (std::size_t sample = 0; sample < request_.samples; ++sample) {
      for (const auto& pin : request_.pins)
        drawPin(pin.termination);
      drops.push_back(request_.priors.drop.value + request_.priors.dropSpread.value * normal());
      emissions.push_back(
          std::clamp(request_.priors.emission + request_.priors.emissionSpread * normal(), 1.0, 2.0));
      result_.shortOhms.emplace_back(std::exp(std::log(1.0) + 1.0 * normal()));
      setJunction(std::clamp(drops.back(), 0.1, DropRange{}.most), emissions.back());
    }
    result_.logWeight.assign(request_.samples, 0.0);
    const LineSolver solver(request_.cells, request_.pins, result_);
    for (std::size_t sample = 0; sample < request_.samples; ++sample)
      agreeWithKnown(solver, sample, emissions[sample]);
    return std::move(result_);
  }

private:
  double normal() { return std::normal_distribution<double>()(random_); }

  void drawPin(const PinTermination& termination) {
    const double kind = std::uniform_real_distribution<double>()(random_);
    const double factor = normal();
    double area = 0.0;
    double siemens = 0.0;
    if (kind < termination.shares.junction) {
      area = std::exp(factor * std::log(request_.priors.areaFactor));
    } else if (kind < termination.shares.junction + termination.shares.resistive) {
      double ohms = termination.resistance.value;
      if (termination.throughRail) {
        const double rail = std::min(request_.priors.railOhms.value, ohms);
        ohms += rail * std::expm1(factor * std::log(request_.priors.railFactor));
      }
      siemens = 1.0 / std::max(ohms, 0.1);
    }
    result_.area.push_back(area);
    result_.siemens.push_back(siemens);
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

  [[nodiscard]] double goodVolts(const LineSolver& solver, std::size_t super, std::size_t sample) const {
    return solver.volts({}, false, super, sample, request_.meter).value;
  }

  /// The most certain known value that is one.
  [[nodiscard]] const KnownGood* leading() const {
    const KnownGood* best = nullptr;
    for (const auto& known : request_.knownGood)
      if (known.value && pinOf(known) && (!best || spreadOf(known) < spreadOf(*best))) best = &known;
    return best;
  }

  /// Bisection on the drop of one junction: the line's reading grows with it.
  bool scaleTo(const LineSolver& solver, std::size_t super, std::size_t sample, double target,
               double emission) {
    double low = DropRange{}.least;
    double high = DropRange{}.most;
    const auto at = [&](double drop) {
      replaceJunction(sample, drop, emission);
      return goodVolts(solver, super, sample);
    };
    if (at(low) > target || at(high) < target) return false;
    for (int step = 0; step < 40 && high - low > 1e-7; ++step) {
      const double middle = 0.5 * (low + high);
      (at(middle) < target ? low : high) = middle;
    }
    const double drop = 0.5 * (low + high);
    replaceJunction(sample, drop, emission);
    result_.logWeight[sample] +=
        logNormal(drop, request_.priors.drop.value, request_.priors.dropSpread.value);
    return true;
  }

  void agreeWithKnown(const LineSolver& solver, std::size_t sample, double emission) {
    const KnownGood* first = leading();
    if (first) {
      const std::size_t super = request_.cells.super[pinOf(*first)->cell];
      const double target = std::max(0.0, first->value->value + spreadOf(*first) * normal());
      const Junction before = result_.junction[sample];
      if (!scaleTo(solver, super, sample, target, emission)) {
        result_.junction[sample] = before;
        result_.bench[sample] = junctionAt(before, benchTemperature);
        first = nullptr;
      }
    }
    for (const auto& known : request_.knownGood) {
      const LinePin* pin = pinOf(known);
      if (!pin || &known == first) continue;
      const double volts = goodVolts(solver, request_.cells.super[pin->cell], sample);
      const double sigma = std::hypot(spreadOf(known), request_.priors.readingSpread.value);
      result_.logWeight[sample] +=
          std::log(voltsLikelihood(known.value ? std::optional(known.value->value) : std::nullopt, volts,
                                   sigma, request_.meter.displayLimit.value, request_.priors.slippedShare));
    }
  }

  const SampleRequest& request_;
  std::mt19937_64 random_;
  TerminationSamples result_;
};

} // namespace

TerminationSamples drawTerminations(const SampleRequest& request) {
  return Drawing(request).draw();
}

} // namespace netmend
