#include "flat_graph.h"

#include <algorithm>
#include <tuple>
#include <unordered_set>

#include "copper_facts.h"
#include "item_names.h"
#include "netmend/board/shape.h"
#include "union_find.h"

namespace netmend::copper {

namespace {

constexpr std::size_t noNode = SIZE_MAX;

class Assembler {
public:
  Assembler(const Board& board, const Items& items, const std::vector<Contact>& contacts,
            const Joints& joints)
      : board_(board), items_(items), contacts_(contacts), joints_(joints),
        stackUp_(board, items.layerCount) {}

  FlatGraph assemble() {
    out_.nodes.reserve(2 * board_.pins.size() + items_.items.size() + joints_.joints.size());
    out_.edges.reserve(board_.pads.size() + joints_.joints.size() + contacts_.size());
    out_.members.reserve(board_.tracks.size());
    addTerminals();
    addItems();
    addSolderJoints();
    addViaLayers();
    addJoints();
    addTrackEdges();
    addContacts();
    return std::move(out_);
  }

private:
  std::size_t addNode(NodeKind kind, CopperObject object, std::optional<Point> at, int layer) {
    out_.nodes.push_back({kind, object, at, layer});
    return out_.nodes.size() - 1;
  }

  CopperEdge& addEdge(std::size_t a, std::size_t b, EdgeKind kind, CopperObject object) {
    FlatEdge& edge = out_.edges.emplace_back();
    edge.a = a;
    edge.b = b;
    edge.edge.kind = kind;
    edge.edge.object = object;
    return edge.edge;
  }

  void addTerminals() {
    for (const Pin& pin : board_.pins)
      addNode(NodeKind::terminal, pin.id, std::nullopt, -1);
  }

  void addItems() {
    nodeOfItem_.assign(items_.items.size(), noNode);
    for (std::size_t i = 0; i < items_.items.size(); ++i) {
      const CopperItem& item = items_.items[i];
      if (item.kind == CopperItemKind::pad && item.sameAsBefore) {
        nodeOfItem_[i] = nodeOfItem_[i - 1];
        out_.nodes[nodeOfItem_[i]].layer = -1;
      } else if (item.kind == CopperItemKind::pad) {
        const int layer = item.layers.first == item.layers.last ? item.layers.first : -1;
        const Pad& pad = board_.pads[item.object];
        nodeOfItem_[i] = addNode(NodeKind::pad, pad.id, pad.position.value, layer);
      } else if (item.kind == CopperItemKind::area) {
        const Area& area = board_.areas[item.object];
        const bool empty = area.polygon.outer.empty();
        nodeOfItem_[i] =
            addNode(NodeKind::area, area.id, empty ? std::nullopt : std::optional(area.polygon.outer.front()),
                    item.layers.unknown() ? -1 : item.layers.first);
      }
    }
  }

  /// A part's leg is soldered; a test pad's bare point is its copper.
  void solder(std::size_t pin, std::size_t node, CopperObject object) {
    const bool soldered = static_cast<bool>(board_.pins[pin].part);
    CopperEdge& edge = addEdge(pin, node, soldered ? EdgeKind::solderJoint : EdgeKind::contact, object);
    if (!soldered) edge.resistance = guessed(Ohms(0));
    edge.from = edge.to = out_.nodes[node].at;
    edge.layer = out_.nodes[node].layer;
    if (!out_.nodes[pin].at) out_.nodes[pin].at = out_.nodes[node].at;
  }

  void addSolderJoints() {
    std::vector<bool> placed(board_.pins.size(), false);
    const auto pinOf = [&](const Pad& pad) { return board_.pins.indexOf(pad.pin); };
    for (std::size_t i = 0; i < items_.items.size(); ++i) {
      const CopperItem& item = items_.items[i];
      if (item.kind != CopperItemKind::pad || item.sameAsBefore) continue;
      const Pad& pad = board_.pads[item.object];
      const std::size_t pin = pinOf(pad);
      if (pin >= board_.pins.size()) continue;
      solder(pin, nodeOfItem_[i], pad.id);
      placed[pin] = true;
    }
    for (const Pad& pad : board_.pads) {
      const std::size_t pin = pinOf(pad);
      if (pin >= board_.pins.size() || placed[pin]) continue;
      placed[pin] = true;
      if (pad.position.known())
        out_.nodes[pin].at = pad.position.value; // a bare hole: no copper to be soldered to
      else
        solder(pin, addNode(NodeKind::pad, pad.id, std::nullopt, -1), pad.id);
    }
    for (std::size_t pin = 0; pin < board_.pins.size(); ++pin) {
      if (placed[pin]) continue;
      const CopperObject object = board_.pins[pin].id;
      solder(pin, addNode(NodeKind::pad, object, std::nullopt, -1), object);
    }
  }

