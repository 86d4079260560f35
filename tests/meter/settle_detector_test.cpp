#include "netmend/meter/settle_detector.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>
#include <vector>

#include "support/seed.h"

using namespace netmend;
using namespace std::chrono_literals;

namespace {

/// A meter that gives a value every `step`, into a detector.
struct Stream {
  SettleDetector detector;
  std::chrono::milliseconds step{100};
  std::chrono::milliseconds time{0};
  std::chrono::milliseconds span{0};
  std::chrono::milliseconds unseen{0}; ///< before the next value
  std::vector<SettleDetector::Taken> taken;

  explicit Stream(ReadingMode mode = ReadingMode::diode) : detector(settleRulesFor(mode)) {}

  void value(std::optional<double> value, double lastDigit = 1e-3) {
    if (const auto one = detector.add({time, {value, lastDigit}, span, unseen})) taken.push_back(*one);
    unseen = {};
    time += step;
  }
  /// Nobody asks the meter for so long before the next value.
  void lose(std::chrono::milliseconds length) {
    time += length;
    unseen = length;
  }
  void hold(std::optional<double> v, std::chrono::milliseconds length) {
    for (const auto end = time + length; time < end;)
      value(v);
  }
  void lift(std::chrono::milliseconds length = 300ms) { hold(std::nullopt, length); }
  [[nodiscard]] std::vector<double> values() const {
    std::vector<double> all;
    for (const auto& one : taken)
      all.push_back(one.reading.value.value_or(-999.0));
    return all;
  }
};

} // namespace

TEST_CASE("each touch gives one value, as soon as it has stood still for the set time") {
  Stream stream;
  stream.lift();
  stream.hold(0.452, 400ms);
  CHECK(stream.taken.empty());
  CHECK(stream.detector.phase() == SettlePhase::moving);
  stream.value(0.452);
  CHECK(stream.values() == std::vector{0.452});
  stream.hold(0.452, 5s);
  CHECK(stream.values() == std::vector{0.452});
  CHECK(stream.detector.phase() == SettlePhase::held);
  stream.lift();
  stream.hold(0.452, 1s); // the neighbour reads the same
  CHECK(stream.values() == std::vector{0.452, 0.452});
  CHECK(stream.taken.back().settling == Settling::settled);
}

TEST_CASE(
    "how far a value is settled grows with the time that it stands still, and by the number of values") {
  Stream stream; // 400 ms, four values
  CHECK(stream.detector.settledShare() == 0.0);
  stream.lift();
  CHECK(stream.detector.settledShare() == 0.0);
  const double shares[] = {0.0, 0.25, 0.5, 0.75}; // after 0, 100, 200, 300 ms
  for (const double share : shares) {
    stream.value(0.452);
    CHECK(stream.detector.settledShare() == share);
  }
  stream.value(0.4549); // not quite three digits away
  CHECK(stream.taken.size() == 1);
  CHECK(stream.detector.settledShare() == 1.0);
  stream.lift();
  stream.value(0.452);
  stream.value(0.452);
  CHECK(stream.detector.settledShare() == 0.25);
  stream.value(0.456); // more than three: it begins again
  CHECK(stream.detector.settledShare() == 0.0);
  Stream slow;
  slow.step = 1s; // its values are few, not its time short
  slow.value(0.452);
  slow.value(0.452);
  CHECK(slow.detector.settledShare() == 0.5);
  slow.value(0.452);
  CHECK(slow.detector.settledShare() == 0.75);
}

