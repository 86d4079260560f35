#include "netmend/sketch/merge.h"

#include <algorithm>
#include <set>

#include "draft.h"
#include "matched_boards.h"

namespace netmend {

namespace {

using What = MergeDifference::What;
using Right = MergeDifference::Right;

constexpr std::size_t fewPins = 3;

/// A net as people tell it: its name, else some of its pins.
std::string netText(const Lookup& lookup, NetId id, PinId but) {
  const Net* net = lookup.board().nets.find(id);
  if (net == nullptr) return {};
  if (!net->name.empty()) return net->name;
  std::string out;
  std::size_t count = 0;
  for (const PinId pin : lookup.pinsOf(id))
    if (pin != but && count++ < fewPins) out += (out.empty() ? "" : " ") + pinLabel(lookup.board(), pin);
  return out;
}

Right proposed(Origin drawn) {
  if (drawn == Origin::measured) return Right::drawing;
  return drawn == Origin::guessed ? Right::file : Right::open;
}

class Planner {
public:
  Planner(const Lookup& drawn, const Lookup& file) : drawn_(drawn), file_(file), matched_(drawn, file) {}

  MergePlan plan() {
    out_.placesFit = matched_.laid.has_value();
    out_.worstPlace = matched_.worst;
    std::set<PinId> mine;
    for (const Pin& pin : file_.board().pins) {
      const auto found = matched_.drawnOf.find(pin.id);
      if (found == matched_.drawnOf.end()) {
        ++out_.onlyInFile;
        continue;
      }
      mine.insert(found->second);
      comparePin(pin, *drawn_.board().pins.find(found->second));
    }
    out_.onlyDrawn = drawn_.board().pins.size() - mine.size();
    for (const auto& [f, d] : matched_.netOf)
      if (matched_.fileNetOf.at(d) == f)
        compareNames(*file_.board().nets.find(f), *drawn_.board().nets.find(d));
    for (const auto& [f, d] : matched_.partOf)
      compareParts(*file_.board().parts.find(f), *drawn_.board().parts.find(d));
    return std::move(out_);
  }

private:
  void comparePin(const Pin& theirs, const Pin& mine) {
    if (!theirs.net.known()) {
      ++out_.agree;
      return;
    }
    if (!mine.net.known()) {
      ++out_.learnt;
      return;
    }
    const bool bothNone = !theirs.net.value && !mine.net.value;
    const auto counterpart = matched_.netOf.find(theirs.net.value);
    const bool same = theirs.net.value && counterpart != matched_.netOf.end() &&
                      counterpart->second == mine.net.value &&
                      matched_.fileNetOf.at(mine.net.value) == theirs.net.value;
    // A net of which only this pin is drawn is no other than the file's.
    const bool alone = mine.net.value && drawn_.pinsOf(mine.net.value).size() == 1;
    if (bothNone || same || alone) {
      ++out_.agree;
      return;
    }
    MergeDifference difference;
    difference.what = What::net;
    difference.label = pinLabel(drawn_.board(), mine.id);
    difference.drawn = netText(drawn_, mine.net.value, mine.id);
    difference.file = netText(file_, theirs.net.value, theirs.id);
    difference.drawnOrigin = mine.net.origin;
    difference.pin = mine.id;
    difference.right = proposed(mine.net.origin);
    out_.differences.push_back(std::move(difference));
  }

  void compareNames(const Net& theirs, const Net& mine) {
    if (mine.name.empty() || theirs.name.empty() || mine.name == theirs.name) return;
    MergeDifference difference;
    difference.what = What::name;
    difference.label = mine.name;
    difference.drawn = mine.name;
    difference.file = theirs.name;
    difference.net = mine.id;
    out_.differences.push_back(std::move(difference));
  }

  void compareParts(const Part& theirs, const Part& mine) {
    const auto differs = [&](const auto& a, const auto& b) {
      return a.known() && b.known() && !(a.value == b.value);
    };
    MergeDifference difference;
    difference.label = mine.reference;
    difference.part = mine.id;
    if (differs(theirs.value, mine.value)) {
      difference.what = What::value;
      difference.drawn = mine.value.value;
      difference.file = theirs.value.value;
      difference.drawnOrigin = mine.value.origin;
      difference.right = proposed(mine.value.origin);
      out_.differences.push_back(difference);
    }
    if (differs(theirs.fitted, mine.fitted)) {
      difference.what = mine.fitted.value ? What::fitted : What::missing;
      difference.drawn.clear();
      difference.file.clear();
      difference.drawnOrigin = mine.fitted.origin;
      // What somebody has seen on the board.
      difference.right = mine.fitted.origin == Origin::guessed ? Right::file : Right::drawing;
      out_.differences.push_back(difference);
    }
  }

