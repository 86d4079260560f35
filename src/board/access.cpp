#include "netmend/board/access.h"

#include <cctype>

#include "netmend/base/plane.h"
#include "netmend/board/shape.h"

namespace netmend {

namespace {

/// The whole shape lies deeper than `coveredDepth` under the body.
bool coveredBy(const Ring& body, const RoundedShape& shape) {
  if (body.size() < 3) return false;
  const auto needed = static_cast<double>((shape.radius + coveredDepth).nm);
  return std::all_of(shape.core.begin(), shape.core.end(), [&](Point p) {
    if (!insideRing(body, vecOf(p))) return false;
    for (std::size_t i = 0; i < body.size(); ++i)
      if (distanceToSegment(p, body[i], body[(i + 1) % body.size()]) < needed) return false;
    return true;
  });
}

bool fittedFor(const Part& part) {
  return part.fitted.valueOr(true);
}

/// What lies over a point of the board that belongs to no part.
Access coverAt(const Board& board, Side side, const RoundedShape& shape) {
  Access hardest = Access::open;
  for (const Part& part : board.parts) {
    if (!part.body.known() || !part.side.known() || part.side.value != side || !fittedFor(part)) continue;
    const bool lid = part.kind.known() && part.kind.value == PartKind::shield;
    const Access cover = lid ? Access::underLid : Access::underPart;
    if (cover > hardest && coveredBy(part.body.value, shape)) hardest = cover;
  }
  return hardest;
}

/// As JEDEC names the balls of a grid array: one or two letters, then a number.
bool isGridName(const std::string& name) {
  const auto letters = static_cast<std::size_t>(
      std::find_if(name.begin(), name.end(), [](unsigned char c) { return !std::isupper(c); }) -
      name.begin());
  if (letters < 1 || letters > 2 || name.size() == letters || name.size() > letters + 2) return false;
  return std::all_of(name.begin() + static_cast<std::ptrdiff_t>(letters), name.end(),
                     [](unsigned char c) { return std::isdigit(c); });
}

bool onBothFaces(const Pad& pad) {
  return pad.reach.known() &&
         (pad.reach.value == PadReach::topAndBottom || pad.reach.value == PadReach::allLayers);
}

Access coverOfPartPad(const Board& board, const Part& part, const Pin& pin, const Pad& pad) {
  if (!fittedFor(part)) return Access::open;
  const bool chip = part.kind.known() && part.kind.value == PartKind::chip;
  if (chip && isGridName(pin.name)) return Access::underPart;
  const auto shape = padShape(pad);
  if (shape && part.body.known() && coveredBy(part.body.value, *shape)) return Access::underPart;
  const Part* lid = part.lid.known() ? board.parts.find(part.lid.value) : nullptr;
  return lid && fittedFor(*lid) ? Access::underLid : Access::open;
}

/// `opening` leaves this face open.
bool opens(MaskOpening opening, Side side) {
  return opening == MaskOpening::both ||
         opening == (side == Side::top ? MaskOpening::top : MaskOpening::bottom);
}

Access accessFrom(const Board& board, const Pad& pad, Side side) {
  Access access = Access::open;
  if (pad.maskOpening.known() && !opens(pad.maskOpening.value, side)) access = Access::underMask;
  const Pin* pin = board.pins.find(pad.pin);
  const Part* part = pin && pin->part ? board.parts.find(pin->part) : nullptr;
  // The far side of a part with pins through the board is free of it.
  const bool underItsPart = part && !(onBothFaces(pad) && part->side.known() && part->side.value != side);
  if (underItsPart) return std::max(access, coverOfPartPad(board, *part, *pin, pad));
  const auto shape = padShape(pad);
  return !part && shape ? std::max(access, coverAt(board, side, *shape)) : access;
}

Side sideOf(const Board& board, const Pad& pad) {
  if (pad.reach.known()) return pad.reach.value == PadReach::bottom ? Side::bottom : Side::top;
  const Pin* pin = board.pins.find(pad.pin);
  const Part* part = pin ? board.parts.find(pin->part) : nullptr;
  return part ? part->side.valueOr(Side::top) : Side::top;
}

} // namespace

Fact<Access> accessOf(const Board& board, const Pad& pad) {
  if (pad.access.known()) return pad.access;
  if (onBothFaces(pad))
    return guessed(std::min(accessFrom(board, pad, Side::top), accessFrom(board, pad, Side::bottom)));
  return guessed(accessFrom(board, pad, sideOf(board, pad)));
}

Fact<Access> accessOf(const Board& board, const Via& via) {
  const auto& order = board.info.layerOrder;
  // Without an order of layers nobody knows which are outer: every end may be.
  const auto ends = [&](const Fact<LayerId>& layer, bool first) {
    return !layer.known() || !layer.value || order.empty() ||
           layer.value == (first ? order.front() : order.back());
  };
  const RoundedShape shape{{via.position}, via.diameter.valueOr(Length(0)) / 2};
  Fact<Access> easiest;
  const auto consider = [&](Side side) {
    const bool open = via.maskOpening.known() && opens(via.maskOpening.value, side);
    const Access access = std::max(open ? Access::open : Access::underMask, coverAt(board, side, shape));
    if (!easiest.known() || access < easiest.value) easiest = guessed(access);
  };
  if (ends(via.from, true)) consider(Side::top);
  if (ends(via.to, false)) consider(Side::bottom);
  return easiest;
}

Fact<Access> accessOf(const Board& board, PinId pin) {
  Fact<Access> easiest;
  for (const Pad& pad : board.pads) {
    if (pad.pin != pin) continue;
    const auto access = accessOf(board, pad);
    if (!easiest.known() || access.value < easiest.value) easiest = access;
  }
  return easiest;
}

} // namespace netmend
