#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/meter/meter_function.h"

namespace netmend {

class OwnThread;

/// One pin touched for a while, then nothing for a while: from the first value measured then to the last,
/// however seldom the meter is asked. So each touch is enough to settle, and each lift is seen.
struct SimulatedTouch {
  std::optional<double> value; ///< in the unit of the function the meter is at; empty: the pin reads OL
  std::chrono::milliseconds touch{700}; ///< and at least 6 values
  std::chrono::milliseconds lift{300};  ///< and at least 2 values
};

struct SimulatedMeterOptions {
  std::chrono::milliseconds reading{15}; ///< how long it measures
  std::chrono::milliseconds settle{15};  ///< time constant of the way to a new value
  double noise = 1e-4;                   ///< standard deviation, as a share of the value
  unsigned seed = 1;                     ///< of the noise and of the fragments
  bool fragments = false;                ///< sends its answers in bits of 1 to 5 bytes
  bool knowsConf = true;                 ///< answers `CONF?`; else only `FUNC?`
};

/// A meter that is not there: for practice without one, and for tests. It speaks SCPI on a TCP port of this
/// machine and on pseudo-terminals, or sends lines by itself there. It has a thread of its own, as a meter
/// goes on whatever the program does; each function below has been done when it returns.
class SimulatedMeter {
public:
  using Options = SimulatedMeterOptions;

  /// `port` 0: any free one. Throws std::runtime_error if the port cannot be had.
  explicit SimulatedMeter(const Options& options = {}, std::uint16_t port = 0);
  ~SimulatedMeter();
  SimulatedMeter(const SimulatedMeter&) = delete;
  SimulatedMeter& operator=(const SimulatedMeter&) = delete;

  /// Where it listens, on 127.0.0.1.
  [[nodiscard]] std::uint16_t port() const;
  /// `tcp:127.0.0.1:PORT`, as the linked meter's source reads it.
  [[nodiscard]] std::string address() const;
  /// Opens a pseudo-terminal on which SCPI is spoken; its name, e.g. `/dev/pts/7`.
  [[nodiscard]] Result<std::string> openTerminal();
  /// Opens a pseudo-terminal on which it sends a line for every value; `line`, called in the meter's thread,
  /// writes it, without line end.
  [[nodiscard]] Result<std::string>
  openLineTerminal(std::function<std::string(MeterFunction, std::optional<double>)> line,
                   std::string lineEnd = "\r\n");

  /// The probe touches a pin whose value the meter will settle to; the way there begins at the last value.
  void touch(double value);
  /// The probe is in the air: OL, or about nothing in volts.
  void lift();
  /// A touch whose value grows without end by so much a second: a large capacitor.
  void touchCharging(double start, double perSecond);
  /// One touch after the other. `done` is called in the caller's event loop when the last was lifted.
  void play(const std::vector<SimulatedTouch>& touches, std::function<void()> done = {});

  /// Somebody turns the knob.
  void setFunction(MeterFunction function);
  [[nodiscard]] MeterFunction function() const;
  /// Commands that set the function are refused with an error, as by a meter that lacks it.
  void refuseFunction(MeterFunction function);

  /// All links break off at once; new ones are let in after `away`.
  void dropLink(std::chrono::milliseconds away = {});
  /// Bytes that nobody asked for.
  void sendRubbish(std::string_view bytes);
  /// The next value is 9.91E37: no number.
  void sendNaNOnce();
  /// It goes deaf: neither answers nor breaks off.
  void setDeaf(bool deaf);
  /// Its next answer that is no value comes so late; once.
  void answerLate(std::chrono::milliseconds by);
  /// How many values were measured on demand, and how often a link came about.
  [[nodiscard]] int readsAnswered() const;
  [[nodiscard]] int linksAccepted() const;

private:
  struct Inside;
  std::unique_ptr<OwnThread> thread_;
  std::unique_ptr<Inside> inside_; ///< lives there
};

} // namespace netmend
