#include "findings.h"

#include <algorithm>

#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/verdict.h"

namespace netmend {

namespace {

/// A check at a place that was walked: what it read counts now.
bool takenAgain(const JobReading& check, const std::vector<JobReading>& readings) {
  return std::any_of(readings.begin(), readings.end(), [&](const JobReading& other) {
    return other.purpose == ReadingPurpose::fault && sameMeasurement(other.reading, check.reading);
  });
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
  return {job.reading.value, job.judged ? std::optional(job.kind()) : std::nullopt};
}

StripPin stripPin(const ReadingPair& pair) {
  StripPin pin;
  pin.label = pinOf(pair.any().reading.point.label);
  for (const JobReading* reading : {pair.before, pair.after}) {
    if (reading == nullptr) continue;
    if (!reading->judged) continue;
    const Judged& judged = *reading->judged;
    if (judged.limits) pin.expected = {{judged.limits->lowest, judged.limits->highest}};
    if (judged.verdict.expected) {
      pin.expectedOl =
          judged.verdict.expected->expectsOverLimit() || judged.verdict.expected->onlyOverLimit();
      for (const ValueInterval& range : judged.verdict.expected->shown)
        pin.expected.push_back({range.lowest, range.highest});
    }
    if (pin.expectedOl || !pin.expected.empty()) break;
  }
  if (pair.before != nullptr) pin.reading = stripReading(*pair.before);
  if (pair.after != nullptr) pin.after = stripReading(*pair.after);
  return pin;
}

} // namespace

std::vector<ReadingPair> pairReadings(const std::vector<JobReading>& readings) {
  const std::vector<const JobReading*> counting = inForce(readings);
  std::vector<ReadingPair> pairs;
  for (const JobReading& reading : readings) {
    if (reading.purpose == ReadingPurpose::check && !takenAgain(reading, readings)) continue;
    const auto same = std::find_if(pairs.begin(), pairs.end(), [&](const ReadingPair& pair) {
      return sameMeasurement(pair.any().reading, reading.reading);
    });
    ReadingPair& pair = same != pairs.end() ? *same : pairs.emplace_back();
    const JobReading*& place = reading.purpose == ReadingPurpose::proof ? pair.after : pair.before;
    const bool counts = std::find(counting.begin(), counting.end(), &reading) != counting.end();
    if (place == nullptr || counts) place = &reading;
  }
  return pairs;
}

std::vector<PinStrip> stripsOf(const std::vector<ReadingPair>& pairs) {
  std::vector<PinStrip> strips;
  for (const ReadingPair& pair : pairs) {
    const Reading& reading = pair.any().reading;
    const std::string points = connectorOf(reading.point.label);
    const auto same = std::find_if(strips.begin(), strips.end(), [&](const PinStrip& strip) {
      return strip.points == points && strip.mode == reading.mode && strip.other == reading.other.label;
    });
    PinStrip& strip = same != strips.end() ? *same : strips.emplace_back();
    strip.points = points;
    strip.mode = reading.mode;
    strip.other = reading.other.label;
    strip.pins.push_back(stripPin(pair));
  }
  return strips;
}

} // namespace netmend