  const Lookup& drawn_;
  const Lookup& file_;
  MatchedBoards matched_;
  MergePlan out_;
};

class Merger {
public:
  Merger(const Lookup& drawn, const Lookup& file, const MergePlan& plan)
      : drawn_(drawn), file_(file), plan_(plan), matched_(drawn, file), draft_(drawn.board()) {}

  Edit merge() {
    for (const MergeDifference& difference : plan_.differences) {
      if (difference.right == Right::file) continue;
      if (difference.pin) kept_.insert(difference.pin);
    }
    putNets();
    putLayers();
    for (const Part& part : file_.board().parts)
      putPart(part);
    for (const Pin& pin : file_.board().pins)
      putPin(pin);
    for (const Pad& pad : file_.board().pads)
      putPad(pad);
    if (matched_.laid) putCopper();
    return draft_.take();
  }

private:
  [[nodiscard]] const MergeDifference* differenceOf(PartId part, What what) const {
    const auto found =
        std::find_if(plan_.differences.begin(), plan_.differences.end(), [&](const MergeDifference& d) {
          return d.part == part && d.what == what && d.right == Right::file;
        });
    return found != plan_.differences.end() ? &*found : nullptr;
  }

  /// Each net of the file becomes the drawn one that is its counterpart, or a new one.
  void putNets() {
    for (const Net& theirs : file_.board().nets) {
      const auto found = matched_.netOf.find(theirs.id);
      const bool mutual = found != matched_.netOf.end() && matched_.fileNetOf.at(found->second) == theirs.id;
      if (!mutual) {
        Net fresh = theirs;
        fresh.id = draft_.newId<NetId>();
        nets_[theirs.id] = fresh.id;
        draft_.put(std::move(fresh));
        continue;
      }
      nets_[theirs.id] = found->second;
      Net mine = *drawn_.board().nets.find(found->second);
      const bool renamed =
          std::any_of(plan_.differences.begin(), plan_.differences.end(), [&](const MergeDifference& d) {
            return d.what == What::name && d.net == mine.id && d.right == Right::file;
          });
      if (mine.name.empty() || renamed) mine.name = theirs.name;
      if (!mine.role.known()) mine.role = theirs.role;
      if (!mine.ratedVoltage.known()) mine.ratedVoltage = theirs.ratedVoltage;
      if (!mine.ratedCurrent.known()) mine.ratedCurrent = theirs.ratedCurrent;
      draft_.put(std::move(mine));
    }
  }

  void putLayers() {
    const auto& order = file_.board().info.layerOrder;
    if (order.size() < 2 || !matched_.laid) return;
    BoardInfo info = drawn_.board().info;
    layers_[order.front()] = info.layerOrder.empty() ? newLayer(order.front()) : info.layerOrder.front();
    for (std::size_t i = 1; i + 1 < order.size(); ++i)
      layers_[order[i]] = newLayer(order[i]);
    layers_[order.back()] = info.layerOrder.size() < 2 ? newLayer(order.back()) : info.layerOrder.back();
    info.layerOrder.clear();
    for (const LayerId layer : order)
      info.layerOrder.push_back(layers_[layer]);
    info.copper = file_.board().info.copper;
    if (!info.copper.known()) info.copper = fromFile(DrawnCopper::everything);
    if (!info.outline.known() && file_.board().info.outline.known()) {
      info.outline = file_.board().info.outline;
      for (Polygon& polygon : info.outline.value)
        moveAll(polygon);
    }
    draft_.putInfo(std::move(info));
  }
  LayerId newLayer(LayerId theirs) {
    Layer layer = *file_.board().layers.find(theirs);
    layer.id = draft_.newId<LayerId>();
    const LayerId id = layer.id;
    draft_.put(std::move(layer));
    return id;
  }

  void moveAll(Polygon& polygon) const {
    for (Point& p : polygon.outer)
      p = (*matched_.laid)(p);
    for (Ring& hole : polygon.holes)
      for (Point& p : hole)
        p = (*matched_.laid)(p);
  }

  void putPart(const Part& theirs) {
    const auto found = matched_.partOf.find(theirs.id);
    if (found != matched_.partOf.end()) {
      parts_[theirs.id] = found->second;
      Part mine = *drawn_.board().parts.find(found->second);
      if (!mine.value.known() || differenceOf(mine.id, What::value) != nullptr) mine.value = theirs.value;
      if (!mine.kind.known()) mine.kind = theirs.kind;
      if (!mine.package.known()) mine.package = theirs.package;
      if (!mine.height.known()) mine.height = theirs.height;
      if (differenceOf(mine.id, What::fitted) != nullptr || differenceOf(mine.id, What::missing) != nullptr)
        mine.fitted = theirs.fitted;
      draft_.put(std::move(mine));
      return;
    }
    Part fresh = theirs;
    fresh.id = draft_.newId<PartId>();
    parts_[theirs.id] = fresh.id;
    fresh.lid = {};
    fresh.through = {};
    if (matched_.laid) {
      if (fresh.position.known()) fresh.position.value = (*matched_.laid)(fresh.position.value);
      for (Point& p : fresh.body.value)
        p = (*matched_.laid)(p);
    } else {
      fresh.position = {};
      fresh.body = {};
    }
    draft_.put(std::move(fresh));
  }

