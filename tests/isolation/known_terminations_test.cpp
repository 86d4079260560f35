#include <array>
#include <cmath>
#include <functional>
#include <numbers>

#include <catch2/catch.hpp>

#include "drawn_line.h"
#include "isolation/model.h"

// Bayes by hand. What is behind the pins is known to the ohm here, so that each hypothesis says one value of
// each reading: I·R of the meter's test current, with the meter's 10 MΩ beside it. The meter is the
// handheld-4000 of data/meters.json: diode mode 1 mA, 3 V open, OL above 2 V, ±(1 % + 3 counts of 1 mV); ohms
// 0.5 mA, 0.5 V open, ±(0.8 % + 3 counts of 1 Ω) up to 4 kΩ; leads 0.2 Ω.

using namespace netmend;
using netmend::test::DrawnLine;
using netmend::test::mm;

namespace {

constexpr double slips = 0.02; // data/fault_priors.json
constexpr double rectangle = 1.7320508075688772;

/// J1.1 with nothing behind it, 20 mm of buried track, U1.1 with 470 Ω behind it; all four places open.
struct OneResistor {
  DrawnLine drawn;
  FaultPriors priors = test::priorsFromData();

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
    return drawn.isolation(std::move(good), priors, test::effortsFromData(), {nothing, resistor});
  }
};

/// Classes by what is broken: the order that the weights give, 3 for a connector's joint, 1 for a joint, 0.8
/// for 20 mm of track.
enum Class : std::size_t { sound, none, shorted, jointOfJ, jointOfU, track };
constexpr std::array<double, 6> prior{0.06, 0.04, 0.0, 0.9 * 3 / 4.8, 0.9 / 4.8, 0.9 * 0.8 / 4.8};

/// What the meter shows across 470 Ω, and with no path.
const double across470 = 1e-3 / (1.0 / 470 + 1e-7);
const double openVolts = 3.0 / (1.0 + 1000.0 * 1e-7); // 1 V over 1 mA is the source's own resistance

double gauss(double x, double mean, double sigma) {
  return std::exp(-0.5 * (x - mean) * (x - mean) / (sigma * sigma)) /
         (sigma * std::sqrt(2.0 * std::numbers::pi));
}

/// Meter (accuracy, half a count, leads at 1 mA) and hand together; the program looks it up by the millivolt.
double diodeSigma(double volts) {
  const double v = std::min(std::floor(1e3 * volts) * 1e-3, 2.0);
  const double meter = std::hypot((0.01 * v + 0.003) / rectangle, 0.0005 / rectangle, 0.0002 / rectangle);
  return std::hypot(meter, 0.0015);
}

double ofDiode(std::optional<double> read, double truth) {
  const double sigma = diodeSigma(std::min(truth, 2.0));
  if (!read) return (1 - slips) * 0.5 * std::erfc((2.0 - truth) / sigma / std::numbers::sqrt2) + slips / 2;
  return (1 - slips) * gauss(*read, truth, sigma) + slips / 2 / 2.0;
}

/// Likelihood of a reading under each class.
using Says = std::array<double, 6>;

Says diodeAt(const std::string& place, std::optional<double> read) {
  const double whole = ofDiode(read, across470), parted = ofDiode(read, openVolts);
  Says says{whole, read ? 0.65 / 2.0 : 0.35, 1.0, whole, whole, whole};
  if (place == "J1.1") says[jointOfJ] = says[jointOfU] = says[track] = parted;
  if (place == "pad of J1.1") says[jointOfU] = says[track] = parted;
  if (place == "pad of U1.1") says[jointOfU] = parted;
  return says; // at U1.1 the resistor is behind the lead whatever is broken
}

double anyOhms(double ohms) {
  return 1.0 / (std::max(ohms, 0.1) * 8.0 * std::log(10.0)); // eight decades
}

/// Continuity from J1.1 to U1.1: 20 mm of 0.15 mm track in 35 µm.
Says continuityThroughout(std::optional<double> read) {
  const double ohms = copperResistivity * 20e-3 / (0.15e-3 * 35e-6);
  const double meter = std::hypot((0.01 * ohms + 0.5) / rectangle, 0.05 / rectangle, 0.2 / rectangle);
  const double sigma = std::hypot(meter, 0.1 * ohms, 0.3);
  const double slip = read ? slips / 2 * anyOhms(*read) : slips / 2;
  const double joined =
      read ? gauss(*read, ohms, sigma) : 0.5 * std::erfc((400.0 - ohms) / sigma / std::numbers::sqrt2);
  const double parted = read ? 0.05 * anyOhms(*read) : 0.95;
  Says says;
  says.fill((1 - slips) * parted + slip);
  says[sound] = (1 - slips) * joined + slip;
  says[none] = read ? 0.7 * anyOhms(*read) : 0.3;
  return says;
}

