#include "old_words.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <nlohmann/json.hpp>

namespace netmend::oldbook {

namespace {

struct Unit {
  std::string_view sign;
  double scale;
};
constexpr std::array<Unit, 10> units{{{"V", 1.0},
                                      {"mV", 1e-3},
                                      {"µV", 1e-6},
                                      {"Ω", 1.0},
                                      {"mΩ", 1e-3},
                                      {"kΩ", 1e3},
                                      {"MΩ", 1e6},
                                      {"°C", 1.0},
                                      {"K", 1.0},
                                      {"", 1.0}}};

/// `0.441 V`, `-3 mV`, `4.70 kΩ`.
std::optional<double> valueOf(std::string_view text) {
  const auto space = text.find(' ');
  const std::string_view digits = text.substr(0, space);
  const std::string_view sign = space == std::string_view::npos ? "" : text.substr(space + 1);
  double value = 0.0;
  const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (read.ec != std::errc{} || read.ptr != digits.data() + digits.size()) return std::nullopt;
  for (const Unit& unit : units)
    if (unit.sign == sign) return value * unit.scale;
  return std::nullopt;
}

std::optional<VerdictKind> kindOf(std::string_view word) {
  using enum VerdictKind;
  constexpr std::array<std::pair<std::string_view, VerdictKind>, 7> words{
      {{"in range", inRange},
       {"open", open},
       {"short", shorted},
       {"low", low},
       {"high", high},
       {"reads where OL is expected", readsWhereOverLimitExpected},
       {"nothing to compare", nothingToCompare}}};
  for (const auto& [text, kind] : words)
    if (text == word) return kind;
  return std::nullopt;
}

/// Calls with each of what `by` parts.
template <class Take> void eachPart(std::string_view text, std::string_view by, Take take) {
  for (auto at = text.find(by); at != std::string_view::npos; at = text.find(by)) {
    take(text.substr(0, at));
    text.remove_prefix(at + by.size());
  }
  take(text);
}

std::optional<Expected> expectedOf(std::string_view words, ReadingMode mode) {
  Expected out;
  out.mode = mode;
  bool good = !words.empty();
  eachPart(words, " or ", [&](std::string_view alternative) {
    if (alternative == "OL") {
      out.overLimitShare = 1.0;
      return;
    }
    const auto to = alternative.find(" to ");
    const auto low = valueOf(alternative.substr(0, to));
    const auto high = to == std::string_view::npos ? low : valueOf(alternative.substr(to + 4));
    good = good && low && high;
    if (!good) return;
    out.shown.push_back({*low, *high});
    out.humps.push_back(
        {1.0, (*low + *high) / 2, (*high - *low) / 2, 0.0, 0.0}); // values are expected, not OL alone
  });
  if (!good) return std::nullopt;
  if (!out.shown.empty() && out.overLimitShare > 0.0) out.overLimitShare = 0.5;
  return out;
}

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

void readDiode(const std::string& head, StepMeasure& out) {
  const std::string value = upTo(head, {" in diode mode"});
  if (value == "OL") {
    out.overLimit = true;
    return;
  }
  const std::string sign = " ± ";
  const auto at = value.find(sign);
  const auto middle = valueOf(std::string_view(value).substr(0, at));
  if (!middle) return;
  const auto spread =
      at == std::string::npos ? std::nullopt : valueOf(std::string_view(value).substr(at + sign.size()));
  const double half = spread.value_or(halfLastDigit(value));
  out.interval = ValueInterval{*middle - half, *middle + half};
}

void readWire(const std::string& head, StepMeasure& out) {
  constexpr double jointLimit = 2.0; // "more than twice that: a joint is bad"
  const std::string about = "About ";
  out.mode = ReadingMode::ohms;
  if (!head.starts_with(about)) return;
  if (const auto ohms = valueOf(upTo(head.substr(about.size()), {" ohm"})))
    out.interval = ValueInterval{0.0, jointLimit * *ohms};
}

void readVolts(const std::string& head, StepMeasure& out) {
  const std::string written = upTo(head, {" V across"});
  out.mode = ReadingMode::volts;
  if (const auto volts = valueOf(written)) {
    const double half = halfLastDigit(written);
    out.interval = ValueInterval{*volts - half, *volts + half};
  }
}

std::string pointOf(const std::string& label) {
  return upTo(label, {" ("}) == "via at" || upTo(label, {" ("}) == "track at" ? label : upTo(label, {" ("});
}

} // namespace

std::optional<Ends> endsOf(const std::string& jumper) {
  const auto in = nlohmann::json::parse(jumper);
  return Ends{in.at("from").at("label"), in.at("to").at("label")};
}

std::string jumperWithPoints(const std::string& jumper) {
  auto out = nlohmann::json::parse(jumper);
  for (const char* end : {"from", "to"}) {
    out.at(end)["point"] = pointOf(out.at(end).at("label"));
    out.at(end)["pin"] = 0;
  }
  return out.dump();
}

StepMeasure measureOf(const Check& check) {
  StepMeasure out;
  const std::string head = upTo(check.expected, {": ", "; "});
  if (head.find(" in diode mode") != std::string::npos)
    readDiode(head, out);
  else if (head.find(" ohm") != std::string::npos)
    readWire(head, out);
  else if (head.find(" V across") != std::string::npos)
    readVolts(head, out);
  else if (check.expected.find("short") != std::string::npos)
    out.mode = ReadingMode::ohms;
  out.point.label = check.target;
  if (!check.jumper) return out;
  const bool from = check.text.find(check.jumper->from) != std::string::npos;
  const bool to = check.text.find(check.jumper->to) != std::string::npos;
  out.point.label = pointOf(!from && to ? check.jumper->to : check.jumper->from);
  if (from && to && out.mode == ReadingMode::ohms) out.other.label = pointOf(check.jumper->to);
  return out;
}

std::optional<Judged> judgedOf(const std::string& verdict, const std::string& expected, ReadingMode mode) {
  const auto kind = kindOf(verdict);
  if (!kind) return std::nullopt;
  Judged out;
  out.fromOldBook = true;
  out.verdict.kind = *kind;
  out.verdict.nothing =
      *kind == VerdictKind::nothingToCompare ? NothingBecause::noExpectedValue : NothingBecause::judged;
  out.verdict.expected = expectedOf(expected, mode);
  return out;
}

} // namespace netmend::oldbook
