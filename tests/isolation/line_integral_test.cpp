#include <cmath>

#include <catch2/catch.hpp>

#include "isolation/model.h"
#include "isolation/weighing.h"
#include "one_resistor.h"

// How likely readings are under a class, against a dense sum over what is not known: the two drops of two
// chips, each in steps of two millivolts. Densities of one chip are those of drop_density_test.cpp; what two
// do together, and the readings' likelihood, are worked out here.

using namespace netmend;
using namespace netmend::test;

namespace {

constexpr double step = 2e-3; // V
constexpr double chipSeries = 8.0;
const double chipSlope = 1.25 * 1.380649e-23 * 298.15 / 1.602176634e-19; // CODATA 2018

/// ln of the share of a milliampere that a junction of this drop takes.
double logShare(double drop, double volts) {
  double x = std::min(0.0, (volts - drop) / chipSlope);
  for (int i = 0; i < 30; ++i) {
    const double move = (drop + chipSlope * x + 1e-3 * chipSeries * (std::exp(x) - 1.0) - volts) /
                        (chipSlope + 1e-3 * chipSeries * std::exp(x));
    x -= move;
    if (std::abs(move) < 1e-9) break;
  }
  return x;
}

/// Volts at the first of two chips with a resistance between them; the meter's own 10 MΩ left out.
double across(double first, double second, double ohms) {
  if (!std::isfinite(first) && !std::isfinite(second)) return openVolts;
  if (!std::isfinite(second)) return first;
  double low = -0.1, high = std::min(first, second + 1e-3 * ohms);
  for (int i = 0; i < 26; ++i) {
    const double middle = 0.5 * (low + high);
    double taken = std::isfinite(first) ? std::exp(logShare(first, middle)) : 0.0;
    // What goes to the second one makes its drop beyond the resistance.
    double least = 0.0, most = 1.0;
    for (int k = 0; ohms > 0.0 && k < 26; ++k) {
      const double share = 0.5 * (least + most);
      const double at =
          second + chipSlope * std::log(std::max(share, 1e-30)) + 1e-3 * chipSeries * (share - 1.0);
      (at + 1e-3 * ohms * share < middle ? least : most) = share;
    }
    taken += ohms > 0.0 ? least : std::exp(logShare(second, middle));
    (taken < 1.0 ? low : high) = middle;
  }
  return low;
}

/// U1 – 20 mm of track, with a resistor in it where one is wanted – U2, on chips that are much alike.
struct TwoChips {
  DrawnLine drawn;
  FaultPriors priors = priorsFromData();
  double ohms = 0.0;

  explicit TwoChips(double between) : ohms(between) {
    priors.drops = {{Volts(0.44), Volts(0.50), 0.8}, {Volts(0.38), Volts(0.44), 0.2}};
    priors.alike.clear();
    priors.terminations[PartKind::chip] = {0.9, 0.0, 0.1};
    const auto a = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(0, 0));
    const auto b = drawn.pinOnLine(drawn.part("U2", PartKind::chip), "1", mm(30, 0));
    if (ohms > 0.0) {
      const auto r = drawn.part("R1", PartKind::resistor);
      const auto one = drawn.joint(mm(9, 0)), other = drawn.joint(mm(11, 0));
      drawn.track(a, one, 9);
      drawn.through(one, other, r, Ohms(ohms));
      drawn.track(other, b, 19);
    } else {
      drawn.track(a, b, 30);
    }
  }

  struct Chip {
    double drop;
    double weight;
  };
  [[nodiscard]] std::vector<Chip> chip(const Technology& technology) const {
    const auto density = clampDensity(priors, technology, Amperes(1e-3));
    std::vector<Chip> result{{noDrop, 0.1}};
    for (std::size_t i = 0; i < DropDensity::bins; ++i)
      for (double at = 0.5 * step; at < DropDensity::step; at += step)
        if (density.mass[i] > 1e-9F)
          result.push_back({DropDensity::middle(i) - 0.5 * DropDensity::step + at,
                            0.9 * static_cast<double>(density.mass[i]) * step / DropDensity::step});
    return result;
  }