Says ohmsAt(const std::string& place, std::optional<double> read) {
  const auto of = [&](bool parted) {
    const double slip = read ? slips / 2 * anyOhms(*read) : slips / 2;
    if (parted) return read ? slip : 1 - slips + slip; // a gigaohm and more, far above 40 MΩ
    const double meter = std::hypot((0.008 * 470 + 3.0) / rectangle, 0.5 / rectangle, 0.2 / rectangle);
    return read ? (1 - slips) * gauss(*read, 470.0, std::hypot(meter, 0.05 * 470, 0.3)) + slip : slip;
  };
  Says says{of(false), read ? 0.7 * anyOhms(*read) : 0.3, 1.0, of(false), of(false), of(false)};
  if (place == "J1.1") says[jointOfJ] = says[jointOfU] = says[track] = of(true);
  if (place == "pad of J1.1") says[jointOfU] = says[track] = of(true);
  return says;
}

std::array<double, 6> normalised(std::array<double, 6> p) {
  double sum = 0.0;
  for (const double one : p)
    sum += one;
  for (double& one : p)
    one /= sum;
  return p;
}

std::array<double, 6> after(std::array<double, 6> p, const std::vector<Says>& readings) {
  for (const Says& says : readings)
    for (std::size_t c = 0; c < p.size(); ++c)
      p[c] *= says[c];
  return normalised(p);
}

void checkShares(const Isolation& isolation, const std::array<double, 6>& wanted) {
  REQUIRE(isolation.probability.size() == wanted.size());
  for (std::size_t c = 0; c < wanted.size(); ++c) {
    INFO("class " << c);
    CHECK(isolation.probability[c] == Approx(wanted[c]).epsilon(1e-5).margin(1e-12));
  }
}

double bitsOf(std::vector<double> weights) {
  double sum = 0.0, bits = 0.0;
  for (const double w : weights)
    sum += w;
  for (const double w : weights)
    if (w > 0.0) bits -= w / sum * std::log2(w / sum);
  return bits;
}

std::size_t placeCalled(const Isolation& isolation, const std::string& label) {
  for (std::size_t i = 0; i < isolation.places.size(); ++i)
    if (isolation.places[i].label == label) return i;
  FAIL("no place " << label);
  return 0;
}

Reading inMode(Reading reading, ReadingMode mode) {
  reading.mode = mode;
  return reading;
}

} // namespace

TEST_CASE("each reading changes the shares of sound, none of these and each break as Bayes says, by hand") {
  const OneResistor line;
  const auto start = line.isolation();
  checkShares(start, prior);
  CHECK(start.classes[jointOfJ].places.front().pin == line.drawn.pins[0]);
  CHECK(start.classes[jointOfU].places.front().pin == line.drawn.pins[1]);
  CHECK(start.classes[track].places.front().edgeKind == EdgeKind::track);
  CHECK(start.samplingError == Approx(0.0).margin(1e-12)); // nothing is uncertain but which

  struct Step {
    Reading reading;
    Says says;
  };
  const auto& d = line.drawn;
  for (const std::optional<double> volts :
       {std::optional<double>{}, std::optional(across470), std::optional(across470 + 0.006),
        std::optional(0.45), std::optional(1.2), std::optional(0.0)})
    for (const std::string place : {"J1.1", "pad of J1.1", "pad of U1.1", "U1.1"}) {
      INFO(place << " " << volts.value_or(-1.0));
      const auto isolation = update(start, d.diode(place, volts));
      CHECK(isolation.setAside.empty());
      checkShares(isolation, after(prior, {diodeAt(place, volts)}));
    }
  for (const std::optional<double> ohms : {std::optional<double>{}, std::optional(0.0), std::optional(0.05),
                                           std::optional(0.4), std::optional(30.0)}) {
    INFO("continuity " << ohms.value_or(-1.0));
    checkShares(update(start, d.continuity("J1.1", "U1.1", ohms)),
                after(prior, {continuityThroughout(ohms)}));
    checkShares(update(start, d.continuity("U1.1", "J1.1", ohms)),
                after(prior, {continuityThroughout(ohms)}));
  }
  for (const std::optional<double> ohms : {std::optional<double>{}, std::optional(0.0), std::optional(455.0),
                                           std::optional(470.0), std::optional(9e3)})
    for (const std::string place : {"J1.1", "pad of J1.1", "U1.1"}) {
      INFO("ohms at " << place << " " << ohms.value_or(-1.0));
      checkShares(update(start, inMode(d.diode(place, ohms), ReadingMode::ohms)),
                  after(prior, {ohmsAt(place, ohms)}));
    }
}

