#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "drawn_line.h"
#include "isolation/likelihood.h"
#include "isolation/posterior.h"
#include "isolation/prediction.h"
#include "isolation/statistics.h"

// Shares, their sampling error and the readings that stand against a sound line, on isolations put together
// by hand: few classes, few samples.

using namespace netmend;
using netmend::test::DrawnLine;
using netmend::test::mm;

namespace {

/// Classes of these masses; each row of weights is a class's samples.
Isolation madeOf(const std::vector<double>& mass, const std::vector<std::vector<double>>& weights) {
  auto model = std::make_shared<IsolationModel>();
  model->samples.samples = weights.front().size();
  Isolation out;
  for (std::size_t c = 0; c < mass.size(); ++c) {
    out.classes.emplace_back();
    out.logMass.push_back(std::log(mass[c]));
    out.weight.insert(out.weight.end(), weights[c].begin(), weights[c].end());
  }
  out.model = std::move(model);
  return out;
}

std::vector<double> even(std::size_t over, std::size_t of) {
  std::vector<double> out(of, 0.0);
  std::fill(out.begin(), out.begin() + static_cast<std::ptrdiff_t>(over), 1.0 / static_cast<double>(over));
  return out;
}

} // namespace

TEST_CASE("shares are masses over their sum, and their error is that of a ratio of means") {
  auto isolation = madeOf({3.0, 1.0}, {{0.5, 0.5, 0.0, 0.0}, {0.1, 0.2, 0.3, 0.4}});
  normalise(isolation);
  REQUIRE(isolation.probability.size() == 2);
  CHECK(isolation.probability[0] == Approx(0.75));
  CHECK(isolation.probability[1] == Approx(0.25));
  // t(s) = 0.75·w0(s) + 0.25·w1(s); of each class Σ (p·(w(s) − t(s)))², the larger of both.
  const double t[4] = {0.4, 0.425, 0.075, 0.1}, w0[4] = {0.5, 0.5, 0, 0}, w1[4] = {0.1, 0.2, 0.3, 0.4};
  double first = 0.0, second = 0.0;
  for (int s = 0; s < 4; ++s) {
    first += std::pow(0.75 * (w0[s] - t[s]), 2);
    second += std::pow(0.25 * (w1[s] - t[s]), 2);
  }
  CHECK(isolation.samplingError == Approx(std::sqrt(std::max(first, second))).epsilon(1e-12));
  // A class below a ten-thousandth moves no error: then the other's weights are held against its own alone.
  const auto errorWith = [](double share) {
    auto lonely = madeOf({1.0 - share, share}, {{1.0, 0.0}, {0.0, 1.0}});
    normalise(lonely);
    return lonely.samplingError;
  };
  CHECK(errorWith(0.99e-4) == Approx(0.99e-4 * (1 - 0.99e-4)).epsilon(1e-6));
  CHECK(errorWith(1.01e-4) == Approx(std::sqrt(2.0) * 1.01e-4 * (1 - 1.01e-4)).epsilon(1e-6));
  CHECK(logSum(std::vector<double>{}) == -std::numeric_limits<double>::infinity());
  CHECK(logSum({-1000.0, -1000.0}) == Approx(-1000.0 + std::log(2.0)));
  CHECK(normalBelow(0.0) == 0.5);
  CHECK(normalBelow(1.96) == Approx(0.9750).margin(5e-5)); // any table of the normal distribution
}

TEST_CASE(
    "more samples are wanted while a share is off by a hundredth, or a likely one rests on fewer than 100") {
  const auto wants = [](double share, std::size_t effective, double error) {
    auto isolation = madeOf({1.0 - share, share}, {even(400, 400), even(effective, 400)});
    isolation.probability = {1.0 - share, share};
    isolation.samplingError = error;
    return wantsMoreSamples(isolation);
  };
  CHECK_FALSE(wants(0.5, 400, 0.0099));
  CHECK_FALSE(wants(0.5, 400, 0.01));
  CHECK(wants(0.5, 400, 0.0101));
  CHECK_FALSE(wants(0.5, 101, 0.0));
  CHECK(wants(0.5, 99, 0.0));
  CHECK(wants(0.02, 99, 0.0));
  CHECK_FALSE(wants(0.0199, 99, 0.0));
}

TEST_CASE(
    "samples are drawn until shares are certain, as many as the error asks for and no more than may be") {
  DrawnLine drawn;
  const auto tp = drawn.testPad("TP1", mm(20, 0));
  const auto a = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "A3", mm(0, 0), Access::underPart);
  const auto b = drawn.pinOnLine(drawn.part("U2", PartKind::chip), "B9", mm(40, 0), Access::underPart);
  drawn.track(tp, a, 20);
  drawn.track(tp, b, 20);
  const Lookup lookup(drawn.board);
  IsolationInput input{lookup, drawn.line, test::priorsFromData(), test::effortsFromData(), test::handheld()};
  input.knownGood = {{drawn.pins[0], Volts(0.45), Volts(0.005)}};
  const auto samplesOf = [&](std::size_t first, std::size_t most, double volts) {
    input.options.samples = first;
    input.options.mostSamples = most;
    const auto isolation = update(makeIsolation(input), drawn.diode("TP1", volts));
    CHECK(isolation.weight.size() == isolation.classes.size() * isolation.model->samples.samples);
    CHECK(isolation.observations.size() == 1);
    return isolation.model->samples.samples;
  };
  CHECK(samplesOf(256, 256, 0.57) == 256);
  CHECK(samplesOf(100, 150, 0.57) == 150);
  CHECK(samplesOf(10, 64, 0.57) == 64);
  CHECK(samplesOf(2048, 131072, 0.45) == 8192); // four times as many
  const auto many = samplesOf(256, 131072, 0.57);
  CHECK(many >= 1024);
  CHECK(many <= 131072);
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

TEST_CASE("the spread of a diode reading is looked up by the millivolt, up to the meter's limit") {
  const auto meter = test::handheld();
  IsolationModel model;
  model.sigmaByMillivolt = sigmaTable(meter, Volts(0.002), Volts(2.0));
  REQUIRE(model.sigmaByMillivolt.size() > 2001);
  const auto sigma = [](double volts) {
    return std::hypot((0.01 * volts + 0.003) / std::sqrt(3.0), 0.0005 / std::sqrt(3.0),
                      0.0002 / std::sqrt(3.0));
  };
  CHECK(voltsSigma(model, 0.4505) == Approx(std::hypot(sigma(0.450), 0.002)).epsilon(1e-12));
  CHECK(voltsSigma(model, -1.0) == Approx(std::hypot(sigma(0.0), 0.002)).epsilon(1e-12));
  CHECK(voltsSigma(model, 2.0) == Approx(std::hypot(sigma(2.0), 0.002)).epsilon(1e-12));
  CHECK(voltsSigma(model, 9.0) == voltsSigma(model, 2.0));
}