  [[nodiscard]] Fact<NetId> netOf(const Pin& theirs) const {
    Fact<NetId> net = theirs.net;
    if (net.known() && net.value) net.value = nets_.at(net.value);
    return net;
  }

  void putPin(const Pin& theirs) {
    const auto found = matched_.drawnOf.find(theirs.id);
    if (found == matched_.drawnOf.end()) {
      Pin fresh = theirs;
      fresh.id = draft_.newId<PinId>();
      pins_[theirs.id] = fresh.id;
      if (fresh.part) fresh.part = parts_.at(fresh.part);
      fresh.net = netOf(theirs);
      draft_.put(std::move(fresh));
      return;
    }
    Pin mine = *drawn_.board().pins.find(found->second);
    if (!theirs.net.known() || kept_.contains(mine.id)) return;
    const Fact<NetId> net = netOf(theirs);
    if (mine.net.known() && mine.net.value == net.value) return;
    mine.net = net;
    draft_.put(std::move(mine));
  }

  void putPad(const Pad& theirs) {
    const auto pin = pins_.find(theirs.pin);
    if (pin == pins_.end()) return; // the drawing has its own
    Pad fresh = theirs;
    fresh.id = draft_.newId<PadId>();
    fresh.pin = pin->second;
    if (matched_.laid && fresh.position.known()) {
      fresh.position.value = (*matched_.laid)(fresh.position.value);
      fresh.rotation = matched_.laid->turn(fresh.rotation);
    } else {
      fresh.position = {};
    }
    draft_.put(std::move(fresh));
  }

  /// The file's copper, in place of what was drawn of the same nets.
  void putCopper() {
    std::set<NetId> theirs;
    const auto put = [&](auto object) {
      object.net = object.net.known() && object.net.value
                       ? Fact<NetId>{nets_.at(object.net.value), object.net.origin}
                       : object.net;
      if (object.net.known()) theirs.insert(object.net.value);
      draft_.put(std::move(object));
    };
    for (Track track : file_.board().tracks) {
      track.id = draft_.newId<TrackId>();
      track.start = (*matched_.laid)(track.start);
      track.end = (*matched_.laid)(track.end);
      if (track.way == TrackWay::arc) track.mid = (*matched_.laid)(track.mid);
      layer(track.layer);
      put(std::move(track));
    }
    for (Via via : file_.board().vias) {
      via.id = draft_.newId<ViaId>();
      via.position = (*matched_.laid)(via.position);
      layer(via.from);
      layer(via.to);
      put(std::move(via));
    }
    for (Area area : file_.board().areas) {
      area.id = draft_.newId<AreaId>();
      moveAll(area.polygon);
      layer(area.layer);
      put(std::move(area));
    }
    const auto replaced = [&](const auto& object) {
      return object.net.known() && theirs.contains(object.net.value);
    };
    for (const Track& track : drawn_.board().tracks)
      if (replaced(track)) draft_.remove<Track>(track.id);
    for (const Via& via : drawn_.board().vias)
      if (replaced(via)) draft_.remove<Via>(via.id);
  }
  void layer(Fact<LayerId>& layer) const {
    if (!layer.known() || !layer.value) return;
    const auto found = layers_.find(layer.value);
    if (found != layers_.end())
      layer.value = found->second;
    else
      layer = {};
  }

  const Lookup& drawn_;
  const Lookup& file_;
  const MergePlan& plan_;
  MatchedBoards matched_;
  Draft draft_;
  std::map<NetId, NetId> nets_; ///< from the file's ids to the drawing's, of all kinds
  std::map<PartId, PartId> parts_;
  std::map<PinId, PinId> pins_; ///< of those that are new
  std::map<LayerId, LayerId> layers_;
  std::set<PinId> kept_; ///< stay as they are drawn
};

} // namespace

MergePlan planMerge(const Lookup& drawn, const Lookup& file) {
  return Planner(drawn, file).plan();
}

Edit mergeEdit(const Lookup& drawn, const Lookup& file, const MergePlan& plan) {
  return Merger(drawn, file, plan).merge();
}

} // namespace netmend
