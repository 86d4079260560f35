#include "netmend/sketch/merge.h"

#include <algorithm>
#include <set>

#include "draft.h"
#include "matched_boards.h"
#include "merge_copper.h"
#include "netmend/board/summary.h"

namespace netmend {

namespace {

using What = MergeDifference::What;
using Right = MergeDifference::Right;

/// What is not known, or only guessed, is learnt.
template <class T> void learn(Fact<T>& mine, const Fact<T>& theirs) {
  if (!mine.known() || (!mine.certain() && theirs.certain())) mine = theirs;
}

class Merger {
public:
  Merger(const Lookup& drawn, const Lookup& file, const MergePlan& plan)
      : drawn_(drawn), file_(file), plan_(plan), matched_(drawn, file), draft_(drawn.board()) {
    for (const MergeDifference& difference : plan_.differences)
      if (difference.pin && difference.right != Right::file) kept_.insert(difference.pin);
    const auto idIn = [&](const auto& matches, auto theirs) {
      const auto found = matches.find(theirs);
      return found != matches.end() ? found->second : draft_.newId<decltype(theirs)>();
    };
    for (const Part& part : file_.board().parts)
      parts_[part.id] = idIn(matched_.partOf, part.id);
    for (const Pin& pin : file_.board().pins)
      pins_[pin.id] = idIn(matched_.drawnOf, pin.id);
    for (const Net& net : file_.board().nets)
      if (const NetId mine = matched_.drawnNet(net.id) ? matched_.drawnNet(net.id) : keptNetOf(net.id))
        nets_[net.id] = mine;
  }

  Edit merge() {
    for (const Part& part : file_.board().parts)
      putPart(part);
    for (const Pin& pin : file_.board().pins)
      putPin(pin);
    if (matched_.laid) putPlaces();
    const std::map<NetId, NetId> renamed = renamedNets();
    const std::function<NetId(NetId)> drawnNet = [this](NetId theirs) { return netFor(theirs); };
    std::set<NetId> left =
        mergeCopper(draft_, {drawn_.board(), file_.board(), matched_.laid, layers_, renamed, drawnNet});
    left.merge(used_);
    for (const auto& [theirs, mine] : matched_.netOf)
      learnNet(*file_.board().nets.find(theirs), *drawn_.board().nets.find(mine));
    // A net that nothing is left of goes; one that nothing was drawn of is left alone.
    for (const Net& net : drawn_.board().nets)
      if (!drawn_.pinsOf(net.id).empty() && !left.contains(net.id)) draft_.remove<Net>(net.id);
    return draft_.take();
  }

private:
  template <class T> void putOver(const T& there, T object) {
    if (!(object == there)) draft_.put(std::move(object));
  }
  [[nodiscard]] Point placed(Point p) const { return (*matched_.laid)(p); }

  [[nodiscard]] bool fileIsRight(PartId part, What what) const {
    return std::any_of(plan_.differences.begin(), plan_.differences.end(), [&](const MergeDifference& d) {
      return d.part == part && d.what == what && d.right == Right::file;
    });
  }

  /// The drawn net that all pins of a file's net stay in: its copper is of that one.
  [[nodiscard]] NetId keptNetOf(NetId theirs) const {
    std::set<NetId> nets;
    for (const PinId pin : file_.pinsOf(theirs)) {
      const Pin* mine = drawn_.board().pins.find(pins_.at(pin));
      nets.insert(mine != nullptr && kept_.contains(mine->id) ? mine->net.value : NetId());
    }
    return nets.size() == 1 ? *nets.begin() : NetId();
  }

  /// What the file's net is called in the drawing; one that is not there comes in.
  NetId netFor(NetId theirs) {
    NetId& mine = nets_[theirs];
    if (!mine) {
      Net fresh = *file_.board().nets.find(theirs);
      fresh.id = mine = draft_.newId<NetId>();
      draft_.put(std::move(fresh));
    }
    used_.insert(mine);
    return mine;
  }

  void learnNet(const Net& theirs, const Net& there) {
    Net mine = there;
    const bool renamed =
        std::any_of(plan_.differences.begin(), plan_.differences.end(), [&](const MergeDifference& d) {
          return d.what == What::name && d.net == mine.id && d.right == Right::file;
        });
    if (mine.name.empty() || renamed) mine.name = theirs.name;
    learn(mine.role, theirs.role);
    learn(mine.ratedVoltage, theirs.ratedVoltage);
    learn(mine.ratedCurrent, theirs.ratedCurrent);
    putOver(there, std::move(mine));
  }