TEST_CASE("a value asked for in a touch that was taken already says so, one of the next touch does not") {
  Stream stream;
  stream.lift();
  stream.hold(0.452, 200ms);
  const auto again = [&] { return stream.detector.take().value().again; };
  CHECK_FALSE(again()); // not settled yet: asked for by key
  stream.hold(0.452, 300ms);
  CHECK(again());
  CHECK(again());
  stream.lift();
  stream.hold(0.460, 200ms);
  CHECK_FALSE(again());
  stream.lift();
  stream.hold(0.452, 600ms); // taken by itself
  REQUIRE(stream.taken.size() == 1);
  CHECK_FALSE(stream.taken.back().again);
  CHECK(again());
  // OL is what lifted leads read as well: pin after pin may be open.
  stream.lift();
  CHECK_FALSE(again());
  CHECK_FALSE(again());
  // The lead has gone over to another pin without leaving the board.
  stream.hold(0.452, 600ms);
  stream.hold(0.900, 200ms);
  CHECK_FALSE(again());
}

TEST_CASE("a value that keeps moving by more than its digits is not taken") {
  Stream stream;
  for (int i = 0; i < 50; ++i)
    stream.value(i % 2 == 0 ? 0.450 : 0.456);
  CHECK(stream.taken.empty());
  CHECK(stream.detector.phase() == SettlePhase::moving);
}

TEST_CASE("noise within the digits does not hinder; what is taken lies in its middle") {
  Stream stream;
  stream.step = 20ms;
  for (int i = 0; i < 60; ++i)
    stream.value(0.452 + 0.001 * ((i * 7) % 3 - 1));
  REQUIRE(stream.taken.size() == 1);
  CHECK(*stream.taken[0].reading.value == Approx(0.452));
}

TEST_CASE("OL is never taken by itself, and by a key at once") {
  Stream stream;
  stream.lift(5s);
  CHECK(stream.taken.empty());
  CHECK(stream.detector.phase() == SettlePhase::open);
  const auto taken = stream.detector.take();
  REQUIRE(taken);
  CHECK_FALSE(taken->reading.value);
  stream.lift(200ms);
  stream.hold(0.6, 1s); // nothing had to be lifted first
  CHECK(stream.values() == std::vector{0.6});
}

TEST_CASE("a bounce of the probe does not make two readings of one touch") {
  Stream stream;
  stream.step = 20ms;
  stream.hold(0.452, 1s);
  stream.lift(80ms);
  stream.hold(0.452, 1s);
  CHECK(stream.values() == std::vector{0.452});
  stream.lift(300ms);
  stream.hold(0.452, 1s);
  CHECK(stream.values() == std::vector{0.452, 0.452});
}

TEST_CASE("a probe that moves on without leaving the board is seen by the jump, one that slips and returns "
          "is not") {
  Stream stream;
  stream.hold(0.452, 1s);
  stream.hold(0.610, 1s);
  CHECK(stream.values() == std::vector{0.452, 0.610});
  stream.value(0.2);
  stream.value(0.3);
  stream.hold(0.611, 2s);
  CHECK(stream.values() == std::vector{0.452, 0.610});
  stream.hold(0.452, 1s);
  CHECK(stream.values() == std::vector{0.452, 0.610, 0.452});
}

TEST_CASE("a value that creeps away after it was taken is no new touch") {
  Stream stream;
  stream.hold(0.452, 1s);
  for (double v = 0.452; v < 0.8; v += 0.002)
    stream.value(v);
  stream.hold(0.8, 2s);
  CHECK(stream.values() == std::vector{0.452});
}

TEST_CASE("a capacitor that charges is told as rising and taken as such on demand only") {
  Stream stream;
  stream.step = 50ms;
  double v = 0.1;
  for (int i = 0; i < 30; ++i, v += 0.0005)
    stream.value(v);
  CHECK(stream.taken.empty());
  CHECK(stream.detector.phase() == SettlePhase::rising);
  const auto taken = stream.detector.take();
  REQUIRE(taken);
  CHECK(taken->settling == Settling::rising);
  CHECK(*taken->reading.value == Approx(v - 0.0005));
  stream.hold(0.9, 3s); // charged at last, in a jump: still the same touch
  CHECK(stream.taken.empty());
  stream.lift();
  stream.hold(0.9, 1s);
  CHECK(stream.values() == std::vector{0.9});
}

