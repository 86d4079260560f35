#pragma once

#include <array>
#include <cmath>
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

inline double gauss(double x, double mean, double sigma) {
  return std::exp(-0.5 * (x - mean) * (x - mean) / (sigma * sigma)) /
         (sigma * std::sqrt(2.0 * std::numbers::pi));
}

/// What the meter's accuracy and its leads bring, at half a volt: the same in all readings of a job.
inline const double commonSigma = std::hypot((0.01 * 0.5 + 0.003) / rectangle, 0.0002 / rectangle);
/// Half a count and the hand: new in each.
inline const double freshSigma = std::hypot(0.0005 / rectangle, 0.0015);

/// Mean over the common error, in steps of a fiftieth of it.
template <class Of> double overCommonError(const Of& of) {
  double sum = 0.0, weights = 0.0;
  for (int i = -300; i <= 300; ++i) {
    const double z = 0.02 * i, weight = std::exp(-0.5 * z * z);
    if (std::abs(z) > 3.0) continue;
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

inline double ofDiode(std::optional<double> read, double truth) {
  return overCommonError([&](double off) {
    if (!read)
      return (1 - slips) * 0.5 * std::erfc((2.0 - truth - off) / freshSigma / std::numbers::sqrt2) +
             slips / 2;
    return (1 - slips) * student(*read, truth + off, freshSigma) + slips / 2 / 2.0;
  });
}

/// Likelihood of a reading under each class.
using Says = std::array<double, 6>;

inline Says diodeAt(const std::string& place, std::optional<double> read) {
  const double whole = ofDiode(read, across470), parted = ofDiode(read, openVolts);
  Says says{whole, read ? 0.65 / 2.0 : 0.35, 1.0, whole, whole, whole};
  if (place == "J1.1") says[jointOfJ] = says[jointOfU] = says[track] = parted;
  if (place == "pad of J1.1") says[jointOfU] = says[track] = parted;
  if (place == "pad of U1.1") says[jointOfU] = parted;
  return says; // at U1.1 the resistor is behind the lead whatever is broken
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
  Says says{of(false), read ? 0.7 * anyOhms(*read) : 0.3, 1.0, of(false), of(false), of(false)};
  if (place == "J1.1") says[jointOfJ] = says[jointOfU] = says[track] = of(true);
  if (place == "pad of J1.1") says[jointOfU] = says[track] = of(true);
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

inline void checkShares(const Isolation& isolation, const std::array<double, 6>& wanted) {
  REQUIRE(isolation.probability.size() == wanted.size());
  for (std::size_t c = 0; c < wanted.size(); ++c) {
    INFO("class " << c);
    CHECK(isolation.probability[c] == Approx(wanted[c]).epsilon(2e-3).margin(1e-9));
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
