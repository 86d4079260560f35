#include "netmend/isolation/isolation.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <span>
#include <utility>

#include "fault_classes.h"
#include "likelihood.h"
#include "model.h"
#include "netmend/netgraph/net_role.h"
#include "posterior.h"
#include "probe_places.h"
#include "weighing.h"

namespace netmend {

namespace {

constexpr double farBehind = 18.0; ///< log: less than a ten-millionth of the likeliest
constexpr double usualVolts = 0.5; ///< at which the meter's errors are taken: nearly all readings are near it

/// One standard deviation of a clamp's drop as long as nothing is known.
Volts dropSpread(const FaultPriors& priors) {
  double mean = 0.0;
  double square = 0.0;
  for (const auto& [from, to, share] : priors.drops) {
    mean += share * 0.5 * (from.value + to.value);
    square += share * (from.value * from.value + from.value * to.value + to.value * to.value) / 3.0;
  }
  return Volts(std::sqrt(std::max(0.0, square - mean * mean)));
}

std::vector<LinePin> linePins(const IsolationInput& input, const LineCells& cells) {
  auto terminations = terminationsOf(input.lookup, input.line, input.priors);
  const auto terminals = input.line.terminals();
  std::vector<LinePin> result;
  for (std::size_t i = 0; i < terminals.size(); ++i) {
    const auto* pin = std::get_if<PinId>(&input.line.graph[terminals[i]].object);
    if (!pin || !input.lookup.board().pins.find(*pin)) continue;
    for (const auto& given : input.terminations)
      if (given.pin == *pin) terminations[i] = given;
    const PartId owner = input.lookup.board().pins.find(*pin)->part;
    const Part* part = input.lookup.board().parts.find(owner);
    const bool chip = part && part->kind.known() && part->kind.value == PartKind::chip;
    result.push_back({*pin, owner, chip, cells.cellOfNode[terminals[i]], pinLabel(input.lookup.board(), *pin),
                      terminations[i]});
  }
  std::stable_sort(result.begin(), result.end(),
                   [](const LinePin& a, const LinePin& b) { return a.cell < b.cell; });
  return result;
}

/// Pins of good boards whose value is known, the most certain one of each node of the line: what they read is
/// the same.
std::vector<std::pair<std::size_t, KnownGood>> knownBySuper(const IsolationModel& model) {
  std::map<std::size_t, KnownGood> best;
  const auto spread = [&](const KnownGood& known) {
    return known.spread.value > 0.0 ? known.spread : model.priors.boardSpread;
  };
  for (const auto& known : model.knownGood)
    for (const auto& pin : model.pins) {
      if (pin.pin != known.pin) continue;
      KnownGood here = known;
      here.spread = spread(known);
      const auto [at, fresh] = best.try_emplace(model.cells.super[pin.cell], here);
      const bool better = here.value.has_value() != at->second.value.has_value()
                              ? here.value.has_value()
                              : here.spread < at->second.spread;
      if (!fresh && better) at->second = here;
    }
  return {best.begin(), best.end()};
}

void addNetworks(IsolationModel& model) {
  const auto known = knownBySuper(model);
  std::vector<std::size_t> supers;
  for (const auto& [super, good] : known) {
    supers.push_back(super);
    const auto table = goodTable(model, good);
    const std::vector<const ReadingTable*> one{&table};
    model.good.emplace_back(one, std::span<const CommonError>{});
  }
  model.networks = lineNetworks({model.cells, model.pins, model.effects, supers, model.priors, *model.bench});
}

std::unordered_set<std::uint64_t> groundPins(const Board& board) {
  std::unordered_set<std::uint64_t> ground;
  std::unordered_set<std::uint64_t> result;
  for (const auto& net : board.nets)
    if (const auto role = roleOf(net); role.known() && role.value == NetRole::ground)
      ground.insert(net.id.value);
  for (const auto& pin : board.pins)
    if (pin.net.known() && ground.contains(pin.net.value.value)) result.insert(pin.id.value);
  return result;
}

/// Work for several threads would be small: classes share their fragments with others, and what is known of
/// them.
bool weighAll(Isolation& isolation, const std::stop_token& stop) {
  auto readings = placedReadings(isolation);
  isolation.cellsRead = cellsRead(*isolation.model, readings);
  Weighing weighing(*isolation.model, std::move(readings));
  // The likeliest so far first: what falls far behind needs no figures.
  std::vector<std::size_t> order(isolation.classes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return isolation.logMass[a] > isolation.logMass[b]; });
  std::vector<std::vector<Foreseen>> foreseen(order.size());
  std::vector<double> unresolved(order.size(), 0.0);
  double best = -1e300;
  for (const std::size_t c : order) {
    if (stop.stop_requested()) return false;
    const double prior = std::log(std::max(isolation.classes[c].prior, 1e-300));
    auto weighed = weighing.of(c, {}, best - farBehind - prior);
    isolation.logMass[c] = prior + weighed.log;
    best = std::max(best, isolation.logMass[c]);
    unresolved[c] = weighed.unresolved;
    foreseen[c] = std::move(weighed.foreseen);
  }
  isolation.foreseen = std::make_shared<const std::vector<std::vector<Foreseen>>>(std::move(foreseen));
  normalise(isolation);
  isolation.shareError = 0.0;
  for (std::size_t c = 0; c < unresolved.size(); ++c) {
    const double p = isolation.probability[c];
    isolation.shareError = std::max(isolation.shareError, unresolved[c] * p * (1.0 - p));
  }
  return true;
}

void addNotices(const IsolationInput& input, const ClassesOnLine& found, const IsolationModel& model,
                std::vector<LineNotice>& notices) {
  using Kind = LineNotice::Kind;
  notices = found.notices;
  if (found.unknownWayShare > 0.0) notices.push_back({Kind::unknownWays, 0, found.unknownWayShare});
  bool used = false;
  for (const auto& known : input.knownGood) {
    const bool here = std::any_of(model.pins.begin(), model.pins.end(),
                                  [&](const LinePin& pin) { return pin.pin == known.pin; });
    used = used || here;
    if (!here) notices.push_back({Kind::knownGoodAstray});
  }
  if (!used)
    notices.push_back({Kind::noKnownGood, 0, 0.0, dropSpread(input.priors), input.priors.boardSpread});
  if (model.pins.size() < 2) notices.push_back({Kind::onePin});
  if (!model.bench) notices.push_back({Kind::noDiodeMode});
}

} // namespace

