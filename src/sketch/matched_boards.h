#pragma once

#include <map>
#include <optional>
#include <vector>

#include "netmend/board/lookup.h"

namespace netmend {

/// Turned, moved and scaled by nothing: from a file's places to the drawing's.
struct Laid {
  double c = 1.0;
  double s = 0.0;
  double x = 0.0; ///< mm
  double y = 0.0;
  [[nodiscard]] Point operator()(Point p) const;
  [[nodiscard]] Degrees turn(Degrees angle) const;
};

/// Pins, parts and nets of two boards that are the same.
struct MatchedBoards {
  MatchedBoards(const Lookup& drawn, const Lookup& file);

  std::map<PinId, PinId> drawnOf; ///< of the file's pins
  std::map<PartId, PartId> partOf;
  std::map<NetId, NetId> netOf; ///< of the file's nets: the drawn one that it has most pins in common with
  std::map<NetId, NetId> fileNetOf; ///< the other way round
  std::optional<Laid> laid;         ///< where at least three places fit within half a millimetre
  Length worst;
};

} // namespace netmend
