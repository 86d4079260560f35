#include <cstdio>
#include <random>
#include <thread>

#include "meter_bench.h"

using namespace netmend;
using namespace netmend::testing;
using namespace std::chrono_literals;

TEST_CASE("a walk of 40 pins with a meter on a socket takes no key") {
  MeterBench bench;
  bench.linkByTcp();
  const auto values = pinValues(40);
  for (const double value : values)
    bench.touchAndLift(value);
  checkReadings(bench.session.walk, values);
  CHECK(bench.failures.empty());
  CHECK(bench.statuses.size() <= 4); // connecting …, ready: nothing else was told
  // Nothing but the probe was moved: no key, no call of the source.
  std::printf("walk of %zu pins with a linked meter: seed %u, keys a reading: 0\n", values.size(),
              testSeed());
}

TEST_CASE("the practice meter plays a walk by itself") {
  MeterBench bench;
  bench.linkByTcp();
  bool done = false;
  bench.meter.play({{0.3, 300ms, 120ms}, {std::nullopt, 100ms, 50ms}, {0.5, 300ms, 50ms}},
                   [&] { done = true; });
  REQUIRE(until([&] { return done; }));
  REQUIRE(bench.count() == 2); // OL takes a key
  CHECK(*bench.session.walk.readings[0].value == Approx(0.3).margin(2e-3));
  CHECK(*bench.last().value == Approx(0.5).margin(2e-3));
}

TEST_CASE("touches and lifts that pass while the window is busy are taken all the same, each once") {
  MeterBench bench;
  bench.linkByTcp();
  // No event of this thread happens in the meantime.
  const auto measures = [&](int values) {
    const int before = bench.meter.readsAnswered();
    while (bench.meter.readsAnswered() < before + values)
      std::this_thread::sleep_for(1ms);
  };
  measures(20);
  const std::vector<double> values{0.3, 0.3, 0.312};
  for (const double value : values) {
    bench.meter.touch(value);
    measures(20);
    bench.meter.lift();
    measures(10);
  }
  CHECK(bench.count() == 0);
  REQUIRE(bench.has(3));
  letPass(100ms);
  REQUIRE(bench.count() == 3);
  for (std::size_t i = 0; i < values.size(); ++i)
    CHECK(*bench.session.walk.readings[i].value == Approx(values[i]).margin(2e-3));
}

TEST_CASE("a walk over a pseudo-terminal, all answers in fragments, gives the same") {
  auto options = fastMeter();
  options.fragments = true;
  options.seed = testSeed();
  options.reading = 1ms;
  MeterBench bench(options, 6);
  const auto terminal = bench.meter.openTerminal();
  REQUIRE(terminal);
  bench.link("serial:" + *terminal);
  REQUIRE(bench.becomes(LinkState::ready));
  auto rules = fastRules(ReadingMode::diode);
  rules.hold = 60ms;
  rules.samples = 3;
  bench.source->setRules(rules);
  const auto values = pinValues(6);
  for (const double value : values)
    bench.touchAndLift(value);
  std::printf("walk in fragments: seed %u\n", testSeed());
  checkReadings(bench.session.walk, values);
  CHECK_FALSE(bench.told(LinkState::rubbish));
}

TEST_CASE("9.9E37 is OL and is taken by a key only; 9.91E37 is told and not taken") {
  MeterBench bench;
  bench.linkByTcp();
  REQUIRE(until([&] { return bench.live.size() > 30; }));
  CHECK(bench.count() == 0);
  CHECK_FALSE(bench.live.back().reading.value);
  CHECK(bench.live.back().phase == SettlePhase::open);
  REQUIRE(bench.source->takeNow());
  REQUIRE(bench.count() == 1);
  CHECK(bench.last().overLimit());
  bench.forgetStatuses();
  bench.meter.sendNaNOnce();
  REQUIRE(until([&] { return bench.told(LinkState::meterError); }));
  REQUIRE(bench.becomes(LinkState::ready));
  CHECK(bench.count() == 1);
}

TEST_CASE("a charging capacitor is taken as rising on demand, and only then") {
  MeterBench bench;
  bench.linkByTcp();
  bench.meter.touchCharging(0.1, 0.3);
  REQUIRE(bench.becomes(SettlePhase::rising));
  CHECK(bench.count() == 0);
  REQUIRE(bench.source->takeNow());
  REQUIRE(bench.count() == 1);
  CHECK(bench.last().settling == Settling::rising);
  bench.live.clear();
  REQUIRE(until([&] { return bench.live.size() > 30; }));
  CHECK(bench.count() == 1);
}

