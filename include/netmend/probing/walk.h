#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// What is known of the very board that was walked.
enum class Specimen { unknown, good, faulty };
/// `unknown`, `good`, `faulty`.
[[nodiscard]] std::string_view word(Specimen specimen);
[[nodiscard]] std::optional<Specimen> specimenFrom(std::string_view word);

/// What somebody says a good board reads: OL, or an interval in the mode's unit.
struct EnteredExpectation {
  ProbePoint point;
  ProbePoint other{PinId{}, "GND"};
  ReadingMode mode = ReadingMode::diode;
  bool overLimit = false;
  double lowest = 0.0;
  double highest = 0.0;
  std::string by;
  Condition condition;
  friend bool operator==(const EnteredExpectation&, const EnteredExpectation&) = default;
};

/// Points probed one after the other on one board, and what they read.
struct Walk {
  std::string title;
  std::string boardUuid; ///< of the board description whose pin ids the points carry; may be empty
  std::string boardName;
  std::string boardRevision;
  std::string serial; ///< of the specimen
  Specimen specimen = Specimen::unknown;
  ReadingMode mode = ReadingMode::diode; ///< what a new reading gets …
  ProbePoint other{PinId{}, "GND"};      ///< … unless it says otherwise
  std::string meter;
  std::string by;
  Condition condition;
  std::vector<ProbePoint> points; ///< in the order of the walk
  std::vector<Reading> readings;  ///< in the order taken; of several of one kind at a point the last counts
  std::vector<ProbePoint> skipped;
  std::vector<EnteredExpectation> entered; ///< known by hand rather than measured
  friend bool operator==(const Walk&, const Walk&) = default;
};

/// The pins of a part as a list of points, in the order of their numbers (`2` before `10`, `A2` before
/// `A10`).
[[nodiscard]] std::vector<ProbePoint> pointsOf(const Lookup& lookup, PartId part);

/// Those of them at whose pins there is nothing to probe: on no net, as the board knows, or on one of which
/// it says in its name that nothing is connected (`unconnected-(J1-Pad3)`, as KiCad writes it since version
/// 6). None where that would be all of them: then the board does not know nets.
[[nodiscard]] std::vector<ProbePoint> pointsWithoutNet(const Lookup& lookup,
                                                       const std::vector<ProbePoint>& points);

/// Gives every point of the walk that has no pin the one its label names, where that is one and only one.
/// Pin ids that belong to another board description are dropped first; labels stay. Sets `boardUuid`.
void matchToBoard(Walk& walk, const Lookup& lookup);

} // namespace netmend
