#include "joints.h"

#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <tuple>

#include "dealt.h"
#include "item_names.h"

namespace netmend::copper {

namespace {

struct Foot {
  double along = 0.0;
  double distance = std::numeric_limits<double>::infinity();
  Vec at;
};

/// Nearest place on an item's centre line.
Foot footOn(const AreaOutline& line, Vec p) {
  if (line.core.size() == 1) return {0.0, length(p - line.core[0]), line.core[0]};
  Foot best;
  double walked = 0.0;
  for (std::size_t i = 0; i + 1 < line.core.size(); ++i) {
    const Closest c = closestOnSegments(line.core[i], line.core[i + 1], p, p);
    const double along = walked + length(c.onFirst - line.core[i]);
    if (c.distance < best.distance) best = {along, c.distance, c.onFirst};
    walked += length(line.core[i + 1] - line.core[i]);
  }
  return best;
}

class Builder {
public:
  Builder(const Board& board, const Items& items) : board_(board), items_(items) {
    const std::size_t count = board.tracks.size();
    out_.joints.resize(2 * count);
    out_.trackLength.resize(count);
    for (const CopperItem& item : items.items) {
      if (item.kind != CopperItemKind::track) continue;
      const AreaOutline line = outlineOf(items, item);
      double total = 0.0;
      for (std::size_t i = 0; i + 1 < line.core.size(); ++i)
        total += length(line.core[i + 1] - line.core[i]);
      setEnds(item.object, line.core.front(), line.core.back(), total, item.layers.first);
    }
    for (const LooseTrack& loose : items.looseTracks) {
      const int layer = loose.layers.unknown() ? -1 : loose.layers.first;
      setEnds(loose.object, loose.start, loose.end, length(loose.end - loose.start), layer);
    }
  }

  Joints build(const std::vector<Contact>& contacts) {
    std::vector<Contact> withAreas;
    out_.joints.reserve(out_.joints.size() + contacts.size() / 4);
    out_.meetings.reserve(contacts.size());
    out_.touches.reserve(contacts.size());
    for (const Contact& c : contacts) {
      const CopperItemKind a = items_.items[c.a].kind;
      const CopperItemKind b = items_.items[c.b].kind;
      if (a != CopperItemKind::track && b != CopperItemKind::track) continue;
      if (a == CopperItemKind::area || b == CopperItemKind::area)
        withAreas.push_back(c);
      else if (a == b)
        meet(c);
      else if (a == CopperItemKind::track)
        touch(c.a, c.b, c.layer, c.onA, c.onB);
      else
        touch(c.b, c.a, c.layer, c.onB, c.onA);
    }
    attachLooseEnds();
    touchAreas(withAreas);
    return std::move(out_);
  }

private:
  void setEnds(std::size_t track, Vec start, Vec end, double total, int layer) {
    out_.joints[2 * track] = {track, 0.0, start, layer};
    out_.joints[2 * track + 1] = {track, total, end, layer};
    out_.trackLength[track] = total;
  }

  [[nodiscard]] const CopperItem& item(std::size_t i) const { return items_.items[i]; }
  [[nodiscard]] AreaOutline outline(std::size_t i) const { return outlineOf(items_, items_.items[i]); }
  [[nodiscard]] std::array<std::size_t, 2> endsOf(std::size_t trackItem) const {
    return {2 * item(trackItem).object, 2 * item(trackItem).object + 1};
  }

  /// The joint at the foot of `p`. Within a quarter of the width from an end it is that end: copper there
  /// belongs to the rounded end, nothing can break between.
  std::size_t jointAt(std::size_t trackItem, Vec p) {
    const Foot foot = footOn(outline(trackItem), p);
    const auto [start, end] = endsOf(trackItem);
    const double total = out_.trackLength[item(trackItem).object];
    const double snap = std::max(item(trackItem).radius / 2.0, jointMerge);
    if (foot.along <= std::min(snap, total / 2.0)) return start;
    if (total - foot.along <= snap) return end;
    out_.joints.push_back({item(trackItem).object, foot.along, foot.at, item(trackItem).layers.first});
    return out_.joints.size() - 1;
  }

