#include "gaps.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "contacts.h"
#include "item_tree.h"
#include "union_find.h"

namespace netmend::copper {

namespace {

namespace bgi = boost::geometry::index;

/// Cost of changing the layer, in nm, with both, one or no side loose: a via may have been there; between
/// two tracks that just cross it hardly was.
constexpr double layerChange[] = {1e8, 1e7, 1e6};

/// A whole item, or the loose end of a track.
struct Site {
  std::size_t item;
  std::size_t piece;
  bool loose;
  bool end;
  Vec at; ///< ends only
};

struct Bridge {
  double cost = 1e300;
  std::size_t from = 0; ///< sites
  std::size_t to = 0;
  Vec onFrom;
  Vec onTo;
};

class GapFinder {
public:
  GapFinder(const Items& items, const std::vector<std::size_t>& members,
            const std::vector<std::size_t>& piece)
      : items_(items) {
    addLooseEnds(members, piece); // first: most gaps begin at one
    for (std::size_t i = 0; i < members.size(); ++i) {
      sites_.push_back({members[i], piece[i], false, false, {}});
      pieceCount_ = std::max(pieceCount_, piece[i] + 1);
    }
    std::vector<TreeEntry> entries;
    Bounds all;
    for (std::size_t i = 0; i < sites_.size(); ++i) {
      entries.emplace_back(treeBox(boundsOf(sites_[i])), i);
      all.include(boundsOf(sites_[i]));
    }
    reach_ = std::max(all.max.x - all.min.x, all.max.y - all.min.y);
    tree_ = ItemTree(entries);
  }

  /// Borůvka's tree: each cluster but the largest looks for its cheapest way out, until there is one left.
  std::vector<Gap> find() {
    UnionFind clusters(pieceCount_);
    std::vector<Gap> out;
    for (bool joined = true; joined && out.size() + 1 < pieceCount_;) {
      joined = false;
      std::map<std::size_t, std::vector<std::size_t>> sitesOf;
      for (std::size_t i = 0; i < sites_.size(); ++i)
        sitesOf[clusters.find(sites_[i].piece)].push_back(i);
      const auto largest = std::max_element(sitesOf.begin(), sitesOf.end(), [](const auto& a, const auto& b) {
        return a.second.size() < b.second.size();
      });
      std::vector<Bridge> bridges;
      for (auto it = sitesOf.begin(); it != sitesOf.end(); ++it)
        if (it != largest) bridges.push_back(cheapestWayOut(it->second, clusters));
      std::sort(bridges.begin(), bridges.end(),
                [](const Bridge& a, const Bridge& b) { return a.cost < b.cost; });
      for (const Bridge& b : bridges) {
        if (b.cost >= 1e300 || !clusters.unite(sites_[b.from].piece, sites_[b.to].piece)) continue;
        const int looseTracks = (sites_[b.from].end ? 1 : 0) + (sites_[b.to].end ? 1 : 0);
        out.push_back({sites_[b.from].item, sites_[b.to].item, b.onFrom, b.onTo, looseTracks});
        joined = true;
      }
    }
    return out;
  }

private:
  [[nodiscard]] AreaOutline outline(const Site& site) const {
    const CopperItem& item = items_.items[site.item];
    if (site.end) return {{&site.at, 1}, item.radius, false, nullptr};
    return outlineOf(items_, item);
  }

  [[nodiscard]] Bounds boundsOf(const Site& site) const {
    const CopperItem& item = items_.items[site.item];
    if (!site.end) return item.bounds;
    Bounds out;
    out.include(site.at);
    return out.grownBy(item.radius);
  }

