#include "scoring.h"

#include <algorithm>
#include <cmath>

#include "exact.h"

namespace netmend {
namespace {

/// Length of the shortest mesh edge that the way passes through: the room between two keep-outs, beyond what
/// wire and margins take.
std::optional<Length> tightestGap(const NavigationMesh& mesh, const Way& way) {
  std::optional<Length> least;
  for (const auto& [u, v] : way.crossed) {
    const Length gap =
        distance(mesh.vertices[static_cast<std::size_t>(u)], mesh.vertices[static_cast<std::size_t>(v)]);
    if (!least || gap < *least) least = gap;
  }
  return least;
}

void scoreSoftZones(Candidate& candidate) {
  for (const SoftZone& zone : candidate.area->obstacles.softZones) {
    double inside = 0;
    for (std::size_t i = 1; i < candidate.points.size(); ++i)
      inside += lengthInside(zone.core, candidate.points[i - 1], candidate.points[i]).mm();
    if (inside <= 0) continue;
    const bool perLength = zone.rule.effect == ZoneEffect::perLength;
    ScoreTerm term{TermKind::softZone, perLength ? zone.rule.price * inside : zone.rule.price,
                   Length::fromMm(inside)};
    term.keepOuts = {zone.name};
    term.reason = zone.rule.reason;
    candidate.terms.push_back(std::move(term));
  }
}

} // namespace

Length lengthInside(const Polygon& polygon, Point a, Point b) {
  // Cut a-b wherever it meets an edge; each piece is inside or outside as its middle is.
  std::vector<double> cuts{0.0, 1.0};
  const auto addCuts = [&](const Ring& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Point c = ring[i], d = ring[(i + 1) % ring.size()];
      const auto ca = static_cast<double>(cross(c, d, a)), cb = static_cast<double>(cross(c, d, b));
      if (ca != cb && segmentsTouch(a, b, c, d)) cuts.push_back(std::clamp(ca / (ca - cb), 0.0, 1.0));
    }
  };
  addCuts(polygon.outer);
  for (const Ring& hole : polygon.holes)
    addCuts(hole);
  std::sort(cuts.begin(), cuts.end());
  const auto dx = static_cast<double>((b.x - a.x).nm), dy = static_cast<double>((b.y - a.y).nm);
  double inside = 0;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    const double middle = (cuts[i - 1] + cuts[i]) / 2;
    const Point m{a.x + Length(std::llround(middle * dx)), a.y + Length(std::llround(middle * dy))};
    if (covers(polygon, m)) inside += cuts[i] - cuts[i - 1];
  }
  return Length(std::llround(inside * std::hypot(dx, dy)));
}

Price leastPossible(const Landing& from, const Landing& to) {
  const double way = distance(from.at, from.opening.exit).mm() +
                     distance(from.opening.exit, to.opening.exit).mm() +
                     distance(to.opening.exit, to.at).mm();
  return Price(way) + from.price() + to.price();
}

void score(Candidate& candidate, const LandingPrices& prices) {
  const Length length = lengthOf(candidate.points);
  candidate.terms.clear();
  candidate.terms.push_back({TermKind::length, Price(length.mm()), length});
  const std::size_t bends = candidate.points.size() - 2;
  if (bends > 0)
    candidate.terms.push_back({TermKind::bends, prices.perBend * static_cast<double>(bends), {}, bends});
  for (const Landing* landing : {candidate.from, candidate.to})
    candidate.terms.insert(candidate.terms.end(), landing->terms.begin(), landing->terms.end());
  if (const auto gap = tightestGap(candidate.area->mesh, candidate.free); gap && *gap < prices.tightBelow)
    candidate.terms.push_back({TermKind::tightPassage, prices.tight, *gap});
  scoreSoftZones(candidate);
  candidate.total = {};
  for (const ScoreTerm& term : candidate.terms)
    candidate.total += term.price;
}

} // namespace netmend
