#include "simulation/world.h"

#include <algorithm>
#include <cmath>

namespace netmend::simulation {

namespace {

constexpr double leastDrop = 0.35, mostDrop = 0.8; ///< V at 1 mA, of clamps
constexpr double oddShare = 1.0 / 7.0;
constexpr double schottkyGap = 0.69; ///< V

struct ChipStyle {
  double drop, emission, series;
};

ChipStyle drawStyle(const Population& population, Random& random) {
  const double anywhere = between(random, leastDrop, mostDrop);
  return {population.centre + population.own * (anywhere - population.centre), between(random, 1.0, 1.6),
          between(random, 2.0, 20.0)};
}

Behind oddPin(const Population& population, Random& random) {
  const double which = between(random, 0.0, 3.0);
  Behind out;
  if (which < 1.0) {
    out.kind = Behind::Kind::junction;
    out.junction = {between(random, 0.2, 0.3) + normal(random, population.pinSpread), 1.05, 5.0, schottkyGap};
  } else if (which < 2.0) {
    out.kind = Behind::Kind::resistance;
    out.ohms = std::pow(10.0, between(random, 3.0, 5.0));
  }
  return out;
}

} // namespace

double between(Random& random, double least, double most) {
  return std::uniform_real_distribution<double>(least, most)(random);
}
double normal(Random& random, double spread) {
  return spread * std::normal_distribution<double>()(random);
}
bool chance(Random& random, double share) {
  return between(random, 0.0, 1.0) < share;
}

Population drawPopulation(Random& random) {
  Population out;
  out.centre = between(random, 0.45, 0.70);
  out.own = between(random, 0.0, 1.0);
  out.pinSpread = between(random, 0.001, 0.008);
  out.boardSpread = between(random, 0.003, 0.008);
  out.odd = chance(random, 1.0 / 3.0);
  return out;
}

Behind drawBehind(const TerminationShare& shares, const Population& population, double chipDrop,
                  double emission, double series, Random& random) {
  Behind out;
  const double which = between(random, 0.0, 1.0);
  if (which < shares.junction) {
    out.kind = Behind::Kind::junction;
    const double drop = std::clamp(chipDrop + normal(random, population.pinSpread), leastDrop, mostDrop);
    out.junction = {drop, emission, series};
  } else if (which < shares.junction + shares.resistive) {
    out.kind = Behind::Kind::resistance;
    out.ohms = std::pow(10.0, between(random, 2.5, 5.5));
  }
  if (population.odd && shares.junction > 0.5 && chance(random, oddShare)) return oddPin(population, random);
  return out;
}

Design drawDesign(const Lookup& lookup, const BoardLine& line, const Population& population,
                  const FaultShares& shares, Random& random) {
  Design out;
  std::map<PartId, ChipStyle> styles;
  for (const LinePin& pin : line.pins) {
    const Part* part = lookup.board().parts.find(pin.part);
    auto style = styles.find(pin.part);
    if (style == styles.end()) style = styles.emplace(pin.part, drawStyle(population, random)).first;
    const auto& [drop, emission, series] = style->second;
    const bool there = part && part->fitted.valueOr(true);
    Behind behind = drawBehind(there ? shares.of(pin.kind) : TerminationShare{}, population, drop, emission,
                               series, random);
    const bool exit = std::any_of(line.exits.begin(), line.exits.end(),
                                  [&](const LineExit& e) { return e.spot == pin.spot; });
    const bool passed =
        std::any_of(line.copper.bonds.begin(), line.copper.bonds.end(), [&](const Bond& bond) {
          return bond.kind == Bond::Kind::part && (bond.a == pin.spot || bond.b == pin.spot);
        });
    if (exit || passed) behind = {};
    out.behind.push_back(behind);
  }
  for (const LineExit& exit : line.exits) {
    out.exitOhms.push_back(exit.ohms > 0.0 ? exit.ohms : std::pow(10.0, between(random, 3.0, 5.0)));
    const double rail = shares.railOhms * std::pow(shares.railFactor, normal(random, 1.0));
    const Behind far =
        drawBehind({0.7, 0.1}, population, drawStyle(population, random).drop, 1.3, 10.0, random);
    if (exit.to == LineExit::To::supply) out.rail.emplace(exit.net, rail);
    if (exit.to == LineExit::To::signal) out.far.emplace(exit.net, far);
  }
  return out;
}

Design onOneBoard(Design design, const Population& population, Random& random) {
  const auto move = [&](Behind& behind) {
    const double moved = normal(random, population.boardSpread);
    if (behind.kind == Behind::Kind::junction) behind.junction.drop += moved;
  };
  for (Behind& behind : design.behind)
    move(behind);
  for (auto& [net, behind] : design.far)
    move(behind);
  return design;
}

} // namespace netmend::simulation