TEST_CASE("readings one after the other multiply, and each is evidence by its bits against all others") {
  const OneResistor line;
  const auto& d = line.drawn;
  const std::vector<Reading> readings{d.diode("J1.1", std::nullopt), d.diode("pad of J1.1", 0.473),
                                      inMode(d.diode("J1.1", std::nullopt), ReadingMode::ohms),
                                      d.continuity("J1.1", "U1.1", std::nullopt)};
  const std::vector<Says> says{diodeAt("J1.1", std::nullopt), diodeAt("pad of J1.1", 0.473),
                               ohmsAt("J1.1", std::nullopt), continuityThroughout(std::nullopt)};
  const auto isolation = update(line.isolation(), readings);
  const auto shares = after(prior, says);
  checkShares(isolation, shares);
  const auto found = suspects(isolation);
  CHECK(found.entropyBits == Approx(bitsOf({shares.begin(), shares.end()})).epsilon(1e-5));
  REQUIRE(found.ranked.front().faultClass == jointOfJ);
  CHECK(found.ranked.front().prior == Approx(prior[jointOfJ]));
  for (const auto& suspect : found.ranked) {
    if (suspect.faultClass == shorted) continue;
    REQUIRE(suspect.evidence.size() == says.size());
    for (std::size_t i = 1; i < suspect.evidence.size(); ++i)
      CHECK(std::abs(suspect.evidence[i - 1].bits) >= std::abs(suspect.evidence[i].bits));
    for (const auto& evidence : suspect.evidence) {
      const auto before =
          after(prior, {says.begin(), says.begin() + static_cast<std::ptrdiff_t>(evidence.observation)});
      double others = 0.0, weight = 0.0;
      for (std::size_t c = 0; c < before.size(); ++c) {
        if (c == suspect.faultClass) continue;
        others += before[c] * says[evidence.observation][c];
        weight += before[c];
      }
      const double own = says[evidence.observation][suspect.faultClass];
      INFO("class " << suspect.faultClass << ", reading " << evidence.observation);
      CHECK(evidence.bits == Approx(std::log2(own * weight / others)).epsilon(1e-5).margin(1e-8));
    }
  }
  // What was foretold of them under the connector's joint: OL, the resistor, no figure, parted.
  for (const auto& evidence : found.ranked.front().evidence) {
    const auto& foretold = evidence.foretold;
    if (evidence.observation == 0) {
      CHECK(foretold.what == Foretold::What::volts);
      CHECK(foretold.prediction.overLimit == Approx(1.0));
    } else if (evidence.observation == 1) {
      CHECK(foretold.what == Foretold::What::volts);
      CHECK(foretold.prediction.overLimit == Approx(0.0).margin(1e-12));
      CHECK(foretold.prediction.mean.value == Approx(across470).epsilon(1e-6));
      CHECK(foretold.prediction.spread.value == Approx(diodeSigma(across470)).epsilon(1e-4));
    } else {
      CHECK(foretold.what ==
            (evidence.observation == 2 ? Foretold::What::notSaid : Foretold::What::overLimit));
    }
  }
  for (const auto& suspect : found.ranked)
    for (const auto& evidence : suspect.evidence) {
      if (suspect.faultClass == none) CHECK(evidence.foretold.what == Foretold::What::anything);
      if (suspect.faultClass != sound || evidence.observation != 3) continue;
      CHECK(evidence.foretold.what == Foretold::What::ohms);
      const double ohms = copperResistivity * 20e-3 / (0.15e-3 * 35e-6);
      CHECK(evidence.foretold.ohms.value == Approx(ohms));
      CHECK(evidence.foretold.ohmsSpread.value ==
            Approx(std::hypot(std::hypot((0.01 * ohms + 0.5), 0.05, 0.2) / rectangle, 0.1 * ohms, 0.3)));
    }
}