TEST_CASE("on demand before it is settled a value is of unknown settling, and the touch counts as taken") {
  Stream stream;
  CHECK_FALSE(stream.detector.take());
  stream.lift();
  stream.value(0.3);
  stream.value(0.4);
  const auto taken = stream.detector.take();
  REQUIRE(taken);
  CHECK(*taken->reading.value == 0.4);
  CHECK(taken->settling == Settling::unknown);
  stream.hold(0.452, 2s);
  CHECK(stream.taken.empty());
}

TEST_CASE("a break in the stream neither doubles a touch nor lets an old value help a new one to settle") {
  Stream stream;
  stream.hold(0.452, 1s);
  stream.detector.interrupt();
  stream.hold(0.453, 2s);
  CHECK(stream.values() == std::vector{0.452});
  stream.lift();
  stream.hold(0.5, 300ms);
  stream.time += 3s; // nothing came for that long
  stream.hold(0.5, 300ms);
  CHECK(stream.values() == std::vector{0.452});
  stream.hold(0.5, 300ms);
  CHECK(stream.values() == std::vector{0.452, 0.5});
}

TEST_CASE("after a change of mode a touch that was taken has to be lifted first") {
  Stream stream;
  stream.hold(0.452, 1s);
  stream.detector.setRules(settleRulesFor(ReadingMode::ohms));
  stream.hold(4700.0, 2s);
  CHECK(stream.values() == std::vector{0.452});
  stream.lift();
  stream.hold(4700.0, 1s);
  CHECK(stream.values() == std::vector{0.452, 4700.0});
}

TEST_CASE("in volts leads in the air read about nothing and are not taken") {
  Stream stream(ReadingMode::volts);
  stream.hold(0.003, 3s);
  stream.hold(3.301, 1s);
  stream.hold(0.002, 1s);
  stream.hold(3.301, 1s);
  CHECK(stream.values() == std::vector{3.301, 3.301});
}

TEST_CASE("where open leads cannot be told nothing is taken but on demand") {
  Stream stream(ReadingMode::dropUnderCurrent);
  stream.hold(0.00123, 5s);
  CHECK(stream.taken.empty());
  CHECK(stream.detector.phase() == SettlePhase::settled);
  const auto taken = stream.detector.take();
  REQUIRE(taken);
  CHECK(taken->settling == Settling::settled);
}

TEST_CASE("a slow meter needs its number of values, not the time alone") {
  Stream stream;
  stream.step = 500ms;
  stream.value(0.452);
  stream.value(0.452);
  CHECK(stream.taken.empty());
  stream.value(0.452);
  stream.value(0.452);
  CHECK(stream.values() == std::vector{0.452});
}

TEST_CASE("one OL is a lift if the meter's own time for a value is that of a lift") {
  for (const auto& [span, readings] : {std::pair{119ms, 1U}, std::pair{120ms, 2U}}) {
    Stream stream;
    stream.step = span;
    stream.span = span;
    stream.hold(0.452, 1s);
    stream.value(std::nullopt);
    stream.hold(0.452, 1s); // a neighbour that reads the same
    CHECK(stream.taken.size() == readings);
    CHECK_FALSE(stream.detector.takeMissed());
  }
}

TEST_CASE("a pause in which nobody asked is told once if it can hide a touch") {
  for (const auto& [pause, missed] : {std::pair{399ms, false}, std::pair{400ms, true}}) {
    Stream stream;
    stream.lift();
    stream.lose(pause);
    stream.lift();
    CHECK(stream.detector.takeMissed() == missed);
    CHECK_FALSE(stream.detector.takeMissed());
  }
}

