#include "netmend/meter/meter_function.h"

#include <array>

#include "netmend/base/words.h"

namespace netmend {

namespace {

constexpr std::array<Word<MeterFunction>, 7> functionWords{{{MeterFunction::diode, "diode"},
                                                            {MeterFunction::ohms, "ohms"},
                                                            {MeterFunction::fourWireOhms, "four-wire ohms"},
                                                            {MeterFunction::continuity, "continuity"},
                                                            {MeterFunction::dcVolts, "DC volts"},
                                                            {MeterFunction::temperature, "temperature"},
                                                            {MeterFunction::other, "other"}}};

} // namespace

MeterFunction functionFor(ReadingMode mode) {
  switch (mode) {
  case ReadingMode::diode:
  case ReadingMode::diodeReverse:
    return MeterFunction::diode;
  case ReadingMode::ohms:
    return MeterFunction::ohms;
  case ReadingMode::milliohms:
    return MeterFunction::fourWireOhms;
  case ReadingMode::continuity:
    return MeterFunction::continuity;
  case ReadingMode::volts:
  case ReadingMode::dropUnderCurrent:
    return MeterFunction::dcVolts;
  case ReadingMode::temperature:
    return MeterFunction::temperature;
  }
  return MeterFunction::other;
}

std::string_view word(MeterFunction function) {
  return wordFor(functionWords, function);
}

Said nameOf(MeterFunction function) {
  switch (function) {
  case MeterFunction::diode:
    return pattern("core", "diode");
  case MeterFunction::ohms:
    return pattern("core", "ohms");
  case MeterFunction::fourWireOhms:
    return pattern("core", "four-wire ohms");
  case MeterFunction::continuity:
    return pattern("core", "continuity");
  case MeterFunction::dcVolts:
    return pattern("core", "DC volts");
  case MeterFunction::temperature:
    return pattern("core", "temperature");
  case MeterFunction::other:
    break;
  }
  return pattern("core", "other");
}

std::optional<MeterFunction> meterFunctionFrom(std::string_view text) {
  return fromWord(functionWords, text);
}

std::string_view unitOf(MeterFunction function) {
  switch (function) {
  case MeterFunction::diode:
  case MeterFunction::dcVolts:
    return "V";
  case MeterFunction::ohms:
  case MeterFunction::fourWireOhms:
  case MeterFunction::continuity:
    return "Ω";
  case MeterFunction::temperature:
    return "°C";
  case MeterFunction::other:
    return "";
  }
  return "";
}

} // namespace netmend
