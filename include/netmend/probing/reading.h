#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/base/quantity.h"
#include "netmend/base/time.h"
#include "netmend/board/ids.h"

namespace netmend {

enum class ReadingMode {
  diode,        ///< red lead on ground, black on the point: the drop of the point's ground clamp
  diodeReverse, ///< leads swapped
  ohms,
  milliohms,
  continuity,
  volts,
  dropUnderCurrent, ///< volts along copper while a current is injected
  temperature
};

/// Where a lead is: an id for what the board knows, and the label as it was read.
struct ProbePoint {
  PinId pin; ///< none when the point is not on the board (yet)
  std::string label;
  friend bool operator==(const ProbePoint&, const ProbePoint&) = default;
};
/// The same pin; where one of them has none, the same label.
[[nodiscard]] bool samePoint(const ProbePoint& a, const ProbePoint& b);

/// What was true of the board while the reading was taken. Only equal conditions compare.
struct Condition {
  std::vector<std::string> plugged; ///< assemblies left plugged in, sorted
  bool powered = false;
  std::vector<std::string> lifted;    ///< parts lifted or removed, sorted by label
  std::optional<Celsius> temperature; ///< of the board; does not hinder comparing, it corrects
  std::string handling;               ///< "pressed", "cooled" … and where; empty: none
  friend bool operator==(const Condition&, const Condition&) = default;
};
/// In all but the temperature.
[[nodiscard]] bool sameCondition(const Condition& a, const Condition& b);

enum class Settling { settled, rising, unknown };

/// One value of a meter. `value` is in the mode's SI unit (V, Ω, °C); empty means OL.
struct Reading {
  ProbePoint point;
  ProbePoint other{PinId{}, "GND"}; ///< the other lead
  ReadingMode mode = ReadingMode::diode;
  std::optional<double> value; ///< empty: OL
  Settling settling = Settling::unknown;
  Time time{};
  std::string meter; ///< id of the meter profile
  std::string by;
  Condition condition;
  std::optional<Amperes> injected; ///< dropUnderCurrent only

  [[nodiscard]] bool overLimit() const { return !value; }
  friend bool operator==(const Reading&, const Reading&) = default;
};

/// How a point is read: what makes two readings of it comparable.
struct ReadingSetting {
  ReadingMode mode = ReadingMode::diode;
  ProbePoint other{PinId{}, "GND"};
  Condition condition;
  std::optional<Amperes> injected;
};
[[nodiscard]] ReadingSetting settingOf(const Reading& reading);
/// Of readings and settings alike.
template <class A, class B> [[nodiscard]] bool sameSetting(const A& a, const B& b) {
  return a.mode == b.mode && samePoint(a.other, b.other) && a.injected == b.injected &&
         sameCondition(a.condition, b.condition);
}
/// The same point read in the same way.
[[nodiscard]] bool sameMeasurement(const Reading& a, const Reading& b);

} // namespace netmend
