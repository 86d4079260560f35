#include <algorithm>

#include "netmend/board/shape.h"
#include "netmend/jumper/keep_out.h"
#include "rings.h"

namespace netmend {
namespace {

constexpr Length arcError(20'000); ///< of a hole or pad drawn as a polygon; far below their margins
constexpr std::int64_t grid =
    10'000; ///< nm, of its corners: edges of pads that lie on each other then coincide

Ring onGrid(Ring ring) {
  const auto snapped = [](Length v) {
    const std::int64_t half = v.nm >= 0 ? grid / 2 : -grid / 2;
    return Length((v.nm + half) / grid * grid);
  };
  for (Point& p : ring)
    p = {snapped(p.x), snapped(p.y)};
  return cleaned(ring);
}

bool hasCopper(const Pad& pad, const Part* part, Side side) {
  const bool drilledAway = !pad.plated.valueOr(true) && pad.size.known() &&
                           pad.shape.valueOr(PadShape::circle) != PadShape::polygon &&
                           pad.drill.valueOr({}).width >= pad.size.value.width &&
                           pad.drill.valueOr({}).height >= pad.size.value.height;
  return !drilledAway && reachesSide(pad, part, side);
}

/// A disc, or a slot along the pad's own axes.
std::optional<RoundedShape> holeShape(const Pad& pad) {
  const auto centre = drillCentre(pad);
  const Size hole = pad.drill.valueOr({});
  const Length radius = std::min(hole.width, hole.height) / 2;
  if (!centre || radius.nm <= 0) return std::nullopt;
  const Point half{hole.width / 2 - radius, hole.height / 2 - radius};
  if (half.x.nm == 0 && half.y.nm == 0) return RoundedShape{{*centre}, radius};
  return RoundedShape{{placed(*centre, pad.rotation, Point{} - half), placed(*centre, pad.rotation, half)},
                      radius};
}

KeepOutName holeName(const Part* part, Point at) {
  KeepOutName name;
  name.what = KeepOutName::What::hole;
  if (part && !part->reference.empty())
    name.label = part->reference;
  else
    name.at = at;
  return name;
}

KeepOutName jointName(const Board& board, PinId pin) {
  KeepOutName name;
  name.what = KeepOutName::What::joint;
  name.label = pinLabel(board, pin);
  return name;
}

} // namespace

bool reachesSide(const Pad& pad, const Part* part, Side side) {
  if (!pad.reach.known()) return !part || !part->side.known() || part->side.value == side;
  if (pad.reach.value == PadReach::top) return side == Side::top;
  if (pad.reach.value == PadReach::bottom) return side == Side::bottom;
  return true;
}

std::vector<KeepOut> holesAndJoints(const Board& board, Side side, const ZoneRules& rules,
                                    const std::vector<PadId>& own) {
  std::vector<KeepOut> found;
  for (const Pad& pad : board.pads) {
    const auto hole = holeShape(pad);
    if (!hole) continue;
    const Pin* pin = board.pins.find(pad.pin);
    const Part* part = pin ? board.parts.find(pin->part) : nullptr;
    const bool joint = hasCopper(pad, part, side);
    if (joint && std::binary_search(own.begin(), own.end(), pad.id)) continue;
    const auto shape = joint ? padShape(pad) : hole;
    KeepOut keepOut;
    keepOut.core.outer = onGrid(outlineOf(shape ? *shape : *hole, arcError));
    if (keepOut.core.outer.size() < 3) continue; // smaller than the grid
    keepOut.margin = joint ? rules.jointMargin : rules.holeMargin;
    keepOut.kind = ZoneKind::fastener;
    keepOut.pad = pad.id;
    keepOut.name = joint ? jointName(board, pad.pin) : holeName(part, *drillCentre(pad));
    found.push_back(std::move(keepOut));
  }
  return found;
}

} // namespace netmend
