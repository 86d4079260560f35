#include "likelihood.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "line_solver.h"
#include "netmend/netgraph/net_role.h"
#include "netmend/probing/comparison.h"
#include "probe_places.h"
#include "statistics.h"

namespace netmend {

namespace {

bool isGround(const IsolationModel& model, const ProbePoint& point) {
  if (point.pin) return model.groundPins.contains(point.pin.value);
  if (point.label.empty()) return true;
  const auto role = roleFromName(point.label);
  return role.known() && role.value == NetRole::ground;
}

/// Any resistance from a tenth of an ohm to ten megohms is as likely per decade.
double anyOhms(double ohms) {
  return 1.0 / (std::max(ohms, 0.1) * std::log(1e8));
}

class Likelihoods {
public:
  Likelihoods(const Isolation& isolation, const PlacedReading& reading)
      : model_(*isolation.model), reading_(reading), cell_(model_.cellOfPlace[reading.place]),
        slipped_(model_.priors.slippedShare) {}

  ReadingLikelihood all() {
    ReadingLikelihood result;
    std::map<std::size_t, std::size_t> rowOfFragment;
    for (std::size_t c = 0; c < model_.effects.size(); ++c) {
      std::size_t row = result.rows.size();
      if (model_.effects[c].kind == FaultKind::noneOfThese) {
        result.rows.push_back({none()});
      } else if (reading_.sort == ReadingSort::ohmsBetween) {
        const std::size_t key = together(model_, c, cell_, model_.cellOfPlace[*reading_.other]) ? 1 : 0;
        row = rowOfFragment.try_emplace(key, row).first->second;
        if (row == result.rows.size()) result.rows.push_back({between(key == 1)});
      } else {
        const std::size_t fragment = model_.fragmentAt(c, cell_);
        row = rowOfFragment.try_emplace(fragment, row).first->second;
        if (row == result.rows.size()) result.rows.push_back(toGround(fragment));
      }
      result.rowOf.push_back(row);
    }
    return result;
  }

private:
  [[nodiscard]] double none() const {
    const auto& value = reading_.value;
    if (reading_.sort == ReadingSort::voltsToGround)
      return value ? (1.0 - noneReadsOverLimit) / model_.diode->displayLimit.value : noneReadsOverLimit;
    return value ? (1.0 - noneParted) * anyOhms(*value) : noneParted;
  }

  /// By sample.
  [[nodiscard]] std::vector<double> toGround(std::size_t fragment) const {
    const std::size_t samples = model_.samples.samples;
    std::vector<double> result(samples);
    if (reading_.sort == ReadingSort::voltsToGround) {
      const float* volts = &model_.volts[fragment * samples];
      std::transform(volts, volts + samples, result.begin(),
                     [&](float v) { return voltsToGround(static_cast<double>(v)); });
      return result;
    }
    const FragmentSolver solver(model_.fragments[fragment], model_.samples);
    for (std::size_t s = 0; s < samples; ++s)
      result[s] = ohmsToGround(solver.volts(s, *model_.ohms).value);
    return result;
  }

  [[nodiscard]] double voltsToGround(double volts) const {
    const auto& limit = model_.diode->displayLimit.value;
    return voltsLikelihood(reading_.value, volts, voltsSigma(model_, std::min(volts, limit)), limit,
                           slipped_);
  }

  [[nodiscard]] double slip() const { return reading_.value ? 0.5 * anyOhms(*reading_.value) : 0.5; }

  [[nodiscard]] double limitOhms() const {
    const MeterMode* mode = model_.meter.mode(reading_.mode);
    return mode ? mode->displayLimit() : 1e7;
  }

  [[nodiscard]] double near(double ohms, double sigma) const {
    if (!reading_.value) return normalBelow((ohms - limitOhms()) / sigma);
    return normalDensity(*reading_.value, ohms, sigma);
  }

  [[nodiscard]] double between(bool joined) const {
    double fits = 0.0;
    if (joined) {
      const auto path = pathBetween(model_, cell_, model_.cellOfPlace[*reading_.other], reading_.mode);
      fits = near(path.ohms, path.sigma);
    } else {
      fits = reading_.value ? (1.0 - openReadsOverLimit) * anyOhms(*reading_.value) : openReadsOverLimit;
    }
    return (1.0 - slipped_) * fits + slipped_ * slip();
  }

  [[nodiscard]] double ohmsToGround(double volts) const {
    const double amperes = sourceCurrent(*model_.ohms, Volts(volts)).value;
    const double ohms = amperes > 0.0 ? std::min(volts / amperes, 1e9) : 1e9;
    const auto meter = uncertaintyOf(model_.meter, reading_.mode, std::min(ohms, limitOhms()));
    const double sigma = std::hypot(meter ? meter->combined() : 0.0, 0.05 * ohms, 0.3);
    return (1.0 - slipped_) * near(ohms, sigma) + slipped_ * slip();
  }