  void putPart(const Part& theirs) {
    const Part* there = drawn_.board().parts.find(parts_.at(theirs.id));
    Part part = theirs;
    part.id = parts_.at(theirs.id);
    if (part.lid.known() && part.lid.value) part.lid.value = parts_.at(part.lid.value);
    for (Through& way : part.through.value) {
      way.from = pins_.at(way.from);
      way.to = pins_.at(way.to);
    }
    if (matched_.laid) {
      if (part.position.known()) part.position.value = placed(part.position.value);
      matched_.laid->move(part.body.value);
    } else {
      part.position = {};
      part.body = {};
    }
    if (there == nullptr)
      draft_.put(std::move(part));
    else
      learnPart(part, *there);
  }

  void learnPart(const Part& theirs, const Part& there) {
    Part mine = there;
    const bool sameValue = mine.value.value == theirs.value.value && theirs.value.known();
    if (!mine.value.known() || sameValue) learn(mine.value, theirs.value);
    if (fileIsRight(mine.id, What::value)) mine.value = theirs.value;
    const bool sameFitted = mine.fitted.value == theirs.fitted.value && theirs.fitted.known();
    if (!mine.fitted.known() || sameFitted) learn(mine.fitted, theirs.fitted);
    if (fileIsRight(mine.id, What::fitted) || fileIsRight(mine.id, What::missing))
      mine.fitted = theirs.fitted;
    learn(mine.kind, theirs.kind);
    learn(mine.package, theirs.package);
    learn(mine.height, theirs.height);
    learn(mine.lid, theirs.lid);
    learn(mine.through, theirs.through);
    learn(mine.side, theirs.side);
    if (matched_.laid && !mine.position.known()) mine.position = theirs.position;
    if (matched_.laid && !mine.body.known()) mine.body = theirs.body;
    putOver(there, std::move(mine));
  }

  void putPin(const Pin& theirs) {
    const Pin* there = drawn_.board().pins.find(pins_.at(theirs.id));
    Pin pin = there != nullptr ? *there : theirs;
    if (there == nullptr) {
      pin.id = pins_.at(theirs.id);
      if (pin.part) pin.part = parts_.at(pin.part);
      pin.net = {};
    }
    const bool none = there != nullptr && there->net.origin == Origin::measured && !there->net.value;
    if (theirs.net.known() && !none && !kept_.contains(pin.id)) {
      const NetId net = theirs.net.value ? netFor(theirs.net.value) : NetId();
      if (pin.net.known() && pin.net.value == net)
        learn(pin.net, {net, theirs.net.origin});
      else
        pin.net = {net, theirs.net.origin};
    }
    learn(pin.termination, theirs.termination);
    if (pin.net.known()) used_.insert(pin.net.value);
    if (there == nullptr)
      draft_.put(pin);
    else
      putOver(*there, pin);
    if (theirs.net.known()) netAfter_[pin.id] = pin.net;
  }

  /// Where the file's places fit the drawing's.
  void putPlaces() {
    putLayers();
    for (const Pad& theirs : file_.board().pads) {
      const PinId pin = pins_.at(theirs.pin);
      if (!drawn_.padsOf(pin).empty()) continue; // the drawing has its own
      Pad fresh = theirs;
      fresh.id = draft_.newId<PadId>();
      fresh.pin = pin;
      if (fresh.position.known()) fresh.position.value = placed(fresh.position.value);
      fresh.rotation = matched_.laid->turn(fresh.rotation);
      draft_.put(std::move(fresh));
    }
    for (const Zone& theirs : file_.board().zones)
      putZone(theirs);
  }

  void putZone(const Zone& theirs) {
    Zone fresh = theirs;
    matched_.laid->move(fresh.polygon);
    if (fresh.part) fresh.part = parts_.at(fresh.part);
    for (const Zone& there : drawn_.board().zones) {
      fresh.id = there.id;
      if (fresh == there || (fresh.part && fresh.part == there.part)) return;
    }
    fresh.id = draft_.newId<ZoneId>();
    draft_.put(std::move(fresh));
  }

