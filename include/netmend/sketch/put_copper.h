#pragma once

#include <vector>

#include "netmend/board/edit.h"
#include "netmend/board/lookup.h"

/// Edits that draw copper and zones.
namespace netmend {

/// How one goes from a click to the next.
enum class Bend {
  straight,
  slantFirst, ///< at 45°, then straight on
  slantLast
};

/// The way without what a hand trembles: corners nearer than this to the line of the others go (Douglas and
/// Peucker, 1973).
[[nodiscard]] Ring simplified(const Ring& way, Length tremble);

/// The way from one place to the other, both included.
[[nodiscard]] Ring bentWay(Point from, Point to, Bend bend);

struct DrawnTrack {
  Ring way;
  Length width;
  Side side = Side::top;
  NetId net; ///< none: not known
};
/// Puts a track for each piece of the way; as a continuation of `begun`. Pieces of no length are left out.
[[nodiscard]] Edit putTrack(const Board& board, const DrawnTrack& track, Edit begun = {});
/// It runs from here to there inside the board; nobody knows how, or on which layer.
[[nodiscard]] Edit putUnknownRun(const Board& board, Point from, Point to, NetId net, Edit begun = {});
/// How wide a via is drawn (common practice, no source).
inline constexpr Length usualVia{500'000};
/// Through all layers.
[[nodiscard]] Edit putVia(const Board& board, Point at, Length diameter, NetId net, Edit begun = {});
/// A filled outline. Fails with fewer than three corners.
[[nodiscard]] Result<Edit> putArea(const Board& board, const Ring& outline, Side side, NetId net);

/// A zone of its own. Fails with fewer than three corners.
[[nodiscard]] Result<Edit> putZone(const Board& board, ZoneKind kind, const std::string& name,
                                   const Ring& outline, Side side);
/// A zone over a part's body, with its kind's margin, under the part's name. Fails for a part of which no
/// outline is known: neither a body nor pads that span one.
[[nodiscard]] Result<Edit> zoneFromPart(const Lookup& lookup, PartId part, ZoneKind kind);

/// What is drawn at a place, for taking it off.
struct CopperAt {
  TrackId track;
  ViaId via;
  AreaId area;
  ZoneId zone;
  [[nodiscard]] bool any() const { return track || via || area || zone; }
  /// Something that copper is drawn from and to.
  [[nodiscard]] bool isLine() const { return track || via; }
  friend bool operator==(const CopperAt&, const CopperAt&) = default;
};
/// The nearest via or track within reach on this side, or inside the board; else the smallest area or zone
/// there.
[[nodiscard]] CopperAt copperAt(const Board& board, Point p, Side side, Length reach);
[[nodiscard]] Edit removeCopper(const CopperAt& what);
/// The net of a via, track or area; none where it is not known.
[[nodiscard]] NetId netOf(const Board& board, const CopperAt& what);
/// It is of this net, as a continuation of `begun`.
[[nodiscard]] Edit giveNet(const Board& board, const CopperAt& what, NetId net, Edit begun = {});
/// Where copper that meets it there ends: the via's place, or the nearest one of the track's middle line;
/// else `p` itself.
[[nodiscard]] Point placeOn(const Board& board, const CopperAt& what, Point p);

/// Parts once more, elsewhere.
struct PartsCopy {
  std::vector<PartId> parts;
  Point by;              ///< of the first part's first pad
  bool mirrored = false; ///< about an upright axis
};
/// The parts with new numbers, their pins and pads; what joins them to each other, tracks and vias included,
/// as new nets; ground and supplies stay theirs. Other nets of the copies are not known. Fails when a part
/// has no place.
[[nodiscard]] Result<Edit> copyParts(const Lookup& lookup, const PartsCopy& copy);

} // namespace netmend
