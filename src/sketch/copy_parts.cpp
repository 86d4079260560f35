#include <algorithm>
#include <map>
#include <set>

#include "draft.h"
#include "netmend/netgraph/net_role.h"
#include "netmend/sketch/put_copper.h"
#include "netmend/sketch/put_parts.h"

namespace netmend {

namespace {

class Copier {
public:
  Copier(const Lookup& lookup, const PartsCopy& copy)
      : lookup_(lookup), board_(lookup.board()), copy_(copy), draft_(board_) {}

  Result<Edit> make() {
    if (copy_.parts.empty()) return failure({pattern("core", "no part to copy")});
    if (auto found = findAxis(); !found) return failure(found.error());
    countNets();
    for (const PartId id : copy_.parts)
      copyPart(*board_.parts.find(id));
    copyTracks();
    return draft_.take();
  }

private:
  Result<void> findAxis() {
    for (const PartId id : copy_.parts) {
      const Part* part = board_.parts.find(id);
      Fact<Point> at;
      for (const PinId pin : lookup_.pinsOf(id))
        if (!at.known()) at = positionOf(lookup_, pin);
      if (part != nullptr && !at.known()) at = part->position;
      if (!at.known())
        return failure({pattern("core", "has no place that could be copied"), "", "",
                        part != nullptr ? part->reference : std::string()});
      if (id == copy_.parts.front()) axis_ = at.value.x;
    }
    return {};
  }

  [[nodiscard]] Point moved(Point p) const {
    if (copy_.mirrored) p.x = axis_ + axis_ - p.x;
    return p + copy_.by;
  }
  [[nodiscard]] Degrees turned(Degrees angle) const {
    return copy_.mirrored ? Degrees(angle.value == 0.0 ? 0.0 : 360.0 - angle.value) : angle;
  }

  /// Which nets belong to the parts alone, and which everybody shares.
  void countNets() {
    std::set<PinId> pins;
    for (const PartId id : copy_.parts)
      pins.insert(lookup_.pinsOf(id).begin(), lookup_.pinsOf(id).end());
    for (const PinId id : pins) {
      const Pin& pin = *board_.pins.find(id);
      const Net* net = pin.net.known() ? board_.nets.find(pin.net.value) : nullptr;
      if (net == nullptr || nets_.contains(net->id)) continue;
      const auto role = roleOf(*net);
      const bool shared = role.known() && (role.value == NetRole::ground || role.value == NetRole::supply);
      const auto& all = lookup_.pinsOf(net->id);
      const bool own = all.size() > 1 &&
                       std::all_of(all.begin(), all.end(), [&](PinId other) { return pins.contains(other); });
      if (shared) {
        nets_.emplace(net->id, net->id);
      } else if (own) {
        Net fresh = *net;
        fresh.id = draft_.newId<NetId>();
        fresh.name.clear();
        fresh.origin = Origin::user;
        nets_.emplace(net->id, fresh.id);
        own_.insert(net->id);
        draft_.put(std::move(fresh));
      }
    }
  }

  std::string freshReference(const std::string& reference) {
    const std::string letters = partsOfReference(reference).letters;
    auto& from = next_[letters];
    std::string out = nextReference(board_, letters, from);
    from = std::stoul(out.substr(letters.size())) + 1;
    return out;
  }

  void copyPart(Part part) {
    const PartId old = part.id;
    part.id = draft_.newId<PartId>();
    part.reference = freshReference(part.reference);
    if (part.position.known()) part.position.value = moved(part.position.value);
    for (Point& corner : part.body.value)
      corner = moved(corner);
    part.lid = {};
    part.through = {};
    part.origin = Origin::user;
    const PartId id = part.id;
    draft_.put(std::move(part));
    for (const PinId pinId : lookup_.pinsOf(old)) {
      Pin pin = *board_.pins.find(pinId);
      pin.id = draft_.newId<PinId>();
      pin.part = id;
      if (pin.net.known() && pin.net.value) {
        const auto net = nets_.find(pin.net.value);
        pin.net = net != nets_.end() ? guessed(net->second) : Fact<NetId>{};
      }
      for (const PadId padId : lookup_.padsOf(pinId)) {
        Pad pad = *board_.pads.find(padId);
        pad.id = draft_.newId<PadId>();
        pad.pin = pin.id;
        if (pad.position.known()) pad.position.value = moved(pad.position.value);
        pad.rotation = turned(pad.rotation);
        if (copy_.mirrored) {
          for (Point& corner : pad.polygon)
            corner.x = -corner.x;
          pad.drillOffset.x = -pad.drillOffset.x;
        }
        pad.gone = {};
        draft_.put(std::move(pad));
      }
      draft_.put(std::move(pin));
    }
  }

  void copyTracks() {
    const auto isOwn = [&](const Fact<NetId>& net) { return net.known() && own_.contains(net.value); };
    for (Track track : board_.tracks) {
      if (!isOwn(track.net)) continue;
      track.id = draft_.newId<TrackId>();
      track.start = moved(track.start);
      track.end = moved(track.end);
      track.mid = track.way == TrackWay::arc ? moved(track.mid) : track.mid;
      track.net.value = nets_.at(track.net.value);
      draft_.put(std::move(track));
    }
    for (Via via : board_.vias) {
      if (!isOwn(via.net)) continue;
      via.id = draft_.newId<ViaId>();
      via.position = moved(via.position);
      via.net.value = nets_.at(via.net.value);
      draft_.put(std::move(via));
    }
  }

  const Lookup& lookup_;
  const Board& board_;
  const PartsCopy& copy_;
  Draft draft_;
  Length axis_;
  std::map<NetId, NetId> nets_; ///< what the copies' pins are of
  std::set<NetId> own_;         ///< of the parts alone
  std::map<std::string, std::optional<unsigned long>> next_;
};

} // namespace

Result<Edit> copyParts(const Lookup& lookup, const PartsCopy& copy) {
  return Copier(lookup, copy).make();
}

} // namespace netmend
