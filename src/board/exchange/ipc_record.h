#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ipc_line.h"
#include "netmend/base/error.h"
#include "netmend/base/geometry.h"
#include "netmend/base/quantity.h"

namespace netmend::ipc {

/// The `UNITS` parameter: SI and CUST 1 count 0.001 mm and degrees, CUST 0 0.0001 inch and degrees,
/// CUST 2 0.0001 inch and hundredths of a radian.
struct Units {
  std::int64_t step = 2540; ///< nm
  bool radians = false;
  friend bool operator==(const Units&, const Units&) = default;
};
[[nodiscard]] std::optional<Units> unitsFrom(std::string_view value);

/// A standard electrical test record (317 327 367 307, and 017 027 067 that continue one).
struct TestRecord {
  int kind = 0; ///< 317, …; 17, 27, 67 for a continuation
  std::string net, reference, pin;
  bool midpoint = false;
  std::optional<Length> drill;
  std::optional<bool> plated;
  std::optional<int> access; ///< 0: both sides
  std::optional<Point> position;
  Length width;  ///< 0: not given
  Length length; ///< 0: round
  Degrees rotation;
  std::optional<int> mask; ///< bit 0: mask over it on side 1, bit 1: on side 2
  int fromLayer = 0, toLayer = 0;
  bool netRunsOn = false; ///< the net's name goes past its columns
};
/// On a mistake the Error has no file and place yet.
[[nodiscard]] Result<TestRecord> testRecord(const RecordLine& line, const Units& units);

/// The coordinates of 378 and 389: runs of points behind the pen.
struct Drawn {
  std::optional<Size> pen; ///< height 0: round
  bool penIsCorner =
      false; ///< 389: what stands in the pen's place was the first corner, which is in `runs`, too
  std::vector<Ring> runs;
  FilePlace place;
};
/// Adds the part of a line behind the fixed columns. Where the pen `mayMiss`, a second coordinate that
/// repeats one of the first says that the first was no pen.
[[nodiscard]] Result<void> addCoordinates(Drawn& drawn, std::string_view text, const Units& units,
                                          bool mayMiss);

} // namespace netmend::ipc
