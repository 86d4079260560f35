#include <cmath>

#include <catch2/catch.hpp>

#include "isolation/model.h"
#include "isolation/reading_table.h"
#include "one_resistor.h"

// What readings say of the voltage behind the lead: by the formula, and against brute force.

using namespace netmend;
using namespace netmend::test;

namespace {

double latticeVolts(std::size_t i) {
  return ReadingTable::first + ReadingTable::step * static_cast<double>(i);
}

const IsolationModel& model() {
  static const auto isolation = OneResistor().isolation();
  return *isolation.model;
}

ReadingTable tableFor(std::optional<double> read, ReadingSort sort = ReadingSort::voltsToGround) {
  PlacedReading reading;
  reading.sort = sort;
  reading.value = read;
  if (sort != ReadingSort::voltsToGround) reading.mode = ReadingMode::ohms;
  return netmend::tableOf(model(), reading);
}

/// Likelihood there of all tables, straight between their points.
double product(const std::vector<const ReadingTable*>& tables, double at) {
  const double x = (at - ReadingTable::first) / ReadingTable::step;
  const auto i = static_cast<std::size_t>(x);
  const double share = x - static_cast<double>(i);
  double low = 0.0, high = 0.0;
  for (const auto* table : tables) {
    low += static_cast<double>(table->logLikelihood.at(i));
    high += static_cast<double>(table->logLikelihood.at(i + 1));
  }
  return (1.0 - share) * std::exp(low) + share * std::exp(high);
}

double bruteMean(const std::vector<const ReadingTable*>& tables, double low, double high) {
  constexpr int steps = 20000;
  double sum = 0.0;
  for (int k = 0; k < steps; ++k)
    sum += product(tables, low + (high - low) * (k + 0.5) / steps);
  return sum / steps;
}

} // namespace

TEST_CASE("a diode reading's likelihood over the voltage behind the lead is that of a hand with a slip now "
          "and then") {
  for (const std::optional<double> read :
       {std::optional(0.47), std::optional(1.9995), std::optional<double>()}) {
    const auto table = tableFor(read);
    REQUIRE(latticeVolts(table.logLikelihood.size() - 1) >= 2.099);
    for (std::size_t i = 0; i < table.logLikelihood.size(); i += 13) {
      INFO(latticeVolts(i) << " V");
      CHECK(table.logLikelihood[i] == Approx(std::log(shown(read, latticeVolts(i)))).epsilon(1e-5));
    }
    CHECK(table.atNothing == Approx(std::log(shown(read, openVolts))));
  }
}

TEST_CASE("an ohms reading's likelihood is about what the source makes of the voltage") {
  const auto sigma = [](double ohms) { // ±(0.8 % + 3 counts), leads, contact, and 5 % of copper and part
    return std::hypot(std::hypot((0.008 * ohms + 3.0) / rectangle, 0.5 / rectangle, 0.2 / rectangle),
                      0.05 * ohms, 0.3);
  };
  const auto table = tableFor(470.0, ReadingSort::ohmsToGround);
  for (const double v : {0.10, 0.155, 0.16, 0.17, 0.22}) {
    const auto i = static_cast<std::size_t>(std::round((v - ReadingTable::first) / ReadingTable::step));
    // Half a volt behind its own 1 kΩ, less what the meter's 10 MΩ take: 0.16 V at 470 Ω.
    const double ohms = v / ((0.5 - v) / 1000.0 - v * 1e-7);
    const double wanted = (1 - slips) * student(470.0, ohms, sigma(ohms)) + slips / 2 * test::anyOhms(470.0);
    INFO(v << " V");
    CHECK(table.logLikelihood[i] == Approx(std::log(wanted)).epsilon(1e-3).margin(1e-3));
  }
  CHECK(table.atNothing == Approx(std::log(slips / 2 * test::anyOhms(470.0))));
  const auto open = tableFor(std::nullopt, ReadingSort::ohmsToGround);
  CHECK(open.atNothing == Approx(std::log(1 - slips / 2)));
  CHECK(open.logLikelihood[1000] == Approx(std::log(slips / 2)).epsilon(1e-5)); // 0.19 V: 613 Ω
}

TEST_CASE("what good boards read weighs by its spread, with room for a value from elsewhere and for OL") {
  const PinId pin(1);
  const double sigma = std::hypot(0.005, 0.002); // unlike emissions in parallel are not in the model
  const auto at = [](const ReadingTable& table, double v) {
    return static_cast<double>(table.logLikelihood.at(
        static_cast<std::size_t>(std::round((v - ReadingTable::first) / ReadingTable::step))));
  };
  const auto valued = goodTable(model(), {pin, Volts(0.45), Volts(0.005)});
  for (const double v : {0.0, 0.43, 0.45, 0.46, 1.5})
    CHECK(at(valued, v) == Approx(std::log(0.99 * student(0.45, v, sigma) + 0.01 / 2.0)).epsilon(1e-5));
  CHECK(valued.atNothing == Approx(std::log(0.01 / 2.0)));
  const auto sometimes = goodTable(model(), {pin, Volts(0.45), Volts(0.005), true});
  CHECK(at(sometimes, 0.45) ==
        Approx(std::log(0.7 * (0.99 * student(0.45, 0.45, sigma) + 0.005))).epsilon(1e-5));
  CHECK(sometimes.atNothing == Approx(std::log(0.7 * 0.005 + 0.3)));
  const auto open = goodTable(model(), {pin, std::nullopt, Volts(0.005)});
  CHECK(at(open, 0.45) == Approx(std::log(0.01 * 0.005)).epsilon(1e-5));
  CHECK(open.atNothing == Approx(std::log(0.01 * 0.005 + 0.99)));
}

