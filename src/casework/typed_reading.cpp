#include "netmend/casework/good_walks.h"

#include "netmend/casework/step_check.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"

namespace netmend {

namespace {

tl::unexpected<Error> notAReading(const std::string& text) {
  return failure(
      {pattern("core", "not a reading"), "", "", asItIs("\"" + text + "\""),
       pattern(
           "core",
           "[MODE] POINT [to POINT] VALUE, for example \"J4.7 OL\" or \"continuity J4.7 to C23.1 0.4\"")});
}

/// Splits off the mode at the front where there is one.
ReadingMode takeMode(std::string& text, ReadingMode otherwise) {
  for (const auto mode : {ReadingMode::diodeReverse, ReadingMode::diode, ReadingMode::ohms,
                          ReadingMode::milliohms, ReadingMode::continuity, ReadingMode::volts,
                          ReadingMode::dropUnderCurrent, ReadingMode::temperature}) {
    const std::string front = std::string(word(mode)) + " ";
    if (!text.starts_with(front)) continue;
    text.erase(0, front.size());
    return mode;
  }
  return otherwise;
}

/// Splits off the value at the end: the longest tail of at most two words that reads as one (`452 mV`).
Result<EnteredValue> takeValue(std::string& text, ReadingMode mode) {
  const auto last = text.find_last_of(' ');
  if (last == std::string::npos || last == 0) return notAReading(text);
  const auto before = text.find_last_of(' ', last - 1);
  if (before != std::string::npos && before > 0) {
    if (auto value = parseReadingValue(text.substr(before + 1), mode)) {
      text.erase(before);
      return value;
    }
  }
  auto value = parseReadingValue(text.substr(last + 1), mode);
  if (value) text.erase(last);
  return value;
}

} // namespace

Result<Reading> parseReading(const std::string& text, const Walk& defaults, const Lookup* lookup) {
  std::string rest = text;
  Reading out;
  out.mode = takeMode(rest, defaults.mode);
  out.other = defaults.other;
  out.meter = defaults.meter;
  out.by = defaults.by;
  out.condition = defaults.condition;
  out.time = std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now());
  const auto value = takeValue(rest, out.mode);
  if (!value) return failure(value.error());
  out.value = value->value;
  if (rest.ends_with(" to")) return notAReading(text); // the second point was forgotten
  const auto to = rest.find(" to ");
  out.point = withPin({PinId{}, rest.substr(0, to)}, lookup);
  if (to != std::string::npos) out.other = withPin({PinId{}, rest.substr(to + 4)}, lookup);
  if (out.point.label.empty() || out.other.label.empty()) return notAReading(text);
  return out;
}

} // namespace netmend
