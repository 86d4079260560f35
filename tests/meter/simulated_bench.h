#pragma once

#include <chrono>
#include <deque>
#include <functional>
#include <optional>
#include <random>
#include <string>
#include <string_view>
#include <utility>

#include "simulated_meter.h"

namespace netmend {

/// What the practice meter's probe touches, and what the meter shows of it.
class SimulatedBench {
public:
  explicit SimulatedBench(const SimulatedMeterOptions& options) : options_(options), dice_(options.seed) {}

  void touch(double value, double perSecond = 0.0);
  void lift() { touched_ = false; }

  /// Empty: OL.
  [[nodiscard]] std::optional<double> value();

  MeterFunction function = MeterFunction::diode;
  std::function<void()> measured; ///< called after each value

private:
  using Clock = std::chrono::steady_clock;
  [[nodiscard]] double undisturbed() const;
  [[nodiscard]] std::optional<double> measure();

  SimulatedMeterOptions options_;
  std::mt19937 dice_;
  bool touched_ = false;
  double from_ = 0.0;
  double target_ = 0.0;
  double perSecond_ = 0.0;
  Clock::time_point since_;
};

/// The practice meter's side of SCPI, but for the time it takes.
class SimulatedScpi {
public:
  SimulatedScpi(SimulatedBench& bench, bool knowsConf) : bench_(&bench), knowsConf_(knowsConf) {}

  /// The answer, without line end; empty: there is none.
  [[nodiscard]] std::string answer(std::string_view command);

  std::optional<MeterFunction> refused;
  bool notANumberNext = false;
  std::chrono::milliseconds late{}; ///< of the next answer that is no value
  int reads = 0;

private:
  void configure(std::string_view function);
  void error(int code, const char* text);
  [[nodiscard]] std::string read();

  SimulatedBench* bench_;
  bool knowsConf_;
  std::deque<std::pair<int, std::string>> errors_;
};

} // namespace netmend
