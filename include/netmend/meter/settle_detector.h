#pragma once

#include <chrono>
#include <cstddef>
#include <deque>
#include <optional>
#include <utility>

#include "netmend/meter/meter_function.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// A value and when it was measured, on any clock that never goes back.
struct MeterSample {
  std::chrono::milliseconds time{};
  MeterValue reading;
  std::chrono::milliseconds span{};   ///< the meter's own time for a value: so long this one speaks for
  std::chrono::milliseconds unseen{}; ///< before it, when the meter could have measured and was not asked
};

/// What a meter shows while its probe touches nothing.
enum class OpenLeads {
  overLimit, ///< OL: modes that feed a current
  nearZero,  ///< about nothing: volts. A pin at 0 V then looks like open leads and is never taken by itself
  unknown    ///< cannot be told: nothing is taken by itself
};

/// When a value counts as settled, and when the probe as lifted.
struct SettleRules {
  OpenLeads openLeads = OpenLeads::overLimit;
  std::chrono::milliseconds hold{400}; ///< so long a value stays within its digits before it is settled
  std::size_t samples = 4;             ///< and at least so many values, however slow the meter; 3 or more
  double digits = 3.0;                 ///< from the lowest to the highest value within `hold`
  double leastDigit = 1e-3;            ///< a last place finer than this is taken as this; the mode's unit …
  double counts = 4000.0; ///< … and so is one finer than the value divided by this: a long number's
                          ///< last places never stand still under a probe held by hand
  std::chrono::milliseconds lift{120}; ///< so long leads are open before it is a lift and not a bounce; half
                                       ///< of what it takes to come down on another pin
  double jump = 10.0;                  ///< a change by so many bands from one value to the next is a lift too
  std::chrono::milliseconds gap{1500}; ///< after a longer silence what came before does not count
  double nearZero = 0.05;              ///< up to here, if `openLeads` is nearZero; the mode's unit
};

/// Sensible rules for a mode: by hand only in `temperature` and `drop under current`, where open leads look
/// like values.
[[nodiscard]] SettleRules settleRulesFor(ReadingMode mode);

enum class SettlePhase {
  open,    ///< no touch, or a pin that reads OL
  moving,  ///< a value, not yet still
  rising,  ///< it creeps one way: a capacitor charges
  settled, ///< still; taken by itself if it is a new touch
  held     ///< taken; the probe has not been lifted since
};

/// Tells from a stream of values when a probe rests on a pin and the value is settled, once a touch.
///
/// OL is never settled: on a diode range a pin that truly reads OL looks to the meter as leads in the air do,
/// so OL is taken by a key only (`take`). A touch ends with open leads that last for `lift`, or with a sudden
/// jump to another value (from pin to pin without leaving the board). A slow creep is no lift, and a jump
/// away and back to the value taken is none either: the probe has slipped. Leads held together read a short
/// as a pin on ground does, and are taken like one.
class SettleDetector {
public:
  SettleDetector() = default;
  explicit SettleDetector(const SettleRules& rules) : rules_(rules) {}

  /// What was taken: the value in the middle of those within `hold`.
  struct Taken {
    MeterValue reading;
    Settling settling = Settling::settled;
    bool again = false; ///< this touch had been taken before
  };

  /// Takes a value in; gives one back when it has just settled on a new touch. A value whose time lies before
  /// the last one's is not looked at.
  std::optional<Taken> add(const MeterSample& sample);

  /// What is there now, on demand: the settled value; a value that creeps, as `rising`; OL; or the last value
  /// that came, as `unknown`. The touch then counts as taken. Nothing if no value has come yet.
  std::optional<Taken> take();

  /// Whether, since this was last asked, values were lost (`MeterSample::unseen`) in which a touch may be
  /// hidden: for as long as one takes, in a touch that ended before it could be judged, or where a lift would
  /// tell two touches of one value from one.
  [[nodiscard]] bool takeMissed() { return std::exchange(missed_, false); }

  /// The stream has been interrupted: what came before says nothing of what comes. Whether the touch was
  /// taken is kept, so that one touch gives one reading, link or no link.
  void interrupt();

  /// From here on values are of another mode. A touch that was taken must be lifted first.
  void setRules(const SettleRules& rules);
  [[nodiscard]] const SettleRules& rules() const { return rules_; }
  [[nodiscard]] SettlePhase phase() const { return phase_; }
  /// 0 to 1: for how much of `hold` the last values have lain within their digits; 1 once taken.
  [[nodiscard]] double settledShare() const;

private:
  [[nodiscard]] bool looksOpen(const MeterValue& reading) const;
  /// What counts as one digit there, and how far settled values may lie apart.
  [[nodiscard]] double digitAt(const MeterValue& reading) const;
  [[nodiscard]] double bandAt(const MeterValue& reading) const { return rules_.digits * digitAt(reading); }
  [[nodiscard]] bool spansHold() const;
  [[nodiscard]] bool still() const;
  [[nodiscard]] bool creeping() const;
  [[nodiscard]] MeterValue middle() const;
  void addOpen(const MeterSample& sample);
  void addUnseen(const MeterSample& sample);
  void followUntaken(const MeterSample& sample);
  void judgeUntaken(std::chrono::milliseconds until, std::size_t values);
  void forgetUntaken();
  void followJump(const MeterSample& sample);
  void judgeJump();
  void hold(const MeterValue& reading);
  void release();

  SettleRules rules_;
  SettlePhase phase_ = SettlePhase::open;
  std::deque<MeterSample> window_; ///< of this touch; reaches back a little beyond `hold`
  std::optional<std::chrono::milliseconds> last_;
  std::optional<std::chrono::milliseconds> openSince_;
  std::optional<MeterValue> latest_;
  std::optional<std::chrono::milliseconds> untakenSince_; ///< the last value before this touch, if not taken
  std::size_t untakenValues_ = 0;
  std::chrono::milliseconds untakenUnseen_{}; ///< of this touch
  bool missed_ = false;
  bool doubtful_ = false;       ///< a lift of the touch that was taken may have gone unseen
  bool held_ = false;           ///< this touch was taken
  bool jumped_ = false;         ///< and the value has jumped away since
  std::optional<double> taken_; ///< the value taken, following its creep; empty: only a lift ends the touch
};

} // namespace netmend