TEST_CASE("means and maxima of several readings over stretches of voltage are those of brute force") {
  const auto first = tableFor(0.470), second = tableFor(0.4735), third = tableFor(std::nullopt);
  for (const std::vector<const ReadingTable*>& tables :
       {std::vector<const ReadingTable*>{&first}, {&first, &second}, {&third}, {&first, &second, &third}}) {
    const ReadingProduct of(tables, {});
    const double scale = std::exp(of.logScale());
    double greatest = 0.0;
    for (const auto& [low, high] : std::vector<std::pair<double, double>>{{0.0, 2.0},
                                                                          {0.46, 0.48},
                                                                          {0.4701, 0.4737},
                                                                          {0.4, 0.471},
                                                                          {0.4711, 0.4719},
                                                                          {1.0, 2.05},
                                                                          {0.0, 0.3}}) {
      INFO("from " << low << " to " << high << " V, " << tables.size() << " readings");
      CHECK(of.mean(low, high) * scale == Approx(bruteMean(tables, low, high)).epsilon(5e-3));
      double most = 0.0;
      for (std::size_t i = 0; i < first.logLikelihood.size(); ++i) {
        // Points within, and those next to them.
        if (latticeVolts(i) < low - ReadingTable::step || latticeVolts(i) > high + ReadingTable::step)
          continue;
        double here = 0.0;
        for (const auto* table : tables)
          here += static_cast<double>(table->logLikelihood[i]);
        most = std::max(most, std::exp(here));
      }
      CHECK(of.most(low, high) * scale <= most * (1.0 + 1e-6));
      CHECK(of.most(low, high) >= of.mean(low, high) * (1.0 - 1e-9));
      CHECK(of.most(low, high) * scale >= 0.999 * product(tables, std::clamp(0.4715, low, high)));
      greatest = std::max(greatest, of.most(low, high));
    }
    // One point: no less than what lies on both sides of it, no more.
    for (const double v : {0.3, 0.4653, 0.47, 0.47312, 0.48, 1.9})
      CHECK(of.mean(v, v) * scale ==
            Approx(bruteMean(tables, v - 0.5 * ReadingTable::step, v + 0.5 * ReadingTable::step))
                .epsilon(5e-3));
    double nothing = 0.0;
    for (const auto* table : tables)
      nothing += table->atNothing;
    CHECK(of.atNothing() * scale == Approx(std::exp(nothing)));
    CHECK(std::max(greatest, of.atNothing()) == Approx(1.0)); // that is its scale
    // Nothing behind the lead, or more than the lattice holds.
    constexpr double none = std::numeric_limits<double>::infinity();
    CHECK(of.mean(none, none) == of.atNothing());
    CHECK(of.most(none, none) == of.atNothing());
    CHECK(of.mean(2.5, 2.9) == of.atNothing());
    CHECK(of.most(0.0, none) == Approx(1.0));
    CHECK(of.most(1.0, none) >= of.atNothing());
    CHECK(of.mean(1.0, none) == Approx(0.5 * (of.mean(1.0, 2.1) + of.atNothing())).epsilon(1e-3));
    CHECK(of.mean(1.1, 3.1) == Approx(0.5 * (of.mean(1.1, 2.1) + of.atNothing())).epsilon(1e-2));
  }
  const ReadingProduct nothing(std::vector<const ReadingTable*>{}, {});
  CHECK(nothing.mean(0.1, 0.2) == 1.0);
  CHECK(nothing.most(0.1, 0.2) == 1.0);
  CHECK(nothing.atNothing() == 1.0);
  CHECK(nothing.logScale() == 0.0);
}

TEST_CASE(
    "a common error is a bell of its standard deviation in even steps, and smooths what one circuit read") {
  for (const double step : {0.33, 0.4, 1.0}) {
    const auto errors = commonErrors(Volts(0.0046), step);
    CHECK(errors.size() == static_cast<std::size_t>(std::ceil(6.0 / step)) + 1);
    CHECK(errors.front().offset == Approx(-3.0 * 0.0046));
    CHECK(errors.back().offset == Approx(3.0 * 0.0046));
    double sum = 0.0, mean = 0.0, square = 0.0;
    for (const auto& error : errors) {
      sum += error.weight;
      mean += error.weight * error.offset;
      square += error.weight * error.offset * error.offset;
    }
    CHECK(sum == Approx(1.0));
    CHECK(mean == Approx(0.0).margin(1e-12));
    CHECK(std::sqrt(square) == Approx(0.0046).epsilon(0.02));
  }
  REQUIRE(commonErrors(Volts(0), 0.4).size() == 1);
  CHECK(commonErrors(Volts(0), 0.4).front().offset == 0.0);
  CHECK(commonErrors(Volts(0), 0.4).front().weight == 1.0);

  const auto first = tableFor(0.470), second = tableFor(0.4735);
  const auto errors = commonErrors(Volts(commonSigma), 0.4);
  const ReadingProduct both(std::vector<const ReadingTable*>{&first, &second}, errors);
  for (const auto& [low, high] :
       std::vector<std::pair<double, double>>{{0.46, 0.48}, {0.0, 2.0}, {0.472, 0.4725}, {0.49, 0.5}}) {
    double sum = 0.0;
    for (const auto& error : errors)
      sum += error.weight * both.mean(low + error.offset, high + error.offset);
    INFO("from " << low << " to " << high << " V");
    CHECK(both.smoothMean(low, high) ==
          Approx(sum).epsilon(0.03).margin(
              1e-6)); // steps of its quadrature // errors are rounded to the lattice
    CHECK(both.smoothMost(low, high) >= both.smoothMean(low, high));
    CHECK(both.smoothMost(low, high) <= both.most(low - 0.015, high + 0.015));
  }
  CHECK(both.smoothMean(2.5, 2.6) == both.atNothing());
}
