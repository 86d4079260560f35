#include "pen.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <utility>
#include <vector>

#include "copper_shape.h"
#include "netmend/base/plane.h"

namespace netmend {

namespace {

constexpr double chordError = 700; // nm, of a chord within a round corner
constexpr double overshoot = 100;  // nm, of a sharp corner where a round one is hardly seen
constexpr double meeting = 1000;   // nm; moved edges as short as that are a point
/// Every corner is shifted at random by up to this each way, so that edges cross within their lengths or not
/// at all, and by as much outwards, so that what just touches still does.
constexpr std::array<double, 3> nudges{10, 100, 500};

/// The way of the pen's outer side around one ring that has the copper on its left: the edges, moved to the
/// right, full length unless both are long enough to end where they meet; arcs where it turns left. It may
/// cross itself; what is copper has a winding number above 0.
class Way {
public:
  Way(const Ring& ring, double reach, double shift)
      : shift_(shift), reach_(reach + shift),
        step_(2 * std::acos(1 - chordError / std::max(reach, 2 * chordError))) {
    for (const Point p : ring)
      corners_.push_back(vecOf(p));
  }

  std::vector<Vec> points() {
    const std::size_t n = corners_.size();
    edges_.resize(n);
    for (std::size_t i = 0; i < n; ++i) {
      const Vec e = corners_[(i + 1) % n] - corners_[i];
      const double length = std::sqrt(dot(e, e));
      edges_[i] = {length, {e.y / length, -e.x / length}};
    }
    for (std::size_t i = 0; i < n; ++i)
      turn(i);
    return std::move(out_);
  }

private:
  struct Edge {
    double length = 0;
    Vec outwards; ///< of length 1
  };

  [[nodiscard]] const Edge& edge(std::size_t i) const { return edges_[i % edges_.size()]; }

  /// How much the moved edges lose at the corner where edge i begins; 0 where it turns left.
  [[nodiscard]] double lossAt(std::size_t i) const {
    const Vec a = edge(i + edges_.size() - 1).outwards;
    const Vec b = edge(i).outwards;
    const double sine = cross(a, b);
    return sine < 0 ? reach_ * -sine / std::max(1 + dot(a, b), 1e-9) : 0;
  }

  void add(Vec p) {
    const auto random = [&] {
      state_ = state_ * 6364136223846793005U + 1442695040888963407U; // Knuth's MMIX
      return shift_ * (static_cast<double>(state_ >> 40) / static_cast<double>(1U << 23) - 1);
    };
    const double x = random();
    out_.push_back(p + Vec{x, random()});
  }

  [[nodiscard]] static bool near(Vec a, Vec b) { return dot(a - b, a - b) < meeting * meeting; }

  void turn(std::size_t i) {
    const std::size_t n = edges_.size();
    const Vec corner = corners_[i];
    const Edge& in = edge(i + n - 1);
    const Edge& out = edges_[i];
    const double cosine = dot(in.outwards, out.outwards);
    const double sine = cross(in.outwards, out.outwards);
    const Vec tip = (in.outwards + out.outwards) * (reach_ / std::max(1 + cosine, 1e-9));
    const std::optional<Vec> before = std::exchange(met_, std::nullopt);
    if (sine < 0) {
      const double loss = lossAt(i);
      if (loss + lossAt(i + n - 1) < in.length + meeting && loss + lossAt(i + 1) < out.length + meeting) {
        // Round corners inwards, of the pen's own radius, come to one point.
        met_ = before && near(*before, corner + tip) ? before : corner + tip;
        if (met_ != before) add(*met_);
        return;
      }
      add(corner + in.outwards * reach_);
      add(corner + out.outwards * reach_);
      return;
    }
    if (cosine > 0 && std::sqrt(dot(tip, tip)) - reach_ < overshoot) return add(corner + tip);
    const double angle = std::abs(std::atan2(sine, cosine)); // a way back has the sine 0 or -0
    const int pieces = std::max(1, static_cast<int>(std::ceil(angle / step_)));
    const double c = std::cos(angle / pieces), s = std::sin(angle / pieces);
    Vec spoke = in.outwards * reach_;
    for (int k = 0; k <= pieces; ++k) {
      add(corner + spoke);
      spoke = {spoke.x * c - spoke.y * s, spoke.x * s + spoke.y * c};
    }
  }

