#include "circuit.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "operating_point.h"

namespace netmend {

namespace {

/// Most circuits have few nodes.
template <class T> using Values = boost::container::small_vector<T, 6>;

struct Junctions {
  double drop = noDrop; ///< of all of a node together
  double siemens = 0.0;
  double saturation = 0.0; ///< A, backwards; set where currents other than the reference are asked for
};

Junctions atNode(const Circuit::Node& node, const UnknownValues& values, const LineBench& bench) {
  Junctions result{noDrop, node.siemens};
  for (const std::size_t unknown : node.drops) {
    const double drop = values[unknown];
    const double lower = std::min(result.drop, drop);
    const double apart = std::abs(result.drop - drop);
    result.drop = std::isfinite(apart) ? lower - bench.softMinimum.below(apart) : lower;
  }
  if (node.leak != noUnknown) result.siemens += std::exp(-values[node.leak]);
  return result;
}

/// Of a junction I = Is·(exp((V − I·Rs)/(n·Vt)) − 1) that drops `drop` at the reference current.
double saturationOf(double drop, const LineBench& bench) {
  const double full = bench.reference.value;
  return full / std::expm1(std::max(drop - full * bench.series.value, 1e-3) / bench.slope);
}

struct CurrentSlope {
  double current = 0.0;
  double slope = 0.0;
};

/// Of a junction that drops `drop` at I0: V = drop + slope·ln((I + Is)/(I0 + Is)) + (I − I0)·Rs, solved for
/// the logarithm.
CurrentSlope junctionAtVolts(const Junctions& at, double volts, const LineBench& bench) {
  const double full = bench.reference.value + at.saturation;
  const double seriesDrop = full * bench.series.value;
  const double wanted = volts - at.drop;
  double x = wanted <= 0.0 ? wanted / bench.slope : wanted / (bench.slope + seriesDrop);
  for (int step = 0; step < 20; ++step) {
    const double ratio = std::exp(x);
    const double excess = bench.slope * x + seriesDrop * (ratio - 1.0) - wanted;
    const double move = excess / (bench.slope + seriesDrop * ratio);
    x -= move;
    if (std::abs(move) < 1e-7) break;
  }
  const double forward = full * std::exp(x);
  return {forward - at.saturation, forward / (bench.slope + bench.series.value * forward)};
}

/// Where the source's voltage limits its current: what it leaves falls with the voltage.
double weaklyFed(const Junctions& at, const LineBench& bench) {
  double low = 0.0;
  double high = bench.source.openCircuit.value;
  for (int step = 0; step < 50; ++step) {
    const double middle = 0.5 * (low + high);
    const double taken = junctionAtVolts(at, middle, bench).current + at.siemens * middle;
    (sourceCurrent(bench.source, Volts(middle)).value > taken ? low : high) = middle;
  }
  return low;
}

double withLoad(Junctions at, const LineBench& bench) {
  const auto& source = bench.source;
  const double own = 1.0 / source.inputResistance.value;
  if (!std::isfinite(at.drop)) {
    if (at.siemens <= 0.0) return noDrop;
    const double all = at.siemens + own;
    const double driven = source.testCurrent.value / all;
    const double knee = source.openCircuit.value - source.testCurrent.value * source.outputResistance.value;
    return driven <= knee ? driven : source.openCircuit.value / (1.0 + source.outputResistance.value * all);
  }
  const double reference = bench.reference.value;
  if (at.siemens <= 0.0 && source.testCurrent == bench.reference) return at.drop;
  at.saturation = saturationOf(at.drop, bench);
  const double siemens = at.siemens + own;
  // Solved for the logarithm of the junction's share of the current, in which all is smooth.
  const double full = source.testCurrent.value + at.saturation;
  const double seriesDrop = full * bench.series.value;
  const double alone = at.drop + bench.slope * std::log(full / (reference + at.saturation)) +
                       (source.testCurrent.value - reference) * bench.series.value;
  double low = -60.0;
  double high = 0.0;
  double x = -std::min(1.0, siemens * std::max(alone, 0.0) / full);
  double volts = alone;
  for (int step = 0; step < 60; ++step) {
    const double share = std::exp(x);
    volts = alone + bench.slope * x + seriesDrop * (share - 1.0);
    const double excess = full * share + siemens * volts - full;
    (excess > 0.0 ? high : low) = x;
    const double rise = full * share + siemens * (bench.slope + seriesDrop * share);
    double next = x - excess / rise;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (std::abs(next - x) < 1e-9) break;
    x = next;
  }
  // A source of low voltage cannot feed its full current into a junction.
  const double knee = source.openCircuit.value - source.testCurrent.value * source.outputResistance.value;
  return volts <= knee ? volts : weaklyFed(at, bench);
}

/// Gaussian elimination without pivots: the matrix of a network is diagonally dominant.
template <class Matrix> void solve(Matrix& a, Values<double>& b, std::size_t n) {
  for (std::size_t k = 0; k < n; ++k)
    for (std::size_t i = k + 1; i < n; ++i) {
      const double factor = a[i * n + k] / a[k * n + k];
      for (std::size_t j = k; j < n; ++j)
        a[i * n + j] -= factor * a[k * n + j];
      b[i] -= factor * b[k];
    }
  for (std::size_t k = n; k-- > 0;) {
    for (std::size_t j = k + 1; j < n; ++j)
      b[k] -= a[k * n + j] * b[j];
    b[k] /= a[k * n + k];
  }
}

class Ladder {
public:
  Ladder(const Circuit& circuit, const UnknownValues& values, const LineBench& bench)
      : circuit_(circuit), bench_(bench) {
    for (const auto& node : circuit.nodes) {
      at_.push_back(atNode(node, values, bench));
      if (std::isfinite(at_.back().drop)) at_.back().saturation = saturationOf(at_.back().drop, bench);
    }
    for (const auto& link : circuit.links)
      siemens_.push_back(1.0 /
                         (link.ohms + (link.unknown != noUnknown ? std::exp(values[link.unknown]) : 0.0)));
  }

