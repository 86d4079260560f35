#include <cmath>

#include "netmend/probing/comparison.h"
#include "probing/spread.h"
#include "support.h"
#include "support/kept_figures.h"

// What good boards are expected to read, by hand: docs/methods/probing.md.

using namespace netmend;
using test::at;
using test::figure;

namespace {

PinKindData kindsWith(double spread, double dof, ReadingMode mode = ReadingMode::diode) {
  PinKindData kinds;
  kinds.byKind.resize(pinKindCount);
  PinKindDefault unknown;
  unknown.mode = mode;
  unknown.boardSpread = spread;
  unknown.boardSpreadDof = dof;
  kinds.byKind[0] = {unknown};
  return kinds;
}

ExpectedOptions optionsWith(double share = 0.0002, double weight = 5000, double splitAt = 8) {
  ExpectedOptions options;
  options.variants = {share, weight, splitAt};
  return options;
}

Expected onlyOne(const std::vector<Walk>& walks, const PinKindData& kinds, const ExpectedOptions& options,
                 const std::vector<MeterProfile>& meters = {}) {
  const auto table = expectedFromWalks(walks, nullptr, kinds, meters, options);
  REQUIRE(table.size() == 1);
  return table.at(0);
}

/// Chance of OL at the next board after k of n, by Bayes: always alike, or with `share` any chance of OL.
double overLimitAfter(double n, double k, double share) {
  if (k > 0 && k < n) return (k + 1) / (n + 2); // Laplace's rule of succession
  // Of all boards alike: ∫ p^n dp = 1/(n+1) of the mixed ones read so as well, and half of the pure ones.
  const double mixed = share / (n + 1), pure = (1 - share) / 2;
  const double other = mixed / (mixed + pure) / (n + 2);
  return k > 0 ? 1 - other : other;
}

} // namespace

TEST_CASE("one board's value is expected with the spread of its kind, wider by what one board leaves open") {
  const auto e = onlyOne(test::boardsReading({0.45}), kindsWith(0.005, 6), optionsWith());
  CHECK(e.mode == ReadingMode::diode);
  CHECK(e.from == ExpectedFrom::boards);
  CHECK(e.kind == PinKind::unknown);
  CHECK(e.boards == 1);
  CHECK(e.boardsOverLimit == 0);
  CHECK(e.seen == ValueInterval{0.45, 0.45});
  REQUIRE(e.humps.size() == 1);
  const auto overLimit = overLimitAfter(1, 0, 0.0002); // one board tells nothing of how common variants are
  CHECK(e.overLimitShare == Approx(overLimit).epsilon(1e-12));
  CHECK(e.humps[0].weight == Approx(1 - overLimit).epsilon(1e-12));
  CHECK(e.humps[0].centre == 0.45);
  CHECK(e.humps[0].scale == Approx(0.005 * std::sqrt(2.0)).epsilon(1e-12));
  CHECK(e.humps[0].dof == Approx(6.0));
  CHECK(e.humps[0].boards == 1.0);
  const double k = toleranceFactorExact(1, 6, {});
  REQUIRE(e.shown.size() == 1);
  CHECK(e.shown[0].lowest == Approx(0.45 - k * 0.005).epsilon(1e-12));
  CHECK(e.shown[0].highest == Approx(0.45 + k * 0.005).epsilon(1e-12));
  CHECK_FALSE(e.onlyOverLimit());
  CHECK_FALSE(e.expectsOverLimit());
}

TEST_CASE("a resistance is expected on its scale of ratios, and never tighter than what its meter hides") {
  const auto ohms = onlyOne(test::boardsReading({470.0}, ReadingMode::ohms),
                            kindsWith(0.02, 4, ReadingMode::ohms), optionsWith());
  CHECK(ohms.humps[0].centre == Approx(470.0).epsilon(1e-9));
  CHECK(ohms.humps[0].scale == Approx(0.02 * std::sqrt(2.0)).epsilon(1e-12));
  const double k = toleranceFactorExact(1, 4, {});
  CHECK(ohms.shown[0].lowest == Approx(std::sinh(std::asinh(470.0) - k * 0.02)).epsilon(1e-9));
  CHECK(ohms.shown[0].highest == Approx(std::sinh(std::asinh(470.0) + k * 0.02)).epsilon(1e-9));
  // A meter that shows 1 kΩ a count: half a count to either side, as a rectangle, by the scale's slope.
  MeterProfile coarse;
  coarse.id = "bench-200000";
  coarse.modes = {{ReadingMode::ohms, {{1e6, 1000.0, 0.0, 0.0}}, {}, {}, {}}};
  const auto hidden = onlyOne(test::boardsReading({4700.0}, ReadingMode::ohms),
                              kindsWith(0.02, 4, ReadingMode::ohms), optionsWith(), {coarse});
  const double least = 500.0 / std::sqrt(3.0) / std::hypot(4700.0, 1.0);
  CHECK(hidden.humps[0].scale == Approx(least * std::sqrt(2.0)).epsilon(1e-9));
  // In a mode that the data does not know: two per cent, known as by two more boards.
  const auto unknown =
      onlyOne(test::boardsReading({470.0}, ReadingMode::ohms), kindsWith(0.005, 6), optionsWith());
  CHECK(unknown.humps[0].scale == Approx(0.02 * std::sqrt(2.0)).epsilon(1e-12));
  CHECK(unknown.humps[0].dof == Approx(2.0));
}