  const IsolationModel& model_;
  const PlacedReading& reading_;
  std::size_t cell_;
  double slipped_;
};

} // namespace

std::vector<double> sigmaTable(const MeterProfile& meter, Volts readingSpread, Volts limit) {
  std::vector<double> result;
  for (int millivolts = 0; 1e-3 * millivolts <= limit.value + 2e-3; ++millivolts) {
    const auto uncertainty =
        uncertaintyOf(meter, ReadingMode::diode, std::min(limit.value, 1e-3 * millivolts));
    result.push_back(std::hypot(uncertainty ? uncertainty->combined() : 0.0, readingSpread.value));
  }
  return result;
}

double voltsSigma(const IsolationModel& model, double volts) {
  const auto last = static_cast<double>(model.sigmaByMillivolt.size() - 1);
  return model.sigmaByMillivolt[static_cast<std::size_t>(std::clamp(1e3 * volts, 0.0, last))];
}

bool together(const IsolationModel& model, std::size_t faultClass, std::size_t cellA, std::size_t cellB) {
  const auto& effect = model.effects[faultClass];
  return model.cells.root[cellA] == model.cells.root[cellB] && effect.isBelow(cellA) == effect.isBelow(cellB);
}

PathOhms pathBetween(const IsolationModel& model, std::size_t cellA, std::size_t cellB, ReadingMode mode) {
  const auto& cells = model.cells;
  std::size_t meet = cellA;
  while (!(cellB >= meet && cellB < cells.end[meet]) && !cells.isRoot(meet))
    meet = cells.parent[meet];
  PathOhms path;
  path.ohms = std::max(0.0, cells.ohmsToRoot[cellA] + cells.ohmsToRoot[cellB] - 2.0 * cells.ohmsToRoot[meet]);
  const auto unknown = static_cast<double>(cells.unknownToRoot[cellA] + cells.unknownToRoot[cellB] -
                                           2 * cells.unknownToRoot[meet]);
  const auto meter = uncertaintyOf(model.meter, mode, path.ohms);
  // Contact of hand-held tips, and copper of which nobody knows the resistance: common practice.
  const double contact = mode == ReadingMode::milliohms ? 0.003 : 0.3;
  path.sigma =
      std::hypot(meter ? meter->combined() : 0.0, std::hypot(0.1 * path.ohms, 0.2 * unknown), contact);
  return path;
}

tl::expected<PlacedReading, SetAsideWhy> placed(const Isolation& isolation, const Reading& reading) {
  const auto& model = *isolation.model;
  const auto unused = [](SetAsideWhy why) { return tl::unexpected(why); };
  if (reading.value && !std::isfinite(*reading.value)) return unused(SetAsideWhy::notANumber);
  if (!sameCondition(reading.condition, model.condition)) return unused(SetAsideWhy::otherCondition);
  if (reading.settling == Settling::rising) return unused(SetAsideWhy::rising);
  PlacedReading result;
  result.mode = reading.mode;
  const auto place = probePlaceOf(isolation, reading.point);
  if (!place) return unused(SetAsideWhy::notOnLine);
  result.place = *place;
  result.value = reading.value;
  const bool ground = isGround(model, reading.other);
  if (!ground) result.other = probePlaceOf(isolation, reading.other);
  if (!ground && !result.other) return unused(SetAsideWhy::otherLeadElsewhere);
  switch (reading.mode) {
  case ReadingMode::diode:
    if (!ground) return unused(SetAsideWhy::diodeFromPointToPoint);
    if (!model.diode) return unused(SetAsideWhy::noDiodeMode);
    result.value = valueAtBenchTemperature(reading);
    return result;
  case ReadingMode::ohms:
  case ReadingMode::milliohms:
  case ReadingMode::continuity:
    if (result.value && *result.value < 0.0) return unused(SetAsideWhy::negativeResistance);
    result.sort = ground ? ReadingSort::ohmsToGround : ReadingSort::ohmsBetween;
    if (ground && !(reading.mode == ReadingMode::ohms && model.ohms))
      return unused(SetAsideWhy::modeToGround);
    return result;
  case ReadingMode::diodeReverse:
  case ReadingMode::volts:
  case ReadingMode::dropUnderCurrent:
  case ReadingMode::temperature:
    break;
  }
  return unused(SetAsideWhy::mode);
}

ReadingLikelihood likelihoodOf(const Isolation& isolation, const PlacedReading& reading) {
  return Likelihoods(isolation, reading).all();
}

std::optional<std::size_t> probePlaceOf(const Isolation& isolation, const ProbePoint& point) {
  const auto& places = isolation.places;
  if (point.pin)
    for (std::size_t i = 0; i < places.size(); ++i)
      if (places[i].pin == point.pin) return i;
  if (point.label.empty()) return std::nullopt;
  for (std::size_t i = 0; i < places.size(); ++i)
    if (places[i].label == point.label) return i;
  for (std::size_t i = 0; i < places.size(); ++i)
    if (!places[i].pin && isOldHandle(point.label, places[i])) return i;
  return std::nullopt;
}

} // namespace netmend
