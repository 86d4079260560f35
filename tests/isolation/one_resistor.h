#pragma once

#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "drawn_line.h"

// Bayes by hand. What is behind the pins is known to the ohm here, so that each hypothesis says one value of
// each reading: I·R of the meter's test current, with the meter's 10 MΩ beside it. The meter is the
// handheld-4000 of data/meters.json: diode mode 1 mA, 3 V open, OL above 2 V, ±(1 % + 3 counts of 1 mV); ohms
// 0.5 mA, 0.5 V open, ±(0.8 % + 3 counts of 1 Ω) up to 4 kΩ; leads 0.2 Ω.
namespace netmend::test {

inline constexpr double slips = 0.02; // data/fault_priors.json
inline constexpr double rectangle = 1.7320508075688772;

/// J1.1 with nothing behind it, 20 mm of buried track, U1.1 with 470 Ω behind it; all four places open.
struct OneResistor {
  DrawnLine drawn;
  FaultPriors priors = priorsFromData();

  OneResistor() {
    const auto j = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0));
    const auto u = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(20, 0));
    drawn.track(j, u, 20);
    priors.shortToGround = 0.0;
  }

  [[nodiscard]] Isolation isolation(std::vector<KnownGood> good = {}) const {
    PinTermination nothing, resistor;
    nothing.pin = drawn.pins[0];
    resistor.pin = drawn.pins[1];
    resistor.shares = {0.0, 1.0, 0.0};
    resistor.resistance = Ohms(470);
    return drawn.isolation(std::move(good), priors, effortsFromData(), {nothing, resistor});
  }
};

/// Classes by what is broken: the order that the weights give, 3 for a connector's joint, 1 for a joint, 0.8
/// for 20 mm of track.
enum Class : std::size_t { sound, none, shorted, jointOfJ, jointOfU, track };
inline constexpr std::array<double, 6> prior{0.06, 0.04, 0.0, 0.9 * 3 / 4.8, 0.9 / 4.8, 0.9 * 0.8 / 4.8};

/// What the meter shows across 470 Ω, and with no path.
inline const double across470 = 1e-3 / (1.0 / 470 + 1e-7);
inline const double openVolts = 3.0 / (1.0 + 1000.0 * 1e-7); // 1 V over 1 mA is the source's own resistance

/// What the meter's accuracy and its leads bring, at half a volt: the same in all readings of a job.
inline const double commonSigma = std::hypot((0.01 * 0.5 + 0.003) / rectangle, 0.0002 / rectangle);
/// Half a count and the hand: new in each.
inline const double freshSigma = std::hypot(0.0005 / rectangle, 0.0015);

/// Both together, as what is foreseen spreads.
inline const double diodeSpread = std::hypot(commonSigma, freshSigma);

/// Mean over the common error, in steps of a fiftieth of it.
template <class Of> double overCommonError(const Of& of) {
  double sum = 0.0, weights = 0.0;
  for (int i = -150; i <= 150; ++i) {
    const double z = 0.02 * i, weight = std::exp(-0.5 * z * z);
    sum += weight * of(z * commonSigma);
    weights += weight;
  }
  return sum / weights;
}

/// Student's t with five degrees of freedom: Γ(3)/(√(5π)·Γ(5/2))·(1 + z²/5)^−3.
inline double student(double x, double mean, double sigma) {
  const double z = (x - mean) / sigma;
  return 8.0 / (3.0 * std::sqrt(5.0) * std::numbers::pi) * std::pow(1.0 + z * z / 5.0, -3.0) / sigma;
}

/// A diode reading, the common error known.
inline double shown(std::optional<double> read, double truth) {
  if (!read)
    return (1 - slips) * 0.5 * std::erfc((2.0 - truth) / freshSigma / std::numbers::sqrt2) + slips / 2;
  return (1 - slips) * student(*read, truth, freshSigma) + slips / 2 / 2.0;
}

/// Likelihood of readings under each class.
using Says = std::array<double, 6>;

struct DiodeReading {
  std::string place;
  std::optional<double> read;
};

/// Whether a lead here has lost touch with the resistor; at U1.1 it is behind the lead whatever is broken.
inline bool isParted(std::size_t c, const std::string& place) {
  if (place == "J1.1") return c == jointOfJ || c == jointOfU || c == track;
  if (place == "pad of J1.1") return c == jointOfU || c == track;
  return place == "pad of U1.1" && c == jointOfU;
}

/// Readings of one thing that may be OL (35 in 100) or any voltage up to the limit.
inline double ofAnything(const std::vector<std::optional<double>>& reads) {
  const auto all = [&](double truth) {
    double product = 1.0;
    for (const auto& read : reads)
      product *= shown(read, truth);
    return product;
  };
  constexpr double step = 1e-4;
  double sum = 0.0;
  for (double v = 0.5 * step; v < 2.0; v += step)
    sum += all(v) * step / 2.0;
  return 0.35 * all(openVolts) + 0.65 * sum;
}

