#include "outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <unordered_map>

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <fmt/format.h>

#include "copper_shape.h"
#include "netmend/base/plane.h"

namespace netmend {

namespace {

// Far above any real board; below, chaining and nesting stay within a second even when all ends meet.
constexpr std::size_t mostPieces = 20'000;

std::string at(Point p) {
  return fmt::format("x {:.3f} mm, y {:.3f} mm", p.x.mm(), p.y.mm());
}

/// Finds the free end of a piece near a place, through a grid of cells as wide as the gap.
class Ends {
public:
  Ends(const std::vector<EdgePiece>& pieces, Length gap) : pieces_(pieces), gap_(gap) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      cells_[cell(pieces[i].points.front())].push_back(2 * i);
      cells_[cell(pieces[i].points.back())].push_back(2 * i + 1);
    }
  }

  [[nodiscard]] Point place(std::size_t end) const {
    const Ring& points = pieces_[end / 2].points;
    return end % 2 == 0 ? points.front() : points.back();
  }

  void remove(std::size_t end) {
    auto& list = cells_[cell(place(end))];
    list.erase(std::find(list.begin(), list.end(), end));
  }

  [[nodiscard]] std::optional<std::size_t> nearest(Point p) const {
    std::optional<std::size_t> best;
    Length bestDistance = gap_;
    const Cell middle = cell(p);
    for (std::int64_t dx = -1; dx <= 1; ++dx) {
      for (std::int64_t dy = -1; dy <= 1; ++dy) {
        const auto found = cells_.find({middle.x + dx, middle.y + dy});
        if (found == cells_.end()) continue;
        for (const std::size_t end : found->second) {
          const Length d = distance(place(end), p);
          if (d > bestDistance || (best && d == bestDistance)) continue;
          best = end;
          bestDistance = d;
        }
      }
    }
    return best;
  }

private:
  struct Cell {
    std::int64_t x, y;
    bool operator==(const Cell&) const = default;
  };
  struct CellHash {
    std::size_t operator()(const Cell& c) const noexcept {
      return std::hash<std::int64_t>{}(c.x * 0x9E3779B1 + c.y);
    }
  };
  [[nodiscard]] Cell cell(Point p) const { return {p.x.nm / gap_.nm, p.y.nm / gap_.nm}; }

  const std::vector<EdgePiece>& pieces_;
  Length gap_;
  std::unordered_map<Cell, std::vector<std::size_t>, CellHash> cells_;
};

/// Drops pieces without length and pieces drawn twice; closed ones go straight to `rings`.
std::vector<EdgePiece> usablePieces(std::vector<EdgePiece> pieces, std::vector<Ring>& rings) {
  std::vector<EdgePiece> open;
  for (EdgePiece& piece : pieces) {
    auto& p = piece.points;
    p.erase(std::unique(p.begin(), p.end()), p.end());
    if (piece.closed) {
      if (p.size() >= 3) rings.push_back(std::move(p));
    } else if (p.size() >= 2) {
      if (p.back() < p.front()) std::reverse(p.begin(), p.end());
      open.push_back(std::move(piece));
    }
  }
  std::sort(open.begin(), open.end(),
            [](const EdgePiece& a, const EdgePiece& b) { return a.points < b.points; });
  const auto same = [](const EdgePiece& a, const EdgePiece& b) { return a.points == b.points; };
  open.erase(std::unique(open.begin(), open.end(), same), open.end());
  return open;
}

/// Gives the open chains.
std::vector<Ring> chain(const std::vector<EdgePiece>& pieces, Length gap, std::vector<Ring>& rings) {
  std::vector<Ring> openChains;
  Ends ends(pieces, gap);
  std::vector<bool> used(pieces.size(), false);
  for (std::size_t first = 0; first < pieces.size(); ++first) {
    if (used[first]) continue;
    used[first] = true;
    ends.remove(2 * first);
    ends.remove(2 * first + 1);
    Ring way = pieces[first].points;
    bool closed = false;
    bool turned = false;
    while (true) {
      const auto next = ends.nearest(way.back());
      const Length toStart = distance(way.back(), way.front());
      if (way.size() > 2 && toStart <= gap && (!next || toStart <= distance(way.back(), ends.place(*next)))) {
        closed = true;
        break;
      }
      if (!next) {
        if (turned) break;
        // It may have begun in the middle of an open chain.
        std::reverse(way.begin(), way.end());
        turned = true;
        continue;
      }
      const std::size_t piece = *next / 2;
      used[piece] = true;
      ends.remove(2 * piece);
      ends.remove(2 * piece + 1);
      const Ring& points = pieces[piece].points;
      if (*next % 2 == 0)
        way.insert(way.end(), points.begin() + 1, points.end());
      else
        way.insert(way.end(), points.rbegin() + 1, points.rend());
    }
    if (!closed) {
      openChains.push_back(std::move(way));
      continue;
    }
    way.pop_back(); // the end that met the start
    if (way.size() >= 3) rings.push_back(std::move(way));
  }
  return openChains;
}

Box boxOf(const Ring& ring) {
  Box box;
  for (const Point p : ring)
    box.include(p);
  return box;
}

