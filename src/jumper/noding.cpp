#include "noding.h"

#include <algorithm>
#include <cmath>

#include "exact.h"

namespace netmend {
namespace {

struct Piece {
  Point a;
  Point b;
  int weight = 0;
  bool fresh = true; ///< new in this round: has not been held against the others yet
};

/// Which pieces pass through which cell of a regular grid (a few cells too many do no harm).
class PieceGrid {
public:
  explicit PieceGrid(const std::vector<Piece>& pieces) {
    Box box;
    for (const Piece& p : pieces) {
      box.include(p.a);
      box.include(p.b);
    }
    origin_ = box.min;
    const double w = static_cast<double>(box.size().width.nm) + 1.0;
    const double h = static_cast<double>(box.size().height.nm) + 1.0;
    const double cells = std::clamp(2.0 * static_cast<double>(pieces.size()), 1.0, 4e6);
    pitch_ = std::max<std::int64_t>(1, std::llround(std::max(std::sqrt(w * h / cells), (w + h) / cells)));
    columns_ = box.size().width.nm / pitch_ + 1;
    rows_ = box.size().height.nm / pitch_ + 1;
    first_.assign(static_cast<std::size_t>(columns_ * rows_) + 1, 0);
    for (const Piece& p : pieces)
      eachCell(p, [&](std::size_t cell) { ++first_[cell + 1]; });
    for (std::size_t i = 1; i < first_.size(); ++i)
      first_[i] += first_[i - 1];
    items_.resize(first_.back());
    std::vector<std::size_t> next(first_.begin(), first_.end() - 1);
    for (std::size_t i = 0; i < pieces.size(); ++i)
      eachCell(pieces[i], [&](std::size_t cell) { items_[next[cell]++] = i; });
  }

  [[nodiscard]] std::size_t cellCount() const { return first_.size() - 1; }
  [[nodiscard]] const std::size_t* begin(std::size_t cell) const { return items_.data() + first_[cell]; }
  [[nodiscard]] const std::size_t* end(std::size_t cell) const { return items_.data() + first_[cell + 1]; }

private:
  template <class F> void eachCell(const Piece& p, F&& f) const {
    const std::int64_t x0 = p.a.x.nm - origin_.x.nm, x1 = p.b.x.nm - origin_.x.nm;
    const double y0 = static_cast<double>(p.a.y.nm - origin_.y.nm);
    const double y1 = static_cast<double>(p.b.y.nm - origin_.y.nm);
    const std::int64_t c0 = x0 / pitch_, c1 = x1 / pitch_; // a < b, hence x0 <= x1
    const double slope = x1 > x0 ? (y1 - y0) / static_cast<double>(x1 - x0) : 0.0;
    for (std::int64_t c = c0; c <= c1; ++c) {
      double from = y0, to = y1;
      if (c0 != c1) {
        from = y0 + slope * static_cast<double>(std::max(c * pitch_, x0) - x0);
        to = y0 + slope * static_cast<double>(std::min((c + 1) * pitch_, x1) - x0);
      }
      const auto row = [&](double y) {
        return std::clamp<std::int64_t>(static_cast<std::int64_t>(y / static_cast<double>(pitch_)), 0,
                                        rows_ - 1);
      };
      const std::int64_t last = row(std::max(from, to) + 2.0);
      for (std::int64_t r = row(std::min(from, to) - 2.0); r <= last; ++r)
        f(static_cast<std::size_t>(r * columns_ + c));
    }
  }

