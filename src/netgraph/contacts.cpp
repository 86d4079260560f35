#include "contacts.h"

#include <algorithm>
#include <numeric>

#include "item_tree.h"

namespace netmend::copper {

namespace {

namespace bgi = boost::geometry::index;

bool sameObject(const CopperItem& a, const CopperItem& b) {
  return a.kind == b.kind && a.object == b.object;
}

void contactsOnLayer(const Items& items, const std::vector<std::size_t>& members, int layer,
                     std::vector<Contact>& out) {
  std::vector<TreeEntry> entries;
  entries.reserve(members.size());
  for (const std::size_t i : members)
    entries.emplace_back(treeBox(items.items[i].bounds), i);
  const ItemTree tree(entries);
  std::vector<TreeEntry> near;
  for (const std::size_t a : members) {
    const CopperItem& item = items.items[a];
    near.clear();
    tree.query(bgi::intersects(treeBox(item.bounds.grownBy(contactSlack))), std::back_inserter(near));
    std::sort(near.begin(), near.end(), [](const auto& x, const auto& y) { return x.second < y.second; });
    for (const auto& [box, b] : near) {
      const CopperItem& other = items.items[b];
      if (b <= a || sameObject(item, other)) continue;
      const double reach = touchDistance(item, other);
      const Closest c = closestBetween(outlineOf(items, item), outlineOf(items, other), reach);
      if (c.distance <= reach) out.push_back({a, b, layer, c.onFirst, c.onSecond});
    }
  }
}

} // namespace

double touchDistance(const CopperItem& a, const CopperItem& b) {
  return a.radius + b.radius + contactSlack;
}

std::vector<Contact> contactsOf(const Items& items, const Progress& progress,
                                const std::vector<std::size_t>& among) {
  std::vector<std::vector<std::size_t>> byLayer(static_cast<std::size_t>(items.layerCount));
  const auto sort = [&](std::size_t i) {
    const LayerSpan& layers = items.items[i].layers;
    for (int layer = layers.first; layer <= layers.last; ++layer)
      byLayer[static_cast<std::size_t>(layer)].push_back(i);
  };
  if (among.empty()) {
    for (std::size_t i = 0; i < items.items.size(); ++i)
      sort(i);
  } else {
    for (const std::size_t i : among)
      sort(i);
  }
  std::vector<Contact> out;
  for (std::size_t layer = 0; layer < byLayer.size(); ++layer) {
    if (progress.stopped()) return {};
    progress(pattern("core", "Contacts of copper"),
             static_cast<double>(layer) / static_cast<double>(byLayer.size()));
    contactsOnLayer(items, byLayer[layer], static_cast<int>(layer), out);
  }
  return out;
}

struct PlaceIndex::Tree {
  ItemTree items;
};

PlaceIndex::PlaceIndex(const Items& items) : items_(items) {
  std::vector<TreeEntry> entries;
  entries.reserve(items.items.size());
  for (std::size_t i = 0; i < items.items.size(); ++i)
    entries.emplace_back(treeBox(items.items[i].bounds), i);
  tree_ = std::make_unique<Tree>(Tree{ItemTree(entries)});
}

PlaceIndex::~PlaceIndex() = default;

std::vector<std::size_t> PlaceIndex::at(Vec place, LayerSpan layers) const {
  std::vector<TreeEntry> near;
  Bounds box;
  box.include(place);
  tree_->items.query(bgi::intersects(treeBox(box.grownBy(contactSlack))), std::back_inserter(near));
  std::vector<std::size_t> out;
  for (const auto& [bounds, i] : near) {
    const CopperItem& item = items_.items[i];
    const bool apart = !layers.unknown() && !item.layers.unknown() &&
                       (item.layers.last < layers.first || item.layers.first > layers.last);
    if (!apart && covers(outlineOf(items_, item), place, contactSlack)) out.push_back(i);
  }
  std::sort(out.begin(), out.end());
  return out;
}

} // namespace netmend::copper