double diagonal(const Box& box) {
  return std::hypot(box.size().width.mm(), box.size().height.mm());
}

/// An open chain that is larger than every closed line was meant as the board's edge itself: what
/// closes would then be its cut-outs.
bool edgeItselfIsOpen(const std::vector<Ring>& openChains, const std::vector<Ring>& rings) {
  double largest = 0;
  for (const Ring& ring : rings)
    largest = std::max(largest, diagonal(boxOf(ring)));
  return std::any_of(openChains.begin(), openChains.end(),
                     [&](const Ring& way) { return diagonal(boxOf(way)) > largest; });
}

double side(Point a, Point b, Point p) {
  const auto ux = static_cast<double>((b - a).x.nm), uy = static_cast<double>((b - a).y.nm);
  const auto vx = static_cast<double>((p - a).x.nm), vy = static_cast<double>((p - a).y.nm);
  const double length = std::hypot(ux, uy);
  return length == 0 ? 0 : (ux * vy - uy * vx) / length;
}

/// Real crossings only: corners that touch, or overshoot by less than a micrometre, are drawing habits.
bool cross(Point a, Point b, Point c, Point d) {
  constexpr double least = 1000;
  const auto apart = [](double s, double t) {
    return (s > least && t < -least) || (s < -least && t > least);
  };
  return apart(side(a, b, c), side(a, b, d)) && apart(side(c, d, a), side(c, d, b));
}

std::optional<Point> selfCrossing(const Ring& ring) {
  namespace bg = boost::geometry;
  using GeoPoint = bg::model::d2::point_xy<double>;
  using Entry = std::pair<bg::model::box<GeoPoint>, std::size_t>;
  const auto corner = [&](std::size_t i) { return ring[i % ring.size()]; };
  const auto box = [&](std::size_t i) {
    Box b;
    b.include(corner(i));
    b.include(corner(i + 1));
    return bg::model::box<GeoPoint>{{static_cast<double>(b.min.x.nm), static_cast<double>(b.min.y.nm)},
                                    {static_cast<double>(b.max.x.nm), static_cast<double>(b.max.y.nm)}};
  };
  std::vector<Entry> entries;
  for (std::size_t i = 0; i < ring.size(); ++i)
    entries.emplace_back(box(i), i);
  const bg::index::rtree<Entry, bg::index::quadratic<16>> tree(entries);
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const auto crosses = [&](const Entry& e) {
      return e.second > i && cross(corner(i), corner(i + 1), corner(e.second), corner(e.second + 1));
    };
    const auto hit = tree.qbegin(bg::index::intersects(entries[i].first) && bg::index::satisfies(crosses));
    if (hit != tree.qend()) return corner(i);
  }
  return std::nullopt;
}

std::vector<Polygon> nested(std::vector<Ring> rings) {
  std::sort(rings.begin(), rings.end(),
            [](const Ring& a, const Ring& b) { return std::abs(signedArea(a)) > std::abs(signedArea(b)); });
  std::vector<Box> boxes(rings.size());
  std::transform(rings.begin(), rings.end(), boxes.begin(), boxOf);
  std::vector<int> depth(rings.size(), 0);
  std::vector<std::size_t> polygonOf(rings.size(), 0);
  std::vector<Polygon> result;
  for (std::size_t i = 0; i < rings.size(); ++i) {
    const Point probe = rings[i].front();
    std::optional<std::size_t> parent;
    for (std::size_t j = i; j-- > 0 && !parent;) { // the smallest that holds it
      const Box& b = boxes[j];
      if (probe.x < b.min.x || probe.x > b.max.x || probe.y < b.min.y || probe.y > b.max.y) continue;
      if (insideRing(rings[j], vecOf(probe))) parent = j;
    }
    depth[i] = parent ? depth[*parent] + 1 : 0;
    if (depth[i] % 2 == 1) {
      polygonOf[i] = polygonOf[*parent];
      result[polygonOf[i]].holes.push_back(rings[i]);
    } else {
      polygonOf[i] = result.size();
      result.push_back({rings[i], {}});
    }
  }
  return result;
}

} // namespace

Result<Outline> outlineFrom(std::vector<EdgePiece> pieces, Length gap) {
  Outline outline;
  std::vector<Ring> rings;
  std::vector<EdgePiece> open = usablePieces(std::move(pieces), rings);
  if (open.size() + rings.size() > mostPieces) {
    outline.notices.push_back(
        said(pattern("core", "the board's edge has {} pieces, more than {}; it is left unknown"),
             open.size() + rings.size(), mostPieces));
    return outline;
  }
  const std::vector<Ring> openChains = chain(open, gap, rings);
  if (!openChains.empty()) {
    const Ring& way = openChains.front();
    outline.notices.push_back(said(
        pattern("core", "the board's edge is open, such chains are left out: {}, first between {} and {}"),
        openChains.size(), at(way.front()), at(way.back())));
  }
  if (edgeItselfIsOpen(openChains, rings)) return outline;
  for (const Ring& ring : rings) {
    if (const auto place = selfCrossing(ring))
      return failure({said(pattern("core", "the board's edge crosses itself near {}"), at(*place))});
  }
  outline.polygons = nested(std::move(rings));
  return outline;
}

} // namespace netmend
