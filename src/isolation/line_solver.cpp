#include "line_solver.h"

#include <algorithm>

namespace netmend {

namespace {

/// What is left of a difference of sums by rounding is nothing.
double difference(double whole, double part) {
  const double rest = whole - part;
  return rest > 1e-11 * whole ? rest : 0.0;
}

} // namespace

LineSolver::LineSolver(const LineCells& cells, const std::vector<LinePin>& pins,
                       const TerminationSamples& samples)
    : cells_(cells), pins_(pins), samples_(samples), pinsOfSuper_(cells.supers), area_(cells.supers),
      siemens_(cells.supers) {
  for (std::size_t cell = 0; cell < cells.size(); ++cell)
    if (!cells.isRoot(cell) && cells.super[cell] != cells.super[cells.parent[cell]])
      series_.push_back({cells.parent[cell], cell, cells.edgeAbove(cell).resistance.value});
  for (std::size_t pin = 0; pin < pins.size(); ++pin)
    pinsOfSuper_[cells.super[pins[pin].cell]].push_back(pin);
  for (std::size_t super = 0; super < cells.supers; ++super) {
    const std::size_t s = samples.samples;
    area_[super].assign(s, 0.0);
    siemens_[super].assign(s, 0.0);
    for (const std::size_t pin : pinsOfSuper_[super])
      for (std::size_t sample = 0; sample < s; ++sample) {
        area_[super].push_back(area_[super][area_[super].size() - s] + samples.areaOf(sample, pin));
        siemens_[super].push_back(siemens_[super][siemens_[super].size() - s] +
                                  samples.siemensOf(sample, pin));
      }
  }
}

NodeLoad LineSolver::sumOf(std::size_t super, std::size_t from, std::size_t to, std::size_t sample) const {
  const auto& pins = pinsOfSuper_[super];
  const auto position = [&](std::size_t cell) {
    return static_cast<std::size_t>(
        std::partition_point(pins.begin(), pins.end(),
                             [&](std::size_t pin) { return pins_[pin].cell < cell; }) -
        pins.begin());
  };
  const std::size_t first = position(from) * samples_.samples + sample;
  const std::size_t last = position(to) * samples_.samples + sample;
  return {difference(area_[super][last], area_[super][first]),
          Siemens(difference(siemens_[super][last], siemens_[super][first]))};
}

NodeLoad LineSolver::load(const FaultEffect& effect, bool below, std::size_t super,
                          std::size_t sample) const {
  const std::size_t last = area_[super].size() - samples_.samples + sample;
  NodeLoad whole{area_[super][last], Siemens(siemens_[super][last])};
  if (effect.kind == FaultKind::deadPin && cells_.super[pins_[effect.deadPin].cell] == super)
    return {difference(whole.area, samples_.areaOf(sample, effect.deadPin)),
            Siemens(difference(whole.load.value, samples_.siemensOf(sample, effect.deadPin)))};
  if (effect.kind != FaultKind::open) return whole;
  NodeLoad under;
  for (const auto& [from, to] : effect.below) {
    const auto sum = sumOf(super, from, to, sample);
    under.area += sum.area;
    under.load += sum.load;
  }
  if (below) return under;
  return {difference(whole.area, under.area), Siemens(difference(whole.load.value, under.load.value))};
}

bool LineSolver::sameSide(const FaultEffect& effect, bool below, const SeriesEdge& edge) const {
  return effect.isBelow(edge.parent) == below && effect.isBelow(edge.cell) == below;
}

Volts LineSolver::volts(const FaultEffect& effect, bool below, std::size_t super, std::size_t sample,
                        const MeterSource& meter) const {
  if (effect.kind == FaultKind::shortToGround)
    return operatingPoint({}, {0.0, Siemens(1.0 / samples_.shortOhms[sample].value)}, meter);
  bool alone = true;
  for (const auto& edge : series_)
    if ((cells_.super[edge.parent] == super || cells_.super[edge.cell] == super) &&
        sameSide(effect, below, edge))
      alone = false;
  if (alone) return operatingPoint(samples_.bench[sample], load(effect, below, super, sample), meter);

  TestNetwork network;
  network.nodes = cells_.supers;
  for (const auto& edge : series_)
    if (sameSide(effect, below, edge))
      network.series.push_back({cells_.super[edge.parent], cells_.super[edge.cell], edge.resistance});
  for (std::size_t node = 0; node < cells_.supers; ++node) {
    const auto here = load(effect, below, node, sample);
    if (here.area > 0.0) network.clamps.push_back({node, scaled(samples_.junction[sample], here.area)});
    if (here.load.value > 0.0) network.loads.push_back({node, Ohms(1.0 / here.load.value)});
  }
  return operatingPoint(network, super, meter, benchTemperature)[super];
}

} // namespace netmend
