#include <cmath>
#include <limits>

#include <boost/math/distributions/students_t.hpp>
#include <catch2/catch.hpp>

#include "drawn_line.h"
#include "isolation/likelihood.h"
#include "isolation/posterior.h"
#include "isolation/prediction.h"
#include "isolation/statistics.h"

// Shares, and the readings that stand against a sound line, on isolations put together by hand.

using namespace netmend;
using netmend::test::DrawnLine;
using netmend::test::mm;

TEST_CASE("shares are masses over their sum, also where all of them are next to nothing") {
  for (const double scale : {0.0, -900.0, 900.0}) {
    Isolation isolation;
    isolation.model = std::make_shared<IsolationModel>();
    isolation.logMass = {std::log(3.0) + scale, std::log(1.0) + scale, std::log(4.0) + scale};
    normalise(isolation);
    REQUIRE(isolation.probability.size() == 3);
    CHECK(isolation.probability[0] == Approx(0.375));
    CHECK(isolation.probability[1] == Approx(0.125));
    CHECK(isolation.probability[2] == Approx(0.5));
    CHECK(posteriorOf(isolation) == isolation.probability);
  }
}

TEST_CASE("distributions are those of the handbooks") {
  CHECK(logSum(std::vector<double>{}) == -std::numeric_limits<double>::infinity());
  CHECK(logSum({-1000.0, -1000.0}) == Approx(-1000.0 + std::log(2.0)));
  CHECK(normalBelow(0.0) == 0.5);
  CHECK(normalBelow(1.96) == Approx(0.9750).margin(5e-5)); // any table of the normal distribution
  // Boost.Math, https://www.boost.org/doc/libs/release/libs/math: Student's t with five degrees of freedom.
  const boost::math::students_t_distribution<double> five(5);
  for (const double z : {0.0, 0.5, -1.0, 2.571, 20.0}) {
    INFO(z);
    CHECK(studentDensity(0.45 + 0.003 * z, 0.45, 0.003) == Approx(pdf(five, z) / 0.003).epsilon(1e-12));
  }
  CHECK(cdf(five, 2.571) == Approx(0.975).margin(5e-5)); // any table of Student's t
}

TEST_CASE("an OL stands against a sound line where good boards read a value, until one is read there") {
  DrawnLine drawn;
  const auto j = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0));
  const auto u = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(20, 0));
  drawn.track(j, u, 20);
  const auto standing = [&](std::vector<KnownGood> good, const std::vector<Reading>& readings) {
    return standingOverLimits(update(drawn.isolation(std::move(good)), readings));
  };
  const KnownGood atJ{drawn.pins[0], Volts(0.52), Volts(0.005)},
      atU{drawn.pins[1], Volts(0.53), Volts(0.005)};
  const auto open = drawn.diode("J1.1", std::nullopt), value = drawn.diode("J1.1", 0.52);
  const auto once = standing({atJ}, {drawn.diode("U1.1", 0.52), open});
  REQUIRE(once.size() == 1);
  CHECK(once[0].observation == 1);
  CHECK(once[0].good == Volts(0.52));
  CHECK_FALSE(once[0].repeated);
  const auto twice = standing({atJ}, {open, open});
  REQUIRE(twice.size() == 1);
  CHECK(twice[0].observation == 0);
  CHECK(twice[0].repeated);
  CHECK(standing({atJ}, {open, value}).empty());
  const auto again = standing({atJ}, {open, open, value, open});
  REQUIRE(again.size() == 1);
  CHECK(again[0].observation == 3);
  CHECK_FALSE(again[0].repeated);
  CHECK(standing({atU}, {open}).empty());
  CHECK(standing({atJ}, {drawn.diode("pad of J1.1", std::nullopt)}).empty());
  CHECK(standing({atJ}, {drawn.continuity("J1.1", "U1.1", std::nullopt)}).empty());
  auto ohms = open;
  ohms.mode = ReadingMode::ohms;
  CHECK(standing({atJ}, {ohms}).empty());
  CHECK(standing({{drawn.pins[0], std::nullopt}}, {open}).empty());
  CHECK(standing({{drawn.pins[0], Volts(2.0), Volts(0.005)}}, {open}).empty()); // OL by the meter's limit
  CHECK(standing({{drawn.pins[0], Volts(1.99), Volts(0.005)}}, {open}).size() == 1);
  CHECK(standing({{drawn.pins[0], Volts(0.52), Volts(0.005), true}}, {open}).empty());
  const auto both = standing({atU, atJ}, {open, drawn.diode("U1.1", std::nullopt), open});
  REQUIRE(both.size() == 2);
  CHECK(both[0].observation == 1);
  CHECK(both[1].repeated);

  // Against sound only while nothing else is likelier; the one not read again comes first.
  auto isolation = update(drawn.isolation({atJ, atU}), {open, open, drawn.diode("U1.1", std::nullopt)});
  std::fill(isolation.logMass.begin(), isolation.logMass.end(), -5.0);
  isolation.logMass[0] = -4.0;
  REQUIRE(againstSound(isolation));
  CHECK(againstSound(isolation)->observation == 2);
  isolation.logMass[1] = -4.0; // as likely: the first of them leads
  CHECK(againstSound(isolation));
  isolation.logMass[1] = -3.9;
  CHECK_FALSE(againstSound(isolation));
  normalise(isolation);
  CHECK(isolation.probability[0] == 0.0);
  double sum = 0.0;
  for (const double p : isolation.probability)
    sum += p;
  CHECK(sum == Approx(1.0));
  isolation.observations.pop_back();
  isolation.logMass[1] = -5.0;
  CHECK(againstSound(isolation)->observation == 0); // read again and still alone
}

TEST_CASE("where it is none of these for certain, nothing is predicted") {
  DrawnLine drawn;
  drawn.track(drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0)),
              drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(20, 0)), 20);
  auto isolation = drawn.isolation();
  for (std::size_t c = 0; c < isolation.logMass.size(); ++c)
    isolation.logMass[c] = c == 1 ? 0.0 : -1e4;
  CHECK(predictDiode(isolation, 0) == Prediction{});
}

TEST_CASE(
    "of what a meter may be off by, hand and display are each reading's own, the rest the whole job's") {
  DrawnLine drawn;
  drawn.track(drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0)),
              drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(20, 0)), 20);
  auto priors = test::priorsFromData();
  priors.readingSpread = Volts(0.002);
  const auto isolation = drawn.isolation({}, priors, test::effortsFromData());
  const auto& model = *isolation.model;
  const double root3 =
      std::sqrt(3.0); // handheld-4000: ±(1 % + 3 mV) at half a volt, 1 mV digits, 0.2 Ω of leads
  CHECK(model.repeatSigma == Approx(std::hypot(0.0005 / root3, 0.002)));
  double mean = 0.0, square = 0.0;
  for (const auto& error : model.errors) {
    mean += error.weight * error.offset;
    square += error.weight * error.offset * error.offset;
  }
  const double common = std::hypot(0.008 / root3, 0.0002 / root3);
  CHECK(mean == Approx(0.0).margin(1e-4));
  CHECK(std::sqrt(square - mean * mean) == Approx(common).epsilon(0.02));
}
