#pragma once

#include <random>
#include <set>

#include "drawn_line.h"

/// Jobs on lines whose chips differ in technology. What a meter reads is worked out here by means of its own:
/// junctions by their drop at a milliampere, the operating point by bisection; nothing of the engine's model.
namespace netmend::test {

/// What stands behind a pin: a clamp to ground, or (drop of zero) nothing.
struct Clamp {
  double drop_V = 0.0; ///< at 1 mA, at 25 °C
  double emission = 1.0;
  double series_ohm = 0.0;

  [[nodiscard]] double voltsAt(double amperes) const {
    constexpr double thermal = 0.025693; // k·298.15 K / q
    return drop_V + emission * thermal * std::log(amperes / 1e-3) + (amperes - 1e-3) * series_ohm;
  }
  [[nodiscard]] double amperesAt(double volts) const {
    if (drop_V <= 0.0) return 0.0;
    double low = -60.0; // logarithms
    double high = 0.0;
    for (int step = 0; step < 60; ++step) {
      const double middle = 0.5 * (low + high);
      (voltsAt(std::exp(middle)) < volts ? low : high) = middle;
    }
    return std::exp(low);
  }
};

/// Volts that a milliampere makes across these clamps, with the meter's 10 MΩ beside them; up to 3 V.
inline double voltsAcross(const std::vector<Clamp>& clamps) {
  double low = 0.0;
  double high = 3.0;
  for (int step = 0; step < 40; ++step) {
    const double middle = 0.5 * (low + high);
    double taken = middle / 10e6;
    for (const auto& clamp : clamps)
      taken += clamp.amperesAt(middle);
    (taken < 1e-3 ? low : high) = middle;
  }
  return low;
}

/// A board on the bench: a line with one break, and a technician who reads what is asked for.
class MixedJob {
public:
  explicit MixedJob(std::uint64_t seed) : random_(seed) {
    draw();
    breakSomewhere();
    gain_ = within(-0.01, 0.01);
  }

  DrawnLine drawn;
  std::size_t broken = 0; ///< edge of the line's graph

  [[nodiscard]] std::vector<KnownGood> knownGood() const {
    return {{drawn.pins.front(), Volts(good_V_), {}}};
  }

  /// What the meter shows where the program asks; 1 % of gain for the job, 3 digits, the hand, whole digits.
  Reading answer(const Isolation& isolation, const ProbeProposal& probe) {
    const auto& place = isolation.places[probe.place];
    const auto here = piece(*place.node, broken);
    if (probe.other) {
      const auto& other = isolation.places[*probe.other];
      auto reading = drawn.continuity(place.label, other.label, std::nullopt);
      reading.mode = probe.mode;
      if (here.contains(*other.node)) reading.value = 0.3 + within(0.0, 0.3);
      return reading;
    }
    const double volts = voltsAcross(clampsOn(here, faulty_));
    if (volts >= 2.0) return drawn.diode(place.label, std::nullopt);
    const double shown = volts * (1.0 + gain_) + within(-0.003, 0.003) + 0.0015 * normal_(random_);
    return drawn.diode(place.label, std::max(0.0, 1e-3 * std::round(1e3 * shown)));
  }

private:
  double within(double least, double most) {
    return std::uniform_real_distribution<double>(least, most)(random_);
  }
  bool chance(double share) { return within(0.0, 1.0) < share; }

