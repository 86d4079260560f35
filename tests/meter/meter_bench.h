#pragma once

#include <catch2/catch.hpp>

#include <chrono>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QTimer>

#include "netmend/meter/linked_meter_source.h"
#include "netmend/probing/walk_session.h"
#include "simulated_meter.h"
#include "support/seed.h"

namespace netmend::testing {

/// One application a test program; never taken down.
inline void needEventLoop() {
  static int argc = 1;
  static char name[] = "test";
  static char* argv[]{name, nullptr};
  if (QCoreApplication::instance() == nullptr) new QCoreApplication(argc, argv);
}

/// Lets events happen until it is so, or time is up.
inline bool until(const std::function<bool()>& so,
                  std::chrono::milliseconds most = std::chrono::seconds(60)) {
  QElapsedTimer timer;
  timer.start();
  QTimer tick; // wakes the loop when nothing else does
  tick.start(3);
  while (!so()) {
    if (timer.elapsed() > most.count()) return false;
    QCoreApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents);
  }
  return true;
}

inline void letPass(std::chrono::milliseconds time) {
  (void)until([] { return false; }, time);
}

/// The shipped rules at ten times the speed, so that a walk does not take a minute.
inline SettleRules fastRules(ReadingMode mode) {
  SettleRules rules = settleRulesFor(mode);
  rules.hold = std::chrono::milliseconds(30);
  rules.lift = std::chrono::milliseconds(12);
  return rules;
}

inline SimulatedMeterOptions fastMeter() {
  SimulatedMeterOptions options;
  options.reading = std::chrono::milliseconds(3);
  options.settle = std::chrono::milliseconds(4);
  return options;
}

inline MeterTimes fastTimes() {
  MeterTimes times;
  times.pace = std::chrono::milliseconds(1);
  times.silence = std::chrono::milliseconds(600);
  times.retryFirst = std::chrono::milliseconds(20);
  times.retryMost = std::chrono::milliseconds(80);
  return times;
}

/// A source linked to a practice meter, and a walk that takes what it gives.
struct MeterBench {
  SimulatedMeter meter;
  std::unique_ptr<LinkedMeterSource> source;
  WalkSession session;
  std::vector<LinkStatus> statuses;
  std::size_t looked = 0; ///< at so many of them
  std::vector<Result<ReadingEvent>> failures;
  std::vector<LiveValue> live;
  MeterTimes times = fastTimes();

  explicit MeterBench(const SimulatedMeterOptions& options = fastMeter(), int pins = 40)
      : meter((needEventLoop(), options)) {
    for (int pin = 1; pin <= pins; ++pin)
      session.walk.points.push_back({PinId{}, "J4." + std::to_string(pin)});
  }

  void link(const std::string& address, ReadingMode mode = ReadingMode::diode,
            const std::vector<LinePattern>& patterns = {}) {
    session.walk.mode = mode;
    auto made = LinkedMeterSource::make(parseMeterAddress(address).value(), mode, patterns, times);
    REQUIRE(made);
    source = std::move(*made);
    source->setRules(fastRules(mode));
    source->whenStatus([this](const LinkStatus& status) { statuses.push_back(status); });
    source->whenLive([this](const LiveValue& value) { live.push_back(value); });
    source->whenReady([this] {
      while (auto event = source->next())
        if (!*event || !take(session, **event, {})) failures.push_back(*event);
    });
    source->start();
  }
  void linkByTcp() {
    link(meter.address());
    REQUIRE(becomes(LinkState::ready));
  }

  /// Whether it is in this state, or has been told to be since this was last asked: states may follow each
  /// other within one turn of the event loop.
  [[nodiscard]] bool becomes(LinkState state) {
    return until([&] {
      while (looked < statuses.size())
        if (statuses[looked++].state == state) return true;
      return source->status().state == state;
    });
  }
  void forgetStatuses() {
    statuses.clear();
    looked = 0;
  }
  [[nodiscard]] bool becomes(SettlePhase phase) {
    return until([&] { return !live.empty() && live.back().phase == phase; });
  }
  [[nodiscard]] bool has(std::size_t readings) {
    return until([&] { return session.walk.readings.size() >= readings; });
  }
  /// Whether a status of this kind was told since `forgetStatuses`.
  [[nodiscard]] bool told(LinkState state, const std::string& words = {}) const {
    for (const auto& status : statuses)
      if (status.state == state && wordsOf(status.text).find(words) != std::string::npos) return true;
    return false;
  }
  /// Touches a pin until its reading is there, then lifts.
  void touchAndLift(double value) {
    const auto before = session.walk.readings.size();
    meter.touch(value);
    REQUIRE(has(before + 1));
    lift();
  }
  /// Until the linked meter has noticed it.
  void lift() {
    meter.lift();
    REQUIRE(becomes(SettlePhase::open));
  }
  [[nodiscard]] std::size_t count() const { return session.walk.readings.size(); }
  [[nodiscard]] const Reading& last() const { return session.walk.readings.back(); }
};

/// What a connector's pins read.
inline std::vector<double> pinValues(std::size_t pins) {
  std::mt19937 dice(testSeed());
  std::vector<double> values;
  for (std::size_t i = 0; i < pins; ++i)
    values.push_back(0.15 + 0.001 * static_cast<double>(dice() % 600));
  values[1] = values[0]; // neighbours that read the same
  return values;
}

/// One reading a point, in their order, each that of its pin.
inline void checkReadings(const Walk& walk, const std::vector<double>& values) {
  REQUIRE(walk.readings.size() == values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    CHECK(walk.readings[i].point.label == walk.points[i].label);
    CHECK(walk.readings[i].value.value() == Approx(values[i]).margin(2e-3));
    CHECK(walk.readings[i].settling == Settling::settled);
    CHECK(walk.readings[i].mode == ReadingMode::diode);
  }
}

} // namespace netmend::testing