  std::vector<Vec> corners_;
  std::vector<Edge> edges_;
  double shift_;
  double reach_;
  double step_;
  std::optional<Vec> met_; ///< where the last two edges met, if they did
  std::uint64_t state_ = 1;
  std::vector<Vec> out_;
};

/// All ways, their edges in bands of height, and where they cross.
class Crossings {
public:
  struct Edge {
    Vec from, to;
    std::size_t next = 0; ///< the edge that goes on from its end
  };
  struct Crossing {
    std::array<std::size_t, 2> edge;
    std::array<double, 2> along; ///< share of the edge
    Vec at;
  };

  explicit Crossings(const std::vector<std::vector<Vec>>& ways) {
    for (const auto& way : ways) {
      const std::size_t first = edges_.size();
      for (std::size_t i = 0; i < way.size(); ++i)
        edges_.push_back({way[i], way[(i + 1) % way.size()], i + 1 < way.size() ? first + i + 1 : first});
    }
    sortIntoBands();
    for (const auto& band : bands_)
      find(band);
  }

  [[nodiscard]] const std::vector<Edge>& edges() const { return edges_; }
  [[nodiscard]] const std::vector<Crossing>& all() const { return crossings_; }

  /// Winding number of what lies right of the edge, at a place on it.
  [[nodiscard]] int windingRightOf(std::size_t edge, Vec at) const {
    int winding = 0;
    for (const std::size_t i : bands_[bandAt(at.y)]) {
      const Edge& e = edges_[i];
      if (i == edge || (e.from.y > at.y) == (e.to.y > at.y)) continue;
      const double side = cross(e.to - e.from, at - e.from);
      if (e.to.y > e.from.y && side > 0) ++winding;
      if (e.to.y < e.from.y && side < 0) --winding;
    }
    // The ray runs to +x, from the right side of an edge that goes up, and across one that goes down.
    return edges_[edge].to.y > edges_[edge].from.y ? winding : winding - 1;
  }

private:
  [[nodiscard]] std::size_t bandAt(double y) const {
    const double band = std::floor((y - low_) / height_);
    return static_cast<std::size_t>(std::clamp(band, 0.0, static_cast<double>(bands_.size() - 1)));
  }

  void sortIntoBands() {
    double high = -1e300, sum = 0;
    low_ = 1e300;
    for (const Edge& e : edges_) {
      low_ = std::min(low_, e.from.y);
      high = std::max(high, e.from.y);
      sum += std::abs(e.to.y - e.from.y);
    }
    // As high as the mean edge, so that an edge is in two bands or so.
    const double mean = sum / static_cast<double>(edges_.size());
    const double most = static_cast<double>(edges_.size());
    const double count = std::clamp((high - low_) / std::max(mean, 1.0), 1.0, most);
    height_ = std::max(1.0, (high - low_) / count);
    bands_.resize(static_cast<std::size_t>(count) + 1);
    for (std::size_t i = 0; i < edges_.size(); ++i) {
      const auto [a, b] = std::minmax(edges_[i].from.y, edges_[i].to.y);
      for (std::size_t band = bandAt(a); band <= bandAt(b); ++band)
        bands_[band].push_back(i);
    }
    for (auto& band : bands_)
      std::sort(band.begin(), band.end(), [&](std::size_t a, std::size_t b) { return left(a) < left(b); });
  }

  [[nodiscard]] double left(std::size_t i) const { return std::min(edges_[i].from.x, edges_[i].to.x); }
  [[nodiscard]] double right(std::size_t i) const { return std::max(edges_[i].from.x, edges_[i].to.x); }

  void find(const std::vector<std::size_t>& band) {
    const auto number = static_cast<std::size_t>(&band - bands_.data());
    for (std::size_t i = 0; i < band.size(); ++i)
      for (std::size_t j = i + 1; j < band.size() && left(band[j]) <= right(band[i]); ++j)
        addCrossing(std::min(band[i], band[j]), std::max(band[i], band[j]), number);
  }

