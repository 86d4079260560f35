#include "netmend/board/summary.h"

#include "netmend/board/shape.h"

namespace netmend {

namespace {

void include(Box& box, const Ring& ring, Length around = {}) {
  for (const Point& p : ring) {
    box.include(p - Point{around, around});
    box.include(p + Point{around, around});
  }
}

std::size_t netsWithPads(const Board& board) {
  std::vector<bool> has(board.nets.size(), false);
  for (const Pad& pad : board.pads) {
    const Pin* pin = board.pins.find(pad.pin);
    if (!pin || !pin->net.known()) continue;
    const std::size_t index = board.nets.indexOf(pin->net.value);
    if (index < has.size()) has[index] = true;
  }
  return static_cast<std::size_t>(std::count(has.begin(), has.end(), true));
}

Box extentOfContent(const Board& board) {
  Box box;
  for (const Part& part : board.parts) {
    if (part.position.known()) box.include(part.position.value);
    if (part.body.known()) include(box, part.body.value);
  }
  for (const Pad& pad : board.pads) {
    if (const auto shape = padShape(pad))
      include(box, outlineOf(*shape));
    else if (pad.position.known())
      box.include(pad.position.value);
  }
  for (const Track& track : board.tracks)
    include(box, centreLine(track), track.width.valueOr(Length(0)) / 2);
  for (const Via& via : board.vias)
    include(box, {via.position}, via.diameter.valueOr(Length(0)) / 2);
  for (const Area& area : board.areas)
    include(box, area.polygon.outer);
  for (const Zone& zone : board.zones)
    include(box, zone.polygon.outer);
  return box;
}

} // namespace

Box extentOf(const Board& board) {
  Box box;
  if (board.info.outline.known()) {
    for (const Polygon& polygon : board.info.outline.value)
      include(box, polygon.outer);
  }
  return box.empty() ? extentOfContent(board) : box;
}

DrawnCopper drawnCopper(const Board& board) {
  const bool any = !board.tracks.empty() || !board.vias.empty() || !board.areas.empty();
  return board.info.copper.valueOr(any ? DrawnCopper::everything : DrawnCopper::points);
}

BoardSummary summarize(const Board& board) {
  return {board.parts.size(), board.pads.size(),   netsWithPads(board),   board.tracks.size(),
          board.vias.size(),  board.layers.size(), extentOf(board).size()};
}

} // namespace netmend