  void addLooseEnds(const std::vector<std::size_t>& members, const std::vector<std::size_t>& piece) {
    std::map<std::size_t, std::set<int>> touchedLayers;
    std::map<std::size_t, std::vector<std::size_t>> neighbours;
    for (const Contact& c : contactsOf(items_, {}, members)) {
      touchedLayers[c.a].insert(c.layer);
      touchedLayers[c.b].insert(c.layer);
      neighbours[c.a].push_back(c.b);
      neighbours[c.b].push_back(c.a);
    }
    for (std::size_t i = 0; i < members.size(); ++i) {
      const CopperItem& item = items_.items[members[i]];
      const std::size_t layersTouched = touchedLayers[members[i]].size();
      if ((item.kind == CopperItemKind::pad && layersTouched == 0) ||
          (item.kind == CopperItemKind::via && layersTouched < 2))
        sites_.push_back({members[i], piece[i], true, false, {}});
      if (item.kind != CopperItemKind::track) continue;
      for (const std::size_t point : {item.firstPoint, item.firstPoint + item.pointCount - 1}) {
        const Vec at = items_.points[point];
        const auto& near = neighbours[members[i]];
        const bool held = std::any_of(near.begin(), near.end(), [&](std::size_t other) {
          return covers(outlineOf(items_, items_.items[other]), at, contactSlack);
        });
        if (!held) sites_.push_back({members[i], piece[i], true, true, at});
      }
    }
  }

  /// The cost of joining two sites; only looked for below `limit`.
  [[nodiscard]] std::optional<Bridge> bridge(std::size_t from, std::size_t to, double limit) const {
    const Site& a = sites_[from];
    const Site& b = sites_[to];
    const int loose = (a.loose ? 1 : 0) + (b.loose ? 1 : 0);
    const double factor = loose == 2 ? 1.0 : loose == 1 ? 2.0 : 4.0;
    const LayerSpan onA = items_.items[a.item].layers;
    const LayerSpan onB = items_.items[b.item].layers;
    const bool apart = onA.last < onB.first || onB.last < onA.first;
    const double radii = items_.items[a.item].radius + items_.items[b.item].radius;
    const double extra = apart ? layerChange[loose] : 0.0;
    if (extra >= limit) return std::nullopt;
    const double reach = std::min(1e300, (limit - extra) / factor + radii);
    const Closest c = closestBetween(outline(a), outline(b), reach);
    if (c.distance > reach) return std::nullopt;
    const double gap = std::max(0.0, c.distance - radii);
    return Bridge{gap * factor + extra, from, to, c.onFirst, c.onSecond};
  }

  /// A bridge costs at least its width: a window that reaches as far as the cheapest one costs has seen all
  /// that could be cheaper.
  [[nodiscard]] Bridge cheapestWayOut(const std::vector<std::size_t>& sites, UnionFind& clusters) const {
    constexpr double firstWindow = 1e5;
    Bridge best;
    std::vector<TreeEntry> near;
    for (const std::size_t from : sites) {
      const Bounds box = boundsOf(sites_[from]);
      const std::size_t own = clusters.find(sites_[from].piece);
      const auto foreign = [&](const TreeEntry& entry) {
        return clusters.find(sites_[entry.second].piece) != own;
      };
      double window = std::min(best.cost, firstWindow);
      for (;;) {
        near.clear();
        tree_.query(bgi::intersects(treeBox(box.grownBy(window))) && bgi::satisfies(foreign),
                    std::back_inserter(near));
        for (const auto& [bounds, to] : near) {
          const auto found = bridge(from, to, best.cost);
          if (found && found->cost < best.cost) best = *found;
        }
        if (best.cost <= window || window >= reach_) break;
        window = std::min(best.cost, 4.0 * window);
      }
    }
    return best;
  }

  const Items& items_;
  std::vector<Site> sites_;
  std::size_t pieceCount_ = 0;
  ItemTree tree_;
  double reach_ = 0.0; ///< a window that covers everything from anywhere
};

} // namespace

std::vector<Gap> gapsBetween(const Items& items, const std::vector<std::size_t>& members,
                             const std::vector<std::size_t>& piece) {
  return GapFinder(items, members, piece).find();
}

} // namespace netmend::copper
