#pragma once

#include <optional>
#include <vector>

#include "netmend/probing/verdict.h"
#include "netmend/probing/walk.h"

namespace netmend {

/// How readings came to stand one pin beside where they were taken.
enum class ShiftKind {
  pinLeftOut,  ///< each is of the pin after the one where it stands
  pinReadTwice ///< each is of the pin before
};

/// From this reading of the walk on, all of them.
struct Shift {
  ShiftKind kind = ShiftKind::pinLeftOut;
  std::size_t firstReading = 0; ///< index into `Walk::readings`
  std::size_t telling = 0;      ///< readings that by themselves are ten times likelier at the neighbour
  double evidence = 0.0;        ///< natural logarithm of how many times likelier all of them are so
  friend bool operator==(const Shift&, const Shift&) = default;
};

/// Whether the walk's last readings, taken one pin after the other, stand one pin beside where they were
/// taken: with at least three that tell, and so much likelier that, were it so in one walk of a hundred, it
/// is so by a hundred to one (docs/methods/probing.md). Each pin may be faulty besides. Nothing where too few
/// neighbours differ in what good boards read.
[[nodiscard]] std::optional<Shift> shiftIn(const Walk& walk, const std::vector<ProbePoint>& passedOver,
                                           const ExpectedTable& expected, const ProbingData& data);

/// Where the readings from `shift.firstReading` on were taken, each in turn.
[[nodiscard]] std::vector<ProbePoint> shiftedBack(const Walk& walk, const std::vector<ProbePoint>& passedOver,
                                                  const Shift& shift);

} // namespace netmend
