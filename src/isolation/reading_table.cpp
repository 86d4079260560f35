#include "reading_table.h"

#include <algorithm>
#include <cmath>

#include "model.h"
#include "statistics.h"

namespace netmend {

namespace {

constexpr double beyondLimit = 0.1; ///< V that the lattice goes on above the display's limit

std::size_t latticePoints(double limit) {
  return static_cast<std::size_t>((limit + beyondLimit - ReadingTable::first) / ReadingTable::step) + 1;
}
double latticeVolts(std::size_t i) {
  return ReadingTable::first + ReadingTable::step * static_cast<double>(i);
}

/// Standard deviation of an ohms reading to ground: meter, contact, and what is not known of the copper.
double ohmsSigma(const MeterProfile& meter, double ohms) {
  const auto u = uncertaintyOf(meter, ReadingMode::ohms, ohms);
  return std::hypot(u ? u->combined() : 0.0, 0.05 * ohms, 0.3);
}

} // namespace

ReadingTable tableOf(const IsolationModel& model, const PlacedReading& reading) {
  const double limit = model.displayLimit().value;
  const double slipped = model.priors.slippedShare;
  ReadingTable result;
  const bool volts = reading.sort == ReadingSort::voltsToGround;
  const double anySlip =
      !reading.value ? 0.5 * slipped : 0.5 * slipped * (volts ? 1.0 / limit : anyOhms(*reading.value));
  const MeterMode* ohmsMode = model.meter.mode(ReadingMode::ohms);
  const auto near = [&](double v) {
    if (volts)
      return reading.value ? studentDensity(*reading.value, v, model.repeatSigma)
                           : normalBelow((v - limit) / model.repeatSigma);
    const double amperes = std::max(1e-12, sourceCurrent(model.ohms->source, Volts(v)).value);
    const double ohms = std::max(0.0, v / amperes);
    const double sigma = ohmsSigma(model.meter, ohms);
    return reading.value ? studentDensity(*reading.value, ohms, sigma)
                         : normalBelow((ohms - ohmsMode->displayLimit()) / sigma);
  };
  for (std::size_t i = 0; i < latticePoints(limit); ++i)
    result.logLikelihood.push_back(
        static_cast<float>(std::log((1.0 - slipped) * near(latticeVolts(i)) + anySlip)));
  result.atNothing = std::log(reading.value ? anySlip : 1.0 - slipped + anySlip);
  return result;
}

ReadingTable goodTable(const IsolationModel& model, const KnownGood& known) {
  const double limit = model.displayLimit().value;
  // What is left out of the model: junctions of unlike emission in parallel.
  constexpr double modelSigma = 0.002;
  const double sigma = std::hypot(known.spread.value, modelSigma);
  constexpr double astray = 0.01; // a good board's value that was taken somewhere else
  const double over = !known.value ? 1.0 - astray : known.sometimesOverLimit ? 0.3 : 0.0;
  ReadingTable result;
  for (std::size_t i = 0; i < latticePoints(limit); ++i) {
    const double v = latticeVolts(i);
    const double value = known.value ? studentDensity(known.value->value, v, sigma) : 0.0;
    const double here =
        (1.0 - over) * ((1.0 - astray) * value + astray / limit) + over * normalBelow((v - limit) / sigma);
    result.logLikelihood.push_back(static_cast<float>(std::log(std::max(here, 1e-12))));
  }
  result.atNothing = std::log((1.0 - over) * astray / limit + over);
  return result;
}

ReadingProduct::ReadingProduct(std::span<const ReadingTable* const> readings) {
  if (readings.empty()) return;
  std::vector<float> sum(readings.front()->logLikelihood.size(), 0.0F);
  double nothing = 0.0;
  for (const ReadingTable* reading : readings) {
    std::transform(sum.begin(), sum.end(), reading->logLikelihood.begin(), sum.begin(), std::plus<>());
    nothing += reading->atNothing;
  }
  logScale_ = std::max(nothing, static_cast<double>(*std::max_element(sum.begin(), sum.end())));
  atNothing_ = std::exp(nothing - logScale_);
  integral_.reserve(sum.size());
  double integral = 0.0;
  double last = 0.0;
  for (std::size_t i = 0; i < sum.size(); ++i) {
    const double here = std::exp(static_cast<double>(sum[i]) - logScale_);
    if (i > 0) integral += 0.5 * (last + here) * ReadingTable::step;
    integral_.push_back(integral);
    value_.push_back(here);
    if (i % block == 0) greatest_.push_back(here);
    greatest_.back() = std::max(greatest_.back(), here);
    last = here;
  }
}

double ReadingProduct::integralTo(double volts) const {
  const double at = std::clamp((volts - ReadingTable::first) / ReadingTable::step, 0.0,
                               static_cast<double>(integral_.size() - 1));
  const auto i = std::min(static_cast<std::size_t>(at), integral_.size() - 2);
  const double share = at - static_cast<double>(i);
  return integral_[i] + share * (integral_[i + 1] - integral_[i]);
}

double ReadingProduct::mean(double low, double high) const {
  if (integral_.empty()) return 1.0;
  const double last = ReadingTable::first + ReadingTable::step * static_cast<double>(integral_.size() - 1);
  if (low >= last) return atNothing_;
  if (!std::isfinite(high)) return 0.5 * (mean(low, last) + atNothing_);
  const double least = std::max(high - low, ReadingTable::step);
  const double end = low + least;
  // What lies above the lattice is over the display's limit.
  const double inside = std::min(end, last);
  return (integralTo(inside) - integralTo(low) + (end - inside) * atNothing_) / least;
}

double ReadingProduct::most(double low, double high) const {
  if (integral_.empty()) return 1.0;
  const auto last = static_cast<double>(value_.size() - 1);
  const double from = (low - ReadingTable::first) / ReadingTable::step;
  if (from >= last) return atNothing_;
  const double to = (high - ReadingTable::first) / ReadingTable::step;
  double greatest = to > last ? atNothing_ : 0.0;
  auto i = static_cast<std::size_t>(std::max(0.0, std::floor(from)));
  const auto end = static_cast<std::size_t>(std::clamp(std::ceil(to), 0.0, last));
  while (i <= end) {
    if (i % block == 0 && i + block <= end) {
      greatest = std::max(greatest, greatest_[i / block]);
      i += block;
    } else {
      greatest = std::max(greatest, value_[i++]);
    }
  }
  return greatest;
}

} // namespace netmend