std::vector<KnownGood> knownGoodOf(const Lookup& lookup, const Line& line, const ExpectedTable& expected,
                                   const Condition& condition) {
  std::vector<KnownGood> result;
  const ReadingSetting setting{ReadingMode::diode, {PinId{}, "GND"}, condition, std::nullopt};
  for (const NodeIndex node : line.terminals()) {
    const auto* pin = std::get_if<PinId>(&line.graph[node].object);
    if (!pin || !lookup.board().pins.find(*pin)) continue;
    const Expected* found = expected.find({*pin, pinLabel(lookup.board(), *pin)}, setting);
    if (!found || found->from == ExpectedFrom::pinKind) continue;
    const ExpectedHump* heaviest = nullptr;
    for (const auto& hump : found->humps)
      if (!heaviest || hump.weight > heaviest->weight) heaviest = &hump;
    if (!heaviest || found->overLimitShare > heaviest->weight)
      result.push_back({*pin});
    else
      result.push_back({*pin, Volts(heaviest->centre), Volts(heaviest->scale), found->boardsOverLimit > 0});
  }
  return result;
}

Isolation makeIsolation(const IsolationInput& input) {
  auto model = std::make_shared<IsolationModel>();
  model->priors = input.priors;
  model->efforts = input.efforts;
  model->meter = input.meter;
  if (const auto source = meterSource(input.meter, ReadingMode::diode)) {
    model->bench.emplace(LineBench{*source, source->testCurrent,
                                   input.priors.emission * thermalVoltage(benchTemperature).value,
                                   input.priors.junctionSeries,
                                   SoftMinimum(input.priors.emission, input.priors.junctionSeries,
                                               source->testCurrent, benchTemperature)});
    const auto uncertainty = uncertaintyOf(input.meter, ReadingMode::diode, usualVolts);
    const auto& u = uncertainty.value_or(ReadingUncertainty{});
    model->repeatSigma = std::hypot(u.resolution, input.priors.readingSpread.value);
    const Volts common(std::hypot(u.calibration, u.leads));
    // Where readings meet two circuits, what is not known of these is far wider than a step.
    model->errors = commonErrors(common, 1.0);
    model->fineErrors =
        commonErrors(common, std::clamp(1.2 * model->repeatSigma / std::max(common.value, 1e-9), 0.1, 0.5));
  }
  const auto ohms = meterSource(input.meter, ReadingMode::ohms);
  if (ohms && model->bench) {
    model->ohms = model->bench;
    model->ohms->source = *ohms;
  }
  model->condition = input.options.condition;
  model->groundPins = groundPins(input.lookup.board());
  model->cells = lineCells(input.lookup, input.line, input.efforts.scrapeEvery);
  model->pins = linePins(input, model->cells);

  Isolation result;
  auto places = probePlaces(input.lookup, input.line, model->cells, input.efforts);
  result.places = std::move(places.places);
  model->cellOfPlace = std::move(places.cell);
  auto found = faultClasses(
      {input.lookup, input.line, model->cells, model->pins, result.places, model->cellOfPlace, input.priors});
  result.classes = std::move(found.classes);
  model->effects = std::move(found.effects);
  model->knownGood = input.knownGood;
  if (model->bench) addNetworks(*model);
  addNotices(input, found, *model, result.notices);
  result.model = model;
  result.logMass.assign(result.classes.size(), 0.0);
  weighAll(result, {});
  // Good boards are no evidence of what is wrong with this one.
  for (std::size_t c = 0; c < result.classes.size(); ++c) {
    const double prior = std::log(std::max(result.classes[c].prior, 1e-300));
    model->logGood.push_back(result.logMass[c] - prior);
    result.logMass[c] = prior;
  }
  normalise(result);
  return result;
}

std::optional<Isolation> update(Isolation isolation, const std::vector<Reading>& readings,
                                const std::stop_token& stop) {
  const std::size_t before = isolation.observations.size();
  for (const auto& reading : readings) {
    if (const auto where = placed(isolation, reading))
      isolation.observations.push_back({reading, where->place, where->other});
    else
      isolation.setAside.push_back({reading, where.error()});
  }
  if (isolation.observations.size() > before && !weighAll(isolation, stop)) return std::nullopt;
  return isolation;
}

Isolation update(Isolation isolation, const std::vector<Reading>& readings) {
  return *update(std::move(isolation), readings, {});
}

Isolation update(Isolation isolation, const Reading& reading) {
  return update(std::move(isolation), std::vector{reading});
}

} // namespace netmend
