#include "findings.h"

#include <algorithm>

#include "netmend/probing/reading_entry.h"
#include "netmend/probing/verdict.h"
#include "netmend/probing/words.h"

namespace netmend {

namespace {

bool samePlace(const ProbePoint& a, const ProbePoint& b) {
  if (a.pin && b.pin) return a.pin == b.pin;
  return a.label == b.label;
}

bool comparable(const Reading& a, const Reading& b) {
  Condition conditionA = a.condition;
  Condition conditionB = b.condition;
  conditionA.temperature.reset();
  conditionB.temperature.reset();
  return a.mode == b.mode && samePlace(a.point, b.point) && samePlace(a.other, b.other) &&
         conditionA == conditionB && a.injected == b.injected;
}

std::vector<std::string> split(const std::string& text, const std::string& by) {
  std::vector<std::string> out;
  std::size_t from = 0;
  for (std::size_t at = text.find(by); at != std::string::npos; at = text.find(by, from)) {
    out.push_back(text.substr(from, at - from));
    from = at + by.size();
  }
  out.push_back(text.substr(from));
  return out;
}

std::string connectorOf(const std::string& label) {
  const std::size_t dot = label.rfind('.');
  return dot == std::string::npos ? std::string() : label.substr(0, dot);
}

std::string pinOf(const std::string& label) {
  const std::size_t dot = label.rfind('.');
  return dot == std::string::npos ? label : label.substr(dot + 1);
}

StripReading stripReading(const JobReading& job) {
  return {job.reading.value, markForVerdict(job.verdict), job.verdict, isFinding(job.verdict)};
}

StripPin stripPin(const ReadingPair& pair) {
  StripPin pin;
  pin.label = pinOf(pair.any().reading.point.label);
  for (const JobReading* reading : {pair.before, pair.after}) {
    if (reading == nullptr) continue;
    const auto expected = parseExpected(reading->expected, reading->reading.mode);
    if (!expected) continue;
    pin.expectedOl = expected->overLimit;
    pin.expected = expected->intervals;
    break;
  }
  if (pair.before != nullptr) pin.reading = stripReading(*pair.before);
  if (pair.after != nullptr) pin.after = stripReading(*pair.after);
  return pin;
}

std::string titleOf(const std::string& connector, const Reading& reading) {
  std::string title = connector.empty() ? "Points" : connector;
  title += ", ";
  title += word(reading.mode);
  if (!reading.other.label.empty()) title += ", other lead on " + reading.other.label;
  return title;
}

} // namespace

std::vector<ReadingPair> pairReadings(const std::vector<JobReading>& readings) {
  std::vector<ReadingPair> pairs;
  for (const JobReading& reading : readings) {
    if (reading.purpose == ReadingPurpose::check) continue;
    const auto same = std::find_if(pairs.begin(), pairs.end(), [&](const ReadingPair& pair) {
      return comparable(pair.any().reading, reading.reading);
    });
    ReadingPair& pair = same != pairs.end() ? *same : pairs.emplace_back();
    (reading.purpose == ReadingPurpose::proof ? pair.after : pair.before) = &reading;
  }
  return pairs;
}

std::vector<PinStrip> stripsOf(const std::vector<ReadingPair>& pairs) {
  std::vector<PinStrip> strips;
  for (const ReadingPair& pair : pairs) {
    const Reading& reading = pair.any().reading;
    const std::string title = titleOf(connectorOf(reading.point.label), reading);
    const auto same = std::find_if(strips.begin(), strips.end(),
                                   [&](const PinStrip& strip) { return strip.title == title; });
    PinStrip& strip = same != strips.end() ? *same : strips.emplace_back();
    strip.title = title;
    strip.mode = reading.mode;
    strip.pins.push_back(stripPin(pair));
  }
  return strips;
}

std::optional<ExpectedWords> parseExpected(const std::string& words, ReadingMode mode) {
  if (words.empty()) return std::nullopt;
  ExpectedWords out;
  for (const std::string& alternative : split(words, " or ")) {
    const std::vector<std::string> ends = split(alternative, " to ");
    const auto low = parseReadingValue(ends.front(), mode);
    const auto high = parseReadingValue(ends.back(), mode);
    if (!low || !high || ends.size() > 2) return std::nullopt;
    if (low->value && high->value)
      out.intervals.push_back({*low->value, *high->value});
    else if (ends.size() == 1)
      out.overLimit = true;
    else
      return std::nullopt;
  }
  return out;
}

} // namespace netmend