  void putLayers() {
    BoardInfo info = drawn_.board().info;
    const auto& theirs = file_.board().info.layerOrder;
    const auto& mine = drawn_.board().info.layerOrder;
    if (theirs.size() >= 2) {
      std::vector<LayerId> inner(mine.size() > 2 ? mine.begin() + 1 : mine.end(),
                                 mine.size() > 2 ? mine.end() - 1 : mine.end());
      info.layerOrder.clear();
      for (std::size_t i = 0; i < theirs.size(); ++i) {
        LayerId there;
        if (i == 0)
          there = mine.empty() ? LayerId() : mine.front();
        else if (i + 1 == theirs.size())
          there = mine.size() < 2 ? LayerId() : mine.back();
        else
          there = innerLike(theirs[i], inner);
        if (i + 1 == theirs.size()) // those that the file does not have
          info.layerOrder.insert(info.layerOrder.end(), inner.begin(), inner.end());
        info.layerOrder.push_back(layers_[theirs[i]] = putLayer(theirs[i], there));
      }
    }
    if (!info.outline.known() && file_.board().info.outline.known()) {
      info.outline = file_.board().info.outline;
      for (Polygon& polygon : info.outline.value)
        matched_.laid->move(polygon);
    }
    // Where the drawing joins what the file does not, it says no more of its copper than before.
    const auto known = drawnCopper(file_.board());
    const auto before = drawnCopper(drawn_.board());
    if (onlyTheirs() || before >= known) {
      if (known != DrawnCopper::points) info.copper = fromFile(known);
    } else if (!info.copper.known()) {
      info.copper = guessed(before);
    }
    if (!(info == drawn_.board().info)) draft_.putInfo(std::move(info));
  }

  /// Takes the drawn inner layer of this name out of the list.
  [[nodiscard]] LayerId innerLike(LayerId theirs, std::vector<LayerId>& inner) const {
    const auto found = std::find_if(inner.begin(), inner.end(), [&](LayerId id) {
      return drawn_.board().layers.find(id)->name == file_.board().layers.find(theirs)->name;
    });
    if (found == inner.end()) return {};
    const LayerId id = *found;
    inner.erase(found);
    return id;
  }

  LayerId putLayer(LayerId theirs, LayerId there) {
    const Layer& from = *file_.board().layers.find(theirs);
    if (const Layer* drawn = drawn_.board().layers.find(there)) {
      Layer mine = *drawn;
      learn(mine.copperThickness, from.copperThickness);
      learn(mine.dielectricBelow, from.dielectricBelow);
      putOver(*drawn, std::move(mine));
      return there;
    }
    Layer layer = from;
    layer.id = draft_.newId<LayerId>();
    const LayerId id = layer.id;
    draft_.put(std::move(layer));
    return id;
  }

  /// Whether no net of the drawing has a pin that the file does not say of it.
  [[nodiscard]] bool onlyTheirs() const {
    return std::none_of(drawn_.board().pins.begin(), drawn_.board().pins.end(), [&](const Pin& pin) {
      const bool theirs = netAfter_.contains(pin.id) && !kept_.contains(pin.id);
      return !theirs && pin.net.known() && pin.net.value && drawn_.pinsOf(pin.net.value).size() > 1;
    });
  }

  /// Drawn nets whose pins have all gone to the same other one.
  [[nodiscard]] std::map<NetId, NetId> renamedNets() {
    std::map<NetId, std::set<NetId>> after;
    for (const Pin& pin : drawn_.board().pins) {
      const auto found = netAfter_.find(pin.id);
      const Fact<NetId>& net = found != netAfter_.end() ? found->second : pin.net;
      if (net.known()) used_.insert(net.value);
      if (pin.net.known() && pin.net.value) after[pin.net.value].insert(net.value);
    }
    std::map<NetId, NetId> out;
    for (const auto& [net, nets] : after)
      if (nets.size() == 1 && *nets.begin() && *nets.begin() != net) out.emplace(net, *nets.begin());
    return out;
  }

  const Lookup& drawn_;
  const Lookup& file_;
  const MergePlan& plan_;
  MatchedBoards matched_;
  Draft draft_;
  std::set<PinId> kept_; ///< stay as they are drawn
  // From the file's ids to the drawing's.
  std::map<NetId, NetId> nets_;
  std::map<PartId, PartId> parts_;
  std::map<PinId, PinId> pins_;
  std::map<LayerId, LayerId> layers_;
  std::set<NetId> used_;                  ///< that pins or the file's copper are of
  std::map<PinId, Fact<NetId>> netAfter_; ///< of pins that the file has
};

} // namespace

Edit mergeEdit(const Lookup& drawn, const Lookup& file, const MergePlan& plan) {
  return Merger(drawn, file, plan).merge();
}

} // namespace netmend
