#include "probe_places.h"

#include <map>

#include <fmt/format.h>

#include "netmend/board/access.h"
#include "netmend/netgraph/handle.h"

namespace netmend {

namespace {

bool isTop(int layer) {
  return layer <= 0;
}

bool isBottom(const Board& board, int layer) {
  return layer < 0 || static_cast<std::size_t>(layer) + 1 == board.info.layerOrder.size();
}

class Collector {
public:
  Collector(const Lookup& lookup, const Line& line, const LineCells& cells, const ProbeEfforts& efforts)
      : lookup_(lookup), board_(lookup.board()), line_(line), cells_(cells), efforts_(efforts) {}

  PlacesOnLine collect() {
    for (NodeIndex node = 0; node < num_vertices(line_.graph); ++node)
      addNode(node);
    for (const auto& place : cells_.trackPlaces)
      addTrack(place.cell, std::nullopt, place.object, place.at, place.layer);
    tellApart();
    return std::move(result_);
  }

private:
  void add(std::size_t cell, ProbePlace place) {
    result_.places.push_back(std::move(place));
    result_.cell.push_back(cell);
  }

  void addNode(NodeIndex node) {
    const CopperNode& copper = line_.graph[node];
    const std::size_t cell = cells_.cellOfNode[node];
    if (copper.kind == NodeKind::terminal) {
      const auto* pin = std::get_if<PinId>(&copper.object);
      if (pin && board_.pins.find(*pin)) addTerminal(cell, node, *pin);
    } else if (copper.kind == NodeKind::pad) {
      const auto* id = std::get_if<PadId>(&copper.object);
      if (const Pad* pad = id ? board_.pads.find(*id) : nullptr) addPad(cell, node, *pad);
    } else if (copper.kind == NodeKind::viaLayer) {
      const auto* id = std::get_if<ViaId>(&copper.object);
      if (const Via* via = id ? board_.vias.find(*id) : nullptr) addVia(cell, node, *via);
    } else if (copper.kind == NodeKind::joint && copper.at &&
               (copper.layer == 0 || (copper.layer > 0 && isBottom(board_, copper.layer)))) {
      addTrack(cell, node, copper.object, *copper.at, copper.layer);
    }
  }

  void addTerminal(std::size_t cell, NodeIndex node, PinId pin) {
    ProbePlace place;
    place.label = pinLabel(board_, pin);
    place.object = place.pin = pin;
    place.node = node;
    place.at = line_.graph[node].at;
    if (const auto at = positionOf(lookup_, pin); !place.at && at.known()) place.at = at.value;
    place.layer = line_.graph[node].layer;
    place.access = accessOf(board_, pin);
    place.effort = efforts_.of(place.access);
    add(cell, std::move(place));
  }

  /// Beside the part's leg, where the joint is the question.
  void addPad(std::size_t cell, NodeIndex node, const Pad& pad) {
    const auto terminalCell = terminalCells().find(pad.pin);
    if (terminalCell != terminalCells_.end() && terminalCell->second == cell) return;
    ProbePlace place;
    place.label = "pad of " + pinLabel(board_, pad.pin);
    place.object = pad.id;
    place.node = node;
    place.at = line_.graph[node].at;
    place.layer = line_.graph[node].layer;
    place.access = accessOf(board_, pad);
    place.effort = efforts_.of(place.access);
    add(cell, std::move(place));
  }

  void addVia(std::size_t cell, NodeIndex node, const Via& via) {
    const int layer = line_.graph[node].layer;
    const bool top = isTop(layer);
    if (!top && !isBottom(board_, layer)) return;
    ProbePlace place;
    place.label = viaHandle(board_, via.id, layer);
    place.object = via.id;
    place.node = node;
    place.at = via.position;
    place.layer = layer;
    place.access = accessOf(board_, via);
    place.effort = efforts_.of(place.access);
    if (via.maskOpening.known() && via.maskOpening.value != MaskOpening::both && layer >= 0) {
      const bool open = via.maskOpening.value == (top ? MaskOpening::top : MaskOpening::bottom);
      place.access = {open ? Access::open : Access::underMask, via.maskOpening.origin};
      place.effort = efforts_.of(place.access);
    }
    add(cell, std::move(place));
  }

  void addTrack(std::size_t cell, std::optional<NodeIndex> node, const CopperObject& object, Point at,
                int layer) {
    ProbePlace place;
    place.label = pointHandle(board_, at, layer);
    place.object = object;
    place.node = node;
    place.at = at;
    place.layer = layer;
    place.scrape = true;
    place.access = guessed(Access::underMask);
    place.effort = efforts_.scrapedTrack;
    add(cell, std::move(place));
  }

  const std::map<PinId, std::size_t>& terminalCells() {
    if (terminalCells_.empty())
      for (const NodeIndex node : line_.terminals())
        if (const auto* pin = std::get_if<PinId>(&line_.graph[node].object))
          terminalCells_[*pin] = cells_.cellOfNode[node];
    return terminalCells_;
  }

  /// A reading carries the label: no two places share one.
  void tellApart() {
    std::map<std::string, int> seen;
    for (auto& place : result_.places) {
      const int count = ++seen[place.label];
      if (count > 1) place.label += fmt::format(" #{}", count);
    }
  }

  const Lookup& lookup_;
  const Board& board_;
  const Line& line_;
  const LineCells& cells_;
  const ProbeEfforts& efforts_;
  PlacesOnLine result_;
  std::map<PinId, std::size_t> terminalCells_;
};

} // namespace

PlacesOnLine probePlaces(const Lookup& lookup, const Line& line, const LineCells& cells,
                         const ProbeEfforts& efforts) {
  return Collector(lookup, line, cells, efforts).collect();
}

bool isOldHandle(std::string_view label, const ProbePlace& place) {
  if (!place.at) return false;
  const auto at = fmt::format("at ({:.2f}, {:.2f}) mm", place.at->x.mm(), place.at->y.mm());
  const std::string_view kind = std::holds_alternative<ViaId>(place.object) ? "via " : "track ";
  if (!label.starts_with(kind) || !label.substr(kind.size()).starts_with(at)) return false;
  const std::string_view side = label.substr(kind.size() + at.size());
  return side.empty() || side == (place.layer <= 0 ? ", top" : ", bottom");
}

} // namespace netmend
