#pragma once

#include <cstddef>
#include <vector>

#include "copper_items.h"
#include "netmend/base/progress.h"

namespace netmend::copper {

/// Two items whose copper touches on a layer.
struct Contact {
  std::size_t a; ///< index of an item, smaller than b
  std::size_t b;
  int layer;
  Vec onA; ///< on its core, where they come closest; equal points where the cores overlap
  Vec onB;
};

/// All contacts on all layers, ordered by layer, a, b. Items that touch on several layers come once for each.
/// Items not listed in `among` are left out; an empty list means all.
[[nodiscard]] std::vector<Contact> contactsOf(const Items& items, const Progress& progress = {},
                                              const std::vector<std::size_t>& among = {});

/// The core distance at which two items touch.
[[nodiscard]] double touchDistance(const CopperItem& a, const CopperItem& b);

/// What lies at a place, for ends of tracks that are known to touch nothing else.
class PlaceIndex {
public:
  explicit PlaceIndex(const Items& items);
  ~PlaceIndex();
  PlaceIndex(const PlaceIndex&) = delete;
  PlaceIndex& operator=(const PlaceIndex&) = delete;

  /// Items that cover the place on these layers, or on any if unknown; items on unknown layers count too.
  [[nodiscard]] std::vector<std::size_t> at(Vec place, LayerSpan layers) const;

private:
  struct Tree;
  const Items& items_;
  std::unique_ptr<Tree> tree_;
};

} // namespace netmend::copper
