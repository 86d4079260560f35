#include "line_solver.h"

#include <algorithm>
#include <functional>

namespace netmend {

namespace {

bool somethingBehind(const LinePin& pin) {
  return pin.termination.shares.junction + pin.termination.shares.resistive > 0.0;
}

/// Series parts with both ends on this side of the cut.
std::vector<std::size_t> intactSeries(const LineCells& cells, const FaultEffect& effect, bool below) {
  std::vector<std::size_t> result;
  for (std::size_t cell = 0; cell < cells.size(); ++cell) {
    if (cells.isRoot(cell) || cells.super[cell] == cells.super[cells.parent[cell]]) continue;
    if (effect.isBelow(cell) == below && effect.isBelow(cells.parent[cell]) == below) result.push_back(cell);
  }
  return result;
}

} // namespace

Fragment fragmentOf(const LineCells& cells, const std::vector<LinePin>& pins, const FaultEffect& effect,
                    bool below, std::size_t super) {
  Fragment result;
  result.shorted = effect.kind == FaultKind::shortToGround;
  if (result.shorted) return result;
  std::vector<std::size_t> supers{super};
  if (cells.supers > 1) {
    const auto position = [&](std::size_t wanted) {
      return static_cast<std::size_t>(std::find(supers.begin(), supers.end(), wanted) - supers.begin());
    };
    auto series = intactSeries(cells, effect, below);
    for (std::size_t i = 0; i < supers.size(); ++i)
      std::erase_if(series, [&](std::size_t cell) {
        const std::size_t ends[]{cells.super[cell], cells.super[cells.parent[cell]]};
        if (ends[0] != supers[i] && ends[1] != supers[i]) return false;
        const std::size_t other = ends[0] == supers[i] ? ends[1] : ends[0];
        if (position(other) == supers.size()) supers.push_back(other);
        result.series.push_back({i, position(other), cells.edgeAbove(cell).resistance.value});
        return true;
      });
  }
  result.pins.resize(supers.size());
  bool elsewhere = false;
  for (std::size_t pin = 0; pin < pins.size(); ++pin) {
    if (!somethingBehind(pins[pin]) || effect.isBelow(pins[pin].cell) != below || effect.deadPin == pin)
      continue;
    const auto node = std::find(supers.begin(), supers.end(), cells.super[pins[pin].cell]);
    if (node == supers.end()) continue;
    result.pins[static_cast<std::size_t>(node - supers.begin())].push_back(pin);
    elsewhere = elsewhere || node != supers.begin();
  }
  // Without anything behind them series parts carry nothing.
  if (!elsewhere) {
    result.pins.resize(1);
    result.series.clear();
  }
  return result;
}

FragmentSolver::FragmentSolver(const Fragment& fragment, const TerminationSamples& samples)
    : fragment_(fragment), samples_(samples) {
  const auto sum = [&](const std::vector<std::size_t>& pins, const std::vector<std::vector<double>>& ofPin) {
    std::vector<double> result(samples.samples, 0.0);
    for (const std::size_t pin : pins)
      if (!ofPin[pin].empty())
        std::transform(result.begin(), result.end(), ofPin[pin].begin(), result.begin(), std::plus<>());
    return result;
  };
  for (const auto& pins : fragment.pins) {
    area_.push_back(sum(pins, samples.area));
    siemens_.push_back(sum(pins, samples.siemens));
  }
}

Volts FragmentSolver::volts(std::size_t sample, const MeterSource& meter) const {
  if (fragment_.shorted)
    return operatingPoint({}, {0.0, Siemens(1.0 / samples_.shortOhms[sample].value)}, meter);
  if (area_.size() == 1)
    return operatingPoint(samples_.bench[sample], {area_[0][sample], Siemens(siemens_[0][sample])}, meter);
  TestNetwork network;
  network.nodes = area_.size();
  for (const auto& part : fragment_.series)
    network.series.push_back({part.a, part.b, part.resistance});
  for (std::size_t node = 0; node < network.nodes; ++node) {
    if (area_[node][sample] > 0.0)
      network.clamps.push_back({node, scaled(samples_.junction[sample], area_[node][sample])});
    if (siemens_[node][sample] > 0.0) network.loads.push_back({node, Ohms(1.0 / siemens_[node][sample])});
  }
  return operatingPoint(network, 0, meter, benchTemperature).front();
}

} // namespace netmend