/// None of these: half the time the whole line reads alike, else each place as it likes, and the same again.
inline double ofNone(const std::vector<DiodeReading>& readings) {
  std::vector<std::optional<double>> alike;
  std::map<std::string, std::vector<std::optional<double>>> byPlace;
  for (const auto& [place, read] : readings) {
    alike.push_back(read);
    byPlace[place].push_back(read);
  }
  double each = 1.0;
  for (const auto& [place, reads] : byPlace)
    each *= ofAnything(reads);
  return 0.5 * ofAnything(alike) + 0.5 * each;
}

inline double ofDiodesUnder(std::size_t c, const std::vector<DiodeReading>& readings) {
  return overCommonError([&](double off) {
    double product = 1.0;
    for (const auto& [place, read] : readings)
      product *= shown(read, (isParted(c, place) ? openVolts : across470) + off);
    return product;
  });
}

inline Says ofDiodes(const std::vector<DiodeReading>& readings) {
  Says says;
  for (std::size_t c = 0; c < says.size(); ++c)
    says[c] = c == none ? ofNone(readings) : c == shorted ? 1.0 : ofDiodesUnder(c, readings);
  return says;
}

inline Says diodeAt(const std::string& place, std::optional<double> read) {
  return ofDiodes({{place, read}});
}

inline double anyOhms(double ohms) {
  return 1.0 / (std::max(ohms, 0.1) * 8.0 * std::log(10.0)); // eight decades
}

/// Continuity from J1.1 to U1.1: 20 mm of 0.15 mm track in 35 µm.
inline Says continuityThroughout(std::optional<double> read) {
  const double ohms = copperResistivity * 20e-3 / (0.15e-3 * 35e-6);
  const double meter = std::hypot((0.01 * ohms + 0.5) / rectangle, 0.05 / rectangle, 0.2 / rectangle);
  const double sigma = std::hypot(meter, 0.1 * ohms, 0.3);
  const double slip = read ? slips / 2 * anyOhms(*read) : slips / 2;
  const double joined =
      read ? student(*read, ohms, sigma) : 0.5 * std::erfc((400.0 - ohms) / sigma / std::numbers::sqrt2);
  const double parted = read ? 0.05 * anyOhms(*read) : 0.95;
  Says says;
  says.fill((1 - slips) * parted + slip);
  says[sound] = (1 - slips) * joined + slip;
  says[none] = read ? 0.7 * anyOhms(*read) : 0.3;
  return says;
}

inline Says ohmsAt(const std::string& place, std::optional<double> read) {
  const auto of = [&](bool parted) {
    const double slip = read ? slips / 2 * anyOhms(*read) : slips / 2;
    if (parted) return read ? slip : 1 - slips + slip; // a gigaohm and more, far above 40 MΩ
    const double meter = std::hypot((0.008 * 470 + 3.0) / rectangle, 0.5 / rectangle, 0.2 / rectangle);
    return read ? (1 - slips) * student(*read, 470.0, std::hypot(meter, 0.05 * 470, 0.3)) + slip : slip;
  };
  Says says;
  for (std::size_t c = 0; c < says.size(); ++c)
    says[c] = of(isParted(c, place));
  says[none] = read ? 0.7 * anyOhms(*read) : 0.3;
  return says;
}

inline std::array<double, 6> normalised(std::array<double, 6> p) {
  double sum = 0.0;
  for (const double one : p)
    sum += one;
  for (double& one : p)
    one /= sum;
  return p;
}

inline std::array<double, 6> after(std::array<double, 6> p, const std::vector<Says>& readings) {
  for (const Says& says : readings)
    for (std::size_t c = 0; c < p.size(); ++c)
      p[c] *= says[c];
  return normalised(p);
}

/// The program's sums over the common error are good to a per cent or two.
inline void checkShares(const Isolation& isolation, const std::array<double, 6>& wanted,
                        double within = 0.02) {
  REQUIRE(isolation.probability.size() == wanted.size());
  for (std::size_t c = 0; c < wanted.size(); ++c) {
    INFO("class " << c);
    CHECK(isolation.probability[c] == Approx(wanted[c]).epsilon(within).margin(1e-9));
  }
}

inline double bitsOf(std::vector<double> weights) {
  double sum = 0.0, bits = 0.0;
  for (const double w : weights)
    sum += w;
  for (const double w : weights)
    if (w > 0.0) bits -= w / sum * std::log2(w / sum);
  return bits;
}

inline std::size_t placeCalled(const Isolation& isolation, const std::string& label) {
  for (std::size_t i = 0; i < isolation.places.size(); ++i)
    if (isolation.places[i].label == label) return i;
  FAIL("no place " << label);
  return 0;
}

inline Reading inMode(Reading reading, ReadingMode mode) {
  reading.mode = mode;
  return reading;
}

} // namespace netmend::test
