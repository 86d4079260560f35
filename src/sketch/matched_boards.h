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
  void move(Ring& ring) const;
  void move(Polygon& polygon) const;
};

/// Pins, parts and nets of two boards that are the same, one to one: from the file's to the drawn ones.
struct MatchedBoards {
  MatchedBoards(const Lookup& drawn, const Lookup& file);

  std::map<PinId, PinId> drawnOf;
  std::map<PartId, PartId> partOf;
  std::map<NetId, NetId> netOf;
  std::optional<Laid> laid; ///< where at least three places fit within half a millimetre
  Length worst;

  [[nodiscard]] NetId drawnNet(NetId theirs) const {
    const auto found = netOf.find(theirs);
    return found != netOf.end() ? found->second : NetId();
  }

private:
  void matchByLabel();
  void lay();
  void matchByPlace();
  void matchPinless();
  void matchNets();

  const Lookup& drawn_;
  const Lookup& file_;
};

} // namespace netmend