  /// A via has a ring where something touches it and on its two end layers, where a probe or a wire can.
  void addViaLayers() {
    for (std::size_t i = 0; i < items_.items.size(); ++i) {
      const CopperItem& item = items_.items[i];
      if (item.kind != CopperItemKind::via) continue;
      viaRings_.push_back({i, item.layers.first, noNode});
      viaRings_.push_back({i, item.layers.last, noNode});
    }
    for (const Contact& c : contacts_) {
      if (items_.items[c.a].kind == CopperItemKind::via) viaRings_.push_back({c.a, c.layer, noNode});
      if (items_.items[c.b].kind == CopperItemKind::via) viaRings_.push_back({c.b, c.layer, noNode});
    }
    std::sort(viaRings_.begin(), viaRings_.end());
    viaRings_.erase(std::unique(viaRings_.begin(), viaRings_.end()), viaRings_.end());
    for (std::size_t k = 0; k < viaRings_.size(); ++k) {
      ViaRing& ring = viaRings_[k];
      const Via& via = board_.vias[items_.items[ring.item].object];
      ring.node = addNode(NodeKind::viaLayer, via.id, via.position, ring.layer);
      if (k > 0 && viaRings_[k - 1].item == ring.item) addBarrel(via, viaRings_[k - 1], ring);
      if (nodeOfItem_[ring.item] == noNode) nodeOfItem_[ring.item] = ring.node;
    }
  }

  struct ViaRing {
    std::size_t item;
    int layer;
    std::size_t node;
    friend bool operator<(const ViaRing& a, const ViaRing& b) {
      return a.item != b.item ? a.item < b.item : a.layer < b.layer;
    }
    friend bool operator==(const ViaRing& a, const ViaRing& b) {
      return a.item == b.item && a.layer == b.layer;
    }
  };

  void addBarrel(const Via& via, const ViaRing& upper, const ViaRing& lower) {
    CopperEdge& edge = addEdge(upper.node, lower.node, EdgeKind::via, via.id);
    edge.from = edge.to = via.position;
    edge.length = stackUp_.between(upper.layer, lower.layer);
    edge.resistance = resistanceOfBarrel(via.drill, edge.length);
  }

  [[nodiscard]] std::size_t nodeAt(std::size_t item, int layer) const {
    if (items_.items[item].kind != CopperItemKind::via || layer < 0) return nodeOfItem_[item];
    const auto it = std::lower_bound(viaRings_.begin(), viaRings_.end(), ViaRing{item, layer, noNode});
    return it->node;
  }

  /// Joints at one place become one node.
  void addJoints() {
    const auto& joints = joints_.joints;
    UnionFind sets(joints.size());
    byTrack_.resize(joints.size());
    for (std::size_t i = 0; i < joints.size(); ++i)
      byTrack_[i] = i;
    std::sort(byTrack_.begin(), byTrack_.end(), [&](std::size_t a, std::size_t b) {
      const Joint& x = joints[a];
      const Joint& y = joints[b];
      return std::tie(x.track, x.along, a) < std::tie(y.track, y.along, b);
    });
    for (std::size_t k = 1; k < byTrack_.size(); ++k) {
      const Joint& before = joints[byTrack_[k - 1]];
      const Joint& joint = joints[byTrack_[k]];
      const bool way = board_.tracks[joint.track].way != TrackWay::unknownWay;
      if (way && before.track == joint.track && joint.along - before.along <= jointMerge)
        sets.unite(byTrack_[k - 1], byTrack_[k]);
    }
    for (std::size_t i = 0; i < 2 * joints_.trackLength.size(); i += 2) {
      const bool way = board_.tracks[joints[i].track].way != TrackWay::unknownWay;
      if (way && length(joints[i].at - joints[i + 1].at) <= jointMerge) sets.unite(i, i + 1); // a full circle
    }
    for (const Meeting& m : joints_.meetings)
      if (length(joints[m.a].at - joints[m.b].at) <= jointMerge) sets.unite(m.a, m.b);
    nodeOfJoint_.assign(joints.size(), noNode);
    for (std::size_t i = 0; i < joints.size(); ++i) {
      const std::size_t root = sets.find(i); // never larger than i
      if (nodeOfJoint_[root] == noNode) {
        nodeOfJoint_[root] = addNode(NodeKind::joint, board_.tracks[joints[root].track].id,
                                     pointOf(joints[root].at), joints[root].layer);
      }
      nodeOfJoint_[i] = nodeOfJoint_[root];
    }
    for (std::size_t track = 0; track < board_.tracks.size(); ++track)
      out_.members.emplace_back(nodeOfJoint_[2 * track], board_.tracks[track].id);
  }

