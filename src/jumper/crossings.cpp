#include <algorithm>
#include <set>

#include "netmend/board/shape.h"
#include "scoring.h"

namespace netmend {
namespace {

constexpr Length arcError(5'000); ///< of copper drawn as a polygon

bool isUnder(const RoundedShape& copper, const std::vector<Point>& way, Length reach) {
  Box around;
  for (const Point p : way)
    around.include(p);
  const Length by = copper.radius + reach;
  const bool near = std::any_of(copper.core.begin(), copper.core.end(), [&](Point p) {
    return p.x >= around.min.x - by && p.x <= around.max.x + by && p.y >= around.min.y - by &&
           p.y <= around.max.y + by;
  });
  // Copper may reach over the whole way without a corner near it; only a large one does.
  if (!near && copper.core.size() < 3) return false;
  KeepOut shape;
  shape.core.outer = outlineOf(copper, arcError);
  for (std::size_t i = 1; i < way.size(); ++i)
    if (distanceTo(shape, way[i - 1], way[i]) < reach) return true;
  return false;
}

bool maskedOn(const Via& via, Side side) {
  if (!via.maskOpening.known() || via.maskOpening.value == MaskOpening::both) return false;
  return via.maskOpening.value != (side == Side::top ? MaskOpening::top : MaskOpening::bottom);
}

/// Of other nets, and no keep-out: pads without a hole, and vias not known to be under mask.
std::vector<CrossedCopper> bareCopperUnder(const std::vector<Point>& way, const Board& board,
                                           const FreeArea& area, const OwnCopper& own) {
  std::vector<CrossedCopper> found;
  const Length reach = area.wire / 2 + arcError;
  for (const Pad& pad : board.pads) {
    if (pad.drill.valueOr({}).width.nm > 0 || std::binary_search(own.pads.begin(), own.pads.end(), pad.id))
      continue;
    const Pin* pin = board.pins.find(pad.pin);
    if (!reachesSide(pad, pin ? board.parts.find(pin->part) : nullptr, area.side)) continue;
    const auto shape = padShape(pad);
    const auto here = [&](const CrossedCopper& c) { return c.object == CopperObject(pad.pin); };
    if (shape && isUnder(*shape, way, reach) && std::none_of(found.begin(), found.end(), here))
      found.push_back({pad.pin, pad.position.valueOr({})});
  }
  for (const Via& via : board.vias) {
    const bool isOwn = std::binary_search(own.vias.begin(), own.vias.end(), via.id);
    if (isOwn || maskedOn(via, area.side)) continue;
    const RoundedShape ring{{via.position}, std::max(via.diameter.valueOr({}), via.drill.valueOr({})) / 2};
    if (ring.radius.nm > 0 && isUnder(ring, way, reach)) found.push_back({via.id, via.position});
  }
  return found;
}

} // namespace

void addCrossings(JumperProposal& proposal, const Board& board, const FreeArea& area, const OwnCopper& own) {
  std::set<KeepOutName> holes;
  for (const KeepOut& keepOut : area.passable)
    for (std::size_t i = 1; i < proposal.way.size(); ++i)
      if (distanceTo(keepOut, proposal.way[i - 1], proposal.way[i]) < keepOut.margin + area.wire / 2)
        holes.insert(keepOut.name);
  if (!holes.empty()) proposal.notes.push_back({ProposalNote::Kind::overHoles, {holes.begin(), holes.end()}});
  if (auto bare = bareCopperUnder(proposal.way, board, area, own); !bare.empty())
    proposal.notes.push_back({ProposalNote::Kind::overBareCopper, {}, std::move(bare)});
}

} // namespace netmend
