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
  result.isValue = reading.value.has_value();
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

ReadingProduct::ReadingProduct(std::span<const ReadingTable* const> readings,
                               std::span<const CommonError> errors) {
  if (readings.empty()) return;
  std::vector<float> sum(readings.front()->logLikelihood.size(), 0.0F);
  double nothing = 0.0;
  for (const ReadingTable* reading : readings) {
    std::transform(sum.begin(), sum.end(), reading->logLikelihood.begin(), sum.begin(), std::plus<>());
    nothing += reading->atNothing;
    hasValue_ = hasValue_ || reading->isValue;
  }
  logScale_ = std::max(nothing, static_cast<double>(*std::max_element(sum.begin(), sum.end())));
  atNothing_ = std::exp(nothing - logScale_);
  for (const float log : sum)
    sharp_.value.push_back(std::exp(static_cast<double>(log) - logScale_));
  const auto points = static_cast<std::ptrdiff_t>(sum.size());
  smooth_.value.assign(sum.size(), 0.0);
  for (const auto& error : errors) {
    const auto moved = static_cast<std::ptrdiff_t>(std::lround(error.offset / ReadingTable::step));
    for (std::ptrdiff_t i = 0; i < points; ++i)
      smooth_.value[static_cast<std::size_t>(i)] +=
          error.weight *
          sharp_.value[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(i + moved, 0, points - 1))];
  }
  sharp_.finish();
  smooth_.finish();
}

void ReadingProduct::Lattice::finish() {
  integral.reserve(value.size());
  double sum = 0.0;
  for (std::size_t i = 0; i < value.size(); ++i) {
    if (i > 0) sum += 0.5 * (value[i - 1] + value[i]) * ReadingTable::step;
    integral.push_back(sum);
    if (i % block == 0) greatest.push_back(0.0);
    greatest.back() = std::max(greatest.back(), value[i]);
    if (i % (block * block) == 0) greatestOfMany.push_back(0.0);
    greatestOfMany.back() = std::max(greatestOfMany.back(), value[i]);
  }
}

double ReadingProduct::Lattice::integralTo(double volts) const {
  const double at = std::clamp((volts - ReadingTable::first) / ReadingTable::step, 0.0,
                               static_cast<double>(integral.size() - 1));
  const auto i = std::min(static_cast<std::size_t>(at), integral.size() - 2);
  const double share = at - static_cast<double>(i);
  return integral[i] + share * ReadingTable::step * (value[i] + 0.5 * share * (value[i + 1] - value[i]));
}

double ReadingProduct::Lattice::mean(double low, double high, double beyond) const {
  if (integral.empty()) return 1.0;
  const double last = ReadingTable::first + ReadingTable::step * static_cast<double>(integral.size() - 1);
  if (low >= last) return beyond;
  if (!std::isfinite(high)) return 0.5 * (mean(low, last, beyond) + beyond);
  // A stretch narrower than the lattice is widened on both sides.
  const double least = std::max(high - low, ReadingTable::step);
  const double begin = 0.5 * (low + high - least);
  const double end = begin + least;
  // What lies above the lattice is over the display's limit.
  const double inside = std::min(end, last);
  return (integralTo(inside) - integralTo(begin) + (end - inside) * beyond) / least;
}

double ReadingProduct::Lattice::most(double low, double high, double beyond) const {
  if (integral.empty()) return 1.0;
  const auto last = static_cast<double>(value.size() - 1);
  const double from = (low - ReadingTable::first) / ReadingTable::step;
  if (from >= last) return beyond;
  const double to = (high - ReadingTable::first) / ReadingTable::step;
  double result = to > last ? beyond : 0.0;
  auto i = static_cast<std::size_t>(std::max(0.0, std::floor(from)));
  const auto end = static_cast<std::size_t>(std::clamp(std::ceil(to), 0.0, last));
  while (i <= end) {
    if (i % (block * block) == 0 && i + block * block <= end) {
      result = std::max(result, greatestOfMany[i / (block * block)]);
      i += block * block;
    } else if (i % block == 0 && i + block <= end) {
      result = std::max(result, greatest[i / block]);
      i += block;
    } else {
      result = std::max(result, value[i++]);
    }
  }
  return result;
}

} // namespace netmend