  /// One edge for each piece between joints. A piece that starts and ends at one node is left out: it
  /// carries nothing.
  void addTrackEdges() {
    for (std::size_t k = 1; k < byTrack_.size(); ++k) {
      const Joint& from = joints_.joints[byTrack_[k - 1]];
      const Joint& to = joints_.joints[byTrack_[k]];
      const std::size_t a = nodeOfJoint_[byTrack_[k - 1]];
      const std::size_t b = nodeOfJoint_[byTrack_[k]];
      if (from.track != to.track || a == b) continue;
      const Track& track = board_.tracks[from.track];
      const bool known = track.way != TrackWay::unknownWay;
      CopperEdge& edge = addEdge(a, b, known ? EdgeKind::track : EdgeKind::unknownWay, track.id);
      edge.from = pointOf(from.at);
      edge.to = pointOf(to.at);
      edge.layer = from.layer;
      edge.width = track.width;
      if (!known) continue;
      const Origin origin = track.origin == Origin::unknown ? Origin::guessed : track.origin;
      edge.length = {lengthOf(to.along - from.along), origin};
      edge.resistance = resistanceOfTrack(edge.length, edge.width, stackUp_.copper(from.layer));
    }
  }

  void addContact(std::size_t a, std::size_t b, Vec onA, Vec onB, int layer) {
    if (a == b) return;
    const auto [low, high] = std::minmax(a, b);
    if (!contactPairs_.insert((static_cast<std::uint64_t>(low) << 32) | high).second) return;
    CopperEdge& edge = addEdge(a, b, EdgeKind::contact, {});
    edge.from = pointOf(onA);
    edge.to = pointOf(onB);
    edge.layer = layer;
    edge.resistance = guessed(Ohms(0));
  }

  void addContacts() {
    contactPairs_.reserve(contacts_.size() + joints_.touches.size());
    for (const Contact& c : contacts_) {
      if (items_.items[c.a].kind == CopperItemKind::track || items_.items[c.b].kind == CopperItemKind::track)
        continue;
      addContact(nodeAt(c.a, c.layer), nodeAt(c.b, c.layer), c.onA, c.onB, c.layer);
    }
    for (const Touch& t : joints_.touches)
      addContact(nodeOfJoint_[t.joint], nodeAt(t.item, t.layer), joints_.joints[t.joint].at, t.onItem,
                 t.layer);
    for (const Meeting& m : joints_.meetings) {
      const Joint& a = joints_.joints[m.a];
      addContact(nodeOfJoint_[m.a], nodeOfJoint_[m.b], a.at, joints_.joints[m.b].at, a.layer);
    }
  }

  const Board& board_;
  const Items& items_;
  const std::vector<Contact>& contacts_;
  const Joints& joints_;
  StackUp stackUp_;
  FlatGraph out_;
  std::vector<std::size_t> nodeOfItem_;
  std::vector<ViaRing> viaRings_;
  std::vector<std::size_t> byTrack_; ///< joints by track and place on it
  std::vector<std::size_t> nodeOfJoint_;
  std::unordered_set<std::uint64_t> contactPairs_;
};

} // namespace

FlatGraph flatGraphOf(const Board& board, const Items& items, const std::vector<Contact>& contacts,
                      const Joints& joints) {
  return Assembler(board, items, contacts, joints).assemble();
}

} // namespace netmend::copper