  double volts() {
    const bool carries = std::any_of(at_.begin(), at_.end(), [](const Junctions& at) {
      return std::isfinite(at.drop) || at.siemens > 0.0;
    });
    if (!carries) return noDrop;
    Values<double> v = start();
    return newton(v) ? v.front() : slowly();
  }

private:
  /// From above: each node as if all current went the cheapest way from it.
  [[nodiscard]] Values<double> start() const {
    const std::size_t n = at_.size();
    Values<double> v(n, bench_.source.openCircuit.value);
    for (std::size_t i = 0; i < n; ++i)
      if (std::isfinite(at_[i].drop)) v[i] = std::min(v[i], at_[i].drop);
    for (std::size_t round = 0; round < n; ++round)
      for (std::size_t k = 0; k < circuit_.links.size(); ++k) {
        const auto& link = circuit_.links[k];
        v[link.a] = std::min(v[link.a], v[link.b] + bench_.source.testCurrent.value / siemens_[k]);
      }
    return v;
  }

  bool newton(Values<double>& v) const {
    const std::size_t n = v.size();
    boost::container::small_vector<double, 16> slope(n * n);
    Values<double> current(n);
    for (int step = 0; step < 60; ++step) {
      std::fill(slope.begin(), slope.end(), 0.0);
      for (std::size_t i = 0; i < n; ++i) {
        const double leak = at_[i].siemens + 1e-12;
        current[i] = leak * v[i];
        slope[i * n + i] = leak;
        if (std::isfinite(at_[i].drop)) {
          const auto junction = junctionAtVolts(at_[i], v[i], bench_);
          current[i] += junction.current;
          slope[i * n + i] += junction.slope;
        }
      }
      current[0] -= sourceCurrent(bench_.source, Volts(v[0])).value;
      slope[0] -= sourceSlope(bench_.source, Volts(v[0]));
      for (std::size_t k = 0; k < circuit_.links.size(); ++k) {
        const auto& [a, b, ohms, unknown] = circuit_.links[k];
        const double g = siemens_[k];
        current[a] += g * (v[a] - v[b]);
        current[b] -= g * (v[a] - v[b]);
        slope[a * n + a] += g;
        slope[b * n + b] += g;
        slope[a * n + b] -= g;
        slope[b * n + a] -= g;
      }
      solve(slope, current, n);
      double most = 0.0;
      for (const double move : current)
        most = std::max(most, std::abs(move));
      // Upwards a junction's current explodes; downwards Newton is safe.
      const double share = most > 0.1 ? 0.1 / most : 1.0;
      for (std::size_t i = 0; i < n; ++i)
        v[i] -= share * current[i];
      if (most < 1e-7) return true;
    }
    return false;
  }

