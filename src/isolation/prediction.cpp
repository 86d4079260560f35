#include "prediction.h"

#include <algorithm>
#include <cmath>

#include "likelihood.h"
#include "posterior.h"
#include "statistics.h"

namespace netmend {

Prediction predictWith(const Isolation& isolation, std::size_t place, std::size_t faultClass,
                       const double* weights) {
  const auto& model = *isolation.model;
  Prediction result;
  if (!model.diode || model.effects[faultClass].kind == FaultKind::noneOfThese) {
    result.overLimit = noneReadsOverLimit;
    return result;
  }
  const float* volts = model.voltsAt(faultClass, model.cellOfPlace[place]);
  const double limit = model.diode->displayLimit.value;
  double mass = 0.0;
  double sum = 0.0;
  double squares = 0.0;
  for (std::size_t s = 0; s < model.samples.samples; ++s) {
    const double weight = weights[s];
    if (weight < 1e-12) continue;
    const auto v = static_cast<double>(volts[s]);
    const double sigma = voltsSigma(model, std::min(v, limit));
    const double z = (v - limit) / sigma;
    const double over = z < -8.0 ? 0.0 : normalBelow(z);
    result.overLimit += weight * over;
    const double shown = weight * (1.0 - over);
    mass += shown;
    sum += shown * v;
    squares += shown * (v * v + sigma * sigma);
  }
  if (mass > 1e-12) {
    result.mean = Volts(sum / mass);
    result.spread = Volts(std::sqrt(std::max(0.0, squares / mass - sum / mass * sum / mass)));
  }
  return result;
}

Prediction predictDiode(const Isolation& isolation, std::size_t place, std::size_t faultClass) {
  const std::size_t samples = isolation.model->samples.samples;
  return predictWith(isolation, place, faultClass, &isolation.weight[faultClass * samples]);
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
