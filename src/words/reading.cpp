#include "netmend/words/reading.h"

namespace netmend {

Said nameOf(ReadingMode mode) {
  switch (mode) {
  case ReadingMode::diode:
    return pattern("core", "diode");
  case ReadingMode::diodeReverse:
    return pattern("core", "diode reversed");
  case ReadingMode::ohms:
    return pattern("core", "ohms");
  case ReadingMode::milliohms:
    return pattern("core", "milliohms");
  case ReadingMode::continuity:
    return pattern("core", "continuity");
  case ReadingMode::volts:
    return pattern("core", "volts");
  case ReadingMode::dropUnderCurrent:
    return pattern("core", "drop under current");
  case ReadingMode::temperature:
    break;
  }
  return pattern("core", "temperature");
}

} // namespace netmend