TEST_CASE("a reading that the leading suspect can only explain by a slip is named with its probability") {
  const OneResistor line;
  const auto& d = line.drawn;
  // The joint of J is lost beyond doubt; then 0.62 V at its pad, where 0.47 V should be.
  auto isolation = line.isolation();
  for (int i = 0; i < 4; ++i)
    isolation = update(isolation, {d.diode("J1.1", std::nullopt), d.diode("pad of J1.1", across470)});
  CHECK(suspects(isolation).contradictions.empty());
  const auto found = suspects(update(isolation, d.diode("pad of J1.1", 0.62)));
  REQUIRE(found.contradictions.size() == 1);
  const auto& odd = found.contradictions.front();
  CHECK(odd.observation == 8);
  CHECK(odd.slipped == 0.999); // a slip and nothing else, said with reserve
  CHECK(odd.foretold.prediction.mean.value == Approx(across470).epsilon(1e-6));
  // OL there is a slip as well; and where both may be, the share is that of the slip.
  CHECK(suspects(update(isolation, d.diode("pad of J1.1", std::nullopt))).contradictions.size() == 1);
  double off = across470;
  const double sigma = diodeSigma(across470);
  const auto share = [&](double volts) { return slips / 2 / 2.0 / ofDiode(volts, across470); };
  while (share(off) < 0.5)
    off += 0.01 * sigma;
  CHECK(suspects(update(isolation, d.diode("pad of J1.1", off - 0.02 * sigma))).contradictions.empty());
  const auto doubtful = suspects(update(isolation, d.diode("pad of J1.1", off + 0.02 * sigma)));
  REQUIRE(doubtful.contradictions.size() == 1);
  CHECK(doubtful.contradictions.front().slipped == Approx(share(off + 0.02 * sigma)).epsilon(1e-5));
}

TEST_CASE("what a place should read is the mixture of what the suspects say, in OL, mean and spread") {
  const OneResistor line;
  const auto isolation = line.isolation();
  const auto wanted = [&](double partedShare) {
    const double known = 1.0 - prior[none];
    Prediction out;
    out.overLimit = partedShare / known;
    out.mean = Volts(across470);
    out.spread = Volts(diodeSigma(across470));
    return out;
  };
  const std::array<std::pair<const char*, double>, 4> shares{
      {{"J1.1", prior[jointOfJ] + prior[jointOfU] + prior[track]},
       {"pad of J1.1", prior[jointOfU] + prior[track]},
       {"pad of U1.1", prior[jointOfU]},
       {"U1.1", 0.0}}};
  for (const auto& [label, parted] : shares) {
    INFO(label);
    const auto found = predictDiode(isolation, placeCalled(isolation, label));
    const auto should = wanted(parted);
    CHECK(found.overLimit == Approx(should.overLimit).epsilon(1e-6).margin(1e-12));
    CHECK(found.mean.value == Approx(should.mean.value).epsilon(1e-6));
    CHECK(found.spread.value == Approx(should.spread.value).epsilon(1e-4));
  }
  const auto none = predictDiode(isolation, placeCalled(isolation, "J1.1"), Class::none);
  CHECK(none == Prediction{0.35, Volts(0), Volts(0)});
  // Two resistors, of which a break leaves one: the spread is that of the mixture.
  DrawnLine two;
  const auto a = two.pinOnLine(two.part("U1", PartKind::chip), "1", mm(0, 0));
  const auto b = two.pinOnLine(two.part("U2", PartKind::chip), "1", mm(25, 0), Access::underPart);
  two.track(a, b, 25);
  PinTermination first, second;
  first.pin = two.pins[0];
  second.pin = two.pins[1];
  first.shares = second.shares = {0.0, 1.0, 0.0};
  first.resistance = second.resistance = Ohms(1000);
  auto priors = test::priorsFromData();
  priors.shortToGround = 0.0;
  const auto both = two.isolation({}, priors, test::effortsFromData(), {first, second});
  // At U1.1 itself: 500 Ω where sound; 1000 Ω where the joint of U1, the track or the joint of U2 is open
  // (the last two are one class, for nobody reaches U2.1; each has a weight of 1).
  const double sound = 0.06, parted = 0.90, low = 1e-3 / (1.0 / 500 + 1e-7),
               high = 1e-3 / (1.0 / 1000 + 1e-7);
  const double mean = (sound * low + parted * high) / 0.96;
  const double square = (sound * (low * low + std::pow(diodeSigma(low), 2)) +
                         parted * (high * high + std::pow(diodeSigma(high), 2))) /
                        0.96;
  const auto found = predictDiode(both, placeCalled(both, "U1.1"));
  CHECK(found.overLimit == Approx(0.0).margin(1e-12));
  CHECK(found.mean.value == Approx(mean).epsilon(1e-6));
  CHECK(found.spread.value == Approx(std::sqrt(square - mean * mean)).epsilon(1e-5));
}

