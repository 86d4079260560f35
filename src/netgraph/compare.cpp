#include <algorithm>
#include <deque>
#include <set>
#include <unordered_map>

#include "contacts.h"
#include "drawn_joins.h"
#include "gaps.h"
#include "item_names.h"
#include "netmend/board/summary.h"
#include "netmend/netgraph/board_graph.h"

namespace netmend {

namespace {

using copper::Contact;
using copper::CopperItem;
using copper::CopperItemKind;
using copper::Gap;
using copper::Items;

/// Between the points of two cores: where their copper touches, or the middle of the gap between it.
Point placeBetween(Vec a, double radiusA, Vec b, double radiusB) {
  const double apart = length(b - a);
  if (apart == 0.0) return copper::pointOf(a);
  const double gap = apart - radiusA - radiusB;
  const double share =
      gap >= 0.0 ? (radiusA + gap / 2.0) / apart : radiusA / (radiusA + radiusB); // overlap: in both
  return copper::pointOf(a + (b - a) * share);
}

class Comparison {
public:
  Comparison(const Board& board, const BoardGraph& graph)
      : board_(board), graph_(graph), items_(copper::copperItems(board)) {
    sortItems();
  }

  std::vector<DrawnJoin> joins() {
    std::vector<DrawnJoin> out;
    for (std::size_t i = 0; i < graph_.islands.size(); ++i) {
      if (graph_.islands[i].names.size() < 2 || itemsOf_[i].empty()) continue;
      const auto found =
          copper::DrawnJoins(board_, items_, copper::contactsOf(items_, {}, itemsOf_[i])).joins();
      out.insert(out.end(), found.begin(), found.end());
    }
    return out;
  }

  std::vector<Disagreement> compare() {
    for (std::size_t i = 0; i < graph_.islands.size(); ++i)
      if (graph_.islands[i].names.size() > 1) findShorts(i);
    if (drawnCopper(board_) != DrawnCopper::points) findGaps();
    return std::move(out_);
  }

private:
  /// Which items each island has.
  void sortItems() {
    itemsOf_.resize(graph_.islands.size());
    std::unordered_map<std::uint64_t, std::size_t> islandOf; // ids are unique over all kinds of a board
    for (std::size_t i = 0; i < graph_.islands.size(); ++i)
      for (const CopperObject& member : graph_.islands[i].members)
        islandOf.emplace(idOf(member), i);
    for (std::size_t i = 0; i < items_.items.size(); ++i) {
      const auto found = islandOf.find(idOf(copper::objectOf(board_, items_.items[i])));
      if (found != islandOf.end()) itemsOf_[found->second].push_back(i);
    }
  }

  static std::uint64_t idOf(const CopperObject& object) {
    return std::visit(
        [](const auto& id) -> std::uint64_t {
          if constexpr (requires { id.value; })
            return id.value;
          else
            return 0;
        },
        object);
  }

  [[nodiscard]] CopperObject objectOf(std::size_t item) const {
    return copper::objectOf(board_, items_.items[item]);
  }

  /// The nets of an island's items; copper without a name counts to the nearest one, in contacts.
  [[nodiscard]] std::unordered_map<std::size_t, NetId> namesOf(const std::vector<std::size_t>& items,
                                                               const std::vector<Contact>& contacts) const {
    std::unordered_map<std::size_t, std::vector<std::size_t>> touching;
    for (const Contact& c : contacts) {
      touching[c.a].push_back(c.b);
      touching[c.b].push_back(c.a);
    }
    std::unordered_map<std::size_t, NetId> names;
    std::deque<std::size_t> open;
    for (const std::size_t i : items) {
      const NetId net = copper::netOf(board_, items_.items[i]);
      names.emplace(i, net);
      if (net) open.push_back(i);
    }
    for (; !open.empty(); open.pop_front()) {
      for (const std::size_t next : touching[open.front()]) {
        if (names[next]) continue;
        names[next] = names[open.front()];
        open.push_back(next);
      }
    }
    return names;
  }

