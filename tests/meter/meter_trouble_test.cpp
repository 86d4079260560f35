#include <cstdio>
#include <random>

#include "meter_bench.h"

using namespace netmend;
using namespace netmend::testing;
using namespace std::chrono_literals;

TEST_CASE("a link that breaks at random moments of a walk loses and doubles nothing") {
  const unsigned seed = testSeed();
  std::printf("breaks: seed %u\n", seed);
  std::mt19937 dice(seed);
  MeterBench bench(fastMeter(), 8);
  bench.linkByTcp();
  const auto values = pinValues(8);
  int breaks = 0;
  const auto maybeBreak = [&] {
    if (dice() % 2 == 0) return;
    ++breaks;
    bench.meter.dropLink(dice() % 2 == 0 ? 0ms : 40ms);
    REQUIRE(bench.becomes(LinkState::lost));
    REQUIRE(bench.becomes(LinkState::ready));
  };
  for (const double value : values) {
    const auto before = bench.count();
    bench.meter.touch(value);
    letPass(std::chrono::milliseconds(dice() % 60));
    maybeBreak(); // before the value is settled, or just after it was taken
    REQUIRE(bench.has(before + 1));
    maybeBreak(); // while the probe still rests there
    letPass(60ms);
    REQUIRE(bench.count() == before + 1);
    bench.lift();
  }
  REQUIRE(breaks > 2);
  checkReadings(bench.session.walk, values);
}

TEST_CASE("loss of the link is told at once, nothing can be taken then, and it comes back by itself") {
  MeterBench bench;
  bench.linkByTcp();
  bench.touchAndLift(0.452);
  bench.forgetStatuses();
  bench.meter.dropLink(1s);
  REQUIRE(bench.becomes(LinkState::lost));
  // By the break itself, not by an answer that did not come.
  CHECK(bench.told(LinkState::lost, "lost the link to tcp:127.0.0.1"));
  CHECK_FALSE(bench.source->takeNow());
  REQUIRE(bench.becomes(LinkState::ready));
  CHECK(bench.meter.linksAccepted() == 2);
  bench.touchAndLift(0.6);
  CHECK(bench.count() == 2);
}

TEST_CASE("a meter that falls silent is told, and talked to anew when it is back") {
  MeterBench bench;
  bench.times.answer = 120ms;
  bench.linkByTcp();
  bench.meter.touch(0.3);
  bench.meter.setDeaf(true);
  REQUIRE(bench.becomes(LinkState::lost));
  CHECK_FALSE(bench.source->takeNow());
  const auto before = bench.count();
  letPass(300ms);
  CHECK(bench.count() == before);
  bench.meter.setDeaf(false);
  REQUIRE(bench.becomes(LinkState::ready));
  REQUIRE(bench.has(1));
}

TEST_CASE(
    "no meter at the address: told, tried again with longer and longer pauses, found when it is there") {
  needEventLoop();
  std::uint16_t port = 0;
  {
    const SimulatedMeter gone;
    port = gone.port();
  }
  MeterBench bench;
  bench.link("tcp:127.0.0.1:" + std::to_string(port));
  std::vector<std::string> pauses;
  REQUIRE(until([&] {
    pauses.clear();
    for (const auto& status : bench.statuses)
      if (status.state == LinkState::lost) {
        const std::string text = wordsOf(status.text);
        pauses.push_back(text.substr(text.rfind("; ") + 2));
      }
    return pauses.size() >= 3;
  }));
  CHECK(pauses == std::vector<std::string>{"next try in 0.02 s", "next try in 0.04 s",
                                           "next try in 0.08 s"}); // and so on
  const SimulatedMeter late(fastMeter(), port);
  CHECK(bench.becomes(LinkState::ready));
}

TEST_CASE("rubbish between the answers is told and never taken for a value") {
  const unsigned seed = testSeed();
  std::printf("rubbish: seed %u\n", seed);
  std::mt19937 dice(seed);
  MeterBench bench;
  bench.times.answer = 120ms;
  bench.linkByTcp();
  const std::vector<std::string> rubbish{"\xFF\xFE\x80\n",         "+7.77E-01\n",       "garbage",
                                         std::string("\0\0\0", 3), "\"VOLT:AC\"\n",     "+0,\"No error\"\n",
                                         std::string(3000, 'x'),   "0.777\r\n0.777\r\n"};
  const auto values = pinValues(8);
  for (const double value : values) {
    const auto before = bench.count();
    bench.meter.touch(value);
    for (int i = 0; i < 3; ++i) {
      bench.meter.sendRubbish(rubbish[dice() % rubbish.size()]);
      letPass(std::chrono::milliseconds(dice() % 15));
    }
    REQUIRE(bench.has(before + 1));
    bench.lift();
  }
  checkReadings(bench.session.walk, values);
  CHECK(bench.told(LinkState::rubbish));
}

