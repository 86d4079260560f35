#pragma once

#include <map>
#include <string>
#include <vector>

#include "netmend/netgraph/board_graph.h"

namespace netmend::test {

/// A board of parts, pins and nets without a single coordinate, written down as a list of connections.
struct WiredBoard {
  Board board;

  NetId net(const std::string& name) {
    if (const auto found = nets.find(name); found != nets.end()) return found->second;
    Net object;
    object.id = board.newId<NetId>();
    object.name = name;
    object.origin = Origin::file;
    board.nets.put(object);
    return nets[name] = object.id;
  }

  /// Pins are named 1, 2, 3 … in the order of their nets; an empty net name leaves the net unknown.
  PartId part(const std::string& reference, PartKind kind, const std::string& value,
              const std::vector<std::string>& netNames) {
    Part object;
    object.id = board.newId<PartId>();
    object.reference = reference;
    object.kind = fromFile(kind);
    if (!value.empty()) object.value = fromFile(value);
    object.origin = Origin::file;
    board.parts.put(object);
    for (std::size_t i = 0; i < netNames.size(); ++i) {
      Pin pin;
      pin.id = board.newId<PinId>();
      pin.part = object.id;
      pin.name = std::to_string(i + 1);
      if (!netNames[i].empty()) pin.net = fromFile(net(netNames[i]));
      pin.origin = Origin::file;
      board.pins.put(pin);
      pins[reference + "." + pin.name] = pin.id;
    }
    return parts[reference] = object.id;
  }

  Part& change(const std::string& reference) {
    changed = *board.parts.find(parts.at(reference));
    return changed;
  }
  void put() { board.parts.put(changed); }

  std::map<std::string, NetId> nets;
  std::map<std::string, PartId> parts;
  std::map<std::string, PinId> pins;
  Part changed;
};

inline CopperNode terminalOf(PinId pin) {
  CopperNode node;
  node.kind = NodeKind::terminal;
  node.object = pin;
  return node;
}

/// Each net a hub with the terminals of its pins around it: what is known when only names are.
inline BoardGraph graphByNames(const Board& board) {
  BoardGraph graph;
  for (const auto& net : board.nets) {
    NetGraph netGraph;
    netGraph.net = net.id;
    CopperNode hubNode;
    hubNode.kind = NodeKind::unknownWay;
    const auto hub = boost::add_vertex(hubNode, netGraph.graph);
    for (const auto& pin : board.pins) {
      if (!pin.net.known() || pin.net.value != net.id) continue;
      CopperEdge edge;
      edge.kind = EdgeKind::unknownWay;
      edge.index = boost::num_edges(netGraph.graph);
      boost::add_edge(boost::add_vertex(terminalOf(pin.id), netGraph.graph), hub, edge, netGraph.graph);
      ++netGraph.islandCount;
    }
    graph.nets.push_back(std::move(netGraph));
  }
  return graph;
}

} // namespace netmend::test
