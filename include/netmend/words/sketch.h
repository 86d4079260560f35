#pragma once

#include <array>

#include "netmend/sketch/merge.h"
#include "netmend/sketch/sketch.h"
#include "netmend/sketch/worth.h"

/// What is said while a board is drawn.
namespace netmend {

/// The one thing to do next, as a sentence without full stop.
[[nodiscard]] Said dueSaid(const SketchDue& due);
/// How, and what else could be done; empty: nothing more is to be said.
[[nodiscard]] Said dueHelp(const SketchDue& due);
/// What was done, as the history calls it.
[[nodiscard]] Said nameOf(SketchAct act);
/// What joining did to other nets; empty: nothing.
[[nodiscard]] Said conflictSaid(const SketchAnswer& answer, const std::string& net);

/// What stands under a word of the line.
[[nodiscard]] Said meaningSaid(const LineWord& word, const Wanted& wanted, const ChipSizes& sizes);

enum class WorthGrade { nothing, some, enough };
/// What is drawn is good for a station, and what would buy most there.
struct WorthRow {
  WorthGrade grade = WorthGrade::nothing;
  Said what;
  Said more; ///< empty: nothing is missing
};
/// For Walk, Find and Bridge.
[[nodiscard]] std::array<WorthRow, 3> worthRows(const DrawingWorth& worth);

/// What the drawing and a file tell differently, and why one of them is proposed (empty: neither is).
[[nodiscard]] Said differenceSaid(const MergeDifference& difference);
[[nodiscard]] Said proposalSaid(const MergeDifference& difference);
/// What there is to merge, in figures.
[[nodiscard]] Said mergeSaid(const MergePlan& plan);

/// Where a pin's net leads to: `R28.1, C28.1`; empty: nowhere that is known.
[[nodiscard]] Said leadsToSaid(const Lookup& lookup, PinId pin);

} // namespace netmend
