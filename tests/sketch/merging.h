#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "after.h"
#include "netmend/sketch/merge.h"
#include "support/millimetres.h"

namespace netmend::test {

/// A board put down pin by pin; all of it is of one origin.
struct Told {
  Origin origin;
  Board board;
  std::map<std::string, NetId> nets; ///< by the words that tests call them by

  explicit Told(Origin of) : origin(of) {}

  template <class T> Fact<T> fact(T value) const { return {std::move(value), origin}; }

  template <class T> decltype(T::id) put(Table<T>& table, T object) {
    object.id = board.newId<decltype(object.id)>();
    object.origin = origin;
    const auto id = object.id;
    table.put(std::move(object));
    return id;
  }
  /// A change to what is there.
  template <class T, class Change> void with(Table<T>& table, decltype(T::id) id, Change change) {
    T object = *table.find(id);
    change(object);
    table.put(std::move(object));
  }

  /// Words with `*` before them are nets without a name.
  NetId net(const std::string& word) {
    NetId& net = nets[word];
    if (!net) {
      Net made;
      if (word.front() != '*') made.name = word;
      net = put(board.nets, made);
    }
    return net;
  }
  PartId part(const std::string& reference, Part more = {}) {
    for (const Part& part : board.parts)
      if (part.reference == reference) return part.id;
    more.reference = reference;
    return put(board.parts, more);
  }
  /// `word`: its net; `-`: none, empty: not known. By its label, `J4.1` or the name of a free point.
  PinId pin(const std::string& label, const std::string& word) {
    Pin pin;
    const std::size_t dot = label.find('.');
    if (dot != std::string::npos) pin.part = part(label.substr(0, dot));
    pin.name = dot != std::string::npos ? label.substr(dot + 1) : label;
    if (!word.empty()) pin.net = fact(word == "-" ? NetId() : net(word));
    return put(board.pins, pin);
  }
  PinId pin(const std::string& label, const std::string& word, Point at) {
    const PinId id = pin(label, word);
    pad(id, at);
    return id;
  }
  PadId pad(PinId pin, Point at) {
    Pad pad;
    pad.pin = pin;
    pad.position = fact(at);
    pad.shape = fact(PadShape::rectangle);
    pad.size = fact(Size{Length(600'000), Length(300'000)});
    pad.reach = fact(PadReach::top);
    return put(board.pads, pad);
  }
  void pins(const std::vector<std::pair<std::string, std::string>>& all) {
    for (const auto& [label, word] : all)
      pin(label, word);
  }
  LayerId layer(const std::string& name) {
    Layer layer;
    layer.name = name;
    const LayerId id = put(board.layers, layer);
    board.info.layerOrder.push_back(id);
    return id;
  }
  TrackId track(Point from, Point to, LayerId on, const std::string& word,
                TrackWay way = TrackWay::straight) {
    Track track;
    track.way = way;
    track.start = from;
    track.end = to;
    if (on) track.layer = fact(on);
    track.width = fact(Length(200'000));
    if (!word.empty()) track.net = fact(word == "-" ? NetId() : net(word));
    return put(board.tracks, track);
  }
  ViaId via(Point at, const std::string& word) {
    Via via;
    via.position = at;
    via.diameter = fact(Length(500'000));
    via.net = fact(net(word));
    return put(board.vias, via);
  }
  AreaId area(const Ring& outline, LayerId on, const std::string& word) {
    Area area;
    area.polygon.outer = outline;
    area.layer = fact(on);
    area.net = fact(net(word));
    return put(board.areas, area);
  }
};

inline Told drawnBoard() {
  return Told(Origin::user);
}
inline Told fileBoard() {
  return Told(Origin::file);
}

inline MergePlan planOf(const Board& drawn, const Board& file) {
  return planMerge(Lookup(drawn), Lookup(file));
}

inline void checkEqual(const Board& a, const Board& b) {
  CHECK(a.info == b.info);
  CHECK(a.layers == b.layers);
  CHECK(a.parts == b.parts);
  CHECK(a.nets == b.nets);
  CHECK(a.pins == b.pins);
  CHECK(a.pads == b.pads);
  CHECK(a.tracks == b.tracks);
  CHECK(a.vias == b.vias);
  CHECK(a.areas == b.areas);
  CHECK(a.zones == b.zones);
  CHECK(a.underlays == b.underlays);
}

/// The board once the file is in it. And what holds of every merge: references are sound, the drawing's parts
/// and pins keep their ids, one undo takes all back, and the same file brought in again changes nothing.
inline Board mergedBy(const Board& drawn, const Board& file, const MergePlan& plan) {
  Board board = drawn;
  const auto inverse = apply(board, mergeEdit(Lookup(drawn), Lookup(file), plan));
  if (!inverse) FAIL(inverse.error().text());
  const auto sound = checkReferences(board);
  if (!sound) FAIL(sound.error().text());
  for (const Pin& pin : drawn.pins) {
    REQUIRE(board.pins.find(pin.id) != nullptr);
    CHECK(pinLabel(board, pin.id) == pinLabel(drawn, pin.id));
    CHECK(board.pins.find(pin.id)->part == pin.part);
  }
  Board back = board;
  REQUIRE(apply(back, *inverse));
  checkEqual(back, drawn);
  MergePlan again = planOf(board, file);
  for (MergeDifference& difference : again.differences)
    for (const MergeDifference& decided : plan.differences)
      if (decided.what == difference.what && decided.label == difference.label)
        difference.right = decided.right;
  CHECK(mergeEdit(Lookup(board), Lookup(file), again).changes.size() == 0);
  return board;
}
inline Board mergedBy(const Board& drawn, const Board& file) {
  return mergedBy(drawn, file, planOf(drawn, file));
}
/// With every difference decided the same way.
inline Board mergedBy(const Board& drawn, const Board& file, MergeDifference::Right right) {
  MergePlan plan = planOf(drawn, file);
  for (MergeDifference& difference : plan.differences)
    difference.right = right;
  return mergedBy(drawn, file, plan);
}

/// Labels of the pins of each net, in the order of their first pins; pins of one net only alone too.
inline std::vector<std::string> netsIn(const Board& board) {
  std::map<NetId, std::string> by;
  std::vector<NetId> order;
  for (const Pin& pin : board.pins) {
    if (!pin.net.known() || !pin.net.value) continue;
    std::string& text = by[pin.net.value];
    if (text.empty()) order.push_back(pin.net.value);
    text += (text.empty() ? "" : " ") + pinLabel(board, pin.id);
  }
  std::vector<std::string> out;
  for (const NetId net : order)
    out.push_back(board.nets.find(net)->name + ": " + by[net]);
  return out;
}

} // namespace netmend::test