  /// A connector, then chips and test pads one after the other, on buried tracks that branch now and then.
  void draw() {
    std::vector<NodeIndex> trunk{drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0))};
    add(drawn.pins.back(), {});
    const int chips = 2 + static_cast<int>(within(0.0, 3.999));
    double x = 0.0;
    for (int chip = 1; chip <= chips; ++chip) {
      if (chance(0.35)) {
        x += 10.0;
        const auto pad = drawn.testPad("TP" + std::to_string(chip), mm(x, 0));
        drawn.track(trunk.back(), pad, within(2.0, 30.0));
        add(drawn.pins.back(), {});
        trunk.push_back(pad);
      }
      x += 10.0;
      const auto from =
          chance(0.7)
              ? trunk.back()
              : trunk[static_cast<std::size_t>(within(0.0, static_cast<double>(trunk.size()) - 0.001))];
      const auto part = drawn.part("U" + std::to_string(chip), PartKind::chip);
      const auto pad = drawn.pinOnLine(part, "7", mm(x, 0), chance(0.6) ? Access::underPart : Access::open);
      drawn.track(from, pad, within(2.0, 30.0));
      add(drawn.pins.back(),
          chance(0.95) ? Clamp{within(0.35, 0.8), within(1.0, 1.6), within(2.0, 15.0)} : Clamp{});
      trunk.push_back(pad);
    }
    good_V_ = voltsAcross(clampsOn(piece(0, num_edges(drawn.line.graph)), nominal_));
    if (good_V_ >= 2.0) nominal_.back() = {0.5, 1.2, 8.0}; // a line with nothing on it is no job
    good_V_ = voltsAcross(clampsOn(piece(0, num_edges(drawn.line.graph)), nominal_));
    faulty_ = nominal_;
    for (auto& clamp : faulty_)
      if (clamp.drop_V > 0.0) clamp.drop_V += 0.006 * normal_(random_);
  }

  void add(PinId pin, Clamp clamp) {
    pinsWithClamp_.push_back(pin);
    nominal_.push_back(clamp);
  }

  /// As the shares of data/fault_priors.json have it: a posterior is right only where the faults are drawn
  /// so.
  void breakSomewhere() {
    std::vector<double> weight;
    for (auto [edge, end] = boost::edges(drawn.line.graph); edge != end; ++edge) {
      const auto& copper = drawn.line.graph[*edge];
      const bool connector = copper.index == 0;
      weight.push_back(copper.kind == EdgeKind::track ? 0.04 * copper.length.value.mm()
                       : connector                    ? 3.0
                                                      : 1.0);
    }
    broken = std::discrete_distribution<std::size_t>(weight.begin(), weight.end())(random_);
  }

  /// Nodes that hang together with this one.
  [[nodiscard]] std::set<NodeIndex> piece(NodeIndex start, std::size_t without) const {
    const auto& graph = drawn.line.graph;
    std::set<NodeIndex> found{start};
    for (bool grown = true; grown;) {
      grown = false;
      for (auto [edge, end] = boost::edges(graph); edge != end; ++edge) {
        if (graph[*edge].index == without) continue;
        const auto a = source(*edge, graph);
        const auto b = target(*edge, graph);
        if (found.contains(a) != found.contains(b)) {
          found.insert({a, b});
          grown = true;
        }
      }
    }
    return found;
  }

  [[nodiscard]] std::vector<Clamp> clampsOn(const std::set<NodeIndex>& nodes,
                                            const std::vector<Clamp>& of) const {
    std::vector<Clamp> result;
    for (const NodeIndex node : nodes) {
      const auto* pin = std::get_if<PinId>(&drawn.line.graph[node].object);
      if (!pin || drawn.line.graph[node].kind != NodeKind::terminal) continue;
      for (std::size_t i = 0; i < pinsWithClamp_.size(); ++i)
        if (pinsWithClamp_[i] == *pin) result.push_back(of[i]);
    }
    return result;
  }

  std::mt19937_64 random_;
  std::normal_distribution<double> normal_;
  std::vector<PinId> pinsWithClamp_;
  std::vector<Clamp> nominal_; ///< parallel: of the good board
  std::vector<Clamp> faulty_;
  double good_V_ = 0.0;
  double gain_ = 0.0;
};

struct MixedOutcome {
  int jobs = 0;
  int right = 0;     ///< the broken place is named with more than 80 %
  int wrong = 0;     ///< another place is
  int sound = 0;     ///< the line is called sound with more than 80 %
  int undecided = 0; ///< nothing holds more than 80 %
  int probes = 0;
};

/// Probes where the engine says until it stops.
inline Isolation probedToTheEnd(MixedJob& job, Isolation isolation, int& probes) {
  for (int i = 0; i < 40; ++i) {
    const auto next = nextProbe(isolation);
    if (next.stop || next.ranked.empty()) break;
    ++probes;
    const auto reading = job.answer(isolation, next.ranked.front());
    isolation = update(std::move(isolation), reading);
  }
  return isolation;
}

inline void count(const MixedJob& job, const Isolation& isolation, MixedOutcome& outcome) {
  ++outcome.jobs;
  const auto found = suspects(isolation);
  const auto& first = found.ranked.front();
  const FaultKind kind = isolation.classes[first.faultClass].kind;
  if (first.probability <= 0.8 || kind == FaultKind::noneOfThese)
    ++outcome.undecided;
  else if (kind == FaultKind::sound)
    ++outcome.sound;
  else if (std::any_of(first.places.begin(), first.places.end(),
                       [&](const FaultPlace& place) { return place.edge == job.broken; }))
    ++outcome.right;
  else
    ++outcome.wrong;
}

inline MixedOutcome mixedJobs(std::uint64_t seed, int jobs) {
  MixedOutcome outcome;
  for (int i = 0; i < jobs; ++i) {
    MixedJob job(seed + static_cast<std::uint64_t>(i));
    auto isolation = job.drawn.isolation(job.knownGood());
    isolation = probedToTheEnd(job, std::move(isolation), outcome.probes);
    count(job, isolation, outcome);
  }
  return outcome;
}

} // namespace netmend::test