  struct Sums {
    double sound = 0.0, parted = 0.0, good = 0.0;
  };
  /// Likelihood of the readings together with good boards' value at U1 where the line is sound and where it
  /// is parted, and of that value alone.
  [[nodiscard]] Sums sums(const std::vector<DiodeReading>& readings, double goodValue) const {
    const double sigma = std::hypot(0.005, 0.002);
    const auto likelihood = [&](double first, double second) {
      return overCommonErrorCoarsely([&](double off) {
        double product = 1.0;
        for (const auto& [place, read] : readings)
          product *= shown(read, (place == "U1.1" ? first : second) + off);
        return product;
      });
    };
    Sums sum;
    for (const auto& technology : technologies(priors))
      for (const auto& a : chip(technology))
        for (const auto& b : chip(technology)) {
          const double here = across(a.drop, b.drop, ohms), there = across(b.drop, a.drop, ohms);
          const double good = here == openVolts ? 0.005 : 0.99 * student(goodValue, here, sigma) + 0.005;
          const double weight = technology.weight * a.weight * b.weight * good;
          sum.good += weight;
          if (weight < 1e-10) continue;
          sum.sound += weight * likelihood(here, there);
          const auto alone = [](double drop) { return std::isfinite(drop) ? drop : openVolts; };
          sum.parted += weight * likelihood(alone(a.drop), alone(b.drop));
        }
    return sum;
  }

  template <class Of> static double overCommonErrorCoarsely(const Of& of) {
    double sum = 0.0, weights = 0.0;
    for (int i = -12; i <= 12; ++i) {
      const double z = 0.25 * i, weight = std::exp(-0.5 * z * z);
      sum += weight * of(z * commonSigma);
      weights += weight;
    }
    return sum / weights;
  }
};

std::size_t classOf(const Isolation& isolation, EdgeKind kind) {
  for (std::size_t c = 0; c < isolation.classes.size(); ++c)
    for (const auto& place : isolation.classes[c].places)
      if (place.edgeKind == kind) return c;
  FAIL("no such class");
  return 0;
}

void check(const TwoChips& line, const std::vector<DiodeReading>& readings) {
  constexpr double goodValue = 0.447;
  const auto isolation = line.drawn.isolation({{line.drawn.pins[0], Volts(goodValue), Volts(0.005)}},
                                              line.priors, effortsFromData());
  const auto& model = *isolation.model;
  std::vector<Reading> taken;
  std::string said;
  for (const auto& [place, read] : readings) {
    taken.push_back(line.drawn.diode(place, read));
    said += place + " " + std::to_string(read.value_or(-1.0)) + " ";
  }
  INFO(said);
  const auto sums = line.sums(readings, goodValue);
  const std::size_t track = classOf(isolation, EdgeKind::track);
  CHECK(model.logGood[sound] == Approx(std::log(sums.good)).margin(0.01));
  CHECK(model.logGood[track] == Approx(std::log(sums.good)).margin(0.01));
  Weighing weighing(model, placedReadings(update(isolation, taken)));
  const auto ofSound = weighing.of(sound), ofTrack = weighing.of(track);
  CHECK(ofSound.unresolved == 0.0);
  CHECK(ofTrack.unresolved == 0.0);
  // Both chips as one unknown, in bins of 6 mV, and far down a tail.
  CHECK(ofSound.log == Approx(std::log(sums.sound / sums.good)).margin(0.03));
  CHECK(ofTrack.log == Approx(std::log(sums.parted / sums.good)).margin(0.03));
  // What does not count any more is given up with a bound.
  CHECK(weighing.of(track, {}, ofTrack.log + 5.0).log >= ofTrack.log - 1e-6);
  CHECK(weighing.of(track, {}, ofTrack.log - 1.0).log == Approx(ofTrack.log).margin(1e-3));
}

} // namespace

TEST_CASE("how likely readings on a line of two chips are is a dense sum over both drops") {
  const TwoChips line(0.0);
  check(line, {{"U1.1", 0.449}, {"U2.1", 0.452}});
  check(line, {{"U1.1", 0.471}, {"U2.1", 0.466}});
  check(line, {{"U1.1", 0.462}, {"U2.1", 0.481}, {"U1.1", 0.464}});
  check(line, {{"U1.1", 0.470}, {"U2.1", std::nullopt}});
}

TEST_CASE("how likely readings are where chips are of one technology is a dense sum over that as well") {
  TwoChips line(0.0);
  line.priors.drops = {{Volts(0.44), Volts(0.50), 1.0}};
  line.priors.alike = {{Volts(0.025), 0.7}};
  check(line, {{"U1.1", 0.463}, {"U2.1", 0.477}, {"U2.1", 0.476}});
}

TEST_CASE("how likely readings on both sides of a series resistor are is a dense sum over both drops") {
  const TwoChips line(22.0);
  check(line, {{"U1.1", 0.452}, {"U2.1", 0.449}});
  check(line, {{"U1.1", 0.447}, {"U2.1", 0.470}, {"U1.1", 0.449}});
}
