#include <algorithm>

#include "isolation/model.h"
#include "one_resistor.h"

// What a probe is worth, by hand (one_resistor.h).

using namespace netmend;
using namespace netmend::test;

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