TEST_CASE("the chance of OL is that of Bayes after k of n boards, and variants are as common as walks show") {
  const auto shareOf = [](const std::vector<std::optional<double>>& boards, double share, double weight) {
    return onlyOne(test::boardsReading(boards), kindsWith(0.005, 6), optionsWith(share, weight))
        .overLimitShare;
  };
  const std::optional<double> ol;
  CHECK(shareOf({ol}, 0.1, 10) == Approx(overLimitAfter(1, 1, 0.1)).epsilon(1e-12));
  CHECK(shareOf({0.45}, 0.1, 10) == Approx(overLimitAfter(1, 0, 0.1)).epsilon(1e-12));
  // A point read on two and more boards counts as one more: (0.1·10 + 0)/11, or (0.1·10 + 1)/11.
  CHECK(shareOf({ol, ol}, 0.1, 10) == Approx(overLimitAfter(2, 2, 1.0 / 11)).epsilon(1e-12));
  CHECK(shareOf({0.45, 0.45, 0.45}, 0.1, 10) == Approx(overLimitAfter(3, 0, 1.0 / 11)).epsilon(1e-12));
  CHECK(shareOf({ol, 0.45, 0.45}, 0.1, 10) == Approx(2.0 / 5).epsilon(1e-12));
  CHECK(shareOf({ol, ol, 0.45}, 0.1, 10) == Approx(3.0 / 5).epsilon(1e-12));
  // Two points, one of them mixed: (1 + 1)/12 for the other.
  std::vector<Walk> walks;
  for (const auto& [first, second] :
       {std::pair(ol, std::optional(0.45)), std::pair(std::optional(0.6), std::optional(0.45))})
    walks.push_back(test::walkOf({at(1, first), at(2, second)}, Specimen::good));
  const auto table = expectedFromWalks(walks, nullptr, kindsWith(0.005, 6), {}, optionsWith(0.1, 10));
  CHECK(table.find(at(1, 0.5))->overLimitShare == Approx(0.5));
  CHECK(table.find(at(2, 0.5))->overLimitShare == Approx(overLimitAfter(2, 0, 2.0 / 12)).epsilon(1e-12));
  CHECK(table.find(at(1, 0.5))->boardsOverLimit == 1);
  CHECK(table.find(at(1, 0.5))->seen == ValueInterval{0.6, 0.6});
  CHECK(onlyOne(test::boardsReading({ol, ol}), kindsWith(0.005, 6), optionsWith()).onlyOverLimit());
  CHECK_FALSE(onlyOne(test::boardsReading({ol, ol}), kindsWith(0.005, 6), optionsWith()).seen);
}

TEST_CASE("boards part into variants where neighbours lie more than so many spreads apart") {
  // Three boards of one value each part into humps of one board: no spread of their own, the kind's is left.
  const auto humps = [](double apart) {
    const auto e =
        onlyOne(test::boardsReading({0.45, 0.45 + apart}), kindsWith(0.005, 6), optionsWith(0.0002, 5000, 8));
    return e.humps.size();
  };
  CHECK(humps(0.0399) == 1);
  CHECK(humps(0.0401) == 2);
  const auto e = onlyOne(test::boardsReading({0.60, 0.45, 0.75}), kindsWith(0.005, 6), optionsWith());
  REQUIRE(e.humps.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(e.humps[i].centre == Approx(0.45 + 0.15 * static_cast<double>(i)));
    CHECK(e.humps[i].weight == Approx((1 - e.overLimitShare) / 3));
    CHECK(e.humps[i].scale == Approx(0.005 * std::sqrt(2.0)).epsilon(1e-9));
    CHECK(e.humps[i].boards == 1.0);
  }
  CHECK(e.seen == ValueInterval{0.45, 0.75});
}

