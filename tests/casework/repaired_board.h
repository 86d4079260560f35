#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/casework/function_check.h"
#include "netmend/casework/proof.h"
#include "support/drawn_board.h"

namespace netmend::test {

/// What data/ holds.
inline const RepairData& repairData() {
  static const RepairData loaded = loadRepairData(std::filesystem::path(NETMEND_SOURCE_DIR) / "data").value();
  return loaded;
}

inline constexpr auto foundOpen = VerdictKind::open;
inline constexpr auto foundGood = VerdictKind::inRange;

using Told = std::vector<std::string>;

/// What good boards read, give or take 10 mV.
inline Expected reads(double volts) {
  Expected out;
  out.humps = {{1.0, volts, 0.01, 7.0, 8.0}};
  out.shown = {{volts - 0.05, volts + 0.05}};
  return out;
}

/// A board under repair: its job with readings and repairs, and what good boards read.
struct RepairedBoard : DrawnBoard {
  Job job;
  ExpectedTable expected;
  RepairData data = repairData();

  /// A pin with a round copper place; its net is named as it is.
  PinId placed(PartId part, const std::string& name, Point at) {
    const PinId id = unplaced(part, name);
    pad(id, at, PadReach::top, 0.4);
    return id;
  }
  PinId unplaced(PartId part, const std::string& name) {
    return DrawnBoard::pin(part, name, DrawnBoard::net("NET" + std::to_string(board.pins.size())));
  }
  /// The only pin of a part of its own, so that nothing is beside it.
  PinId lone(const std::string& reference) {
    const PartId part = DrawnBoard::part(reference, Side::top, {});
    return placed(part, "1", mm(50, 50 + 10 * static_cast<double>(board.parts.size())));
  }
  [[nodiscard]] ProbePoint at(PinId pin) const { return {pin, pinLabel(board, pin)}; }

  /// A diode reading to ground with its verdict; what it has besides is for the caller to change.
  JobReading& read(const ProbePoint& point, std::optional<double> value, VerdictKind verdict) {
    JobReading entry;
    entry.id = JobReadingId{job.readings.size() + 1};
    entry.purpose = ReadingPurpose::check;
    entry.reading.point = point;
    entry.reading.value = value;
    entry.judged = Judged{};
    entry.judged->verdict.kind = verdict;
    job.readings.push_back(entry);
    return job.readings.back();
  }
  JobReading& read(PinId pin, std::optional<double> value, VerdictKind verdict) {
    return read(at(pin), value, verdict);
  }

  RepairAction& act(RepairKind kind) {
    RepairAction action;
    action.id = RepairActionId{100 + job.actions.size()};
    action.kind = kind;
    job.actions.push_back(action);
    return job.actions.back();
  }
  [[nodiscard]] LandingPlace landing(PinId pin) const {
    const Lookup lookup(board);
    LandingPlace place;
    place.name.sort = PlaceName::Sort::pin;
    place.name.label = pinLabel(board, pin);
    place.at = positionOf(lookup, pin).value;
    place.point = at(pin);
    return place;
  }
  /// A wire of 0.1 mm straight from one pin to the other.
  RepairAction& bridge(PinId from, PinId to) { return bridge(landing(from), landing(to)); }
  RepairAction& bridge(const LandingPlace& from, const LandingPlace& to) {
    RepairAction& action = act(RepairKind::jumper);
    JumperRecord jumper;
    jumper.from = from;
    jumper.to = to;
    jumper.way = {from.at, to.at};
    jumper.wire = "enamelled copper 0.1 mm";
    jumper.net = "KEY";
    action.jumper = std::move(jumper);
    return action;
  }

  [[nodiscard]] std::vector<ProofPoint> points() const {
    const Lookup lookup(board);
    return proofPoints({job, &lookup, expected, data});
  }
  /// What they are, each as `landing C1.1`.
  [[nodiscard]] Told told() const { return told(points()); }
  [[nodiscard]] Told told(const std::vector<ProofPoint>& points) const {
    Told out;
    for (const ProofPoint& point : points) {
      const char* why = point.why == ProofWhy::odd        ? "odd "
                        : point.why == ProofWhy::landing  ? "landing "
                        : point.why == ProofWhy::endToEnd ? "wire "
                                                          : "neighbour ";
      out.push_back(why + (point.point.pin ? pinLabel(board, point.point.pin) : point.point.label));
    }
    return out;
  }
};

} // namespace netmend::test
