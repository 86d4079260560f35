#include "item_names.h"

namespace netmend::copper {

CopperObject objectOf(const Board& board, const CopperItem& item) {
  switch (item.kind) {
  case CopperItemKind::pad:
    return board.pads[item.object].id;
  case CopperItemKind::via:
    return board.vias[item.object].id;
  case CopperItemKind::track:
    return board.tracks[item.object].id;
  case CopperItemKind::area:
    return board.areas[item.object].id;
  }
  return {};
}

NetId netOf(const Board& board, const CopperObject& object) {
  const auto of = [](const auto* thing) { return thing ? thing->net.valueOr({}) : NetId{}; };
  if (const auto* pin = std::get_if<PinId>(&object)) return of(board.pins.find(*pin));
  if (const auto* pad = std::get_if<PadId>(&object)) {
    const Pad* found = board.pads.find(*pad);
    return found ? of(board.pins.find(found->pin)) : NetId{};
  }
  if (const auto* track = std::get_if<TrackId>(&object)) return of(board.tracks.find(*track));
  if (const auto* via = std::get_if<ViaId>(&object)) return of(board.vias.find(*via));
  if (const auto* area = std::get_if<AreaId>(&object)) return of(board.areas.find(*area));
  return {};
}

NetId netOf(const Board& board, const CopperItem& item) {
  return netOf(board, objectOf(board, item));
}

} // namespace netmend::copper
