#include "inputs.h"

#include "netmend/board/exchange/import.h"
#include "netmend/jobbook/job_book.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/walk_file.h"
#include "netmend/probing/words.h"

namespace netmend {

Result<LoadedBoard> loadBoard(const std::string& file) {
  auto imported = importBoard(file);
  if (!imported) return failure(imported.error());
  LoadedBoard out;
  out.board = std::make_unique<const Board>(std::move(imported->board));
  out.lookup = std::make_unique<const Lookup>(*out.board);
  out.notices = std::move(imported->notices);
  return out;
}

Result<PinId> pinLabelled(const Lookup& lookup, const std::string& label) {
  const auto pins = lookup.pinsLabelled(label);
  if (pins.empty()) return failure({"no such pin on this board", "", "", label, "for example J4.11"});
  if (pins.size() > 1) {
    return failure({"pin label is not unique on this board", "", "",
                    label + ", " + std::to_string(pins.size()) + " times", "a label that stands once"});
  }
  return pins.front();
}

Result<NetId> netNamed(const Lookup& lookup, const std::string& name) {
  const auto nets = lookup.netsNamed(name);
  if (nets.empty())
    return failure({"no such net on this board", "", "", name, "a name that board summary shows"});
  if (nets.size() > 1)
    return failure({"net name is not unique on this board", "", "", name, "a name that stands once"});
  return nets.front();
}

Result<std::vector<Walk>> loadWalks(const std::vector<std::string>& files, const Lookup* lookup) {
  std::vector<Walk> out;
  for (const auto& file : files) {
    auto walk = readWalkFile(file);
    if (!walk) return failure(walk.error());
    if (lookup != nullptr) matchToBoard(*walk, *lookup);
    out.push_back(std::move(*walk));
  }
  return out;
}

Result<std::vector<Walk>> loadGoodWalks(const std::vector<std::string>& files, const std::string& book,
                                        const Lookup* lookup) {
  auto out = loadWalks(files, lookup);
  if (!out) return out;
  for (auto& walk : *out) {
    if (walk.specimen == Specimen::faulty)
      return failure({"is the walk of a faulty board and cannot say what a good one reads", walk.title});
    walk.specimen = Specimen::good;
  }
  if (book.empty() || lookup == nullptr) return out;
  auto opened = JobBook::open(book);
  if (!opened) return failure(opened.error());
  auto kept = opened->knownGoodWalks(lookup->board().info.uuid);
  if (!kept) return failure(kept.error());
  for (auto& walk : *kept) {
    matchToBoard(walk, *lookup);
    out->push_back(std::move(walk));
  }
  return out;
}

namespace {

tl::unexpected<Error> notAReading(const std::string& text) {
  return failure(
      {"not a reading", "", "", "\"" + text + "\"",
       "[MODE] POINT [to POINT] VALUE, for example \"J4.7 OL\" or \"continuity J4.7 to C23.1 0.4\""});
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
  const auto pointNamed = [&](const std::string& label) {
    ProbePoint point{PinId{}, label};
    if (lookup != nullptr)
      if (const auto pins = lookup->pinsLabelled(label); pins.size() == 1) point.pin = pins.front();
    return point;
  };
  const auto to = rest.find(" to ");
  out.point = pointNamed(rest.substr(0, to));
  if (to != std::string::npos) out.other = pointNamed(rest.substr(to + 4));
  if (out.point.label.empty() || out.other.label.empty()) return notAReading(text);
  return out;
}

ExpectedTable expectedValues(const std::vector<Walk>& good, const Lookup* lookup, const ProbingData& data) {
  return expectedFromWalks(good, lookup, data.kinds, data.meters, {data.rules.variants, {}});
}

} // namespace netmend
