#include "drawn_joins.h"

#include <algorithm>
#include <map>

#include "item_names.h"
#include "union_find.h"

namespace netmend::copper {

namespace {

constexpr std::size_t touchingPads = SIZE_MAX;

} // namespace

DrawnJoins::DrawnJoins(const Board& board, const Items& items, const std::vector<Contact>& contacts)
    : board_(board), items_(items) {
  UnionFind groups(items.items.size());
  for (const Contact& c : contacts)
    if (drawn(c.a) && drawn(c.b)) groups.unite(c.a, c.b);
  const auto touch = [&](std::size_t area, std::size_t pad, Vec onArea) {
    const PartId part = partOf(pad);
    const NetId net = netOf(board_, items_.items[pad]);
    if (!drawn(area) || !part || !net) return;
    groupOf_.emplace(area, groups.find(area));
    Join& join = joinAt(groups.find(area), part);
    join.add(net);
    if (!join.at) join.at = pointOf(onArea);
  };
  for (const Contact& c : contacts) {
    if (drawn(c.a)) groupOf_.emplace(c.a, groups.find(c.a));
    if (drawn(c.b)) groupOf_.emplace(c.b, groups.find(c.b));
    touch(c.a, c.b, c.onA);
    touch(c.b, c.a, c.onB);
    const PartId part = partOf(c.a);
    const NetId a = netOf(board_, items_.items[c.a]);
    const NetId b = netOf(board_, items_.items[c.b]);
    if (!part || partOf(c.b) != part || !a || !b || a == b) continue;
    Join& join = joinAt(touchingPads, part);
    join.add(a);
    join.add(b);
    if (!join.at) join.at = pointOf(c.onA);
  }
}

void DrawnJoins::Join::add(NetId net) {
  const auto place = std::lower_bound(nets.begin(), nets.end(), net);
  if (place == nets.end() || *place != net) nets.insert(place, net);
}

DrawnJoins::Join& DrawnJoins::joinAt(std::size_t group, PartId part) {
  auto& joins = ofGroup_[group];
  const auto found = std::find_if(joins.begin(), joins.end(), [&](const Join& j) { return j.part == part; });
  if (found != joins.end()) return *found;
  joins.push_back({part, {}, {}});
  return joins.back();
}

PartId DrawnJoins::partOf(std::size_t item) const {
  if (items_.items[item].kind != CopperItemKind::pad) return {};
  const Pin* pin = board_.pins.find(board_.pads[items_.items[item].object].pin);
  return pin != nullptr ? pin->part : PartId{};
}

bool DrawnJoins::drawn(std::size_t item) const {
  const CopperItem& it = items_.items[item];
  return it.kind == CopperItemKind::area && !board_.areas[it.object].net.known();
}

bool DrawnJoins::meant(const Contact& contact, NetId a, NetId b) const {
  const auto has = [&](const Join& join) {
    return std::binary_search(join.nets.begin(), join.nets.end(), a) &&
           std::binary_search(join.nets.begin(), join.nets.end(), b);
  };
  for (const std::size_t item : {contact.a, contact.b}) {
    if (const auto group = groupOf_.find(item); group != groupOf_.end()) {
      const auto joins = ofGroup_.find(group->second);
      if (joins != ofGroup_.end() && std::any_of(joins->second.begin(), joins->second.end(), has))
        return true;
    }
    // A track that ends on one pad of a closed jumper may well lie over the other, too.
    const PartId part = partOf(item);
    if (!part) continue;
    for (const auto& [group, joins] : ofGroup_)
      if (std::any_of(joins.begin(), joins.end(),
                      [&](const Join& join) { return join.part == part && has(join); }))
        return true;
  }
  return false;
}

std::vector<DrawnJoin> DrawnJoins::joins() const {
  std::map<std::pair<PartId, std::vector<NetId>>, Point> sorted;
  for (const auto& [group, joins] : ofGroup_) {
    for (const Join& join : joins) {
      if (join.nets.size() < 2) continue;
      const auto [it, added] = sorted.try_emplace({join.part, join.nets}, *join.at);
      it->second = std::min(it->second, *join.at); // whichever group comes first
    }
  }
  std::vector<DrawnJoin> out;
  out.reserve(sorted.size());
  for (const auto& [what, at] : sorted)
    out.push_back({what.first, what.second, at});
  return out;
}

} // namespace netmend::copper