  Point origin_;
  std::int64_t pitch_ = 1, columns_ = 1, rows_ = 1;
  std::vector<std::size_t> first_;
  std::vector<std::size_t> items_;
};

/// v * numerator / denominator to the nearest integer; 0 <= numerator <= denominator.
std::int64_t scaled(std::int64_t v, Int128 numerator, Int128 denominator) {
  // |v| < 2^31 and numerator < 2^64 for the boards that are accepted, so that the product stays in 128 bits.
  const Int128 twice = 2 * static_cast<Int128>(v) * numerator;
  return static_cast<std::int64_t>(twice >= 0 ? (twice + denominator) / (2 * denominator)
                                              : -((-twice + denominator) / (2 * denominator)));
}

Point crossing(Point a, Point b, Point c, Point d) {
  Int128 from = cross(c, d, a);
  Int128 whole = from - cross(c, d, b);
  if (whole < 0) {
    from = -from;
    whole = -whole;
  }
  return {a.x + Length(scaled(b.x.nm - a.x.nm, from, whole)),
          a.y + Length(scaled(b.y.nm - a.y.nm, from, whole))};
}

using Splits = std::vector<std::pair<std::size_t, Point>>; ///< piece, where to cut it

void splitAt(Splits& splits, const Piece& piece, std::size_t index, Point p) {
  if (p != piece.a && p != piece.b) splits.emplace_back(index, p);
}

/// A crossing next to an end is taken there: edges that lie all but on each other would otherwise bend one
/// another a nanometre further on in every round.
Point atAnEnd(Point x, const Piece& p, const Piece& q) {
  constexpr std::int64_t near = 2;
  for (const Point end : {p.a, p.b, q.a, q.b})
    if (std::abs(x.x.nm - end.x.nm) <= near && std::abs(x.y.nm - end.y.nm) <= near) return end;
  return x;
}

void compare(const std::vector<Piece>& pieces, std::size_t i, std::size_t j, Splits& splits) {
  const Piece& p = pieces[i];
  const Piece& q = pieces[j];
  if (!p.fresh && !q.fresh) return;
  if (p.b.x < q.a.x || q.b.x < p.a.x || std::max(p.a.y, p.b.y) < std::min(q.a.y, q.b.y) ||
      std::max(q.a.y, q.b.y) < std::min(p.a.y, p.b.y))
    return;
  const int qa = side(p.a, p.b, q.a), qb = side(p.a, p.b, q.b);
  if (qa * qb > 0) return;
  const int pa = side(q.a, q.b, p.a), pb = side(q.a, q.b, p.b);
  if (pa * pb > 0) return;
  if (qa * qb < 0 && pa * pb < 0) {
    const Point x = atAnEnd(crossing(p.a, p.b, q.a, q.b), p, q);
    splitAt(splits, p, i, x);
    splitAt(splits, q, j, x);
    return;
  }
  if (qa == 0 && inBox(p.a, p.b, q.a)) splitAt(splits, p, i, q.a);
  if (qb == 0 && inBox(p.a, p.b, q.b)) splitAt(splits, p, i, q.b);
  if (pa == 0 && inBox(q.a, q.b, p.a)) splitAt(splits, q, j, p.a);
  if (pb == 0 && inBox(q.a, q.b, p.b)) splitAt(splits, q, j, p.b);
}

void addPiece(std::vector<Piece>& pieces, Point from, Point to, int weight, bool fresh) {
  if (from < to) pieces.push_back({from, to, weight, fresh});
  if (to < from) pieces.push_back({to, from, -weight, fresh});
}

/// Adds up equal pieces; those of no weight go.
void merge(std::vector<Piece>& pieces) {
  std::sort(pieces.begin(), pieces.end(),
            [](const Piece& p, const Piece& q) { return p.a != q.a ? p.a < q.a : p.b < q.b; });
  std::size_t kept = 0;
  for (std::size_t i = 0; i < pieces.size();) {
    Piece sum = pieces[i];
    for (++i; i < pieces.size() && pieces[i].a == sum.a && pieces[i].b == sum.b; ++i) {
      sum.weight += pieces[i].weight;
      sum.fresh = sum.fresh && pieces[i].fresh;
    }
    if (sum.weight != 0) pieces[kept++] = sum;
  }
  pieces.resize(kept);
}

std::vector<Piece> cutPieces(const std::vector<Piece>& pieces, Splits& splits) {
  std::sort(splits.begin(), splits.end());
  splits.erase(std::unique(splits.begin(), splits.end()), splits.end());
  std::vector<Piece> result;
  result.reserve(pieces.size() + 2 * splits.size());
  auto next = splits.begin();
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Piece& p = pieces[i];
    const auto first = next;
    while (next != splits.end() && next->first == i)
      ++next;
    if (first == next) {
      result.push_back({p.a, p.b, p.weight, false});
      continue;
    }
    std::sort(first, next, [&](const auto& s, const auto& t) {
      return dot(p.a, p.b, s.second) < dot(p.a, p.b, t.second);
    });
    Point from = p.a;
    for (auto s = first; s != next; ++s) {
      addPiece(result, from, s->second, p.weight, true);
      from = s->second;
    }
    addPiece(result, from, p.b, p.weight, true);
  }
  return result;
}

} // namespace

std::optional<std::vector<WeightedEdge>> nodedEdges(const std::vector<Ring>& loops) {
  std::vector<Piece> pieces;
  for (const Ring& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i)
      addPiece(pieces, loop[i], loop[(i + 1) % loop.size()], 1, true);
  merge(pieces);
  constexpr int mostRounds = 200; // a few are usual
  Splits splits;
  int round = 0;
  do {
    if (++round > mostRounds) return std::nullopt;
    splits.clear();
    const PieceGrid grid(pieces);
    for (std::size_t cell = 0; cell < grid.cellCount(); ++cell)
      for (const auto* i = grid.begin(cell); i != grid.end(cell); ++i)
        for (const auto* j = i + 1; j != grid.end(cell); ++j)
          compare(pieces, *i, *j, splits);
    pieces = cutPieces(pieces, splits);
    merge(pieces);
  } while (!splits.empty());
  std::vector<WeightedEdge> edges;
  edges.reserve(pieces.size());
  for (const Piece& p : pieces)
    edges.push_back({p.a, p.b, p.weight});
  return edges;
}

} // namespace netmend