namespace {

/// Expected fall of entropy of a test with these outcomes: what each class says of each.
double expectedBits(const std::array<double, 6>& p, const std::vector<std::vector<double>>& says) {
  std::vector<double> all(says.front().size(), 0.0);
  double within = 0.0;
  for (std::size_t c = 0; c < p.size(); ++c) {
    if (!(p[c] > 0.0)) continue;
    for (std::size_t k = 0; k < all.size(); ++k)
      all[k] += p[c] * says[c][k];
    within += p[c] * bitsOf(says[c]);
  }
  return bitsOf(all) - within;
}

double expectedGuess(const std::array<double, 6>& p, const std::vector<std::vector<double>>& says) {
  double right = 0.0;
  for (std::size_t k = 0; k < says.front().size(); ++k) {
    double best = 0.0;
    for (std::size_t c = 0; c < p.size(); ++c)
      best = std::max(best, p[c] * says[c][k]);
    right += best;
  }
  return right;
}

/// All predictions are one value or OL, so that the program tells three outcomes apart: up to the millivolt
/// of that value, above it, and OL.
std::vector<std::vector<double>> diodeOutcomes(const std::string& place) {
  const double below = 0.5 * std::erfc(-(0.470 - 0.4695) / diodeSigma(0.4695) / std::numbers::sqrt2);
  const auto row = [](double whole, double fits, double overLimit, double evenly) {
    return std::vector<double>{whole * fits + evenly * 0.470 / 2.0, whole * (1 - fits) + evenly * 1.530 / 2.0,
                               overLimit};
  };
  const auto whole = row(1 - slips, below, slips / 2, slips / 2),
             parted = row(0.0, 0.0, 1 - slips / 2, slips / 2);
  std::vector<std::vector<double>> out;
  const Says says = diodeAt(place, std::nullopt);
  for (std::size_t c = 0; c < says.size(); ++c)
    out.push_back(c == none ? row(0.0, 0.0, 0.35, 0.65) : says[c] > 0.5 ? parted : whole);
  return out;
}

} // namespace

TEST_CASE("a probe is worth the bits and the better guess that its outcomes bring, and costs its time") {
  const OneResistor line;
  const auto isolation = update(line.isolation(), line.drawn.diode("J1.1", std::nullopt));
  const auto shares = after(prior, {diodeAt("J1.1", std::nullopt)});
  const double best = *std::max_element(shares.begin(), shares.end());
  ProbeLimits all;
  all.most = 100;
  const auto next = nextProbe(isolation, {}, all);
  // Four places and six pairs of them.
  REQUIRE(next.ranked.size() == 10);
  CHECK(next.bestGuess == Approx(best).epsilon(1e-6));
  CHECK(next.openBits == Approx(bitsOf({shares.begin(), shares.end()})).epsilon(1e-5));
  CHECK(next.wrongRepair == Seconds(1800)); // data/efforts.json
  CHECK_FALSE(next.standing);
  const std::vector<double> joined{0.98, 0.01, 0.01},
      open{0.001, 0.98 * 0.95 + 0.01, 0.999 - 0.98 * 0.95 - 0.01}, odd{0.35, 0.3, 0.35};
  const std::vector<std::string> order{"J1.1", "pad of J1.1", "pad of U1.1", "U1.1"};
  const auto parts = [&](std::size_t c, std::size_t a, std::size_t b) {
    const std::size_t at = c == jointOfJ ? 0 : c == track ? 1 : c == jointOfU ? 2 : 9;
    return a <= at && at < b;
  };
  for (std::size_t i = 0; i < next.ranked.size(); ++i) {
    const auto& probe = next.ranked[i];
    const auto& label = isolation.places[probe.place].label;
    if (i > 0) CHECK(next.ranked[i - 1].bitsPerMinute >= probe.bitsPerMinute);
    CHECK(probe.bitsPerMinute == Approx(60.0 * probe.bits / probe.effort.value));
    if (!probe.other) {
      const auto says = diodeOutcomes(label);
      INFO("diode at " << label);
      CHECK(probe.mode == ReadingMode::diode);
      CHECK(probe.effort == Seconds(15));
      CHECK(probe.again == (label == "J1.1"));
      CHECK(probe.bits == Approx(expectedBits(shares, says)).margin(2e-4)); // its table of Φ is good to 2e-5
      CHECK(probe.betterGuess == Approx(std::max(0.0, expectedGuess(shares, says) - best)).margin(2e-5));
      CHECK(probe.expected == predictDiode(isolation, probe.place));
      continue;
    }
    const auto& other = isolation.places[*probe.other].label;
    auto a = static_cast<std::size_t>(std::find(order.begin(), order.end(), label) - order.begin());
    auto b = static_cast<std::size_t>(std::find(order.begin(), order.end(), other) - order.begin());
    if (a > b) std::swap(a, b);
    std::vector<std::vector<double>> says;
    for (std::size_t c = 0; c < 6; ++c)
      says.push_back(c == none ? odd : parts(c, a, b) ? open : joined);
    INFO(label << " to " << other);
    CHECK(probe.mode == ReadingMode::continuity);
    CHECK(probe.effort == Seconds(15 + 15 + 8));
    CHECK_FALSE(probe.again);
    CHECK(probe.bits == Approx(expectedBits(shares, says)).epsilon(1e-5).margin(1e-7));
    CHECK(probe.betterGuess ==
          Approx(std::max(0.0, expectedGuess(shares, says) - best)).epsilon(1e-5).margin(1e-7));
  }
}

