#include <array>
#include <cmath>

#include "netmend/probing/meter_model.h"
#include "support.h"

// What a meter feeds, and how uncertain each of its readings is, mode by mode and by hand.

using namespace netmend;

namespace {

constexpr std::array<ReadingMode, 8> modesOfMeters{ReadingMode::diode,
                                                   ReadingMode::diodeReverse,
                                                   ReadingMode::ohms,
                                                   ReadingMode::milliohms,
                                                   ReadingMode::continuity,
                                                   ReadingMode::volts,
                                                   ReadingMode::dropUnderCurrent,
                                                   ReadingMode::temperature};

/// In every mode two ranges, 1.2 mA and 3.2 V.
MeterProfile everyModeOf() {
  MeterProfile meter;
  meter.leadResistance = Ohms(0.3);
  meter.inputResistance = Ohms(2e7);
  for (const auto mode : modesOfMeters)
    meter.modes.push_back(
        {mode, {{2.0, 0.001, 1.5, 4.0}, {20.0, 0.01, 2.5, 6.0}}, Amperes(1.2e-3), Volts(3.2), {}});
  return meter;
}

} // namespace

TEST_CASE("a reading is uncertain by its range's accuracy, half a count, and leads where they matter") {
  const auto meter = everyModeOf();
  for (const auto mode : modesOfMeters) {
    const bool ohms = mode == ReadingMode::ohms || mode == ReadingMode::continuity;
    const bool diode = mode == ReadingMode::diode || mode == ReadingMode::diodeReverse;
    const double leads = (ohms ? 0.3 : diode ? 0.3 * 1.2e-3 : 0.0) / std::sqrt(3.0);
    for (const double sign : {-1.0, 1.0}) {
      const auto fine = uncertaintyOf(meter, mode, sign * 2.0),
                 coarse = uncertaintyOf(meter, mode, sign * 2.001);
      REQUIRE(fine);
      REQUIRE(coarse);
      CHECK(fine->calibration == Approx((0.015 * 2.0 + 0.004) / std::sqrt(3.0)).epsilon(1e-12));
      CHECK(fine->resolution == Approx(0.0005 / std::sqrt(3.0)).epsilon(1e-12));
      CHECK(coarse->calibration == Approx((0.025 * 2.001 + 0.06) / std::sqrt(3.0)).epsilon(1e-12));
      CHECK(coarse->resolution == Approx(0.005 / std::sqrt(3.0)).epsilon(1e-12));
      CHECK(fine->leads == Approx(leads).margin(1e-15));
      CHECK(coarse->leads == fine->leads);
    }
    CHECK(uncertaintyOf(meter, mode, 20.0));
    CHECK_FALSE(uncertaintyOf(meter, mode, 20.001));
    CHECK_FALSE(uncertaintyOf({}, mode, 1.0));
  }
  auto unfed = meter;
  unfed.modes[0].testCurrent.reset();
  CHECK(uncertaintyOf(unfed, ReadingMode::diode, 1.0)->leads == 0.0);
  CHECK(rectangularUncertainty(-3.0) == Approx(std::sqrt(3.0)));
}

TEST_CASE("a meter is a source in diode, ohms and continuity mode, full current up to its display limit") {
  const auto meter = everyModeOf();
  for (const auto mode : modesOfMeters) {
    const bool diode = mode == ReadingMode::diode || mode == ReadingMode::diodeReverse;
    const bool feeds = diode || mode == ReadingMode::ohms || mode == ReadingMode::continuity;
    const auto source = meterSource(meter, mode);
    REQUIRE(source.has_value() == feeds);
    if (!feeds) continue;
    CHECK(source->testCurrent == Amperes(1.2e-3));
    CHECK(source->openCircuit == Volts(3.2));
    CHECK(source->inputResistance == Ohms(2e7));
    CHECK(source->leadResistance == Ohms(0.3));
    CHECK(source->displayLimit == Volts(diode ? 20.0 : 3.2));
    // 20 V is no limit for 3.2 V: then the whole voltage stands over the test current.
    CHECK(source->outputResistance.value == Approx(3.2 / 1.2e-3));
  }
  auto usual = meter;
  usual.modes[0].ranges.pop_back();
  CHECK(meterSource(usual, ReadingMode::diode)->outputResistance.value == Approx((3.2 - 2.0) / 1.2e-3));
  CHECK(meterSource(usual, ReadingMode::diode)->displayLimit == Volts(2.0));
  usual.modes[0].ranges.back().fullScale = 3.2;
  CHECK(meterSource(usual, ReadingMode::diode)->outputResistance.value == Approx(3.2 / 1.2e-3));
  usual.modes[0].compliance.reset();
  CHECK_FALSE(meterSource(usual, ReadingMode::diode));
  usual.modes[1].testCurrent.reset();
  CHECK_FALSE(meterSource(usual, ReadingMode::diodeReverse));
  CHECK_FALSE(meterSource({}, ReadingMode::diode));
}

TEST_CASE(
    "a source gives its current up to the knee, then what its resistance lets through, less its own input") {
  // 1 mA, 3 V, 500 Ω, 10 MΩ: the knee is at 2.5 V.
  const MeterSource source;
  CHECK(sourceCurrent(source, Volts(0)).value == Approx(1e-3).epsilon(1e-12));
  CHECK(sourceCurrent(source, Volts(2.0)).value == Approx(1e-3 - 2e-7).epsilon(1e-12));
  CHECK(sourceCurrent(source, Volts(2.8)).value == Approx(0.2 / 500 - 2.8e-7).epsilon(1e-12));
  CHECK(sourceCurrent(source, Volts(3.0)).value == Approx(-3e-7).epsilon(1e-12));
  CHECK(sourceSlope(source, Volts(2.49)) == Approx(-1e-7).epsilon(1e-12));
  CHECK(sourceSlope(source, Volts(2.51)) == Approx(-1e-7 - 1.0 / 500).epsilon(1e-12));
}