  void findShorts(std::size_t island) {
    bool seen = false; // where the nets touch
    const auto& members = itemsOf_[island];
    if (!members.empty()) {
      const auto contacts = copper::contactsOf(items_, {}, members);
      const auto names = namesOf(members, contacts);
      const copper::DrawnJoins drawn(board_, items_, contacts);
      std::set<std::pair<CopperObject, CopperObject>> reported;
      for (const Contact& c : contacts) {
        const NetId a = names.at(c.a);
        const NetId b = names.at(c.b);
        if (a == b || !a || !b) continue;
        seen = true;
        if (drawn.meant(c, a, b)) continue;
        if (!reported.emplace(objectOf(c.a), objectOf(c.b)).second) continue;
        report(Disagreement::Kind::shorted, {std::min(a, b), std::max(a, b)}, c.onA, c.onB, c.a, c.b);
      }
    }
    if (!seen) reportShortWithoutContact(graph_.islands[island]);
  }

  void report(Disagreement::Kind kind, std::vector<NetId> nets, Vec onA, Vec onB, std::size_t a,
              std::size_t b) {
    const Point at = placeBetween(onA, items_.items[a].radius, onB, items_.items[b].radius);
    out_.push_back({kind, std::move(nets), at, {objectOf(a), objectOf(b)}});
  }

  /// Joined by a way that nobody has seen: the way is the place.
  void reportShortWithoutContact(const Island& island) {
    Disagreement d{Disagreement::Kind::shorted, island.names, {}, {}};
    for (const auto& edge : boost::make_iterator_range(boost::edges(island.graph))) {
      const CopperEdge& e = island.graph[edge];
      if (e.kind != EdgeKind::unknownWay && d.objects.size() > 1) continue;
      const CopperNode& a = island.graph[boost::source(edge, island.graph)];
      const CopperNode& b = island.graph[boost::target(edge, island.graph)];
      d.objects = {a.object, b.object};
      if (e.from) d.at = *e.from;
    }
    out_.push_back(std::move(d));
  }

  void findGaps() {
    std::unordered_map<std::uint64_t, std::vector<std::size_t>> islandsOf;
    for (std::size_t i = 0; i < graph_.islands.size(); ++i) {
      if (itemsOf_[i].empty()) continue;
      for (const NetId name : graph_.islands[i].names)
        islandsOf[name.value].push_back(i);
    }
    for (const Net& net : board_.nets) {
      const auto found = islandsOf.find(net.id.value);
      if (found == islandsOf.end() || found->second.size() < 2) continue;
      std::vector<std::size_t> members;
      std::vector<std::size_t> piece;
      for (std::size_t i = 0; i < found->second.size(); ++i) {
        const auto& island = itemsOf_[found->second[i]];
        members.insert(members.end(), island.begin(), island.end());
        piece.resize(members.size(), i);
      }
      // Without areas a net in many pieces hangs together by one that nobody has drawn; what then still tells
      // of a missing track are the ends that it left behind.
      const bool byArea = drawnCopper(board_) == DrawnCopper::tracks && found->second.size() > 2;
      for (const Gap& gap : copper::gapsBetween(items_, members, piece))
        if (!byArea || gap.looseTracks == 2)
          report(Disagreement::Kind::disconnected, {net.id}, gap.onA, gap.onB, gap.itemA, gap.itemB);
    }
  }

  const Board& board_;
  const BoardGraph& graph_;
  Items items_;
  std::vector<std::vector<std::size_t>> itemsOf_;
  std::vector<Disagreement> out_;
};

} // namespace

std::vector<Disagreement> compareWithNames(const Board& board, const BoardGraph& graph) {
  return Comparison(board, graph).compare();
}

std::vector<DrawnJoin> drawnJoins(const Board& board, const BoardGraph& graph) {
  return Comparison(board, graph).joins();
}

} // namespace netmend
