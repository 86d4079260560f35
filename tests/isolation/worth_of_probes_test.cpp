#include <algorithm>

#include "isolation/model.h"
#include "isolation/statistics.h"
#include "isolation/weighing.h"
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

constexpr double tenth = 1e-4; // V, of the exact figures' rows

/// Chances of each tenth of a millivolt from -0.1 V to the limit, then of OL: known voltages, or a share of
/// all that there may be.
std::vector<double> diodeRow(double value, double overLimit, double evenly) {
  constexpr std::size_t cells = 21000;
  std::vector<double> row(cells + 1, 0.0);
  const double slipped = slips / 2;
  for (std::size_t k = 0; k < cells; ++k) {
    const double volts = -0.1 + (static_cast<double>(k) + 0.5) * tenth;
    if (value > 0.0)
      row[k] += (1 - slips) * value * tenth * overCommonError([&](double off) {
                  return normalDensity(volts, across470 + off, freshSigma);
                });
    if (volts > 0.0) row[k] += ((1 - slips) * evenly + slipped) * tenth / 2.0;
  }
  row[cells] = (1 - slips) * overLimit + slipped;
  return row;
}

/// What each class says of a diode reading, after OL at J1.1.
std::vector<std::vector<double>> diodeOutcomes(const std::string& place) {
  const auto whole = diodeRow(1.0, 0.0, 0.0), parted = diodeRow(0.0, 1.0, 0.0);
  // None of these has read OL at J1.1, and half the time the whole line reads alike; a slip may have been it.
  const double found = 0.35 * (1 - slips / 2), missed = 0.65 * slips / 2;
  const double again = found / (found + missed);
  const double overLimit = place == "J1.1" ? again : 0.5 * again + 0.5 * 0.35;
  const auto odd = diodeRow(0.0, overLimit, 1.0 - overLimit);
  std::vector<std::vector<double>> out;
  for (std::size_t c = 0; c < 6; ++c)
    out.push_back(c == none ? odd : isParted(c, place) ? parted : whole);
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
  CHECK(next.bestGuess == Approx(best).epsilon(1e-4));
  CHECK(next.openBits == Approx(bitsOf({shares.begin(), shares.end()})).epsilon(1e-3));
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
      // Bins are wider, most of all where few readings are expected: they tell a little less.
      CHECK(probe.bits < expectedBits(shares, says) + 1e-4);
      CHECK(probe.bits > 0.998 * expectedBits(shares, says) - 0.02);
      CHECK(probe.betterGuess ==
            Approx(std::max(0.0, expectedGuess(shares, says) - best)).epsilon(5e-3).margin(1e-4));
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
    CHECK(probe.bits == Approx(expectedBits(shares, says)).epsilon(1e-3).margin(1e-5));
    CHECK(probe.betterGuess ==
          Approx(std::max(0.0, expectedGuess(shares, says) - best)).epsilon(1e-3).margin(1e-5));
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
  CHECK(grouped.bestGuess == Approx(broken).epsilon(1e-4));
  CHECK(grouped.openBits == Approx(bitsOf({shares[sound], shares[none], broken})).epsilon(1e-3));
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
  const auto isolation = drawn.isolation({{drawn.pins[0], Volts(0.52), Volts(0.005)}});
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
    std::vector<double> together(cells + 1, 0.0);
    double within = 0.0;
    for (std::size_t c = 0; c < isolation.classes.size(); ++c) {
      std::vector<double> row(cells + 1, 0.0);
      for (std::size_t k = 200; k < cells; ++k)
        row[k] = slips / 2 * cell / 2.0;
      const auto& foreseen = foreseenAt(isolation, c, model.cellOfPlace[place]);
      row[cells] = slips / 2 + (1 - slips) * static_cast<double>(foreseen.overLimit);
      for (std::size_t i = 0; i < foreseen.share.size(); ++i) {
        const double v = 1e-3 * (static_cast<double>(foreseen.first + i) + 0.5), sigma = model.repeatSigma;
        const double weight = (1 - slips) * static_cast<double>(foreseen.share[i]);
        row[cells] += weight * normalBelow((v - 2.0) / sigma);
        const auto first = static_cast<std::size_t>(std::max(0.0, (v - 6 * sigma + 0.1) / cell));
        for (std::size_t k = first; k < cells; ++k) {
          const double at = -0.1 + (static_cast<double>(k) + 0.5) * cell;
          if (at > v + 6 * sigma) break;
          row[k] += weight * cell * normalDensity(at, v, sigma);
        }
      }
      within += isolation.probability[c] * bitsOf(row);
      for (std::size_t k = 0; k <= cells; ++k)
        together[k] += isolation.probability[c] * row[k];
    }
    INFO(label);
    const double exact = bitsOf(together) - within;
    CHECK(probe->bits < exact);
    CHECK(probe->bits > 0.9 * exact);
  }
}