  void addCrossing(std::size_t a, std::size_t b, std::size_t band) {
    const Edge& p = edges_[a];
    const Edge& q = edges_[b];
    if (p.next == b || q.next == a) return;
    const Vec u = p.to - p.from;
    const Vec v = q.to - q.from;
    const double s = cross(u, q.from - p.from), t = cross(u, q.to - p.from);
    if ((s > 0) == (t > 0)) return;
    const double k = cross(v, p.from - q.from), l = cross(v, p.to - q.from);
    if ((k > 0) == (l > 0)) return;
    const double along = k / (k - l);
    const Vec at = p.from + u * along;
    if (bandAt(at.y) == band) crossings_.push_back({{a, b}, {along, s / (s - t)}, at}); // once
  }

  std::vector<Edge> edges_;
  std::vector<std::vector<std::size_t>> bands_;
  double low_ = 0, height_ = 1;
  std::vector<Crossing> crossings_;
};

Point pointOf(Vec v) {
  return {Length(std::llround(v.x)), Length(std::llround(v.y))};
}

/// What of the ways has no copper on its right, linked to rings.
class Border {
public:
  explicit Border(const Crossings& crossings) : c_(crossings), stops_(crossings.edges().size()) {
    for (std::size_t i = 0; i < c_.all().size(); ++i)
      for (std::size_t side = 0; side < 2; ++side)
        stops_[c_.all()[i].edge[side]].push_back({c_.all()[i].along[side], i, side});
    for (auto& stops : stops_)
      std::sort(stops.begin(), stops.end(), [](const Stop& a, const Stop& b) { return a.along < b.along; });
  }

  /// Nothing if an end is left over.
  std::optional<std::vector<Ring>> rings() {
    passed_.assign(stops_.size(), false);
    used_.assign(c_.all().size(), {false, false});
    std::vector<Ring> out;
    for (std::size_t crossing = 0; crossing < used_.size(); ++crossing) {
      for (std::size_t side = 0; side < 2; ++side) {
        if (used_[crossing][side] || !outside(crossing, side)) continue;
        auto ring = follow(crossing, side);
        if (!ring) return std::nullopt;
        out.push_back(std::move(*ring));
      }
    }
    markRest();
    for (std::size_t edge = 0; edge < stops_.size(); ++edge) {
      if (passed_[edge]) continue;
      const auto& e = c_.edges()[edge];
      const bool isBorder = c_.windingRightOf(edge, (e.from + e.to) * 0.5) == 0;
      Ring ring;
      for (std::size_t i = edge; !passed_[i]; i = c_.edges()[i].next) {
        passed_[i] = true;
        ring.push_back(pointOf(c_.edges()[i].from));
      }
      if (isBorder) out.push_back(std::move(ring));
    }
    return out;
  }

private:
  struct Stop {
    double along;
    std::size_t crossing;
    std::size_t side; ///< which of the crossing's edges
  };

  /// The stop after this crossing on the same edge, if any.
  [[nodiscard]] const Stop* after(std::size_t crossing, std::size_t side) const {
    const auto& c = c_.all()[crossing];
    const auto& stops = stops_[c.edge[side]];
    for (std::size_t i = 0; i + 1 < stops.size(); ++i)
      if (stops[i].crossing == crossing && stops[i].side == side) return &stops[i + 1];
    return nullptr;
  }

  /// Whether the piece that leaves the crossing along this edge is border.
  [[nodiscard]] bool outside(std::size_t crossing, std::size_t side) const {
    const auto& c = c_.all()[crossing];
    const auto& e = c_.edges()[c.edge[side]];
    const Stop* next = after(crossing, side);
    const double middle = (c.along[side] + (next != nullptr ? next->along : 1.0)) / 2;
    return c_.windingRightOf(c.edge[side], e.from + (e.to - e.from) * middle) == 0;
  }

  /// From a crossing along one of its edges until that crossing comes again.
  std::optional<Ring> follow(std::size_t crossing, std::size_t side) {
    Ring ring;
    while (!used_[crossing][side]) {
      used_[crossing][side] = true;
      ring.push_back(pointOf(c_.all()[crossing].at));
      std::size_t edge = c_.all()[crossing].edge[side];
      const Stop* stop = after(crossing, side);
      while (stop == nullptr) {
        edge = c_.edges()[edge].next;
        ring.push_back(pointOf(c_.edges()[edge].from));
        if (!stops_[edge].empty()) stop = &stops_[edge].front();
        if (ring.size() > 4 * stops_.size()) return std::nullopt;
      }
      // The border goes on along the other edge: on this one there is copper on both sides.
      crossing = stop->crossing;
      side = 1 - stop->side;
    }
    return ring;
  }

