#include "netmend/probing/meter_model.h"

#include <array>
#include <cmath>
#include <random>

#include "support.h"

#include "support/one_node.h"
#include "support/seed.h"

using namespace netmend;
using test::junctionVoltage;
using test::shownAcross;

namespace {

constexpr Celsius at300K(300.0 - 273.15);
constexpr Amperes oneMilliampere(1e-3);

} // namespace

TEST_CASE("the thermal voltage is 25.85 mV at 300 K") {
  CHECK(thermalVoltage(at300K).value == Approx(0.025852).margin(5e-7)); // kT/q by CODATA 2018
}

TEST_CASE("two equal junctions read 17.92 mV lower than one") {
  // n·Vt·ln 2 at n = 1 and 300 K; both from the model and through a meter that feeds 1 mA.
  const Junction j;
  const auto one = junctionVoltage(j, oneMilliampere, at300K);
  const auto two = junctionVoltage(j, oneMilliampere / 2.0, at300K);
  CHECK((one - two).value == Approx(0.01792).margin(5e-6));
  const MeterSource source;
  const std::array<Junction, 2> both{j, j};
  const auto readOne = shownAcross(source, std::span(both).first(1), {}, at300K);
  const auto readTwo = shownAcross(source, both, {}, at300K);
  REQUIRE((readOne && readTwo));
  CHECK((*readOne - *readTwo).value == Approx(0.01792).margin(1e-5));
}

TEST_CASE("current and voltage of a junction are inverse to each other, with series resistance too") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> exponent(-9.0, -1.0);
  for (const double rs : {0.0, 0.5, 10.0, 1000.0}) {
    for (const double n : {1.0, 1.5, 2.0}) {
      for (int i = 0; i < 50; ++i) {
        const Junction j{Amperes(1e-13), n, Ohms(rs)};
        const Amperes current(std::pow(10.0, exponent(random)));
        const auto voltage = junctionVoltage(j, current, Celsius(25));
        const auto back = junctionCurrent(j, voltage, Celsius(25));
        CHECK(back.current.value == Approx(current.value).epsilon(1e-9));
        const double h = 1e-7;
        const double slope = (junctionCurrent(j, voltage + Volts(h), Celsius(25)).current.value -
                              junctionCurrent(j, voltage - Volts(h), Celsius(25)).current.value) /
                             (2.0 * h);
        CHECK(back.slope == Approx(slope).epsilon(1e-5));
      }
    }
  }
}

TEST_CASE("a junction's current stays finite at any voltage") {
  for (const double rs : {0.0, 1.0})
    for (const double v : {-1e6, -10.0, 0.0, 50.0, 1e6}) {
      const auto c = junctionCurrent({Amperes(1e-14), 1.0, Ohms(rs)}, Volts(v), Celsius(25));
      CHECK(std::isfinite(c.current.value));
      CHECK(c.slope >= 0.0);
    }
}

TEST_CASE("a junction's drop falls by 1.78 mV per kelvin at 1 mA") {
  // Seen with ngspice 39 at Is = 1e-14 A, n = 1, default Xti and Eg: −1.78 mV/K.
  const Junction j;
  const auto drop = junctionVoltage(j, oneMilliampere, at300K);
  CHECK(junctionTemperatureSlope(drop, at300K) == Approx(-1.78e-3).margin(0.01e-3));
  const auto warmer = junctionVoltage(j, oneMilliampere, Celsius(at300K.value + 1.0));
  CHECK((warmer - drop).value == Approx(-1.78e-3).margin(0.01e-3));
}

TEST_CASE("an open pin is OL, a resistor reads current times resistance, a short reads the leads") {
  MeterSource source;
  CHECK_FALSE(shownAcross(source, {}, {}, Celsius(25)));
  const std::array<Ohms, 1> hundred{Ohms(100.0)};
  const auto read = shownAcross(source, {}, hundred, Celsius(25));
  REQUIRE(read);
  CHECK(read->value == Approx(0.1).epsilon(1e-4)); // its own 10 MΩ take 1e-5 of it
  source.leadResistance = Ohms(0.2);
  const std::array<Ohms, 1> nothing{Ohms(0.0)};
  CHECK(shownAcross(source, {}, nothing, Celsius(25))->value == Approx(0.2e-3));
  const std::array<Ohms, 1> much{Ohms(1e6)};
  CHECK_FALSE(shownAcross(source, {}, much, Celsius(25)));
}

TEST_CASE("the source holds its current up to its limit and falls from there on") {
  const MeterSource source;
  const Volts knee = source.openCircuit - source.testCurrent * source.outputResistance;
  CHECK(sourceCurrent(source, Volts(0)).value == Approx(1e-3));
  CHECK(sourceCurrent(source, knee).value == Approx(1e-3).epsilon(1e-3));
  CHECK(sourceCurrent(source, source.openCircuit).value < 0.0);
  CHECK(sourceSlope(source, Volts(0)) > sourceSlope(source, knee + Volts(0.1)));
  CHECK(sourceSlope(source, Volts(0)) < 0.0);
}

TEST_CASE("the meters in the data are sources in diode and ohms mode only") {
  for (const auto& meter : test::data().meters) {
    const auto source = meterSource(meter, ReadingMode::diode);
    REQUIRE(source);
    CHECK(sourceCurrent(*source, source->displayLimit).value ==
          Approx(source->testCurrent.value).epsilon(1e-3));
    CHECK_FALSE(meterSource(meter, ReadingMode::volts));
  }
}