TEST_CASE(
    "a junction's current is Shockley's, its saturation follows temperature, its drop moves by the slope") {
  // k/q = 86.17333262 µV/K (CODATA 2018).
  const double k = 86.17333262e-6;
  CHECK(thermalVoltage(Celsius(25)).value == Approx(k * 298.15).epsilon(1e-9));
  const Junction junction{Amperes(2e-12), 1.4, Ohms(0), Volts(1.11), 3.0};
  CHECK(saturationCurrent(junction, Celsius(27)).value == Approx(2e-12).epsilon(1e-9));
  for (const double celsius : {-20.0, 25.0, 60.0}) {
    const double t = celsius + 273.15, ratio = t / 300.15, vt = k * t;
    const double is = 2e-12 * std::pow(ratio, 3.0 / 1.4) * std::exp(1.11 / (1.4 * vt) * (ratio - 1));
    CHECK(saturationCurrent(junction, Celsius(celsius)).value == Approx(is).epsilon(1e-7));
    for (const double v : {-0.5, 0.0, 0.3, 0.65}) {
      const auto found = junctionCurrent(junction, Volts(v), Celsius(celsius));
      CHECK(found.current.value == Approx(is * (std::exp(v / (1.4 * vt)) - 1)).epsilon(1e-6).margin(1e-20));
      CHECK(found.slope == Approx(is * std::exp(v / (1.4 * vt)) / (1.4 * vt)).epsilon(1e-6));
    }
    CHECK(junctionTemperatureSlope(Volts(0.6), Celsius(celsius)) ==
          Approx((0.6 - 1.11 - 3 * vt) / t).epsilon(1e-9));
    CHECK(junctionTemperatureSlope(Volts(0.6), Celsius(celsius), Volts(1.2), 2.0) ==
          Approx((0.6 - 1.2 - 2 * vt) / t).epsilon(1e-9));
    // Beyond 300 slopes the exponential goes on as its tangent.
    const double nvt = 1.4 * vt, edge = 300 * nvt;
    const auto at = junctionCurrent(junction, Volts(edge), Celsius(celsius)),
               beyond = junctionCurrent(junction, Volts(edge + 2.0), Celsius(celsius));
    CHECK(at.current.value == Approx(is * std::exp(300.0)).epsilon(1e-6));
    CHECK(beyond.slope == Approx(at.slope).epsilon(1e-6));
    CHECK(beyond.current.value == Approx(at.current.value + 2.0 * at.slope).epsilon(1e-6));
  }
  // With a resistance: V = I·R + n·Vt·ln(1 + I/Is), also where the exponent is beyond any double.
  for (const double amperes : {1e-9, 1e-3, 0.1, 30.0}) {
    const Junction with{Amperes(2e-12), 1.4, Ohms(12), Volts(1.11), 3.0};
    const double is = saturationCurrent(with, Celsius(25)).value, nvt = 1.4 * k * 298.15;
    const double volts = amperes * 12 + nvt * std::log1p(amperes / is);
    const auto found = junctionCurrent(with, Volts(volts), Celsius(25));
    CHECK(found.current.value == Approx(amperes).epsilon(1e-7));
    CHECK(found.slope == Approx(1 / (12 + nvt / (amperes + is))).epsilon(1e-7));
  }
}

TEST_CASE("the kind of a pin is that of its net: its role, a certain junction on it, or that there is none") {
  Board board;
  const auto net = [&](const char* name, Fact<NetRole> role) {
    Net added;
    added.id = board.newId<NetId>();
    added.name = name;
    added.role = role;
    board.nets.put(added);
    return added.id;
  };
  const auto pin = [&](Fact<NetId> on, Fact<Termination> termination = {}) {
    Pin added;
    added.id = board.newId<PinId>();
    added.net = on;
    added.termination = termination;
    board.pins.put(added);
    return added.id;
  };
  const auto signal = net("COL", fromUser(NetRole::signal)), clamped = net("ROW", fromUser(NetRole::signal));
  const auto supply = pin(fromUser(net("x", fromUser(NetRole::supply))), measured(Termination::junction));
  const auto ground = pin(fromUser(net("y", fromUser(NetRole::ground))), measured(Termination::junction));
  const auto named = pin(fromUser(net("GND", {})));
  const auto plain = pin(fromUser(signal)), guess = pin(fromUser(signal), guessed(Termination::junction));
  const auto load = pin(fromUser(signal), measured(Termination::resistive));
  const auto beside = pin(fromUser(clamped)),
             junction = pin(fromUser(clamped), measured(Termination::junction));
  const auto nowhere = pin(fromUser(NetId{})), unknown = pin({}),
             bare = pin({}, measured(Termination::junction));
  const Lookup lookup(board);
  CHECK(pinKind(lookup, supply) == PinKind::supply);
  CHECK(pinKind(lookup, ground) == PinKind::ground);
  CHECK(pinKind(lookup, named) == PinKind::ground);
  for (const PinId id : {plain, guess, load})
    CHECK(pinKind(lookup, id) == PinKind::signal);
  for (const PinId id : {beside, junction, bare})
    CHECK(pinKind(lookup, id) == PinKind::junction);
  CHECK(pinKind(lookup, nowhere) == PinKind::unconnected);
  CHECK(pinKind(lookup, unknown) == PinKind::unknown);
  CHECK(pinKind(lookup, PinId(9999)) == PinKind::unknown);
}
