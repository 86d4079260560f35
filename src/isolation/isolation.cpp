#include "netmend/isolation/isolation.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "fault_classes.h"
#include "likelihood.h"
#include "line_solver.h"
#include "model.h"
#include "netmend/netgraph/net_role.h"
#include "probe_places.h"
#include "statistics.h"
#include "termination_samples.h"

namespace netmend {

namespace {

/// A line of many places and series parts gets fewer samples: the work stays the same.
std::size_t affordableSamples(std::size_t wanted, std::size_t classes, std::size_t supers) {
  constexpr std::size_t budget = 400000;   // operating points on one node
  constexpr std::size_t networkPrice = 30; // one of several nodes, against one on one node
  const std::size_t each = std::max<std::size_t>(1, 2 * classes * supers * (supers > 1 ? networkPrice : 1));
  return std::clamp<std::size_t>(budget / each, 16, std::max<std::size_t>(16, wanted));
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
    result.push_back(
        {*pin, cells.cellOfNode[terminals[i]], pinLabel(input.lookup.board(), *pin), terminations[i]});
  }
  std::stable_sort(result.begin(), result.end(),
                   [](const LinePin& a, const LinePin& b) { return a.cell < b.cell; });
  return result;
}

std::vector<float> predictedVolts(const IsolationModel& model) {
  if (!model.diode) return {};
  const LineSolver solver(model.cells, model.pins, model.samples);
  std::vector<float> volts;
  volts.reserve(model.effects.size() * 2 * model.cells.supers * model.samples.samples);
  for (const auto& effect : model.effects)
    for (const bool below : {false, true})
      for (std::size_t super = 0; super < model.cells.supers; ++super)
        for (std::size_t s = 0; s < model.samples.samples; ++s) {
          const bool needed = !below || effect.kind == FaultKind::open;
          volts.push_back(
              needed ? static_cast<float>(solver.volts(effect, below, super, s, *model.diode).value) : 0.0f);
        }
  return volts;
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

void normalise(Isolation& isolation) {
  const std::size_t samples = isolation.model->samples.samples;
  const double all = logSum(isolation.logWeight);
  for (auto& weight : isolation.logWeight)
    weight -= all;
  isolation.probability.assign(isolation.classes.size(), 0.0);
  for (std::size_t c = 0; c < isolation.classes.size(); ++c)
    isolation.probability[c] = std::exp(logSum(&isolation.logWeight[c * samples], samples));
}

void startWeights(Isolation& isolation) {
  const auto& sampleWeight = isolation.model->samples.logWeight;
  const double all = logSum(sampleWeight);
  for (const auto& faultClass : isolation.classes)
    for (const double weight : sampleWeight)
      isolation.logWeight.push_back(std::log(std::max(faultClass.prior, 1e-300)) + weight - all);
  normalise(isolation);
}

void addNotices(const IsolationInput& input, const ClassesOnLine& found, const IsolationModel& model,
                std::vector<std::string>& notices) {
  notices = found.notices;
  if (found.unknownWayShare > 0.0)
    notices.push_back(
        fmt::format("copper whose way nobody has seen holds {:.0f} % of the chances: there a break "
                    "is found between pins, not along the track; drawing that way would say where",
                    100.0 * found.unknownWayShare));
  bool used = false;
  for (const auto& known : input.knownGood) {
    const bool here = std::any_of(model.pins.begin(), model.pins.end(),
                                  [&](const LinePin& pin) { return pin.pin == known.pin; });
    used = used || here;
    if (!here) notices.push_back("a known-good value is for a pin that is not on this line");
  }
  if (!used)
    notices.push_back(
        fmt::format("no good board's value is known on this line: readings are predicted to about "
                    "{:.0f} mV; one value from a good board would make that about {:.0f} mV",
                    1e3 * input.priors.dropSpread.value, 1e3 * input.priors.boardSpread.value));
  if (model.pins.size() < 2)
    notices.emplace_back(
        "only one pin of this line is known: a break can not be placed; entering the pins that it "
        "leads to would make it possible");
  if (!model.diode) notices.emplace_back("the meter has no diode mode: only resistances are used");
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
      result.push_back({*pin, std::nullopt, Volts{}});
    else
      result.push_back({*pin, Volts(heaviest->centre), Volts(heaviest->scale)});
  }
  return result;
}

Isolation makeIsolation(const IsolationInput& input) {
  auto model = std::make_shared<IsolationModel>();
  model->priors = input.priors;
  model->efforts = input.efforts;
  model->meter = input.meter;
  model->diode = meterSource(input.meter, ReadingMode::diode);
  model->ohms = meterSource(input.meter, ReadingMode::ohms);
  if (model->diode)
    model->sigmaByMillivolt = sigmaTable(input.meter, input.priors.readingSpread, model->diode->displayLimit);
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
  const std::size_t samples =
      affordableSamples(input.options.samples, result.classes.size(), model->cells.supers);
  model->samples = drawTerminations({model->cells, model->pins, input.knownGood, input.priors,
                                     model->diode.value_or(MeterSource{}), samples, input.options.seed});
  model->volts = predictedVolts(*model);
  addNotices(input, found, *model, result.notices);
  result.model = std::move(model);
  startWeights(result);
  return result;
}

Isolation update(Isolation isolation, const Reading& reading) {
  const auto where = placed(isolation, reading);
  if (!where) {
    isolation.setAside.push_back({reading, where.error().message});
    return isolation;
  }
  const std::size_t samples = isolation.model->samples.samples;
  const auto likelihood = logLikelihoods(isolation, *where);
  std::vector<double> before(isolation.classes.size());
  for (std::size_t c = 0; c < before.size(); ++c)
    before[c] = logSum(&isolation.logWeight[c * samples], samples);
  for (std::size_t i = 0; i < likelihood.size(); ++i)
    isolation.logWeight[i] += likelihood[i];
  Observation observation{reading, where->place, where->other, {}};
  for (std::size_t c = 0; c < before.size(); ++c)
    observation.logLikelihood.push_back(logSum(&isolation.logWeight[c * samples], samples) - before[c]);
  isolation.observations.push_back(std::move(observation));
  normalise(isolation);
  return isolation;
}

Isolation update(Isolation isolation, const std::vector<Reading>& readings) {
  for (const auto& reading : readings)
    isolation = update(std::move(isolation), reading);
  return isolation;
}

} // namespace netmend
