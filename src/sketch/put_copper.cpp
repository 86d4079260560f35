#include "netmend/sketch/put_copper.h"

#include <algorithm>
#include <cmath>

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>

#include "draft.h"
#include "netmend/base/plane.h"
#include "netmend/board/shape.h"
#include "netmend/jumper/keep_out.h"

namespace netmend {

namespace {

Error tooFewCorners() {
  return {pattern("core", "an outline has three corners or more")};
}

Fact<NetId> knownNet(NetId net) {
  return net ? fromUser(net) : Fact<NetId>{};
}

/// The body, or the hull of the pads.
Ring outlineOfPart(const Lookup& lookup, const Part& part) {
  if (part.body.known() && part.body.value.size() >= 3) return part.body.value;
  std::vector<Point> corners;
  for (const PinId pin : lookup.pinsOf(part.id))
    for (const PadId id : lookup.padsOf(pin))
      if (const auto shape = padShape(*lookup.board().pads.find(id)))
        for (const Point p : outlineOf(*shape))
          corners.push_back(p);
  return hullOf(std::move(corners));
}

double areaOf(const Ring& ring) {
  double twice = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    twice += cross(vecOf(ring[i]), vecOf(ring[(i + 1) % ring.size()]));
  return std::abs(twice) / 2;
}

bool isOnSide(const Board& board, const Fact<LayerId>& layer, Side side) {
  const auto& order = board.info.layerOrder;
  if (!layer.known() || !layer.value || order.size() < 2) return true;
  const LayerId other = side == Side::top ? order.back() : order.front();
  return layer.value != other;
}

} // namespace

Ring simplified(const Ring& way, Length tremble) {
  namespace bg = boost::geometry;
  using Place = bg::model::d2::point_xy<double>;
  bg::model::linestring<Place> line;
  for (const Point p : way)
    line.emplace_back(static_cast<double>(p.x.nm), static_cast<double>(p.y.nm));
  bg::model::linestring<Place> out;
  bg::simplify(line, out, static_cast<double>(tremble.nm));
  Ring ring;
  for (const Place& p : out)
    ring.push_back({Length(std::llround(p.x())), Length(std::llround(p.y()))});
  return ring;
}

Ring bentWay(Point from, Point to, Bend bend) {
  const Length dx = to.x - from.x;
  const Length dy = to.y - from.y;
  const Length slant = std::min(Length(std::abs(dx.nm)), Length(std::abs(dy.nm)));
  if (bend == Bend::straight || slant.nm == 0 || std::abs(dx.nm) == std::abs(dy.nm)) return {from, to};
  const Point step{dx.nm < 0 ? -slant : slant, dy.nm < 0 ? -slant : slant};
  return {from, bend == Bend::slantFirst ? from + step : to - step, to};
}

Edit putTrack(const Board& board, const DrawnTrack& drawn, Edit begun) {
  Draft draft(board, std::move(begun));
  const LayerId layer = draft.layerOf(drawn.side);
  for (std::size_t i = 1; i < drawn.way.size(); ++i) {
    if (drawn.way[i] == drawn.way[i - 1]) continue;
    Track track;
    track.id = draft.newId<TrackId>();
    track.start = drawn.way[i - 1];
    track.end = drawn.way[i];
    track.layer = fromUser(layer);
    track.width = fromUser(drawn.width);
    track.net = knownNet(drawn.net);
    track.origin = Origin::user;
    draft.put(std::move(track));
  }
  return draft.take();
}

Edit putUnknownRun(const Board& board, Point from, Point to, NetId net, Edit begun) {
  Draft draft(board, std::move(begun));
  (void)draft.layerOf(Side::top); // there have to be some for anything to be inside
  Track track;
  track.id = draft.newId<TrackId>();
  track.way = TrackWay::unknownWay;
  track.start = from;
  track.end = to;
  track.net = knownNet(net);
  track.origin = Origin::user;
  draft.put(std::move(track));
  return draft.take();
}

Edit putVia(const Board& board, Point at, Length diameter, NetId net, Edit begun) {
  Draft draft(board, std::move(begun));
  (void)draft.layerOf(Side::top);
  Via via;
  via.id = draft.newId<ViaId>();
  via.position = at;
  via.diameter = guessed(diameter);
  via.drill = guessed(diameter / 2);
  via.net = knownNet(net);
  via.origin = Origin::user;
  draft.put(std::move(via));
  return draft.take();
}

Result<Edit> putArea(const Board& board, const Ring& outline, Side side, NetId net) {
  if (outline.size() < 3) return failure(tooFewCorners());
  Draft draft(board);
  Area area;
  area.id = draft.newId<AreaId>();
  area.polygon.outer = outline;
  area.layer = fromUser(draft.layerOf(side));
  area.net = knownNet(net);
  area.origin = Origin::user;
  draft.put(std::move(area));
  return draft.take();
}

Result<Edit> putZone(const Board& board, ZoneKind kind, const std::string& name, const Ring& outline,
                     Side side) {
  if (outline.size() < 3) return failure(tooFewCorners());
  Draft draft(board);
  Zone zone;
  zone.id = draft.newId<ZoneId>();
  zone.kind = kind;
  zone.name = name;
  zone.polygon.outer = outline;
  zone.side = fromUser(side);
  zone.origin = Origin::user;
  draft.put(std::move(zone));
  return draft.take();
}

Result<Edit> zoneFromPart(const Lookup& lookup, PartId id, ZoneKind kind) {
  const Part* part = lookup.board().parts.find(id);
  const Ring outline = part != nullptr ? outlineOfPart(lookup, *part) : Ring();
  if (outline.size() < 3)
    return failure({pattern("core", "has no outline to make a zone of"), "", "",
                    part != nullptr ? part->reference : std::string()});
  Draft draft(lookup.board());
  Zone zone;
  zone.id = draft.newId<ZoneId>();
  zone.kind = kind;
  zone.name = part->reference;
  zone.polygon.outer = outline;
  zone.side = part->side;
  zone.part = id;
  zone.origin = Origin::user;
  draft.put(std::move(zone));
  return draft.take();
}

CopperAt copperAt(const Board& board, Point p, Side side, Length reach) {
  CopperAt out;
  double nearest = static_cast<double>(reach.nm);
  const auto consider = [&](double away, CopperAt what) {
    // Tracks end in the middle of vias: the via is meant. Of others the one drawn last.
    if (away > nearest || (away == nearest && out.via && what.track)) return;
    nearest = away;
    out = what;
  };
  for (const Via& via : board.vias)
    consider(
        std::max(0.0, static_cast<double>((distance(p, via.position) - via.diameter.valueOr({}) / 2).nm)),
        {{}, via.id, {}, {}});
  for (const Track& track : board.tracks) {
    if (!isOnSide(board, track.layer, side)) continue;
    const Ring line = centreLine(track);
    for (std::size_t i = 1; i < line.size(); ++i)
      consider(std::max(0.0, distanceToSegment(p, line[i - 1], line[i]) -
                                 static_cast<double>(track.width.valueOr({}).nm) / 2),
               {track.id, {}, {}, {}});
  }
  if (out.any()) return out;
  double smallest = 1e300;
  const auto inside = [&](const Polygon& polygon, CopperAt what) {
    const double size = areaOf(polygon.outer);
    if (size >= smallest || !covers(polygon, p)) return;
    smallest = size;
    out = what;
  };
  for (const Area& area : board.areas)
    if (isOnSide(board, area.layer, side)) inside(area.polygon, {{}, {}, area.id, {}});
  for (const Zone& zone : board.zones)
    if (zone.side.valueOr(side) == side) inside(zone.polygon, {{}, {}, {}, zone.id});
  return out;
}

Edit removeCopper(const CopperAt& what) {
  Edit edit;
  if (what.track) edit.remove<Track>(what.track);
  if (what.via) edit.remove<Via>(what.via);
  if (what.area) edit.remove<Area>(what.area);
  if (what.zone) edit.remove<Zone>(what.zone);
  return edit;
}

Edit giveNet(const Board& board, const CopperAt& what, NetId net, Edit begun) {
  const auto put = [&](const auto* there) {
    if (there == nullptr) return;
    auto object = *there;
    object.net = fromUser(net);
    begun.put(std::move(object));
  };
  put(board.tracks.find(what.track));
  put(board.vias.find(what.via));
  put(board.areas.find(what.area));
  return begun;
}

Point placeOn(const Board& board, const CopperAt& what, Point p) {
  if (const Via* via = board.vias.find(what.via)) return via->position;
  const Track* track = board.tracks.find(what.track);
  if (track == nullptr) return p;
  const Ring line = centreLine(*track);
  Vec nearest = vecOf(line.front());
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Vec foot = footOnSegment(vecOf(p), vecOf(line[i - 1]), vecOf(line[i]));
    if (length(foot - vecOf(p)) < length(nearest - vecOf(p))) nearest = foot;
  }
  return {Length(std::llround(nearest.x)), Length(std::llround(nearest.y))};
}

NetId netOf(const Board& board, const CopperAt& what) {
  if (const Via* via = board.vias.find(what.via)) return via->net.valueOr({});
  if (const Track* track = board.tracks.find(what.track)) return track->net.valueOr({});
  if (const Area* area = board.areas.find(what.area)) return area->net.valueOr({});
  return {};
}

} // namespace netmend
