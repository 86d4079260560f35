#include "inputs.h"

#include <sstream>

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

Result<Reading> parseReading(const std::string& text, const Walk& defaults, const Lookup* lookup) {
  std::istringstream in(text);
  std::vector<std::string> words;
  for (std::string word; in >> word;)
    words.push_back(word);
  Reading out;
  out.mode = defaults.mode;
  out.other = defaults.other;
  out.meter = defaults.meter;
  out.by = defaults.by;
  out.condition = defaults.condition;
  out.time = std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now());
  if (!words.empty()) {
    if (const auto mode = readingModeFrom(words.front())) {
      out.mode = *mode;
      words.erase(words.begin());
    }
  }
  if (words.size() < 2 || words.size() > 3)
    return failure(
        {"not a reading", "", "", "\"" + text + "\"", "[MODE] POINT [OTHER] VALUE, for example \"J4.7 OL\""});
  const auto value = parseReadingValue(words.back(), out.mode);
  if (!value) return failure(value.error());
  out.value = value->value;
  const auto pointNamed = [&](const std::string& label) {
    ProbePoint point{PinId{}, label};
    if (lookup != nullptr)
      if (const auto pins = lookup->pinsLabelled(label); pins.size() == 1) point.pin = pins.front();
    return point;
  };
  out.point = pointNamed(words.front());
  if (words.size() == 3) out.other = pointNamed(words[1]);
  return out;
}

ExpectedTable expectedValues(const std::vector<Walk>& good, const Lookup* lookup, const ProbingData& data) {
  return expectedFromWalks(good, lookup, data.kinds, data.meters, {data.rules.variants, {}});
}

} // namespace netmend
