#pragma once

#include <chrono>
#include <deque>
#include <functional>
#include <memory>
#include <optional>
#include <variant>
#include <vector>

#include "netmend/meter/line_pattern.h"
#include "netmend/meter/meter_address.h"
#include "netmend/meter/meter_function.h"
#include "netmend/meter/settle_detector.h"
#include "netmend/probing/reading_source.h"

namespace netmend {

class LineMeter;
class OwnThread;
class ScpiMeter;

/// How long the program waits, and how often it asks.
struct MeterTimes {
  std::chrono::milliseconds answer{2500};    ///< for an answer; a slow meter integrates for a second
  std::chrono::milliseconds connect{5000};   ///< for a link to come about
  std::chrono::milliseconds pace{20};        ///< between two rounds of questions
  std::chrono::milliseconds silence{4000};   ///< of a meter that sends by itself: longer is a lost link
  std::chrono::milliseconds retryFirst{250}; ///< before the first new try; doubled with each …
  std::chrono::milliseconds retryMost{5000}; ///< … up to here
};

/// What the big figure in the window shows.
struct LiveValue {
  MeterValue reading;
  ReadingMode mode = ReadingMode::diode;
  SettlePhase phase = SettlePhase::open;
  double settled = 0.0; ///< share of the time that it has to stand still
};

/// Readings from a meter on a wire, none of them typed: each touch gives one as soon as its value is settled.
///
/// The wire has a thread of its own, so that values keep coming, with their times, while the thread that this
/// lives in is busy; they are judged, and handed on, in that thread's event loop. Never waits for the meter.
/// Only values that the meter, asked
/// after the value was measured, said to be of the function wanted are looked at. No reading is taken while
/// the link is anything but `ready`, neither by itself nor on demand.
class LinkedMeterSource : public ReadingSource {
public:
  /// `patterns` is needed for meters that send lines by themselves. Errors: the address names a pattern that
  /// is not there. Nothing is opened before `start`.
  [[nodiscard]] static Result<std::unique_ptr<LinkedMeterSource>>
  make(const MeterAddress& address, ReadingMode mode, const std::vector<LinePattern>& patterns = {},
       const MeterTimes& times = {});
  ~LinkedMeterSource() override;
  LinkedMeterSource(const LinkedMeterSource&) = delete;
  LinkedMeterSource& operator=(const LinkedMeterSource&) = delete;

  void start();
  /// Closes the link. Readings taken before can still be fetched by `next`; then the source has ended.
  void stop();

  [[nodiscard]] std::optional<Result<ReadingEvent>> next() override;
  [[nodiscard]] bool ended() const override;

  /// What the walk wants from here on. Sets the meter's function and the rules of settling for the mode.
  void setMode(ReadingMode mode);
  [[nodiscard]] ReadingMode mode() const { return mode_; }
  /// Sets the meter's function once more, after somebody turned the knob.
  void setFunctionAgain();
  void setAutoTake(bool on) { autoTake_ = on; }
  /// Until the next change of mode.
  void setRules(const SettleRules& rules);

  /// Takes what the meter shows now, OL too. Error: the link is not ready, or no value has come lately.
  [[nodiscard]] Result<void> takeNow();
  void skip();
  void back();
  void undo();

  /// Called when values were lost so that a touch may have been missed: from here on values may be assigned
  /// one point too early.
  void whenMissed(std::function<void()> handler) { missed_ = std::move(handler); }
  /// Called with every value that comes.
  void whenLive(std::function<void(const LiveValue&)> handler) { live_ = std::move(handler); }
  /// Called whenever the status changes, at once.
  void whenStatus(std::function<void(const LinkStatus&)> handler) { statusHandler_ = std::move(handler); }
  [[nodiscard]] const LinkStatus& status() const { return status_; }

private:
  explicit LinkedMeterSource(ReadingMode mode);
  void takeIn(const MeterSample& sample, int epoch);
  void takeStatus(const LinkStatus& status);
  void give(const SettleDetector::Taken& taken);
  void queue(ReadingEvent event);

  using Meter = std::variant<std::unique_ptr<ScpiMeter>, std::unique_ptr<LineMeter>>;
  std::unique_ptr<OwnThread> thread_;
  Meter meter_;        ///< lives there
  int epoch_ = 0;      ///< counts what the meter was told; values from before are of no use
  int meterEpoch_ = 0; ///< the same, as far as the meter's thread knows
  ReadingMode mode_;
  SettleDetector detector_;
  LinkStatus status_;
  std::deque<ReadingEvent> events_;
  std::optional<std::chrono::milliseconds> lastValue_;
  bool autoTake_ = true;
  bool stopped_ = false;
  std::function<void()> missed_;
  std::function<void(const LiveValue&)> live_;
  std::function<void(const LinkStatus&)> statusHandler_;
};

} // namespace netmend