TEST_CASE("a lift in a pause is known by another value after it; where it is the same, that is told") {
  for (const auto& [pause, missed] : {std::pair{239ms, false}, std::pair{240ms, true}}) {
    Stream stream;
    stream.step = 20ms;
    stream.hold(0.452, 1s);
    stream.lose(pause);
    stream.hold(0.452, 1s);
    CHECK(stream.values() == std::vector{0.452});
    CHECK(stream.detector.takeMissed() == missed);
    stream.lose(pause);
    stream.hold(0.464, 1s); // nearer than a jump: 12 digits
    CHECK(stream.values() == std::vector{0.452, 0.464});
    CHECK_FALSE(stream.detector.takeMissed());
  }
  Stream stream;
  stream.step = 20ms;
  stream.hold(0.452, 1s);
  stream.lose(119ms); // too short for a lift: a creep
  stream.hold(0.464, 1s);
  CHECK(stream.values() == std::vector{0.452});
}

TEST_CASE("OL between two values that are the same, with pauses about it, is told and not guessed at") {
  for (const auto& [pause, missed] : {std::pair{119ms, false}, std::pair{120ms, true}}) {
    Stream stream;
    stream.step = 20ms;
    stream.hold(0.452, 1s);
    stream.value(std::nullopt);
    stream.lose(pause);
    stream.hold(0.452, 1s);
    CHECK(stream.values() == std::vector{0.452});
    CHECK(stream.detector.takeMissed() == missed);
    stream.lift(300ms);
    stream.hold(0.452, 1s);
    CHECK(stream.values() == std::vector{0.452, 0.452});
    CHECK_FALSE(stream.detector.takeMissed());
  }
}

TEST_CASE("a touch of which pauses left too few values is told when it ends") {
  const auto touch = [](int values, std::chrono::milliseconds pause) {
    Stream stream;
    stream.step = 20ms;
    stream.lift();
    for (int i = 0; i < values; ++i) {
      stream.lose(pause);
      stream.value(0.452);
    }
    stream.lift();
    return std::pair{stream.taken.size(), stream.detector.takeMissed()};
  };
  CHECK(touch(3, 120ms) == std::pair{std::size_t{0}, true});
  CHECK(touch(3, 100ms) == std::pair{std::size_t{0}, false}); // 380 ms: too short for a touch
  CHECK(touch(6, 120ms) == std::pair{std::size_t{1}, false});
}

TEST_CASE("values from the past and values that are none are not looked at") {
  Stream stream;
  stream.hold(0.452, 300ms);
  CHECK_FALSE(stream.detector.add({-5s, {0.9, 1e-3}}));
  CHECK_FALSE(stream.detector.add({stream.time, {std::nan(""), 1e-3}}));
  stream.hold(0.452, 300ms);
  CHECK(stream.values() == std::vector{0.452});
}

TEST_CASE("a walk of touches with noise, bounces and pauses of every length gives each value once") {
  const unsigned seed = testSeed();
  std::printf("settle walk: seed %u\n", seed);
  std::mt19937 dice(seed);
  const auto pick = [&](double lowest, double highest) {
    return std::uniform_real_distribution<double>(lowest, highest)(dice);
  };
  std::normal_distribution<double> noise(0.0, 2e-4);
  Stream stream;
  std::vector<double> truth;
  for (int pin = 0; pin < 500; ++pin) {
    stream.step = std::chrono::milliseconds(static_cast<int>(pick(15, 60)));
    const double target = pick(0.15, 0.8);
    truth.push_back(target);
    double value = pick(0.0, 1.0);
    const auto begin = stream.time;
    const auto end = begin + 1s + std::chrono::milliseconds(static_cast<int>(pick(0, 1500)));
    while (stream.time < end) {
      value += (target - value) * 0.6;
      stream.value(value + noise(dice));
      // Bounces, for one value only; not so late that the touch is too short from there on.
      const bool mayBounce = stream.time < begin + 300ms || stream.taken.size() == truth.size();
      if (mayBounce && pick(0, 1) < 0.02) stream.value(std::nullopt);
    }
    stream.hold(std::nullopt, std::chrono::milliseconds(static_cast<int>(pick(250, 900))));
  }
  REQUIRE(stream.taken.size() == truth.size());
  for (std::size_t i = 0; i < truth.size(); ++i)
    CHECK(*stream.taken[i].reading.value == Approx(truth[i]).margin(1.5e-3));
}