  /// By the method that converges always.
  [[nodiscard]] double slowly() const {
    TestNetwork network;
    network.nodes = at_.size();
    for (std::size_t k = 0; k < circuit_.links.size(); ++k)
      network.series.push_back({circuit_.links[k].a, circuit_.links[k].b, Ohms(1.0 / siemens_[k])});
    for (std::size_t i = 0; i < at_.size(); ++i) {
      if (at_[i].siemens > 0.0) network.loads.push_back({i, Ohms(1.0 / at_[i].siemens)});
      if (!std::isfinite(at_[i].drop)) continue;
      Junction junction;
      junction.ideality = bench_.slope / thermalVoltage(benchTemperature).value;
      junction.series = bench_.series;
      junction.saturation = Amperes(1.0);
      junction.saturation = Amperes(at_[i].saturation / saturationCurrent(junction, benchTemperature).value);
      network.clamps.push_back({i, junction});
    }
    return operatingPoint(network, 0, bench_.source, benchTemperature).front().value;
  }

  const Circuit& circuit_;
  const LineBench& bench_;
  Values<Junctions> at_;
  Values<double> siemens_;
};

} // namespace

namespace {

constexpr double tableStep = 1e-3; ///< V
constexpr double leastDrop = DropDensity::first - 0.01;
constexpr double mostDrop = 3.0;
constexpr double mostApart = 1.5;

bool hasLoads(const Circuit& circuit) {
  return std::any_of(circuit.nodes.begin(), circuit.nodes.end(),
                     [](const Circuit::Node& node) { return node.siemens > 0.0 || node.leak != noUnknown; });
}

bool isByDrop(const Circuit& circuit) {
  return circuit.nodes.size() == 1 && circuit.nodes.front().leak == noUnknown &&
         circuit.nodes.front().siemens > 0.0;
}

bool isByApart(const Circuit& circuit) {
  return circuit.nodes.size() == 2 && circuit.links.size() == 1 &&
         circuit.links.front().unknown == noUnknown && !hasLoads(circuit);
}

/// Linear between its points; empty beyond its ends.
std::optional<double> lookUp(const std::vector<double>& table, double first, double at) {
  const double x = (at - first) / tableStep;
  if (!(x >= 0.0) || x >= static_cast<double>(table.size() - 1)) return std::nullopt;
  const auto i = static_cast<std::size_t>(x);
  const double share = x - static_cast<double>(i);
  return table[i] + share * (table[i + 1] - table[i]);
}

std::optional<double> fromTable(const Circuit& circuit, const UnknownValues& values, const LineBench& bench) {
  const double drop = atNode(circuit.nodes[0], values, bench).drop;
  if (circuit.nodes.size() == 1)
    return std::isfinite(drop) ? lookUp(*circuit.table, leastDrop, drop) : std::nullopt;
  const double other = atNode(circuit.nodes[1], values, bench).drop;
  if (!std::isfinite(drop)) return std::nullopt;
  if (!std::isfinite(other) || other - drop >= mostApart) return drop;
  const auto above = lookUp(*circuit.table, -mostApart, other - drop);
  return above ? std::optional(drop + *above) : std::nullopt;
}

} // namespace

std::shared_ptr<const std::vector<double>> circuitTable(const Circuit& circuit, const LineBench& bench) {
  Circuit bare = circuit;
  bare.table = nullptr;
  auto result = std::make_shared<std::vector<double>>();
  if (isByDrop(circuit)) {
    for (double drop = leastDrop; drop < mostDrop; drop += tableStep)
      result->push_back(withLoad({drop, circuit.nodes.front().siemens}, bench));
  } else if (isByApart(circuit)) {
    bare.nodes[0].drops = {0};
    bare.nodes[1].drops = {1};
    constexpr double middle = 0.6; // far from the ends of what the source can feed
    for (double apart = -mostApart; apart < mostApart; apart += tableStep)
      result->push_back(
          voltsAt(bare, {middle - std::min(apart, 0.0), middle - std::min(apart, 0.0) + apart}, bench) -
          middle + std::min(apart, 0.0));
  } else {
    return nullptr;
  }
  return result;
}

double voltsAt(const Circuit& circuit, const UnknownValues& values, const LineBench& bench) {
  if (circuit.table && bench.source.testCurrent == bench.reference)
    if (const auto volts = fromTable(circuit, values, bench)) return *volts;
  if (circuit.nodes.size() == 1) return withLoad(atNode(circuit.nodes.front(), values, bench), bench);
  return Ladder(circuit, values, bench).volts();
}

} // namespace netmend
