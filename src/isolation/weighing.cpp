#include "weighing.h"

#include <algorithm>
#include <cmath>

#include "model.h"

namespace netmend {

namespace {

constexpr double oneValue = 0.5;   ///< none of these: the whole line reads alike, else each place as it likes
constexpr double sameAgain = 0.95; ///< none of these, from point to point: what was found is found again

/// Of readings that all meet one unknown thing.
double anythingBehind(const ReadingProduct& product, double limit) {
  return noneReadsOverLimit * product.atNothing() + (1.0 - noneReadsOverLimit) * product.mean(0.0, limit);
}

Foreseen foreseenBehind(const ReadingProduct& product, double limit) {
  Foreseen result;
  const auto bins = static_cast<std::size_t>(std::ceil(1e3 * limit));
  const double all = anythingBehind(product, limit);
  for (std::size_t i = 0; i < bins; ++i) {
    const double volts = 1e-3 * static_cast<double>(i);
    result.share.push_back(static_cast<float>((1.0 - noneReadsOverLimit) * product.mean(volts, volts + 1e-3) *
                                              1e-3 / limit / all));
  }
  result.overLimit = static_cast<float>(noneReadsOverLimit * product.atNothing() / all);
  return result;
}

Foreseen mixture(double share, const Foreseen& a, const Foreseen& b) {
  Foreseen result = a;
  const auto mix = [&](float x, float y) {
    return static_cast<float>(share) * x + static_cast<float>(1.0 - share) * y;
  };
  for (std::size_t i = 0; i < result.share.size(); ++i)
    result.share[i] = mix(a.share[i], b.share[i]);
  result.overLimit = mix(a.overLimit, b.overLimit);
  return result;
}

} // namespace

Weighing::Weighing(const IsolationModel& model, std::vector<PlacedReading> readings)
    : model_(model), readings_(std::move(readings)) {
  for (std::size_t i = 0; i < readings_.size(); ++i)
    tables_.push_back(isToGround(i) ? tableOf(model, readings_[i]) : ReadingTable{});
}

const ReadingProduct& Weighing::product(const Set& set) {
  const auto found = products_.find(set);
  if (found != products_.end()) return found->second;
  std::vector<const ReadingTable*> tables;
  for (const std::size_t reading : set)
    tables.push_back(&tables_[reading]);
  return products_.try_emplace(set, tables, model_.fineErrors).first->second;
}

Weighed Weighing::of(std::size_t faultClass, std::optional<std::size_t> skip, double giveUpBelow) {
  return model_.effects[faultClass].kind == FaultKind::noneOfThese
             ? ifNone(skip)
             : byCircuits(faultClass, skip, giveUpBelow);
}

double Weighing::between(std::size_t faultClass, std::optional<std::size_t> skip) const {
  double log = 0.0;
  for (std::size_t i = 0; i < readings_.size(); ++i)
    if (i != skip && !isToGround(i))
      log += std::log(std::max(betweenLikelihood(model_, readings_[i], faultClass), 1e-300));
  return log;
}

Weighed Weighing::byCircuits(std::size_t faultClass, std::optional<std::size_t> skip, double giveUpBelow) {
  Weighed result;
  result.log = between(faultClass, skip);
  if (!model_.bench) return result; // no circuits either
  const ClassNetwork& network = model_.networks.ofClass[faultClass];
  std::vector<Set> volts(network.circuits.size());
  std::vector<Set> ohms(network.circuits.size());
  for (std::size_t i = 0; i < readings_.size(); ++i)
    if (i != skip && isToGround(i))
      (isVolts(i) ? volts : ohms)[model_.circuitAt(faultClass, model_.cellOfPlace[readings_[i].place])]
          .push_back(i);
  const double ofGood = model_.logGood.empty() ? 0.0 : model_.logGood[faultClass];
  IntegralRequest request{model_.networks,
                          network,
                          *model_.bench,
                          model_.ohms ? &*model_.ohms : nullptr,
                          {},
                          {},
                          {},
                          model_.errors,
                          giveUpBelow - result.log + ofGood,
                          true};
  if (!network.good.empty())
    for (const auto& good : model_.good)
      request.good.push_back(&good);
  for (const auto& set : volts)
    request.readings.push_back(set.empty() ? nullptr : &product(set));
  for (const auto& set : ohms)
    request.ohms.push_back(set.empty() ? nullptr : &product(set));
  auto integral = integrate(request);
  result.log += integral.log - ofGood;
  result.foreseen = std::move(integral.foreseen);
  result.unresolved = integral.unresolved;
  return result;
}

double Weighing::betweenIfNone(std::optional<std::size_t> skip) const {
  double log = 0.0;
  std::map<std::pair<std::size_t, std::size_t>, bool> parted; // as first found
  for (std::size_t i = 0; i < readings_.size(); ++i) {
    if (i == skip || isVolts(i)) continue;
    const std::size_t here = model_.cellOfPlace[readings_[i].place];
    const auto ends =
        std::minmax(here, readings_[i].other ? model_.cellOfPlace[*readings_[i].other] : noCell);
    const bool over = !readings_[i].value;
    const double fresh = over ? noneParted : (1.0 - noneParted) * anyOhms(*readings_[i].value);
    const auto [before, first] = parted.try_emplace({ends.first, ends.second}, over);
    const double again = before->second == over ? (over ? 1.0 : 1.0 / (1.0 + *readings_[i].value)) : 0.0;
    log += std::log(first ? fresh : sameAgain * again + (1.0 - sameAgain) * fresh);
  }
  return log;
}

Weighed Weighing::ifNone(std::optional<std::size_t> skip) {
  Weighed result;
  result.log = betweenIfNone(skip);
  if (!model_.bench) return result;
  const double limit = model_.displayLimit().value;
  std::map<std::size_t, Set> byCell;
  Set all;
  for (std::size_t i = 0; i < readings_.size(); ++i) {
    if (!isVolts(i)) continue;
    auto& here = byCell[model_.cellOfPlace[readings_[i].place]];
    if (i == skip) continue;
    here.push_back(i);
    all.push_back(i);
  }
  const auto& together = product(all);
  const double asOne = std::log(oneValue * anythingBehind(together, limit)) + together.logScale();
  double each = std::log(1.0 - oneValue);
  for (const auto& [cell, set] : byCell)
    each += std::log(anythingBehind(product(set), limit)) + product(set).logScale();
  const double both = std::max(asOne, each);
  const double sum = both + std::log(std::exp(asOne - both) + std::exp(each - both));
  result.log += sum;
  const double share = std::exp(asOne - sum);
  const auto alike = foreseenBehind(together, limit);
  for (const auto& [cell, set] : byCell)
    result.foreseen.push_back(mixture(share, alike, foreseenBehind(product(set), limit)));
  result.foreseen.push_back(mixture(share, alike, foreseenBehind(product({}), limit)));
  return result;
}

std::vector<std::size_t> cellsRead(const IsolationModel& model, const std::vector<PlacedReading>& readings) {
  std::vector<std::size_t> cells;
  for (const auto& reading : readings)
    if (reading.sort == ReadingSort::voltsToGround) cells.push_back(model.cellOfPlace[reading.place]);
  std::sort(cells.begin(), cells.end());
  cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
  return cells;
}

const Foreseen& foreseenAt(const Isolation& isolation, std::size_t faultClass, std::size_t cell) {
  const auto& model = *isolation.model;
  const auto& foreseen = (*isolation.foreseen)[faultClass];
  static const Foreseen nothing{0, {}, 1.0F}; // of a class that does not count any more
  if (foreseen.empty()) return nothing;
  if (model.effects[faultClass].kind != FaultKind::noneOfThese)
    return foreseen[model.circuitAt(faultClass, cell)];
  const auto at = std::lower_bound(isolation.cellsRead.begin(), isolation.cellsRead.end(), cell);
  const bool read = at != isolation.cellsRead.end() && *at == cell;
  return read ? foreseen[static_cast<std::size_t>(at - isolation.cellsRead.begin())] : foreseen.back();
}

} // namespace netmend