  /// At each end that lies on the other's copper; if there is none, where they come closest.
  void meet(const Contact& c) {
    bool met = false;
    const auto meetAtEnds = [&](std::size_t mine, std::size_t other) {
      for (const std::size_t end : endsOf(mine)) {
        const Vec at = out_.joints[end].at;
        if (!covers(outline(other), at, contactSlack)) continue;
        out_.meetings.push_back({end, jointAt(other, at)});
        met = true;
      }
    };
    meetAtEnds(c.a, c.b);
    meetAtEnds(c.b, c.a);
    if (met) return;
    const std::size_t a = jointAt(c.a, c.onA);
    out_.meetings.push_back({a, jointAt(c.b, c.onB)});
  }

  void touch(std::size_t trackItem, std::size_t other, int layer, Vec onTrack, Vec onOther) {
    bool touched = false;
    for (const std::size_t end : endsOf(trackItem)) {
      const Vec at = out_.joints[end].at;
      if (!covers(outline(other), at, contactSlack)) continue;
      out_.touches.push_back({end, other, layer, at});
      touched = true;
    }
    if (!touched) out_.touches.push_back({jointAt(trackItem, onTrack), other, layer, onOther});
  }

  /// Every joint that lies in the area is joined to it; last, because the other joints are known then.
  void touchAreas(const std::vector<Contact>& contacts) {
    const Dealt byTrack(out_.trackLength.size(), out_.joints.size(),
                        [&](std::size_t i) { return out_.joints[i].track; });
    for (const Contact& c : contacts) {
      const bool trackFirst = item(c.a).kind == CopperItemKind::track;
      const std::size_t track = trackFirst ? c.a : c.b;
      const std::size_t area = trackFirst ? c.b : c.a;
      bool touched = false;
      for (const std::size_t joint : byTrack.of(item(track).object)) {
        const Vec at = out_.joints[joint].at;
        if (!covers(outline(area), at, contactSlack)) continue;
        out_.touches.push_back({joint, area, c.layer, at});
        touched = true;
      }
      if (touched) continue;
      const std::size_t joint = jointAt(track, trackFirst ? c.onA : c.onB);
      out_.touches.push_back({joint, area, c.layer, trackFirst ? c.onB : c.onA});
    }
  }

  /// What of all that lies at the end of a loose track is meant: pads before vias, tracks and areas; of
  /// several on different layers the one that is said to be of the same net, else the topmost.
  [[nodiscard]] const std::size_t* chosen(const std::vector<std::size_t>& there, std::size_t track) const {
    const NetId net = board_.tracks[track].net.valueOr({});
    const auto rank = [&](std::size_t i) {
      const bool sameNet = net && netOf(board_, item(i)) == net;
      return std::tuple(item(i).kind, !sameNet, item(i).layers.first);
    };
    const auto best = std::min_element(there.begin(), there.end(),
                                       [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
    return best == there.end() ? nullptr : &*best;
  }

  void attach(std::size_t joint, std::size_t other) {
    const Vec at = out_.joints[joint].at;
    if (item(other).kind == CopperItemKind::track)
      out_.meetings.push_back({joint, jointAt(other, at)});
    else
      out_.touches.push_back({joint, other, -1, at});
  }

  void attachLooseEnds() {
    const bool unplaced = std::any_of(items_.items.begin(), items_.items.end(),
                                      [](const CopperItem& i) { return i.layers.unknown(); });
    if (items_.looseTracks.empty() && !unplaced) return;
    const PlaceIndex places(items_);
    std::map<std::tuple<double, double, int>, std::size_t> openEnds;
    for (const LooseTrack& loose : items_.looseTracks) {
      for (const std::size_t joint : {2 * loose.object, 2 * loose.object + 1}) {
        const Joint end = out_.joints[joint];
        const auto there = places.at(end.at, loose.layers);
        if (const std::size_t* other = chosen(there, loose.object)) {
          attach(joint, *other);
          continue;
        }
        const auto [it, first] = openEnds.try_emplace({end.at.x, end.at.y, end.layer}, joint);
        if (!first) out_.meetings.push_back({joint, it->second});
      }
    }
    if (!unplaced) return;
    for (std::size_t i = 0; i < items_.items.size(); ++i) {
      if (item(i).kind != CopperItemKind::track) continue;
      for (const std::size_t joint : endsOf(i)) {
        for (const std::size_t other : places.at(out_.joints[joint].at, item(i).layers))
          if (item(other).layers.unknown()) attach(joint, other);
      }
    }
  }

  const Board& board_;
  const Items& items_;
  Joints out_;
};

} // namespace

Joints jointsOf(const Board& board, const Items& items, const std::vector<Contact>& contacts) {
  return Builder(board, items).build(contacts);
}

} // namespace netmend::copper