  /// Edges of ways that cross anything have been dealt with.
  void markRest() {
    for (std::size_t edge = 0; edge < stops_.size(); ++edge) {
      if (stops_[edge].empty() || passed_[edge]) continue;
      for (std::size_t i = edge; !passed_[i]; i = c_.edges()[i].next)
        passed_[i] = true;
    }
  }

  const Crossings& c_;
  std::vector<std::vector<Stop>> stops_; ///< by edge
  std::vector<bool> passed_;
  std::vector<std::array<bool, 2>> used_;
};

void dropRepeats(Ring& ring) {
  ring.erase(std::unique(ring.begin(), ring.end()), ring.end());
}

/// The ring without corners that repeat, counter-clockwise or clockwise.
Ring turned(Ring ring, bool counterClockwise) {
  dropRepeats(ring);
  while (ring.size() > 1 && ring.front() == ring.back())
    ring.pop_back();
  if (ring.size() >= 3 && (signedArea(ring) > 0) != counterClockwise) std::reverse(ring.begin(), ring.end());
  return ring;
}

/// Narrower than what a shift may leave where edges run side by side.
bool isSpeck(const Ring& ring) {
  double round = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    round += distance(ring[i], ring[(i + 1) % ring.size()]).mm() * 1e6;
  return ring.size() < 3 || std::abs(signedArea(ring)) < meeting * round / 2;
}

/// What lies left of the ways: one piece with its holes.
std::optional<Polygon> covered(const std::vector<std::vector<Vec>>& ways) {
  auto rings = Border(Crossings(ways)).rings();
  if (!rings) return std::nullopt;
  Polygon out;
  for (Ring& ring : *rings) {
    dropRepeats(ring);
    if (isSpeck(ring)) continue;
    if (signedArea(ring) < 0)
      out.holes.push_back(std::move(ring));
    else if (out.outer.empty())
      out.outer = std::move(ring);
    else
      return std::nullopt; // what hung together would hang together still
  }
  if (out.outer.empty()) return std::nullopt;
  return out;
}

/// What the pen covers along these rings, whose copper is on their left.
std::optional<Polygon> drawnAlong(const std::vector<Ring>& rings, Length reach) {
  for (const double shift : nudges) {
    std::vector<std::vector<Vec>> ways;
    ways.reserve(rings.size());
    for (const Ring& ring : rings)
      ways.push_back(Way(ring, static_cast<double>(reach.nm), shift).points());
    if (auto out = covered(ways)) return out;
  }
  return std::nullopt;
}

} // namespace

std::optional<Polygon> penDrawn(const Polygon& polygon, Length reach) {
  std::vector<Ring> rings{turned(polygon.outer, true)};
  if (rings.front().size() < 3) return std::nullopt;
  for (const Ring& hole : polygon.holes)
    if (Ring ring = turned(hole, false); ring.size() >= 3) rings.push_back(std::move(ring));
  return drawnAlong(rings, reach);
}

std::optional<Polygon> penStroke(const Ring& path, bool closed, Length reach) {
  if (closed) {
    const Ring ring = turned(path, true);
    if (ring.size() < 3) return std::nullopt;
    return drawnAlong({ring, {ring.rbegin(), ring.rend()}}, reach);
  }
  Ring thereAndBack = path;
  dropRepeats(thereAndBack);
  if (thereAndBack.size() < 2) return std::nullopt;
  for (std::size_t i = thereAndBack.size() - 1; i-- > 1;)
    thereAndBack.push_back(thereAndBack[i]);
  return drawnAlong({thereAndBack}, reach);
}

bool crossesItself(const Polygon& polygon) {
  std::vector<std::vector<Vec>> ways;
  const auto add = [&](const Ring& ring) {
    auto& way = ways.emplace_back();
    for (const Point p : ring)
      way.push_back({static_cast<double>(p.x.nm), static_cast<double>(p.y.nm)});
  };
  add(polygon.outer);
  for (const Ring& hole : polygon.holes)
    add(hole);
  return !Crossings(ways).all().empty();
}

} // namespace netmend
