#include "netmend/sketch/worth.h"

#include <algorithm>
#include <set>

namespace netmend {

namespace {

bool makesZone(const Part& part) {
  const bool known = part.body.known() && part.kind.known() && part.fitted.valueOr(true);
  if (!known) return false;
  switch (part.kind.value) {
  case PartKind::connector:
  case PartKind::battery:
  case PartKind::antenna:
  case PartKind::shield:
  case PartKind::mechanical:
    return true;
  default:
    return false;
  }
}

void countConnector(const Lookup& lookup, DrawingWorth& out) {
  const Board& board = lookup.board();
  for (const Part& part : board.parts) {
    const auto& pins = lookup.pinsOf(part.id);
    if (part.kind.valueOr(PartKind::other) != PartKind::connector || pins.size() <= out.pins) continue;
    out.connector = part.reference;
    out.connectorPart = part.id;
    out.pins = pins.size();
    out.placedPins = out.pinsWithNet = 0;
    for (const PinId pin : pins) {
      if (positionOf(lookup, pin).known()) ++out.placedPins;
      if (board.pins.find(pin)->net.known()) ++out.pinsWithNet;
    }
  }
}

} // namespace

DrawingWorth worthOf(const Lookup& lookup, NetId inHand) {
  const Board& board = lookup.board();
  DrawingWorth out;
  countConnector(lookup, out);
  std::set<NetId> withCopper;
  for (const Track& track : board.tracks)
    if (track.net.known()) {
      if (track.way != TrackWay::unknownWay) withCopper.insert(track.net.value);
      if (inHand && track.net.value == inHand)
        ++(track.way == TrackWay::unknownWay ? out.netUnknownWays : out.netTracks);
    }
  for (const Area& area : board.areas)
    if (area.net.known()) {
      withCopper.insert(area.net.value);
      if (inHand && area.net.value == inHand) ++out.netTracks;
    }
  for (const Net& net : board.nets) {
    if (lookup.pinsOf(net.id).size() < 2) continue;
    ++out.lines;
    if (withCopper.contains(net.id)) ++out.linesWithCopper;
  }
  if (const Net* net = board.nets.find(inHand)) {
    const auto& pins = lookup.pinsOf(inHand);
    out.netPins = pins.size();
    out.net = !net->name.empty() ? net->name : pins.empty() ? std::string() : pinLabel(board, pins.front());
  }
  for (const Pad& pad : board.pads)
    if (pad.position.known() && !pad.gone.valueOr(false)) ++out.landings;
  out.landings += board.vias.size();
  out.zones = board.zones.size();
  for (const Part& part : board.parts) {
    const bool drawn = std::any_of(board.zones.begin(), board.zones.end(),
                                   [&](const Zone& zone) { return zone.part == part.id; });
    if (!drawn && makesZone(part)) ++out.zones;
  }
  return out;
}

} // namespace netmend
