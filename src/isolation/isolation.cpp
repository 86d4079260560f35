#include "netmend/isolation/isolation.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

#include "fault_classes.h"
#include "likelihood.h"
#include "line_solver.h"
#include "model.h"
#include "netmend/netgraph/net_role.h"
#include "posterior.h"
#include "probe_places.h"
#include "termination_samples.h"

namespace netmend {

namespace {

/// What a line of many places and series parts can have: the work stays within about half a second.
std::size_t affordableSamples(const IsolationModel& model) {
  constexpr std::size_t pointBudget = 3000000;  // operating points on one node
  constexpr std::size_t weightBudget = 2500000; // classes × samples
  constexpr std::size_t networkPrice = 40;     // an operating point of several nodes, against one on one node
  std::size_t points = 10 + model.pins.size(); // to draw a sample and make it agree with the good boards
  for (const auto& fragment : model.fragments)
    points += fragment.pins.size() > 1 ? networkPrice * fragment.pins.size() : 1;
  const std::size_t fits =
      std::min(pointBudget / points, weightBudget / std::max<std::size_t>(1, model.effects.size()));
  return std::clamp<std::size_t>(fits, 64, std::max<std::size_t>(64, model.options.mostSamples));
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

/// Which fragment a lead meets, by class, side of the cut and super; each different one once.
void findFragments(IsolationModel& model) {
  std::map<std::vector<std::size_t>, std::size_t> known;
  for (const auto& effect : model.effects)
    for (const bool below : {false, true})
      for (std::size_t super = 0; super < model.cells.supers; ++super) {
        auto fragment = fragmentOf(model.cells, model.pins, effect, below, super);
        // The same nodes are joined by the same series parts: supers are a tree.
        std::vector<std::size_t> key{fragment.shorted ? std::size_t{1} : 0,
                                     fragment.series.empty() ? noCell : super};
        for (const auto& pins : fragment.pins) {
          key.insert(key.end(), pins.begin(), pins.end());
          key.push_back(noCell);
        }
        const auto [at, fresh] = known.try_emplace(std::move(key), model.fragments.size());
        if (fresh) model.fragments.push_back(std::move(fragment));
        model.fragmentOf.push_back(at->second);
      }
}

void drawSamples(IsolationModel& model, std::size_t samples) {
  model.samples = drawTerminations({model.cells, model.pins, model.knownGood, model.priors,
                                    model.diode.value_or(MeterSource{}), samples, model.options.seed});
  model.volts.clear();
  if (!model.diode) return;
  model.volts.reserve(model.fragments.size() * samples);
  for (const auto& fragment : model.fragments) {
    const FragmentSolver solver(fragment, model.samples);
    for (std::size_t s = 0; s < samples; ++s)
      model.volts.push_back(static_cast<float>(solver.volts(s, *model.diode).value));
  }
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

void startWeights(Isolation& isolation) {
  const auto& weight = isolation.model->samples.weight;
  isolation.logMass.clear();
  isolation.weight.clear();
  isolation.weight.reserve(isolation.classes.size() * weight.size());
  for (const auto& faultClass : isolation.classes) {
    isolation.logMass.push_back(std::log(std::max(faultClass.prior, 1e-300)));
    isolation.weight.insert(isolation.weight.end(), weight.begin(), weight.end());
  }
}

/// Bayes for the samples of one class; gives back the log of the reading's likelihood under that class.
double weigh(double* weight, std::size_t samples, const std::vector<double>& likelihood) {
  if (likelihood.size() == 1) return std::log(likelihood.front());
  double sum = 0.0;
  for (std::size_t s = 0; s < samples; ++s)
    sum += weight[s] *= likelihood[s];
  if (!(sum > 0.0)) return -std::numeric_limits<double>::infinity();
  for (std::size_t s = 0; s < samples; ++s)
    weight[s] = weight[s] < 1e-150 * sum ? 0.0 : weight[s] / sum; // numbers near zero are slow
  return std::log(sum);
}

void weigh(Isolation& isolation, const Reading& reading, const PlacedReading& where) {
  const std::size_t samples = isolation.model->samples.samples;
  const auto likelihood = likelihoodOf(isolation, where);
  Observation observation{reading, where.place, where.other, {}};
  for (std::size_t c = 0; c < isolation.classes.size(); ++c) {
    const double log = weigh(&isolation.weight[c * samples], samples, likelihood.rows[likelihood.rowOf[c]]);
    isolation.logMass[c] += log;
    observation.logLikelihood.push_back(log);
  }
  isolation.observations.push_back(std::move(observation));
}

/// As many samples as the error asks for (it falls with their root), four times as many at least, and all
/// readings once more.
void drawMoreWhereWanted(Isolation& isolation) {
  const std::size_t most = affordableSamples(*isolation.model);
  while (wantsMoreSamples(isolation)) {
    const std::size_t now = isolation.model->samples.samples;
    if (now >= most) return;
    const double factor = std::max(4.0, std::pow(isolation.samplingError / mostSamplingError, 2.0));
    const auto wanted = static_cast<std::size_t>(std::min(1e9, factor * static_cast<double>(now)));
    const std::size_t samples = 2 * wanted > most ? most : wanted;
    auto model = std::make_shared<IsolationModel>(*isolation.model);
    drawSamples(*model, samples);
    isolation.model = std::move(model);
    startWeights(isolation);
    for (const auto& before : std::exchange(isolation.observations, {}))
      if (const auto where = placed(isolation, before.reading)) weigh(isolation, before.reading, *where);
    normalise(isolation);
  }
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
    notices.push_back({Kind::noKnownGood, 0, 0.0, input.priors.dropSpread, input.priors.boardSpread});
  if (model.pins.size() < 2) notices.push_back({Kind::onePin});
  if (!model.diode) notices.push_back({Kind::noDiodeMode});
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
  model->knownGood = input.knownGood;
  model->options = input.options;
  findFragments(*model);
  drawSamples(*model, std::min(input.options.samples, affordableSamples(*model)));
  addNotices(input, found, *model, result.notices);
  result.model = std::move(model);
  startWeights(result);
  normalise(result);
  drawMoreWhereWanted(result);
  return result;
}

Isolation update(Isolation isolation, const Reading& reading) {
  const auto where = placed(isolation, reading);
  if (!where) {
    isolation.setAside.push_back({reading, where.error()});
    return isolation;
  }
  weigh(isolation, reading, *where);
  normalise(isolation);
  drawMoreWhereWanted(isolation);
  return isolation;
}

Isolation update(Isolation isolation, const std::vector<Reading>& readings) {
  for (const auto& reading : readings)
    isolation = update(std::move(isolation), reading);
  return isolation;
}

} // namespace netmend
