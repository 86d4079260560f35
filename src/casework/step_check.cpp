#include "netmend/casework/step_check.h"

#include <cmath>

#include "netmend/probing/reading_entry.h"

namespace netmend {

namespace {

constexpr double jointLimit = 2.0; ///< "more than twice that: a joint is bad"

/// What stands before the first of these ends.
std::string upTo(const std::string& text, std::initializer_list<std::string_view> ends) {
  std::size_t end = text.size();
  for (const auto each : ends)
    end = std::min(end, text.find(each));
  return text.substr(0, end);
}

/// A written value counts as met by all that would be written so: 0 V by anything below half a volt.
double halfLastDigit(const std::string& written) {
  const auto point = written.find_first_of(".,");
  if (point == std::string::npos) return 0.5;
  const auto end = written.find_first_not_of("0123456789", point + 1);
  const auto digits = (end == std::string::npos ? written.size() : end) - point - 1;
  return 0.5 * std::pow(10.0, -static_cast<double>(digits));
}

std::optional<double> valueIn(const std::string& text, ReadingMode mode) {
  const auto entered = parseReadingValue(text, mode);
  return entered ? entered->value : std::nullopt;
}

void readDiode(const std::string& head, StepReading& out) {
  out.mode = ReadingMode::diode;
  const std::string value = upTo(head, {" in diode mode"});
  if (value == "OL") {
    out.overLimit = true;
    return;
  }
  const std::string sign = " ± ";
  const auto at = value.find(sign);
  const auto middle = valueIn(value.substr(0, at), out.mode);
  if (!middle) return;
  const auto spread =
      at == std::string::npos ? std::nullopt : valueIn(value.substr(at + sign.size()), out.mode);
  const double half = spread.value_or(halfLastDigit(value));
  out.interval = ValueInterval{*middle - half, *middle + half};
}

void readWire(const std::string& head, StepReading& out) {
  out.mode = ReadingMode::ohms;
  const std::string about = "About ";
  if (!head.starts_with(about)) return;
  if (const auto ohms = valueIn(upTo(head.substr(about.size()), {" ohm"}), out.mode))
    out.interval = ValueInterval{0.0, jointLimit * *ohms};
}

void readVolts(const std::string& head, StepReading& out) {
  const std::string written = upTo(head, {" V across"});
  out.mode = ReadingMode::volts;
  if (const auto volts = valueIn(written, out.mode)) {
    const double half = halfLastDigit(written);
    out.interval = ValueInterval{*volts - half, *volts + half};
  }
}

} // namespace

ProbePoint landingPoint(const LandingPlace& landing, const Lookup* lookup) {
  const std::string pin = upTo(landing.label, {" ("});
  if (lookup != nullptr)
    if (const auto pins = lookup->pinsLabelled(pin); pins.size() == 1) return {pins.front(), pin};
  return {PinId{}, landing.label};
}

StepReading wantedReading(const WorkStep& step, const RepairAction& action, const Lookup* lookup) {
  StepReading out;
  const std::string head = upTo(step.expected, {": ", "; "});
  if (head.find(" in diode mode") != std::string::npos)
    readDiode(head, out);
  else if (head.find(" ohm") != std::string::npos)
    readWire(head, out);
  else if (head.find(" V across") != std::string::npos)
    readVolts(head, out);
  else if (step.expected.find("short") != std::string::npos)
    out.mode = ReadingMode::ohms;
  if (!action.jumper) {
    out.point.label = action.target;
    if (lookup != nullptr)
      if (const auto pins = lookup->pinsLabelled(action.target); pins.size() == 1)
        out.point.pin = pins.front();
    return out;
  }
  const auto from = step.text.find(action.jumper->from.label);
  const auto to = step.text.find(action.jumper->to.label);
  const bool both = from != std::string::npos && to != std::string::npos;
  out.point = landingPoint(
      from == std::string::npos && to != std::string::npos ? action.jumper->to : action.jumper->from, lookup);
  if (both && out.mode == ReadingMode::ohms) out.other = landingPoint(action.jumper->to, lookup);
  return out;
}

StepOutcome compareWith(const StepReading& wanted, std::optional<double> value) {
  if (!wanted.comparable()) return StepOutcome::notCompared;
  if (!value) return wanted.overLimit ? StepOutcome::agrees : StepOutcome::disagrees;
  const bool within =
      wanted.interval && *value >= wanted.interval->lowest && *value <= wanted.interval->highest;
  return within ? StepOutcome::agrees : StepOutcome::disagrees;
}

} // namespace netmend