TEST_CASE("going on is advised while what is left costs less than a wrong repair, on both sides of that") {
  const OneResistor line;
  const auto isolation = update(line.isolation(), line.drawn.diode("J1.1", std::nullopt));
  const auto next = nextProbe(isolation);
  CHECK_FALSE(next.stop);
  CHECK(next.why == ProbeAdvice::worthItsTime);
  // No single probe pays by itself below `pays`; several do at the pace of the best one below `together`.
  double pays = 1e9;
  for (const auto& probe : next.ranked)
    if (probe.betterGuess > 0.0) pays = std::min(pays, probe.effort.value / probe.betterGuess);
  const double together = 60.0 * next.openBits / next.ranked.front().bitsPerMinute / (1.0 - next.bestGuess);
  const double least = std::min(pays, together);
  RepairView cheap, dear;
  cheap.wrongRepair = Seconds(least * 0.999);
  dear.wrongRepair = Seconds(least * 1.001);
  CHECK(nextProbe(isolation, cheap).stop);
  CHECK(nextProbe(isolation, cheap).why == ProbeAdvice::notWorthItsTime);
  CHECK_FALSE(nextProbe(isolation, dear).stop);
  CHECK(nextProbe(isolation, dear).wrongRepair == *dear.wrongRepair);
  // All breaks mended by one repair: nothing is left to choose between but that, a sound line and none of
  // these.
  RepairView one;
  one.groupOf = {0, 1, 2, 3, 3, 3};
  const auto grouped = nextProbe(isolation, one);
  const auto shares = after(prior, {diodeAt("J1.1", std::nullopt)});
  const double broken = shares[jointOfJ] + shares[jointOfU] + shares[track];
  CHECK(grouped.bestGuess == Approx(broken).epsilon(1e-6));
  CHECK(grouped.openBits == Approx(bitsOf({shares[sound], shares[none], broken})).epsilon(1e-5));
}

TEST_CASE("places that nobody reaches are not asked for, and without any there is nothing to ask") {
  const OneResistor line;
  const auto isolation = line.isolation();
  ProbeLimits limits;
  limits.most = 100;
  limits.unreachable = {"J1.1", "U1.1", "pad of U1.1"};
  const auto one = nextProbe(isolation, {}, limits);
  REQUIRE(one.ranked.size() == 1);
  CHECK(isolation.places[one.ranked[0].place].label == "pad of J1.1");
  limits.unreachable.emplace_back("pad of J1.1");
  const auto nothing = nextProbe(isolation, {}, limits);
  CHECK(nothing.ranked.empty());
  CHECK(nothing.stop);
  CHECK(nothing.why == ProbeAdvice::nothingReachable);
  CHECK(nothing.bestGuess == Approx(prior[jointOfJ]));
  limits = {};
  limits.most = 3;
  CHECK(nextProbe(isolation, {}, limits).ranked.size() == 3);
}