TEST_CASE("a knob turned to another function is told at once; nothing is taken until it is back") {
  MeterBench bench;
  bench.linkByTcp();
  bench.touchAndLift(0.452);
  bench.meter.setFunction(MeterFunction::dcVolts);
  const int reads = bench.meter.readsAnswered();
  bench.meter.touch(0.5);
  REQUIRE(bench.becomes(LinkState::wrongFunction));
  CHECK(bench.meter.readsAnswered() <= reads + 2);
  CHECK(wordsOf(bench.source->status().text).find("is at DC volts, diode is wanted") != std::string::npos);
  CHECK_FALSE(bench.source->takeNow());
  bench.live.clear();
  letPass(200ms);
  CHECK(bench.live.empty());
  CHECK(bench.count() == 1);
  SECTION("somebody turns it back") {
    bench.meter.setFunction(MeterFunction::diode);
  }
  SECTION("the program is asked to set it") {
    bench.source->setFunctionAgain();
  }
  REQUIRE(bench.becomes(LinkState::ready));
  REQUIRE(bench.has(2));
  CHECK(*bench.last().value == Approx(0.5).margin(2e-3));
}

TEST_CASE("a knob turned at random moments never slips a value of another function into the walk") {
  const unsigned seed = testSeed();
  std::printf("knob: seed %u\n", seed);
  std::mt19937 dice(seed);
  MeterBench bench;
  bench.linkByTcp();
  bench.meter.touch(0.5);
  REQUIRE(bench.has(1));
  bench.live.clear();
  for (int i = 0; i < 30; ++i) {
    bench.meter.setFunction(i % 2 == 0 ? MeterFunction::other : MeterFunction::diode); // reads 0.00123 there
    letPass(std::chrono::milliseconds(dice() % 25));
  }
  bench.meter.setFunction(MeterFunction::diode);
  REQUIRE(bench.becomes(LinkState::ready));
  REQUIRE(until([&] { return bench.live.size() > 5; }));
  // Turned away and back within one round of questions, faster than a hand can, it may slip a value in, but
  // none of those that stand still.
  for (const auto& value : bench.live)
    CHECK((value.reading.value.value() > 0.4 || value.phase == SettlePhase::held));
  CHECK(*bench.last().value == Approx(0.5).margin(2e-3));
  CHECK(bench.count() == 1);
}

TEST_CASE("a meter that lacks the function says so, and nothing is taken") {
  MeterBench bench;
  bench.meter.setFunction(MeterFunction::ohms);
  bench.meter.refuseFunction(MeterFunction::diode);
  bench.meter.touch(0.5);
  bench.link(bench.meter.address());
  REQUIRE(bench.becomes(LinkState::wrongFunction));
  CHECK(wordsOf(bench.source->status().text).find("refused CONF:DIOD: -113") != std::string::npos);
  letPass(200ms);
  CHECK(bench.count() == 0);
}

TEST_CASE("a pause between two values that can hide a touch is told, unless values are taken by key only") {
  MeterBench bench;
  bench.linkByTcp();
  int missed = 0;
  bench.source->whenMissed([&] { ++missed; });
  letPass(50ms);
  auto rules = fastRules(ReadingMode::diode);
  rules.hold = 200ms; // shorter ones a busy machine makes by itself
  rules.lift = 150ms;
  bench.source->setRules(rules);
  bench.live.clear();
  bench.meter.answerLate(250ms);
  CHECK(until([&] { return missed > 0; }));
  bench.source->setAutoTake(false);
  missed = 0;
  bench.live.clear();
  const auto before = bench.meter.readsAnswered();
  bench.meter.answerLate(250ms);
  REQUIRE(until([&] { return bench.meter.readsAnswered() > before + 5 && bench.live.size() > 5; }));
  CHECK(missed == 0);
}

TEST_CASE("a meter that knows only FUNC? is asked by that") {
  auto options = fastMeter();
  options.knowsConf = false;
  MeterBench bench(options);
  bench.link(bench.meter.address());
  REQUIRE(bench.becomes(LinkState::ready));
  bench.touchAndLift(0.452);
  CHECK(bench.count() == 1);
}

TEST_CASE("an address with an unknown pattern is refused with the known ones; a port that is none is told") {
  needEventLoop();
  const auto patterns = loadLinePatterns(NETMEND_SOURCE_DIR "/data/meter_lines.json");
  REQUIRE(patterns);
  const auto refused =
      LinkedMeterSource::make(SerialAddress{"/dev/null", "no-such", 0}, ReadingMode::diode, *patterns);
  REQUIRE_FALSE(refused);
  CHECK(wordsOf(refused.error().found) == "no-such");
  CHECK(wordsOf(refused.error().expected).find("value-unit") != std::string::npos);

  MeterBench bench;
  bench.link("serial:/dev/no-such-port");
  REQUIRE(bench.becomes(LinkState::lost));
  CHECK(wordsOf(bench.source->status().text).find("/dev/no-such-port") != std::string::npos);
}
