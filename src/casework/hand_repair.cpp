#include "netmend/casework/hand_repair.h"

#include <algorithm>
#include <array>
#include <sstream>
#include <string_view>

#include "netmend/casework/take_reading.h"
#include "netmend/jobbook/record.h"
#include "netmend/netgraph/line.h"

namespace netmend {

namespace {

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Both ends where two are named, else one.
std::vector<std::string> endsOf(const std::string& target) {
  constexpr std::array<std::string_view, 6> between{"to", "-", "–", "→", "->", ">"};
  std::vector<std::string> words, ends(1);
  std::istringstream in(target);
  for (std::string word; in >> word;)
    words.push_back(word);
  for (const std::string& word : words) {
    if (std::find(between.begin(), between.end(), word) != between.end())
      ends.emplace_back();
    else
      ends.back() += (ends.back().empty() ? "" : " ") + word;
  }
  std::erase(ends, "");
  if (ends.size() == 1 && words.size() == 2) return words;
  return ends;
}

bool isBetweenPlaces(RepairKind kind) {
  return kind == RepairKind::wire || kind == RepairKind::removeBridge;
}

/// "J4.99" where J4 is known and has no such pin.
Result<void> checkPin(const std::string& label, const Lookup* lookup) {
  const auto dot = label.rfind('.');
  if (lookup == nullptr || dot == std::string::npos || !lookup->pinsLabelled(label).empty()) return {};
  const std::string reference = label.substr(0, dot);
  const auto& parts = lookup->board().parts;
  const bool known =
      std::any_of(parts.begin(), parts.end(), [&](const Part& part) { return part.reference == reference; });
  if (!known) return {};
  return failure({said(pattern("core", "{} has no such pin"), reference), "", "", label,
                  pattern("core", "a pin of it, as the board numbers them")});
}

Result<std::vector<ProbePoint>> placesOf(const HandRepair& repair, const HandRepairBasis& basis) {
  const Lookup* lookup = basis.board.lookup.get();
  const bool between = isBetweenPlaces(repair.kind);
  const std::vector<std::string> ends = between                            ? endsOf(repair.target)
                                        : repair.kind == RepairKind::other ? std::vector<std::string>()
                                                                           : std::vector{repair.target};
  std::vector<ProbePoint> out;
  for (const std::string& end : ends) {
    if (auto there = checkPin(end, lookup); !there) return failure(there.error());
    const ProbePoint place = withPin({PinId{}, end}, lookup);
    if (place.pin || between) out.push_back(place);
  }
  if (between && (out.size() > 2 || (out.size() == 2 && samePoint(out[0], out[1]))))
    return failure({.message = pattern("core", "two different places belong here"),
                    .found = repair.target,
                    .expected = pattern("core", "both of them: J4.9 U3.12")});
  if (out.empty() && !basis.odd.label.empty()) out.push_back(basis.odd);
  return out;
}

/// With the part off, a track cut or the board given up, nobody knows what a good board would read.
bool leavesTheBoardWhole(RepairKind kind) {
  return kind != RepairKind::removePart && kind != RepairKind::cutTrack && kind != RepairKind::notEconomic;
}

void addKnownValues(RepairAction& action, const HandRepairBasis& basis) {
  if (!leavesTheBoardWhole(action.kind)) return;
  for (WorkStep& step : action.steps) {
    if (!step.measure || step.measure->comparable() || step.measure->mode != ReadingMode::diode) continue;
    StepMeasure& measure = *step.measure;
    const auto before =
        std::find_if(basis.readings.rbegin(), basis.readings.rend(), [&](const JobReading& each) {
          return each.purpose == ReadingPurpose::fault && each.reading.mode == measure.mode &&
                 samePoint(each.reading.point, measure.point) && samePoint(each.reading.other, measure.other);
        });
    // A place is held against boards in the condition that it was read in before.
    const ReadingSetting setting = before != basis.readings.rend()
                                       ? settingOf(before->reading)
                                       : ReadingSetting{measure.mode, measure.other, {}, {}};
    const Expected* known = basis.expected.find(measure.point, setting);
    // Boards that differ are no figure to stop the work at.
    if (known == nullptr || known->boards == 0 || known->shown.size() > 1) continue;
    if (!known->shown.empty()) measure.interval = known->shown.front();
    measure.overLimit = known->onlyOverLimit() || known->expectsOverLimit();
  }
}

/// A wire between lines that the board keeps apart.
std::optional<Said> doubtOf(const RepairAction& action, const BoardUnderWork& under) {
  if (action.kind != RepairKind::wire || !under.board) return std::nullopt;
  const Board& board = *under.board;
  const auto netOf = [&](const ProbePoint& place) {
    const Pin* pin = board.pins.find(place.pin);
    return pin != nullptr && pin->net.known() ? pin->net.value : NetId();
  };
  const NetId from = netOf(action.places[0]), to = netOf(action.places[1]);
  if (!from || !to || from == to) return std::nullopt;
  const auto line = lineOf(*under.lookup, *under.graph, from).nets;
  if (std::find(line.begin(), line.end(), to) != line.end()) return std::nullopt;
  return said(pattern("core", "Mind: {} is on {}, {} on {}. This wire would join two lines."),
              action.places[0].label, board.nets.find(from)->name, action.places[1].label,
              board.nets.find(to)->name);
}

} // namespace

HandRepair handRepairFrom(RepairKind kind, const std::string& line) {
  const auto comma = kind == RepairKind::other ? std::string::npos : line.find(',');
  if (comma == std::string::npos) return {kind, trimmed(line), {}};
  return {kind, trimmed(line.substr(0, comma)), trimmed(line.substr(comma + 1))};
}

Result<HandRepaired> handRepair(const HandRepair& repair, const HandRepairBasis& basis) {
  auto places = placesOf(repair, basis);
  if (!places) return failure(places.error());
  const auto steps = workSteps(basis.steps, {repair.kind, repair.target, repair.reason, *places});
  if (!steps) return failure(steps.error());
  HandRepaired out;
  out.action.kind = repair.kind;
  out.action.target = repair.target;
  if (isBetweenPlaces(repair.kind) && places->size() == 2)
    out.action.target = places->front().label + " – " + places->back().label;
  out.action.reason = repair.reason;
  out.action.places = std::move(*places);
  out.action.steps = toWorkSteps(*steps);
  addKnownValues(out.action, basis);
  out.doubt = doubtOf(out.action, basis.board);
  return out;
}

} // namespace netmend