TEST_CASE(
    "where readings are uncertain a probe's bits come within a tenth of the exact figure, and not above") {
  DrawnLine drawn;
  const auto a = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(0, 0));
  const auto b = drawn.pinOnLine(drawn.part("U2", PartKind::chip), "1", mm(25, 0));
  drawn.track(a, b, 25);
  const Lookup lookup(drawn.board);
  IsolationInput input{lookup, drawn.line, test::priorsFromData(), test::effortsFromData(), test::handheld()};
  input.knownGood = {{drawn.pins[0], Volts(0.52), Volts(0.005)}};
  input.options.samples = input.options.mostSamples = 200;
  const auto isolation = makeIsolation(input);
  const auto& model = *isolation.model;
  ProbeLimits all;
  all.most = 100;
  const auto next = nextProbe(isolation, {}, all);
  for (const char* label : {"U1.1", "pad of U1.1", "U2.1"}) {
    const auto place = placeCalled(isolation, label);
    const auto probe = std::find_if(next.ranked.begin(), next.ranked.end(), [&](const ProbeProposal& one) {
      return one.place == place && !one.other;
    });
    REQUIRE(probe != next.ranked.end());
    // Half millivolts from -0.1 to 2 V, then OL.
    constexpr std::size_t cells = 4200;
    constexpr double cell = 0.0005;
    std::vector<double> all_(cells + 1, 0.0);
    double within = 0.0;
    for (std::size_t c = 0; c < isolation.classes.size(); ++c) {
      std::vector<double> row(cells + 1, 0.0);
      const bool odd = c == none;
      for (std::size_t k = 200; k < cells; ++k)
        row[k] = (odd ? 0.65 : slips / 2) * cell / 2.0;
      row[cells] = odd ? 0.35 : slips / 2;
      const float* volts = model.voltsAt(c, model.cellOfPlace[place]);
      for (std::size_t s = 0; !odd && s < model.samples.samples; ++s) {
        const double v = static_cast<double>(volts[s]), sigma = diodeSigma(std::min(v, 2.0));
        const double weight = (1 - slips) * model.samples.weight[s];
        row[cells] += weight * 0.5 * std::erfc((2.0 - v) / sigma / std::numbers::sqrt2);
        const auto first = static_cast<std::size_t>(std::max(0.0, (v - 6 * sigma + 0.1) / cell));
        for (std::size_t k = first; k < cells; ++k) {
          const double at = -0.1 + (static_cast<double>(k) + 0.5) * cell;
          if (at > v + 6 * sigma) break;
          row[k] += weight * cell * gauss(at, v, sigma);
        }
      }
      within += isolation.probability[c] * bitsOf(row);
      for (std::size_t k = 0; k <= cells; ++k)
        all_[k] += isolation.probability[c] * row[k];
    }
    INFO(label);
    const double exact = bitsOf(all_) - within;
    CHECK(probe->bits < exact);
    CHECK(probe->bits > 0.9 * exact);
  }
}

TEST_CASE("what of a reading decides whether it is used: its leads, its mode and its meter") {
  OneResistor line;
  const auto ground = line.drawn.addNet("chassis", NetRole::ground);
  const auto earth = line.drawn.pin(line.drawn.part("H1", PartKind::connector), "1", ground);
  const auto elsewhere =
      line.drawn.pin(line.drawn.part("U8", PartKind::chip), "1", line.drawn.addNet("OTHER", NetRole::signal));
  const auto start = line.isolation();
  const auto& d = line.drawn;
  const auto why = [&](const Reading& reading) -> std::optional<SetAsideWhy> {
    const auto now = update(start, reading);
    if (now.setAside.empty()) return std::nullopt;
    CHECK(now.setAside.front().reading == reading);
    CHECK(now.observations.empty());
    return now.setAside.front().why;
  };
  using Why = SetAsideWhy;
  CHECK(why(d.diode("J1.1", 0.5)) == std::nullopt);
  for (const auto& other :
       {ProbePoint{PinId{}, ""}, ProbePoint{PinId{}, "AGND"}, ProbePoint{earth, "H1.1"}}) {
    auto reading = d.diode("J1.1", 0.5);
    reading.other = other;
    CHECK(why(reading) == std::nullopt);
  }
  for (const auto& other :
       {ProbePoint{elsewhere, "GND"}, ProbePoint{PinId{}, "U8.1"}, ProbePoint{PinId{}, "+3V3"}}) {
    auto reading = d.continuity("J1.1", "U1.1", 0.5);
    reading.other = other;
    CHECK(why(reading) == Why::otherLeadElsewhere);
  }
  auto between = d.continuity("J1.1", "U1.1", 0.5);
  CHECK(why(between) == std::nullopt);
  CHECK(why(inMode(between, ReadingMode::diode)) == Why::diodeFromPointToPoint);
  CHECK(why(inMode(between, ReadingMode::ohms)) == std::nullopt);
  CHECK(why(inMode(between, ReadingMode::milliohms)) == std::nullopt);
  between.value = 0.0;
  CHECK(why(between) == std::nullopt);
  between.value = -0.001;
  CHECK(why(between) == Why::negativeResistance);
  const auto toGround = d.diode("J1.1", 470.0);
  CHECK(why(inMode(toGround, ReadingMode::ohms)) == std::nullopt);
  for (const auto mode : {ReadingMode::milliohms, ReadingMode::continuity})
    CHECK(why(inMode(toGround, mode)) == Why::modeToGround);
  for (const auto mode : {ReadingMode::diodeReverse, ReadingMode::volts, ReadingMode::dropUnderCurrent,
                          ReadingMode::temperature})
    CHECK(why(inMode(toGround, mode)) == Why::mode);
  auto byPin = d.diode("as it was called once", 0.5);
  CHECK(why(byPin) == Why::notOnLine);
  byPin.point.pin = d.pins[0];
  CHECK(why(byPin) == std::nullopt);
  CHECK(update(start, byPin).observations.front().place == placeCalled(start, "J1.1"));
  auto nameless = d.diode("", 0.5);
  CHECK(why(nameless) == Why::notOnLine);

  // A cold board reads more: by (V − 1.11 V − 3·kT/q)/T a kelvin, about −2.15 mV/K here (meter_model.h).
  auto cold = d.diode("U1.1", across470 + 0.0215);
  cold.condition.temperature = Celsius(15);
  const double slope = (across470 + 0.0215 - 1.11 - 3 * 8.617333e-5 * 288.15) / 288.15;
  checkShares(update(start, cold), after(prior, {diodeAt("U1.1", across470 + 0.0215 + 10 * slope)}));

  const Lookup lookup(d.board);
  IsolationInput input{lookup, d.line, line.priors, test::effortsFromData(), test::handheld()};
  std::erase_if(input.meter.modes, [](const MeterMode& mode) { return mode.mode == ReadingMode::diode; });
  const auto blind = makeIsolation(input);
  CHECK(update(blind, d.diode("J1.1", 0.5)).setAside.front().why == Why::noDiodeMode);
  CHECK(blind.notices.back().kind == LineNotice::Kind::noDiodeMode);
  CHECK(predictDiode(blind, 0, sound).overLimit == 0.35);
  for (const auto& probe : nextProbe(blind).ranked)
    CHECK(probe.other.has_value());
  std::erase_if(input.meter.modes, [](const MeterMode& mode) { return mode.mode == ReadingMode::ohms; });
  CHECK(update(makeIsolation(input), inMode(toGround, ReadingMode::ohms)).setAside.front().why ==
        Why::modeToGround);
}

