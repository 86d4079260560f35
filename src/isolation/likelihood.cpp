#include "likelihood.h"

#include <algorithm>
#include <cmath>

#include "model.h"
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

double slip(const PlacedReading& reading) {
  return reading.value ? 0.5 * anyOhms(*reading.value) : 0.5;
}

double near(const IsolationModel& model, const PlacedReading& reading, double ohms, double sigma) {
  if (reading.value) return studentDensity(*reading.value, ohms, sigma);
  const MeterMode* mode = model.meter.mode(reading.mode);
  return normalBelow((ohms - (mode ? mode->displayLimit() : 1e7)) / sigma);
}

} // namespace

double betweenLikelihood(const IsolationModel& model, const PlacedReading& reading, std::size_t faultClass) {
  const std::size_t here = model.cellOfPlace[reading.place];
  const std::size_t there = model.cellOfPlace[*reading.other];
  double fits = 0.0;
  if (together(model, faultClass, here, there)) {
    const auto path = pathBetween(model, here, there, reading.mode);
    fits = near(model, reading, path.ohms, path.sigma);
  } else {
    fits = reading.value ? (1.0 - openReadsOverLimit) * anyOhms(*reading.value) : openReadsOverLimit;
  }
  const double slipped = model.priors.slippedShare;
  return (1.0 - slipped) * fits + slipped * slip(reading);
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
    if (!model.bench) return unused(SetAsideWhy::noDiodeMode);
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

std::vector<PlacedReading> placedReadings(const Isolation& isolation) {
  std::vector<PlacedReading> result;
  for (const auto& observation : isolation.observations)
    if (const auto where = placed(isolation, observation.reading)) result.push_back(*where);
  return result;
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