TEST_CASE(
    "what is apart is measured by what is usual among five points or more of a kind, else by the data") {
  // Four boards 50 mV apart, at a kind whose boards differ by 5 mV: variants, unless all its points do so.
  const auto humps = [](int points) {
    std::vector<Walk> walks;
    for (int board = 0; board < 4; ++board) {
      std::vector<Reading> readings;
      for (int point = 0; point < points; ++point)
        readings.push_back(at(point, 0.4 + 0.05 * board));
      walks.push_back(test::walkOf(readings, Specimen::good));
    }
    const auto table = expectedFromWalks(walks, nullptr, kindsWith(0.005, 6), {}, optionsWith());
    REQUIRE(table.size() == static_cast<std::size_t>(points));
    return table.at(0).humps.size();
  };
  CHECK(humps(4) == 4);
  CHECK(humps(5) == 1);
}

TEST_CASE("only settled or unsaid readings of good boards count, the latest of each board, matched as they "
          "can be") {
  auto walks = test::boardsReading({0.40, 0.45, 0.50, 0.55});
  walks[0].specimen = Specimen::faulty;
  walks[1].readings.front().settling = Settling::rising;
  walks[1].readings.push_back(at(1, 0.46));
  walks[2].readings.push_back(at(1, 0.47));
  walks[3].specimen = Specimen::unknown;
  const auto e = onlyOne(walks, kindsWith(0.005, 6), optionsWith());
  CHECK(e.boards == 2);
  CHECK(e.seen == ValueInterval{0.46, 0.47});
  // What was entered by hand counts whatever the specimen, and from another board description by label only.
  EnteredExpectation entry;
  entry.point = {PinId(7), "J1.2"};
  entry.other = {PinId(8), "GND"};
  entry.lowest = 0.3;
  entry.highest = 0.5;
  Walk foreign = test::walkOf({}, Specimen::unknown);
  foreign.boardUuid = "elsewhere";
  foreign.entered = {entry};
  walks.push_back(foreign);
  auto table = expectedFromWalks(walks, nullptr, kindsWith(0.005, 6), {}, optionsWith());
  REQUIRE(table.size() == 2);
  CHECK_FALSE(table.points()[1].point.pin);
  CHECK_FALSE(table.points().setting(table.points()[1].setting).other.pin);
  CHECK(table.at(1).from == ExpectedFrom::entered);
  walks.back().boardUuid.clear();
  table = expectedFromWalks(walks, nullptr, kindsWith(0.005, 6), {}, optionsWith());
  CHECK(table.points()[1].point.pin == PinId(7));
  CHECK(table.boardUuid.empty());
  // Readings of another description lose their pins too.
  auto own = at(1, 0.45), other = at(1, 0.46);
  own.point.pin = PinId(3);
  other.point.pin = PinId(4);
  other.other.pin = PinId(9);
  auto mine = test::walkOf({own}, Specimen::good), theirs = test::walkOf({other}, Specimen::good);
  mine.boardUuid = "a";
  theirs.boardUuid = "b";
  const auto both =
      expectedFromWalks(std::vector{mine, theirs}, nullptr, kindsWith(0.005, 6), {}, optionsWith());
  REQUIRE(both.size() == 1);
  CHECK(both.at(0).boards == 2);
  CHECK(both.points()[0].point.pin == PinId(3));
  CHECK(both.boardUuid == "a");
}

TEST_CASE("readings of a cold and of a warm board are expected at 25 °C") {
  // At 45 °C a drop of 0.40 V: (0.40 − 1.11 − 3·kT/q)/T a kelvin, twenty kelvins down.
  auto walks = test::boardsReading({0.40});
  walks[0].readings[0].condition.temperature = Celsius(45);
  const double slope = (0.40 - 1.11 - 3 * 8.617333262e-5 * 318.15) / 318.15;
  CHECK(onlyOne(walks, kindsWith(0.005, 6), optionsWith()).humps[0].centre ==
        Approx(0.40 - 20 * slope).epsilon(1e-9));
  // Below 0.1 V no junction conducts; from 0.3 V on one does; between them by share.
  Reading reading = walks[0].readings[0];
  const auto shift = [&](double drop, ReadingMode mode = ReadingMode::diode) {
    reading.value = drop;
    reading.mode = mode;
    return *valueAtBenchTemperature(reading) - drop;
  };
  const auto whole = [](double drop) { return -20 * (drop - 1.11 - 3 * 8.617333262e-5 * 318.15) / 318.15; };
  CHECK(shift(0.05) == 0.0);
  CHECK(shift(0.10) == 0.0);
  CHECK(shift(0.15) == Approx(0.25 * whole(0.15)).epsilon(1e-9));
  CHECK(shift(0.20) == Approx(0.50 * whole(0.20)).epsilon(1e-9));
  CHECK(shift(0.30) == Approx(whole(0.30)).epsilon(1e-9));
  CHECK(shift(0.60) == Approx(whole(0.60)).epsilon(1e-9));
  CHECK(shift(0.60, ReadingMode::diodeReverse) == Approx(whole(0.60)).epsilon(1e-9));
  CHECK(shift(0.60, ReadingMode::volts) == 0.0);
  reading.condition.temperature.reset();
  CHECK(shift(0.60) == 0.0);
  reading.value.reset();
  CHECK_FALSE(valueAtBenchTemperature(reading));
}

