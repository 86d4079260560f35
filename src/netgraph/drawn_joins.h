#pragma once

#include <unordered_map>
#include <vector>

#include "contacts.h"
#include "netmend/netgraph/board_graph.h"

namespace netmend::copper {

/// Nets that a part's own copper joins, and what that copper is.
class DrawnJoins {
public:
  /// From the contacts of one island.
  DrawnJoins(const Board& board, const Items& items, const std::vector<Contact>& contacts);

  /// Whether the contact, between copper of these nets, is one that a part was drawn to make.
  [[nodiscard]] bool meant(const Contact& contact, NetId a, NetId b) const;
  /// Parts whose copper joins two nets or more, ascending.
  [[nodiscard]] std::vector<DrawnJoin> joins() const;

private:
  /// Copper without a name that hangs together, and the nets of one part's pads that it touches; or without
  /// such copper, the nets of pads of the part that touch each other.
  struct Join {
    PartId part;
    std::vector<NetId> nets;
    std::optional<Point> at;
    void add(NetId net);
  };

  [[nodiscard]] PartId partOf(std::size_t item) const;
  [[nodiscard]] bool drawn(std::size_t item) const;
  Join& joinAt(std::size_t group, PartId part);

  const Board& board_;
  const Items& items_;
  std::unordered_map<std::size_t, std::size_t> groupOf_; ///< of drawn items
  std::unordered_map<std::size_t, std::vector<Join>>
      ofGroup_; ///< by its group's first item, or `touchingPads`
};

} // namespace netmend::copper
