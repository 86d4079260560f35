#include "simulated_bench.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "meter/scpi.h"

namespace netmend {

namespace {

/// Above this a diode range shows OL.
constexpr double diodeLimit = 2.5;

std::string upperCase(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
  return out;
}

std::string_view scpiNameOf(MeterFunction function) {
  if (function == MeterFunction::other) return "VOLT:AC";
  return scpiCommandFor(function).substr(5);
}

} // namespace

double SimulatedBench::undisturbed() const {
  const double t = std::chrono::duration<double>(Clock::now() - since_).count();
  const double tau = std::chrono::duration<double>(options_.settle).count();
  const double left = tau > 0.0 ? std::exp(-t / tau) : 0.0;
  return target_ + (from_ - target_) * left + perSecond_ * t;
}

void SimulatedBench::touch(double value, double perSecond) {
  // A creep has no way to begin with: it starts where it is said to.
  from_ = perSecond != 0.0 ? value : target_;
  target_ = value;
  perSecond_ = perSecond;
  since_ = Clock::now();
  touched_ = true;
}

std::optional<double> SimulatedBench::value() {
  const auto out = measure();
  if (measured) measured();
  return out;
}

std::optional<double> SimulatedBench::measure() {
  std::normal_distribution<double> noise;
  if (function == MeterFunction::other) return 0.00123 + 1e-5 * noise(dice_);
  if (!touched_) {
    if (function == MeterFunction::dcVolts) return 1e-4 * noise(dice_);
    return std::nullopt;
  }
  const double value = undisturbed();
  if (function == MeterFunction::diode && value > diodeLimit) return std::nullopt;
  return value * (1.0 + options_.noise * noise(dice_));
}

std::string SimulatedScpi::read() {
  ++reads;
  if (std::exchange(notANumberNext, false)) return "+9.91000000E+37";
  const auto value = bench_->value();
  return value ? fmt::format("{:+.8E}", *value) : "+9.90000000E+37";
}

void SimulatedScpi::error(int code, const char* text) {
  if (errors_.size() < 20) errors_.emplace_back(code, text);
}

void SimulatedScpi::configure(std::string_view function) {
  const auto wanted = parseScpiFunction(fmt::format("\"{}\"", function));
  if (!wanted || (*wanted == MeterFunction::other && function != "VOLT:AC") || *wanted == refused)
    error(-113, "Undefined header");
  else
    bench_->function = *wanted;
}

std::string SimulatedScpi::answer(std::string_view command) {
  const std::string asked = upperCase(command);
  const auto name = scpiNameOf(bench_->function);
  if (asked == "*IDN?") return "NETMEND,PRACTICE METER,0,1.0";
  if (asked == "READ?") return read();
  if (asked == "FUNC?") return fmt::format("\"{}\"", name);
  if (asked == "CONF?" && knowsConf_) return fmt::format("\"{} +1.000000E+01,+1.000000E-05\"", name);
  if (asked == "SYST:ERR?") {
    if (errors_.empty()) return "+0,\"No error\"";
    const auto [code, text] = errors_.front();
    errors_.pop_front();
    return fmt::format("{:+},\"{}\"", code, text);
  }
  if (asked == "*CLS")
    errors_.clear();
  else if (asked.starts_with("CONF:"))
    configure(std::string_view(asked).substr(5));
  else
    error(-113, "Undefined header");
  return {};
}

} // namespace netmend