TEST_CASE("the comparison scale turns from differences to ratios where each mode says") {
  const std::vector<std::pair<ReadingMode, double>> turns{
      {ReadingMode::diode, 0},   {ReadingMode::diodeReverse, 0},        {ReadingMode::temperature, 0},
      {ReadingMode::ohms, 1},    {ReadingMode::continuity, 1},          {ReadingMode::milliohms, 0.001},
      {ReadingMode::volts, 0.1}, {ReadingMode::dropUnderCurrent, 0.001}};
  for (const auto& [mode, turn] : turns)
    for (const double value : {-0.3, 0.0, 0.0005, 0.45, 470.0}) {
      const double wanted = turn > 0 ? std::asinh(value / turn) : value;
      CHECK(toComparison(mode, value) == Approx(wanted).epsilon(1e-12));
      CHECK(fromComparison(mode, wanted) == Approx(value).epsilon(1e-9).margin(1e-15));
      CHECK(comparisonSlope(mode, value) ==
            Approx(turn > 0 ? 1 / std::sqrt(value * value + turn * turn) : 1.0).epsilon(1e-12));
    }
}

TEST_CASE("what was entered by hand is a normal distribution with 99 % between its ends") {
  EnteredExpectation entry;
  entry.mode = ReadingMode::ohms;
  entry.lowest = 100.0;
  entry.highest = 400.0;
  const auto e = expectedFromEntry(entry, PinKind::supply);
  CHECK(e.mode == ReadingMode::ohms);
  CHECK(e.from == ExpectedFrom::entered);
  CHECK(e.kind == PinKind::supply);
  CHECK(e.overLimitShare == 2e-5);
  CHECK(e.shown == std::vector<ValueInterval>{{100.0, 400.0}});
  REQUIRE(e.humps.size() == 1);
  CHECK(e.humps[0].weight == 1 - 2e-5);
  const double low = std::asinh(100.0), high = std::asinh(400.0);
  CHECK(e.humps[0].centre == Approx(std::sinh((low + high) / 2)).epsilon(1e-12));
  // 99 % of a normal lie within 2.5758 standard deviations (any table of the normal distribution).
  CHECK(e.humps[0].scale == Approx((high - low) / 2 / 2.5758).epsilon(1e-12));
  CHECK(e.humps[0].dof == 1e6);
  CHECK(e.humps[0].boards == 0.0);
  entry.overLimit = true;
  const auto open = expectedFromEntry(entry, PinKind::signal);
  CHECK(open.overLimitShare == 1 - 2e-5);
  CHECK(open.humps.empty());
  CHECK(open.shown.empty());
  CHECK(open.onlyOverLimit());
  CHECK(open.expectsOverLimit());
}

TEST_CASE("a kind's default is expected as the data has it, and its rare parts are not shown") {
  PinKindData kinds = kindsWith(0.005, 6, ReadingMode::ohms);
  auto& data = kinds.byKind[0][0];
  CHECK_FALSE(expectedFromKind(PinKind::unknown, ReadingMode::ohms, kinds)); // only a spread
  CHECK_FALSE(expectedFromKind(PinKind::unknown, ReadingMode::diode, kinds));
  data.overLimitShare = 0.02;
  data.humps = {{0.9601, 470.0, 0.1, 6, 0}, {0.0099, 10.0, 0.2, 6, 0}, {0.01, 20.0, 0.2, 6, 0}};
  const auto e = expectedFromKind(PinKind::unknown, ReadingMode::ohms, kinds);
  REQUIRE(e);
  CHECK(e->mode == ReadingMode::ohms);
  CHECK(e->from == ExpectedFrom::pinKind);
  CHECK(e->kind == PinKind::unknown);
  CHECK(e->overLimitShare == 0.02);
  CHECK(e->humps == data.humps);
  CHECK(e->boards == 0);
  REQUIRE(e->shown.size() == 2);
  CHECK(e->shown[0].lowest == Approx(std::sinh(std::asinh(470.0) - 0.2)));
  CHECK(e->shown[0].highest == Approx(std::sinh(std::asinh(470.0) + 0.2)));
  CHECK(e->shown[1].lowest == Approx(std::sinh(std::asinh(20.0) - 0.4)));
  CHECK(e->expectsOverLimit());
  data.overLimitShare = 0.01;
  CHECK_FALSE(expectedFromKind(PinKind::unknown, ReadingMode::ohms, kinds)->expectsOverLimit());
  for (const auto& [from, text] :
       std::vector<std::pair<ExpectedFrom, const char*>>{{ExpectedFrom::boards, "boards measured"},
                                                         {ExpectedFrom::entered, "entered by hand"},
                                                         {ExpectedFrom::pinKind, "kind of pin"}}) {
    CHECK(word(from) == text);
    CHECK(expectedSourceFrom(text) == from);
  }
  CHECK_FALSE(expectedSourceFrom("hearsay"));
}