TEST_CASE("keys skip, go back and undo while the meter is linked") {
  MeterBench bench;
  bench.linkByTcp();
  bench.source->skip();
  bench.touchAndLift(0.3);
  CHECK(bench.last().point.label == "J4.2");
  bench.source->back();
  bench.touchAndLift(0.31);
  CHECK(bench.last().point.label == "J4.2");
  bench.source->undo();
  CHECK(bench.count() == 1);
  bench.source->setAutoTake(false);
  bench.meter.touch(0.4);
  REQUIRE(bench.becomes(SettlePhase::held));
  CHECK(bench.count() == 1);
  REQUIRE(bench.source->takeNow());
  CHECK(*bench.last().value == Approx(0.4).margin(2e-3));
}

TEST_CASE("the walk's mode sets the meter's function, and readings carry it") {
  MeterBench bench;
  bench.linkByTcp();
  bench.touchAndLift(0.452);
  for (const auto& [mode, value] :
       {std::pair{ReadingMode::ohms, 4700.0}, std::pair{ReadingMode::continuity, 12.0},
        std::pair{ReadingMode::volts, 3.3}}) {
    bench.source->setMode(mode);
    bench.source->setRules(fastRules(mode));
    CHECK_FALSE(bench.source->takeNow()); // what came before is of another function
    REQUIRE(until([&, wanted = mode] { return bench.meter.function() == functionFor(wanted); }));
    bench.live.clear();
    bench.lift(); // the touch of the mode before counts as taken
    bench.touchAndLift(value);
    CHECK(bench.last().mode == mode);
    CHECK(*bench.last().value == Approx(value).epsilon(2e-3));
  }
  CHECK(bench.count() == 4);
}

TEST_CASE("lines that a serial meter sends by itself make a walk too, whatever else comes") {
  const auto patterns = loadLinePatterns(NETMEND_SOURCE_DIR "/data/meter_lines.json");
  REQUIRE(patterns);
  const auto line = [](MeterFunction function, std::optional<double> value) {
    const auto* mode = function == MeterFunction::diode ? "DIODE" : "VDC";
    char text[64];
    if (value)
      std::snprintf(text, sizeof text, "%s,%+.4f,V", mode, *value);
    else
      std::snprintf(text, sizeof text, "%s,OL,V", mode);
    return std::string(text);
  };
  MeterBench bench;
  const auto terminal = bench.meter.openLineTerminal(line, testSeed() % 2 == 0 ? "\r\n" : "\r");
  REQUIRE(terminal);
  bench.link("serial:" + *terminal + ":mode-value-unit", ReadingMode::diode, *patterns);
  REQUIRE(bench.becomes(LinkState::ready));
  const auto values = pinValues(6);
  for (const double value : values) {
    bench.meter.sendRubbish("\xFF\x00rubbish\n");
    bench.touchAndLift(value);
  }
  checkReadings(bench.session.walk, values);
  CHECK(bench.told(LinkState::rubbish));

  bench.meter.setFunction(MeterFunction::dcVolts);
  bench.meter.touch(0.5);
  REQUIRE(bench.becomes(LinkState::wrongFunction));
  letPass(150ms);
  CHECK(bench.count() == 6);
  bench.meter.setFunction(MeterFunction::diode);
  REQUIRE(bench.has(7));

  bench.meter.setDeaf(true); // it was switched off
  REQUIRE(bench.becomes(LinkState::lost));
  bench.meter.setDeaf(false);
  REQUIRE(bench.becomes(LinkState::ready));
  bench.meter.dropLink(50ms); // the plug was pulled
  REQUIRE(bench.becomes(LinkState::lost));
  CHECK(bench.told(LinkState::lost, *terminal));
  REQUIRE(bench.becomes(LinkState::ready));
  letPass(150ms);
  CHECK(bench.count() == 7); // the probe has rested there all the while
}

TEST_CASE("a source that was stopped gives what it had, then nothing more") {
  needEventLoop();
  SimulatedMeter meter(fastMeter());
  auto source = LinkedMeterSource::make(parseMeterAddress(meter.address()).value(), ReadingMode::diode, {},
                                        fastTimes());
  REQUIRE(source);
  LinkedMeterSource& linked = **source;
  linked.setRules(fastRules(ReadingMode::diode));
  int ready = 0;
  linked.whenReady([&] { ++ready; });
  linked.start();
  meter.touch(0.452);
  REQUIRE(until([&] { return ready == 1; }));
  linked.stop();
  CHECK_FALSE(linked.ended());
  const auto event = linked.next();
  REQUIRE(event);
  REQUIRE(*event);
  CHECK(std::holds_alternative<ValueTaken>(**event));
  CHECK(linked.ended());
  const int reads = meter.readsAnswered();
  letPass(100ms);
  CHECK(meter.readsAnswered() <= reads + 1);
  CHECK(linked.status().state == LinkState::lost);
}
