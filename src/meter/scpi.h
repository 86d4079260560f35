#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "netmend/base/error.h"
#include "netmend/meter/meter_function.h"

/// The answers of a meter that speaks SCPI, as pure functions over one line without its end. Standards:
/// IEEE 488.2-1992 and SCPI-1999, both cited from memory.
namespace netmend {

/// A decimal number and the worth of its last place.
struct SentNumber {
  double value = 0.0;
  double lastDigit = 0.0;
};

/// IEEE 488.2 <NRf>: NR1 `-12`, NR2 `+0.452`, NR3 `4.52E-01`; blanks around are allowed. Nothing if it is
/// anything else, longer than 64 characters, or beyond what a double holds.
[[nodiscard]] std::optional<SentNumber> parseNrf(std::string_view text);

/// The answer to `READ?`.
struct ScpiValue {
  MeterValue reading;      ///< OL for ±9.9E37, SCPI-1999's infinity
  bool notANumber = false; ///< 9.91E37, SCPI-1999's NaN: the meter has no value; `reading` says nothing
};
/// Errors: no number, several numbers, a number beyond 1E15 that is none of SCPI's special ones.
[[nodiscard]] Result<ScpiValue> parseScpiValue(std::string_view line);

/// The answer to `CONF?` or `FUNC?`: `"DIOD"`, `"RES +1.0E+03,+1.0E-03"`, `"VOLT:DC"`; long forms and a
/// leading `SENS:` too. Functions that no walk wants are `other`. Error: not a string of that kind.
[[nodiscard]] Result<MeterFunction> parseScpiFunction(std::string_view line);

/// An entry of the error queue.
struct ScpiErrorEntry {
  int code = 0; ///< 0: the queue is empty
  std::string text;
};
/// The answer to `SYST:ERR?`: `0,"No error"`, `-113,"Undefined header"`.
[[nodiscard]] Result<ScpiErrorEntry> parseScpiErrorEntry(std::string_view line);

/// The answer to `*IDN?`: maker, model, serial number, firmware. Gives maker and model for people to read.
[[nodiscard]] Result<std::string> parseScpiIdentity(std::string_view line);

/// The command that sets a function; empty for `other`.
[[nodiscard]] std::string_view scpiCommandFor(MeterFunction function);

} // namespace netmend