TEST_CASE("points of a kind lend each other their spread: figures on record") {
  // Forty points on five boards, scattered by a fixed rule: x(n) = frac(n·golden ratio).
  std::vector<Walk> walks;
  int n = 0;
  const auto dice = [&] { return std::fmod(0.6180339887498949 * ++n, 1.0) - 0.5; };
  for (int board = 0; board < 5; ++board) {
    std::vector<Reading> readings;
    for (int point = 0; point < 40; ++point) {
      const double spread = point < 8 ? 0.0006 : 0.002 + 0.0003 * point;
      double middle = point < 8 ? 0.004 : 0.3 + 0.01 * point;
      if (point % 9 == 0 && board > 2) middle += 0.15;
      auto reading = at(point, middle + spread * (dice() + dice() + dice()));
      if (point % 11 == 10 && board == 1) reading.value.reset();
      readings.push_back(reading);
    }
    walks.push_back(test::walkOf(readings, Specimen::good));
  }
  const auto table = test::expectedFrom(walks);
  nlohmann::json out = nlohmann::json::array();
  for (std::size_t i = 0; i < table.size(); ++i) {
    const auto& e = table.at(i);
    nlohmann::json row{e.boards, e.boardsOverLimit, figure(e.overLimitShare)};
    for (std::size_t k = 0; k < e.humps.size(); ++k)
      row.push_back({figure(e.humps[k].weight), figure(e.humps[k].centre), figure(e.humps[k].scale),
                     figure(e.humps[k].dof), e.humps[k].boards, figure(e.shown[k].lowest),
                     figure(e.shown[k].highest)});
    out.push_back(row);
  }
  test::checkFigures("probing/figures.json", "forty points on five boards", out);
  nlohmann::json fits = nlohmann::json::array();
  const auto fit = [&](const std::vector<Spread>& samples, const Spread& fallback, double least) {
    const auto found = fitSpread(samples, fallback, least);
    fits.push_back({figure(found.variance), figure(found.dof)});
  };
  fit({}, {4.0, 5.0}, 0.0);
  fit({}, {4.0, 5.0}, 9.0);
  fit({{7.0, 0.0}}, {4.0, 5.0}, 0.0);
  fit({{16.0, 2.0}}, {4.0, 6.0}, 0.0);
  fit({{16.0, 2.0}, {3.0, 4.0}, {5.0, 2.0}}, {4.0, 6.0}, 0.0);
  fit({{16.0, 2.0}, {3.0, 4.0}, {5.0, 2.0}}, {4.0, 6.0}, 4.5);
  fit(std::vector<Spread>(20, {0.0, 3.0}), {1.0, 4.0}, 1e-4);
  fit(std::vector<Spread>(20, {0.0, 3.0}), {1.0, 4.0}, 0.0);
  std::vector<Spread> many;
  for (int i = 0; i < 1000; ++i)
    many.push_back({1.0 + dice() + (i % 7 == 0 ? 3.0 : 0.0), 1.0 + i % 4});
  fit(many, {1.0, 4.0}, 0.0);
  fit({many.begin(), many.begin() + 400}, {1.0, 4.0}, 0.0);
  fit({many.begin(), many.begin() + 401}, {1.0, 4.0}, 0.0);
  test::checkFigures("probing/figures.json", "fits of spreads", fits);
  nlohmann::json factors = nlohmann::json::array();
  for (const double boards : {1.0, 1.5, 2.0, 5.0, 40.0, 1e4})
    for (const double dof : {0.5, 1.0, 3.0, 20.0, 1e4})
      factors.push_back(figure(toleranceFactorExact(boards, dof, {0.9, 0.99})));
  test::checkFigures("probing/figures.json", "tolerance factors", factors);
}
