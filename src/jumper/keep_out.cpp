#include "netmend/jumper/keep_out.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "exact.h"
#include "netmend/board/shape.h"
#include "rings.h"

namespace netmend {
namespace {

/// 1 inside, 0 on the edge, -1 outside (even-odd).
int place(const Ring& ring, Point p) {
  bool inside = false;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i], b = ring[(i + 1) % ring.size()];
    if (onSegment(a, b, p)) return 0;
    if ((a.y > p.y) != (b.y > p.y) && (side(a, b, p) > 0) == (b.y > a.y)) inside = !inside;
  }
  return inside ? 1 : -1;
}

int place(const Polygon& polygon, Point p) {
  const int outer = place(polygon.outer, p);
  if (outer <= 0) return outer;
  for (const Ring& hole : polygon.holes)
    if (const int in = place(hole, p); in >= 0) return -in;
  return 1;
}

double ringDistance(const Ring& ring, Point a, Point b) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < ring.size(); ++i)
    least = std::min(least, segmentDistance(a, b, ring[i], ring[(i + 1) % ring.size()]));
  return least;
}

struct Body {
  Ring ring;
  bool guessed;
};

Body bodyOf(const Lookup& lookup, const Part& part) {
  if (part.body.known() && part.body.value.size() >= 3) return {part.body.value, !part.body.certain()};
  std::vector<Point> corners;
  for (const PinId pin : lookup.pinsOf(part.id))
    for (const PadId id : lookup.padsOf(pin)) {
      const Pad* pad = lookup.board().pads.find(id);
      if (!pad || !pad->position.known()) continue;
      const auto shape = padShape(*pad);
      const Ring outline = shape ? outlineOf(*shape) : Ring{pad->position.value};
      corners.insert(corners.end(), outline.begin(), outline.end());
    }
  return {hullOf(std::move(corners)), true};
}

Length longestSide(const Ring& ring) {
  Box box;
  for (const Point p : ring)
    box.include(p);
  return std::max(box.size().width, box.size().height);
}

/// Which zone a part's body makes; nothing for one that a wire may pass over.
struct PartZone {
  ZoneKind kind;
  bool wallOnly;
  bool guessed;
};

std::optional<PartZone> zoneOf(const Lookup& lookup, const Part& part, const Body& body,
                               const ZoneRules& rules) {
  const PartKind kind = part.kind.valueOr(PartKind::other);
  if (part.kind.known() && kind == PartKind::testPoint) return std::nullopt;
  if (const PartZoneRule* rule = part.kind.known() ? rules.of(kind) : nullptr)
    return PartZone{rule->zone, rule->wallOnly, !part.kind.certain()};
  if (part.height.known()) {
    if (part.height.value < rules.tallFrom) return std::nullopt;
    return PartZone{ZoneKind::tallPart, false, !part.height.certain()};
  }
  const bool low = lookup.pinsOf(part.id).size() <= 2 && longestSide(body.ring) <= rules.lowUpTo;
  if (low) return std::nullopt;
  return PartZone{ZoneKind::tallPart, false, true};
}

KeepOutName partName(const Part& part, ZoneKind kind) {
  return {KeepOutName::What::part, kind, part.reference, {}};
}

void addPart(Obstacles& obstacles, const Lookup& lookup, const Part& part, Side side,
             const ZoneRules& rules) {
  if (part.fitted.known() && !part.fitted.value) return;
  if (part.side.known() && part.side.value != side) return;
  const Body body = bodyOf(lookup, part);
  if (body.ring.empty()) return;
  const auto zone = zoneOf(lookup, part, body, rules);
  if (!zone) return;
  const ZoneRule& rule = rules.of(zone->kind);
  if (rule.effect != ZoneEffect::forbidden) {
    obstacles.softZones.push_back({{body.ring, {}}, {}, rule, partName(part, zone->kind)});
    return;
  }
  KeepOut keepOut;
  keepOut.core.outer = body.ring;
  keepOut.wallOnly = zone->wallOnly;
  const bool hull = !part.body.known();
  keepOut.margin = rule.margin + (hull ? rules.guessedBodyMargin : Length(0));
  keepOut.kind = zone->kind;
  keepOut.part = part.id;
  keepOut.name = partName(part, zone->kind);
  keepOut.guessed = body.guessed || zone->guessed || !part.side.known();
  obstacles.keepOuts.push_back(std::move(keepOut));
}

} // namespace

Obstacles obstaclesOf(const Lookup& lookup, Side side, const ZoneRules& rules,
                      const std::vector<ZoneOverride>& overrides) {
  Obstacles obstacles;
  for (const Zone& zone : lookup.board().zones) {
    if (zone.side.known() && zone.side.value != side) continue;
    if (zone.polygon.outer.empty()) continue;
    if (std::any_of(overrides.begin(), overrides.end(), [&](const auto& o) { return o.zone == zone.id; }))
      continue;
    const ZoneRule& rule = rules.of(zone.kind);
    const KeepOutName name{KeepOutName::What::zone, zone.kind, zone.name, {}};
    if (rule.effect != ZoneEffect::forbidden) {
      obstacles.softZones.push_back({zone.polygon, zone.id, rule, name});
      continue;
    }
    const Length margin = std::max(Length(0), zone.margin.valueOr(rule.margin));
    obstacles.keepOuts.push_back({zone.polygon,
                                  false,
                                  margin,
                                  zone.kind,
                                  zone.id,
                                  zone.part,
                                  {},
                                  name,
                                  zone.origin == Origin::guessed});
  }
  for (const Part& part : lookup.board().parts)
    addPart(obstacles, lookup, part, side, rules);
  return obstacles;
}

bool covers(const Polygon& polygon, Point p) {
  return place(polygon, p) >= 0;
}

bool strictlyInside(const KeepOut& keepOut, Point p) {
  return !keepOut.wallOnly && place(keepOut.core, p) > 0;
}

Length distanceTo(const KeepOut& keepOut, Point a, Point b) {
  if (!keepOut.wallOnly && covers(keepOut.core, a)) return Length(0);
  double least = ringDistance(keepOut.core.outer, a, b);
  for (const Ring& hole : keepOut.core.holes)
    least = std::min(least, ringDistance(hole, a, b));
  return least < 1e18 ? Length(static_cast<std::int64_t>(least)) : Length(INT64_MAX);
}

} // namespace netmend
