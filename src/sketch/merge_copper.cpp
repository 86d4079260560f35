#include "merge_copper.h"

namespace netmend {

namespace {

using Key = std::pair<Point, Point>;

Key keyOf(const Track& track) {
  return {track.start, track.end};
}
Key keyOf(const Via& via) {
  return {via.position, via.position};
}
Key keyOf(const Area& area) {
  return area.polygon.outer.empty() ? Key() : Key(area.polygon.outer.front(), area.polygon.outer.back());
}

class Merge {
public:
  Merge(Draft& draft, const CopperMerge& merge) : draft_(draft), merge_(merge) {}

  std::set<NetId> run() {
    if (merge_.laid) {
      putAll(merge_.drawn.tracks, merge_.file.tracks, keptTracks_);
      putAll(merge_.drawn.vias, merge_.file.vias, keptVias_);
      putAll(merge_.drawn.areas, merge_.file.areas, keptAreas_);
    }
    settle(merge_.drawn.tracks, keptTracks_);
    settle(merge_.drawn.vias, keptVias_);
    settle(merge_.drawn.areas, keptAreas_);
    return std::move(left_);
  }

private:
  void onLayer(Fact<LayerId>& layer) const {
    if (!layer.known() || !layer.value) return;
    const auto found = merge_.layers.find(layer.value);
    if (found != merge_.layers.end())
      layer.value = found->second;
    else
      layer = {};
  }
  void place(Track& track) const {
    track.start = (*merge_.laid)(track.start);
    track.end = (*merge_.laid)(track.end);
    if (track.way == TrackWay::arc) track.mid = (*merge_.laid)(track.mid);
    onLayer(track.layer);
  }
  void place(Via& via) const {
    via.position = (*merge_.laid)(via.position);
    onLayer(via.from);
    onLayer(via.to);
  }
  void place(Area& area) const {
    merge_.laid->move(area.polygon);
    onLayer(area.layer);
  }

  /// What is drawn so already (the file was brought in before) stays.
  template <class T, class Id> void putAll(const Table<T>& drawn, const Table<T>& file, std::set<Id>& kept) {
    std::multimap<Key, Id> there;
    for (const T& object : drawn)
      there.emplace(keyOf(object), object.id);
    for (T object : file) {
      place(object);
      if (object.net.known()) {
        if (object.net.value) object.net.value = merge_.drawnNet(object.net.value);
        theirs_.insert(object.net.value);
      }
      bool found = false;
      const auto [first, last] = there.equal_range(keyOf(object));
      for (auto one = first; one != last && !found; ++one) {
        object.id = one->second;
        found = *drawn.find(object.id) == object && kept.insert(object.id).second;
      }
      if (found) continue;
      object.id = draft_.newId<Id>();
      draft_.put(std::move(object));
    }
  }

  template <class T, class Id> void settle(const Table<T>& drawn, const std::set<Id>& kept) {
    for (const T& object : drawn) {
      if (!object.net.known()) continue;
      if (!kept.contains(object.id) && theirs_.contains(object.net.value)) {
        draft_.remove<T>(object.id);
        continue;
      }
      const auto renamed = merge_.renamed.find(object.net.value);
      if (renamed == merge_.renamed.end() || kept.contains(object.id)) {
        left_.insert(object.net.value);
        continue;
      }
      if (theirs_.contains(renamed->second)) {
        draft_.remove<T>(object.id);
        continue;
      }
      T moved = object;
      moved.net.value = renamed->second;
      draft_.put(std::move(moved));
    }
  }

  Draft& draft_;
  const CopperMerge& merge_;
  std::set<TrackId> keptTracks_;
  std::set<ViaId> keptVias_;
  std::set<AreaId> keptAreas_;
  std::set<NetId> theirs_; ///< nets of which the file has copper
  std::set<NetId> left_;
};

} // namespace

std::set<NetId> mergeCopper(Draft& draft, const CopperMerge& merge) {
  return Merge(draft, merge).run();
}

} // namespace netmend
