#include "prediction.h"

#include <algorithm>
#include <cmath>

#include "likelihood.h"
#include "posterior.h"
#include "weighing.h"

namespace netmend {

Prediction predictionOf(const IsolationModel& model, const Foreseen& foreseen) {
  Prediction result;
  result.overLimit = static_cast<double>(foreseen.overLimit);
  double mass = 0.0;
  double sum = 0.0;
  double squares = 0.0;
  for (std::size_t i = 0; i < foreseen.share.size(); ++i) {
    const double volts = 1e-3 * (static_cast<double>(foreseen.first + i) + 0.5);
    const auto share = static_cast<double>(foreseen.share[i]);
    mass += share;
    sum += share * volts;
    squares += share * volts * volts;
  }
  if (mass > 1e-9) {
    result.mean = Volts(sum / mass);
    const double variance = std::max(0.0, squares / mass - sum / mass * sum / mass);
    result.spread = Volts(std::hypot(std::sqrt(variance), model.repeatSigma));
  }
  return result;
}

Prediction predictDiode(const Isolation& isolation, std::size_t place, std::size_t faultClass) {
  const auto& model = *isolation.model;
  if (!model.bench) return {noneReadsOverLimit, {}, {}};
  return predictionOf(model, foreseenAt(isolation, faultClass, model.cellOfPlace[place]));
}

Prediction predictDiode(const Isolation& isolation, std::size_t place) {
  Prediction result;
  double mass = 0.0;
  double sum = 0.0;
  const auto posterior = posteriorOf(isolation);
  double squares = 0.0;
  for (std::size_t c = 0; c < isolation.classes.size(); ++c) {
    const double p = posterior[c];
    if (isolation.classes[c].kind == FaultKind::noneOfThese || p < 1e-6) continue;
    const auto one = predictDiode(isolation, place, c);
    result.overLimit += p * one.overLimit;
    const double shown = p * (1.0 - one.overLimit);
    mass += shown;
    sum += shown * one.mean.value;
    squares += shown * (one.mean.value * one.mean.value + one.spread.value * one.spread.value);
  }
  const double known = 1.0 - posterior[1];
  if (known > 0.0) result.overLimit /= known;
  if (mass > 1e-12) {
    result.mean = Volts(sum / mass);
    result.spread = Volts(std::sqrt(std::max(0.0, squares / mass - sum / mass * sum / mass)));
  }
  return result;
}

} // namespace netmend
