#pragma once

#include <chrono>
#include <deque>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include <QTimer>

#include "line_framer.h"
#include "meter_link.h"
#include "netmend/meter/settle_detector.h"
#include "scpi.h"

namespace netmend {

/// Who hears of what a meter says.
struct MeterSinks {
  std::function<void(const MeterSample&)> value; ///< of the function wanted, and of no other
  std::function<void(const LinkStatus&)> status;
};

/// The least of the last times: what something takes when nothing is late.
class LeastOfLast {
public:
  std::chrono::milliseconds add(std::chrono::milliseconds time);

private:
  std::deque<std::chrono::milliseconds> times_;
};

/// A meter that speaks SCPI, asked in rounds: `READ?`, then which function that was, then whether it went
/// well. A value is handed on only after its round has ended without a doubt: whatever stray line comes in
/// between, the three answers do not look alike, so that none is taken for another.
class ScpiMeter {
public:
  ScpiMeter(const MeterAddress& address, MeterFunction wanted, const MeterTimes& times, MeterSinks sinks);

  void start();
  void stop();
  /// Sets the function, at once or after the round under way, whose value is dropped.
  void setFunction(MeterFunction wanted);

private:
  /// Looks at a line; false: it is no answer to what was asked.
  using Reader = bool (ScpiMeter::*)(std::string_view);

  void begin();
  void ask(std::string_view question, Reader reader);
  void takeBytes(std::string_view bytes);
  void takeLine(const Result<std::string>& line);
  void takeTimeout();
  void lost(const Said& why);
  void rubbish(const Said& what);

  bool readIdentity(std::string_view line);
  bool readSameIdentity(std::string_view line);
  bool readConfigureError(std::string_view line);
  bool readValue(std::string_view line);
  bool readFunction(std::string_view line);
  bool readRoundError(std::string_view line);

  void configure();
  void startRound();
  void endRound();
  [[nodiscard]] MeterSample sampleOf(const MeterValue& reading);
  [[nodiscard]] LinkStatus wrongFunction() const;

  MeterLink link_;
  MeterTimes times_;
  MeterSinks sinks_;
  LineFramer framer_{LineFramer::Begin::atLine};
  QTimer answer_;
  QTimer pace_;
  Reader reader_ = nullptr; ///< of the answer that is due

  MeterFunction wanted_;
  std::string identity_; ///< the whole answer to `*IDN?`
  std::string name_;
  std::string refusal_; ///< what the meter said when the function was set
  bool configureNext_ = false;
  bool asksConf_ = true; ///< else `FUNC?`

  std::chrono::milliseconds asked_{};                  ///< when the question under way was
  std::optional<std::chrono::milliseconds> lastValue_; ///< when the last `READ?` was answered
  LeastOfLast pause_;                                  ///< from such an answer to the next `READ?`
  LeastOfLast measuring_;                              ///< from there to its answer

  struct Round {
    std::optional<ScpiValue> value; ///< none: only the function was asked
    MeterSample sample;             ///< the value, if it is one
    std::optional<MeterFunction> function;
    std::string error;
    int errors = 0;
    bool doubtful = false; ///< a line came that was no answer
  };
  Round round_;
};

} // namespace netmend
