#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "netmend/base/said.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// What a meter's own knob is at. Several modes of reading share one: both polarities of diode do, for the
/// meter does not know which lead is where.
enum class MeterFunction {
  diode,
  ohms,
  fourWireOhms,
  continuity,
  dcVolts,
  temperature,
  other ///< anything that no walk wants: alternating volts, currents, capacitance …
};

/// The function that a mode of reading needs.
[[nodiscard]] MeterFunction functionFor(ReadingMode mode);

/// `diode`, `ohms`, `four-wire ohms`, `continuity`, `DC volts`, `temperature`, `other`.
[[nodiscard]] std::string_view word(MeterFunction function);
/// As people read it.
[[nodiscard]] Said nameOf(MeterFunction function);
[[nodiscard]] std::optional<MeterFunction> meterFunctionFrom(std::string_view word);
/// `V`, `Ω`, `°C`; empty for `other`.
[[nodiscard]] std::string_view unitOf(MeterFunction function);

/// One value as a meter sent it, in the SI unit of its function.
struct MeterValue {
  std::optional<double> value; ///< empty: OL
  double lastDigit = 0.0;      ///< what one more in the last place sent is worth; 0: unknown
  friend bool operator==(const MeterValue&, const MeterValue&) = default;
};

/// How the link to a meter stands.
enum class LinkState {
  connecting,
  ready,
  wrongFunction, ///< the meter is at another function than the walk wants, or does not tell which
  meterError,    ///< the meter answers, but reports an error of its own or that it has no value
  rubbish,       ///< bytes came that are no answer
  lost           ///< no link; another try follows by itself
};

struct LinkStatus {
  LinkState state = LinkState::connecting;
  Said text; ///< what, and with whom
  friend bool operator==(const LinkStatus&, const LinkStatus&) = default;
};

} // namespace netmend