TEST_CASE(
    "values known of a line's pins come from boards and by hand, the heaviest part, and not from kinds") {
  DrawnLine drawn;
  const auto connector = drawn.part("J1", PartKind::connector);
  std::vector<NodeIndex> pads;
  for (int i = 1; i <= 7; ++i)
    pads.push_back(drawn.pinOnLine(connector, std::to_string(i), mm(2.0 * i, 0)));
  const Lookup lookup(drawn.board);
  ExpectedTable table;
  const auto put = [&](std::size_t pin, ExpectedFrom from, double overLimit, std::vector<ExpectedHump> humps,
                       std::size_t boardsOverLimit, ReadingSetting setting = {}) {
    Expected expected;
    expected.from = from;
    expected.overLimitShare = overLimit;
    expected.humps = std::move(humps);
    expected.boardsOverLimit = boardsOverLimit;
    table.put({drawn.pins[pin], "J1." + std::to_string(pin + 1)}, setting, expected);
  };
  put(0, ExpectedFrom::boards, 0.001, {{0.999, 0.52, 0.004, 6, 3}}, 0);
  put(1, ExpectedFrom::entered, 0.2, {{0.3, 0.41, 0.003, 6, 2}, {0.5, 0.61, 0.005, 6, 3}}, 1);
  put(2, ExpectedFrom::pinKind, 0.001, {{0.999, 0.52, 0.1, 6, 0}}, 0);
  put(3, ExpectedFrom::boards, 0.6, {{0.4, 0.52, 0.004, 6, 2}}, 3);
  put(4, ExpectedFrom::boards, 1.0, {}, 4);
  ReadingSetting plugged;
  plugged.condition.plugged = {"display"};
  put(5, ExpectedFrom::boards, 0.001, {{0.999, 0.55, 0.004, 6, 3}}, 0, plugged);
  put(6, ExpectedFrom::boards, 0.5, {{0.5, 0.53, 0.004, 6, 3}}, 3); // as heavy: the value counts
  CHECK(knownGoodOf(lookup, drawn.line, table) ==
        std::vector<KnownGood>{{drawn.pins[0], Volts(0.52), Volts(0.004), false},
                               {drawn.pins[1], Volts(0.61), Volts(0.005), true},
                               {drawn.pins[3], std::nullopt, Volts(), false},
                               {drawn.pins[4], std::nullopt, Volts(), false},
                               {drawn.pins[6], Volts(0.53), Volts(0.004), true}});
  CHECK(knownGoodOf(lookup, drawn.line, table, plugged.condition) ==
        std::vector<KnownGood>{{drawn.pins[5], Volts(0.55), Volts(0.004), false}});
}
