#include <algorithm>
#include <cmath>
#include <set>

#include "netmend/netgraph/net_role.h"
#include "scoring.h"

namespace netmend {
namespace {

Detour detourOf(const FreeArea& area, const Candidate& candidate) {
  const Point a = candidate.from->opening.exit, b = candidate.to->opening.exit;
  Detour detour{candidate.free.points.size() <= 2, distance(a, b), {}};
  if (detour.straight) return detour;
  std::set<KeepOutName> names;
  for (const std::size_t i : keepOutsNear(area, a, b))
    names.insert(area.obstacles.keepOuts[i].name);
  detour.near.assign(names.begin(), names.end());
  return detour;
}

void addClearance(JumperProposal& proposal, const FreeArea& area) {
  const Length half = area.wire / 2;
  std::optional<Length> least;
  for (const KeepOut& keepOut : area.obstacles.keepOuts) {
    const bool own = keepOut.part && (keepOut.part == proposal.from.part || keepOut.part == proposal.to.part);
    if (own) continue; // the wire ends on it
    for (std::size_t i = 1; i < proposal.way.size(); ++i) {
      const Length d = distanceTo(keepOut, proposal.way[i - 1], proposal.way[i]) - half;
      if (least && d >= *least) continue;
      least = d;
      proposal.clearanceTo = keepOut.name;
    }
  }
  if (!least) return;
  proposal.leastClearance = {std::max(Length(0), *least), Origin::file};
  if (std::any_of(area.obstacles.keepOuts.begin(), area.obstacles.keepOuts.end(),
                  [&](const KeepOut& k) { return k.guessed && k.name == proposal.clearanceTo; }))
    proposal.leastClearance.origin = Origin::guessed;
}

/// Spots of mask: near both ends, at every bend, and no more than the spacing apart.
std::vector<Point> tackPoints(const std::vector<Point>& way, const WireTable& table) {
  std::vector<double> at; // along the way, mm
  std::vector<double> start{0.0};
  for (std::size_t i = 1; i < way.size(); ++i)
    start.push_back(start.back() + distance(way[i - 1], way[i]).mm());
  const double whole = start.back(), end = table.endTack.mm();
  if (whole <= 2 * end) {
    at.push_back(whole / 2);
  } else {
    at.push_back(end);
    for (std::size_t i = 1; i + 1 < start.size(); ++i)
      if (start[i] > end && start[i] < whole - end) at.push_back(start[i]);
    at.push_back(whole - end);
  }
  std::vector<Point> spots;
  const auto spotAt = [&](double s) {
    std::size_t i = 1;
    while (i + 1 < start.size() && start[i] < s)
      ++i;
    const double piece = start[i] - start[i - 1];
    const double share = piece > 0 ? (s - start[i - 1]) / piece : 0.0;
    const Point a = way[i - 1], b = way[i];
    return Point{a.x + Length::fromMm(share * (b.x - a.x).mm()),
                 a.y + Length::fromMm(share * (b.y - a.y).mm())};
  };
  for (std::size_t i = 0; i < at.size(); ++i) {
    if (i > 0) {
      const auto pieces = static_cast<int>(std::ceil((at[i] - at[i - 1]) / table.tackSpacing.mm() - 1e-9));
      for (int k = 1; k < pieces; ++k)
        spots.push_back(spotAt(at[i - 1] + (at[i] - at[i - 1]) * k / pieces));
    }
    spots.push_back(spotAt(at[i]));
  }
  return spots;
}

Fact<Length> narrower(const Landing& a, const Landing& b) {
  if (!a.width.known()) return b.width;
  if (!b.width.known()) return a.width;
  return a.width.value <= b.width.value ? a.width : b.width;
}

void addNotes(JumperProposal& proposal, const Board& board, const FreeArea& area,
              const JumperRequest& request) {
  std::set<KeepOutName> guessed;
  for (std::size_t i = 1; i < proposal.way.size(); ++i) {
    // Within half a millimetre of a margin a wrong guess would matter.
    const Length reach(500'000);
    for (const KeepOut& keepOut : area.obstacles.keepOuts)
      if (keepOut.guessed && !keepOut.isBoardEdge() &&
          distanceTo(keepOut, proposal.way[i - 1], proposal.way[i]) < keepOut.margin + area.wire / 2 + reach)
        guessed.insert(keepOut.name);
  }
  if (!guessed.empty())
    proposal.notes.push_back({ProposalNote::Kind::guessedBodies, {guessed.begin(), guessed.end()}});
  if (area.outlineGuessed) proposal.notes.push_back({ProposalNote::Kind::outlineGuessed});
  for (const ZoneOverride& override : request.overrides)
    if (const Zone* zone = board.zones.find(override.zone))
      proposal.notes.push_back({ProposalNote::Kind::zoneSetAside,
                                {{KeepOutName::What::zone, zone->kind, zone->name, {}}},
                                {},
                                override.reason});
}

} // namespace

Result<JumperProposal> writtenUp(const Lookup& lookup, const Candidate& candidate,
                                 const JumperRequest& request, WireRequest load, const OwnCopper& own,
                                 const JumperData& data) {
  const FreeArea& area = *candidate.area;
  JumperProposal proposal;
  proposal.from = *candidate.from;
  proposal.to = *candidate.to;
  proposal.side = area.side;
  proposal.way = candidate.points;
  proposal.length = lengthOf(candidate.points);
  proposal.terms = candidate.terms;
  proposal.total = candidate.total;
  load.length = proposal.length;
  load.landingWidth = narrower(proposal.from, proposal.to);
  auto wire = chooseWire(data.wires, load);
  if (!wire) return failure(wire.error());
  proposal.wire = std::move(*wire);
  addClearance(proposal, area);
  proposal.tackPoints = tackPoints(proposal.way, data.wires);
  proposal.detour = detourOf(area, candidate);
  addNotes(proposal, lookup.board(), area, request);
  addCrossings(proposal, lookup.board(), area, own);
  return proposal;
}

} // namespace netmend
